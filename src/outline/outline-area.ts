import { custom } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { fromSI, type Area, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  subtractRatios,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import {
  cross,
  minus,
  norm,
  plus,
  pointFrom,
  scaled,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { withWorking, type Worked } from '../working.js';
import { areaSteps } from './area-steps.js';
import { isOutwardRight } from './chords.js';
import { areaOfDouble } from './double-area.js';
import { readOutline, type Outline, type OutlineInput } from './read-outline.js';
import { forEachEdge, type Ring } from './ring.js';
import { enclosed, segmentOf } from './ring-area.js';

/** The outline to measure. */
export interface OutlineAreaOptions {
  /**
   * `{ unit, points: [x, y][] }` or a list of `{ x, y }` lengths: 3 to 10 000 points in order,
   * clockwise or counter-clockwise, closed automatically; `arcs` and `holes` are optional.
   */
  readonly outline: OutlineInput;
}

const OPTIONS = shapeOf<OutlineAreaOptions>()({ outline: custom(readOutline) });

/** Area, perimeter and centroid of an outline. */
export interface OutlineArea extends Worked {
  /** Area, less the holes. */
  readonly area: Area;
  /** Length of the outer edge and the edges of the holes, all of which need an edge restraint. */
  readonly perimeter: Length;
  /** Centroid of the paved area, holes deducted. */
  readonly centroid: PlanPoint;
  /** Direction of the points. */
  readonly orientation: 'counter-clockwise' | 'clockwise';
}

/**
 * Plan area, perimeter and centroid of an outline of straight and arc edges, less its holes:
 * `2A = sum(x(i) y(i+1) - x(i+1) y(i))` about the first point, `P = sum of edge lengths`; an arc of
 * chord C and middle ordinate M adds (M > 0) or deducts (M < 0) `(R^2 angle - C (R - M)) / 2` with
 * `R = C^2 / (8 M) + M / 2`. Areas between straight edges are exact. Lengths of slanted edges and
 * everything that depends on arcs are taken to 40 digits.
 *
 * @param options - see {@link OutlineAreaOptions}; `arcs: { edge, bulgeMiddleOrdinate }[]`, + where the
 *   edge bulges outward from the paving (on a hole: into the hole), two points will do then; `holes`,
 *   each a ring of its own
 * @returns area less holes [area], perimeter including holes [length], centroid [length, length]
 * @throws `TOO_FEW`, `SELF_INTERSECTION` (with the two edges), `POINTS_COINCIDE`, `ZERO_AREA`,
 *   `HOLE_OUTSIDE`, `TOO_MANY` and the reading codes
 * @source derived
 * @example
 * const { area, perimeter } = outlineArea({ outline: { unit: 'ft', points: [[0, 0], [3, 0], [0, 4]] } });
 * area.to('ft2').toString() //=> '6'
 * perimeter.to('ft').toString() //=> '12'
 * const circle = [{ edge: 0, bulgeMiddleOrdinate: 1 }, { edge: 1, bulgeMiddleOrdinate: 1 }];
 * const round = outlineArea({ outline: { unit: 'm', points: [[-1, 0], [1, 0]], arcs: circle } });
 * round.area.to('m2').toFixed(30) //=> '3.141592653589793238462643383280'
 */
export function outlineArea(options: OutlineAreaOptions): OutlineArea {
  const { outline } = readOptions(options, OPTIONS);
  const measured = measureOutline(outline);
  return withWorking(measured, () => areaSteps(outline, measured));
}

/** Areas of outlines that were asked for before: a plan needs that of a dig many times. */
const AREAS = new WeakMap<Outline, Area>();

/** Only the area of an outline that has been read. Internal. */
export function areaOf(outline: Outline): Area {
  const known = AREAS.get(outline);
  if (known !== undefined) return known;
  const holes = outline.holes.map((hole) => enclosed(hole, true));
  const area = areaOfDouble(holes.reduce(subtractRatios, enclosed(outline, false)));
  AREAS.set(outline, area);
  return area;
}

/** Notes the area of an outline that is the same figure as one measured before. Internal. */
export function withArea(outline: Outline, area: Area): Outline {
  AREAS.set(outline, area);
  return outline;
}

/** Measures an outline that has been read. Internal. */
export function measureOutline(outline: Outline) {
  const outer = measureRing(outline, false);
  const holes = outline.holes.map((hole) => measureRing(hole, true));
  const sum = <T>(of: (ring: Measured) => T, less: (a: T, b: T) => T): T =>
    holes.reduce((rest, hole) => less(rest, of(hole)), of(outer));
  const double = sum(({ twice }) => twice, subtractRatios);
  const moment = sum(({ sixfold }) => sixfold, minus);
  const thrice = multiplyRatios(double, wholeRatio(3));
  const centre = { x: divideRatios(moment.x, thrice), y: divideRatios(moment.y, thrice) };
  return {
    area: areaOfDouble(double),
    perimeter: fromSI(
      'length',
      sum(({ perimeter }) => perimeter, addRatios),
    ),
    centroid: pointFrom(outline.origin, centre),
    orientation: outer.isClockwise ? ('clockwise' as const) : ('counter-clockwise' as const),
  };
}

interface Measured {
  /** Twice the area, positive. */
  readonly twice: Ratio;
  /** Six times its first moment about the origin. */
  readonly sixfold: Vector;
  readonly perimeter: Ratio;
  readonly isClockwise: boolean;
}

/** Sums over the edges of one ring. */
function measureRing(ring: Ring, isHole: boolean): Measured {
  const { points, bulges } = ring;
  let twice: Ratio = ZERO_RATIO;
  let sixfold: Vector = { x: ZERO_RATIO, y: ZERO_RATIO };
  let perimeter: Ratio = ZERO_RATIO;
  const isRight = isOutwardRight(ring, isHole);
  // counter-clockwise, area to the right of the chord adds to the signed sums
  const isClockwise = isRight === isHole;
  forEachEdge(points, (a, b, edge) => {
    const double = cross(a, b);
    twice = addRatios(twice, double);
    sixfold = plus(sixfold, scaled(plus(a, b), double));
    const bulge = bulges?.[edge];
    if (bulge === undefined) {
      perimeter = addRatios(perimeter, norm(minus(b, a)));
      return;
    }
    const segment = segmentOf(a, b, { bulge, isRight });
    twice = addRatios(twice, segment.twice);
    sixfold = plus(sixfold, segment.sixfold);
    perimeter = addRatios(perimeter, segment.length);
  });
  const turned = (value: Ratio) => (isClockwise ? negateRatio(value) : value);
  return {
    twice: turned(twice),
    sixfold: { x: turned(sixfold.x), y: turned(sixfold.y) },
    perimeter,
    isClockwise,
  };
}
