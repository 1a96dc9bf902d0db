import { fault } from '../errors.js';
import { choice, optional, quantity } from '../input/field.js';
import { TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { entry, lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { addRatios, multiplyRatios, subtractRatios, type Ratio } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import {
  derivedStep,
  given,
  type Step,
  type StepInput,
  withWorking,
  type Worked,
} from '../working.js';
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
import {
  inProfile,
  profileStakes,
  type ProfileStake,
  type ProfileStakeInput,
} from './profile-stake.js';
import { rowFinding, type RowFinding } from './row-finding.js';
import { moveMark, type MarkMove } from './stake-move.js';

type Reference = 'ends' | 'first' | 'best-fit';

/** The marks of a row of stakes, and their tolerance. */
export interface CheckStakeProfileOptions {
  /** At least 2 stakes, from the first to the last. */
  readonly stakes: readonly ProfileStakeInput[];
  /**
   * Tolerance: difference of level that still passes, exactly this included [length], 0 to 10 m.
   */
  readonly tolerance: LengthInput;
  /**
   * `ends` holds the first and the last mark, `first` the first one only (a slab that cannot move),
   * `best-fit` holds none. Default: `ends`.
   */
  readonly reference?: 'ends' | 'first' | 'best-fit';
}

const OPTIONS = shapeOf<CheckStakeProfileOptions>()({
  stakes: profileStakes(2),
  tolerance: quantity(TOLERANCE),
  reference: optional(choice(['ends', 'first', 'best-fit']), 'ends'),
});

/** Height of a mark above or below the grade. */
export interface StakeRise {
  /** The stake. */
  readonly id: string;
  /** Distance along the string [length]. */
  readonly station: Length;
  /** Elevation of the straight grade at the station [length]. */
  readonly grade: Length;
  /** The mark above the grade [length], + too high. */
  readonly rise: Length;
  /** True if the rise is no more than the tolerance, up or down. */
  readonly inTolerance: boolean;
}

/** Check of marks against one straight grade. */
export interface StakeProfile extends Worked {
  /** True if every mark is in tolerance; null for two marks, which are always on one grade. */
  readonly ok: boolean | null;
  /** The finding in one word. */
  readonly code: RowFinding;
  /** Slope along the stations [slope], + rising. */
  readonly slope: Slope;
  /** Each mark compared with the grade, in the order given. */
  readonly rises: readonly StakeRise[];
  /** The mark that is farthest off. */
  readonly worst: StakeRise;
  /**
   * Moves that bring the marks within tolerance. Where `ambiguous` is true they are alternatives:
   * make one of them, not all.
   */
  readonly moves: readonly MarkMove[];
  /** True if several marks, each moved alone, would bring the row on grade. */
  readonly ambiguous: boolean;
  /** What to do, in words. */
  readonly note: string;
}

/**
 * Checks that the marks of stakes are on one straight grade: `rise = z - (z0 + i (s - s0))`. It is
 * exact: a mark on the tolerance passes. A row that is straight in plan can still have a hump.
 * Check both, each with its own tolerance.
 *
 * With `ends` the grade runs from the first mark to the last. With `first` it runs from the first
 * mark at the best slope, `i = sum (s - s0)(z - z0) / sum (s - s0)^2`. With `best-fit` it is the least
 * squares grade of all: if removing one mark leaves the others in tolerance, move that mark. If that
 * holds for several marks, `ambiguous` is true and each possible move is listed.
 *
 * @param options - see {@link CheckStakeProfileOptions}
 * @returns the finding, slope [+ rising], grade and rise at each stake [length, + too high], moves
 * @throws `EMPTY_LIST`, `TOO_FEW`, `DUPLICATE_ID`, `POINTS_COINCIDE` (one station for both ends, or
 *   for all) and the reading codes
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
export function checkStakeProfile(options: CheckStakeProfileOptions): StakeProfile {
  const { stakes: read, tolerance, reference } = readOptions(options, OPTIONS);
  const stakes = inProfile(read);
  const grade = findGrade(
    stakes.map(({ at }) => at),
    reference,
  );
  if (grade !== undefined) return judge(stakes, { grade, tolerance, reference });
  const which = reference === 'ends' ? 'the first and the last stake' : 'all stakes';
  throw fault('POINTS_COINCIDE', `${which} are at the same station`, {}, ['stakes']);
}

function findGrade(points: readonly Vector[], reference: Reference): GradeOfStakes | undefined {
  const sums = lineSums(points);
  const [first, last] = [entry(points, 0), lastOf(points)];
  if (reference === 'ends') return gradeThrough(first, last);
  return reference === 'first' ? gradeFrom(first, points) : bestGrade(sums);
}

interface Case {
  readonly grade: GradeOfStakes;
  readonly tolerance: Length;
  readonly reference: Reference;
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
  const code = rowFinding({ count: stakes.length, isInLine: ok, isAmbiguous: ambiguous });
  return withWorking(
    {
      ok: isTrivial ? null : ok,
      code,
      slope: fromSI('slope', grade.slope),
      rises,
      worst: rises.reduce((a, b) => (b.rise.abs().compare(a.rise.abs()) > 0 ? b : a)),
      moves: lone.length > 0 ? lone : onto,
      ambiguous,
      note: NOTES[code],
    } as const,
    () => showWorking(stakes, rises, of),
  );
}

const gradeAt = ({ at, slope }: GradeOfStakes, station: Ratio): Ratio =>
  addRatios(at.y, multiplyRatios(slope, subtractRatios(station, at.x)));

const NOTES: Readonly<Record<RowFinding, string>> = {
  'in-line': 'All marks are on the grade within tolerance.',
  'out-of-line': 'Move the marks listed.',
  ambiguous:
    'There is no way to tell which mark is off. Make one of the moves listed, not all, or add a stake. Then check again.',
  'always-in-line': 'Two marks are always on one grade. Add a third to check them.',
};

function loneMoves(stakes: readonly ProfileStake[], tolerance: Length): MarkMove[] {
  const row = gradeRow(stakes.map(({ at }) => at));
  const among = stakes.map((_, index) => index);
  return loneOutliers(row, { tolerance: exactOf(tolerance), among }).map(({ index, offset }) =>
    moveMark(entry(stakes, index).id, metres(offset)),
  );
}

function showWorking(
  stakes: readonly ProfileStake[],
  rises: readonly StakeRise[],
  { grade, reference }: Case,
): Step[] {
  const how = {
    ends: 'the grade of the end marks',
    first: 'the best grade from the first mark',
    'best-fit': 'the best-fit grade',
  }[reference];
  const g = given('g', 'slope', fromSI('slope', grade.slope));
  const from = [
    given('s0', 'station where the grade is held', metres(grade.at.x)),
    given('z0', 'level of the grade there', metres(grade.at.y)),
  ];
  const marks = stakes.map(({ id, at }, k) =>
    derivedStep({
      title: `Mark of stake ${id} against ${how}`,
      formula: 'd = z - (z0 + g * (s - s0))',
      given: [
        g,
        given('s', 'station', metres(at.x)),
        given('z', 'level of the mark', metres(at.y)),
        ...from,
      ],
      result: given('d', 'mark above the grade', entry(rises, k).rise),
    }),
  );
  return [slopeStep(stakes, g, reference), ...marks];
}

function slopeStep(stakes: readonly ProfileStake[], g: StepInput, reference: Reference): Step {
  const places = [
    given(
      's',
      'station of each stake',
      stakes.map(({ at }) => metres(at.x)),
    ),
    given(
      'z',
      'level of each mark',
      stakes.map(({ at }) => metres(at.y)),
    ),
  ];
  const [title, formula] = SLOPES[reference];
  const count = given('n', 'stakes', stakes.length);
  return derivedStep({
    title,
    formula,
    given: reference === 'first' ? places : [...places, count],
    result: g,
  });
}

const SLOPES: Readonly<Record<Reference, readonly [title: string, formula: string]>> = {
  ends: ['Slope of the end marks', 'g = (z[n] - z[1]) / (s[n] - s[1])'],
  first: [
    'Best slope from the first mark',
    'g = sum((s[i] - s[1]) * (z[i] - z[1])) / sum((s[i] - s[1])^2)',
  ],
  'best-fit': [
    'Best-fit slope',
    'g = (n * sum(s[i] * z[i]) - sum(s) * sum(z)) / (n * sum(s[i]^2) - sum(s)^2)',
  ],
};
