import { fault } from '../../errors.js';

/** What stands after the whole number: no trailing zeros. */
const HUNDREDTHS: readonly string[] = Array.from({ length: 100 }, (_, k) => `${k / 100}`.slice(1));

/**
 * A coordinate as it is written: rounded to 2 places, no trailing zeros. Its two parts are written
 * apart, since whole numbers turn into text many times faster. Internal.
 *
 * @throws `NOT_FINITE`
 */
export function coordinateText(value: number): string {
  const hundredths = Math.round(value * 100);
  if (!Number.isSafeInteger(hundredths)) {
    throw fault('NOT_FINITE', 'a figure is too large to draw. Check the digits and the units');
  }
  const size = Math.abs(hundredths);
  return `${hundredths < 0 ? '-' : ''}${Math.trunc(size / 100)}${HUNDREDTHS[size % 100] ?? ''}`;
}
