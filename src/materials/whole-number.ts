import { fault } from '../errors.js';
import { isSmall, ONE_RATIO, type Ratio } from '../units/ratio.js';
import { roundQuotient } from '../units/round-ratio.js';

/** The least whole number that is not below `a / b`, exactly. Internal. */
export const wholeUp = (a: Ratio, b: Ratio = ONE_RATIO): number =>
  counted(roundQuotient(a, b, 'up'));

/** The greatest whole number that is not above `a / b`, exactly; a is not negative. Internal. */
export const wholeDown = (a: Ratio, b: Ratio = ONE_RATIO): number =>
  counted(roundQuotient(a, b, 'down'));

function counted(count: Ratio): number {
  if (!isSmall(count)) throw fault('CAPACITY_EXCEEDED', 'more pieces than can be counted');
  return count.n;
}
