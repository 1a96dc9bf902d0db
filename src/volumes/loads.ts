import { quantity } from '../input/field.js';
import { BOX, DENSITY, PAYLOAD } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { DensityInput, MassInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Mass, Volume } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { inStateField, type StateVolume } from './state-volume.js';

/** The soil to haul and the truck that hauls it. */
export interface LoadsOptions {
  /** Loose volume, from `stateVolume(v, 'loose')` or `toState`. */
  readonly volume: StateVolume<'loose'>;
  /** Density in the truck, water included [density]. */
  readonly looseDensity: DensityInput;
  /** Volume of the box, filled level [volume]. */
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

/** Volume and mass of a load. */
export interface Load {
  /** Volume in the truck. */
  readonly volume: Volume;
  /** Net mass on the weighbridge, without the truck. */
  readonly mass: Mass;
}

/** Number of loads, and what limits them. */
export interface Loads extends Cautioned, Worked {
  /** Number of truck loads. */
  readonly count: number;
  /** `volume` if the box is full before the payload is reached, else `mass`. */
  readonly limitedBy: 'volume' | 'mass';
  /** A full load. */
  readonly perLoad: Load;
  /** The last load, which may be a part load. */
  readonly lastLoad: Load;
  /** All loads together. */
  readonly total: Load;
}

/**
 * Number of truck loads by volume and by mass, whichever limit is reached first:
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
    derivedStep({
      title: 'Volume of a full load',
      formula: 'v = min(B, P / d)',
      given: [
        given('B', 'box', box),
        given('P', 'payload', payload),
        given('d', 'loose density', density),
      ],
      result: given('v', `full load, limited by ${limitedBy}`, fullVolume),
    }),
    derivedStep({
      title: 'Number of loads',
      formula: 'n = ceil(V / v)',
      given: [given('V', 'loose volume', volume), given('v', 'full load', fullVolume)],
      result: given('n', 'loads', count),
    }),
  ]);
}
