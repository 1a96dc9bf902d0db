import type { Verdict } from '../verdict.js';
import {
  addRatios,
  compareRatios,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';

/** Limits, both or one of them; a value on a limit is within. Internal. */
export interface Limits {
  readonly least?: Ratio | undefined;
  readonly most?: Ratio | undefined;
}

/**
 * Compares a value that may be off by `doubt` either way with limits: `pass` where all of it lies
 * within, `fail` where all of it lies outside, else `unclear`. Internal.
 */
export function verdictWithin(value: Ratio, limits: Limits, doubt: Ratio = ZERO_RATIO): Verdict {
  const { least, most } = limits;
  const [low, high] = [subtractRatios(value, doubt), addRatios(value, doubt)];
  const isUnder = (a: Ratio) => least !== undefined && compareRatios(a, least) < 0;
  const isOver = (a: Ratio) => most !== undefined && compareRatios(a, most) > 0;
  if (isUnder(high) || isOver(low)) return 'fail';
  return isUnder(low) || isOver(high) ? 'unclear' : 'pass';
}
