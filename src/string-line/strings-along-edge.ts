// string-line uses grading: a string along an edge follows the edge's grade line
import type { GradeLine } from '../grading/grade-line.js';
import { workedLine } from '../grading/require-grade-line.js';
import { shareOf, slopeBetween } from '../grading/slope-between.js';
import { list, object, optional, quantity } from '../input/field.js';
import { ELEVATION } from '../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { entry } from '../invariant.js';
import { max } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { withWorking, type Worked } from '../working.js';
import {
  parabolaSag,
  requireTaut,
  shapeLength,
  STRING,
  type HangingLine,
  type StringInput,
} from './hanging-line.js';
import {
  OFFSET_STRING,
  tieAt,
  tieStep,
  type OffsetString,
  type OffsetStringInput,
  type OffsetTie,
} from './string-at-stake.js';
import { requireForward, TIE, type TieInput } from './ties.js';

/** A stake of a string along an edge; its station is the point of the edge beside it. */
export interface EdgeStakeInput extends TieInput {
  /** Elevation of the ground at the stake [length], up to 10 km either way. Default: not known. */
  readonly ground?: LengthInput;
}

/** An edge, and the stakes along it that a string is tied to. */
export interface StringsAlongEdgeOptions extends OffsetStringInput {
  /** The finished edge, from `gradeLine` of settline/grading. */
  readonly grade: GradeLine;
  /** At least 2 stakes, in order along the edge. */
  readonly stakes: readonly EdgeStakeInput[];
  /** The string, to get the sag of each span. Default: no sag. */
  readonly string?: StringInput;
}

const EDGE_STAKE = shapeOf<EdgeStakeInput>()({ ...TIE, ground: optional(quantity(ELEVATION)) });

const OPTIONS = shapeOf<StringsAlongEdgeOptions>()({
  ...OFFSET_STRING,
  grade: workedLine,
  stakes: list(object(EDGE_STAKE), { of: 'stakes', least: 2, unique: 'id' }),
  string: optional(object(STRING)),
});

/** The string at a stake of an edge. */
export interface EdgeStake extends OffsetTie {
  /** The stake. */
  readonly id: string;
  /** On the edge beside the stake [length]. */
  readonly station: Length;
  /** Elevation of finished grade at the edge [length]. */
  readonly finishedGrade: Length;
  /** True if the stake is past the ends of the grade line, where its end grade is extended. */
  readonly extrapolated: boolean;
}

/** The string from one stake to the next. */
export interface StringSpan {
  /** Id of the stake where it starts. */
  readonly from: string;
  /** Id of the stake where it ends. */
  readonly to: string;
  /** Level length of the span [length]. */
  readonly length: Length;
  /** End less start [length]. */
  readonly rise: Length;
  /** Rise over level distance [slope], + rising. */
  readonly slope: Slope;
  /** Sag at midspan, as a parabola [length]; null if no string is given. */
  readonly sag: Length | null;
}

/** A grade break that has no stake: the string cuts the corner there. */
export interface BreakWithoutStake {
  /** Where the grade breaks [length]. */
  readonly station: Length;
  /**
   * Error of the string there [length], + too high, as in a hollow; its own sag is not included.
   */
  readonly stringError: Length;
}

/** The strings along a sloped edge. */
export interface StringsAlongEdge extends Worked {
  /** The string at each stake, in order. */
  readonly stakes: readonly EdgeStake[];
  /** From each stake to the next. */
  readonly spans: readonly StringSpan[];
  /** Grade breaks between the first and the last stake that have no stake. */
  readonly breaksWithoutStake: readonly BreakWithoutStake[];
  /** Raise the whole string by this to clear the ground [length]; 0 if it clears it everywhere. */
  readonly raiseStringBy: Length;
  /** What to do, in words; empty if all is well. */
  readonly notes: readonly string[];
}

