import { list, optional, quantity, whole } from '../input/field.js';
import { BOX, TIME, TIME_OR_NONE, TRUCKS } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { sum } from '../units/aggregate.js';
import type { TimeInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Flow, Time } from '../units/quantity.js';
// what is hauled is loose
import { inStateField, type StateVolume } from '../volumes/state-volume.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';

/** The times of a truck, and what it carries. */
export interface HaulBalanceOptions {
  /** Time to fill one truck [time], more than 0 and at most 10 000 h. */
  readonly loadTime: TimeInput;
  /** Time to drive to the tip, loaded [time], 0 to 10 000 h. */
  readonly haulTime: TimeInput;
  /** Time at the tip, waiting included [time], 0 to 10 000 h. */
  readonly dumpTime: TimeInput;
  /** Time to drive back to the machine, empty [time], 0 to 10 000 h. */
  readonly returnTime: TimeInput;
  /** Loose volume of a full, legal load [volume], more than 0 and at most 1000 m3. */
  readonly truckLoad: VolumeInput;
  /** Numbers of trucks to compare, each 1 to 100. Default: the number needed, and one fewer. */
  readonly trucks?: readonly number[];
  /** Loose volume to move, for the time of each fleet. Default: no times. */
  readonly volume?: StateVolume<'loose'>;
}

const OPTIONS = shapeOf<HaulBalanceOptions>()({
  loadTime: quantity(TIME),
  haulTime: quantity(TIME_OR_NONE),
  dumpTime: quantity(TIME_OR_NONE),
  returnTime: quantity(TIME_OR_NONE),
  truckLoad: quantity(BOX),
  trucks: optional(list(whole(TRUCKS), { of: 'numbers of trucks', most: 100 })),
  volume: optional(inStateField('loose', 'trucks carry loose soil')),
});

/** What a fleet moves. */
export interface Fleet {
  /** How many trucks. */
  readonly trucks: number;
  /** Loose volume over time: the lesser of what the trucks carry and what the machine loads. */
  readonly output: Flow;
  /** `trucks` if the machine waits, `machine` if trucks wait, `both` if neither does. */
  readonly limitedBy: 'trucks' | 'machine' | 'both';
  /** For the whole volume at a steady pace, start and end not counted; null if no volume is given. */
  readonly time: Time | null;
}

/** Trucks against the machine that loads them. */
export interface HaulBalance extends Cautioned, Worked {
  /** Time to load, haul, dump and return. */
  readonly truckCycle: Time;
  /** Truck cycle over loading time: trucks that just keep the machine busy. */
  readonly balance: number;
  /** The balance rounded up: with fewer the machine waits. */
  readonly trucksNeeded: number;
  /** Loose volume over time that one truck moves. */
  readonly perTruck: Flow;
  /** Loose volume over time that the machine can load. */
  readonly machineMaximum: Flow;
  /** For the numbers of trucks given, or for the number needed and one fewer. */
  readonly fleets: readonly Fleet[];
}

/**
 * Trucks to keep a machine busy: `balance = (load + haul + dump + return) / load`, and what a number
 * of trucks moves: `output = min(n x load volume / truck cycle, load volume / loading time)`.
 *
 * @param options - see {@link HaulBalanceOptions}
 * @returns truck cycle, balance, trucks needed, output of each fleet and which of the two limits it
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `NOT_WHOLE`, `WRONG_STATE` and the reading codes
 * @source haul-notes
 * @example
 * const haul = haulBalance({
 *   loadTime: '6 min',
 *   haulTime: '10 min',
 *   dumpTime: '3 min',
 *   returnTime: '8 min',
 *   truckLoad: '9 m3',
 * });
 * haul.trucksNeeded //=> 5
 * haul.fleets.map(({ trucks, limitedBy }) => `${trucks}: ${limitedBy}`) //=> ['4: trucks', '5: machine']
 */
export function haulBalance(options: HaulBalanceOptions): HaulBalance {
  const read = readOptions(options, OPTIONS);
  const { loadTime, truckLoad: load } = read;
  const { truckCycle, trucksNeeded: needed } = trucksAtWork(read);
  const perTruck = load.dividedBy(truckCycle);
  const machineMaximum = load.dividedBy(loadTime);
  const fleet = (trucks: number): Fleet => {
    const carried = perTruck.times(trucks);
    const order = carried.compare(machineMaximum);
    const output = order > 0 ? machineMaximum : carried;
    const limitedBy = order === 0 ? 'both' : order > 0 ? 'machine' : 'trucks';
    return { trucks, output, limitedBy, time: read.volume?.volume.dividedBy(output) ?? null };
  };
  const compared = read.trucks ?? (needed > 1 ? [needed - 1, needed] : [needed]);
  const found = {
    truckCycle,
    balance: truckCycle.dividedBy(loadTime).toNumber(),
    trucksNeeded: needed,
    perTruck,
    machineMaximum,
    fleets: compared.map(fleet),
    cautions: cautionsFor('loads'),
  };
  return withWorking(found, () => [
    formulaStep({
      title: 'Trucks to keep the machine busy',
      formula: 'n = ceil(C / c)',
      given: [given('C', 'truck cycle', truckCycle), given('c', 'loading time', loadTime)],
      result: given('n', 'trucks', needed),
      source: 'haul-notes',
    }),
  ]);
}

type TruckTimes = Pick<Values<typeof OPTIONS>, 'loadTime' | 'haulTime' | 'dumpTime' | 'returnTime'>;

/** The round of a truck, and how many trucks keep the machine busy. Internal. */
export function trucksAtWork({ loadTime, haulTime, dumpTime, returnTime }: TruckTimes) {
  const truckCycle = sum([loadTime, haulTime, dumpTime, returnTime]);
  return { truckCycle, trucksNeeded: wholeNumberUp(truckCycle, loadTime) };
}
