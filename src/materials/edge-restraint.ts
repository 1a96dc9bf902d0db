import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { shown } from '../input/shown.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import type { SourceId } from '../sources/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, isQuantity, type Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { NO_LENGTH, RUN, RUN_OF_SOME, SHORT } from './limits.js';
import { stripsAcross } from './strips.js';
import { wholeUp } from './whole-number.js';

/** A run of restraint between two corners or ends: a length, or a length with what is special. */
export type RestraintRunInput =
  | LengthInput
  | {
      readonly length: LengthInput;
      /** Laid to a curve. */
      readonly curved?: boolean;
      /** Spike spacing of this run. */
      readonly spikeSpacing?: LengthInput;
      /** Against a wall or slab that holds the edge: no restraint. */
      readonly againstWall?: boolean;
      /** A ring that closes on itself. */
      readonly closed?: boolean;
    };

/** Restraint along one run. */
export interface RestraintRun {
  readonly length: Length;
  readonly pieces: number;
  readonly spikes: number;
  /** From spike to spike, spread evenly; null where there are none. */
  readonly spacing: Length | null;
  /** Cut off the last piece. */
  readonly leftOver: Length;
}

/** Pieces of edge restraint and spikes. */
export interface EdgeRestraint extends Worked {
  readonly pieces: number;
  readonly spikes: number;
  readonly runs: readonly RestraintRun[];
  readonly notes: readonly string[];
  readonly sources: readonly SourceId[];
  readonly cautions: readonly Caution[];
}

/**
 * Edge restraint by continuous run: `pieces = ceil(L / piece)` (with a lap
 * `1 + ceil((L - piece) / (piece - lap))`), `spikes = ceil(L / s) + 1`, so that no gap is wider than s
 * and both ends are held. A closed ring takes `ceil(L / (piece - lap))` and `ceil(L / s)`. Pieces are counted run by run, off-cuts
 * not used again. Against a wall there is none.
 *
 * @param options.runs - lengths [length], or `{ length, curved, spikeSpacing, againstWall, closed }`
 * @param options.piece - length of a piece [length]
 * @param options.spikeSpacing - greatest, on straight runs and where nothing else is said [length]
 * @param options.curvedSpikeSpacing - greatest, on curved runs [length]; default as on straight ones
 * @param options.lap - by which pieces overlap [length], less than a piece, default 0
 * @param options.spikesPerJoint - more spikes at each joint of two pieces, a whole number, default 0
 * @returns pieces and spikes in all and by run, off-cuts, notes
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`, `CAPACITY_EXCEEDED` and the reading
 *   codes
 * @source derived
 * @source edge-restraints
 * @example
 * const edging = edgeRestraint({
 *   runs: ['12 m', '5 m', '7.4 m', { length: '9 m', againstWall: true }],
 *   piece: '2.4 m',
 *   spikeSpacing: '300 mm',
 * });
 * edging.pieces //=> 12
 * edging.spikes //=> 85
 */
export function edgeRestraint(options: {
  readonly runs: readonly RestraintRunInput[];
  readonly piece: LengthInput;
  readonly spikeSpacing: LengthInput;
  readonly curvedSpikeSpacing?: LengthInput;
  readonly lap?: LengthInput;
  readonly spikesPerJoint?: number;
}): EdgeRestraint {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const piece = reader.quantity('length', fields['piece'], ['piece'], RUN_OF_SOME);
  const lap = reader.quantity('length', fields['lap'] ?? NO_LENGTH, ['lap'], SHORT);
  if (!lap.isZero() && lap.compare(piece) >= 0) {
    reader.fail('OUT_OF_RANGE', ['lap'], 'the lap is as long as the piece');
  }
  const straight = readSpacing(reader, fields['spikeSpacing'], ['spikeSpacing']);
  const curved =
    fields['curvedSpikeSpacing'] === undefined
      ? undefined
      : readSpacing(reader, fields['curvedSpikeSpacing'], ['curvedSpikeSpacing']);
  const perJoint = readPerJoint(reader, fields['spikesPerJoint']);
  const runs = readRuns(reader, fields['runs'], { straight, curved });
  reader.finish();

  const made = runs.map((run) => restrain(run, { piece, lap, perJoint }));
  const total = (pick: (run: RestraintRun) => number) =>
    made.reduce((count, run) => count + pick(run), 0);
  const restraint = {
    pieces: total((run) => run.pieces),
    spikes: total((run) => run.spikes),
    runs: made,
    notes: notesFor(runs),
    sources: ['edge-restraints'] as const,
    cautions: cautionsFor('utilities'),
  };
  return withWorking(restraint, () =>
    made.map((run, index) => ({
      title: `Spikes of run ${index + 1}`,
      formula: runs[index]?.isClosed === true ? 'n = ceil(L / s)' : 'n = ceil(L / s) + 1',
      given: [
        given('L', 'run', run.length),
        given('s', 'greatest spacing', runs[index]?.spacing ?? straight),
        given('p', 'piece', piece),
      ],
      result: given('n', `spikes, for ${run.pieces} pieces`, run.spikes),
      source: 'derived' as const,
    })),
  );
}

