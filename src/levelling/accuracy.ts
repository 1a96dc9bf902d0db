import { known } from '../invariant.js';
import { bothOrNeither } from '../input/both-or-neither.js';
import { exactlyOne } from '../input/exactly-one.js';
import { object, optional, quantity } from '../input/field.js';
import { BEAM_ANGLE, SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { shapeOf, type Values } from '../input/shape.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { slopeOfAngle } from '../units/slope-angle.js';

/** Accuracy of an instrument as an error over a distance. */
export interface ErrorOverDistanceInput {
  /** Error of the beam [length], 0 to 10 m. */
  readonly error: LengthInput;
  /** Distance over which it may have that error [length], more than 0 and at most 10 km. */
  readonly over: LengthInput;
  /** Not with `error`. */
  readonly angle?: never;
}

/** Accuracy of an instrument as an angle. */
export interface BeamAngleInput {
  /** Angle by which the beam may be off level [angle], 0 to 1 degree. */
  readonly angle: AngleInput;
  /** Not with `angle`. */
  readonly error?: never;
  /** Not with `angle`. */
  readonly over?: never;
}

/** Accuracy of an instrument, for each axis: an error over a distance, or an angle. */
export type AccuracyInput = ErrorOverDistanceInput | BeamAngleInput;

const ACCURACY = shapeOf<{
  readonly error?: LengthInput;
  readonly over?: LengthInput;
  readonly angle?: AngleInput;
}>()({
  error: optional(quantity(TOLERANCE)),
  over: optional(quantity(SITE_LENGTH)),
  angle: optional(quantity(BEAM_ANGLE)),
});

/** Accuracy of an instrument in either form. Internal. */
export const accuracy = object(ACCURACY, (reader, _, path, raw) => {
  exactlyOne(reader, raw, ['error', 'angle'], [...path, 'error']);
  bothOrNeither(reader, raw, ['error', 'over'], path);
});

/** An accuracy as the slope that the beam may have. Internal. */
export function beamSlope({ error, over, angle }: Values<typeof ACCURACY>): Slope {
  if (angle !== undefined) return slopeOfAngle(angle);
  const [off, by] = [known(error, 'error'), known(over, 'length')];
  return fromSI('slope', divideRatios(exactOf(off), exactOf(by)));
}
