import { corner, type Surface } from './triangulation.js';
import { at } from '../floats.js';

/**
 * Height of triangle j of a surface at a place in it, by the areas opposite its corners; rounding
 * that puts the place outside is held at the edge, so that slivers give no wild heights. Internal.
 */
export function heightOn(surface: Surface, j: number, x: number, y: number): number {
  const { xy, z } = surface;
  const a = corner(surface, j, 0);
  const b = corner(surface, j, 1);
  const c = corner(surface, j, 2);
  const ax = at(xy, 2 * a) - x;
  const ay = at(xy, 2 * a + 1) - y;
  const bx = at(xy, 2 * b) - x;
  const by = at(xy, 2 * b + 1) - y;
  const cx = at(xy, 2 * c) - x;
  const cy = at(xy, 2 * c + 1) - y;
  const wa = Math.max(0, by * cx - bx * cy);
  const wb = Math.max(0, cy * ax - cx * ay);
  const wc = Math.max(0, ay * bx - ax * by);
  const sum = wa + wb + wc;
  const za = at(z, a);
  const zb = at(z, b);
  const zc = at(z, c);
  return sum > 0 ? za + (wb * (zb - za) + wc * (zc - za)) / sum : (za + zb + zc) / 3;
}
