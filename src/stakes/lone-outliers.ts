import { absoluteRatio, compareRatios, ratioToNumber, type Ratio } from '../units/ratio.js';

/** Offsets from the line of the others in floats, and their error. Internal. */
export interface RoughOffsets {
  readonly slack: number;
  readonly offset: (of: number) => number;
}

/** A row of stakes to search. Internal. */
export interface StakeRow {
  readonly count: number;
  /** Offsets from the line without one stake, in floats; undefined if floats cannot tell. */
  readonly rough: (without: number) => RoughOffsets | undefined;
  /** The same exactly; undefined if the others have no line. */
  readonly exact: (without: number) => ((of: number) => Ratio) | undefined;
  /** The stakes, those farthest from the line of all first. */
  readonly worstFirst: readonly number[];
}

/** A stake that is off by itself, and its exact offset from the line of the others. Internal. */
export interface LoneOutlier {
  readonly index: number;
  readonly offset: Ratio;
}

/**
 * The stakes without which the others are within tolerance. Floats decide if they can. Exact
 * arithmetic is used only for a stake closer to the tolerance than floats can tell, so the answer
 * is that of an exact search at little more than the cost of one pass. Internal.
 *
 * @param among - the stakes to leave out in turn
 */
export function loneOutliers(
  row: StakeRow,
  { tolerance, among }: { readonly tolerance: Ratio; readonly among: readonly number[] },
): LoneOutlier[] {
  const found: LoneOutlier[] = [];
  for (const index of among) {
    const close = closeCalls(row, index, ratioToNumber(tolerance));
    const offset = close === 'out' ? undefined : row.exact(index);
    if (close === 'out' || offset === undefined) continue;
    if (close.every((of) => isWithin(offset(of), tolerance))) {
      found.push({ index, offset: offset(index) });
    }
  }
  return found;
}

/**
 * The other stakes that floats cannot tell from the tolerance; `out` if one is clearly out of
 * tolerance.
 */
function closeCalls(row: StakeRow, without: number, tolerance: number): readonly number[] | 'out' {
  const rough = row.rough(without);
  if (rough === undefined) return row.worstFirst.filter((index) => index !== without);
  const slack = rough.slack + tolerance * 1e-14;
  const close: number[] = [];
  for (const of of row.worstFirst) {
    if (of === without) continue;
    const size = Math.abs(rough.offset(of));
    if (size > tolerance + slack) return 'out';
    if (size >= tolerance - slack) close.push(of);
  }
  return close;
}

const isWithin = (offset: Ratio, tolerance: Ratio): boolean =>
  compareRatios(absoluteRatio(offset), tolerance) <= 0;
