import { across, corner, inner, type Triangulation } from './triangulation.js';

/** True where a triangle holds a point, its edges counted. Exact. Internal. */
export function holds(mesh: Triangulation, triangle: number, x: number, y: number): boolean {
  return sideToLeave(mesh, triangle, x, y) < 0;
}

/** The first side that has the point outside, -1 for none. */
function sideToLeave(mesh: Triangulation, triangle: number, x: number, y: number): number {
  for (let k = 0; k < 3; k += 1) {
    const a = corner(mesh, triangle, k);
    const b = corner(mesh, triangle, k === 2 ? 0 : k + 1);
    if (inner(mesh, a, b, x, y) < 0) return k;
  }
  return -1;
}

/**
 * The triangle that holds a point, found by walking toward it from another; where the walk leaves the
 * mesh or goes round in circles, all triangles are looked through. -1 for a point outside. Internal.
 */
export function locate(mesh: Triangulation, x: number, y: number, from: number): number {
  const count = mesh.triangles.length / 3;
  let triangle = from;
  for (let steps = 0; steps < count && triangle >= 0; steps += 1) {
    const side = sideToLeave(mesh, triangle, x, y);
    if (side < 0) return triangle;
    triangle = across(mesh, triangle, side);
  }
  for (triangle = 0; triangle < count; triangle += 1) {
    if (holds(mesh, triangle, x, y)) return triangle;
  }
  return -1;
}
