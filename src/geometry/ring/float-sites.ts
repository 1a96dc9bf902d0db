import { orient2d } from 'robust-predicates';
import type { Sites } from './sweep-for-crossing.js';

/** Points of closed rings in floats, with predicates that are exact all the same. Internal. */
export function floatSites(rings: readonly Float64Array[]): Sites {
  const starts = [0];
  for (const ring of rings) starts.push((starts.at(-1) ?? 0) + ring.length / 2);
  const xy = rings.length === 1 ? (rings[0] ?? EMPTY) : joined(rings);
  const x = (k: number): number => xy[2 * k] ?? 0;
  const y = (k: number): number => xy[2 * k + 1] ?? 0;
  return {
    starts,
    compare(a, b) {
      const order = x(a) - x(b);
      return order === 0 ? y(a) - y(b) : order;
    },
    sideOf(p, q, r) {
      // the package counts y down: negative is to the left
      const turn = orient2d(x(p), y(p), x(q), y(q), x(r), y(r));
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
