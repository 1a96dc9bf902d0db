import { orient2d } from 'robust-predicates';
import type { Sites } from './sweep-for-crossing.js';

/** Points of closed rings in floats, with exact predicates. Internal. */
export function floatSites(rings: readonly Float64Array[]): Sites {
  const starts = [0];
  for (const ring of rings) starts.push((starts.at(-1) ?? 0) + ring.length / 2);
  const xy = rings.length === 1 ? (rings[0] ?? EMPTY) : joined(rings);
  const at = (k: number): number => xy[k] ?? 0;
  return {
    starts,
    compare(a, b) {
      const order = at(2 * a) - at(2 * b);
      return order === 0 ? at(2 * a + 1) - at(2 * b + 1) : order;
    },
    areApart(a1, a2, b1, b2) {
      const one = at(2 * a1 + 1);
      const two = at(2 * a2 + 1);
      const three = at(2 * b1 + 1);
      const four = at(2 * b2 + 1);
      return one < three
        ? one < four && two < three && two < four
        : one > three && one > four && two > three && two > four;
    },
    sideOf(p, q, r) {
      // the package takes y as pointing down: negative is to the left
      const turn = orient2d(
        at(2 * p),
        at(2 * p + 1),
        at(2 * q),
        at(2 * q + 1),
        at(2 * r),
        at(2 * r + 1),
      );
      return turn < 0 ? 1 : turn > 0 ? -1 : 0;
    },
  };
}

const EMPTY = new Float64Array(0);

function joined(rings: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(rings.reduce((sum, ring) => sum + ring.length, 0));
  let at = 0;
  for (const ring of rings) {
    all.set(ring, at);
    at += ring.length;
  }
  return all;
}
