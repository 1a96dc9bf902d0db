import { makeGatherer } from './gather.js';
import { locate } from './locate.js';
import { makeMeeting } from './meeting.js';
import type { OutlineMesh } from './outline-mesh.js';
import { corner, type Triangulation } from './triangulation.js';
import { at } from '../floats.js';

/** Tells how triangles of a surface lie to an outline. Internal. */
export interface InsideOutline {
  /** Whether triangle i lies inside or outside as a whole, or the outline cuts it. */
  place(i: number): 'inside' | 'outside' | 'cut';
  /** The cells inside the outline that share area with the triangle placed last, if it is cut. */
  cells(): readonly number[];
}

/** Compares a surface with an outline: each point is located once, by walking from the one before. */
export function insideOutline(surface: Triangulation, outline: OutlineMesh): InsideOutline {
  const { xy } = surface;
  const homes = new Int32Array(xy.length >> 1);
  let home = 0;
  for (let point = 0; point < homes.length; point += 1) {
    home = locate(outline, at(xy, 2 * point), at(xy, 2 * point + 1), Math.max(home, 0));
    homes[point] = home;
  }
  const meeting = makeMeeting(surface, outline);
  const { gather } = makeGatherer(meeting, outline);
  const homeOf = (i: number, k: number): number => homes[corner(surface, i, k)] ?? 0;
  const isInside = (cell: number): boolean => outline.inside[cell] === 1;
  const found: number[] = [];
  return {
    place(i) {
      const cell = homeOf(i, 0);
      if (cell === homeOf(i, 1) && cell === homeOf(i, 2)) {
        return isInside(cell) ? 'inside' : 'outside';
      }
      found.length = 0;
      let outside = 0;
      // all that touch it are looked at: those that share area hang together through them
      for (const near of gather(i, cell, 0)) {
        if (meeting.of(near) < 1) continue;
        if (isInside(near)) found.push(near);
        else outside += 1;
      }
      return outside === 0 ? 'inside' : found.length === 0 ? 'outside' : 'cut';
    },
    cells: () => found,
  };
}
