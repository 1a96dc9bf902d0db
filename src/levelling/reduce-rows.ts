import { length } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import type { BookRow } from './level-book.js';

/** A row of the book with its level. */
export interface ReducedRow {
  readonly point: string;
  readonly back?: Length;
  readonly intermediate?: Length;
  readonly fore?: Length;
  /** Distance from the start, where it was given. */
  readonly distance?: Length;
  /** The set-up from which the level was taken, counted from 1; 0 for the starting mark. */
  readonly setUp: number;
  /** Height of the line of sight that the backsight on this point gives. */
  readonly instrumentHeight?: Length;
  /** From the point before, where the ground rises or stays. */
  readonly rise?: Length;
  /** From the point before, where the ground falls. */
  readonly fall?: Length;
  readonly elevation: Length;
}

/** The sums that must agree, whichever way a book is reduced. */
export interface BookCheck {
  readonly sumBack: Length;
  /** The last reading of the book counts as a foresight. */
  readonly sumFore: Length;
  readonly sumRise: Length;
  readonly sumFall: Length;
  readonly backLessFore: Length;
  readonly riseLessFall: Length;
  readonly lastLessFirst: Length;
  /** True where all three differences are one and the same. */
  readonly agrees: boolean;
}

const NOTHING = length(0, 'm');

/** Reduces a book by height of instrument: `z = HI - reading`, `HI = z + backsight`. Internal. */
export function reduceRows(start: Length, rows: readonly BookRow[]): ReducedRow[] {
  const reduced: ReducedRow[] = [];
  let sight: { readonly height: Length; readonly setUp: number } | undefined;
  for (const row of rows) {
    const reading = row.fore ?? row.intermediate;
    // a backsight alone stands on the point of the row before, or on the start
    const elevation: Length =
      sight === undefined || reading === undefined
        ? (reduced.at(-1)?.elevation ?? start)
        : sight.height.minus(reading);
    const setUp: number = sight?.setUp ?? 0;
    if (row.back !== undefined) sight = { height: elevation.plus(row.back), setUp: setUp + 1 };
    reduced.push({
      ...readingsOf(row),
      setUp,
      ...(row.back === undefined || sight === undefined ? {} : { instrumentHeight: sight.height }),
      ...riseOrFall(rows[reduced.length - 1], row),
      elevation,
    });
  }
  return reduced;
}

function readingsOf({ point, back, intermediate, fore, distance }: BookRow) {
  return {
    point,
    ...(back === undefined ? {} : { back }),
    ...(intermediate === undefined ? {} : { intermediate }),
    ...(fore === undefined ? {} : { fore }),
    ...(distance === undefined ? {} : { distance }),
  };
}

/** By rise and fall: the reading before, from the same set-up, less this one. */
function riseOrFall(before: BookRow | undefined, row: BookRow) {
  const first = before?.back ?? before?.intermediate;
  const second = row.fore ?? row.intermediate;
  if (first === undefined || second === undefined) return {};
  const rise = first.minus(second);
  return rise.isNegative() ? { fall: rise.negated() } : { rise };
}

/** Adds up both columns of both ways. Internal. */
export function checkBook(rows: readonly ReducedRow[]): BookCheck {
  const total = (name: 'back' | 'fore' | 'rise' | 'fall'): Length =>
    rows.reduce((sum, row) => sum.plus(row[name] ?? NOTHING), NOTHING);
  const [first, last] = [rows[0], rows.at(-1)];
  const sumBack = total('back');
  const sumFore = total('fore').plus(last?.intermediate ?? NOTHING);
  const [sumRise, sumFall] = [total('rise'), total('fall')];
  const lastLessFirst = (last?.elevation ?? NOTHING).minus(first?.elevation ?? NOTHING);
  const backLessFore = sumBack.minus(sumFore);
  const riseLessFall = sumRise.minus(sumFall);
  const agrees = backLessFore.equals(lastLessFirst) && riseLessFall.equals(lastLessFirst);
  return { sumBack, sumFore, sumRise, sumFall, backLessFore, riseLessFall, lastLessFirst, agrees };
}
