import { quantity } from '../input/field.js';
import { AREA_OR_NONE, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { inState, type StateVolume } from './state-volume.js';

/** A layer in place. */
export interface LayerVolumeOptions {
  /** Plan area [area], not negative. */
  readonly area: AreaInput;
  /** Compacted thickness [length], not negative, at most 5 m. */
  readonly thickness: LengthInput;
}

const OPTIONS = shapeOf<LayerVolumeOptions>()({
  area: quantity(AREA_OR_NONE),
  thickness: quantity(THICKNESS_OR_NONE),
});

/**
 * Volume of a layer in place: `V = A x t`. It is compacted, because a thickness is compacted unless
 * it is called loose.
 *
 * @param options - see {@link LayerVolumeOptions}
 * @returns a compacted volume
 * @throws `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * layerVolume({ area: '81 ft2', thickness: '4 in' }).to('yd3').toString() //=> '1'
 */
export function layerVolume(options: LayerVolumeOptions): StateVolume<'compacted'> {
  const { area, thickness } = readOptions(options, OPTIONS);
  return inState(area.times(thickness), 'compacted');
}