/**
 * Heights of a string along an edge that slopes: at each stake `z = finish(s) + k i o + h` (see
 * `stringAtStake`), with finish(s) from the grade line of the edge. From stake to stake a string is
 * straight: if a grade break has no stake, `breaksWithoutStake` gives the error there. Exact.
 *
 * @param options - see {@link StringsAlongEdgeOptions}
 * @returns the string at each stake, each span, breaks without a stake [length, + up]
 * @throws `TOO_FEW`, `DUPLICATE_ID`, `NOT_INCREASING`, `NEGATIVE`, `OUT_OF_RANGE` and the reading
 *   codes
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
 * strings.breaksWithoutStake[0]?.stringError.to('mm').toString() //=> '-120'
 */
export function stringsAlongEdge(options: StringsAlongEdgeOptions): StringsAlongEdge {
  const read = readOptions(options, OPTIONS, checkStakes);
  const stakes = read.stakes.map((stake) => tie(stake, read.grade, read));
  const spans = spansOf(stakes, read.string);
  const breaksWithoutStake = unstaked(read.grade, stakes, read);
  const raiseStringBy = max([
    NO_LENGTH,
    ...stakes.map((stake) => stake.raiseStringBy ?? NO_LENGTH),
  ]);
  const notes = [
    ...(breaksWithoutStake.length > 0 ? [NOTES.breaks] : []),
    ...(raiseStringBy.isZero() ? [] : [NOTES.low]),
    ...(stakes.some(({ extrapolated }) => extrapolated) ? [NOTES.beyond] : []),
  ];
  return withWorking({ stakes, spans, breaksWithoutStake, raiseStringBy, notes }, () =>
    stakes.map((stake) => ({
      ...tieStep(stake.finishedGrade, read, stake),
      title: `Elevation of the string at stake ${stake.id}`,
    })),
  );
}

const checkStakes: Check<typeof OPTIONS> = (reader, { stakes, string }, path) => {
  if (stakes === undefined) return;
  requireForward(reader, stakes);
  if (string === undefined) return;
  const spans = stakes.slice(1).map((to, k) => to.station.minus(entry(stakes, k).station));
  requireTaut(reader, { spans, line: string }, [...path, 'string', 'tension']);
};

const NOTES = {
  breaks: 'Set a stake at each grade break listed: a string is straight from stake to stake.',
  low: 'The string is too low over the ground. Raise it along the whole line, never on one stake.',
  beyond: 'Some stakes are past the ends of the grade line. Its end grade is extended to them.',
} as const;

function tie(
  { id, station, ground }: Values<typeof EDGE_STAKE>,
  grade: GradeLine,
  string: OffsetString,
): EdgeStake {
  const { elevation: finishedGrade, extrapolated } = grade.at(station);
  return { id, station, finishedGrade, extrapolated, ...tieAt(finishedGrade, string, ground) };
}

function spansOf(stakes: readonly EdgeStake[], line: HangingLine | undefined): StringSpan[] {
  return stakes.slice(1).map((to, index) => {
    const from = entry(stakes, index);
    const length = to.station.minus(from.station);
    const rise = to.elevation.minus(from.elevation);
    const slope = slopeBetween(rise, length);
    const sag = line === undefined ? null : midspanSag(line, length, slope);
    return { from: from.id, to: to.id, length, rise, slope, sag };
  });
}

const midspanSag = (line: HangingLine, span: Length, slope: Slope): Length =>
  parabolaSag(span, span.dividedBy(2), { shape: shapeLength(line), slope: slope.si });

/** Breaks between the first stake and the last that have no stake. */
function unstaked(
  grade: GradeLine,
  stakes: readonly EdgeStake[],
  string: OffsetString,
): BreakWithoutStake[] {
  return grade.breaks.flatMap(({ station, elevation }) => {
    const next = stakes.findIndex((stake) => stake.station.compare(station) >= 0);
    const [from, to] = [stakes[next - 1], stakes[next]];
    if (from === undefined || to === undefined || to.station.equals(station)) return [];
    const rise = to.elevation.minus(from.elevation);
    const run = to.station.minus(from.station);
    const at = from.elevation.plus(shareOf(rise, station.minus(from.station), run));
    const wanted = tieAt(elevation, string, undefined).elevation;
    return [{ station, stringError: at.minus(wanted) }];
  });
}
