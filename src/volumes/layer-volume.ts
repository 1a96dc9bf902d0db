import { makeReader } from '../input/reader.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { AREA, LAYER } from './limits.js';
import { inState, type StateVolume } from './state-volume.js';

/**
 * Volume of a layer in place: `V = A x t`, compacted, because thicknesses are compacted unless they
 * say loose.
 *
 * @param options.area - plan area [area], not negative
 * @param options.thickness - compacted thickness [length], not negative, at most 20 m
 * @returns a compacted volume
 * @throws `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * layerVolume({ area: '81 ft2', thickness: '4 in' }).to('yd3').toString() //=> '1'
 */
export function layerVolume(options: {
  readonly area: AreaInput;
  readonly thickness: LengthInput;
}): StateVolume<'compacted'> {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], LAYER);
  reader.finish();
  return inState(area.times(thickness), 'compacted');
}
