import { entry, lastOf } from '../invariant.js';
import { compareRatios, roughNumber, signOfRatio, ZERO_RATIO } from '../units/ratio.js';
import { cross, minus, type Vector } from '../units/vector.js';
import type { Sites } from '../geometry/ring/sweep-for-crossing.js';

/**
 * Upper bound of the rounding error of an orientation or comparison (coordinates, sums and
 * products), as a share of the largest coordinate, times the lengths involved.
 */
const ROUNDING = 1e-14;

/** Exact points of closed rings; floats decide if they can. Internal. */
export function exactSites(rings: readonly (readonly Vector[])[]): Sites {
  const points = rings.flat();
  const x = points.map((point) => roughNumber(point.x));
  const y = points.map((point) => roughNumber(point.y));
  const starts = [0];
  for (const ring of rings) starts.push(lastOf(starts) + ring.length);
  let largest = 0;
  for (let k = 0; k < points.length; k += 1) {
    largest = Math.max(largest, Math.abs(entry(x, k)), Math.abs(entry(y, k)));
  }
  const doubt = ROUNDING * largest;
  const at = (list: readonly number[], k: number): number => list[k] ?? 0;
  const exact = (k: number): Vector => points[k] ?? NOWHERE;
  return {
    starts,
    compare(a, b) {
      const dx = at(x, a) - at(x, b);
      if (Math.abs(dx) > doubt) return dx;
      const [p, q] = [exact(a), exact(b)];
      const order = compareRatios(p.x, q.x);
      return order === 0 ? compareRatios(p.y, q.y) : order;
    },
    areApart(a1, a2, b1, b2) {
      const one = at(y, a1);
      const two = at(y, a2);
      const three = at(y, b1);
      const four = at(y, b2);
      return (
        Math.max(one, two) + doubt < Math.min(three, four) ||
        Math.min(one, two) - doubt > Math.max(three, four)
      );
    },
    sideOf(p, q, r) {
      const ux = at(x, q) - at(x, p);
      const uy = at(y, q) - at(y, p);
      const vx = at(x, r) - at(x, p);
      const vy = at(y, r) - at(y, p);
      const turn = ux * vy - uy * vx;
      const lengths = Math.abs(ux) + Math.abs(uy) + Math.abs(vx) + Math.abs(vy);
      if (Math.abs(turn) > doubt * lengths) return turn > 0 ? 1 : -1;
      const from = exact(p);
      return signOfRatio(cross(minus(exact(q), from), minus(exact(r), from)));
    },
  };
}

/** Replaces a missing point. */
const NOWHERE: Vector = Object.freeze({ x: ZERO_RATIO, y: ZERO_RATIO });
