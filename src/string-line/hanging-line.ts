import type { Reader } from '../input.js';
import type { ForceInput, LineWeightInput } from '../units/construct.js';
import { Decimal40, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Force, type Length, type LineWeight } from '../units/quantity.js';
import { TENSION, WEIGHT } from './limits.js';

/** What a string is: how much it weighs and how hard it is pulled. */
export interface StringInput {
  /** The pull, level, in the string. */
  readonly tension: ForceInput;
  /** Its weight per length, as it hangs: wet if it is wet. */
  readonly weightPerLength: LineWeightInput;
}

/** A string that has been read. Internal. */
export interface HangingLine {
  readonly tension: Force;
  readonly weight: LineWeight;
}

/** Reads tension and weight of a string. Internal. */
export function readString(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: readonly string[],
): HangingLine {
  const tension = reader.quantity('force', fields['tension'], [...path, 'tension'], TENSION);
  const at = [...path, 'weightPerLength'];
  const weight = reader.quantity('line-weight', fields['weightPerLength'], at, WEIGHT);
  return { tension, weight };
}

/** A span that is far too slack: it would hang by half its length and more. Internal. */
export const isSlack = (span: Length, { tension, weight }: HangingLine): boolean =>
  weight.times(span).compare(tension.times(4)) > 0;

/** What to say of it. Internal. */
export const SLACK =
  'the string would hang by half its span: pull it tighter, or see to the units of tension and weight';

/** The tension over the weight per length: the one length that shapes a hanging string. Internal. */
export const shapeOf = ({ tension, weight }: HangingLine): Length => tension.dividedBy(weight);

/** Where along a span: all as decimals in metres. Internal. */
export interface Place {
  readonly shape: Decimal;
  readonly span: Decimal;
  /** Rise of the far end over the span. */
  readonly slope: Decimal;
}

/**
 * Sag of a catenary below the straight between its ends, at a place counted from the middle of the
 * span. With `z = span / (2 shape)` and the tilt p from `sinh p = slope z / sinh z`, and s from the
 * middle over the shape: `shape (cosh p (cosh z - cosh s) - sinh p sinh s) + slope shape s`.
 *
 * The difference of the cosines is taken as a product, so that taut strings lose no digits. Internal.
 */
export function catenarySag({ shape, span, slope }: Place, fromMiddle: Decimal): Decimal {
  const [z, s] = [span.div(shape).div(2), fromMiddle.div(shape)];
  const difference = sinh(z.plus(s).div(2))
    .times(sinh(z.minus(s).div(2)))
    .times(2);
  if (slope.isZero()) return shape.times(difference);
  const tilt = slope.times(z).div(sinh(z));
  const upright = Decimal40.sqrt(tilt.times(tilt).plus(1));
  return shape.times(
    upright
      .times(difference)
      .minus(tilt.times(sinh(s)))
      .plus(slope.times(s)),
  );
}

const sinh = (value: Decimal): Decimal => Decimal40.sinh(value);

/** `w x (L - x) / (2 H)`, for an inclined string over the cosine of its slope: exact when level. Internal. */
export function parabolaSag(
  span: Length,
  from: Length,
  of: { readonly shape: Length; readonly slope: Decimal },
): Length {
  const level = from.times(span.minus(from)).dividedBy(of.shape).dividedBy(2);
  if (of.slope.isZero()) return level;
  return level.times(Decimal40.sqrt(of.slope.times(of.slope).plus(1)));
}

/** A decimal of metres as a length. Internal. */
export const metres = (value: Decimal): Length => fromSIDecimal('length', value);
