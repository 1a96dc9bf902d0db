import { number, quantity } from '../input/field.js';
import { BOX, FILL_FACTOR, LOOSE_PER_BANK, SHARE, TIME } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { TimeInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Flow, Time, Volume } from '../units/quantity.js';
// a machine digs bank soil and carries it loose
import { inState, inStateField, type StateVolume } from '../volumes/state-volume.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** Soil to dig and the machine that digs it. */
export interface MachineTimeOptions {
  /** Soil in place, from `stateVolume(v, 'bank')`. */
  readonly bank: StateVolume<'bank'>;
  /** Loose over bank volume, 0.9 to 3: 30% swell is 1.3. */
  readonly loosePerBank: number | string;
  /** Rated volume of the bucket [volume], more than 0 and at most 1000 m3. */
  readonly bucket: VolumeInput;
  /** Loose volume in the bucket over its rated volume, 0.3 to 1.5. */
  readonly fillFactor: number | string;
  /** Dig, swing, dump, return [time], more than 0 and at most 10 000 h. */
  readonly cycle: TimeInput;
  /** Share of the hour at work, more than 0 and at most 1. A 50-minute hour is `50/60`. */
  readonly efficiency: number | string;
}

const OPTIONS = shapeOf<MachineTimeOptions>()({
  bank: inStateField('bank', 'a machine digs soil in place'),
  loosePerBank: number(LOOSE_PER_BANK),
  bucket: quantity(BOX),
  fillFactor: number(FILL_FACTOR),
  cycle: quantity(TIME),
  efficiency: number(SHARE),
});

/** How long a machine takes to dig. */
export interface MachineTime extends Cautioned, Worked {
  /** All of the soil, loose. */
  readonly loose: StateVolume<'loose'>;
  /** Loose volume in one bucket. */
  readonly perBucket: Volume;
  /** Buckets, rounded up. */
  readonly cycles: number;
  /** Loose volume over time. */
  readonly loosePerHour: Flow;
  /** Bank volume over time. */
  readonly bankPerHour: Flow;
  /** Time to dig all of it. */
  readonly time: Time;
}

/**
 * Buckets and hours of a digging machine: `bucket = rated volume x fill`,
 * `loose per hour = bucket / cycle x efficiency`, `bank per hour = loose per hour / (loose per bank)`,
 * `time = bank / bank per hour`. Soil in tolerance zones is dug by hand: subtract it first. Trimming to
 * grade depends on area and is not included.
 *
 * @param options - see {@link MachineTimeOptions}
 * @returns loose volume, buckets, output an hour, time
 * @throws `WRONG_STATE`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const dig = machineTime({
 *   bank: stateVolume('42 m3', 'bank'),
 *   loosePerBank: 1.3,
 *   bucket: '0.18 m3',
 *   fillFactor: 0.9,
 *   cycle: '22 s',
 *   efficiency: '50/60',
 * });
 * dig.cycles //=> 338
 * dig.time.to('h').toFixed(2) //=> '2.47'
 */
export function machineTime(options: MachineTimeOptions): MachineTime {
  const read = readOptions(options, OPTIONS);
  const { loosePerBank: swell, bucket, fillFactor: fill, cycle, efficiency } = read;
  const bank = read.bank.volume;
  const loose = bank.times(swell);
  const { perBucket, loosePerHour, bankPerHour } = machineRates(read);
  const time = bank.dividedBy(bankPerHour);
  const found = {
    loose: inState(loose, 'loose'),
    perBucket,
    cycles: wholeNumberUp(loose, perBucket),
    loosePerHour,
    bankPerHour,
    time,
    cautions: cautionsFor('utilities', 'excavation'),
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Loose soil an hour',
      formula: 'Q = q * f * e / c',
      given: [
        given('q', 'rated bucket', bucket),
        given('f', 'fill factor', fill),
        given('e', 'efficiency', efficiency),
        given('c', 'cycle', cycle),
      ],
      result: given('Q', 'loose volume an hour', loosePerHour),
    }),
    derivedStep({
      title: 'Time to dig',
      formula: 'T = B * s / Q',
      given: [
        given('B', 'bank volume', bank),
        given('s', 'loose per bank', swell),
        given('Q', 'loose volume an hour', loosePerHour),
      ],
      result: given('T', 'time', time),
    }),
  ]);
}

/** What the machine digs in an hour, by the same fields. Internal. */
export function machineRates({
  loosePerBank,
  bucket,
  fillFactor,
  cycle,
  efficiency,
}: Omit<Values<typeof OPTIONS>, 'bank'>) {
  const perBucket = bucket.times(fillFactor);
  const loosePerHour = perBucket.dividedBy(cycle).times(efficiency);
  return { perBucket, loosePerHour, bankPerHour: loosePerHour.dividedBy(loosePerBank) };
}
