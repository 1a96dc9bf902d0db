import { makeReader, type Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { wholeRatio, type Ratio } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { readRows, type BookRow, type LevelRowInput } from './level-book.js';
import { ELEVATION, TOLERANCE } from './limits.js';
import { allowedBy, readRule, type MisclosureRule, type ReadRule } from './misclosure-rule.js';
import { checkBook, reduceRows, type BookCheck, type ReducedRow } from './reduce-rows.js';
import { correctionsOf } from './spread-misclosure.js';

/** A row of the book with its level before and after the adjustment. */
export interface LevelRow extends ReducedRow {
  /** What the adjustment adds; zero where there is none. */
  readonly correction: Length;
  readonly adjusted: Length;
}

/** A reduced level book. */
export interface LevelBook extends Worked {
  readonly rows: readonly LevelRow[];
  readonly setUps: number;
  readonly check: BookCheck;
  /** Closing level less the known one, where that was given. */
  readonly misclosure?: Length;
  readonly allowable?: Length;
  /** Whether the misclosure keeps the rule, where one was given. */
  readonly accepted?: boolean;
  /** How the misclosure was spread; `none` where there is nothing known, or the rule is broken. */
  readonly adjustment: 'none' | 'set-ups' | 'distance';
  readonly note: string;
}

/**
 * Reduces a level book by height of instrument (`HI = z + backsight`, `z = HI - reading`) and by rise
 * and fall, and checks one against the other: sum of backsights less foresights, sum of rises less
 * falls and last level less first are one and the same. Exact.
 *
 * With a known closing level the misclosure `m = z - z0` is spread by set-ups or by distance,
 * `-m n(i) / n`, so that the closing level becomes the known one exactly. A misclosure beyond the rule
 * is a slip and not an error: it is reported and not spread.
 *
 * @param options.start - elevation of the starting mark [length]
 * @param options.rows - one a point: `point`; `back` on the starting mark; `intermediate` alone;
 *   `fore` and `back` on a turning point, in one row or in two; `fore` on the closing mark [length, 0 to 20 m]; `distance`
 *   from the start [length] where it is needed
 * @param options.known - elevation of the closing mark [length], if it is one; the last row needs a
 *   foresight then
 * @param options.allowable - greatest misclosure [length], or a rule `{ k, per }` for `k x sqrt(n)` with
 *   `per` set-up or a distance; no default
 * @param options.adjustBy - `set-ups` (default) or `distance`
 * @returns rows with elevation, height of instrument, rise or fall, correction and adjusted level
 *   [length]; misclosure [length, computed less known], allowable [length], whether it is accepted;
 *   the sums of the check [length]
 * @throws `BOOK_ROW`, `NO_BACKSIGHT`, `NO_CLOSING_SHOT`, `TOO_FEW_POINTS`, `NEGATIVE`, `STATION_ORDER`,
 *   `REQUIRED`, `OUT_OF_RANGE` and the reading codes
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
export function reduceLevels(options: {
  readonly start: LengthInput;
  readonly rows: readonly LevelRowInput[];
  readonly known?: LengthInput;
  readonly allowable?: LengthInput | MisclosureRule;
  readonly adjustBy?: 'set-ups' | 'distance';
}): LevelBook {
  const { start, rows, known, allowance, adjustBy } = readOptions(options);
  const reduced = reduceRows(start, rows);
  const closing = reduced.at(-1)?.elevation ?? start;
  const setUps = reduced.at(-1)?.setUp ?? 0;
  const misclosure = known === undefined ? undefined : closing.minus(known);
  const allowable = allowableOf(allowance, setUps, reduced);
  const accepted =
    misclosure === undefined || allowable === undefined
      ? undefined
      : misclosure.abs().compare(allowable) <= 0;
  const isSpread = misclosure !== undefined && accepted !== false;
  const corrections = isSpread
    ? correctionsOf(misclosure, sharesOf(reduced, adjustBy))
    : reduced.map(() => NOTHING);
  const book: Omit<LevelBook, 'working'> = {
    rows: reduced.map((row, k) => {
      const correction = corrections[k] ?? NOTHING;
      return { ...row, correction, adjusted: row.elevation.plus(correction) };
    }),
    setUps,
    check: checkBook(reduced),
    ...(misclosure === undefined ? {} : { misclosure }),
    ...(allowable === undefined ? {} : { allowable }),
    ...(accepted === undefined ? {} : { accepted }),
    adjustment: isSpread ? adjustBy : 'none',
    note: noteFor(misclosure, accepted),
  };
  return withWorking(book, () => bookSteps(book, start));
}

const NOTHING = length(0, 'm');

function readOptions(options: unknown) {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const start = reader.quantity('length', fields['start'], ['start'], ELEVATION);
  const known =
    fields['known'] === undefined
      ? undefined
      : reader.quantity('length', fields['known'], ['known'], ELEVATION);
  const allowance =
    fields['allowable'] === undefined ? undefined : readAllowance(reader, fields['allowable']);
  const by = fields['adjustBy'] ?? 'set-ups';
  const adjustBy = reader.choice(by, ['adjustBy'], ['set-ups', 'distance'] as const);
  const byDistance = needsDistance(allowance, known, adjustBy);
  const rows = readRows(reader, fields['rows'], byDistance);
  checkClosing(reader, rows, known);
  if (byDistance) checkRun(reader, rows);
  reader.finish();
  return { start, rows, known, allowance, adjustBy };
}

type Allowance = Length | ReadRule;

const isRule = (allowance: Allowance): allowance is ReadRule => 'k' in allowance;

function readAllowance(reader: Reader, value: unknown): Allowance {
  const isObject = typeof value === 'object' && value !== null && 'k' in value;
  return isObject
    ? readRule(reader, value, ['allowable'])
    : reader.quantity('length', value, ['allowable'], TOLERANCE);
}

function needsDistance(
  allowance: Allowance | undefined,
  known: Length | undefined,
  adjustBy: 'set-ups' | 'distance',
): boolean {
  const byDistance = allowance !== undefined && isRule(allowance) && allowance.per !== 'set-up';
  return byDistance || (known !== undefined && adjustBy === 'distance');
}

function checkClosing(reader: Reader, rows: readonly BookRow[], known: Length | undefined): void {
  const last = rows.at(-1);
  if (known === undefined || last === undefined || last.fore !== undefined) return;
  const why = 'the closing mark has a known level, but no foresight was read on it';
  reader.fail('NO_CLOSING_SHOT', ['rows', rows.length - 1, 'fore'], why);
}

function checkRun(reader: Reader, rows: readonly BookRow[]): void {
  const [first, last] = [rows[0]?.distance ?? NOTHING, rows.at(-1)?.distance];
  if (last === undefined || last.compare(first) > 0) return;
  const why = 'must be beyond the distance of the first row';
  reader.fail('NOT_POSITIVE', ['rows', rows.length - 1, 'distance'], why);
}

const runTo = (rows: readonly ReducedRow[], row: ReducedRow | undefined): Length =>
  (row?.distance ?? NOTHING).minus(rows[0]?.distance ?? NOTHING);

/** How far along the line each level was taken. */
const sharesOf = (rows: readonly ReducedRow[], adjustBy: 'set-ups' | 'distance'): Ratio[] =>
  rows.map((row) => (adjustBy === 'set-ups' ? wholeRatio(row.setUp) : exactOf(runTo(rows, row))));

function allowableOf(
  allowance: Allowance | undefined,
  setUps: number,
  rows: readonly ReducedRow[],
): Length | undefined {
  if (allowance === undefined || !isRule(allowance)) return allowance;
  return allowedBy(allowance, { setUps, distance: runTo(rows, rows.at(-1)) });
}

function noteFor(misclosure: Length | undefined, accepted: boolean | undefined): string {
  if (misclosure === undefined) {
    return 'No closing level is known: slips in reading cannot show. Close on a known mark.';
  }
  if (accepted === undefined) {
    return 'No rule was given: judge the misclosure before the adjusted levels are used.';
  }
  return accepted
    ? 'The misclosure keeps the rule and is spread over the levels.'
    : 'The misclosure breaks the rule and is not spread: find the slip, or run the levels again.';
}

function bookSteps(book: Omit<LevelBook, 'working'>, start: Length): Step[] {
  const { check, misclosure, rows } = book;
  const closing = rows.at(-1)?.elevation ?? start;
  const steps: Step[] = [
    {
      title: 'Check by height of instrument',
      formula: 'dz = sum of backsights - sum of foresights',
      given: [
        given('BS', 'sum of backsights', check.sumBack),
        given('FS', 'sum of foresights', check.sumFore),
      ],
      result: given('dz', 'last level less first', check.backLessFore),
      source: 'level-booking',
    },
    {
      title: 'Check by rise and fall',
      formula: 'dz = sum of rises - sum of falls',
      given: [given('R', 'sum of rises', check.sumRise), given('F', 'sum of falls', check.sumFall)],
      result: given('dz', 'last level less first', check.riseLessFall),
      source: 'level-booking',
    },
  ];
  if (misclosure === undefined) return steps;
  const known = closing.minus(misclosure);
  const last: Step = {
    title: 'Misclosure',
    formula: 'm = z - z0',
    given: [given('z', 'closing level', closing), given('z0', 'known level', known)],
    result: given('m', 'misclosure', misclosure),
    source: 'level-booking',
  };
  return [...steps, last];
}
