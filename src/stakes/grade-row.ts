import { entry } from '../invariant.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import { lineSums, sumsWithout, timesCount, type LineSums } from './line-of-stakes.js';
import type { RoughOffsets, StakeRow } from './lone-outliers.js';

/** A straight grade: level at a station, and slope. Levels are in y, stations in x. Internal. */
export interface GradeOfStakes {
  readonly at: Vector;
  readonly slope: Ratio;
}

/** Level of a stake above the grade. Internal. */
export const aboveGrade = ({ at, slope }: GradeOfStakes, { x, y }: Vector): Ratio =>
  subtractRatios(subtractRatios(y, at.y), multiplyRatios(slope, subtractRatios(x, at.x)));

/** The grade through two stakes; undefined if they are at one station. Internal. */
export function gradeThrough(from: Vector, to: Vector): GradeOfStakes | undefined {
  const run = subtractRatios(to.x, from.x);
  if (signOfRatio(run) === 0) return undefined;
  return { at: from, slope: divideRatios(subtractRatios(to.y, from.y), run) };
}

/** The grade through a held stake that fits the others best in level. Internal. */
export function gradeFrom(held: Vector, stakes: readonly Vector[]): GradeOfStakes | undefined {
  const { xx, xy } = lineSums(
    stakes.map(({ x, y }) => ({ x: subtractRatios(x, held.x), y: subtractRatios(y, held.y) })),
  );
  return signOfRatio(xx) === 0 ? undefined : { at: held, slope: divideRatios(xy, xx) };
}

/** The grade that fits best in level; undefined if all are at one station. Exact. Internal. */
export function bestGrade(sums: LineSums): GradeOfStakes | undefined {
  const { sum, xx, xy } = sums;
  const spread = timesCount(sums, xx, [sum.x, sum.x]);
  if (signOfRatio(spread) === 0) return undefined;
  const n = wholeRatio(sums.count);
  const at = { x: divideRatios(sum.x, n), y: divideRatios(sum.y, n) };
  return { at, slope: divideRatios(timesCount(sums, xy, [sum.x, sum.y]), spread) };
}

/** Stakes in profile, ready for fits that leave out one stake each. Internal. */
export interface GradeRow extends StakeRow {
  readonly gradeWithout: (without: number) => GradeOfStakes | undefined;
}

/** Prepares a row of stakes in profile: exact sums, and floats about their mean. Internal. */
export function gradeRow(points: readonly Vector[]): GradeRow {
  const sums = lineSums(points);
  const pick = (index: number): Vector => entry(points, index);
  const gradeWithout = (without: number): GradeOfStakes | undefined =>
    bestGrade(sumsWithout(sums, pick(without)));
  const exact = (without: number): ((of: number) => Ratio) | undefined => {
    const grade = gradeWithout(without);
    return grade && ((of) => aboveGrade(grade, pick(of)));
  };
  return { count: points.length, gradeWithout, exact, ...roughly(points) };
}

function roughly(points: readonly Vector[]): Pick<StakeRow, 'rough' | 'worstFirst'> {
  const count = points.length;
  const mean = (of: (point: Vector) => Ratio): Ratio =>
    divideRatios(points.map(of).reduce(addRatios), wholeRatio(count));
  const [middle, level] = [mean(({ x }) => x), mean(({ y }) => y)];
  const places = points.map(
    ({ x, y }) =>
      [ratioToNumber(subtractRatios(x, middle)), ratioToNumber(subtractRatios(y, level))] as const,
  );
  const place = (index: number): readonly [number, number] => entry(places, index);
  let a = 0;
  let b = 0;
  let rise = 0;
  for (const [x, y] of places) {
    a += x * x;
    b += x * y;
    rise = Math.max(rise, Math.abs(y));
  }
  const off = (index: number): number => {
    const [x, y] = place(index);
    return a > 0 ? y - (b / a) * x : y;
  };
  const rough = (without: number): RoughOffsets | undefined => {
    const [x, y] = place(without);
    // 1 less the leverage of the stake
    const free = 1 - 1 / count - (x * x) / a;
    if (!(free > 1e-6)) return undefined;
    const pull = (y - (b / a) * x) / free;
    const offset = (of: number): number => off(of) + pull * (1 / count + (x * place(of)[0]) / a);
    // effect of rounding on the sums, and so on the slope and the leverage
    const slack = ((count + 10) * Math.sqrt(count) * 1e-14 * rise) / (free * free);
    return { slack, offset };
  };
  const worstFirst = places
    .map((_, index) => index)
    .sort((p, q) => Math.abs(off(q)) - Math.abs(off(p)));
  return { rough, worstFirst };
}
