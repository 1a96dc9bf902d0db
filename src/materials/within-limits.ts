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

/** A minimum, a maximum or both; a value on a limit is within. Internal. */
export interface Limits {
  readonly minimum?: Ratio | undefined;
  readonly maximum?: Ratio | undefined;
}

/**
 * Compares a value, uncertain by `doubt` either way, with limits: `pass` if the whole band is
 * within, `fail` if all of it is outside, else `unclear`. Internal.
 */
export function verdictWithin(value: Ratio, limits: Limits, doubt: Ratio = ZERO_RATIO): Verdict {
  const { minimum, maximum } = limits;
  const [low, high] = [subtractRatios(value, doubt), addRatios(value, doubt)];
  const isUnder = (a: Ratio) => minimum !== undefined && compareRatios(a, minimum) < 0;
  const isOver = (a: Ratio) => maximum !== undefined && compareRatios(a, maximum) > 0;
  if (isUnder(high) || isOver(low)) return 'fail';
  return isUnder(low) || isOver(high) ? 'unclear' : 'pass';
}

/** Refuses limits `{ minimum, maximum }` that are the wrong way round. Internal. */
export function refuseCrossed(reader: Reader, isCrossed: boolean, path: FieldPath): void {
  if (!isCrossed) return;
  const message = 'less than the minimum. Write the larger limit as maximum';
  reader.fail('LIMITS_CONTRADICT', [...path, 'maximum'], message);
}
