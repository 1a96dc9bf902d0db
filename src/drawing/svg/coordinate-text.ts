import { fault } from '../../errors.js';

/**
 * A coordinate as it is written: rounded to 2 places, no trailing zeros. Internal.
 *
 * @throws `NOT_FINITE`
 */
export function coordinateText(value: number): string {
  if (!Number.isFinite(value)) {
    throw fault('NOT_FINITE', 'a figure is too large to draw. Check the digits and the units');
  }
  // a sum with 0 turns -0 into 0
  return `${Math.round(value * 100) / 100 + 0}`;
}
