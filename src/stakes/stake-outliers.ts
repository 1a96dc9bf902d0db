import { custom, float, optional, quantity } from '../input/field.js';
import { SIGNIFICANCE, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Field } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { NO_LENGTH } from '../units/zero.js';
import { type Step, withWorking, type Worked } from '../working.js';
import { criticalStep, planOutlierSteps, profileOutlierSteps } from './outlier-steps.js';
import { measureInPlan } from './plan-outliers.js';
import { fromFirstStake, planStakes, type PlanStakeInput } from './plan-stake.js';
import { measureInProfile } from './profile-outliers.js';
import { inProfile, profileStakes, type ProfileStakeInput } from './profile-stake.js';
import type { MeasuredStake, StakeAgainstOthers } from './stake-against-others.js';
import { outlierCritical } from '../geometry/statistics/outlier-critical.js';

/** A row of stakes, and when to call one an outlier. */
export interface StakeOutliersOptions {
  /** At least 4 stakes in order along the row: all in plan (`x`, `y`) or all in profile (`station`, `elevation`). */
  readonly stakes: readonly PlanStakeInput[] | readonly ProfileStakeInput[];
  /** A stake within this distance is never an outlier [length], 0 to 10 m. Default: 0. */
  readonly tolerance?: LengthInput;
  /**
   * Chance of faulting a good row, more than 0 and at most 0.5. Default: 0.05 (common practice, no
   * source).
   */
  readonly significance?: number | string;
}

/** Each stake of a row against the line of the others. */
export interface StakeOutliers extends Worked {
  /** How the row was given. */
  readonly view: 'plan' | 'profile';
  /** Each stake, in the order given. */
  readonly stakes: readonly StakeAgainstOthers[];
  /** A studentized offset beyond this, either way, marks an outlier. */
  readonly critical: number;
  /** Degrees of freedom of Student's t for `critical`: three less than the number of stakes. */
  readonly degreesOfFreedom: number;
  /** Chance of faulting a good row, as used. */
  readonly significance: number;
  /** Id of the stake with the largest studentized offset. */
  readonly worst: string;
  /** Ids of the outliers. */
  readonly outliers: readonly string[];
  /** What to do, in words. */
  readonly note: string;
}

interface MeasuredRow {
  readonly view: StakeOutliers['view'];
  readonly measure: () => readonly MeasuredStake[];
  /** The working, one step or more a stake. */
  readonly show: (found: readonly StakeAgainstOthers[]) => readonly Step[];
}

const FEWEST = 4;

const IN_PLAN = planStakes(FEWEST);
const IN_PROFILE = profileStakes(FEWEST);

/** A row in plan or in profile, as the first stake shows. */
const row: Field<MeasuredRow> = custom((reader, value, path) => {
  if (isInProfile(value)) {
    const stakes = IN_PROFILE.read(reader, value, path);
    return {
      view: 'profile',
      measure: () => measureInProfile(inProfile(stakes)),
      show: (found) => profileOutlierSteps(inProfile(stakes), found),
    };
  }
  const stakes = IN_PLAN.read(reader, value, path);
  return {
    view: 'plan',
    measure: () => measureInPlan(fromFirstStake(stakes).local),
    show: (found) => planOutlierSteps(fromFirstStake(stakes).local, found),
  };
});

function isInProfile(value: unknown): boolean {
  const first: unknown = Array.isArray(value) ? value[0] : undefined;
  if (typeof first !== 'object' || first === null) return false;
  return Object.hasOwn(first, 'station') || Object.hasOwn(first, 'elevation');
}

const OPTIONS = shapeOf<StakeOutliersOptions>()({
  stakes: row,
  tolerance: optional(quantity(TOLERANCE), NO_LENGTH),
  significance: optional(float(SIGNIFICANCE), 0.05),
});

/**
 * Finds the stake that is off without a tolerance. Each stake is compared with the line of all the
 * others and called an outlier if it is farther off than their scatter explains. Its studentized
 * offset is compared with Student's t for `significance / (2 n)` and `n - 3` degrees of freedom, so
 * a good row is faulted no more often than `significance`.
 *
 * In plan the line is the orthogonal least-squares line. Offsets and moves are exact but for one root,
 * studentized offsets are floats. In profile it is the grade that fits best in level, and
 * `t = d sqrt(1 - h) / s`, with d the offset, h the leverage and s the residual standard deviation of
 * the others: exact up to the one root of t.
 *
 * Whether the stakes are good enough is another question: see `checkStakeLine` and
 * `checkStakeProfile`, with a tolerance.
 *
 * @param options - see {@link StakeOutliersOptions}
 * @returns per stake: offset from the others [length, + left of travel or + too high], studentized
 *   offset, leverage, move; critical value, outliers, worst
 * @throws `EMPTY_LIST`, `TOO_FEW`, `DUPLICATE_ID`, `POINTS_COINCIDE`, `DIRECTION_UNDEFINED`,
 *   `OUT_OF_RANGE` and the reading codes
 * @source outlier-guidance
 * @example
 * const row = [0, 1, -1, 1, 40, -1, 0, 1];
 * const plan = stakeOutliers({
 *   stakes: row.map((mm, i) => ({ id: `S${i + 1}`, x: `${3 * i} m`, y: `${mm} mm` })),
 * });
 * plan.outliers //=> ['S5']
 * plan.stakes[4]?.move.direction //=> 'right'
 * plan.critical.toFixed(2) //=> '4.53'
 * const profile = stakeOutliers({
 *   stakes: row.map((mm, i) => ({ id: `S${i + 1}`, station: `${3 * i} m`, elevation: `${mm} mm` })),
 * });
 * profile.outliers //=> ['S5']
 * profile.stakes[4]?.move.direction //=> 'down'
 */
export function stakeOutliers(options: StakeOutliersOptions): StakeOutliers {
  const { stakes: row, tolerance, significance } = readOptions(options, OPTIONS);
  const measured = row.measure();
  const count = measured.length;
  const critical = outlierCritical({ count, significance });
  const stakes = measured.map((stake) => ({
    ...stake,
    isOutlier: isFar(stake, critical) && stake.deleted.abs().compare(tolerance) > 0,
  }));
  const outliers = stakes.filter(({ isOutlier }) => isOutlier).map(({ id }) => id);
  return withWorking(
    {
      view: row.view,
      stakes,
      critical,
      degreesOfFreedom: count - 3,
      significance,
      worst: stakes.reduce((a, b) => (weight(b) > weight(a) ? b : a)).id,
      outliers,
      note: NOTES[outliers.length > 1 ? 'several' : outliers.length === 1 ? 'one' : 'none'],
    },
    () => [criticalStep({ count, significance, critical }), ...row.show(stakes)],
  );
}

const isFar = ({ studentized }: MeasuredStake, critical: number): boolean =>
  studentized === null || Math.abs(studentized) > critical;

/** Without scatter, any offset outweighs every measured one. */
const weight = ({ studentized, deleted }: MeasuredStake): number => {
  if (studentized !== null) return Math.abs(studentized);
  return deleted.isZero() ? 0 : Number.MAX_VALUE;
};

const NOTES = {
  none: 'No stake is off by more than the scatter of the others.',
  one: 'One stake is off. Move it onto the line of the others, then check again.',
  several:
    'More than one stake is off. Move only the worst onto the line of the others, then check again. One bad stake can make a good one look bad.',
} as const;
