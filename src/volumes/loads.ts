import { quantity } from '../input/field.js';
import { BOX, DENSITY, PAYLOAD } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { DensityInput, MassInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Mass, Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { inStateField, type StateVolume } from './state-volume.js';

/** What is hauled and the truck that hauls it. */
export interface LoadsOptions {
  /** Loose volume, from `stateVolume(v, 'loose')` or `toState`. */
  readonly volume: StateVolume<'loose'>;
  /** Density in the truck, water included [density]. */
  readonly looseDensity: DensityInput;
  /** What the box holds, level [volume]. */
  readonly boxVolume: VolumeInput;
  /** Legal payload [mass]. */
  readonly payload: MassInput;
}

const OPTIONS = shapeOf<LoadsOptions>()({
  volume: inStateField('loose', 'trucks carry loose soil'),
  looseDensity: quantity(DENSITY),
  boxVolume: quantity(BOX),
  payload: quantity(PAYLOAD),
});

/** A volume and what it weighs. */
export interface Load {
  /** In the truck. */
  readonly volume: Volume;
  /** On the weighbridge, without the truck. */
  readonly mass: Mass;
}

/** How many loads, and what limits them. */
export interface Loads extends Worked {
  /** Truck loads. */
  readonly count: number;
  /** `volume` where the box is full before the payload is reached, else `mass`. */
  readonly limitedBy: 'volume' | 'mass';
  /** A full load. */
  readonly perLoad: Load;
  /** What is left for the last load. */
  readonly lastLoad: Load;
  /** All loads together. */
  readonly total: Load;
  /** What to have checked, and by whom. */
  readonly cautions: readonly Caution[];
}

/**
 * Truck loads by volume and by mass, whichever is reached first:
 * `per load = min(box, payload / loose density)`, `n = ceil(V / per load)`.
 *
 * @param options - see {@link LoadsOptions}
 * @returns number of loads, what limits them, a full load, the last load, totals
 * @throws `WRONG_STATE` for a volume that is not loose, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`,
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
export function loads(options: LoadsOptions): Loads {
  const read = readOptions(options, OPTIONS);
  const { looseDensity: density, boxVolume: box, payload } = read;
  const { volume } = read.volume;
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
