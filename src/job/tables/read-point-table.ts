import { isSettlineError } from '../../errors.js';
import { choice, custom, object, optional, text } from '../../input/field.js';
import { readLengthUnit } from '../../input/length-unit.js';
import { readQuantity } from '../../input/read-amount.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import { entry } from '../../invariant.js';
import type { LengthUnit } from '../../units/catalogue.js';
import { parseLength } from '../../units/parse-length.js';
import type { JobReadingInput } from '../check/check-readings.js';
import type { SpotHeightInput } from '../schema/pavement-input.js';
import type { JobStakeInput } from '../schema/string-line-input.js';
import { decimalMarkOf, type DecimalMark } from './decimal-mark.js';
import type { PointColumn, PointTableKind } from './point-columns.js';
import { splitTable, type SplitTable, type TableDelimiter } from './split-table.js';
import { readHeader, type FoundColumn } from './table-header.js';

/** What the rows of each kind of table become. */
export interface PointTableRows {
  /** `existingLevels` or `finishedLevels` of a job, or `existing` of `siteVolumes`. */
  readonly 'spot-heights': SpotHeightInput;
  /** `stakes` of a job. */
  readonly stakes: JobStakeInput;
  /** `readings` of `checkJob`. */
  readonly readings: JobReadingInput;
}

/** How a table of points is read. */
export interface PointTableOptions<K extends PointTableKind> {
  /** What its rows are: `spot-heights`, `stakes` or `readings`. */
  readonly kind: K;
  /** Unit of the lengths whose header says none. Optional: a header says it as `x [m]` or `x (ft)`. */
  readonly unit?: LengthUnit;
  /** The header of a column, for what it does not say by itself, such as `{ x: 'R', y: 'H' }`. Optional. */
  readonly columns?: Partial<Record<PointColumn, string>>;
  /** What stands between cells. Default: commas, semicolons or tabs, as the header shows. */
  readonly delimiter?: TableDelimiter;
  /** What stands before decimals. Default: a point between commas, else as the numbers show. */
  readonly decimalMark?: DecimalMark;
}

const header = optional(text());

const OPTIONS = shapeOf<PointTableOptions<PointTableKind>>()({
  kind: choice<PointTableKind>(['spot-heights', 'stakes', 'readings']),
  unit: optional(custom(readLengthUnit)),
  columns: optional(
    object(
      shapeOf<Partial<Record<PointColumn, string>>>()({
        id: header,
        x: header,
        y: header,
        z: header,
        finish: header,
        finishAt: header,
        ground: header,
        groundFrom: header,
        groundOn: header,
        stake: header,
        surface: header,
        belowString: header,
        rod: header,
        elevation: header,
      }),
    ),
  ),
  delimiter: optional(choice<TableDelimiter>([',', ';', '\t'])),
  decimalMark: optional(choice<DecimalMark>(['.', ','])),
});

/** A table of points as it was read. */
export interface PointTable<K extends PointTableKind> {
  /** The rows in their order, empty ones left out; lengths as they were written, with their unit. */
  readonly rows: readonly PointTableRows[K][];
  /** The id of each row; null where a spot height has none. */
  readonly ids: readonly (string | null)[];
  /** The columns that were read. */
  readonly columns: readonly {
    /** The field that the column fills. */
    readonly column: PointColumn;
    /** Its header. */
    readonly header: string;
    /** Unit of its lengths; null for text, and where each cell has its own. */
    readonly unit: string | null;
  }[];
  /** Headers of columns that were not read. */
  readonly ignored: readonly string[];
  /** What was taken to stand between cells. */
  readonly delimiter: TableDelimiter;
  /** What was taken to stand before decimals. */
  readonly decimalMark: DecimalMark;
}

/**
 * Reads spot heights, stakes or readings from a table of plain text (CSV): one row a point, the first
 * row naming the columns. The rows go straight into a job.
 *
 * - spot heights: `x`, `y`, `z`, and an `id` if there is one; stakes: `id`, `x`, `y`, and `finish`,
 *   `finishAt`, `ground`, `groundFrom`, `groundOn` if they are there; readings: `stake`, `surface`, and
 *   `belowString`, `rod` or `elevation`.
 * - A header may also say `easting` for x, `northing` for y, `elevation`, `elev` or `level` for z, and
 *   `name`, `point` or `stake` for the id. Which of two coordinates is x is never guessed.
 * - The unit is said in the header (`x [m]`, `x (ft)`), in the option, or in the cell (`7' 3 5/8"`).
 *   A bare number without a unit is refused.
 * - Cells stand between commas, semicolons or tabs, and may be quoted. Where the header or the numbers
 *   leave open what separates cells or decimals, the table is refused until an option says it.
 *
 * @param table - the text, up to 100 000 rows
 * @param options - see {@link PointTableOptions}
 * @returns the rows, the columns read and not read, and which delimiter and decimal mark were taken
 * @throws `TABLE_UNCLEAR`, `REQUIRED`, `UNKNOWN_ID`, `UNIT_MISSING`, `COUNT_MISMATCH`, `EMPTY`,
 *   `EMPTY_LIST`, `TOO_MANY` and the reading codes; `path` is `['rows', 3, 'x']`, the message names the
 *   row as people count, the header as row 1
 * @example
 * const shots = readPointTable('point,easting [m],northing [m],elevation [m]\n7,12.5,3,100.25', {
 *   kind: 'spot-heights',
 * });
 * shots.rows[0]?.z //=> { value: '100.25', unit: 'm' }
 * shots.ids //=> ['7']
 */
