// string-line stands on grading: a string along an edge follows the edge's grade line
import type { GradeLine } from '../grading/grade-line.js';
import { requireGradeLine } from '../grading/require-grade-line.js';
import { shareOf, slopeBetween } from '../grading/slope-between.js';
import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { withWorking, type Worked } from '../working.js';
import {
  isSlack,
  parabolaSag,
  readString,
  shapeOf,
  SLACK,
  type HangingLine,
  type StringInput,
} from './hanging-line.js';
import { ELEVATION } from './limits.js';
import { readTies, requireForward, type Tie } from './read-ties.js';
import {
  readSetOff,
  tieAt,
  tieStep,
  type SetOff,
  type SetOffInput,
  type StringAtStake,
} from './string-at-stake.js';

/** A stake of a string along an edge. */
export interface EdgeStakeInput {
  readonly id: string;
  /** Along the edge, beside the stake. */
  readonly station: LengthInput;
  /** Elevation of the ground at the stake, if known. */
  readonly ground?: LengthInput;
}

/** The string at a stake of an edge. */
export interface EdgeStake extends Omit<StringAtStake, 'working' | 'stakeLength'> {
  readonly id: string;
  readonly station: Length;
  /** Finished grade at the edge. */
  readonly finish: Length;
  /** True beyond the ends of the grade line, where its end grade is carried on. */
  readonly extrapolated: boolean;
}

/** The string from one stake to the next. */
export interface StringSpan {
  readonly from: string;
  readonly to: string;
  /** Level distance. */
  readonly length: Length;
  /** End less start. */
  readonly rise: Length;
  readonly slope: Slope;
  /** In the middle, below the straight; where the string is given. */
  readonly sag?: Length;
}

/** A grade break that has no stake: the string cuts the corner there. */
export interface UnstakedBreak {
  readonly station: Length;
  /** The string above where it should be: + too high, in a sag of the grade; its own sag not counted. */
  readonly stringOff: Length;
}

/** Strings along a sloped edge. */
export interface StringsAlongEdge extends Worked {
  readonly stakes: readonly EdgeStake[];
  readonly spans: readonly StringSpan[];
  readonly unstakedBreaks: readonly UnstakedBreak[];
  /** The most that the string must be raised over the ground, nothing where it is clear everywhere. */
  readonly raiseBy: Length;
  readonly notes: readonly string[];
}

/**
 * Heights of a string along an edge that slopes: at each stake `z = finish(s) + k i o + h` (see
 * `stringAtStake`), with finish(s) from the grade line of the edge. From stake to stake a string is
 * straight: where a grade break has no stake, it says how far the string is off there. Exact.
 *
 * @param options.grade - the finished edge, from `gradeLine` of settline/grading
 * @param options.stakes - two or more in order along the edge: each `id` once, `station` [length] on
 *   the grade line, `ground` [length] if known
 * @param options.stringHeight - string above finished grade [length]
 * @param options.offset - level distance from the edge out to the stakes [length]
 * @param options.crossSlope - of the paving, outward from the edge [slope, + rising outward]
 * @param options.carriesCrossSlope - true: the string stands above the paving carried on to the stakes;
 *   false: above the edge
 * @param options.clearance - least height of the string above the ground [length], default none
 * @param options.string - `tension` [force] and `weightPerLength` [line-weight], to have the sag of each
 *   span (as a parabola)
 * @returns the string at each stake, each span, breaks without a stake [length, + up]
 * @throws `TOO_FEW_STAKES`, `DUPLICATE_ID`, `STATION_ORDER`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const edge = gradeLine({
 *   points: [
 *     { station: '0 m', elevation: '100 m' },
 *     { station: '6 m', elevation: '99.88 m' },
 *     { station: '12 m', elevation: '99.52 m' },
 *   ],
 * });
 * const strings = stringsAlongEdge({
 *   grade: edge,
 *   stakes: [{ id: 'E1', station: '0 m' }, { id: 'E2', station: '12 m' }],
 *   stringHeight: '150 mm',
 *   offset: '450 mm',
 *   crossSlope: '2%',
 *   carriesCrossSlope: true,
 * });
 * strings.stakes.map(({ elevation }) => elevation.to('m').toString()) //=> ['100.159', '99.679']
 * strings.unstakedBreaks[0]?.stringOff.to('mm').toString() //=> '-120'
 */
