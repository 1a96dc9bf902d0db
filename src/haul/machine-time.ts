import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { TimeInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Flow, Time, Volume } from '../units/quantity.js';
// a machine digs bank soil and carries it loose
import { inState, requireState, type StateVolume } from '../volumes/state-volume.js';
import { given, withWorking, type Worked } from '../working.js';
import { PART, TIME, VOLUME } from '../site/limits.js';
import { readLoosePerBank } from './spoil-loads.js';

/** How long a machine digs. */
export interface MachineTime extends Worked {
  readonly loose: StateVolume<'loose'>;
  /** Loose volume in one bucket. */
  readonly perBucket: Volume;
  /** Buckets, rounded up. */
  readonly cycles: number;
  readonly loosePerHour: Flow;
  readonly bankPerHour: Flow;
  readonly time: Time;
  readonly cautions: readonly Caution[];
}

/**
 * Buckets and hours of a digging machine: `bucket = rated volume x fill`,
 * `loose per hour = bucket / cycle x efficiency`, `bank per hour = loose per hour / (loose per bank)`,
 * `time = bank / bank per hour`. Soil in tolerance zones is dug by hand: take it off first. Trimming
 * to grade goes by area and is not in it.
 *
 * @param options.bank - soil as it lies, `stateVolume(v, 'bank')`
 * @param options.loosePerBank - loose over bank volume, 0.9 to 3
 * @param options.bucket - rated volume of the bucket [volume]
 * @param options.fillFactor - loose volume in the bucket over its rated volume, 0.3 to 1.5
 * @param options.cycle - dig, swing, dump, return [time]
 * @param options.efficiency - share of the hour at work, more than 0 to 1; a 50-minute hour is `50/60`
 * @returns loose volume, buckets, output an hour, time
 * @throws `STATE_MISSING`, `RATIO_OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the
 *   reading codes
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
export function machineTime(options: {
  readonly bank: StateVolume<'bank'>;
  readonly loosePerBank: number | string;
  readonly bucket: VolumeInput;
  readonly fillFactor: number | string;
  readonly cycle: TimeInput;
  readonly efficiency: number | string;
}): MachineTime {
  const reader = makeReader();
  const fields = reader.object(options, []);
  requireState(reader, fields['bank'], {
    state: 'bank',
    path: ['bank'],
    words: "give the soil as it lies: stateVolume(v, 'bank')",
  });
  const swell = readLoosePerBank(reader, fields['loosePerBank']);
  const rated = reader.quantity('volume', fields['bucket'], ['bucket'], VOLUME);
  const fill = reader.number(fields['fillFactor'], ['fillFactor'], FILL);
  const cycle = reader.quantity('time', fields['cycle'], ['cycle'], TIME);
  const efficiency = reader.number(fields['efficiency'], ['efficiency'], PART);
  reader.finish();

  const bank = options.bank.volume;
  const loose = bank.times(swell);
  const perBucket = rated.times(fill);
  const loosePerHour = perBucket.dividedBy(cycle).times(efficiency);
  const bankPerHour = loosePerHour.dividedBy(swell);
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
    {
      title: 'Loose soil an hour',
      formula: 'Q = q f e / c',
      given: [
        given('q', 'rated bucket', rated),
        given('f', 'fill factor', fill),
        given('e', 'efficiency', efficiency),
        given('c', 'cycle', cycle),
      ],
      result: given('Q', 'loose volume an hour', loosePerHour),
      source: 'derived',
    },
    {
      title: 'Time to dig',
      formula: 'T = B s / Q',
      given: [
        given('B', 'bank volume', bank),
        given('s', 'loose per bank', swell),
        given('Q', 'loose volume an hour', loosePerHour),
      ],
      result: given('T', 'time', time),
      source: 'derived',
    },
  ]);
}

const FILL = Object.freeze({ sign: 'positive', least: 0.3, most: 1.5 } as const);
