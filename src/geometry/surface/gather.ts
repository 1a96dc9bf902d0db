import type { Meeting } from './meeting.js';
import { across, type Triangulation } from './triangulation.js';

/** Finds the triangles of a mesh that meet a given one. Internal. */
export interface Gatherer {
  /**
   * All triangles of the mesh that share area with triangle i (`least` 1) or touch it (0), found from
   * one that does. The list is the gatherer's own, until the next call.
   */
  readonly gather: (i: number, seed: number, least: 0 | 1) => readonly number[];
}

/** Makes a gatherer of the triangles of `mesh`, the second one of a meeting. Internal. */
export function makeGatherer(meeting: Meeting, mesh: Triangulation): Gatherer {
  /** In which turn a triangle was looked at last. */
  const seen = new Int32Array(mesh.triangles.length / 3).fill(-1);
  const found: number[] = [];
  let turn = -1;
  return {
    gather(i, seed, least) {
      turn += 1;
      meeting.take(i);
      found.length = 0;
      found.push(seed);
      seen[seed] = turn;
      // the list grows while it is gone through
      for (const near of found) {
        for (let k = 0; k < 3; k += 1) {
          const other = across(mesh, near, k);
          if (other < 0 || seen[other] === turn) continue;
          seen[other] = turn;
          if (meeting.of(other) >= least) found.push(other);
        }
      }
      return found;
    },
  };
}
