import { entry, table, wrap } from './layout.js';

/** One column of a table of a sheet. Internal. */
export interface Column {
  /** The heading, in one line or in two. */
  readonly head: string | readonly [string, string];
  readonly cells: readonly string[];
  /** What a value is called that every row has: it is said once, in a line, in place of the column. */
  readonly once?: string;
}

/**
 * A table, column by column: a column of dashes is left out, a column of one value is said once in a
 * line below (where no other column is left the first one becomes a list), and what is too wide for the sheet goes on in a second table. Internal.
 */
export function columnTable(first: Column, others: readonly Column[], width: number): string[] {
  const filled = others.filter(({ cells }) => cells.some((cell) => cell !== '-' && cell !== ''));
  const shown = filled.filter((column) => !isSaidOnce(column));
  const tables = sideBySide(headed(first), shown.map(spaced), width);
  const isBare = shown.length === 0 && filled.length > 0;
  return [
    ...(isBare
      ? wrap(listOf(first), width, '  ', '    ')
      : tables.flatMap((rows) => table(trimmedHead(rows), width))),
    ...filled
      .filter(isSaidOnce)
      .flatMap(({ once = '', cells }) => entry(once, cells[0] ?? '', width)),
  ];
}

const isSaidOnce = ({ once, cells }: Column): boolean =>
  once !== undefined && cells.length > 1 && cells.every((cell) => cell === cells[0]);

const headed = ({ head, cells }: Column): string[] => [
  ...(typeof head === 'string' ? ['', head] : head),
  ...cells,
];

/** Cells stand two spaces apart, so that `3` beside `13 1/2` cannot be read as one number. */
const spaced = (column: Column): string[] =>
  headed({ ...column, cells: column.cells.map((cell) => (cell === '' ? '' : ` ${cell}`)) });

function listOf({ head, cells }: Column): string {
  const name = typeof head === 'string' ? head : head.join(' ');
  return `${name}: ${cells.join(', ')}`;
}

/** Without the upper line of the heading where it is empty. */
const trimmedHead = (rows: readonly (readonly string[])[]) =>
  rows[0]?.every((cell) => cell === '') === true ? rows.slice(1) : rows;

/** Columns in tables that fit the sheet, each with the first column in front. */
function sideBySide(
  first: readonly string[],
  columns: readonly (readonly string[])[],
  width: number,
): string[][][] {
  const longest = (column: readonly string[]) => Math.max(...column.map(({ length }) => length));
  const parts: (readonly string[])[][] = columns.length === 0 ? [[]] : [];
  let used = width;
  for (const column of columns) {
    const wide = longest(column) + 1;
    if (used + wide > width) {
      parts.push([]);
      used = 2 + longest(first);
    }
    parts.at(-1)?.push(column);
    used += wide;
  }
  return parts.map((part) =>
    first.map((cell, row) => [cell, ...part.map((column) => column[row] ?? '')]),
  );
}
