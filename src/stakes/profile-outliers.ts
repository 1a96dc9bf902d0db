import { fault } from '../errors.js';
import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { fromSI } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import { given, withWorking, type Worked } from '../working.js';
import {
  moveMark,
  readProfileStakes,
  type MarkMove,
  type ProfileStake,
  type ProfileStakeInput,
} from './check-stake-profile.js';
import { aboveGrade, gradeRow } from './grade-row.js';
import { lineSums, sumsWithout, timesCount, type LineSums } from './line-of-stakes.js';
import {
  judgeOutliers,
  readSignificance,
  type Measured,
  type OutlierTest,
  type StakeAgainstOthers,
} from './outlier-row.js';
import { TOLERANCE } from './read-stakes.js';

/** Each mark of a row in profile against the grade of the others. */
export interface ProfileOutliers extends OutlierTest, Worked {
  readonly stakes: readonly (StakeAgainstOthers & {
    /** Onto the grade of the others. */
    readonly move: MarkMove;
  })[];
}

/**
 * Says for each mark of a row how far it stands above or below the best-fit grade of the others, and
 * whether that is more than their scatter explains: `t = d sqrt(1 - h) / s`, with d the deleted
 * residual, h the leverage and s the residual standard deviation of the others (`n - 3` degrees of
 * freedom), is compared with Student's t for `significance / (2 n)`. Exact up to the one root of t.
 *
 * @param options.stakes - at least 4: each `id` once, `station` and `elevation` [length]
 * @param options.tolerance - a mark no further off than this is no outlier [length], default none
 * @param options.significance - chance of faulting a good row, more than 0 and at most 0.5; default
 *   0.05 (common practice, no source)
 * @returns per stake: deleted residual [length, + too high], studentized residual, leverage, move;
 *   critical value, outliers, worst
 * @throws `TOO_FEW_STAKES`, `DUPLICATE_ID`, `STATIONS_COINCIDE` and the reading codes
 * @source outlier-guidance
 * @example
 * const levels = [0, 1, -1, 1, -40, -1, 0, 1];
 * const marks = profileOutliers({
 *   stakes: levels.map((mm, i) => ({
 *     id: `S${i + 1}`,
 *     station: { value: 3 * i, unit: 'm' } as const,
 *     elevation: { value: mm, unit: 'mm' } as const,
 *   })),
 * });
 * marks.outliers //=> ['S5']
 * marks.stakes[4]?.move.direction //=> 'up'
 */
export function profileOutliers(options: {
  readonly stakes: readonly ProfileStakeInput[];
  readonly tolerance?: LengthInput;
  readonly significance?: number | string;
}): ProfileOutliers {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = readProfileStakes(reader, fields['stakes'], {
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
  const judged = judgeOutliers(measure(read), { tolerance, significance });
  const stakes = judged.stakes.map((stake) => ({
    ...stake,
    move: moveMark(stake.id, stake.deleted),
  }));
  return withWorking({ ...judged, stakes }, () =>
    stakes.map(({ id, deleted, leverage, studentized }) => ({
      title: `Mark of stake ${id} against the grade of the others`,
      formula: 't = d sqrt(1 - h) / s',
      given: [
        given('d', 'above the grade of the others', deleted),
        given('h', 'leverage', leverage),
        given('t crit', 'critical value', judged.critical),
      ],
      result: given('t', 'studentized residual', studentized ?? 'the others stand exactly in line'),
      source: 'outlier-guidance',
    })),
  );
}

function measure(stakes: readonly ProfileStake[]): Measured[] {
  const points = stakes.map(({ at }) => at);
  const row = gradeRow(points);
  const sums = lineSums(points);
  return stakes.map(({ id, at }, index) => {
    const grade = row.gradeWithout(index);
    if (grade === undefined) {
      const message = `without stake ${id} the others stand at one station`;
      throw fault('STATIONS_COINCIDE', message, { id }, ['stakes', index]);
    }
    const deleted = aboveGrade(grade, at);
    const leverage = leverageOf(sums, at);
    const squares = leftSquares(sumsWithout(sums, at));
    return {
      id,
      deleted: fromSI('length', deleted),
      studentized: studentizedOf({ deleted, leverage, squares, degrees: stakes.length - 3 }),
      leverage: ratioToNumber(leverage),
    };
  });
}

/** `1 / n + (s - mean)^2 / sum (s - mean)^2` */
function leverageOf(sums: LineSums, { x }: Vector): Ratio {
  const n = wholeRatio(sums.count);
  const fromMean = subtractRatios(multiplyRatios(n, x), sums.sum.x);
  const spread = multiplyRatios(n, timesCount(sums, sums.xx, [sums.sum.x, sums.sum.x]));
  return addRatios(
    divideRatios(ONE_RATIO, n),
    divideRatios(multiplyRatios(fromMean, fromMean), spread),
  );
}

/** The sum of squared residuals of a best-fit grade. */
function leftSquares(sums: LineSums): Ratio {
  const { sum, xx, xy, yy } = sums;
  const [a, c] = [timesCount(sums, xx, [sum.x, sum.x]), timesCount(sums, yy, [sum.y, sum.y])];
  const b = timesCount(sums, xy, [sum.x, sum.y]);
  const left = subtractRatios(c, divideRatios(multiplyRatios(b, b), a));
  return divideRatios(left, wholeRatio(sums.count));
}

function studentizedOf(of: {
  readonly deleted: Ratio;
  readonly leverage: Ratio;
  readonly squares: Ratio;
  readonly degrees: number;
}): number | null {
  if (signOfRatio(of.squares) === 0) return null;
  const free = subtractRatios(ONE_RATIO, of.leverage);
  const scaled = multiplyRatios(multiplyRatios(of.deleted, of.deleted), free);
  const square = divideRatios(multiplyRatios(scaled, wholeRatio(of.degrees)), of.squares);
  return signOfRatio(of.deleted) * Math.sqrt(ratioToNumber(square));
}
