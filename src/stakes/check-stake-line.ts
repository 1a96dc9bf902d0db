import { fault } from '../errors.js';
import { choice, optional, quantity } from '../input/field.js';
import { TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { entry, known, lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import type { Ratio } from '../units/ratio.js';
import { isZero, minus, pointFrom, type PlanPoint } from '../units/vector.js';
import { withWorking, type Worked } from '../working.js';
import {
  bestLine,
  lineSums,
  lineThrough,
  offsetFrom,
  pointAt,
  stationOn,
  type PlanLine,
} from './line-of-stakes.js';
import { loneOutliers } from './lone-outliers.js';
import { fromFirstStake, planStakes, type LocalStake, type PlanStakeInput } from './plan-stake.js';
import { planRow } from './plan-row.js';
import { rowFinding, type RowFinding } from './row-finding.js';
import { stakeLineSteps } from './stake-line-steps.js';
import { moveStake, type StakeMove } from './stake-move.js';

/** A row of stakes, and its tolerance. */
export interface CheckStakeLineOptions {
  /** At least 2 stakes, in order along the line. */
  readonly stakes: readonly PlanStakeInput[];
  /** Tolerance: offset that still passes, exactly this included [length], 0 to 10 m. */
  readonly tolerance: LengthInput;
  /**
   * `ends` holds the first and the last stake, `best-fit` (orthogonal least squares) holds none.
   * Default: `ends`.
   */
  readonly reference?: 'ends' | 'best-fit';
}

const OPTIONS = shapeOf<CheckStakeLineOptions>()({
  stakes: planStakes(2),
  tolerance: quantity(TOLERANCE),
  reference: optional(choice(['ends', 'best-fit']), 'ends'),
});

/** A stake compared with the line. */
export interface StakeOffset {
  /** The stake. */
  readonly id: string;
  /** Distance along the line from the first stake [length]. */
  readonly station: Length;
  /** Offset square to the line [length], + left of travel from the first stake to the last. */
  readonly offset: Length;
  /** True if the offset is no more than the tolerance. */
  readonly inTolerance: boolean;
}

/** The line that offsets are measured from. */
export interface StakeLineEnds {
  /** Point of the line beside the first stake. */
  readonly from: PlanPoint;
  /** Point of the line beside the last stake. */
  readonly to: PlanPoint;
  /** Distance between the two points [length]. */
  readonly length: Length;
}

/** Check of stakes against one line. */
export interface StakeLine extends Worked {
  /** True if every stake is in tolerance; null for two stakes, which are always in line. */
  readonly ok: boolean | null;
  /** The finding in one word. */
  readonly code: RowFinding;
  /** Each stake compared with the line, in the order given. */
  readonly offsets: readonly StakeOffset[];
  /** The stake that is farthest off. */
  readonly worst: StakeOffset;
  /**
   * Moves that bring the line within tolerance. Where `ambiguous` is true they are alternatives:
   * make one of them, not all.
   */
  readonly moves: readonly StakeMove[];
  /** True if several stakes, each moved alone, would bring the row into line. */
  readonly ambiguous: boolean;
  /**
   * Each stake, held ends included, that may be the only one off: without it the others are in
   * line. The moves are alternatives. Empty if no single stake explains the error.
   */
  readonly suspects: readonly StakeMove[];
  /** The line that offsets are measured from. */
  readonly line: StakeLineEnds;
  /** What to do, in words. */
  readonly note: string;
}

/**
 * Checks that stakes are in one line in plan: offset of a stake `d = cross(u, P - A)`, station
 * `s = dot(u, P - A)`, with u the unit vector of the line. Coordinates are subtracted exactly
 * first, so large site coordinates lose nothing. A stake exactly on the tolerance passes.
 *
 * With `ends` the first and last stakes are held, and each stake in between is judged and moved onto
 * their line. With `best-fit` no stake is held: if removing one stake leaves the others in line, move
 * that stake. If that holds for several stakes, `ambiguous` is true and each possible move is listed.
 * `suspects` gives the same with the ends held: an end stake that is off makes every other stake look
 * out.
 *
 * @param options - see {@link CheckStakeLineOptions}
 * @returns the finding, offsets and stations [length, + left of travel], moves, suspects, the line
 * @throws `EMPTY_LIST`, `TOO_FEW`, `DUPLICATE_ID`, `POINTS_COINCIDE`, `DIRECTION_UNDEFINED` and the
 *   reading codes
 * @source derived
 * @example
 * const line = checkStakeLine({
 *   stakes: [
 *     { id: 'A', x: '0 ft', y: '0 ft' },
 *     { id: 'B', x: '10 ft', y: '1 in' },
 *     { id: 'C', x: '20 ft', y: '0 ft' },
 *   ],
 *   tolerance: '1/4 in',
 *   reference: 'ends',
 * });
 * line.ok //=> false
 * line.moves[0]?.direction //=> 'right'
 * line.moves[0]?.distance.to('in').toString() //=> '1'
 */
export function checkStakeLine(options: CheckStakeLineOptions): StakeLine {
  return judgeLine(readOptions(options, OPTIONS));
}

/** Checks stakes that have been read. Internal. */
export function judgeLine({ stakes, tolerance, reference }: Values<typeof OPTIONS>): StakeLine {
  const { origin, local } = fromFirstStake(stakes);
  return judge({ local, line: findLine(local, reference), tolerance, reference, origin });
}

/** The line, starting square beside the first stake. */
function findLine(stakes: readonly LocalStake[], reference: 'ends' | 'best-fit'): PlanLine {
  const points = stakes.map(({ at }) => at);
  const sums = lineSums(points);
  const [first, last] = [entry(points, 0), lastOf(points)];
  const isExact = reference === 'ends' || points.length === 2;
  const line = isExact ? lineThrough(first, last) : bestLine(sums, { first, last });
  if (line !== undefined) return { ...line, point: pointAt(line, stationOn(line, first)) };
  if (points.every((point) => isZero(minus(point, first)))) {
    throw fault('POINTS_COINCIDE', 'all stakes are at the same point', {}, ['stakes']);
  }
  if (isExact) {
    const message = 'the first and the last stake are at the same point. Correct one of them';
    throw fault('POINTS_COINCIDE', message, {}, ['stakes']);
  }
  const message = 'the stakes spread equally in every direction, so no line fits them';
  throw fault('DIRECTION_UNDEFINED', message, {}, ['stakes']);
}

interface Case {
  readonly local: readonly LocalStake[];
  readonly line: PlanLine;
  readonly tolerance: Length;
  readonly reference: 'ends' | 'best-fit';
  readonly origin: PlanPoint;
}

const metres = (value: Ratio): Length => fromSI('length', value);

function judge({ local, line, tolerance, reference, origin }: Case): StakeLine {
  const offsets = local.map(({ id, at }) => {
    const offset = metres(offsetFrom(line, at));
    const inTolerance = offset.abs().compare(tolerance) <= 0;
    return { id, station: metres(stationOn(line, at)), offset, inTolerance };
  });
  const isTrivial = local.length === 2;
  const ok = offsets.every(({ inTolerance }) => inTolerance);
  const isSearched = !isTrivial && !ok;
  const onto = offsets
    .filter(({ inTolerance }) => !isTrivial && !inTolerance)
    .map(({ id, offset }) => moveStake(id, offset));
  const row = isSearched ? suspectMoves(local, tolerance, reference) : [];
  const suspects =
    reference === 'ends' && onto.length === 1 ? inOrder(local, [...row, ...onto]) : row;
  const candidates = reference === 'ends' ? [] : suspects;
  const ambiguous = candidates.length > 1;
  const code = rowFinding({ count: local.length, isInLine: ok, isAmbiguous: ambiguous });
  return withWorking(
    {
      ok: isTrivial ? null : ok,
      code,
      offsets,
      worst: offsets.reduce((a, b) => (b.offset.abs().compare(a.offset.abs()) > 0 ? b : a)),
      moves: candidates.length > 0 ? candidates : onto,
      ambiguous,
      suspects,
      line: describeLine(line, local, origin),
      note: NOTES[code],
    } as const,
    () => stakeLineSteps(offsets, { local, line, reference }),
  );
}

const NOTES: Readonly<Record<RowFinding, string>> = {
  'in-line': 'All stakes are in tolerance.',
  'out-of-line': 'Move the stakes listed.',
  ambiguous:
    'There is no way to tell which stake is off. Make one of the moves listed, not all, or add a stake. Then check again.',
  'always-in-line': 'Two stakes are always in line. Add a third to check them.',
};

/**
 * Stakes without which the others are in line, with the move onto the line of the others. With the
 * ends held, only each end is left out in turn: a stake between them shows by itself.
 */
function suspectMoves(
  local: readonly LocalStake[],
  tolerance: Length,
  reference: 'ends' | 'best-fit',
): StakeMove[] {
  const all = local.map((_, index) => index);
  const among = reference === 'ends' ? [0, local.length - 1] : all;
  const row = planRow(local.map(({ at }) => at));
  return loneOutliers(row, { tolerance: exactOf(tolerance), among }).map(({ index, offset }) =>
    moveStake(entry(local, index).id, metres(offset)),
  );
}

function inOrder(local: readonly LocalStake[], moves: readonly StakeMove[]): StakeMove[] {
  const order = new Map(local.map(({ id }, index) => [id, index]));
  const placeOf = ({ id }: StakeMove): number => known(order.get(id), 'stake');
  return [...moves].sort((a, b) => placeOf(a) - placeOf(b));
}

function describeLine(line: PlanLine, local: readonly LocalStake[], origin: PlanPoint) {
  const last = lastOf(local).at;
  const run = stationOn(line, last);
  return {
    from: pointFrom(origin, line.point),
    to: pointFrom(origin, pointAt(line, run)),
    length: metres(run),
  };
}
