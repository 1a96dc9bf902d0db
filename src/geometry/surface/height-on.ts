import { corner, type Surface } from './triangulation.js';
import { at } from '../floats.js';

const PLACE = new Float64Array(3);

/** Height of triangle j of a surface at a place in it. Internal. */
export function heightOn(surface: Surface, j: number, x: number, y: number): number {
  PLACE[0] = x;
  PLACE[1] = y;
  PLACE[2] = 0;
  takeHeights(surface, j, PLACE, 1);
  return 0 - at(PLACE, 2);
}

/**
 * Takes the heights of triangle j of a surface off `count` places in it: x, y and a height in turn.
 * A height goes by the areas opposite the corners; rounding that puts a place outside is held at the
 * edge, so that slivers give no wild heights. In one loop: heights handed back one by one would each
 * be put in memory. Internal.
 */
export function takeHeights(
  surface: Surface,
  j: number,
  places: Float64Array,
  count: number,
): void {
  const { xy, z } = surface;
  const a = corner(surface, j, 0);
  const b = corner(surface, j, 1);
  const c = corner(surface, j, 2);
  const xa = at(xy, 2 * a);
  const ya = at(xy, 2 * a + 1);
  const xb = at(xy, 2 * b);
  const yb = at(xy, 2 * b + 1);
  const xc = at(xy, 2 * c);
  const yc = at(xy, 2 * c + 1);
  const za = at(z, a);
  const zb = at(z, b);
  const zc = at(z, c);
  for (let p = 0; p < 3 * count; p += 3) {
    const x = at(places, p);
    const y = at(places, p + 1);
    const wa = Math.max(0, (yb - y) * (xc - x) - (xb - x) * (yc - y));
    const wb = Math.max(0, (yc - y) * (xa - x) - (xc - x) * (ya - y));
    const wc = Math.max(0, (ya - y) * (xb - x) - (xa - x) * (yb - y));
    const sum = wa + wb + wc;
    const height = sum > 0 ? za + (wb * (zb - za) + wc * (zc - za)) / sum : (za + zb + zc) / 3;
    places[p + 2] = at(places, p + 2) - height;
  }
}
