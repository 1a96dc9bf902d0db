import { custom, object, quantity } from '../input/field.js';
import { COUNTED_DISTANCE, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios, wholeRatio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';

/** A rule for misclosures, `k x sqrt(n)`: n counts set-ups, or distances of `per`. */
export interface MisclosureRule {
  /** Misclosure for n = 1 [length], more than 0 and at most 10 m. */
  readonly k: LengthInput;
  /** The word `set-up`, or a distance such as 1 km [length], more than 0 and at most 100 km. */
  readonly per: LengthInput;
}

const distance = quantity(COUNTED_DISTANCE);

const per: Field<'set-up' | Length> = custom((reader, value, path) =>
  value === 'set-up' ? value : distance.read(reader, value, path),
);

const RULE = shapeOf<MisclosureRule>()({ k: quantity(TOLERANCE_OF_SOME), per });

/** A rule that has been read. Internal. */
export type ReadRule = Values<typeof RULE>;

/** A rule for misclosures. Internal. */
export const misclosureRule: Field<ReadRule> = object(RULE);

/** The misclosure that a rule allows over a number of set-ups, or over a distance. Internal. */
export function allowedBy(
  rule: ReadRule,
  line: { readonly setUps: number; readonly distance: Length },
): Length {
  const n =
    rule.per === 'set-up'
      ? wholeRatio(line.setUps)
      : divideRatios(exactOf(line.distance), exactOf(rule.per));
  return fromSI('length', multiplyRatios(exactOf(rule.k), squareRoot(n)));
}
