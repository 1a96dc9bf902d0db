import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import type { Ratio } from '../units/ratio.js';
import { isZero, minus, pointFrom, type PlanPoint } from '../units/vector.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
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
import { planRow } from './plan-row.js';
import { readPlanStakes, TOLERANCE, type LocalStake, type PlanStakeInput } from './read-stakes.js';

/** Where a stake stands against the line. */
export interface StakeOffset {
  readonly id: string;
  /** Along the line from the first stake. */
  readonly station: Length;
  /** Square to the line, + left of travel from the first stake to the last. */
  readonly offset: Length;
  readonly inTolerance: boolean;
}

/** How to bring a stake into line: square to it, seen from the first stake to the last. */
export interface StakeMove {
  readonly id: string;
  readonly distance: Length;
  readonly direction: 'left' | 'right';
}

/** Whether stakes stand in line, and which to move. */
export interface StakeLine extends Worked {
  /** True or false; null where there is nothing to judge: two stakes are always in line. */
  readonly ok: boolean | null;
  readonly verdict: 'in-line' | 'out-of-line' | 'ambiguous' | 'always-in-line';
  readonly offsets: readonly StakeOffset[];
  readonly worst: StakeOffset;
  /**
   * Moves that bring the line within tolerance. Where `ambiguous` is true they are alternatives:
   * make one of them, not all.
   */
  readonly moves: readonly StakeMove[];
  readonly ambiguous: boolean;
  /**
   * Each stake, a held end too, that may be the only one off: the others stand in line without it.
   * The moves are alternatives. Empty where no single stake explains what is out.
   */
  readonly suspects: readonly StakeMove[];
  /** The line that offsets are measured from. */
  readonly line: { readonly from: PlanPoint; readonly to: PlanPoint; readonly length: Length };
  readonly note: string;
}

/**
 * Checks that stakes stand in one line in plan: offset of a stake `d = cross(u, P - A)`, station
 * `s = dot(u, P - A)`, with u the unit vector of the line. Coordinates are subtracted exactly before
 * anything is multiplied, so that large site coordinates lose nothing; a stake exactly on the
 * tolerance passes.
 *
 * With `ends` the first and last stakes are held and each stake in between is judged and moved onto
 * their line. With `best-fit` (orthogonal least squares) no stake is held: if taking one stake away
 * leaves the others in line, that stake is the one to move; if that is so for several stakes, which
 * one is off cannot be known, `ambiguous` is true and each candidate move is given. `suspects` says
 * the same with ends held: an end stake that is itself off condemns all the others.
 *
 * @param options.stakes - at least 2, in order along the line; each `id` once, `x` and `y` [length]
 * @param options.tolerance - largest offset that passes [length], not negative
 * @param options.reference - `ends` or `best-fit`
 * @returns verdict, offsets and stations [length, + left of travel], moves, suspects, the line
 * @throws `TOO_FEW_STAKES`, `DUPLICATE_ID`, `ENDS_COINCIDE`, `POINTS_COINCIDE`,
 *   `DIRECTION_UNDEFINED` and the reading codes
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
export function checkStakeLine(options: {
  readonly stakes: readonly PlanStakeInput[];
  readonly tolerance: LengthInput;
  readonly reference: 'ends' | 'best-fit';
}): StakeLine {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const { origin, local } = readPlanStakes(reader, fields['stakes'], {
    least: 2,
    words: 'a line needs two stakes or more',
  });
  const tolerance = reader.quantity('length', fields['tolerance'], ['tolerance'], TOLERANCE);
  const reference = reader.choice(fields['reference'], ['reference'], [
    'ends',
    'best-fit',
  ] as const);
  reader.finish();
  const line = findLine(local, reference);
  if (typeof line === 'string') throw fault(line, LINE_FAULTS[line], {}, ['stakes']);
  return judge({ local, line, tolerance, reference, origin });
}

const LINE_FAULTS = {
  ENDS_COINCIDE: 'the first and the last stake are the same point',
  POINTS_COINCIDE: 'all stakes are the same point',
  DIRECTION_UNDEFINED: 'the stakes spread alike in every direction',
} as const;

/** The line, its point square beside the first stake; or what is wrong with the stakes. */
function findLine(
  stakes: readonly LocalStake[],
  reference: 'ends' | 'best-fit',
): PlanLine | keyof typeof LINE_FAULTS {
  const points = stakes.map(({ at }) => at);
  const sums = lineSums(points);
  const [first, last] = [points[0] ?? sums.sum, points.at(-1) ?? sums.sum];
  const isExact = reference === 'ends' || points.length === 2;
  const line = isExact ? lineThrough(first, last) : bestLine(sums, { first, last });
  if (line !== undefined) return { ...line, point: pointAt(line, stationOn(line, first)) };
  if (reference === 'ends') return 'ENDS_COINCIDE';
  const areOne = points.every((point) => isZero(minus(point, first)));
  return areOne ? 'POINTS_COINCIDE' : 'DIRECTION_UNDEFINED';
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
    .map(({ id, offset }) => moveBack(id, offset));
  const row = isSearched ? suspectMoves(local, tolerance, reference) : [];
  const suspects =
    reference === 'ends' && onto.length === 1 ? inOrder(local, [...row, ...onto]) : row;
  const candidates = reference === 'ends' ? [] : suspects;
  const ambiguous = candidates.length > 1;
  const judged = ok ? 'in-line' : ambiguous ? 'ambiguous' : 'out-of-line';
  const verdict = isTrivial ? 'always-in-line' : judged;
  return withWorking(
    {
      ok: isTrivial ? null : ok,
      verdict,
      offsets,
      worst: offsets.reduce((a, b) => (b.offset.abs().compare(a.offset.abs()) > 0 ? b : a)),
      moves: candidates.length > 0 ? candidates : onto,
      ambiguous,
      suspects,
      line: describeLine(line, local, origin),
      note: NOTES[verdict],
    } as const,
    () => showWorking(offsets, tolerance, reference),
  );
}

