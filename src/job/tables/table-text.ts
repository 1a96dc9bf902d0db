import { choice, custom, optional } from '../../input/field.js';
import { readLengthUnit } from '../../input/length-unit.js';
import { makeReader, type Reader } from '../../input/reader.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { LengthUnit } from '../../units/catalogue.js';
import { isQuantity, type Length } from '../../units/quantity.js';
import { writeCsv } from './csv.js';
import type { DecimalMark } from './decimal-mark.js';
import type { TableDelimiter } from './split-table.js';

/** How rows are written as text. */
export interface TableTextOptions {
  /** Unit of all lengths, named in the header. Default: `m`. */
  readonly unit?: LengthUnit;
  /** What stands between cells. Default: a comma. */
  readonly delimiter?: TableDelimiter;
  /** What stands before decimals; a comma needs another delimiter. Default: a point. */
  readonly decimalMark?: DecimalMark;
}

const OPTIONS = shapeOf<TableTextOptions>()({
  unit: optional(custom(readLengthUnit), 'm'),
  delimiter: optional(choice<TableDelimiter>([',', ';', '\t']), ','),
  decimalMark: optional(choice<DecimalMark>(['.', ',']), '.'),
});

/** Decimals that show a tenth of a millimetre or less; 4 for other units. */
const PLACES: Readonly<Record<string, number>> = { mm: 1, cm: 2, in: 3 };

/**
 * Rows as text (CSV), for a spreadsheet or an instrument: `stakeTable` and the rows of `cornerTable`.
 * The first row names the columns and the unit of lengths (`x [m]`), which are rounded half up to a
 * tenth of a millimetre or finer. Text that holds a delimiter, a quotation mark or a line break is
 * quoted; text that a spreadsheet would take for a formula gets a leading apostrophe.
 *
 * @param rows - objects with one set of fields: text, numbers, lengths or null (an empty cell)
 * @param options - see {@link TableTextOptions}
 * @throws `EMPTY_LIST`, `WRONG_TYPE`, `COUNT_MISMATCH`, `CONFLICTING_FIELDS`, `NOT_FINITE` and the reading codes
 * @example
 * tableText([{ id: 'S1', x: length('2.5 m'), finish: null }]) //=> 'id,x [m],finish\r\nS1,2.5000,'
 */
export function tableText(rows: readonly object[], options: TableTextOptions = {}): string {
  const { unit, delimiter, decimalMark } = readOptions(options, OPTIONS, (reader, read) => {
    if (read.decimalMark !== ',' || (read.delimiter ?? ',') !== ',') return;
    const words = 'a decimal comma needs semicolons or tabs between cells';
    reader.fail('CONFLICTING_FIELDS', ['decimalMark'], words);
  });
  const reader = makeReader();
  const cells = reader
    .list(rows, ['rows'])
    .map((row, index) => reader.object(row, ['rows', index]));
  const fields = Object.keys(cells[0] ?? {});
  const form: Form = { unit: (unit ?? 'm') as LengthUnit, decimalMark };
  const data = cells.map((row, index) => {
    if (Object.keys(row).join() !== fields.join()) {
      const words = `row ${index + 1} has other fields than the first`;
      reader.fail('COUNT_MISMATCH', ['rows', index], words);
    }
    return fields.map((field) => cellText(reader, row[field], ['rows', index, field], form));
  });
  reader.finish();
  const header = fields.map((field) => headerOf(field, cells, form));
  return writeCsv([header, ...data], delimiter);
}

/** As `decimal.js` numbers its ways of rounding. */
const HALF_UP = 4;

interface Form {
  readonly unit: LengthUnit;
  readonly decimalMark: DecimalMark;
}

const headerOf = (
  field: string,
  rows: readonly Readonly<Record<string, unknown>>[],
  { unit }: Form,
): string => (rows.some((row) => isQuantity(row[field])) ? `${field} [${unit}]` : field);

/** What a spreadsheet takes for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

function cellText(
  reader: Reader,
  value: unknown,
  path: (string | number)[],
  { unit, decimalMark }: Form,
): string {
  if (value === null) return '';
  if (typeof value === 'string') return FORMULA.test(value) ? `'${value}` : value;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) reader.fail('NOT_FINITE', path, `${value} is not a number`);
    return `${value}`.replace('.', decimalMark);
  }
  if (isQuantity(value) && value.dimension === 'length') {
    const text = (value as Length).to(unit).toFixed(PLACES[unit] ?? 4, HALF_UP);
    return text.replace('.', decimalMark);
  }
  reader.fail('WRONG_TYPE', path, `expected text, a number, a length or null, got ${shown(value)}`);
  return '';
}
