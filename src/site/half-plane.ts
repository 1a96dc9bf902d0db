import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { cross, dot, minus, norm, plus, scaled, squared, type Vector } from '../units/vector.js';

/** The side of a line on which a value of the point is not negative. Internal. */
export type HalfPlane = (point: Vector) => Ratio;

/** The other side. Internal. */
export const outsideOf =
  (side: HalfPlane): HalfPlane =>
  (point) =>
    negateRatio(side(point));

/**
 * The part of an outline on one side of a line. Where a concave outline falls into several parts they
 * stay joined along the line by edges there and back, which leaves the area right. Internal.
 */
export function clip(points: readonly Vector[], side: HalfPlane): Vector[] {
  const kept: Vector[] = [];
  points.forEach((point, index) => {
    const next = points[(index + 1) % points.length] ?? point;
    const [here, there] = [side(point), side(next)];
    const [isIn, isNextIn] = [signOfRatio(here), signOfRatio(there)];
    if (isIn >= 0) kept.push(point);
    if (isIn * isNextIn < 0) {
      const share = divideRatios(here, subtractRatios(here, there));
      kept.push(plus(point, scaled(minus(next, point), share)));
    }
  });
  return kept;
}

/**
 * The sides of the strip round a line from a to b, as wide as twice the reach, carried on by the
 * reach past both ends. Internal.
 */
export function stripSides(a: Vector, b: Vector, reach: Ratio): readonly HalfPlane[] {
  const along = minus(b, a);
  const size = norm(along);
  const side = multiplyRatios(reach, size);
  const past = addRatios(squared(along), side);
  return [
    (p) => addRatios(side, cross(along, minus(p, a))),
    (p) => subtractRatios(side, cross(along, minus(p, a))),
    (p) => addRatios(side, dot(along, minus(p, a))),
    (p) => subtractRatios(past, dot(along, minus(p, a))),
  ];
}
