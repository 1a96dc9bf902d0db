import { list, object, optional, quantity, text } from '../input/field.js';
import { LEVEL_DIFFERENCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { entry, lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Area, type Length } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { requireForward, TIE, type TieInput } from './ties.js';

/** A stake of a string, and the depth read there. */
export interface ReadStakeInput extends TieInput {
  /** Depth at the stake [length], up to 20 m either way: of dig, + cut. Default: not read. */
  readonly depth?: LengthInput;
}

/** A string, and the depths read along it. */
export interface ReadStringInput {
  /** What the string is called. Each id once. */
  readonly id: string;
  /** Stakes in order along the string. */
  readonly stakes: readonly ReadStakeInput[];
}

/** The strings to take the mean over. */
export interface MeanDepthAlongOptions {
  /** One string or more. */
  readonly strings: readonly ReadStringInput[];
}

const STAKE = shapeOf<ReadStakeInput>()({ ...TIE, depth: optional(quantity(LEVEL_DIFFERENCE)) });

const STRING = shapeOf<ReadStringInput>()({
  id: text(),
  stakes: list(object(STAKE), { of: 'stakes', unique: 'id' }),
});

const inOrder: Check<typeof STRING> = (reader, { stakes }, path) => {
  requireForward(reader, stakes, path);
};

const OPTIONS = shapeOf<MeanDepthAlongOptions>()({
  strings: list(object(STRING, inOrder), { of: 'strings', unique: 'id' }),
});

/** The mean along one string. */
export interface MeanDepthOfString {
  /** The string. */
  readonly id: string;
  /** Mean depth between its first reading and its last; null with fewer than two readings. */
  readonly mean: Length | null;
  /** From its first reading to its last: what the mean holds for. */
  readonly length: Length;
  /** The rest of the string, before its first reading and beyond its last: nothing is known of it. */
  readonly unread: Length;
}

/** A stake without a reading. */
export interface UnreadStake {
  /** The string. */
  readonly string: string;
  /** The stake. */
  readonly stake: string;
}

/** Mean depth along strings. */
export interface MeanDepthAlong extends Worked {
  /** Over all strings, each counted by its length; null where no string has two readings. */
  readonly mean: Length | null;
  /** Length of string that the mean holds for. */
  readonly length: Length;
  /** Each string, in the order given. */
  readonly strings: readonly MeanDepthOfString[];
  /** Stakes without a reading. The ground is taken as straight past them. */
  readonly unreadStakes: readonly UnreadStake[];
  /** What is missing, in words; empty if all was read. */
  readonly notes: readonly string[];
}

/**
 * Mean depth along strings whose stakes are not evenly spaced: from reading to reading the depth is
 * taken to change evenly, so `mean = sum(L (d1 + d2) / 2) / sum L` over the stretches of all strings.
 * Exact. A plain mean of the readings counts stakes that are close together too often. Stakes without a
 * reading are named; so is string before the first reading or beyond the last, which counts for nothing.
 *
 * @param options - see {@link MeanDepthAlongOptions}
 * @returns the mean [length], the length of string that it holds for, the same of each string, stakes
 *   without a reading
 * @throws `EMPTY_LIST`, `DUPLICATE_ID`, `NOT_INCREASING`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const dig = meanDepthAlong({
 *   strings: [
 *     {
 *       id: 'left',
 *       stakes: [
 *         { id: 'L1', station: '0 m', depth: '300 mm' },
 *         { id: 'L2', station: '2 m', depth: '340 mm' },
 *         { id: 'L3', station: '10 m', depth: '500 mm' },
 *       ],
 *     },
 *   ],
 * });
 * dig.mean?.to('mm').toString() //=> '400'
 * dig.length.to('m').toString() //=> '10'
 */
export function meanDepthAlong(options: MeanDepthAlongOptions): MeanDepthAlong {
  const { strings } = readOptions(options, OPTIONS);
  const measured = strings.map(measureString);
  const all = addStretches(measured);
  const unreadStakes = strings.flatMap(({ id, stakes }) =>
    stakes
      .filter(({ depth }) => depth === undefined)
      .map((stake) => ({ string: id, stake: stake.id })),
  );
  const result = {
    mean: meanOf(all),
    length: all.length,
    strings: measured.map(({ id, area, length, unread }) => ({
      id,
      mean: meanOf({ area, length }),
      length,
      unread,
    })),
    unreadStakes,
    notes: notesOn(measured, unreadStakes),
  };
  return withWorking(result, () => stepsOf(measured, result.mean));
}

/** Length of string, and the area of the section along it. */
interface Stretch {
  readonly length: Length;
  readonly area: Area;
}

/** The same, from one reading to the next. */
interface ReadStretch extends Stretch {
  readonly from: Length;
  readonly to: Length;
}

interface MeasuredString extends Stretch {
  readonly id: string;
  readonly unread: Length;
  readonly stretches: readonly ReadStretch[];
}

const NO_AREA: Area = NO_LENGTH.times(NO_LENGTH);

function measureString({ id, stakes }: Values<typeof STRING>): MeasuredString {
  const read = stakes.flatMap(({ station, depth }) =>
    depth === undefined ? [] : [{ station, depth }],
  );
  const stretches = read.slice(1).map((to, k): ReadStretch => {
    const from = entry(read, k);
    const length = to.station.minus(from.station);
    const area = from.depth.plus(to.depth).times(length).dividedBy(2);
    return { length, area, from: from.depth, to: to.depth };
  });
  const { length, area } = addStretches(stretches);
  const [first, last] = [entry(stakes, 0).station, lastOf(stakes).station];
  return { id, length, area, unread: last.minus(first).minus(length), stretches };
}

const addStretches = (stretches: readonly Stretch[]): Stretch => ({
  length: stretches.reduce((total, one) => total.plus(one.length), NO_LENGTH),
  area: stretches.reduce((total, one) => total.plus(one.area), NO_AREA),
});

const meanOf = ({ area, length }: Stretch): Length | null =>
  length.isZero() ? null : fromSI('length', divideRatios(exactOf(area), exactOf(length)));

function notesOn(strings: readonly MeasuredString[], stakes: readonly UnreadStake[]): string[] {
  const names = stakes.map(({ string, stake }) => `${stake} (string ${string})`);
  const without = strings.filter(({ length }) => length.isZero()).map(({ id }) => id);
  const short = strings.filter(({ length, unread }) => !length.isZero() && !unread.isZero());
  return [
    ...(names.length === 0
      ? []
      : [
          `No reading at ${names.join(', ')}. Between readings the ground is taken as straight: read them, or judge it.`,
        ]),
    ...(without.length === 0
      ? []
      : [
          `Fewer than two readings on string ${without.join(', ')}: it does not count in the average. Read two of its stakes at least.`,
        ]),
    ...(short.length === 0
      ? []
      : [
          `String ${short.map(({ id }) => id).join(', ')} was not read up to both ends. The mean holds from the first reading to the last.`,
        ]),
  ];
}

/** The formula of a mean along stretches of length L from a depth a to a depth b. Internal. */
export const meanAlong = (symbol: string): string =>
  `${symbol} = sum(L[i] * (a[i] + b[i]) / 2) / sum(L)`;

function stepsOf(strings: readonly MeasuredString[], mean: Length | null): Step[] {
  if (mean === null) return [];
  const counted = strings.filter(({ length }) => !length.isZero());
  const stretches = counted.flatMap((string) => string.stretches);
  const of = `each stretch of string ${counted.map(({ id }) => id).join(', ')}`;
  return [
    derivedStep({
      title: 'Mean depth along the strings',
      formula: meanAlong('m'),
      given: [
        given(
          'L',
          `length of ${of}`,
          stretches.map(({ length }) => length),
        ),
        given(
          'a',
          `depth at the start of ${of}`,
          stretches.map(({ from }) => from),
        ),
        given(
          'b',
          `depth at the end of ${of}`,
          stretches.map(({ to }) => to),
        ),
      ],
      result: given('m', 'mean depth', mean),
    }),
  ];
}
