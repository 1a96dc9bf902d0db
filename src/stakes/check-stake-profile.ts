import { fault } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { addRatios, multiplyRatios, subtractRatios, type Ratio } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import {
  aboveGrade,
  bestGrade,
  gradeFrom,
  gradeRow,
  gradeThrough,
  type GradeOfStakes,
} from './grade-row.js';
import { lineSums } from './line-of-stakes.js';
import { loneOutliers } from './lone-outliers.js';
import { PLACE, readRow, TOLERANCE, type RowNeed } from './read-stakes.js';

/** A stake in profile: where its mark stands along the string, and how high. */
export interface ProfileStakeInput {
  readonly id: string;
  readonly station: LengthInput;
  /** Elevation of the mark, or any height above one level plane. */
  readonly elevation: LengthInput;
}

/** How high the mark of a stake stands against the grade. */
export interface StakeRise {
  readonly id: string;
  readonly station: Length;
  /** The straight grade at the station. */
  readonly grade: Length;
  /** The mark above the grade: + too high. */
  readonly rise: Length;
  readonly inTolerance: boolean;
}

/** How to bring a mark onto the grade. */
export interface MarkMove {
  readonly id: string;
  readonly distance: Length;
  readonly direction: 'up' | 'down';
}

/** Whether the marks of stakes stand on one straight grade, and which to move. */
export interface StakeProfile extends Worked {
  /** True or false; null where there is nothing to judge: two marks are always on a grade. */
  readonly ok: boolean | null;
  readonly verdict: 'in-line' | 'out-of-line' | 'ambiguous' | 'always-in-line';
  /** Slope along the stations, + rising. */
  readonly slope: Slope;
  readonly rises: readonly StakeRise[];
  readonly worst: StakeRise;
  /**
   * Moves that bring the marks within tolerance. Where `ambiguous` is true they are alternatives:
   * make one of them, not all.
   */
  readonly moves: readonly MarkMove[];
  readonly ambiguous: boolean;
  readonly note: string;
}

const REFERENCES = ['ends', 'best-fit', 'first'] as const;

/**
 * Checks that the marks of stakes stand on one straight grade: `rise = z - (z0 + i (s - s0))`. It is
 * exact: a mark on the tolerance passes. A row that is straight in plan can still have a hump: check
 * both, each with its own tolerance.
 *
 * With `ends` the first and last marks are held. With `first` the first one is held (a slab that
 * cannot move) and the slope is the best one, `i = sum (s - s0)(z - z0) / sum (s - s0)^2`. With
 * `best-fit` none is held (least squares of the level differences): if taking one mark away leaves the
 * others in tolerance, that mark is the one to move; if that is so for several, which one is off
 * cannot be known, and each move is given as an alternative.
 *
 * @param options.stakes - at least 2, from the first to the last: each `id` once, `station` and
 *   `elevation` [length]
 * @param options.tolerance - largest level difference that passes [length], not negative
 * @param options.reference - `ends`, `first` or `best-fit`
 * @returns verdict, slope [+ rising], grade and rise at each stake [length, + too high], moves
 * @throws `TOO_FEW_STAKES`, `DUPLICATE_ID`, `ENDS_COINCIDE`, `STATIONS_COINCIDE` and the reading codes
 * @source derived
 * @example
 * const profile = checkStakeProfile({
 *   stakes: [
 *     { id: 'A', station: '0 m', elevation: '10 m' },
 *     { id: 'B', station: '6 m', elevation: '9.87 m' },
 *     { id: 'C', station: '10 m', elevation: '9.8 m' },
 *   ],
 *   tolerance: '3 mm',
 *   reference: 'ends',
 * });
 * profile.slope.to('percent').toString() //=> '-2'
 * profile.moves.map(({ id, distance, direction }) => `${id} ${distance.to('mm').toString()} mm ${direction}`) //=> ['B 10 mm up']
 */
export function checkStakeProfile(options: {
  readonly stakes: readonly ProfileStakeInput[];
  readonly tolerance: LengthInput;
  readonly reference: 'ends' | 'first' | 'best-fit';
}): StakeProfile {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const stakes = readProfileStakes(reader, fields['stakes'], {
    least: 2,
    words: 'a grade needs two stakes or more',
  });
  const tolerance = reader.quantity('length', fields['tolerance'], ['tolerance'], TOLERANCE);
  const reference = reader.choice(fields['reference'], ['reference'], REFERENCES);
  reader.finish();
  const grade = findGrade(
    stakes.map(({ at }) => at),
    reference,
  );
  if (grade !== undefined) return judge(stakes, { grade, tolerance, reference });
  if (reference === 'ends') {
    const message = 'the first and the last stake stand at the same station';
    throw fault('ENDS_COINCIDE', message, {}, ['stakes']);
  }
  throw fault('STATIONS_COINCIDE', 'all stakes stand at the same station', {}, ['stakes']);
}

