import { at } from '../floats.js';
import type { Triangulation } from './triangulation.js';

/** Of the spacing of four points: what no survey can tell from a circle. */
const ON_CIRCLE = 1e-11;
/** Coordinates are rounded: so many of their last digits may be off together. */
const DIGITS = 16;
/** Of the fourth power of the spacing: no closer look is needed beyond this; most edges end here. */
const SURELY_OFF = 1e-6;
/** Corners flatter than this, of the square of the spacing, belong to slivers along the hull. */
const FLAT = 1e-9;

/**
 * The edges between two triangles whose four corners lie on one circle, so that either diagonal would
 * do; one half-edge each. Four points count as on a circle to 1e-11 of their spacing, or as far as the
 * rounding of coordinates can tell. Internal.
 *
 * @param grain - the last digit of the coordinates, in their unit
 */
export function openEdges({ xy, triangles, halfedges }: Triangulation, grain: number): number[] {
  const found: number[] = [];
  for (let edge = 0; edge < halfedges.length; edge += 1) {
    const other = halfedges[edge] ?? -1;
    if (other < edge) continue;
    const a = 2 * (triangles[edge] ?? 0);
    const b = 2 * (triangles[edge % 3 === 2 ? edge - 2 : edge + 1] ?? 0);
    const c = 2 * (triangles[edge % 3 === 0 ? edge + 2 : edge - 1] ?? 0);
    const d = 2 * (triangles[other % 3 === 0 ? other + 2 : other - 1] ?? 0);
    const px = at(xy, d);
    const py = at(xy, d + 1);
    const ax = at(xy, a) - px;
    const ay = at(xy, a + 1) - py;
    const bx = at(xy, b) - px;
    const by = at(xy, b + 1) - py;
    const cx = at(xy, c) - px;
    const cy = at(xy, c + 1) - py;
    const aa = ax * ax + ay * ay;
    const bb = bx * bx + by * by;
    const cc = cx * cx + cy * cy;
    const bc = bx * cy - by * cx;
    const ca = cx * ay - cy * ax;
    const ab = ax * by - ay * bx;
    const power = Math.abs(aa * bc + bb * ca + cc * ab);
    const square = Math.max(aa, bb, cc);
    if (power > SURELY_OFF * square * square) continue;
    const size = Math.abs(aa * bc) + Math.abs(bb * ca) + Math.abs(cc * ab);
    if (power > (ON_CIRCLE + (DIGITS * grain) / Math.sqrt(square)) * size) continue;
    const flat = FLAT * square;
    // the four corners: d with its neighbours, c likewise, and the two ends of the diagonal
    const far = ab + bc + ca;
    const isConvex =
      Math.abs(ab) > flat && Math.abs(far) > flat && Math.abs(bc) > flat && Math.abs(ca) > flat;
    if (isConvex && bc > 0 === ca > 0) found.push(edge);
  }
  return found;
}
