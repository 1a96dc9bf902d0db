import { entry } from '../invariant.js';
import type { Ratio } from '../units/ratio.js';
import { inWholeNumbers, ratioOfWhole, solveWhole } from './whole-numbers.js';

/** A point about an origin, in metres. Internal. */
export interface LocalPoint {
  readonly x: Ratio;
  readonly y: Ratio;
  readonly z: Ratio;
  /** True for a level that cannot move: the plane passes through it. */
  readonly fixed: boolean;
}

/** `z = level + gradeX x + gradeY y`. Internal. */
export interface PlaneFit {
  readonly level: Ratio;
  readonly gradeX: Ratio;
  readonly gradeY: Ratio;
}

/**
 * The least-squares plane of the vertical distances that passes through every fixed point, solved
 * in whole numbers: exact. Undefined if the points do not decide it. Internal.
 *
 * With `N p = r` the normal equations and `C p = d` the fixed points, `[N C'; C 0] [p; k] = [r; d]`.
 */
export function fitExactly(points: readonly LocalPoint[]): PlaneFit | undefined {
  const plan = inWholeNumbers(points.flatMap(({ x, y }) => [x, y]));
  const levels = inWholeNumbers(points.map(({ z }) => z));
  const rows = points.map(({ fixed }, k) => ({
    fixed,
    terms: [1n, entry(plan.whole, 2 * k), entry(plan.whole, 2 * k + 1)],
    z: entry(levels.whole, k),
  }));
  const held = rows.filter(({ fixed }) => fixed);
  const indices = [0, 1, 2];
  const matrix = [
    ...indices.map((i) => [
      ...indices.map((j) => sumOf(rows, ({ terms }) => entry(terms, i) * entry(terms, j))),
      ...held.map(({ terms }) => entry(terms, i)),
    ]),
    ...held.map(({ terms }) => [...terms, ...held.map(() => 0n)]),
  ];
  const right = [
    ...indices.map((i) => sumOf(rows, ({ terms, z }) => entry(terms, i) * z)),
    ...held.map(({ z }) => z),
  ];
  const solved = solveWhole(matrix, right);
  if (solved === undefined) return undefined;
  const [level = 0n, gradeX = 0n, gradeY = 0n] = solved.whole;
  const below = solved.scale * levels.scale;
  return {
    level: ratioOfWhole(level, below),
    gradeX: ratioOfWhole(gradeX * plan.scale, below),
    gradeY: ratioOfWhole(gradeY * plan.scale, below),
  };
}

const sumOf = <T>(rows: readonly T[], term: (row: T) => bigint): bigint =>
  rows.reduce((total, row) => total + term(row), 0n);
