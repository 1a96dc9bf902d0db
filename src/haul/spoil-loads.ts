import { makeReader, type Reader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { DensityInput, MassInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Density, Mass, Volume } from '../units/quantity.js';
// loads and soil states are worked out once, there
import { BOX, DENSITY, FRACTION, PAYLOAD } from '../volumes/limits.js';
import { loads } from '../volumes/loads.js';
import { inState, requireState, type StateVolume } from '../volumes/state-volume.js';
import { given, withWorking, type Step, type Worked } from '../working.js';

/** Spoil to cart away: volume, mass and loads. */
export interface SpoilLoads extends Worked {
  readonly loose: StateVolume<'loose'>;
  /** Soil without its water; null where only the moist density is known. */
  readonly dryMass: Mass | null;
  /** As carted, water included. */
  readonly mass: Mass;
  /** As carted: mass over loose volume. */
  readonly looseDensity: Density;
  readonly loads: number;
  readonly loadsByVolume: number;
  readonly loadsByMass: number;
  readonly limitedBy: 'volume' | 'mass';
  readonly perLoad: { readonly volume: Volume; readonly mass: Mass };
  readonly lastLoad: { readonly volume: Volume; readonly mass: Mass };
  readonly cautions: readonly Caution[];
}

/**
 * Truck loads of spoil by volume and by legal mass, whichever is reached first:
 * `loose = bank x (loose per bank)`, `mass = bank x dry density x (1 + moisture)`,
 * `per load = min(box, payload / loose density)`. Rain adds mass and no volume: count again with the
 * moisture of the day.
 *
 * @param options.bank - soil as it lies, from `stateVolume(v, 'bank')` or `toState`
 * @param options.loosePerBank - loose over bank volume, 0.9 to 3
 * @param options.bankDryDensity - in the bank, dry [density]; goes with `moisture`
 * @param options.moisture - water over dry mass as carted, a fraction 0 to 1; no default
 * @param options.bankMoistDensity - instead of the two: in the bank, water included [density]
 * @param options.boxVolume - what the box holds, level [volume]
 * @param options.payload - legal payload: legal gross less tare [mass]
 * @returns loose volume, dry and carted mass, loads by each limit, full and last load
 * @throws `STATE_MISSING`, `EITHER_OR`, `RATIO_OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const spoil = spoilLoads({
 *   bank: stateVolume('42 m3', 'bank'),
 *   loosePerBank: 1.3,
 *   bankDryDensity: '1900 kg/m3',
 *   moisture: 0,
 *   boxVolume: '11 m3',
 *   payload: '13 t',
 * });
 * [spoil.loadsByVolume, spoil.loadsByMass, spoil.limitedBy] //=> [5, 7, 'mass']
 */
export function spoilLoads(options: {
  readonly bank: StateVolume<'bank'>;
  readonly loosePerBank: number | string;
  readonly bankDryDensity?: DensityInput;
  readonly moisture?: number | string;
  readonly bankMoistDensity?: DensityInput;
  readonly boxVolume: VolumeInput;
  readonly payload: MassInput;
}): SpoilLoads {
  const reader = makeReader();
  const fields = reader.object(options, []);
  requireState(reader, fields['bank'], {
    state: 'bank',
    path: ['bank'],
    words: "give the soil as it lies: stateVolume(v, 'bank')",
  });
  const swell = readLoosePerBank(reader, fields['loosePerBank']);
  const densities = readDensities(reader, fields);
  const box = reader.quantity('volume', fields['boxVolume'], ['boxVolume'], BOX);
  const payload = reader.quantity('mass', fields['payload'], ['payload'], PAYLOAD);
  reader.finish();

  const bank = options.bank.volume;
  const loose = inState(bank.times(swell), 'loose');
  const mass = bank.times(densities.moist);
  const looseDensity = densities.moist.dividedBy(swell);
  const counted = loads({ volume: loose, looseDensity, boxVolume: box, payload });
  const found = {
    loose,
    dryMass: densities.dry === undefined ? null : bank.times(densities.dry),
    mass,
    looseDensity,
    loads: counted.count,
    loadsByVolume: wholeNumberUp(loose.volume, box),
    loadsByMass: wholeNumberUp(mass, payload),
    limitedBy: counted.limitedBy,
    perLoad: counted.perLoad,
    lastLoad: counted.lastLoad,
    cautions: cautionsFor('loads', 'excavation'),
  };
  return withWorking(found, () => [
    {
      title: 'Spoil as carted',
      formula: 'M = B d',
      given: [given('B', 'bank volume', bank), given('d', 'moist density', densities.moist)],
      result: given('M', 'mass', mass),
      source: 'derived',
    } satisfies Step,
    {
      title: 'Spoil, loose',
      formula: 'L = B s',
      given: [given('B', 'bank volume', bank), given('s', 'loose per bank', swell)],
      result: given('L', 'loose volume', loose.volume),
      source: 'derived',
    } satisfies Step,
    ...counted.working,
  ]);
}

/** Reads loose over bank volume: 0.9 to 3. Internal. */
export function readLoosePerBank(reader: Reader, value: unknown) {
  const ratio = reader.number(value, ['loosePerBank'], { sign: 'any' });
  if (value !== undefined && (ratio.lt(0.9) || ratio.gt(3))) {
    reader.fail(
      'RATIO_OUT_OF_RANGE',
      ['loosePerBank'],
      `loose over bank must be between 0.9 and 3, got ${ratio.toString()}; is it a percentage?`,
      { got: ratio.toString() },
    );
  }
  return ratio;
}

function readDensities(reader: Reader, fields: Readonly<Record<string, unknown>>) {
  const { bankDryDensity: dryValue, bankMoistDensity: moistValue } = fields;
  if ((dryValue === undefined) === (moistValue === undefined)) {
    reader.fail(
      'EITHER_OR',
      ['bankDryDensity'],
      'give bankDryDensity with moisture, or bankMoistDensity: one of the two',
    );
  }
  if (dryValue === undefined) {
    const moist = reader.quantity(
      'density',
      moistValue ?? { value: 1, unit: 't/m3' },
      ['bankMoistDensity'],
      DENSITY,
    );
    if (fields['moisture'] !== undefined) {
      reader.fail('EITHER_OR', ['moisture'], 'bankMoistDensity has its water in it already');
    }
    return { dry: undefined, moist };
  }
  const dry = reader.quantity('density', dryValue, ['bankDryDensity'], DENSITY);
  const moisture = reader.number(fields['moisture'], ['moisture'], FRACTION);
  return { dry, moist: dry.times(moisture.plus(1)) };
}
