import { object, quantity } from '../../input/field.js';
import { DEPTH_OR_NONE, TIME } from '../../input/ranges.js';
import { shapeOf, type Values } from '../../input/shape.js';
import type { LengthInput, TimeInput } from '../../units/construct.js';

/** A depth of water in a time: how hard it rains, or how fast soil takes water. */
export interface WaterRateInput {
  /** Depth of water [length], 0 to 50 m. */
  readonly depth: LengthInput;
  /** Time that it takes [time], more than 0 and at most 10 000 h. */
  readonly time: TimeInput;
}

const RATE = shapeOf<WaterRateInput>()({
  depth: quantity(DEPTH_OR_NONE),
  time: quantity(TIME),
});

/** A field for a rate of water. Internal. */
export const waterRate = object(RATE);

/** A rate of water as read. Internal. */
export type WaterRate = Values<typeof RATE>;
