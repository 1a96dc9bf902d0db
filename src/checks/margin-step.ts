import type { SourceId } from '../sources/catalogue.js';
import type { Dimension } from '../units/catalogue.js';
import type { AnyQuantity, Quantity } from '../units/quantity.js';
import { formulaStep, given, type Step, type StepInput } from '../working.js';
import type { Limits } from './limits.js';

/** A value between limits, for the working of its margin. */
interface BetweenLimits {
  readonly title: string;
  /** The value; its limits have its symbol, with 0 for the minimum and 1 for the maximum. */
  readonly value: StepInput;
  readonly limits: Limits<AnyQuantity | null>;
  readonly margin: AnyQuantity;
  readonly source: SourceId;
}

/** The working of the margin of a value to the nearer of its limits. Internal. */
export function marginStep({ title, value, limits, margin, source }: BetweenLimits): Step {
  const { symbol } = value;
  const least = limits.minimum && given(`${symbol}0`, 'minimum', limits.minimum);
  const most = limits.maximum && given(`${symbol}1`, 'maximum', limits.maximum);
  const parts = [
    ...(least === null ? [] : [`${symbol} - ${least.symbol}`]),
    ...(most === null ? [] : [`${most.symbol} - ${symbol}`]),
  ];
  return formulaStep({
    title,
    formula: parts.length === 1 ? `m = ${parts.join('')}` : `m = min(${parts.join(', ')})`,
    given: [value, ...[least, most].filter((limit) => limit !== null)],
    result: given('m', 'margin', margin),
    source,
  });
}

/** The working of the margin of a difference between what is allowed above and below. Internal. */
export const bandStep = <D extends Dimension>(
  title: string,
  difference: StepInput,
  { over, under }: { readonly over: Quantity<D>; readonly under: Quantity<D> },
  { margin, source }: { readonly margin: Quantity<D>; readonly source: SourceId },
): Step =>
  formulaStep({
    title,
    formula: `m = min(over - ${difference.symbol}, under + ${difference.symbol})`,
    given: [
      difference,
      given('over', 'allowed above', over),
      given('under', 'allowed below', under),
    ],
    result: given('m', 'margin', margin),
    source,
  });
