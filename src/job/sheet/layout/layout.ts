import { entry } from '../../../invariant.js';
/** Lines of text no wider than a sheet. Internal. */

/** Breaks text into lines; lines after the first are indented. */
export function wrap(text: string, width: number, first = '', indent = first): string[] {
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  for (const word of unbreakable(text)) {
    if (!isEmpty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line];
}

/** Words of a text, with a number kept beside the fraction or unit that follows it. */
function unbreakable(text: string): string[] {
  const words: string[] = [];
  for (const word of text.split(' ')) {
    const before = words.at(-1);
    const belongs = /^(?:\d+\/\d+|in|mm|m|ft2|m2|yd3|m3|h|min|t|%)\b|^%/.test(word);
    if (before !== undefined && belongs && /[\d]$/.test(before)) {
      words[words.length - 1] = `${before} ${word}`;
    } else {
      words.push(word);
    }
  }
  return words;
}

/** A heading with a line under it. */
export function headingText(text: string, width: number): string[] {
  const lines = wrap(text, width);
  const longest = Math.max(...lines.map((line) => line.length));
  return ['', ...lines, '-'.repeat(Math.min(width, longest))];
}

/** The name of a sheet with a double line under it. */
export const titleText = (text: string, width: number): string[] => [
  ...wrap(text, width),
  '='.repeat(Math.min(width, text.length)),
];

/** A label on the left and a value on the right, on one line if they fit. */
export function entryText(label: string, value: string, width: number): string[] {
  const gap = width - 2 - label.length - value.length;
  if (gap >= 2) return [`  ${label}${' '.repeat(gap)}${value}`];
  return [...wrap(label, width, '  '), value.padStart(width)];
}

/**
 * A table with the first column to the left and the others to the right; where that is too wide, the
 * first column stands on a line of its own.
 */
export function tableText(rows: readonly (readonly string[])[], width: number): string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.max(...rows.map((row) => entry(row, column).length)),
  );
  const used = widths.reduce((sum, one) => sum + one, 2);
  if (used + columns - 1 > width) return stackedRows(rows, width);
  const gap = columns > 1 ? Math.max(1, Math.floor((width - used) / (columns - 1))) : 0;
  return rows.map((row) => `  ${joinCells(row, widths, gap)}`.trimEnd());
}

const stackedRows = (rows: readonly (readonly string[])[], width: number): string[] =>
  rows.flatMap(([label = '', ...cells]) => [
    ...wrap(label, width, '  '),
    ...wrap(cells.join('  '), width, '      '),
  ]);

function joinCells(row: readonly string[], widths: readonly number[], gap: number): string {
  return row
    .map((cell, column) => {
      const cellWidth = entry(widths, column);
      return column === 0 ? cell.padEnd(cellWidth) : ' '.repeat(gap) + cell.padStart(cellWidth);
    })
    .join('');
}
