import { fault } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Angle, type Slope } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import {
  between,
  dot,
  isZero,
  minus,
  norm,
  opposite,
  pointFrom,
  share,
  squared,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { azimuthOf } from './azimuth.js';
import { SLOPE } from './limits.js';
import { edgeCrossings, type LineStake } from './edge-crossings.js';
import {
  readPath,
  readPlanPoint,
  readSurfacePoint,
  type PlanPointInput,
  type SurfacePoint,
  type SurfacePointInput,
} from './read-points.js';

/** A plane by its grades and one of its points; what `planeThrough` returns is one. */
export interface PlaneInput {
  readonly gradeX: SlopeInput;
  readonly gradeY: SlopeInput;
  readonly point: SurfacePointInput;
}

/** Where two planes meet. */
export interface ValleyLine extends Worked {
  /**
   * `valley`: water runs to the line from both sides; `ridge`: it runs off to both sides; `break`: it
   * crosses the line, or runs along it.
   */
  readonly kind: 'valley' | 'ridge' | 'break';
  /** How the surface bends over the line: hollow or humped. */
  readonly shape: 'sag' | 'crest';
  /** A point of the line: the one square beside the point of the first plane. */
  readonly point: SurfacePoint;
  /** Fall of the line itself, not negative. It is flatter than either plane. */
  readonly slope: Slope;
  /** The way down along the line, clockwise from +y; null where the line is level. */
  readonly downhillAzimuth: Angle | null;
  /** Where the line meets the edges that were given: each needs a stake. */
  readonly stakes: readonly LineStake[];
  readonly cautions: readonly Caution[];
}

/**
 * The line in which two planes meet: `(g1x - g2x) x + (g1y - g2y) y = z2(0) - z1(0)`, its own fall
 * `g1 . u` along its unit vector u, and the stakes that it needs where it meets the edges. A valley
 * between a 2 % and a 3 % plane can fall less than 2 %: check the least fall on the line.
 *
 * @param options.first - a plane: what `planeThrough` returns, or `gradeX`, `gradeY` [slope, + rising]
 *   and a `point` `{ x, y, z }` [length]
 * @param options.second - the other plane, likewise
 * @param options.inFirst - a place `{ x, y }` [length] where the first plane is built, default the
 *   point of the first plane; it decides between valley and ridge
 * @param options.path - edges that the line may meet: points `{ x, y }` [length] in order, if wanted
 * @param options.closed - true where the edges run back to the first point, default true
 * @returns kind and shape, a point [length], fall [slope, not negative] and way down of the line
 *   [angle, clockwise from +y, or null], stakes at the edges [length], cautions
 * @throws `PLANES_PARALLEL`, `SIDE_UNKNOWN`, `TOO_FEW_POINTS`, `POINTS_COINCIDE`, `OUT_OF_RANGE` and the
 *   reading codes
 * @source derived
 * @example
 * const valley = valleyLine({
 *   first: { gradeX: '-2%', gradeY: '0%', point: { x: '0 m', y: '0 m', z: '30 m' } },
 *   second: { gradeX: '0%', gradeY: '-3%', point: { x: '0 m', y: '0 m', z: '29.8 m' } },
 * });
 * valley.slope.to('percent').toFixed(3) //=> '1.664'
 */
export function valleyLine(options: {
  readonly first: PlaneInput;
  readonly second: PlaneInput;
  readonly inFirst?: PlanPointInput;
  readonly path?: readonly PlanPointInput[];
  readonly closed?: boolean;
}): ValleyLine {
  const { first, second, inFirst, path, closed } = readOptions(options);
  const bend = minus(first.gradient, second.gradient);
  if (isZero(bend)) throw fault('PLANES_PARALLEL', 'both planes fall alike', {}, ['second']);
  const gap = gapOf(first, second);
  const side = signOfRatio(gap(inFirst));
  if (side === 0) {
    const why = 'both planes stand at one level here: give a place well inside the first plane';
    throw fault('SIDE_UNKNOWN', why, {}, ['inFirst']);
  }
  const along = downAlong(first.gradient, bend);
  const beside = share(bend, negateRatio(gap(first.point)), squared(bend));
  const place = pointFrom(first.point, beside);
  const slope = fallAlong(first.gradient, along);
  const line = {
    kind: kindOf(first, second, side > 0 ? bend : opposite(bend)),
    shape: side > 0 ? ('sag' as const) : ('crest' as const),
    point: levelled(first, place),
    slope,
    downhillAzimuth: slope.isZero() ? null : azimuthOf(along),
    stakes: edgeCrossings({ path, closed, gap, levelOf: (p) => levelled(first, p) }),
    cautions: cautionsFor('drainage'),
  };
  return withWorking(line, () => [
    {
      title: 'Fall of the line where two planes meet',
      formula: 'g = |g1 . u|, u square to g1 - g2',
      given: [
        given('g1x', 'grade of the first plane along x', fromSI('slope', first.gradient.x)),
        given('g1y', 'grade of the first plane along y', fromSI('slope', first.gradient.y)),
        given('g2x', 'grade of the second plane along x', fromSI('slope', second.gradient.x)),
        given('g2y', 'grade of the second plane along y', fromSI('slope', second.gradient.y)),
      ],
      result: given('g', 'fall of the line', slope),
      source: 'derived',
    },
  ]);
}

interface ReadPlane {
  readonly gradient: Vector;
  readonly point: SurfacePoint;
}

function readOptions(options: unknown) {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const first = readPlane(reader, fields['first'], 'first');
  const second = readPlane(reader, fields['second'], 'second');
  const inFirst =
    fields['inFirst'] === undefined
      ? first.point
      : readPlanPoint(reader, fields['inFirst'], ['inFirst']);
  const closed = reader.flag(fields['closed'] ?? true, ['closed']);
  const path =
    fields['path'] === undefined
      ? []
      : readPath(reader, fields['path'], { path: ['path'], closed });
  reader.finish();
  return { first, second, inFirst, path, closed };
}

function readPlane(reader: Reader, value: unknown, name: 'first' | 'second'): ReadPlane {
  const fields = reader.object(value, [name]);
  const grade = (axis: 'gradeX' | 'gradeY') =>
    exactOf(reader.quantity('slope', fields[axis], [name, axis], SLOPE));
  return {
    gradient: { x: grade('gradeX'), y: grade('gradeY') },
    point: readSurfacePoint(reader, fields['point'], [name, 'point']),
  };
}

/** Height of a plane above another at a place. */
function gapOf(first: ReadPlane, second: ReadPlane): (p: PlanPoint) => Ratio {
  const heightAt = ({ gradient, point }: ReadPlane, p: PlanPoint): Ratio =>
    addRatios(exactOf(point.z), dot(gradient, between(point, p)));
  return (p) => subtractRatios(heightAt(first, p), heightAt(second, p));
}

const levelled = ({ gradient, point }: ReadPlane, p: PlanPoint): SurfacePoint => ({
  ...p,
  z: point.z.plus(fromSI('length', dot(gradient, between(point, p)))),
});

/** The direction of the line, downhill where it has one. */
function downAlong(gradient: Vector, bend: Vector): Vector {
  const along = { x: negateRatio(bend.y), y: bend.x };
  return signOfRatio(dot(gradient, along)) > 0 ? opposite(along) : along;
}

const fallAlong = (gradient: Vector, along: Vector): Slope =>
  fromSI('slope', divideRatios(negateRatio(dot(gradient, along)), norm(along)));

/** `toFirst` is square to the line and points to the side where the first plane is built. */
function kindOf(first: ReadPlane, second: ReadPlane, toFirst: Vector): ValleyLine['kind'] {
  const firstRises = signOfRatio(dot(first.gradient, toFirst));
  const secondRises = -signOfRatio(dot(second.gradient, toFirst));
  if (firstRises > 0 && secondRises > 0) return 'valley';
  return firstRises < 0 && secondRises < 0 ? 'ridge' : 'break';
}
