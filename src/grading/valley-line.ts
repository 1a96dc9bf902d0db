import { fault } from '../errors.js';
import { flag, object, optional } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { fromSI, type Angle, type Slope } from '../units/quantity.js';
import {
  divideRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import {
  dot,
  isZero,
  minus,
  norm,
  opposite,
  pointFrom,
  share,
  squared,
  turnedLeft,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { azimuthOf } from './azimuth.js';
import { edgeCrossings, type LineStake } from './edge-crossings.js';
import {
  heightOf,
  levelled,
  planeOrGrades,
  pointedPlane,
  type PlaneInput,
  type PointedPlane,
} from './plane-input.js';
import {
  checkClosed,
  edgePoints,
  openEnd,
  PLAN_POINT,
  type PlanPointInput,
  type SurfacePoint,
} from './read-points.js';

/** Two planes that meet. */
export interface ValleyLineOptions {
  /** The first plane: the result of `planeThrough`, or its grades and a point. */
  readonly first: PlaneInput;
  /** The second plane, likewise. */
  readonly second: PlaneInput;
  /**
   * A point where the first plane is built, well off the line. It decides between valley and ridge.
   * Default: the point of the first plane.
   */
  readonly inFirst?: PlanPointInput;
  /**
   * Edges that the line may meet: 2 to 10 000 points in order, at least 3 if closed. Default: none.
   */
  readonly path?: readonly PlanPointInput[];
  /** True if the edges run back to the first point. Default: true. */
  readonly closed?: boolean;
}

const OPTIONS = shapeOf<ValleyLineOptions>()({
  first: planeOrGrades,
  second: planeOrGrades,
  inFirst: optional(object(PLAN_POINT)),
  path: optional(edgePoints),
  closed: optional(flag, true),
});

/** The line where two planes meet. */
export interface ValleyLine extends Cautioned, Worked {
  /**
   * `valley`: water runs to the line from both sides; `ridge`: it runs off to both sides; `break`: it
   * crosses the line, or runs along it.
   */
  readonly kind: 'valley' | 'ridge' | 'break';
  /** Shape of the surface across the line: hollow (sag) or humped (crest). */
  readonly shape: 'sag' | 'crest';
  /** The point of the line nearest to the point of the first plane. */
  readonly point: SurfacePoint;
  /** Fall of the line itself, not negative. It is flatter than either plane. */
  readonly slope: Slope;
  /** Downhill direction of the line, clockwise from +y; null for a level line. */
  readonly downhillAzimuth: Angle | null;
  /** Where the line meets the edges; each needs a stake. Empty if no path is given. */
  readonly stakes: readonly LineStake[];
}

/**
 * The line where two planes meet: `(g1x - g2x) x + (g1y - g2y) y = z2(0) - z1(0)`, its own fall
 * `g1 . u` along its unit vector u, and the stakes that it needs where it meets the edges. A valley
 * between a 2% and a 3% plane can fall less than 2%: check the minimum fall on the line.
 *
 * @param options - see {@link ValleyLineOptions}
 * @returns kind and shape, a point [length], fall [slope, not negative] and downhill direction of the
 *   line [angle, clockwise from +y, or null], stakes at the edges [length], cautions
 * @throws `PLANES_PARALLEL`, `SIDE_UNKNOWN`, `TOO_FEW`, `POINTS_COINCIDE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source derived
 * @example
 * const valley = valleyLine({
 *   first: { gradeX: '-2%', gradeY: '0%', point: { x: '0 m', y: '0 m', z: '30 m' } },
 *   second: { gradeX: '0%', gradeY: '-3%', point: { x: '0 m', y: '0 m', z: '29.8 m' } },
 * });
 * valley.slope.to('percent').toFixed(3) //=> '1.664'
 */
export function valleyLine(options: ValleyLineOptions): ValleyLine {
  const read = readOptions(options, OPTIONS, (reader, { path: points, closed }, path) => {
    checkClosed(reader, points, { closed, path: [...path, 'path'] });
  });
  const { closed } = read;
  const [first, second] = [pointedPlane(read.first), pointedPlane(read.second)];
  const bend = minus(first.gradient, second.gradient);
  if (isZero(bend)) {
    throw fault(
      'PLANES_PARALLEL',
      'both planes slope the same way, so they do not meet in a line. Check the grades',
      {},
      ['second'],
    );
  }
  const gap = (p: PlanPoint): Ratio => subtractRatios(heightOf(first, p), heightOf(second, p));
  const side = signOfRatio(gap(read.inFirst ?? first.point));
  if (side === 0) {
    const why =
      'both planes have the same elevation here. Give a point well inside the first plane';
    throw fault('SIDE_UNKNOWN', why, {}, ['inFirst']);
  }
  const along = downAlong(first.gradient, bend);
  const beside = share(bend, negateRatio(gap(first.point)), squared(bend));
  const slope = fallAlong(first.gradient, along);
  const line = {
    kind: kindOf(first, second, side > 0 ? bend : opposite(bend)),
    shape: side > 0 ? ('sag' as const) : ('crest' as const),
    point: levelled(first, pointFrom(first.point, beside)),
    slope,
    downhillAzimuth: slope.isZero() ? null : azimuthOf(along),
    stakes: edgeCrossings({
      path: openEnd(read.path ?? [], closed),
      closed,
      gap,
      levelOf: (p) => levelled(first, p),
    }),
    cautions: cautionsFor('drainage'),
  };
  return withWorking(line, () => [lineStep(first.gradient, second.gradient, slope)]);
}

/** The direction of the line, downhill if it falls. */
function downAlong(gradient: Vector, bend: Vector): Vector {
  const along = turnedLeft(bend);
  return signOfRatio(dot(gradient, along)) > 0 ? opposite(along) : along;
}

const fallAlong = (gradient: Vector, along: Vector): Slope =>
  fromSI('slope', divideRatios(negateRatio(dot(gradient, along)), norm(along)));

/** `toFirst` is square to the line and points to the side where the first plane is built. */
function kindOf(first: PointedPlane, second: PointedPlane, toFirst: Vector): ValleyLine['kind'] {
  const firstRises = signOfRatio(dot(first.gradient, toFirst));
  const secondRises = -signOfRatio(dot(second.gradient, toFirst));
  if (firstRises > 0 && secondRises > 0) return 'valley';
  return firstRises < 0 && secondRises < 0 ? 'ridge' : 'break';
}

function lineStep(first: Vector, second: Vector, slope: Slope): Step {
  return derivedStep({
    title: 'Fall of the line where two planes meet',
    formula: 'g = abs(g1y * (g1x - g2x) - g1x * (g1y - g2y)) / sqrt((g1x - g2x)^2 + (g1y - g2y)^2)',
    given: [
      given('g1x', 'grade of the first plane along x', fromSI('slope', first.x)),
      given('g1y', 'grade of the first plane along y', fromSI('slope', first.y)),
      given('g2x', 'grade of the second plane along x', fromSI('slope', second.x)),
      given('g2y', 'grade of the second plane along y', fromSI('slope', second.y)),
    ],
    result: given('g', 'fall of the line', slope),
  });
}
