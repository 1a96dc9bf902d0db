import { makeReader } from '../input.js';
import { Decimal40, Wide, ZERO, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Area, type Length } from '../units/quantity.js';
import { minus, norm, type Vector } from '../units/vector.js';
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
  const [sumX, sumY] = moments(points);
  const thrice = twice.times(3);
  const x = Decimal40.div(sumX, thrice);
  const y = Decimal40.div(sumY, thrice);
  return {
    area: areaOfDouble(twice),
    perimeter: fromSIDecimal('length', perimeterOf(points)),
    centroid: {
      x: origin.x.plus(fromSIDecimal('length', x)),
      y: origin.y.plus(fromSIDecimal('length', y)),
    },
    orientation: twice.isNegative() ? ('clockwise' as const) : ('counter-clockwise' as const),
  };
}

/** Twice the signed area: positive where the points run counter-clockwise. Internal. */
export function doubleArea(points: readonly Vector[]): Decimal {
  let sum: Decimal = ZERO;
  forEachEdge(points, (a, b) => {
    sum = sum.plus(crossWide(a, b));
  });
  return sum;
}

/** The area that a signed double area stands for. Internal. */
export const areaOfDouble = (twice: Decimal): Area =>
  fromSIDecimal('area', Wide.mul(twice.abs(), '0.5'));

function moments(points: readonly Vector[]): readonly [Decimal, Decimal] {
  let [sumX, sumY]: [Decimal, Decimal] = [ZERO, ZERO];
  forEachEdge(points, (a, b) => {
    const part = crossWide(a, b);
    sumX = sumX.plus(part.times(a.x.plus(b.x)));
    sumY = sumY.plus(part.times(a.y.plus(b.y)));
  });
  return [sumX, sumY];
}

function perimeterOf(points: readonly Vector[]): Decimal {
  let sum: Decimal = ZERO;
  forEachEdge(points, (a, b) => {
    sum = sum.plus(norm(minus(b, a)));
  });
  return sum;
}

const crossWide = (a: Vector, b: Vector): Decimal => Wide.mul(a.x, b.y).minus(Wide.mul(b.x, a.y));

function forEachEdge(points: readonly Vector[], visit: (a: Vector, b: Vector) => void): void {
  points.forEach((a, index) => {
    visit(a, points[(index + 1) % points.length] ?? a);
  });
}
