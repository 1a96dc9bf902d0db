import { valueAt } from '../page/json-text.js';
import { makeButton, makeElement } from '../page/make-element.js';
import type { RowsField } from './block.js';
import { controlOf, hintOf, type FormParts } from './form-fields.js';

const nameOf = ({ path }: RowsField): string => path.join('.');

function focusIn(field: RowsField, within: string, { element }: FormParts): void {
  const list = `[data-rows="${CSS.escape(nameOf(field))}"]`;
  element.querySelector<HTMLElement>(`${list} ${within}`)?.focus();
}

function rowElement(field: RowsField, index: number, parts: FormParts): HTMLElement {
  const name = `${field.one} ${index + 1}`;
  const cells = field.columns.map((column) => {
    const path = [...field.path, index, ...column.path];
    const control = controlOf(column, path, parts);
    const faults = parts.wire(control, path);
    control.setAttribute('aria-label', `${name}: ${column.label}`);
    control.setAttribute('aria-describedby', faults.id);
    return makeElement('td', { children: [control, faults] });
  });
  const remove = makeButton(
    '\u00d7',
    () => {
      parts.put([...field.path, index], undefined);
      parts.draw();
      focusIn(field, '.add', parts);
    },
    { class: 'remove', attributes: { 'aria-label': `Remove ${name}` } },
  );
  return makeElement('tr', { children: [...cells, makeElement('td', { children: [remove] })] });
}

function headElement({ columns }: RowsField): HTMLElement {
  const heads = columns.map((column) => {
    const hint = hintOf(column);
    const help = hint === '' ? [] : [makeElement('span', { class: 'hint', text: hint })];
    return makeElement('th', { attributes: { scope: 'col' }, children: [column.label, ...help] });
  });
  return makeElement('thead', {
    children: [makeElement('tr', { children: [...heads, makeElement('td')] })],
  });
}

/** A list of entries, one to a row, which grows and shrinks. */
export function rowsElement(field: RowsField, parts: FormParts): HTMLElement {
  const list = valueAt(parts.options(), field.path);
  const count = Array.isArray(list) ? list.length : 0;
  const rows = Array.from({ length: count }, (_, index) => rowElement(field, index, parts));
  const add = makeButton(
    `Add ${field.one}`,
    () => {
      parts.put([...field.path, count], field.fresh(count));
      parts.draw();
      focusIn(field, 'tbody tr:last-child input', parts);
    },
    { class: 'add' },
  );
  const table = makeElement('table', {
    children: [headElement(field), makeElement('tbody', { children: rows })],
  });
  return makeElement('fieldset', {
    class: 'rows',
    attributes: { 'data-rows': nameOf(field) },
    children: [makeElement('legend', { text: field.label }), table, add],
  });
}
