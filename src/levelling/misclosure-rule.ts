import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios, wholeRatio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { ALLOWED, DISTANCE } from './limits.js';

/** A rule for misclosures, `k x sqrt(n)`: n counts set-ups, or distances of `per`. */
export interface MisclosureRule {
  readonly k: LengthInput;
  /** The word `set-up`, or a distance. */
  readonly per: LengthInput;
}

/** A rule that has been read. Internal. */
export interface ReadRule {
  readonly k: Length;
  readonly per: 'set-up' | Length;
}

/** Reads a rule. Internal. */
export function readRule(reader: Reader, value: unknown, path: FieldPath): ReadRule {
  const fields = reader.object(value, path);
  const k = reader.quantity('length', fields['k'], [...path, 'k'], ALLOWED);
  if (fields['per'] === 'set-up') return { k, per: 'set-up' };
  return { k, per: reader.quantity('length', fields['per'], [...path, 'per'], DISTANCE) };
}

/** What a rule allows over a number of set-ups, or over a distance. Internal. */
export function allowedBy(
  { k, per }: ReadRule,
  line: { readonly setUps: number; readonly distance: Length },
): Length {
  const n =
    per === 'set-up' ? wholeRatio(line.setUps) : divideRatios(exactOf(line.distance), exactOf(per));
  return fromSI('length', multiplyRatios(exactOf(k), squareRoot(n)));
}
