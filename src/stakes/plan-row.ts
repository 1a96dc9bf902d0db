import { entry } from '../invariant.js';
import { ratioToNumber, type Ratio } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';
import { bestLine, lineSums, offsetFrom, sumsWithout, type PlanLine } from './line-of-stakes.js';
import type { RoughOffsets, StakeRow } from './lone-outliers.js';

/** Stakes in plan, ready for fits that leave out one stake each. Internal. */
export interface PlanRow extends StakeRow {
  /** The line without one stake; undefined if the others have no main direction. */
  readonly lineWithout: (without: number) => PlanLine | undefined;
}

/** Below this share of the spread, floats cannot tell the direction of a line. */
const NO_DIRECTION = 1e-6;

/** Prepares a row of stakes in plan: exact sums, and floats about their mean. Internal. */
export function planRow(points: readonly Vector[]): PlanRow {
  const sums = lineSums(points);
  const count = points.length;
  const pick = (index: number): Vector => entry(points, index);
  const lineWithout = (without: number): PlanLine | undefined =>
    bestLine(sumsWithout(sums, pick(without)), {
      first: pick(without === 0 ? 1 : 0),
      last: pick(without === count - 1 ? count - 2 : count - 1),
    });
  const exact = (without: number): ((of: number) => Ratio) | undefined => {
    const line = lineWithout(without);
    return line && ((of) => offsetFrom(line, pick(of)));
  };
  return { count, lineWithout, exact, ...roughly(points) };
}

function roughly(points: readonly Vector[]): Pick<StakeRow, 'rough' | 'worstFirst'> {
  const count = points.length;
  const far = points.map(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)] as const);
  const meanX = far.reduce((sum, [x]) => sum + x, 0) / count;
  const meanY = far.reduce((sum, [, y]) => sum + y, 0) / count;
  const places = far.map(([x, y]) => [x - meanX, y - meanY] as const);
  const place = (index: number): readonly [number, number] => entry(places, index);
  let a = 0;
  let b = 0;
  let c = 0;
  let extent = 0;
  for (const [x, y] of places) {
    a += x * x;
    b += x * y;
    c += y * y;
    extent = Math.max(extent, Math.abs(x), Math.abs(y));
  }
  const k = count / (count - 1);
  const rough = (without: number): RoughOffsets | undefined => {
    const [x, y] = place(without);
    const line = directionOf(a - k * x * x, b - k * x * y, c - k * y * y);
    if (!(line.spread > NO_DIRECTION * (a + c))) return undefined;
    const { ux, uy } = line;
    const [restX, restY] = [x / (count - 1), y / (count - 1)];
    const offset = (of: number): number => {
      const [px, py] = place(of);
      return ux * (py + restY) - uy * (px + restX);
    };
    // effect of rounding on the sums, and so on the direction
    const slack = (count + 10) * 1e-14 * extent * ((a + c) / line.spread);
    return { slack, offset };
  };
  const all = directionOf(a, b, c);
  const off = (index: number): number => {
    const [x, y] = place(index);
    return Math.abs(all.ux * y - all.uy * x);
  };
  const worstFirst = places.map((_, index) => index).sort((p, q) => off(q) - off(p));
  return { rough, worstFirst };
}

/** Eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue, and the difference of the two. */
function directionOf(a: number, b: number, c: number) {
  const spread = Math.sqrt((a - c) * (a - c) + 4 * b * b);
  const [x, y] = a >= c ? [spread + (a - c), 2 * b] : [2 * b, spread + (c - a)];
  const size = Math.sqrt(x * x + y * y);
  return size > 0 ? { ux: x / size, uy: y / size, spread } : { ux: 1, uy: 0, spread };
}