const NOTES: Readonly<Record<StakeLine['verdict'], string>> = {
  'in-line': 'All stakes stand within tolerance.',
  'out-of-line': 'Move the stakes listed.',
  ambiguous:
    'Which stake is off cannot be known from these stakes alone. Make one of the moves listed, not all, or add a stake.',
  'always-in-line': 'Two stakes are always in line: there is nothing to check.',
};

const moveBack = (id: string, offset: Length): StakeMove => ({
  id,
  distance: offset.abs(),
  direction: offset.isNegative() ? 'left' : 'right',
});

/**
 * Stakes without which the others stand in line, with the move onto the line of the others. Where the
 * ends are held only they are left out in turn: whether one between them is off shows as it is.
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
    moveBack(local[index]?.id ?? '', metres(offset)),
  );
}

function inOrder(local: readonly LocalStake[], moves: readonly StakeMove[]): StakeMove[] {
  const order = new Map(local.map(({ id }, index) => [id, index]));
  return [...moves].sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
}

function describeLine(line: PlanLine, local: readonly LocalStake[], origin: PlanPoint) {
  const last = local.at(-1)?.at ?? line.point;
  const run = stationOn(line, last);
  return {
    from: pointFrom(origin, line.point),
    to: pointFrom(origin, pointAt(line, run)),
    length: metres(run),
  };
}

function showWorking(
  offsets: readonly StakeOffset[],
  tolerance: Length,
  reference: 'ends' | 'best-fit',
): Step[] {
  const how = reference === 'ends' ? 'the line through the end stakes' : 'the best-fit line';
  return offsets.map(({ id, station, offset }) => ({
    title: `Stake ${id} against ${how}`,
    formula: 'd = cross(u, P - A)',
    given: [given('s', 'station', station), given('tol', 'tolerance', tolerance)],
    result: given('d', 'offset (+ left)', offset),
    source: 'derived',
  }));
}
