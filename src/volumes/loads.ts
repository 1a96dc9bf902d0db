import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { DensityInput, MassInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Mass, Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { BOX, LOADED_DENSITY, PAYLOAD } from './limits.js';
import { requireState, type StateVolume } from './state-volume.js';

/** How many loads, and what decides. */
export interface Loads extends Worked {
  readonly count: number;
  /** `volume` where the box is full before the payload is reached, else `mass`. */
  readonly limitedBy: 'volume' | 'mass';
  /** A full load. */
  readonly perLoad: { readonly volume: Volume; readonly mass: Mass };
  /** What is left for the last load. */
  readonly lastLoad: { readonly volume: Volume; readonly mass: Mass };
  readonly total: { readonly volume: Volume; readonly mass: Mass };
  readonly cautions: readonly Caution[];
}

/**
 * Truck loads by volume and by mass, whichever is reached first:
 * `per load = min(box, payload / loose density)`, `n = ceil(V / per load)`.
 *
 * @param options.volume - loose volume, from `stateVolume` or `toState`
 * @param options.looseDensity - as loaded, water included [density]
 * @param options.boxVolume - what the box holds, level [volume]
 * @param options.payload - legal payload [mass]
 * @returns number of loads, what limits them, a full load, the last load, totals
 * @throws `STATE_MISSING` for a volume that is not loose, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const spoil = loads({
 *   volume: stateVolume('54.6 m3', 'loose'),
 *   looseDensity: '1461 kg/m3',
 *   boxVolume: '11 m3',
 *   payload: '13 t',
 * });
 * spoil.count //=> 7
 * spoil.limitedBy //=> 'mass'
 */
export function loads(options: {
  readonly volume: StateVolume<'loose'>;
  readonly looseDensity: DensityInput;
  readonly boxVolume: VolumeInput;
  readonly payload: MassInput;
}): Loads {
  const reader = makeReader();
  const fields = reader.object(options, []);
  requireState(reader, fields['volume'], {
    state: 'loose',
    path: ['volume'],
    words: "trucks carry loose soil: give stateVolume(v, 'loose')",
  });
  const density = reader.quantity(
    'density',
    fields['looseDensity'],
    ['looseDensity'],
    LOADED_DENSITY,
  );
  const box = reader.quantity('volume', fields['boxVolume'], ['boxVolume'], BOX);
  const payload = reader.quantity('mass', fields['payload'], ['payload'], PAYLOAD);
  reader.finish();

  const volume = options.volume.volume;
  const byMass = payload.dividedBy(density);
  const limitedBy = byMass.compare(box) < 0 ? 'mass' : 'volume';
  const fullVolume = limitedBy === 'mass' ? byMass : box;
  const count = wholeNumberUp(volume, fullVolume);
  const lastVolume = count === 0 ? volume : volume.minus(fullVolume.times(count - 1));
  const load = (v: Volume) => ({ volume: v, mass: v.times(density) });
  const fieldsOut = {
    count,
    limitedBy,
    perLoad: load(fullVolume),
    lastLoad: load(lastVolume),
    total: load(volume),
    cautions: cautionsFor('loads'),
  } as const;
  return withWorking(fieldsOut, () => [
    {
      title: 'Volume of a full load',
      formula: 'v = min(B, P / d)',
      given: [
        given('B', 'box', box),
        given('P', 'payload', payload),
        given('d', 'loose density', density),
      ],
      result: given('v', `full load, limited by ${limitedBy}`, fullVolume),
      source: 'derived',
    },
    {
      title: 'Number of loads',
      formula: 'n = ceil(V / v)',
      given: [given('V', 'loose volume', volume), given('v', 'full load', fullVolume)],
      result: given('n', 'loads', count),
      source: 'derived',
    },
  ]);
}
