import {
  compareRatios,
  negateRatio,
  ratioToNumber,
  signOfRatio,
  type Ratio,
} from '../units/ratio.js';

/** Offsets from the line of the others in floats, and how far off they may be. Internal. */
export interface RoughOffsets {
  readonly slack: number;
  readonly offset: (of: number) => number;
}

/** A row of stakes to search. Internal. */
export interface StakeRow {
  readonly count: number;
  /** Offsets from the line of all but one, in floats; undefined where floats cannot tell. */
  readonly rough: (without: number) => RoughOffsets | undefined;
  /** The same exactly; undefined where the others have no line. */
  readonly exact: (without: number) => ((of: number) => Ratio) | undefined;
  /** The stakes, those furthest off the line of all first. */
  readonly worstFirst: readonly number[];
}

/** A stake that alone is off, and its exact offset from the line of the others. Internal. */
export interface LoneOutlier {
  readonly index: number;
  readonly offset: Ratio;
}

/**
 * The stakes without which the others stand within tolerance. Floats decide where they can: a stake is
 * weighed exactly only where it lies closer to the tolerance than floats can tell, so that the answer
 * is that of an exact search and costs little more than one look at each stake. Internal.
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

/** The other stakes that floats cannot tell from the tolerance; `out` where one is clearly beyond. */
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
  compareRatios(signOfRatio(offset) < 0 ? negateRatio(offset) : offset, tolerance) <= 0;
