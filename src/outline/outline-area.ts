import { makeReader } from '../input.js';
import { fromSI, type Area, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { cross, minus, norm, plus, pointFrom, scaled, type Vector } from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import { readOutline, type Outline, type OutlineInput } from './read-outline.js';

/** Area, perimeter and centroid of an outline. */
export interface OutlineArea extends Worked {
  readonly area: Area;
  readonly perimeter: Length;
  readonly centroid: { readonly x: Length; readonly y: Length };
  /** The order in which the points run. */
  readonly orientation: 'counter-clockwise' | 'clockwise';
}

/**
 * Plan area, perimeter and centroid of an outline of straight edges:
 * `2A = sum(x(i) y(i+1) - x(i+1) y(i))` about the first point, `P = sum of edge lengths`. The area is
 * exact; lengths of slanted edges are taken to 40 digits.
 *
 * @param options.outline - `{ unit, points: [x, y][] }` or a list of `{ x, y }` lengths; 3 to 1000
 *   points in order, either way round, closed by itself
 * @returns area [area], perimeter [length], centroid [length, length]
 * @throws `TOO_FEW_POINTS`, `SELF_INTERSECTION`, `POINTS_COINCIDE`, `ZERO_AREA` and the reading codes
 * @source derived
 * @example
 * const { area, perimeter } = outlineArea({ outline: { unit: 'ft', points: [[0, 0], [3, 0], [0, 4]] } });
 * area.to('ft2').toString() //=> '6'
 * perimeter.to('ft').toString() //=> '12'
 */
export function outlineArea(options: { readonly outline: OutlineInput }): OutlineArea {
  const reader = makeReader();
  const outline = readOutline(reader, reader.object(options, [])['outline'], ['outline']);
  reader.finish();
  const measured = measureOutline(outline);
  const area = measured.area;
  return withWorking(measured, () => [
    {
      title: 'Area of the outline',
      formula: 'A = |sum(x(i) y(i+1) - x(i+1) y(i))| / 2',
      given: [given('n', 'points', outline.points.length)],
      result: given('A', 'area', area),
      source: 'derived',
    },
  ]);
}

/** Measures an outline that has been read. Internal. */
export function measureOutline({ origin, points }: Outline) {
  const twice = doubleArea(points);
  const sum = moments(points);
  const thrice = multiplyRatios(twice, wholeRatio(3));
  const centre = { x: divideRatios(sum.x, thrice), y: divideRatios(sum.y, thrice) };
  return {
    area: areaOfDouble(twice),
    perimeter: fromSI('length', perimeterOf(points)),
    centroid: pointFrom(origin, centre),
    orientation: signOfRatio(twice) < 0 ? ('clockwise' as const) : ('counter-clockwise' as const),
  };
}

const HALF: Ratio = Object.freeze({ n: 5, d: 10 });

/** Twice the signed area: positive where the points run counter-clockwise. Internal. */
export function doubleArea(points: readonly Vector[]): Ratio {
  let sum: Ratio = ZERO_RATIO;
  forEachEdge(points, (a, b) => {
    sum = addRatios(sum, cross(a, b));
  });
  return sum;
}

/** The area that a signed double area stands for. Internal. */
export const areaOfDouble = (twice: Ratio): Area =>
  fromSI('area', multiplyRatios(signOfRatio(twice) < 0 ? negateRatio(twice) : twice, HALF));

function moments(points: readonly Vector[]): Vector {
  let sum: Vector = { x: ZERO_RATIO, y: ZERO_RATIO };
  forEachEdge(points, (a, b) => {
    sum = plus(sum, scaled(plus(a, b), cross(a, b)));
  });
  return sum;
}

function perimeterOf(points: readonly Vector[]): Ratio {
  let sum: Ratio = ZERO_RATIO;
  forEachEdge(points, (a, b) => {
    sum = addRatios(sum, norm(minus(b, a)));
  });
  return sum;
}

function forEachEdge(points: readonly Vector[], visit: (a: Vector, b: Vector) => void): void {
  points.forEach((a, index) => {
    visit(a, points[(index + 1) % points.length] ?? a);
  });
}
