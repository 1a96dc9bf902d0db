import { meeting } from './meeting.js';
import { across, type Triangulation } from './triangulation.js';

/** Finds the triangles of a mesh that meet a given one. Internal. */
export interface Gatherer {
  /**
   * All triangles of the mesh that share area with triangle i (`least` 1) or touch it (0), found from
   * one that does. The list is the gatherer's own, until the next call.
   */
  readonly gather: (i: number, seed: number, least: 0 | 1) => readonly number[];
}

/** Makes a gatherer of the triangles of `mesh` that meet triangles of `a`. Internal. */
export function makeGatherer(a: Triangulation, mesh: Triangulation): Gatherer {
  const seen = new Int32Array(mesh.triangles.length / 3).fill(-1);
  const found: number[] = [];
  return {
    gather(i, seed, least) {
      found.length = 0;
      found.push(seed);
      seen[seed] = i;
      // the list grows while it is gone through
      for (const near of found) {
        for (let k = 0; k < 3; k += 1) {
          const other = across(mesh, near, k);
          if (other < 0 || seen[other] === i) continue;
          seen[other] = i;
          if (meeting(a, i, mesh, other) >= least) found.push(other);
        }
      }
      return found;
    },
  };
}
