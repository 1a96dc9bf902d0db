import { flag, list, object, optional, quantity, whole } from '../../input/field.js';
import { COUNT_OR_NONE, DISTANCE_OR_NONE, PIECE, SET_BACK } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { SourceId } from '../../sources/catalogue.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, type Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../../working.js';
import { quantityOr } from '../quantity-or.js';
import { stripsAcross } from '../strips.js';
import { countOf, wholeUp } from '../whole-number.js';

/** One run of edge restraint with options. */
export interface SpecialRunInput {
  /** Length of the run [length], 0 to 100 km. */
  readonly length: LengthInput;
  /** True for a run laid to a curve. Default: false. */
  readonly isCurved?: boolean;
  /** Maximum spike spacing of this run [length], more than 0, at most 100 m. Default: that of its kind. */
  readonly spikeSpacing?: LengthInput;
  /** True if a wall or slab holds the edge, so no restraint is needed. Default: false. */
  readonly isAgainstWall?: boolean;
  /** True for a ring that closes on itself. Default: false. */
  readonly isClosed?: boolean;
}

/** One run of edge restraint between corners or ends: a length, or an object with options. */
export type RestraintRunInput = LengthInput | SpecialRunInput;

/** Runs of restraint, and their pieces and spikes. */
export interface EdgeRestraintOptions {
  /** The runs between corners or ends, 1 to 10 000. */
  readonly runs: readonly RestraintRunInput[];
  /** Length of a piece [length], more than 0 and at most 100 m. */
  readonly piece: LengthInput;
  /** Maximum spike spacing on straight runs [length], more than 0 and at most 100 m. */
  readonly spikeSpacing: LengthInput;
  /** Maximum spike spacing on curved runs [length], more than 0 and at most 100 m. Default: that of straight runs. */
  readonly curvedSpikeSpacing?: LengthInput;
  /** Overlap of pieces [length], 0 to 100 m and less than a piece. Default: 0. */
  readonly lap?: LengthInput;
  /** Spikes added at each joint of two pieces, a whole number up to 1 000 000. Default: 0. */
  readonly spikesPerJoint?: number | string;
}

const RUN = shapeOf<SpecialRunInput>()({
  length: quantity(DISTANCE_OR_NONE),
  isCurved: optional(flag, false),
  spikeSpacing: optional(quantity(PIECE)),
  isAgainstWall: optional(flag, false),
  isClosed: optional(flag, false),
});

type RunRead = Values<typeof RUN>;

const STRAIGHT = {
  isCurved: false,
  spikeSpacing: undefined,
  isAgainstWall: false,
  isClosed: false,
} as const;

const OPTIONS = shapeOf<EdgeRestraintOptions>()({
  runs: list(
    quantityOr<'length', RunRead>(DISTANCE_OR_NONE, object(RUN), (length) => ({
      length,
      ...STRAIGHT,
    })),
    { of: 'runs' },
  ),
  piece: quantity(PIECE),
  spikeSpacing: quantity(PIECE),
  curvedSpikeSpacing: optional(quantity(PIECE)),
  lap: optional(quantity(SET_BACK), NO_LENGTH),
  spikesPerJoint: optional(whole(COUNT_OR_NONE), 0),
});

type Read = Values<typeof OPTIONS>;

/** Restraint along one run. */
export interface RestraintRun {
  /** Length of the run. */
  readonly length: Length;
  /** Pieces of the run. */
  readonly pieces: number;
  /** Spikes of the run. */
  readonly spikes: number;
  /** Even spacing of the spikes; null if there are none. */
  readonly spacing: Length | null;
  /** Length cut off the last piece. */
  readonly surplus: Length;
}

/** Pieces of edge restraint and spikes. */
export interface EdgeRestraint extends Cautioned, Worked {
  /** Pieces of all runs. */
  readonly pieces: number;
  /** Spikes of all runs. */
  readonly spikes: number;
  /** Run by run, in the order given. */
  readonly runs: readonly RestraintRun[];
  /** What to watch when you set it. */
  readonly notes: readonly string[];
  /** Where the rules are printed. */
  readonly sources: readonly SourceId[];
}

/**
 *
 * Edge restraint by continuous run: `pieces = ceil(L / piece)` (with a lap
 * `1 + ceil((L - piece) / (piece - lap))`), `spikes = ceil(L / s) + 1`, so no gap is wider than s
 * and both ends are held. A closed ring takes `ceil(L / (piece - lap))` and `ceil(L / s)`. Pieces
 * are counted run by run, and off-cuts are not reused. A run against a wall takes none.
 *
 * @param options - see {@link EdgeRestraintOptions}
 * @returns total pieces and spikes, the same by run, off-cuts, notes
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `NOT_WHOLE`, `OUT_OF_RANGE`, `EMPTY_LIST`, `CAPACITY_EXCEEDED`
 *   and the reading codes
 * @source derived
 * @source edge-restraints
 * @example
 * const edging = edgeRestraint({
 *   runs: ['12 m', '5 m', '7.4 m', { length: '9 m', isAgainstWall: true }],
 *   piece: '2.4 m',
 *   spikeSpacing: '300 mm',
 * });
 * edging.pieces //=> 12
 * edging.spikes //=> 85
 */
