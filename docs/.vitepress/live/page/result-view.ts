import { isQuantity } from 'settline/units';
import { both, inBothSystems, nameInWords, plainNumber } from './both-systems.js';
import { makeElement } from './make-element.js';

/** Fields that have a place of their own in the page, or none. */
const ELSEWHERE = new Set(['working', 'cautions', 'notes', 'note', 'sources']);

type Plain = string | number | boolean | null;

const isPlain = (value: unknown): value is Plain =>
  value === null || ['string', 'number', 'boolean'].includes(typeof value);

const isReadOut = (value: unknown): value is { toNumber: () => number; toFixed: () => string } =>
  typeof value === 'object' && value !== null && 'toFixed' in value && 'toNumber' in value;

function plainText(value: Plain): string {
  if (value === null) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? plainNumber(value) : value;
}

/** A value that fits in one cell. */
function cellText(value: unknown): string | undefined {
  if (isPlain(value)) return plainText(value);
  if (isQuantity(value)) return both(value);
  if (isReadOut(value)) return plainNumber(value.toNumber());
  if (Array.isArray(value)) {
    const parts = value.map(cellText);
    return parts.every((part) => part !== undefined) ? parts.join('; ') || 'none' : undefined;
  }
  return undefined;
}

const fieldsOf = (value: object): [string, unknown][] =>
  Object.entries(value).filter(
    ([name, part]) => !ELSEWHERE.has(name) && typeof part !== 'function' && part !== undefined,
  );

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !isQuantity(value) && !isReadOut(value);

interface Row {
  readonly name: string;
  readonly value: unknown;
}

/** The single values of a result, those of objects in it too. */
const singleRows = (value: object, before = ''): Row[] =>
  fieldsOf(value).flatMap(([name, part]) => {
    const words = `${before}${nameInWords(name)}`;
    if (cellText(part) !== undefined) return [{ name: words, value: part }];
    return isObject(part) && !Array.isArray(part) ? singleRows(part, `${words}: `) : [];
  });

/** The lists of objects of a result. */
const listsOf = (value: object, before = ''): [string, readonly object[]][] =>
  fieldsOf(value).flatMap(([name, part]): [string, readonly object[]][] => {
    const words = `${before}${nameInWords(name)}`;
    if (cellText(part) !== undefined || !isObject(part)) return [];
    if (!Array.isArray(part)) return listsOf(part, `${words}: `);
    return part.every(isObject) ? [[words, part]] : [];
  });

const cell = (text: string): HTMLElement => makeElement('td', { text });

function valueCells(value: unknown): HTMLElement[] {
  if (isQuantity(value)) {
    const [us, metric] = inBothSystems(value);
    if (us !== metric) return [cell(us), cell(metric)];
  }
  const text = cellText(value) ?? '';
  return [makeElement('td', { text, attributes: { colspan: 2 } })];
}

const heads = (names: readonly string[]): HTMLElement =>
  makeElement('thead', {
    children: [
      makeElement('tr', {
        children: names.map((text) => makeElement('th', { text, attributes: { scope: 'col' } })),
      }),
    ],
  });

/** A table that scrolls by itself where the page is narrow. */
const scrolled = (label: string, table: HTMLElement): HTMLElement =>
  makeElement('div', {
    class: 'scroll',
    attributes: { tabindex: 0, role: 'region', 'aria-label': label },
    children: [table],
  });

function singlesTable(rows: readonly Row[]): HTMLElement {
  const body = rows.map(({ name, value }) =>
    makeElement('tr', {
      children: [
        makeElement('th', { text: name, attributes: { scope: 'row' } }),
        ...valueCells(value),
      ],
    }),
  );
  return scrolled(
    'values of the result',
    makeElement('table', {
      children: [
        heads(['value', 'feet and inches', 'metric']),
        makeElement('tbody', { children: body }),
      ],
    }),
  );
}

function listTable(name: string, entries: readonly object[]): HTMLElement {
  const rows = entries.map((entry) => singleRows(entry));
  const columns = [...new Set(rows.flatMap((row) => row.map((one) => one.name)))];
  const body = rows.map((row) =>
    makeElement('tr', {
      children: columns.map((column) => {
        const found = row.find((one) => one.name === column);
        return cell(found === undefined ? '' : (cellText(found.value) ?? ''));
      }),
    }),
  );
  const caption = makeElement('caption', { text: name });
  const table = makeElement('table', {
    children: [caption, heads(columns), makeElement('tbody', { children: body })],
  });
  return scrolled(name, table);
}

/** Everything in a result as tables, in both unit systems. */
export function resultElement(result: object): HTMLElement {
  if (Array.isArray(result)) return listTable('result', result.filter(isObject));
  const singles = singleRows(result);
  return makeElement('div', {
    children: [
      ...(singles.length === 0 ? [] : [singlesTable(singles)]),
      ...listsOf(result)
        .filter(([, entries]) => entries.length > 0)
        .map(([name, entries]) => listTable(name, entries)),
    ],
  });
}
