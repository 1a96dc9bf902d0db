import { custom } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { fromSI, type Area, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
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
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { makeArc } from './arc.js';
import { isOutwardRight } from './chords.js';
import { areaOfDouble, doubleArea } from './double-area.js';
import { readOutline, type Outline, type OutlineInput } from './read-outline.js';
import { forEachEdge, type Ring } from './ring.js';

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
  return withWorking(measureOutline(outline), () => areaSteps(outline));
}

/** Only the area of an outline that has been read. Internal. */
export function areaOf(outline: Outline): Area {
  const holes = outline.holes.map((hole) => enclosed(hole, true));
  return areaOfDouble(holes.reduce(subtractRatios, enclosed(outline, false)));
}

/** Twice the area of a ring, arcs included, positive. */
function enclosed(ring: Ring, isHole: boolean): Ratio {
  let twice = doubleArea(ring.points);
  if (ring.bulges !== undefined) {
    const isRight = isOutwardRight(ring, isHole);
    forEachEdge(ring.points, (a, b, edge) => {
      const bulge = ring.bulges?.[edge];
      if (bulge !== undefined) twice = addRatios(twice, segmentOf(a, b, { bulge, isRight }).twice);
    });
  }
  return signOfRatio(twice) < 0 ? negateRatio(twice) : twice;
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

/** Segment between an arc and its chord, positive to the right of a-b. */
function segmentOf(
  a: Vector,
  b: Vector,
  { bulge, isRight }: { readonly bulge: Ratio; readonly isRight: boolean },
) {
  const along = minus(b, a);
  const arc = makeArc(norm(along), bulge);
  const isToRight = signOfRatio(bulge) > 0 === isRight;
  const signed = (value: Ratio) => (isToRight ? value : negateRatio(value));
  const twice = signed(multiplyRatios(arc.area, wholeRatio(2)));
  // six areas at the middle of the chord, plus the moment of the segment square to it
  const atChord = scaled(
    plus(a, b),
    multiplyRatios(twice, divideRatios(wholeRatio(3), wholeRatio(2))),
  );
  const right = { x: along.y, y: negateRatio(along.x) };
  const sixMoments = divideRatios(multiplyRatios(arc.moment, wholeRatio(6)), arc.chord);
  return { twice, sixfold: plus(atChord, scaled(right, sixMoments)), length: arc.length };
}

function areaSteps(outline: Outline): readonly Step[] {
  const { area, perimeter } = measureOutline(outline);
  const arcs = [outline, ...outline.holes].flatMap(({ bulges = [] }) => bulges.filter(Boolean));
  return [
    formulaStep({
      title: 'Area of the outline',
      formula:
        arcs.length === 0
          ? 'A = |sum(x(i) y(i+1) - x(i+1) y(i))| / 2'
          : 'A = |sum(x(i) y(i+1) - x(i+1) y(i))| / 2 + sum(+-(R^2 angle - C (R - M)) / 2)',
      given: [
        given('n', 'points', outline.points.length),
        ...(arcs.length === 0 ? [] : [given('k', 'arcs', arcs.length)]),
        ...outline.holes.map((hole, index) =>
          given(`A${index}`, `hole ${index}, taken off`, areaOfDouble(enclosed(hole, true))),
        ),
      ],
      result: given('A', 'area', area),
      source: 'derived',
    }),
    formulaStep({
      title: 'Perimeter of the outline',
      formula: 'P = sum of edge lengths, holes included',
      given: [given('n', 'points', outline.points.length)],
      result: given('P', 'perimeter', perimeter),
      source: 'derived',
    }),
  ];
}
