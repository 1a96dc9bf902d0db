import { makeReader } from '../input/reader.js';
import type { VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { BOX } from './limits.js';

/** An order in whole packs. */
export interface WholePacks extends Worked {
  readonly count: number;
  readonly ordered: Volume;
  readonly surplus: Volume;
}

/**
 * Rounds a volume up to whole packs: `n = ceil(V / pack)`, on exact decimals, so that exactly one
 * yard is one yard and not two. Nothing needed is no pack.
 *
 * @param options.volume - what is needed [volume], not negative
 * @param options.pack - what one pack holds [volume], such as `1 yd3`
 * @returns packs, what they hold, what is left over
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * wholePacks({ volume: '27 ft3', pack: '1 yd3' }).count //=> 1
 */
export function wholePacks(options: {
  readonly volume: VolumeInput;
  readonly pack: VolumeInput;
}): WholePacks {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const volume = reader.quantity('volume', fields['volume'], ['volume'], { sign: 'not-negative' });
  const pack = reader.quantity('volume', fields['pack'], ['pack'], BOX);
  reader.finish();
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
