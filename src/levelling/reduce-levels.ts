import type { FieldPath } from '../errors.js';
import { choice, optional, quantity } from '../input/field.js';
import { ELEVATION } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { lastOf } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { wholeRatio, type Ratio } from '../units/ratio.js';
import { NO_LENGTH } from '../units/zero.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { allowableOver, allowance, isByDistance } from './allowance.js';
import { bookRows, givenRows, type BookRow, type LevelRowInput } from './level-book.js';
import type { MisclosureRule } from './misclosure-rule.js';
import { misclosureStep } from './misclosure-step.js';
import { checkBook, reduceRows, type BookCheck, type ReducedRow } from './reduce-rows.js';
import { correctionsOf } from './spread-misclosure.js';

/** A level book as kept in the field. */
export interface ReduceLevelsOptions {
  /** Elevation of the starting mark [length], up to 10 km either way. */
  readonly start: LengthInput;
  /**
   * Rows in the order of the readings, 2 to 10 000: a backsight on the starting mark; intermediate
   * sights, each alone; foresight and backsight on a turning point, in one row or in two; a foresight
   * on the closing mark.
   */
  readonly rows: readonly LevelRowInput[];
  /**
   * Elevation of the closing mark [length], up to 10 km either way; the last row then needs a
   * foresight. Default: not known; nothing is adjusted.
   */
  readonly known?: LengthInput;
  /**
   * Allowable misclosure [length, 0 to 10 m], or a rule `{ k, per }` for `k x sqrt(n)`. You choose it.
   * Default: none, the misclosure is not judged.
   */
  readonly allowable?: LengthInput | MisclosureRule;
  /** How the misclosure is spread. Default: `set-ups`. */
  readonly adjustBy?: 'set-ups' | 'distance';
}

const OPTIONS = shapeOf<ReduceLevelsOptions>()({
  start: quantity(ELEVATION),
  rows: bookRows,
  known: optional(quantity(ELEVATION)),
  allowable: optional(allowance),
  adjustBy: optional(choice(['set-ups', 'distance']), 'set-ups'),
});

/** A row of the book with its level before and after the adjustment. */
export interface LevelRow extends ReducedRow {
  /** Correction from the adjustment; 0 if there is none. */
  readonly correction: Length;
  /** Elevation with the correction. */
  readonly adjusted: Length;
}

/** A reduced level book. */
export interface LevelBook extends Worked {
  /** The rows, in the order given. */
  readonly rows: readonly LevelRow[];
  /** Number of set-ups. */
  readonly setUps: number;
  /** The sums that must agree. */
  readonly check: BookCheck;
  /** Closing elevation less the known one; null if none is known. */
  readonly misclosure: Length | null;
  /** Allowable misclosure; null if none was given. */
  readonly allowable: Length | null;
  /** True if the misclosure is within the allowable; null if either is missing. */
  readonly isAccepted: boolean | null;
  /**
   * How the misclosure was spread; `none` if no closing elevation is known, or the misclosure is
   * not accepted.
   */
  readonly adjustment: 'none' | 'set-ups' | 'distance';
  /** What the closure says about the levels, and what to do. */
  readonly note: string;
}

/**
 * Reduces a level book by height of instrument (`HI = z + backsight`, `z = HI - reading`) and by rise
 * and fall, and checks one against the other: sum of backsights less foresights, sum of rises less
 * falls, and last elevation less first are the same. Exact.
 *
 * With a known closing elevation z0 the misclosure `m = z - z0` is spread by set-ups or by distance,
 * `-m n(i) / n`, so the closing elevation becomes exactly the known one. A misclosure outside the
 * allowable is a mistake in the book: it is reported and not spread.
 *
 * @param options - see {@link ReduceLevelsOptions}
 * @returns rows with elevation, height of instrument, rise or fall, correction and adjusted elevation
 *   [length]; misclosure [length, computed less known], allowable [length], whether it is accepted; the
 *   sums of the check [length]
 * @throws `BOOK_ROW`, `TOO_FEW`, `NEGATIVE`, `NOT_INCREASING`, `REQUIRED`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source level-booking
 * @example
 * const book = reduceLevels({
 *   start: '100 ft',
 *   rows: [
 *     { point: 'BM', back: '4.32 ft' },
 *     { point: 'drive', intermediate: '6.18 ft' },
 *     { point: 'BM', fore: '4.34 ft' },
 *   ],
 *   known: '100 ft',
 *   allowable: { k: '0.02 ft', per: 'set-up' },
 * });
 * book.rows[0]?.instrumentHeight?.to('ft').toString() //=> '104.32'
 * book.rows[1]?.elevation.to('ft').toString() //=> '98.14'
 * book.misclosure?.to('ft').toString() //=> '-0.02'
 * book.rows[2]?.adjusted.to('ft').toString() //=> '100'
 */
