import { fault } from '../../errors.js';

/** Deeper than this, something was entered wrongly. In metres. */
const MOST_DEPTH = 100;

/**
 * The depth in metres at which a rising need reaches what there is: bisected until no float is left
 * between. 0 for nothing. Internal.
 */
export function solveDepth(needed: (depth: number) => number, have: number): number {
  if (have === 0) return 0;
  let low = 0;
  let high = 1;
  while (needed(high) < have) {
    low = high;
    high *= 2;
    if (high > MOST_DEPTH) {
      const message = `frost would go below ${MOST_DEPTH} m: the ground is too dry for the method, or a digit or unit is wrong`;
      throw fault('OUT_OF_RANGE', message, { most: MOST_DEPTH }, ['layers']);
    }
  }
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return high;
    if (needed(middle) < have) low = middle;
    else high = middle;
  }
}
