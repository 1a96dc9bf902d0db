import { at } from './floats.js';

/** West, south, east and north of something [m]. Internal. */
export interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** The box round the points of some lists, with `stride` floats a point, x and y first. Internal. */
export function boundsOf(lists: readonly Float64Array[], stride = 2): Box {
  let west = Infinity;
  let south = Infinity;
  let east = -Infinity;
  let north = -Infinity;
  for (const list of lists) {
    for (let k = 0; k < list.length; k += stride) {
      const x = at(list, k);
      const y = at(list, k + 1);
      if (x < west) west = x;
      if (x > east) east = x;
      if (y < south) south = y;
      if (y > north) north = y;
    }
  }
  return { west, south, east, north };
}
