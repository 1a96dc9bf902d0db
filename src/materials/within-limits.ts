import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
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

/** Refuses limits `{ least, most }` that are the wrong way round. Internal. */
export function refuseCrossed(reader: Reader, isCrossed: boolean, path: FieldPath): void {
  if (!isCrossed) return;
  const message = 'less than least. Write the larger limit as most';
  reader.fail('LIMITS_CONTRADICT', [...path, 'most'], message);
}
