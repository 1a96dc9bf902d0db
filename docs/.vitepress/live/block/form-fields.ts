import { valueAt, type Json, type JsonObject, type Path } from '../page/json-text.js';
import { makeElement } from '../page/make-element.js';
import type { ChoiceField, EntryField, FlagField } from './block.js';

/** What a reader edits. */
export type Control = HTMLInputElement | HTMLSelectElement;

/** What the fields of a form share. */
export interface FormParts {
  readonly element: HTMLElement;
  readonly options: () => JsonObject;
  /** Puts a value into the options; undefined takes it out. */
  readonly put: (path: Path, value: Json | undefined) => void;
  /** Notes a control with its path; returns the place for its faults. */
  readonly wire: (control: Control, path: Path) => HTMLElement;
  /** Makes all fields anew. */
  readonly draw: () => void;
}

function asText(value: Json | undefined): string {
  if (value === undefined || value === null) return '';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

/** What was typed, as it stands in the options; a number only where the text is one. */
function typed(text: string, { isNumber, isOptional }: EntryField): Json | undefined {
  if (text === '' && isOptional === true) return undefined;
  const isPlain = /^\s*-?(?:\d+\.?\d*|\.\d+)\s*$/.test(text);
  return isNumber === true && isPlain ? Number(text) : text;
}

function entryControl(field: EntryField, path: Path, parts: FormParts): HTMLInputElement {
  const control = makeElement('input', {
    attributes: { type: 'text', spellcheck: 'false', autocomplete: 'off', autocapitalize: 'off' },
  });
  control.value = asText(valueAt(parts.options(), path));
  control.addEventListener('input', () => {
    parts.put(path, typed(control.value, field));
  });
  return control;
}

function choiceControl({ choices }: ChoiceField, path: Path, parts: FormParts): HTMLSelectElement {
  const control = makeElement('select');
  const now = asText(valueAt(parts.options(), path));
  const isKnown = choices.some(([value]) => value === now);
  for (const [value, words] of isKnown ? choices : [[now, now] as const, ...choices]) {
    control.append(makeElement('option', { text: words, attributes: { value } }));
  }
  control.value = now;
  control.addEventListener('change', () => {
    parts.put(path, control.value);
  });
  return control;
}

/** The control of a field at a path. */
export const controlOf = (
  field: EntryField | ChoiceField,
  path: Path,
  parts: FormParts,
): Control =>
  field.kind === 'entry' ? entryControl(field, path, parts) : choiceControl(field, path, parts);

/** The hint of a field; empty where it has none. */
export const hintOf = (field: EntryField | ChoiceField): string =>
  field.kind === 'entry' ? (field.hint ?? '') : '';

/** A field with its label, hint and faults. */
export function singleElement(field: EntryField | ChoiceField, parts: FormParts): HTMLElement {
  const control = controlOf(field, field.path, parts);
  const faults = parts.wire(control, field.path);
  control.id = `field-${faults.id}`;
  const hint = hintOf(field);
  const help = makeElement('span', {
    class: 'hint',
    text: hint,
    attributes: { id: `hint-${faults.id}` },
  });
  control.setAttribute('aria-describedby', hint === '' ? faults.id : `${help.id} ${faults.id}`);
  const label = makeElement('label', { text: field.label, attributes: { for: control.id } });
  return makeElement('div', {
    class: 'field',
    children: [label, control, ...(hint === '' ? [] : [help]), faults],
  });
}

/** A box to tick. */
export function flagElement({ path, label }: FlagField, parts: FormParts): HTMLElement {
  const control = makeElement('input', { attributes: { type: 'checkbox' } });
  control.checked = valueAt(parts.options(), path) === true;
  control.addEventListener('change', () => {
    parts.put(path, control.checked);
  });
  const faults = parts.wire(control, path);
  control.setAttribute('aria-describedby', faults.id);
  return makeElement('div', {
    class: 'field flag',
    children: [makeElement('label', { children: [control, label] }), faults],
  });
}
