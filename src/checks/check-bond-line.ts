import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { given, type Step } from '../working.js';
import {
  judge,
  layerCheck,
  move,
  sourceOf,
  type CheckedReading,
  type LayerCheck,
} from './layer-check.js';
import { readLine } from './read-profile.js';
import { stringOffsets } from './string-offsets.js';
import {
  readOverLength,
  readUncertainty,
  type OverLengthInput,
  type SetWith,
} from './tolerance.js';

/** A joint along a bond line: where, and how far from a straight base line. */
export interface BondReadingInput {
  /** Default: its number in the list, from 1. */
  readonly id?: string;
  readonly station: LengthInput;
  /** From any straight base line along the stations, + left of travel. */
  readonly offset: LengthInput;
}

/** The largest distance of a joint from the string, wherever it is held. */
export interface CheckedBond extends CheckedReading {
  readonly station: Length;
  /** Stations of the two readings that the string is held on; null for one that is only an end. */
  readonly between: readonly [Length, Length] | null;
}

/** The straightness of a bond line; the `value` of a reading is its distance, + left of travel. */
export interface BondLineCheck extends LayerCheck<Length> {
  readonly check: 'bond-line';
  readonly limits: { readonly least: Length; readonly most: Length };
  /** The string of the tolerance. */
  readonly stringLength: Length;
  /** The largest distance, either way. */
  readonly greatest: Length;
  readonly at: Length;
  readonly readings: readonly CheckedBond[];
  readonly outOfTolerance: readonly CheckedBond[];
}

/**
 * Checks how straight a bond line (a line of joints) runs: a string is held on two readings as far
 * apart as its length allows and moved along, and no reading between may lie farther from it than the
 * tolerance says: `d = y - (y1 + (y2 - y1)(s - s1)/(s2 - s1))`. Distances are square to the base line
 * that stations and offsets were taken from, so the base line itself need not be parallel. Exact: a
 * distance of just the tolerance passes.
 *
 * @param options.line - what the line is called, default `bond line`
 * @param options.readings - at least 3: `station`, growing, `offset` [length, + left], and if wanted `id`
 * @param options.tolerance - a set of `TOLERANCE_SETS` that limits bond lines, or your own `most`
 *   distance `over` a string of a length [length]
 * @param options.uncertainty - how far a distance can be off, either way [length], default none
 * @returns verdict; largest distance and where; each reading with its distance [length, + left],
 *   verdict and which way to move it
 * @throws `LIMIT_NOT_SET`, `READINGS_TOO_SPARSE`, `TOO_FEW_POINTS`, `STATION_ORDER`, `DUPLICATE_ID`,
 *   `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source paver-tolerances
 * @source derived
 * @example
 * const check = checkBondLine({
 *   readings: [
 *     { station: '0 ft', offset: '0 in' },
 *     { station: '20 ft', offset: '5/8 in' },
 *     { station: '40 ft', offset: '0 in' },
 *   ],
 *   tolerance: 'paver-guide-in',
 * });
 * check.verdict //=> 'fail'
 * check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'in' })}`) //=> ['2: move 5/8 in right']
 */
export function checkBondLine(options: {
  readonly line?: string;
  readonly readings: readonly BondReadingInput[];
  readonly tolerance: SetWith<'bondLine'> | OverLengthInput;
  readonly uncertainty?: LengthInput;
}): BondLineCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const subject = reader.text(fields['line'] ?? 'bond line', ['line']);
  const line = readLine(reader, fields['readings'], { field: 'readings', name: 'offset' });
  const field = { reader, value: fields['tolerance'], words: 'bond line' };
  const tolerance = readOverLength(field, (set) => set.bondLine);
  const uncertainty = readUncertainty(reader, fields);
  reader.finish();
  const offsets = stringOffsets(
    line.map(({ at }) => at),
    exactOf(tolerance.over),
  );
  if (offsets.every((one) => one === null)) {
    const words = 'nowhere does a reading lie between the ends of the string: take more';
    reader.fail('READINGS_TOO_SPARSE', ['readings'], words);
    reader.finish();
  }
  const limits = { least: tolerance.most.negated(), most: tolerance.most };
  const readings = line.map(({ id, station }, index): CheckedBond => {
    const found = offsets[index] ?? null;
    const value = found === null ? NOTHING : fromSI('length', found.offset);
    const ends = found?.ends.map((end) => line[end]?.station ?? station);
    const between = ends === undefined ? null : ([ends[0] ?? station, ends[1] ?? station] as const);
    return { ...judge({ id, value, limits, uncertainty }, toTheString), station, between };
  });
  const worst = readings.reduce((a, b) => (b.value.abs().compare(a.value.abs()) > 0 ? b : a));
  const parts = {
    check: 'bond-line',
    subject,
    stringLength: tolerance.over,
    greatest: worst.value.abs(),
    at: worst.station,
    limits,
    origin: tolerance,
    readings,
  } as const;
  return layerCheck(parts, () =>
    readings.flatMap((reading) => bondStep(reading, tolerance.most, sourceOf(tolerance))),
  );
}

const NOTHING = length(0, 'm');

const toTheString = (offset: Length) =>
  move(offset.isNegative() ? 'move-left' : 'move-right', offset);

function bondStep(
  { id, station, between, value }: CheckedBond,
  most: Length,
  source: Step['source'],
): Step[] {
  if (between === null) return [];
  return [
    {
      title: `Bond line at ${id}, from the string`,
      formula: 'd = y - (y1 + (y2 - y1)(s - s1)/(s2 - s1))',
      given: [
        given('s', 'station', station),
        given('s1', 'one end of the string', between[0]),
        given('s2', 'other end of the string', between[1]),
        given('tol', 'largest distance', most),
      ],
      result: given('d', 'distance, + left', value),
      source,
    },
  ];
}
