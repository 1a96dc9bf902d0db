import { at } from '../floats.js';
import { CUT, FILL } from './tally.js';
import type { Parts } from './triangulation.js';

/** What each way of drawing the open parts of a surface gives. Internal. */
export interface WaySums {
  /** Adds sums of a tally to a way of a part, so many times. */
  readonly add: (part: number, way: number, sums: Float64Array, share: number) => void;
  /** By how much cut or fill may be more or less than the mean over the ways, over all parts. */
  readonly doubt: () => number;
}

/** Of what a part holds: two ways that differ by less differ by rounding. */
const ROUNDING = 1e-12;

/** Makes the sums over the ways of a surface. Internal. */
export function makeWaySums({ ways }: Parts): WaySums {
  const starts = new Uint32Array(ways.length + 1);
  for (let part = 0; part < ways.length; part += 1) {
    const count = ways[part] ?? 1;
    starts[part + 1] = (starts[part] ?? 0) + (count > 1 ? count : 0);
  }
  const cuts = new Float64Array(starts[ways.length] ?? 0);
  const fills = new Float64Array(cuts.length);
  return {
    add(part, way, sums, share) {
      if (ways[part] === 1) return;
      const k = (starts[part] ?? 0) + way;
      cuts[k] = at(cuts, k) + share * at(sums, CUT);
      fills[k] = at(fills, k) + share * at(sums, FILL);
    },
    doubt() {
      let doubt = 0;
      for (let part = 0; part < ways.length; part += 1) {
        const [from, to] = [starts[part] ?? 0, starts[part + 1] ?? 0];
        if (to > from) doubt += doubtOf(cuts, fills, from, to);
      }
      return doubt;
    },
  };
}

/** Half of what the ways of one part differ by, in cut or in fill. */
function doubtOf(cuts: Float64Array, fills: Float64Array, from: number, to: number): number {
  let [mostCut, leastCut, mostFill, leastFill] = [0, Infinity, 0, Infinity];
  for (let k = from; k < to; k += 1) {
    mostCut = Math.max(mostCut, at(cuts, k));
    leastCut = Math.min(leastCut, at(cuts, k));
    mostFill = Math.max(mostFill, at(fills, k));
    leastFill = Math.min(leastFill, at(fills, k));
  }
  const spread = Math.max(mostCut - leastCut, mostFill - leastFill);
  return spread > ROUNDING * (mostCut + mostFill) ? spread / 2 : 0;
}
