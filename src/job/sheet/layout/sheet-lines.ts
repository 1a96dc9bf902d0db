import { present } from '../../../invariant.js';
/** One column of a table of a sheet. Internal. */
export interface Column {
  /** The heading, in one line or in two. */
  readonly head: string | readonly [string, string];
  readonly cells: readonly string[];
  /** What a value is called that every row has: it is said once, in a line, in place of the column. */
  readonly once?: string;
}

/** What a sheet is made of, before it is laid out as text or as a page. Internal. */
export type SheetLine =
  /** The name of the sheet. */
  | { readonly kind: 'title'; readonly text: string }
  /** A heading, or one of a smaller part; lines of the smaller one after the first are indented. */
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'subheading'; readonly text: string; readonly indent: string }
  /** A sentence or two; `first` is the mark before the first line, `indent` stands before the others. */
  | {
      readonly kind: 'paragraph';
      readonly text: string;
      readonly first: string;
      readonly indent: string;
    }
  /** A label on the left and a value on the right. */
  | { readonly kind: 'entry'; readonly label: string; readonly value: string }
  /** A table row by row; null where it has no heads. */
  | {
      readonly kind: 'table';
      readonly head: readonly string[] | null;
      readonly rows: readonly (readonly string[])[];
    }
  /** A table column by column. */
  | { readonly kind: 'columns'; readonly first: Column; readonly others: readonly Column[] }
  /** An empty line. */
  | { readonly kind: 'space' }
  /** A line to sign on. */
  | { readonly kind: 'signature'; readonly label: string };

/** The name of a sheet, with a double line under it. Internal. */
export const sheetTitle = (text: string): SheetLine[] => [{ kind: 'title', text }];

/** A heading with a line under it. Internal. */
export const heading = (text: string): SheetLine[] => [{ kind: 'heading', text }];

/** The heading of a part, after an empty line. Internal. */
export const subheading = (text: string, indent = ''): SheetLine[] => [
  { kind: 'subheading', text, indent },
];

/** Text that is broken into lines; lines after the first are indented. Internal. */
export const paragraph = (text: string, first = '', indent = first): SheetLine[] => [
  { kind: 'paragraph', text, first, indent },
];

/** A label on the left and a value on the right, on one line if they fit. Internal. */
export const entry = (label: string, value: string): SheetLine[] => [
  { kind: 'entry', label, value },
];

/** A table with the first column to the left and the others to the right. Internal. */
export const table = (
  rows: readonly (readonly string[])[],
  head: readonly string[] | null = null,
): SheetLine[] => [{ kind: 'table', head, rows }];

/** A table, column by column. Internal. */
export const columnTable = (first: Column, others: readonly Column[]): SheetLine[] => [
  { kind: 'columns', first, others },
];

/** An empty line. Internal. */
export const space = (): SheetLine[] => [{ kind: 'space' }];

/** A line for a name and a date. Internal. */
export const signature = (label: string): SheetLine[] => [{ kind: 'signature', label }];

/** A table of columns as it is shown. Internal. */
export interface ShownColumns {
  /** Columns of more than one value. */
  readonly shown: readonly Column[];
  /** What every row has in common: a label and its value. */
  readonly once: readonly { readonly label: string; readonly value: string }[];
  /** The first column as a list, where no other is shown but something is said once. */
  readonly list: string | null;
}

/**
 * What is shown of columns: one of dashes is left out, one of a single value is said once in a line
 * (where no other column is left the first one becomes a list). Internal.
 */
export function shownColumns(first: Column, others: readonly Column[]): ShownColumns {
  const filled = others.filter(({ cells }) => cells.some((cell) => cell !== '-' && cell !== ''));
  const shown = filled.filter((column) => !isSaidOnce(column));
  return {
    shown,
    once: filled
      .filter(isSaidOnce)
      .map(({ once: label = '', cells }) => ({ label, value: present(cells[0], 'cell') })),
    list: shown.length === 0 && filled.length > 0 ? listOf(first) : null,
  };
}

const isSaidOnce = ({ once, cells }: Column): boolean =>
  once !== undefined && cells.length > 1 && cells.every((cell) => cell === cells[0]);

function listOf({ head, cells }: Column): string {
  const name = typeof head === 'string' ? head : head.join(' ');
  return `${name}: ${cells.join(', ')}`;
}
