import type { FieldPath } from '../errors.js';
import { quantity, text } from '../input/field.js';
import { STATION } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';

/** A stake that the string is tied to. */
export interface TieInput {
  /** What is written on the stake. Each id once. */
  readonly id: string;
  /** Distance along the string [length], up to 100 km either way. */
  readonly station: LengthInput;
}

/** How a stake of a string is read. Internal. */
export const TIE = shapeOf<TieInput>()({ id: text(), station: quantity(STATION) });

/** A stake of a string that has been read. Internal. */
export interface Tie {
  readonly id: string;
  readonly station: Length;
}

/** Refuses stations that do not run forward; the path is that of the object with the stakes. Internal. */
export function requireForward(
  reader: Reader,
  stakes: readonly Tie[] | undefined,
  path: FieldPath = [],
): void {
  stakes?.forEach(({ station }, index) => {
    const before = stakes[index - 1];
    if (before === undefined || station.compare(before.station) > 0) return;
    const message = 'is not beyond the stake before. List the stakes in order along the string';
    reader.fail('NOT_INCREASING', [...path, 'stakes', index, 'station'], message);
  });
}
