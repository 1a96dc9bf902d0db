import { entry } from '../../invariant.js';
import { shownColumns, type Column, type SheetLine } from '../../job/sheet/layout/sheet-lines.js';
import { pageText, plainText, tag } from './page-text.js';

/** Lines of a sheet as markup of a page. Internal. */
export const pageLines = (lines: readonly SheetLine[]): string => lines.map(markup).join('\n');

function markup(line: SheetLine): string {
  switch (line.kind) {
    case 'title':
      return tag('h1', pageText(line.text));
    case 'heading':
      return tag('h2', pageText(line.text));
    case 'subheading':
      return tag('h3', pageText(line.text));
    case 'paragraph':
      return paragraphMarkup(line.text, line.first);
    case 'entry':
      return entryMarkup(line.label, line.value);
    case 'table':
      return tableMarkup(line.head === null ? [] : [line.head], line.rows);
    case 'columns':
      return columnsMarkup(line.first, line.others);
    case 'space':
      return '';
    case 'signature':
      return tag('p', `${pageText(line.label)} ${tag('span', '', 'sign')}`);
  }
}

/** Marks before a line that a page draws: a box to tick, a line to sign on. */
const DRAWN: Readonly<Record<string, string>> = {
  '[ ]': tag('span', '', 'box'),
  ____: tag('span', '', 'sign'),
};

function paragraphMarkup(text: string, first: string): string {
  const mark = first.trim();
  if (mark === '') return tag('p', pageText(text));
  const drawn = DRAWN[mark] ?? tag('span', pageText(mark), 'mark');
  return tag('p', `${drawn} ${pageText(text)}`, mark === '!' ? 'item warning' : 'item');
}

/** A label that is set in stands for a part of what is above. */
const entryMarkup = (label: string, value: string): string =>
  tag(
    'p',
    `${tag('span', pageText(label.trim()))} ${tag('b', pageText(value))}`,
    label.startsWith(' ') ? 'entry part' : 'entry',
  );

function columnsMarkup(first: Column, others: readonly Column[]): string {
  const { shown, once, list } = shownColumns(first, others);
  const columns = [first, ...shown];
  const rows = first.cells.map((_, row) => columns.map(({ cells }) => entry(cells, row)));
  const heads = columns.map(({ head }) => (typeof head === 'string' ? head : head.join(' ')));
  return [
    list === null ? tableMarkup([heads], rows) : tag('p', pageText(list)),
    ...once.map(({ label, value }) => entryMarkup(label, value)),
  ].join('\n');
}

function tableMarkup(
  heads: readonly (readonly string[])[],
  rows: readonly (readonly string[])[],
): string {
  const width = widthOf(rows);
  const row = (cells: readonly string[], name: 'th' | 'td'): string =>
    tag('tr', cells.map((cell) => tag(name, pageText(cell.trim()))).join(''));
  const [names = []] = heads;
  const named = (cells: readonly string[]): string =>
    tag('tr', cells.map((cell, k) => namedCell(entry(names, k), cell.trim())).join(''));
  const head = heads.map((cells) => tag('thead', row(cells, 'th'))).join('');
  const body = rows.map((cells) => (width === 'most' ? named(cells) : row(cells, 'td'))).join('');
  return tag('div', tag('table', head + tag('tbody', body), width), 'table');
}

/** Tables of many columns have smaller type on a phone, those of most columns a block for each row. */
function widthOf([first = []]: readonly (readonly string[])[]): string | undefined {
  if (first.length < 5) return undefined;
  return first.length < 7 ? 'many' : 'most';
}

/** A cell that carries the head of its column: on a phone the style sheet writes it beside the value. */
const namedCell = (name: string, cell: string): string =>
  `<td data-head="${plainText(name.trim())}">${pageText(cell)}</td>`;
