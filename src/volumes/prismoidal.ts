import { quantity } from '../input/field.js';
import { AREA_OR_NONE, DISTANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import type { Volume } from '../units/quantity.js';

/** Three sections of a dig or fill. */
export interface PrismoidalOptions {
  /** Area of the first section [area], not negative. */
  readonly first: AreaInput;
  /** Area half way [area], not negative. */
  readonly middle: AreaInput;
  /** Area of the last section [area], not negative. */
  readonly last: AreaInput;
  /** Distance from the first section to the last [length], more than 0. */
  readonly length: LengthInput;
}

const OPTIONS = shapeOf<PrismoidalOptions>()({
  first: quantity(AREA_OR_NONE),
  middle: quantity(AREA_OR_NONE),
  last: quantity(AREA_OR_NONE),
  length: quantity(DISTANCE),
});

/**
 * Volume between two sections by the prismoidal rule: `V = L / 6 (A1 + 4 Am + A2)`. It is exact for
 * every shape whose area is at most a cubic in the distance: prisms, wedges, pyramids, battered pits.
 * Measure the middle area half way, or work it out from the mean dimensions. It is not the mean of the
 * end areas.
 *
 * @param options - see {@link PrismoidalOptions}
 * @returns the volume, in the state of the sections [volume]
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const dig = prismoidal({ first: '1.9 m2', middle: '1.45 m2', last: '1.1 m2', length: '9 m' });
 * dig.to('m3').toString() //=> '13.2'
 */
export function prismoidal(options: PrismoidalOptions): Volume {
  const { first, middle, last, length } = readOptions(options, OPTIONS);
  return first.plus(middle.times(4)).plus(last).times(length).dividedBy(6);
}
