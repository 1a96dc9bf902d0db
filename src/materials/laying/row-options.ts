import { fromSI, type Length } from '../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';

/** One way to fill a row. */
export interface RowOption {
  /** Method: no cuts, changed joints, or cut pieces. */
  readonly kind: 'whole' | 'spread-joints' | 'one-cut' | 'two-cuts';
  /** Pavers laid whole. */
  readonly whole: number;
  /** Number of cut pieces. */
  readonly cuts: 0 | 1 | 2;
  /** Size to cut each piece, without a joint; null if nothing is cut. */
  readonly piece: Length | null;
  /** Joint of the row. */
  readonly joint: Length;
  /** False if the cut pieces are smaller than the minimum. */
  readonly isLargeEnough: boolean;
}

/** A row that has been read, in metres. Internal. */
export interface Row {
  readonly width: Ratio;
  readonly size: Ratio;
  readonly joint: Ratio;
  readonly endJoints: number;
  /** Smallest piece. */
  readonly minimum: Ratio;
  readonly limits: { readonly minimum: Ratio; readonly maximum: Ratio } | undefined;
}

/** Every way to fill the row, in order of preference. Internal. */
export function waysToFill(row: Row, most: number, remainder: Ratio): [RowOption, ...RowOption[]] {
  const { size, joint, minimum } = row;
  const cut = (kind: 'one-cut' | 'two-cuts', whole: number, piece: Ratio): RowOption => ({
    kind,
    whole,
    cuts: kind === 'one-cut' ? 1 : 2,
    piece: fromSI('length', piece),
    joint: fromSI('length', joint),
    isLargeEnough: compareRatios(piece, minimum) >= 0,
  });
  if (signOfRatio(remainder) === 0) return [uncut('whole', most, joint)];
  const single = subtractRatios(remainder, joint);
  if (most === 0) return [cut('one-cut', 0, single)];
  const module = addRatios(size, joint);
  const half = subtractRatios(divideRatios(addRatios(module, remainder), wholeRatio(2)), joint);
  const ways = [cut('two-cuts', most - 1, half)] as [RowOption, ...RowOption[]];
  if (signOfRatio(single) > 0) ways.unshift(cut('one-cut', most, single));
  const spread = spreadJoints(row, most);
  if (spread !== undefined) ways.unshift(spread);
  return ways;
}

const uncut = (kind: 'whole' | 'spread-joints', whole: number, joint: Ratio): RowOption => ({
  kind,
  whole,
  cuts: 0,
  piece: null,
  joint: fromSI('length', joint),
  isLargeEnough: true,
});

/** Joints opened for the pavers that fit, or closed for one more, whichever changes them less. */
function spreadJoints(row: Row, most: number): RowOption | undefined {
  const { width, size, joint, endJoints, limits } = row;
  if (limits === undefined) return undefined;
  const off = (changed: Ratio) => {
    const by = subtractRatios(changed, joint);
    return signOfRatio(by) < 0 ? subtractRatios(joint, changed) : by;
  };
  return [most, most + 1]
    .filter((units) => units - 1 + endJoints > 0)
    .map((units) => {
      const over = subtractRatios(width, multiplyRatios(wholeRatio(units), size));
      return { units, changed: divideRatios(over, wholeRatio(units - 1 + endJoints)) };
    })
    .filter(({ changed }) => {
      const isWide = compareRatios(changed, limits.minimum) >= 0;
      return isWide && compareRatios(changed, limits.maximum) <= 0;
    })
    .sort((a, b) => compareRatios(off(a.changed), off(b.changed)))
    .map(({ units, changed }) => uncut('spread-joints', units, changed))[0];
}

/** The way with the largest pieces, if none are large enough. Internal. */
export const largestPiece = (ways: readonly [RowOption, ...RowOption[]]): RowOption =>
  ways.reduce((a, b) =>
    a.piece !== null && b.piece !== null && b.piece.compare(a.piece) > 0 ? b : a,
  );
