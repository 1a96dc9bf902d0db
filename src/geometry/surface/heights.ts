import { boundsOf } from '../bounds.js';
import { heightOn } from './height-on.js';
import { holds, locate } from './locate.js';
import type { Surface } from './triangulation.js';

/**
 * Heights of a surface at one place after another, each looked for from the one before; undefined
 * outside. Where points on one circle can be joined in several ways, the mean over them. Internal.
 */
export function makeHeights(surface: Surface): (x: number, y: number) => number | undefined {
  const isNear = makeBox(surface.xy);
  const { parts } = surface;
  const drawn = parts && { ...surface, triangles: parts.triangles };
  let last = 0;
  return (x, y) => {
    const triangle = isNear(x, y) ? locate(surface, x, y, last) : -1;
    if (triangle < 0) return undefined;
    last = triangle;
    if (parts === undefined || drawn === undefined) return heightOn(surface, triangle, x, y);
    const part = parts.partOf[triangle] ?? 0;
    const [ways, size, first] = [parts.ways[part], parts.size[part], parts.first[part]];
    if (ways === undefined || size === undefined || first === undefined) return undefined;
    if (ways === 1) return heightOn(drawn, first, x, y);
    let sum = 0;
    for (let way = 0; way < ways; way += 1) {
      const start = first + way * size;
      let one = start;
      while (one + 1 < start + size && !holds(drawn, one, x, y)) one += 1;
      sum += heightOn(drawn, one, x, y);
    }
    return sum / ways;
  };
}

/** Tells whether a place lies in the box round some points. */
function makeBox(xy: Float64Array): (x: number, y: number) => boolean {
  const { west, south, east, north } = boundsOf([xy]);
  return (x, y) => x >= west && x <= east && y >= south && y <= north;
}
