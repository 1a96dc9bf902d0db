import { entry, known, lastOf } from '../invariant.js';
import { compareRatios, signOfRatio } from '../units/ratio.js';
import { cross, minus, type Vector } from '../units/vector.js';

/** The convex outline of points, counter-clockwise, without points on its sides. Exact. Internal. */
export function convexHull(points: readonly Vector[]): Vector[] {
  const inOrder = [...points].sort(fromTheLeft);
  const lower = chain(inOrder);
  const upper = chain(inOrder.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

/** True if a point lies inside a convex outline or on it. Internal. */
export const isInHull = (hull: readonly Vector[], p: Vector): boolean =>
  hull.every((a, k) => {
    const b = entry(hull, (k + 1) % hull.length);
    return signOfRatio(cross(minus(b, a), minus(p, a))) >= 0;
  });

function fromTheLeft(a: Vector, b: Vector): number {
  const order = compareRatios(a.x, b.x);
  return order === 0 ? compareRatios(a.y, b.y) : order;
}

function chain(points: readonly Vector[]): Vector[] {
  const hull: Vector[] = [];
  for (const point of points) {
    while (hull.length > 1 && !turnsLeft(hull, point)) hull.pop();
    hull.push(point);
  }
  return hull;
}

function turnsLeft(hull: readonly Vector[], point: Vector): boolean {
  const [a, b] = [known(hull.at(-2), 'such entry'), lastOf(hull)];
  return signOfRatio(cross(minus(b, a), minus(point, a))) > 0;
}
