import { choice } from '../input/field.js';
import { shapeOf } from '../input/shape.js';
import { formatLength } from '../units/format-length.js';
import type { Length } from '../units/quantity.js';

/** The two systems of an instruction. */
export type TapeSystem = 'us' | 'metric';

/** Options of an instruction. */
export interface DescribeOptions {
  /** Inches to a sixteenth (`us`) or millimetres (`metric`). */
  readonly system: TapeSystem;
}

/** The fields of {@link DescribeOptions}. Internal. */
export const DESCRIBE_OPTIONS = shapeOf<DescribeOptions>()({ system: choice(['us', 'metric']) });

/** A length as read off a tape: to a sixteenth of an inch or to a millimetre. Internal. */
export const tapeText = (value: Length, system: TapeSystem): string =>
  system === 'us'
    ? formatLength(value, { as: 'in', nearest: '1/16 in' })
    : formatLength(value, { as: 'mm', nearest: '1 mm' });
