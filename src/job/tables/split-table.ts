import { fault } from '../../errors.js';
import { parseCsv } from './csv.js';

/** What stands between the cells of a row. */
export type TableDelimiter = ',' | ';' | '\t';

/** The rows of a table as text. Internal. */
export interface SplitTable {
  readonly delimiter: TableDelimiter;
  readonly header: readonly string[];
  /** Rows below the header that are not empty, with their numbers as people count: the header is row 1. */
  readonly rows: readonly { readonly number: number; readonly cells: readonly string[] }[];
}

const DELIMITERS: readonly TableDelimiter[] = ['\t', ';', ','];
const IN_WORDS: Readonly<Record<TableDelimiter, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
};
/** As many spot heights as a job takes. */
const MOST_ROWS = 100_000;

/**
 * Splits a table into cells, quoted ones too. The header shows what stands between them, and must show
 * one thing only. Internal.
 *
 * @throws `TABLE_UNCLEAR`, `TOO_MANY`, `EMPTY_LIST`
 */
export function splitTable(text: string, given: TableDelimiter | undefined): SplitTable {
  const plain = text.replace(/^\uFEFF/, '');
  const delimiter = given ?? delimiterOf(plain);
  const { rows: data, badQuoteRow: row } = parseCsv(plain, delimiter);
  if (row !== undefined) {
    const words = `row ${row}: a quotation mark does not close, or stands inside a cell. Write two for one inside a quoted cell`;
    throw fault('TABLE_UNCLEAR', words, { row }, ['text']);
  }
  const all = data.map((cells, index) => ({ number: index + 1, cells: cells.map(trimmed) }));
  const [header, ...rows] = all.filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (header === undefined) throw fault('EMPTY', 'the table is empty', {}, ['text']);
  if (rows.length === 0) {
    throw fault('EMPTY_LIST', 'the table has no row below its header', {}, ['rows']);
  }
  if (rows.length > MOST_ROWS) {
    const words = `${rows.length} rows are more than the limit of ${MOST_ROWS}`;
    throw fault('TOO_MANY', words, { most: MOST_ROWS, got: rows.length }, ['rows']);
  }
  return { delimiter, header: header.cells, rows };
}

const trimmed = (cell: string): string => cell.trim();

/** What stands between the cells of the header, quoted text and units in brackets left aside. */
function delimiterOf(text: string): TableDelimiter {
  const [header = ''] = text.trimStart().split(/\r\n|\r|\n/, 1);
  const bare = header.replace(/"[^"]*"|\[[^\]]*\]|\([^)]*\)/g, '');
  const found = DELIMITERS.filter((delimiter) => bare.includes(delimiter));
  const [delimiter, other] = found;
  if (delimiter !== undefined && other === undefined) return delimiter;
  const words =
    other === undefined
      ? 'the header shows neither commas, semicolons nor tabs between its columns'
      : `the header has ${found.map((one) => IN_WORDS[one]).join(' and ')}`;
  throw fault('TABLE_UNCLEAR', `${words}. Say which delimiter separates the cells`, {}, [
    'delimiter',
  ]);
}