export function reduceLevels(options: ReduceLevelsOptions): LevelBook {
  const read = readOptions(options, OPTIONS, checkClosing);
  const { start, known, adjustBy } = read;
  const reduced = reduceRows(start, read.rows);
  const closing = lastOf(reduced).elevation;
  const setUps = lastOf(reduced).setUp;
  const misclosure = known === undefined ? null : closing.minus(known);
  const line = { setUps, distance: runTo(reduced, reduced.at(-1)) };
  const allowable = allowableOver(read.allowable, line);
  const isAccepted =
    misclosure === null || allowable === null ? null : misclosure.abs().compare(allowable) <= 0;
  const toSpread = isAccepted === false ? null : misclosure;
  const book: Omit<LevelBook, 'working'> = {
    rows: adjusted(reduced, toSpread, adjustBy),
    setUps,
    check: checkBook(reduced),
    misclosure,
    allowable,
    isAccepted,
    adjustment: toSpread === null ? 'none' : adjustBy,
    note: noteFor(misclosure, isAccepted),
  };
  return withWorking(book, () => bookSteps(book));
}

type Raw = Readonly<Record<string, unknown>>;

/** What a closing mark and a rule by distance require of the rows. */
function checkClosing(
  reader: Reader,
  values: Partial<Values<typeof OPTIONS>>,
  path: FieldPath,
  raw: Raw,
): void {
  const rows = givenRows(raw['rows']);
  const last = rows.at(-1) ?? null;
  const at = [...path, 'rows'];
  const isClosed = raw['known'] !== undefined;
  if (isClosed && last?.['intermediate'] !== undefined && last['fore'] === undefined) {
    const why = 'missing. The closing mark has a known elevation. Read a foresight on it';
    const params = { reason: 'no-closing-sight' };
    reader.fail('BOOK_ROW', [...at, rows.length - 1, 'fore'], why, params);
  }
  const byDistance = isByDistance(values.allowable) || (isClosed && values.adjustBy === 'distance');
  if (!byDistance) return;
  rows.forEach((row, k) => {
    if (k === 0 || row === null || row['distance'] !== undefined) return;
    const why = 'missing. The misclosure is spread by distance. Give the distance on every row';
    reader.fail('REQUIRED', [...at, k, 'distance'], why);
  });
  checkRun(reader, values.rows ?? [], at);
}

function checkRun(reader: Reader, rows: readonly BookRow[], path: FieldPath): void {
  const [first, last] = [rows[0]?.distance ?? NO_LENGTH, rows.at(-1)?.distance];
  if (last === undefined || last.compare(first) > 0) return;
  const why = 'is not beyond the first row. Measure from the start of the line';
  reader.fail('NOT_INCREASING', [...path, rows.length - 1, 'distance'], why);
}

const runTo = (rows: readonly ReducedRow[], row: ReducedRow | undefined): Length =>
  (row?.distance ?? NO_LENGTH).minus(rows[0]?.distance ?? NO_LENGTH);

/** Distance or set-ups along the line for each level. */
const sharesOf = (rows: readonly ReducedRow[], adjustBy: 'set-ups' | 'distance'): Ratio[] =>
  rows.map((row) => (adjustBy === 'set-ups' ? wholeRatio(row.setUp) : exactOf(runTo(rows, row))));

function adjusted(
  rows: readonly ReducedRow[],
  misclosure: Length | null,
  adjustBy: 'set-ups' | 'distance',
): LevelRow[] {
  const corrections =
    misclosure === null ? [] : correctionsOf(misclosure, sharesOf(rows, adjustBy));
  return rows.map((row, k) => {
    const correction = corrections[k] ?? NO_LENGTH;
    return { ...row, correction, adjusted: row.elevation.plus(correction) };
  });
}

function noteFor(misclosure: Length | null, isAccepted: boolean | null): string {
  if (misclosure === null) {
    return 'No closing elevation is known, so reading mistakes do not show. Close on a known mark.';
  }
  if (isAccepted === null) {
    return 'No allowable misclosure was given. Judge the misclosure before you use the adjusted levels.';
  }
  return isAccepted
    ? 'The misclosure is within the allowable and is spread over the levels.'
    : 'The misclosure is outside the allowable and is not spread. Find the mistake, or run the levels again.';
}

const lengthsIn = (values: readonly (Length | null | undefined)[]): Length[] =>
  values.flatMap((value) => value ?? []);

/** A column of the book; a single zero for one without a figure. */
function column(rows: readonly ReducedRow[], name: 'back' | 'rise' | 'fall'): readonly Length[] {
  const figures = lengthsIn(rows.map((row) => row[name]));
  return figures.length === 0 ? [NO_LENGTH] : figures;
}

const foresights = (rows: readonly ReducedRow[]): Length[] =>
  lengthsIn([...rows.map(({ fore }) => fore), rows.at(-1)?.intermediate]);

function bookSteps(book: Omit<LevelBook, 'working'>): Step[] {
  const { check, misclosure, rows } = book;
  const closing = lastOf(rows).elevation;
  const steps: Step[] = [
    formulaStep({
      title: 'Check by height of instrument',
      formula: 'dz = sum(BS) - sum(FS)',
      given: [
        given('BS', 'backsights', column(rows, 'back')),
        given('FS', 'foresights, the last reading among them', foresights(rows)),
      ],
      result: given('dz', 'last level less first', check.backLessFore),
      source: 'level-booking',
    }),
    formulaStep({
      title: 'Check by rise and fall',
      formula: 'dz = sum(R) - sum(F)',
      given: [given('R', 'rises', column(rows, 'rise')), given('F', 'falls', column(rows, 'fall'))],
      result: given('dz', 'last level less first', check.riseLessFall),
      source: 'level-booking',
    }),
  ];
  if (misclosure === null) return steps;
  return [...steps, misclosureStep({ closing, known: closing.minus(misclosure), misclosure })];
}
