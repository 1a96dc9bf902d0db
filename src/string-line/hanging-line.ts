import type { Reader } from '../input/reader.js';
import type { ForceInput, LineWeightInput } from '../units/construct.js';
import { Decimal40, ZERO, type Decimal } from '../units/decimal.js';
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
 * Sag of a catenary below the straight between its ties, at a level distance from the first of them.
 * With u and v the ways to both ties over the shape, `z = (u + v) / 2`, `s = (u - v) / 2` and the tilt
 * `sinh p = slope z / sinh z`:
 * `shape (2 cosh p sinh(u / 2) sinh(v / 2) - sinh p sinh s + slope s)`.
 *
 * The product stands for a difference of cosines, so that taut strings lose no digits and a level
 * string has no sag at its ties. Internal.
 */
export function catenarySag({ shape, span, slope }: Place, from: Decimal): Decimal {
  const [u, v] = [from.div(shape), span.minus(from).div(shape)];
  if (u.isZero() || v.isZero()) return ZERO;
  const drop = sinh(u.div(2))
    .times(sinh(v.div(2)))
    .times(2);
  if (slope.isZero()) return shape.times(drop);
  const [z, s] = [u.plus(v).div(2), u.minus(v).div(2)];
  const tilt = slope.times(z).div(sinh(z));
  const upright = Decimal40.sqrt(tilt.times(tilt).plus(1));
  return shape.times(
    upright
      .times(drop)
      .minus(tilt.times(sinh(s)))
      .plus(slope.times(s)),
  );
}

/** The same in the middle of the span. Internal. */
export const midspanSag = (place: Place): Decimal => catenarySag(place, place.span.div(2));

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
