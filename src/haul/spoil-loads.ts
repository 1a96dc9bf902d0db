import { known } from '../invariant.js';
import { fault } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { number, optional, quantity } from '../input/field.js';
import { BOX, DENSITY, FRACTION, LOOSE_PER_BANK, PAYLOAD } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { DensityInput, MassInput, VolumeInput } from '../units/construct.js';
import { ONE } from '../units/decimal.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Density, Mass } from '../units/quantity.js';
// loads and soil states are worked out once, there
import { loads, type Load } from '../volumes/loads.js';
import { inState, inStateField, type StateVolume } from '../volumes/state-volume.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** Spoil to haul away and the truck that hauls it. */
export interface SpoilLoadsOptions {
  /** Soil in place, from `stateVolume(v, 'bank')` or `toState`. */
  readonly bank: StateVolume<'bank'>;
  /** Loose over bank volume, 0.9 to 3: 30% swell is 1.3. */
  readonly loosePerBank: number | string;
  /** Dry density in place [density], more than 0 and at most 5 t/m3. This and `moisture`, or `bankMoistDensity`. */
  readonly bankDryDensity?: DensityInput;
  /** Water over dry mass on the day, a fraction 0 to 1. Needed with `bankDryDensity`. */
  readonly moisture?: number | string;
  /** Density in place, water included [density], more than 0 and at most 5 t/m3. This, or `bankDryDensity`. */
  readonly bankMoistDensity?: DensityInput;
  /** What the box holds, level [volume], more than 0 and at most 1000 m3. */
  readonly boxVolume: VolumeInput;
  /** Legal payload: legal gross less tare [mass], more than 0 and at most 10 000 t. */
  readonly payload: MassInput;
}

const MOISTURE = number(FRACTION);

const OPTIONS = shapeOf<SpoilLoadsOptions>()({
  bank: inStateField('bank', 'spoil is measured in place'),
  loosePerBank: number(LOOSE_PER_BANK),
  bankDryDensity: optional(quantity(DENSITY)),
  moisture: optional(MOISTURE),
  bankMoistDensity: optional(quantity(DENSITY)),
  boxVolume: quantity(BOX),
  payload: quantity(PAYLOAD),
});

/** Spoil to haul away: volume, mass and loads. */
export interface SpoilLoads extends Cautioned, Worked {
  /** Volume in the truck. */
  readonly loose: StateVolume<'loose'>;
  /** Soil without its water; null if only the moist density is known. */
  readonly dryMass: Mass | null;
  /** Mass on the scale, water included. */
  readonly mass: Mass;
  /** Mass over loose volume, water included. */
  readonly looseDensity: Density;
  /** Truck loads. */
  readonly loads: number;
  /** Loads if the box were the only limit. */
  readonly loadsByVolume: number;
  /** Loads if the payload were the only limit. */
  readonly loadsByMass: number;
  /** `volume` if the box is full before the payload is reached, else `mass`. */
  readonly limitedBy: 'volume' | 'mass';
  /** A full load. */
  readonly perLoad: Load;
  /** What is left for the last load. */
  readonly lastLoad: Load;
}

/**
 * Truck loads of spoil by volume and by legal mass, whichever is reached first:
 * `loose = bank x (loose per bank)`, `mass = bank x dry density x (1 + moisture)`,
 * `per load = min(box, payload / loose density)`. Rain adds mass and no volume: count again with the
 * moisture of the day.
 *
 * @param options - see {@link SpoilLoadsOptions}
 * @returns loose volume, dry and hauled mass, loads by each limit, full and last load
 * @throws `WRONG_STATE`, `REQUIRED`, `CONFLICTING_FIELDS`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`,
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
export function spoilLoads(options: SpoilLoadsOptions): SpoilLoads {
  const read = readOptions(options, OPTIONS, checkDensities);
  const { loosePerBank: swell, boxVolume, payload } = read;
  const bank = read.bank.volume;
  const moist = moistDensity(read);
  const loose = inState(bank.times(swell), 'loose');
  const mass = bank.times(moist);
  const looseDensity = looseDensityOf(moist, read);
  const counted = loads({ volume: loose, looseDensity, boxVolume, payload });
  const found = {
    loose,
    dryMass: read.bankDryDensity === undefined ? null : bank.times(read.bankDryDensity),
    mass,
    looseDensity,
    loads: counted.count,
    loadsByVolume: wholeNumberUp(loose.volume, boxVolume),
    loadsByMass: wholeNumberUp(mass, payload),
    limitedBy: counted.limitedBy,
    perLoad: counted.perLoad,
    lastLoad: counted.lastLoad,
    cautions: cautionsFor('loads', 'excavation'),
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Mass of the spoil, water included',
      formula: 'M = B * d',
      given: [given('B', 'bank volume', bank), given('d', 'moist density', moist)],
      result: given('M', 'mass', mass),
    }) satisfies Step,
    derivedStep({
      title: 'Spoil, loose',
      formula: 'L = B * s',
      given: [given('B', 'bank volume', bank), given('s', 'loose per bank', swell)],
      result: given('L', 'loose volume', loose.volume),
    }) satisfies Step,
    ...counted.working,
  ]);
}

/** One density: dry with its moisture, or moist without. */
const checkDensities: Check<typeof OPTIONS> = (reader, _, path, raw) => {
  const at = [...path, 'bankDryDensity'];
  const density = exactlyOne(reader, raw, ['bankDryDensity', 'bankMoistDensity'], at);
  const hasMoisture = raw['moisture'] !== undefined;
  // its own reading says that it is missing
  if (density === 'bankDryDensity' && !hasMoisture) {
    MOISTURE.read(reader, undefined, [...path, 'moisture']);
  }
  if (density === 'bankMoistDensity' && hasMoisture) {
    const message = 'bankMoistDensity already includes its water. Leave out moisture';
    reader.fail('CONFLICTING_FIELDS', [...path, 'moisture'], message);
  }
};

type Read = Values<typeof OPTIONS>;

function moistDensity({ bankDryDensity, bankMoistDensity, moisture = ONE }: Read): Density {
  const dry = bankDryDensity?.plus(bankDryDensity.times(moisture));
  return dry ?? known(bankMoistDensity, 'density');
}

function looseDensityOf(moist: Density, { bankDryDensity, loosePerBank }: Read): Density {
  const loose = moist.dividedBy(loosePerBank);
  if (loose.compare(DENSITY.most) <= 0) return loose;
  const path = [bankDryDensity === undefined ? 'bankMoistDensity' : 'bankDryDensity'];
  const message = `makes ${loose.to('t/m3').toFixed(2)} t/m3 in the truck, more than any soil weighs. Check density, moisture and loosePerBank`;
  throw fault('OUT_OF_RANGE', message, { got: loose.toString() }, path);
}
