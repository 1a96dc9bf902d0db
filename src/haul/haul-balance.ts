import { makeReader } from '../input/reader.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { sum } from '../units/aggregate.js';
import type { TimeInput, VolumeInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Flow, Time } from '../units/quantity.js';
// what is hauled is loose
import { requireState, type StateVolume } from '../volumes/state-volume.js';
import { given, withWorking, type Worked } from '../working.js';
import { TIME, TIME_OR_NONE, VOLUME } from '../site/limits.js';
import { readCount } from '../site/read-whole.js';

/** What a number of trucks moves. */
export interface Fleet {
  readonly trucks: number;
  /** Loose volume over time: the lesser of what the trucks carry and what the machine loads. */
  readonly output: Flow;
  /** `trucks` where the machine waits, `machine` where trucks wait, `both` where neither does. */
  readonly limitedBy: 'trucks' | 'machine' | 'both';
  /** For the whole volume, if one was given; steady running, without start and end. */
  readonly time: Time | null;
}

/** Trucks against the machine that loads them. */
export interface HaulBalance extends Worked {
  /** Load, haul, dump, return. */
  readonly truckCycle: Time;
  /** Truck cycle over loading time: trucks that keep the machine just busy. */
  readonly balance: number;
  /** The balance rounded up: fewer leave the machine waiting. */
  readonly trucksNeeded: number;
  readonly perTruck: Flow;
  readonly machineMost: Flow;
  /** For the trucks asked for, or for the needed number and one fewer. */
  readonly fleets: readonly Fleet[];
  readonly cautions: readonly Caution[];
}

/**
 * Trucks to keep a machine busy: `balance = (load + haul + dump + return) / load`, and what a number
 * of trucks moves: `output = min(n x load volume / truck cycle, load volume / loading time)`.
 *
 * @param options.loadTime - to fill one truck [time]
 * @param options.haulTime - full, to the tip [time]
 * @param options.dumpTime - at the tip, waiting there included [time]
 * @param options.returnTime - empty, back to the machine [time]
 * @param options.truckLoad - loose volume in a full, legal load [volume]
 * @param options.trucks - numbers of trucks to compare, each 1 to 100; default the needed number and
 *   one fewer
 * @param options.volume - loose volume to move, for the time of each fleet
 * @returns truck cycle, balance, trucks needed, output of each fleet and which of the two limits it
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `STATE_MISSING` and the reading codes
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
export function haulBalance(options: {
  readonly loadTime: TimeInput;
  readonly haulTime: TimeInput;
  readonly dumpTime: TimeInput;
  readonly returnTime: TimeInput;
  readonly truckLoad: VolumeInput;
  readonly trucks?: readonly number[];
  readonly volume?: StateVolume<'loose'>;
}): HaulBalance {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const loadTime = reader.quantity('time', fields['loadTime'], ['loadTime'], TIME);
  const away = (['haulTime', 'dumpTime', 'returnTime'] as const).map((name) =>
    reader.quantity('time', fields[name], [name], TIME_OR_NONE),
  );
  const load = reader.quantity('volume', fields['truckLoad'], ['truckLoad'], VOLUME);
  const counts =
    fields['trucks'] === undefined
      ? undefined
      : reader
          .list(fields['trucks'], ['trucks'])
          .map((item, index) => readCount(reader, item, ['trucks', index], 100));
  const moved = fields['volume'];
  if (moved !== undefined) {
    requireState(reader, moved, {
      state: 'loose',
      path: ['volume'],
      words: "trucks carry loose soil: stateVolume(v, 'loose')",
    });
  }
  reader.finish();

  const truckCycle = sum([loadTime, ...away]);
  const perTruck = load.dividedBy(truckCycle);
  const machineMost = load.dividedBy(loadTime);
  const needed = wholeNumberUp(truckCycle, loadTime);
  const fleet = (trucks: number): Fleet => {
    const carried = perTruck.times(trucks);
    const order = carried.compare(machineMost);
    const output = order > 0 ? machineMost : carried;
    const limitedBy = order === 0 ? 'both' : order > 0 ? 'machine' : 'trucks';
    return { trucks, output, limitedBy, time: options.volume?.volume.dividedBy(output) ?? null };
  };
  const compared = counts ?? (needed > 1 ? [needed - 1, needed] : [needed]);
  const found = {
    truckCycle,
    balance: truckCycle.dividedBy(loadTime).toNumber(),
    trucksNeeded: needed,
    perTruck,
    machineMost,
    fleets: compared.map(fleet),
    cautions: cautionsFor('loads'),
  };
  return withWorking(found, () => [
    {
      title: 'Trucks to keep the machine busy',
      formula: 'n = ceil(C / c)',
      given: [
        given('C', 'truck cycle', truckCycle),
        given('c', 'loading time', loadTime),
        given('C/c', 'balance', found.balance),
      ],
      result: given('n', 'trucks', needed),
      source: 'haul-notes',
    },
  ]);
}
