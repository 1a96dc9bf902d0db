import { quantity } from '../input/field.js';
import { BOX, VOLUME_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';

/** A volume and the pack it is sold in. */
export interface WholePacksOptions {
  /** What is needed [volume], not negative. */
  readonly volume: VolumeInput;
  /** What one pack holds [volume], such as `1 yd3`. */
  readonly pack: VolumeInput;
}

const OPTIONS = shapeOf<WholePacksOptions>()({
  volume: quantity(VOLUME_OR_NONE),
  pack: quantity(BOX),
});

/** An order in whole packs. */
export interface WholePacks extends Worked {
  /** Packs to order. */
  readonly count: number;
  /** What they hold. */
  readonly ordered: Volume;
  /** What is left over. */
  readonly surplus: Volume;
}

/**
 * Rounds a volume up to whole packs: `n = ceil(V / pack)`, on exact decimals, so that exactly one
 * yard is one yard and not two. Nothing needed is no pack.
 *
 * @param options - see {@link WholePacksOptions}
 * @returns packs, what they hold, what is left over
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * wholePacks({ volume: '27 ft3', pack: '1 yd3' }).count //=> 1
 */
export function wholePacks(options: WholePacksOptions): WholePacks {
  const { volume, pack } = readOptions(options, OPTIONS);
  const count = wholeNumberUp(volume, pack);
  const ordered = pack.times(count);
  return withWorking({ count, ordered, surplus: ordered.minus(volume) }, () => [
    {
      title: 'Whole packs',
      formula: 'n = ceil(V / p)',
      given: [given('V', 'needed', volume), given('p', 'pack', pack)],
      result: given('n', 'packs', count),
      source: 'derived',
    },
  ]);
}
