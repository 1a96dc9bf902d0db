import { fault } from '../errors.js';
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
import { aboveGrade, gradeRow } from './grade-row.js';
import { lineSums, momentsTimesCount, sumsWithout, type LineSums } from './line-of-stakes.js';
import type { ProfileStake } from './profile-stake.js';
import type { MeasuredStake } from './stake-against-others.js';
import { moveMark } from './stake-move.js';

/** Measures each mark against the best grade of the others. Internal. */
export function measureInProfile(stakes: readonly ProfileStake[]): MeasuredStake[] {
  const points = stakes.map(({ at }) => at);
  const row = gradeRow(points);
  const sums = lineSums(points);
  const { xx } = momentsTimesCount(sums);
  return stakes.map(({ id, at }, index) => {
    const grade = row.gradeWithout(index);
    if (grade === undefined) {
      const message = 'without this stake the others are all at one station';
      throw fault('POINTS_COINCIDE', message, { id }, ['stakes', index]);
    }
    const above = aboveGrade(grade, at);
    const leverage = leverageOf(sums, at, xx);
    const squares = leftSquares(sumsWithout(sums, at));
    const deleted = fromSI('length', above);
    return {
      id,
      deleted,
      studentized: studentizedOf({ deleted: above, leverage, squares, degrees: stakes.length - 3 }),
      leverage: ratioToNumber(leverage),
      move: moveMark(id, deleted),
    };
  });
}

/** `1 / n + (s - mean)^2 / sum (s - mean)^2` */
function leverageOf(sums: LineSums, { x }: Vector, xx: Ratio): Ratio {
  const n = wholeRatio(sums.count);
  const fromMean = subtractRatios(multiplyRatios(n, x), sums.sum.x);
  const spread = multiplyRatios(n, xx);
  return addRatios(
    divideRatios(ONE_RATIO, n),
    divideRatios(multiplyRatios(fromMean, fromMean), spread),
  );
}

/** The sum of squared residuals of a best-fit grade. Internal. */
export function leftSquares(sums: LineSums): Ratio {
  const { xx, xy, yy } = momentsTimesCount(sums);
  const left = subtractRatios(yy, divideRatios(multiplyRatios(xy, xy), xx));
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
  // adding zero turns a negative zero into zero
  return signOfRatio(of.deleted) * Math.sqrt(ratioToNumber(square)) + 0;
}