export function readPointTable<K extends PointTableKind>(
  table: string,
  options: PointTableOptions<K>,
): PointTable<K> {
  const { kind, unit, columns = {}, delimiter, decimalMark } = readOptions(options, OPTIONS);
  const reader = makeReader();
  const content = reader.text(table, ['text']);
  reader.finish();
  const split = splitTable(content, delimiter);
  const { found, ignored } = readHeader(reader, split.header, { kind, columns, unit });
  reader.finish();
  const mark = decimalMark ?? decimalMarkOf(lengthCells(split, found), split.delimiter);
  const rows = split.rows.map((row, index) =>
    readRow(reader, { ...row, index }, { found, mark, width: split.header.length }),
  );
  reader.finish();
  return Object.freeze({
    // each row has the fields of its kind: they were asked for by its columns
    rows: Object.freeze(rows.map((row) => rowOf(kind, row))) as readonly PointTableRows[K][],
    ids: rows.map(({ id, stake }) => (id ?? stake ?? null) as string | null),
    columns: found.map((one) => ({
      column: one.column,
      header: one.header,
      unit: one.unit ?? null,
    })),
    ignored,
    delimiter: split.delimiter,
    decimalMark: mark,
  });
}

const lengthCells = ({ rows }: SplitTable, found: readonly FoundColumn[]): string[] => {
  const places = found.filter(({ range }) => range !== undefined).map(({ place }) => place);
  return rows.flatMap(({ cells }) => places.map((place) => cells[place] ?? ''));
};

type Cell = string | { readonly value: string; readonly unit: string };
type Row = Partial<Record<PointColumn, Cell>>;

/** Spot heights of a job have no id. */
function rowOf(kind: PointTableKind, row: Row): Row {
  const own = { ...row };
  if (kind === 'spot-heights') delete own.id;
  return Object.freeze(own);
}

interface Form {
  readonly found: readonly FoundColumn[];
  readonly mark: DecimalMark;
  readonly width: number;
}

function readRow(
  reader: Reader,
  { number, cells, index }: SplitTable['rows'][number] & { readonly index: number },
  { found, mark, width }: Form,
): Row {
  const row: Row = {};
  if (cells.slice(width).some((cell) => cell !== '')) {
    const message = `row ${number} has ${cells.length} cells, the header has ${width}`;
    reader.fail('COUNT_MISMATCH', ['rows', index], message, { row: number });
  }
  for (const column of found) {
    const cell = cells[column.place] ?? '';
    const path = ['rows', index, column.column];
    const fail: Reader['fail'] = (code, _path, message, params) => {
      const words = `row ${number}, column ${shown(column.header)}: ${message}`;
      reader.fail(code, path, words, { ...params, row: number });
    };
    if (cell === '') {
      if (column.isNeeded) fail('REQUIRED', path, 'the cell is empty');
      continue;
    }
    const read = column.range === undefined ? plainText(cell) : readCell(cell, column, mark, fail);
    if (read !== undefined) row[column.column] = read;
  }
  return row;
}

/** `tableText` puts an apostrophe before what a spreadsheet would take for a formula. */
const plainText = (cell: string): string => cell.replace(/^'(?=[=+\-@])/, '');

const NUMBER = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?$/i;

/** A length as it stands in a cell: a number of the column's unit, or a length with its own. */
function readCell(
  cell: string,
  { range, unit }: FoundColumn,
  mark: DecimalMark,
  fail: Reader['fail'],
): Cell | undefined {
  if (!/\d/.test(cell)) {
    fail('NOT_A_NUMBER', [], `${shown(cell)} is not a number`);
    return undefined;
  }
  if (!NUMBER.test(cell)) {
    const length = mark === '.' ? cell : withPoint(cell, fail);
    if (length !== undefined && range !== undefined)
      readQuantity('length', length, [], range, fail);
    return length;
  }
  const other = mark === '.' ? ',' : '.';
  if (cell.includes(other)) {
    const words = `${cell} has "${other}", and the decimal mark here is "${mark}"`;
    fail('TABLE_UNCLEAR', [], words);
    return undefined;
  }
  if (unit === undefined) {
    const words = `${cell} has no unit. Write it in the header, as in "x [m]", or give the option unit`;
    fail('UNIT_MISSING', [], words);
    return undefined;
  }
  const value = { value: cell.replace(',', '.').replace(/^\+/, ''), unit };
  if (range !== undefined) readQuantity('length', value, [], range, fail);
  return value;
}

/** A length with its unit and a decimal comma, as one with a decimal point. */
function withPoint(cell: string, fail: Reader['fail']): Cell | undefined {
  try {
    return parseLength(cell, { decimalComma: true }).toJSON();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    fail(error.code, [], entry(error.issues, 0).message);
    return undefined;
  }
}