interface Run {
  readonly length: Length;
  readonly spacing: Length;
  readonly isClosed: boolean;
  readonly isHeld: boolean;
  /** A curve whose spacing nobody said. */
  readonly isGuessed: boolean;
}

const readSpacing = (reader: Reader, value: unknown, path: FieldPath): Length =>
  reader.quantity('length', value, path, RUN_OF_SOME);

function readPerJoint(reader: Reader, value: unknown): number {
  const count = reader.number(value ?? 0, ['spikesPerJoint'], { sign: 'not-negative', most: 100 });
  if (!count.isInteger()) {
    reader.fail('OUT_OF_RANGE', ['spikesPerJoint'], `must be a whole number, got ${shown(value)}`);
  }
  return count.toNumber();
}

interface Spacings {
  readonly straight: Length;
  readonly curved: Length | undefined;
}

function readRuns(reader: Reader, value: unknown, spacings: Spacings): Run[] {
  return reader.list(value, ['runs']).map((item, index) => {
    const path = ['runs', index];
    if (!isRunObject(item)) {
      const length = reader.quantity('length', item, path, RUN);
      const spacing = spacings.straight;
      return { length, spacing, isClosed: false, isHeld: true, isGuessed: false };
    }
    const fields = reader.object(item, path);
    const flag = (name: string) => reader.flag(fields[name] ?? false, [...path, name]);
    const isCurved = flag('curved');
    const own =
      fields['spikeSpacing'] === undefined
        ? undefined
        : readSpacing(reader, fields['spikeSpacing'], [...path, 'spikeSpacing']);
    const usual = isCurved ? (spacings.curved ?? spacings.straight) : spacings.straight;
    return {
      length: reader.quantity('length', fields['length'], [...path, 'length'], RUN),
      spacing: own ?? usual,
      isClosed: flag('closed'),
      isHeld: !flag('againstWall'),
      isGuessed: isCurved && own === undefined && spacings.curved === undefined,
    };
  });
}

/** A run with its own fields; a plain `{ value, unit }` is a length. */
const isRunObject = (item: unknown): boolean =>
  typeof item === 'object' && item !== null && !isQuantity(item) && !('unit' in item);

interface Piece {
  readonly piece: Length;
  readonly lap: Length;
  readonly perJoint: number;
}

function restrain(run: Run, { piece, lap, perJoint }: Piece): RestraintRun {
  if (!run.isHeld || run.length.isZero()) {
    return { length: run.length, pieces: 0, spikes: 0, spacing: null, leftOver: NO_LENGTH };
  }
  const gaps = wholeUp(exactOf(run.length), exactOf(run.spacing));
  // a ring has as many joints as pieces, a run one fewer
  const pieces = run.isClosed
    ? wholeUp(exactOf(run.length), exactOf(piece.minus(lap)))
    : stripsAcross(run.length, piece, lap);
  const joints = run.isClosed ? pieces : pieces - 1;
  const reach = piece.times(pieces).minus(lap.times(joints));
  return {
    length: run.length,
    pieces,
    spikes: gaps + (run.isClosed ? 0 : 1) + joints * perJoint,
    spacing: run.length.dividedBy(gaps),
    leftOver: reach.minus(run.length),
  };
}

function notesFor(runs: readonly Run[]): string[] {
  const notes = ['Set the restraint on compacted base, never on bedding.'];
  if (runs.some(({ isGuessed }) => isGuessed)) {
    notes.push(
      'Curved runs are spiked as far apart as straight ones: a curve wants closer spikes.',
    );
  }
  return notes;
}
