import { fault } from '../errors.js';
import { makeReader, type Reader } from '../input.js';
import { length, type LengthInput } from '../units/construct.js';
import { fromSI, type Length } from '../units/quantity.js';
import { ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { between, isZero, minus, pointFrom, type PlanPoint, type Vector } from '../units/vector.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import {
  bestLine,
  lineThrough,
  offsetFrom,
  pointAt,
  stationOn,
  type PlanLine,
} from './line-of-stakes.js';

/** A stake in plan. */
export interface PlanStakeInput {
  readonly id: string;
  readonly x: LengthInput;
  readonly y: LengthInput;
}

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
  /** The line that offsets are measured from. */
  readonly line: { readonly from: PlanPoint; readonly to: PlanPoint; readonly length: Length };
  readonly note: string;
}

/**
 * Checks that stakes stand in one line: offset of a stake `d = cross(u, P - A)`, station
 * `s = dot(u, P - A)`, with u the unit vector of the line. Coordinates are subtracted exactly before
 * anything is multiplied, so that large site coordinates lose nothing; a stake exactly on the
 * tolerance passes.
 *
 * With `ends` the first and last stakes are held and each stake in between is judged and moved onto
 * their line. With `best-fit` (orthogonal least squares) no stake is held: if taking one stake away
 * leaves the others in line, that stake is the one to move; if that is so for several stakes, which
 * one is off cannot be known, `ambiguous` is true and each candidate move is given.
 *
 * @param options.stakes - at least 2, in order along the line; each `id` once, `x` and `y` [length]
 * @param options.tolerance - largest offset that passes [length], not negative
 * @param options.reference - `ends` or `best-fit`
 * @returns verdict, offsets and stations [length, + left of travel], moves, the line
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
  const stakes = readStakes(reader, fields['stakes']);
  const tolerance = reader.quantity('length', fields['tolerance'], ['tolerance'], TOLERANCE);
  const reference = reader.choice(fields['reference'], ['reference'], [
    'ends',
    'best-fit',
  ] as const);
  reader.finish();
  const origin = stakes[0]?.at ?? ORIGIN;
  const local = stakes.map(({ id, at }) => ({ id, at: between(origin, at) }));
  const line = findLine(local, reference);
  if (typeof line === 'string') throw fault(line, LINE_FAULTS[line], {}, ['stakes']);
  return judge({ local, line, tolerance, reference, origin });
}

const PLACE = Object.freeze({ sign: 'any', most: length(100_000, 'km') } as const);
const TOLERANCE = Object.freeze({ sign: 'not-negative', most: length(10, 'm') } as const);
const NOWHERE: Vector = Object.freeze({ x: ZERO_RATIO, y: ZERO_RATIO });
const ORIGIN: PlanPoint = Object.freeze({ x: length(0, 'm'), y: length(0, 'm') });

interface ReadStake {
  readonly id: string;
  readonly at: PlanPoint;
}

interface LocalStake {
  readonly id: string;
  readonly at: Vector;
}

function readStakes(reader: Reader, value: unknown): ReadStake[] {
  const ids = new Set<string>();
  const stakes = reader.list(value, ['stakes']).map((item, index) => {
    const path = ['stakes', index];
    const fields = reader.object(item, path);
    const id = reader.text(fields['id'], [...path, 'id']);
    if (id !== '' && ids.has(id))
      reader.fail('DUPLICATE_ID', [...path, 'id'], `the stake ${id} stands twice`);
    ids.add(id);
    const x = reader.quantity('length', fields['x'], [...path, 'x'], PLACE);
    const y = reader.quantity('length', fields['y'], [...path, 'y'], PLACE);
    return { id, at: { x, y } };
  });
  if (stakes.length === 1) {
    reader.fail('TOO_FEW_STAKES', ['stakes'], 'a line needs two stakes or more');
  }
  return stakes;
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
  const first = points[0] ?? NOWHERE;
  const isExact = reference === 'ends' || points.length === 2;
  const line = isExact ? lineThrough(first, points.at(-1) ?? first) : bestLine(points);
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
  const candidates =
    isTrivial || ok || reference === 'ends' ? [] : candidateMoves(local, tolerance);
  const ambiguous = candidates.length > 1;
  const onto = offsets
    .filter(({ inTolerance }) => !isTrivial && !inTolerance)
    .map(({ id, offset }) => moveBack(id, offset));
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

/** Stakes whose removal leaves the others in line, with the move onto the line of the others. */
function candidateMoves(local: readonly LocalStake[], tolerance: Length): StakeMove[] {
  const moves: StakeMove[] = [];
  local.forEach(({ id, at }, index) => {
    const others = local.filter((_, i) => i !== index).map((stake) => stake.at);
    const line = bestLine(others);
    if (line === undefined) return;
    const inLine = others.every((p) => metres(offsetFrom(line, p)).abs().compare(tolerance) <= 0);
    if (inLine) moves.push(moveBack(id, metres(offsetFrom(line, at))));
  });
  return moves;
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