/** A stake in profile that has been read: the station in x, the level in y. Internal. */
export interface ProfileStake {
  readonly id: string;
  readonly at: Vector;
}

/** Reads stakes in profile. Internal. */
export function readProfileStakes(
  reader: Reader,
  value: unknown,
  need: RowNeed,
): readonly ProfileStake[] {
  return readRow({ reader, value, need }, (fields, path) => {
    const read = (name: string) => reader.quantity('length', fields[name], [...path, name], PLACE);
    const [station, elevation] = [read('station'), read('elevation')];
    return { at: { x: exactOf(station), y: exactOf(elevation) } };
  });
}

function findGrade(
  points: readonly Vector[],
  reference: (typeof REFERENCES)[number],
): GradeOfStakes | undefined {
  const sums = lineSums(points);
  const [first, last] = [points[0] ?? sums.sum, points.at(-1) ?? sums.sum];
  if (reference === 'ends') return gradeThrough(first, last);
  return reference === 'first' ? gradeFrom(first, points) : bestGrade(sums);
}

interface Case {
  readonly grade: GradeOfStakes;
  readonly tolerance: Length;
  readonly reference: (typeof REFERENCES)[number];
}

const metres = (value: Ratio): Length => fromSI('length', value);

function judge(stakes: readonly ProfileStake[], of: Case): StakeProfile {
  const { grade, tolerance, reference } = of;
  const rises = stakes.map(({ id, at }) => {
    const rise = metres(aboveGrade(grade, at));
    const inTolerance = rise.abs().compare(tolerance) <= 0;
    return { id, station: metres(at.x), grade: metres(gradeAt(grade, at.x)), rise, inTolerance };
  });
  const isTrivial = stakes.length === 2;
  const ok = rises.every(({ inTolerance }) => inTolerance);
  const isSearched = reference === 'best-fit' && !isTrivial && !ok;
  const lone = isSearched ? loneMoves(stakes, tolerance) : [];
  const ambiguous = lone.length > 1;
  const onto = rises
    .filter(({ inTolerance }) => !isTrivial && !inTolerance)
    .map(({ id, rise }) => moveMark(id, rise));
  const judged = ok ? 'in-line' : ambiguous ? 'ambiguous' : 'out-of-line';
  const verdict = isTrivial ? 'always-in-line' : judged;
  return withWorking(
    {
      ok: isTrivial ? null : ok,
      verdict,
      slope: fromSI('slope', grade.slope),
      rises,
      worst: rises.reduce((a, b) => (b.rise.abs().compare(a.rise.abs()) > 0 ? b : a)),
      moves: lone.length > 0 ? lone : onto,
      ambiguous,
      note: NOTES[verdict],
    } as const,
    () => showWorking(rises, of),
  );
}

const gradeAt = ({ at, slope }: GradeOfStakes, station: Ratio): Ratio =>
  addRatios(at.y, multiplyRatios(slope, subtractRatios(station, at.x)));

const NOTES: Readonly<Record<StakeProfile['verdict'], string>> = {
  'in-line': 'All marks stand on the grade within tolerance.',
  'out-of-line': 'Move the marks listed.',
  ambiguous:
    'Which mark is off cannot be known from these stakes alone. Make one of the moves listed, not all, or add a stake.',
  'always-in-line': 'Two marks are always on one grade: there is nothing to check.',
};

/** The move that takes a rise away. Internal. */
export const moveMark = (id: string, rise: Length): MarkMove => ({
  id,
  distance: rise.abs(),
  direction: rise.isNegative() ? 'up' : 'down',
});

function loneMoves(stakes: readonly ProfileStake[], tolerance: Length): MarkMove[] {
  const row = gradeRow(stakes.map(({ at }) => at));
  const among = stakes.map((_, index) => index);
  return loneOutliers(row, { tolerance: exactOf(tolerance), among }).map(({ index, offset }) =>
    moveMark(stakes[index]?.id ?? '', metres(offset)),
  );
}

function showWorking(rises: readonly StakeRise[], { grade, tolerance, reference }: Case): Step[] {
  const how = {
    ends: 'the grade of the end marks',
    first: 'the best grade from the first mark',
    'best-fit': 'the best-fit grade',
  }[reference];
  return rises.map((stake) => ({
    title: `Mark of stake ${stake.id} against ${how}`,
    formula: 'd = z - (z0 + i (s - s0))',
    given: [
      given('i', 'slope', fromSI('slope', grade.slope)),
      given('s', 'station', stake.station),
      given('z', 'level of the mark', stake.grade.plus(stake.rise)),
      given('tol', 'tolerance', tolerance),
    ],
    result: given('d', 'mark above the grade', stake.rise),
    source: 'derived',
  }));
}
