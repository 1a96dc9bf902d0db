import type { Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import { angle, slope, type AngleInput, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { slopeOfAngle } from '../units/slope-angle.js';
import { DISTANCE, TOLERANCE } from './limits.js';

/** What an instrument promises: an error over a distance, or the angle of the beam to the level. */
export type AccuracyInput =
  | { readonly error: LengthInput; readonly over: LengthInput; readonly angle?: never }
  | { readonly angle: AngleInput; readonly error?: never; readonly over?: never };

const LEVEL = slope(0, 'ratio');
const ANGLE = Object.freeze({ sign: 'not-negative', most: angle(1, 'deg') } as const);

/** Reads an accuracy as the slope that the beam may have. Internal. */
export function readAccuracy(reader: Reader, value: unknown): Slope {
  const fields = reader.object(value, ['accuracy']);
  const which = exactlyOne(reader, fields, ['error', 'angle'], ['accuracy']);
  if (which === 'angle') {
    return slopeOfAngle(reader.quantity('angle', fields['angle'], ['accuracy', 'angle'], ANGLE));
  }
  if (which === undefined) return LEVEL;
  const error = reader.quantity('length', fields['error'], ['accuracy', 'error'], TOLERANCE);
  const over = reader.quantity('length', fields['over'], ['accuracy', 'over'], DISTANCE);
  return over.isZero() ? LEVEL : fromSI('slope', divideRatios(exactOf(error), exactOf(over)));
}
