import { Decimal40, type Decimal } from '../units/decimal.js';

const MOST_STEPS = 60;
/** The error after a step is of the order of that step times the one before. */
const SETTLED = new Decimal40('1e-36');

/**
 * Finds where a smooth function takes a value, by secant steps from a close start, to some 35
 * digits. Internal.
 */
export function solveFor(
  value: Decimal,
  { start, of }: { readonly start: Decimal; readonly of: (at: Decimal) => Decimal },
): Decimal {
  let [before, now] = [start.times('1.0000001'), start];
  let [wasOff, off] = [of(before).minus(value), of(now).minus(value)];
  for (let k = 0; k < MOST_STEPS && !off.eq(wasOff); k += 1) {
    const last = now.minus(before);
    const step = off.times(last).div(off.minus(wasOff));
    [before, wasOff] = [now, off];
    now = now.minus(step);
    if (step.times(last).abs().lte(now.times(now).times(SETTLED))) break;
    off = of(now).minus(value);
  }
  return now;
}
