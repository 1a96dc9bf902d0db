import { makeReader } from '../input/reader.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import type { Volume } from '../units/quantity.js';
import { AREA, SPACING } from './limits.js';

/**
 * Volume between two sections by the prismoidal rule: `V = L / 6 (A1 + 4 Am + A2)`. Exact for every
 * body whose area is at most a cubic of the distance: prisms, wedges, pyramids, battered pits. The
 * middle area is measured half way, or worked out from the mean dimensions; it is not the mean of
 * the end areas.
 *
 * @param options.first - area of the first section [area], not negative
 * @param options.middle - area half way [area]
 * @param options.last - area of the last section [area]
 * @param options.length - from the first section to the last [length]
 * @returns the volume, in the state of the sections [volume]
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const dig = prismoidal({ first: '1.9 m2', middle: '1.45 m2', last: '1.1 m2', length: '9 m' });
 * dig.to('m3').toString() //=> '13.2'
 */
export function prismoidal(options: {
  readonly first: AreaInput;
  readonly middle: AreaInput;
  readonly last: AreaInput;
  readonly length: LengthInput;
}): Volume {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = (name: 'first' | 'middle' | 'last') =>
    reader.quantity('area', fields[name], [name], AREA);
  const [first, middle, last] = [read('first'), read('middle'), read('last')];
  const length = reader.quantity('length', fields['length'], ['length'], SPACING);
  reader.finish();
  return first.plus(middle.times(4)).plus(last).times(length).dividedBy(6);
}
