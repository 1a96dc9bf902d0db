// Nothing but what needs the package, which only settline/tables loads.
import Papa from 'papaparse';

/** Cells of a table of text, and the row of a quotation mark that does not close or stands inside a cell. Internal. */
export interface CsvRows {
  readonly rows: readonly (readonly string[])[];
  /** Counted from 1; undefined where all is well. */
  readonly badQuoteRow: number | undefined;
}

/** Splits text into rows and cells. Internal. */
export function parseCsv(text: string, delimiter: string): CsvRows {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, quoteChar: '"' });
  const wrong = errors.find(({ type }) => type === 'Quotes');
  return { rows: data, badQuoteRow: wrong && (wrong.row ?? 0) + 1 };
}

/** Writes rows as text, quoted where it must be. Internal. */
export const writeCsv = (rows: readonly (readonly string[])[], delimiter: string): string =>
  Papa.unparse(
    rows.map((row) => [...row]),
    { delimiter, newline: '\r\n' },
  );
