import { entry } from '../invariant.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { cross, minus, norm, plus, squared, type Vector } from '../units/vector.js';

/** A circle through points, exact but for the root in its radius. Internal. */
export interface ExactCircle {
  readonly centre: Vector;
  readonly radius: Ratio;
}

/** The circle through three points; undefined if they are in line. Internal. */
export function circleOfThree([a, b, c]: readonly [Vector, Vector, Vector]):
  ExactCircle | undefined {
  const [p, q] = [minus(b, a), minus(c, a)];
  const twice = addRatios(cross(p, q), cross(p, q));
  if (signOfRatio(twice) === 0) return undefined;
  const [pp, qq] = [squared(p), squared(q)];
  const over = (first: Ratio, second: Ratio): Ratio =>
    divideRatios(subtractRatios(first, second), twice);
  const fromFirst = {
    x: over(multiplyRatios(q.y, pp), multiplyRatios(p.y, qq)),
    y: over(multiplyRatios(p.x, qq), multiplyRatios(q.x, pp)),
  };
  return { centre: plus(a, fromFirst), radius: norm(fromFirst) };
}

/** The circle that goes through every one of more points, if there is one. Internal. */
export function circleOfAll(points: readonly Vector[]): ExactCircle | undefined {
  const at = (part: number): Vector => entry(points, Math.floor(part * points.length));
  const first = at(0);
  const circle = circleOfThree([first, at(1 / 3), at(2 / 3)]);
  if (circle === undefined) return undefined;
  const square = squared(minus(first, circle.centre));
  const isOn = (point: Vector): boolean =>
    compareRatios(squared(minus(point, circle.centre)), square) === 0;
  return points.every(isOn) ? circle : undefined;
}