export function stringsAlongEdge(
  options: SetOffInput & {
    readonly grade: GradeLine;
    readonly stakes: readonly EdgeStakeInput[];
    readonly string?: StringInput;
  },
): StringsAlongEdge {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const grade = requireGradeLine(reader, fields['grade'], ['grade']);
  const setOff = readSetOff(reader, fields);
  const stakes = readStakes(reader, fields['stakes']);
  const line =
    fields['string'] === undefined
      ? undefined
      : readString(reader, reader.object(fields['string'], ['string']), ['string']);
  reader.finish();
  const tied = grade === undefined ? [] : stakes.map((stake) => tie(stake, grade, setOff));
  const spans = spansOf(tied, line);
  if (line !== undefined && spans.some(({ length }) => isSlack(length, line))) {
    reader.fail('OUT_OF_RANGE', ['string', 'tension'], SLACK);
    reader.finish();
  }
  const unstakedBreaks = grade === undefined ? [] : unstaked(grade, tied, setOff);
  const raiseBy = tied.reduce(
    (most, { raiseBy: by }) => (by !== undefined && by.compare(most) > 0 ? by : most),
    setOff.offset.times(0),
  );
  const notes = [
    ...(unstakedBreaks.length > 0 ? [NOTES.breaks] : []),
    ...(raiseBy.isZero() ? [] : [NOTES.low]),
    ...(tied.some(({ extrapolated }) => extrapolated) ? [NOTES.beyond] : []),
  ];
  return withWorking({ stakes: tied, spans, unstakedBreaks, raiseBy, notes }, () =>
    tied.map((stake) => ({
      ...tieStep(stake.finish, setOff, stake),
      title: `Elevation of the string at stake ${stake.id}`,
    })),
  );
}

const NOTES = {
  breaks: 'Set a stake at each grade break listed: a string is straight from stake to stake.',
  low: 'The string is too low over the ground: raise it along the whole line, never on one stake.',
  beyond: 'Some stakes stand beyond the ends of the grade line: its end grade is carried on there.',
} as const;

interface ReadStake extends Tie {
  readonly ground: Length | undefined;
}

function readStakes(reader: Reader, value: unknown): ReadStake[] {
  const stakes = readTies(reader, value, (fields, path) => ({
    ground:
      fields['ground'] === undefined
        ? undefined
        : reader.quantity('length', fields['ground'], [...path, 'ground'], ELEVATION),
  }));
  requireForward(reader, stakes);
  return stakes;
}

function tie({ id, station, ground }: ReadStake, grade: GradeLine, setOff: SetOff): EdgeStake {
  const { elevation: finish, extrapolated } = grade.at(station);
  return { id, station, finish, extrapolated, ...tieAt(finish, setOff, ground) };
}

function spansOf(stakes: readonly EdgeStake[], line: HangingLine | undefined): StringSpan[] {
  return stakes.slice(1).map((to, index) => {
    const from = stakes[index] ?? to;
    const length = to.station.minus(from.station);
    const rise = to.elevation.minus(from.elevation);
    const slope = slopeBetween(rise, length);
    const ends = { from: from.id, to: to.id, length, rise, slope };
    if (line === undefined) return ends;
    const shape = shapeOf(line);
    return { ...ends, sag: parabolaSag(length, length.dividedBy(2), { shape, slope: slope.si }) };
  });
}

/** Breaks between the first stake and the last that have no stake. */
function unstaked(grade: GradeLine, stakes: readonly EdgeStake[], setOff: SetOff): UnstakedBreak[] {
  return grade.breaks.flatMap(({ station, elevation }) => {
    const next = stakes.findIndex((stake) => stake.station.compare(station) >= 0);
    const [from, to] = [stakes[next - 1], stakes[next]];
    if (from === undefined || to === undefined || to.station.equals(station)) return [];
    const rise = to.elevation.minus(from.elevation);
    const run = to.station.minus(from.station);
    const at = from.elevation.plus(shareOf(rise, station.minus(from.station), run));
    return [{ station, stringOff: at.minus(tieAt(elevation, setOff, undefined).elevation) }];
  });
}
