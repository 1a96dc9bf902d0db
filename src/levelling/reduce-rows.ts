import { entry, lastOf } from '../invariant.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import type { BookRow } from './level-book.js';

/** A row of the book with its level. */
export interface ReducedRow {
  /** Point the rod stood on. */
  readonly point: string;
  /** Backsight; null if none was read. */
  readonly back: Length | null;
  /** Intermediate sight; null if none was read. */
  readonly intermediate: Length | null;
  /** Foresight; null if none was read. */
  readonly fore: Length | null;
  /** Distance from the start; null if it was not given. */
  readonly distance: Length | null;
  /** The set-up from which the level was taken, counted from 1; 0 for the starting mark. */
  readonly setUp: number;
  /** Elevation of the line of sight from the backsight; null without a backsight. */
  readonly instrumentHeight: Length | null;
  /** Rise from the point before, 0 or more; null if it falls, or at the start of a set-up. */
  readonly rise: Length | null;
  /** Fall from the point before, more than 0; null if it rises, or at the start of a set-up. */
  readonly fall: Length | null;
  /** Elevation of the point, before any adjustment. */
  readonly elevation: Length;
}

/** The sums that must agree in both methods of reduction. */
export interface BookCheck {
  /** Sum of the backsights. */
  readonly sumBack: Length;
  /** Sum of the foresights. The last reading of the book counts as one. */
  readonly sumFore: Length;
  /** Sum of the rises. */
  readonly sumRise: Length;
  /** Sum of the falls. */
  readonly sumFall: Length;
  /** Sum of the backsights less sum of the foresights. */
  readonly backLessFore: Length;
  /** Sum of the rises less sum of the falls. */
  readonly riseLessFall: Length;
  /** Last elevation less first. */
  readonly lastLessFirst: Length;
  /** True if all three differences are the same. */
  readonly agrees: boolean;
}

/** Reduces a book by height of instrument: `z = HI - reading`, `HI = z + backsight`. Internal. */
export function reduceRows(start: Length, rows: readonly BookRow[]): ReducedRow[] {
  const reduced: ReducedRow[] = [];
  let sight: { readonly height: Length; readonly setUp: number } | null = null;
  for (const row of rows) {
    const { point, back, intermediate, fore, distance } = row;
    const reading = fore ?? intermediate;
    // a backsight alone is on the point of the row before, or on the start
    const elevation: Length =
      sight === null || reading === undefined
        ? (reduced.at(-1)?.elevation ?? start)
        : sight.height.minus(reading);
    const setUp: number = sight?.setUp ?? 0;
    const height: Length | null = back === undefined ? null : elevation.plus(back);
    if (height !== null) sight = { height, setUp: setUp + 1 };
    reduced.push({
      point,
      back: back ?? null,
      intermediate: intermediate ?? null,
      fore: fore ?? null,
      distance: distance ?? null,
      setUp,
      instrumentHeight: height,
      ...riseOrFall(rows[reduced.length - 1], row),
      elevation,
    });
  }
  return reduced;
}

/** Rise: the previous reading from the same set-up less this one. */
function riseOrFall(before: BookRow | undefined, row: BookRow) {
  const first = before?.back ?? before?.intermediate;
  const second = row.fore ?? row.intermediate;
  if (first === undefined || second === undefined) return { rise: null, fall: null };
  const rise = first.minus(second);
  return rise.isNegative() ? { rise: null, fall: rise.negated() } : { rise, fall: null };
}

/** Adds up both columns of both ways. Internal. */
export function checkBook(rows: readonly ReducedRow[]): BookCheck {
  const total = (name: 'back' | 'fore' | 'rise' | 'fall'): Length =>
    rows.reduce((sum, row) => sum.plus(row[name] ?? NO_LENGTH), NO_LENGTH);
  const [first, last] = [entry(rows, 0), lastOf(rows)];
  const sumBack = total('back');
  const sumFore = total('fore').plus(last.intermediate ?? NO_LENGTH);
  const [sumRise, sumFall] = [total('rise'), total('fall')];
  const lastLessFirst = last.elevation.minus(first.elevation);
  const backLessFore = sumBack.minus(sumFore);
  const riseLessFall = sumRise.minus(sumFall);
  const agrees = backLessFore.equals(lastLessFirst) && riseLessFall.equals(lastLessFirst);
  return { sumBack, sumFore, sumRise, sumFall, backLessFore, riseLessFall, lastLessFirst, agrees };
}