export function edgeRestraint(options: EdgeRestraintOptions): EdgeRestraint {
  const read = readOptions(options, OPTIONS, checkLap);
  const made = read.runs.map((run) => restrain(run, read));
  const total = (pick: (run: RestraintRun) => number) =>
    countOf(made.reduce((count, run) => count + pick(run), 0));
  const restraint = {
    pieces: total((run) => run.pieces),
    spikes: total((run) => run.spikes),
    runs: made,
    notes: notesFor(read),
    sources: ['edge-restraints'] as const,
    cautions: cautionsFor('utilities'),
  };
  return withWorking(restraint, () => stepsOf(read, made));
}

const checkLap: Check<typeof OPTIONS> = (reader, { lap, piece }, path) => {
  if (lap === undefined || piece === undefined) return;
  if (lap.isZero() || lap.compare(piece) < 0) return;
  reader.fail(
    'OUT_OF_RANGE',
    [...path, 'lap'],
    'is as long as the piece. Write the overlap of two pieces',
  );
};

const spacingOf = ({ spikeSpacing, isCurved }: RunRead, read: Read): Length =>
  spikeSpacing ?? (isCurved ? read.curvedSpikeSpacing : undefined) ?? read.spikeSpacing;

function restrain(run: RunRead, read: Read): RestraintRun {
  const { length, isClosed } = run;
  if (run.isAgainstWall || length.isZero()) {
    return { length, pieces: 0, spikes: 0, spacing: null, surplus: NO_LENGTH };
  }
  const { piece, lap } = read;
  const gaps = wholeUp(exactOf(length), exactOf(spacingOf(run, read)), ['spikeSpacing']);
  // a ring has as many joints as pieces, a run one fewer
  const pieces = isClosed
    ? wholeUp(exactOf(length), exactOf(piece.minus(lap)), ['piece'])
    : stripsAcross(length, piece, lap);
  const joints = isClosed ? pieces : pieces - 1;
  return {
    length,
    pieces,
    spikes: countOf(gaps + (isClosed ? 0 : 1) + joints * read.spikesPerJoint),
    spacing: length.dividedBy(gaps),
    surplus: piece.times(pieces).minus(lap.times(joints)).minus(length),
  };
}

const stepsOf = (read: Read, made: readonly RestraintRun[]): Step[] =>
  read.runs.flatMap((run, index) => {
    const one = made[index];
    // a run against a wall takes none
    if (one === undefined) return [];
    if (one.spacing === null) return [];
    const name = run.isClosed ? `ring ${index + 1}` : `run ${index + 1}`;
    return [pieceStep(name, run, read, one), spikeStep(name, run, read, one)];
  });

const pieceStep = (name: string, run: RunRead, { piece, lap }: Read, made: RestraintRun): Step =>
  derivedStep({
    title: `Pieces of ${name}`,
    formula: run.isClosed
      ? 'p = ceil(L / (P - o))'
      : 'p = L <= P ? 1 : 1 + ceil((L - P) / (P - o))',
    given: [given('L', 'run', run.length), given('P', 'piece', piece), given('o', 'lap', lap)],
    result: given('p', 'pieces', made.pieces),
  });

const spikeStep = (name: string, run: RunRead, read: Read, made: RestraintRun): Step =>
  derivedStep({
    title: `Spikes of ${name}`,
    formula: run.isClosed ? 'n = ceil(L / s) + p * k' : 'n = ceil(L / s) + 1 + (p - 1) * k',
    given: [
      given('L', 'run', run.length),
      given('s', 'maximum spacing', spacingOf(run, read)),
      given('p', 'pieces', made.pieces),
      given('k', 'spikes more at each joint of two pieces', read.spikesPerJoint),
    ],
    result: given('n', 'spikes', made.spikes),
  });

function notesFor({ runs, curvedSpikeSpacing }: Read): string[] {
  const notes = ['Set the restraint on compacted base, never on bedding.'];
  const isGuessed = runs.some((run) => run.isCurved && run.spikeSpacing === undefined);
  if (isGuessed && curvedSpikeSpacing === undefined) {
    notes.push(
      'Curved runs use the spike spacing of straight runs. Space spikes closer on curves.',
    );
  }
  return notes;
}
