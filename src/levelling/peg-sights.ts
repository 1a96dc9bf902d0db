import { custom, object, optional, quantity } from '../input/field.js';
import { isForm } from '../input/plain.js';
import { DISTANCE_OR_NONE, ROD_READING } from '../input/ranges.js';
import { shapeOf, type Field } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';

/** Readings, or lengths of sights, at the two pegs. */
export interface PegPairInput {
  /** At peg A [length]: a reading of 0 to 20 m, or a sight of 0 to 100 km. */
  readonly a: LengthInput;
  /** At peg B [length]: a reading of 0 to 20 m, or a sight of 0 to 100 km. */
  readonly b: LengthInput;
}

/** Lengths of the sights of both set-ups. */
export interface PegSightsInput {
  /** Sights of the second set-up. */
  readonly offset: PegPairInput;
  /** Sights of the first set-up: one length if they are equal. Default: equal. */
  readonly midway?: PegPairInput | LengthInput;
}

/** Readings, or lengths of sights, at the two pegs. */
export interface PegPair {
  /** At peg A. */
  readonly a: Length;
  /** At peg B. */
  readonly b: Length;
}

/** Readings at the two pegs. Internal. */
export const pegReadings: Field<PegPair> = object(
  shapeOf<PegPairInput>()({ a: quantity(ROD_READING), b: quantity(ROD_READING) }),
);

const sight = quantity(DISTANCE_OR_NONE);
const sights: Field<PegPair> = object(shapeOf<PegPairInput>()({ a: sight, b: sight }));

/** A pair of sights, or one length for both. */
const equalOrPair: Field<PegPair> = custom((reader, value, path) => {
  if (isForm(value)) return sights.read(reader, value, path);
  const both = sight.read(reader, value, path);
  return { a: both, b: both };
});

const EQUAL: PegPair = Object.freeze({ a: NO_LENGTH, b: NO_LENGTH });

const bothSetUps = object(
  shapeOf<PegSightsInput>()({ offset: sights, midway: optional(equalOrPair, EQUAL) }),
);

/** The sights of both set-ups; those of the second may be given alone. Internal. */
export const pegSights: Field<{ readonly offset: PegPair; readonly midway: PegPair }> = custom(
  (reader, value, path) =>
    isPairAlone(value)
      ? { offset: sights.read(reader, value, path), midway: EQUAL }
      : bothSetUps.read(reader, value, path),
);

const isPairAlone = (value: unknown): boolean =>
  isForm(value) &&
  !Object.hasOwn(value, 'offset') &&
  !Object.hasOwn(value, 'midway') &&
  (Object.hasOwn(value, 'a') || Object.hasOwn(value, 'b'));
