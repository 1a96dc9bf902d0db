import type { FieldPath } from '../errors.js';
import { quantity } from '../input/field.js';
import { FORCE, LINE_WEIGHT } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Values } from '../input/shape.js';
import type { ForceInput, LineWeightInput } from '../units/construct.js';
import { Decimal40, ZERO, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Length } from '../units/quantity.js';

/** A string: its weight and its tension. */
export interface StringInput {
  /** Level pull in the string [force], more than 0 and at most 10 000 kN. */
  readonly tension: ForceInput;
  /**
   * Weight per length as it hangs [line-weight], more than 0 and at most 1000 N/m: weigh 10 m of it,
   * wet if it will be wet. Grams and pounds per length count as weight under standard gravity.
   */
  readonly weightPerLength: LineWeightInput;
}

/** How a string is read. Internal. */
export const STRING = shapeOf<StringInput>()({
  tension: quantity(FORCE),
  weightPerLength: quantity(LINE_WEIGHT),
});

/** A string that has been read. Internal. */
export type HangingLine = Values<typeof STRING>;

/** Refuses a string so slack that it would sag by half its span or more. Internal. */
export function requireTaut(
  reader: Reader,
  { spans, line }: { readonly spans: readonly Length[]; readonly line: HangingLine },
  path: FieldPath,
): void {
  if (!spans.some((span) => isSlack(span, line))) return;
  const message =
    'the string would sag by half its span. Pull it tighter, or check the units of tension and weight';
  reader.fail('OUT_OF_RANGE', path, message);
}

const isSlack = (span: Length, { tension, weightPerLength }: HangingLine): boolean =>
  weightPerLength.times(span).compare(tension.times(4)) > 0;

/** Tension over weight per length: the length that sets the shape of a hanging string. Internal. */
export const shapeLength = ({ tension, weightPerLength }: HangingLine): Length =>
  tension.dividedBy(weightPerLength);

/** A span, as decimals in metres. Internal. */
export interface Place {
  readonly shape: Decimal;
  readonly span: Decimal;
  /** Rise of the far end over the span. */
  readonly slope: Decimal;
}

/**
 *
 * Sag of a catenary below the straight between its ties, at a level distance from the first of
 * them. With u and v the distances to both ties over the shape, `z = (u + v) / 2`,
 * `s = (u - v) / 2` and the tilt `sinh p = slope z / sinh z`:
 * `shape (2 cosh p sinh(u / 2) sinh(v / 2) - sinh p sinh s + slope s)`.
 *
 * The product replaces a difference of cosines, so taut strings lose no digits and a level string
 * has no sag at its ties. Internal.
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
