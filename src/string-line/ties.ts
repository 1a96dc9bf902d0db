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
  /** Place along the string [length], up to 100 km either way. */
  readonly station: LengthInput;
}

/** How a stake of a string is read. Internal. */
export const TIE = shapeOf<TieInput>()({ id: text(), station: quantity(STATION) });

/** A stake of a string that has been read. Internal. */
export interface Tie {
  readonly id: string;
  readonly station: Length;
}

/** Refuses stations that do not run forward. Internal. */
export function requireForward(reader: Reader, stakes: readonly Tie[] | undefined): void {
  stakes?.forEach(({ station }, index) => {
    const before = stakes[index - 1];
    if (before === undefined || station.compare(before.station) > 0) return;
    const message = 'is not beyond the stake before. List the stakes in order along the string';
    reader.fail('NOT_INCREASING', ['stakes', index, 'station'], message);
  });
}
