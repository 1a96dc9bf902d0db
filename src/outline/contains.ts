import { compareRatios, signOfRatio, type Ratio } from '../units/ratio.js';
import { cross, minus, type Vector } from '../units/vector.js';

/**
 * True if a point is inside a simple outline or on its edge: a ray to the right crosses an odd
 * number of edges. Exact. Internal.
 */
export function contains(points: readonly Vector[], p: Vector): boolean {
  let isInside = false;
  for (let index = 0; index < points.length; index += 1) {
    const a = points[index];
    const b = points[(index + 1) % points.length];
    if (a === undefined || b === undefined || !isBetween(a.y, b.y, p.y)) continue;
    const side = signOfRatio(cross(minus(b, a), minus(p, a)));
    if (side === 0 && isBetween(a.x, b.x, p.x)) return true;
    const [startsAbove, endsAbove] = [compareRatios(a.y, p.y) > 0, compareRatios(b.y, p.y) > 0];
    if (startsAbove !== endsAbove && side === (endsAbove ? 1 : -1)) isInside = !isInside;
  }
  return isInside;
}

const isBetween = (a: Ratio, b: Ratio, value: Ratio): boolean =>
  compareRatios(value, a) * compareRatios(value, b) <= 0;
