import { formatLength } from '../units/format-length.js';
import type { Length } from '../units/quantity.js';

/** The two ways an instruction is written. */
export type TapeSystem = 'us' | 'metric';

/** The systems of {@link TapeSystem}, for readers. Internal. */
export const TAPE_SYSTEMS = ['us', 'metric'] as const;

/** A length as a crew reads it off a tape: to a sixteenth of an inch or to a millimetre. Internal. */
export const tapeText = (value: Length, system: TapeSystem): string =>
  system === 'us'
    ? formatLength(value, { as: 'in', nearest: '1/16 in' })
    : formatLength(value, { as: 'mm', nearest: '1 mm' });
