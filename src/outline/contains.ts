import { cross, minus, type Vector } from '../units/vector.js';

/**
 * True where a point lies inside a simple outline or on its edge: a ray to the right crosses an odd
 * number of edges. Exact. Internal.
 */
export function contains(points: readonly Vector[], p: Vector): boolean {
  let isInside = false;
  for (let index = 0; index < points.length; index += 1) {
    const a = points[index];
    const b = points[(index + 1) % points.length];
    if (a === undefined || b === undefined) continue;
    if (!within(a.y, b.y, p.y) || (p.x.gt(a.x) && p.x.gt(b.x))) continue;
    const side = sideOf(a, b, p);
    if (side === 0 && within(a.x, b.x, p.x)) return true;
    const isUpward = a.y.lte(p.y) && b.y.gt(p.y);
    const isDownward = a.y.gt(p.y) && b.y.lte(p.y);
    if ((isUpward && side > 0) || (isDownward && side < 0)) isInside = !isInside;
  }
  return isInside;
}

const sideOf = (a: Vector, b: Vector, p: Vector): number => cross(minus(b, a), minus(p, a)).cmp(0);

const within = (a: Vector['x'], b: Vector['x'], value: Vector['x']): boolean =>
  a.lte(b) ? value.gte(a) && value.lte(b) : value.gte(b) && value.lte(a);
