import { entry } from '../../../invariant.js';
import { entryText, tableText, wrap } from './layout.js';
import { shownColumns, type Column } from './sheet-lines.js';

/** A table of columns as text; what is too wide for the sheet goes on in a second table. Internal. */
export function columnsText(first: Column, others: readonly Column[], width: number): string[] {
  const { shown, once, list } = shownColumns(first, others);
  const tables = sideBySide(headed(first), shown.map(spaced), width);
  return [
    ...(list === null
      ? tables.flatMap((rows) => tableText(trimmedHead(rows), width))
      : wrap(list, width, '  ', '    ')),
    ...once.flatMap(({ label, value }) => entryText(label, value, width)),
  ];
}

const headed = ({ head, cells }: Column): string[] => [
  ...(typeof head === 'string' ? ['', head] : head),
  ...cells,
];

/** Cells stand two spaces apart, so that `3` beside `13 1/2` cannot be read as one number. */
const spaced = (column: Column): string[] =>
  headed({ ...column, cells: column.cells.map((cell) => (cell === '' ? '' : ` ${cell}`)) });

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
    first.map((cell, row) => [cell, ...part.map((column) => entry(column, row))]),
  );
}
