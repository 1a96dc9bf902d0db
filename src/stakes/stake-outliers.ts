import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { fromSI, type Length } from '../units/quantity.js';
import { ratioToNumber } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import type { StakeMove } from './check-stake-line.js';
import { leaveOneOut } from '../geometry/line/leave-one-out.js';
import { areInLine, lineSums, offsetFrom, sumsWithout } from './line-of-stakes.js';
import {
  judgeOutliers,
  readSignificance,
  type Measured,
  type OutlierTest,
  type StakeAgainstOthers,
} from './outlier-row.js';
import { planRow } from './plan-row.js';
import { readPlanStakes, TOLERANCE, type LocalStake, type PlanStakeInput } from './read-stakes.js';

/** Each stake of a row in plan against the line of the others. */
export interface StakeOutliers extends OutlierTest, Worked {
  readonly stakes: readonly (StakeAgainstOthers & {
    /** Onto the line of the others, seen from the first stake to the last. */
    readonly move: StakeMove;
  })[];
}

/**
 * Says for each stake of a row how far it stands off the line of the others, and whether that is more
 * than the scatter of the others explains: the externally studentized offset is compared with
 * Student's t for `significance / (2 n)` and `n - 3` degrees of freedom, so that a good row is faulted
 * no more often than `significance`. The offsets and moves are exact but for one root; the
 * studentized values are floats, from coordinates counted from the first stake.
 *
 * It asks what the stakes themselves say. Whether they stand well enough is another question: that is
 * `checkStakeLine`, with a tolerance.
 *
 * @param options.stakes - at least 4, in order along the line; each `id` once, `x` and `y` [length]
 * @param options.tolerance - a stake no further off than this is no outlier [length], default none
 * @param options.significance - chance of faulting a good row, more than 0 and at most 0.5; default
 *   0.05 (common practice, no source)
 * @returns per stake: deleted offset [length, + left of travel], studentized offset, leverage, move;
 *   critical value, outliers, worst
 * @throws `TOO_FEW_STAKES`, `DUPLICATE_ID`, `POINTS_COINCIDE`, `DIRECTION_UNDEFINED`, `OUT_OF_RANGE`
 *   and the reading codes
 * @source outlier-guidance
 * @example
 * const row = [0, 1, -1, 1, 40, -1, 0, 1].map((mm, i) => ({
 *   id: `S${i + 1}`,
 *   x: { value: 3 * i, unit: 'm' } as const,
 *   y: { value: mm, unit: 'mm' } as const,
 * }));
 * const { outliers, stakes, critical } = stakeOutliers({ stakes: row });
 * outliers //=> ['S5']
 * stakes[4]?.move.direction //=> 'right'
 * critical.toFixed(2) //=> '4.53'
 */
export function stakeOutliers(options: {
  readonly stakes: readonly PlanStakeInput[];
  readonly tolerance?: LengthInput;
  readonly significance?: number | string;
}): StakeOutliers {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const { local } = readPlanStakes(reader, fields['stakes'], {
    least: 4,
    words: 'an outlier among fewer than four stakes cannot be told',
  });
  const tolerance = reader.quantity(
    'length',
    fields['tolerance'] ?? '0 m',
    ['tolerance'],
    TOLERANCE,
  );
  const significance = readSignificance(reader, fields['significance']);
  reader.finish();
  const judged = judgeOutliers(measure(local), { tolerance, significance });
  const stakes = judged.stakes.map((stake) => ({ ...stake, move: moveOnto(stake) }));
  return withWorking({ ...judged, stakes }, () =>
    stakes.map(({ id, deleted, studentized }) => ({
      title: `Stake ${id} against the line of the others`,
      formula: 't = d / s(d)',
      given: [
        given('d', 'offset from the line of the others (+ left)', deleted),
        given('t crit', 'critical value', judged.critical),
      ],
      result: given('t', 'studentized offset', studentized ?? 'the others stand exactly in line'),
      source: 'outlier-guidance',
    })),
  );
}

function measure(local: readonly LocalStake[]): Measured[] {
  const points = local.map(({ at }) => at);
  const row = planRow(points);
  const sums = lineSums(points);
  const deleted = local.map(({ id, at }, index) => {
    const line = row.lineWithout(index);
    if (line !== undefined) return fromSI('length', offsetFrom(line, at));
    const message = `without stake ${id} the others spread alike in every direction`;
    throw fault('DIRECTION_UNDEFINED', message, { id }, ['stakes', index]);
  });
  const flat = points.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
  const rough = leaveOneOut(new Float64Array(flat));
  return local.map(({ id, at }, index) => {
    const isScatterless = areInLine(sumsWithout(sums, at));
    return {
      id,
      deleted: deleted[index] ?? NOTHING,
      studentized: isScatterless ? null : (rough.studentized[index] ?? 0),
      leverage: rough.leverage[index] ?? 0,
    };
  });
}

const NOTHING = length(0, 'm');

const moveOnto = ({
  id,
  deleted,
}: {
  readonly id: string;
  readonly deleted: Length;
}): StakeMove => ({
  id,
  distance: deleted.abs(),
  direction: deleted.isNegative() ? 'left' : 'right',
});
