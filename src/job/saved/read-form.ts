import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { SI_UNIT, type Dimension } from '../../units/catalogue.js';
import { inState, type SoilState } from '../../volumes/state-volume.js';
import type { Volume } from '../../units/quantity.js';
import { CAUTIONS, type CautionId } from '../../sources/cautions.js';
import { readSavedDigits, readSavedNumber, readSavedQuantity } from './read-figure.js';
import { within, type Reading } from './reading.js';
import { checkOutlineForm, outlineCode } from './outline-form.js';
import { MOST_LONG_TEXT, MOST_TEXT, PER_PART } from './saved-limits.js';
import type { Code, FieldCode } from './shape-code.js';

/**
 * Reads a part of a saved plan by its code: type, dimension and size of each figure. It goes as deep
 * as a plan is and no deeper, whatever was saved.
 */
function readForm(reading: Reading, code: Code, value: unknown): unknown {
  reading.spend(1);
  switch (code.kind) {
    case 'nullable':
      return value === null ? null : readForm(reading, code.of, value);
    case 'list':
      return readList(reading, code.of, value);
    case 'record':
      return readRecord(reading, code.of, value);
    case 'choice':
      return readWord(reading, code.words, value);
    case 'object':
      return readFields(reading, code.fields, value);
    case 'either':
      return readFields(reading, ofKind(code.of, value), value);
    case 'plain':
      return readPlain(reading, code.name, value);
  }
}

/** The fields of the kind that an object says it is; else those of the first. */
function ofKind(forms: readonly (readonly FieldCode[])[], value: unknown): readonly FieldCode[] {
  const own = isPlain(value) ? value['kind'] : undefined;
  const isOwn = ({ name, code }: FieldCode) =>
    name === 'kind' && code.kind === 'choice' && code.words.some((word) => word === own);
  return forms.find((fields) => fields.some(isOwn)) ?? forms[0] ?? [];
}

function readList(reading: Reading, of: Code, value: unknown): readonly unknown[] {
  if (!Array.isArray(value)) {
    reading.fail(`expected a list [ ... ], got ${shown(value)}`);
    return [];
  }
  const list: unknown[] = [];
  for (let index = 0; index < value.length; index += 1) {
    list.push(within(reading, index, () => readForm(reading, of, value[index])));
  }
  return list;
}

function readRecord(reading: Reading, of: Code, value: unknown): unknown {
  if (!isPlain(value)) {
    reading.fail(`expected an object { ... }, got ${shown(value)}`);
    return {};
  }
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      within(reading, key, () => readForm(reading, of, part)),
    ]),
  );
}

/** An object with its fields and no others; a volume of soil reads like one that was calculated. */
export function readFields(
  reading: Reading,
  fields: readonly FieldCode[],
  value: unknown,
): Record<string, unknown> {
  if (!isPlain(value)) {
    reading.fail(`expected an object { ... }, got ${shown(value)}`);
    return {};
  }
  refuseOthers(reading, fields, value);
  const read = placesFor(value);
  for (const { name, isOptional, code } of fields) {
    const part = Object.hasOwn(value, name) ? value[name] : undefined;
    if (part !== undefined) read[name] = within(reading, name, () => readForm(reading, code, part));
    else if (!isOptional) reading.fail('missing', [name]);
    if (name === 'cautions') checkCautions(reading, part);
    if (name === 'working') hideWorking(read);
  }
  return finished(fields, read);
}

/** The fields in the order in which they were saved: a plan that is saved again is the same text. */
function placesFor(value: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const given = Object.entries(value).filter(([, part]) => part !== undefined);
  return Object.fromEntries(given.map(([name]) => [name, undefined]));
}

/** Volumes of soil have their methods again, and cautions the words of the library. */
function finished(
  fields: readonly FieldCode[],
  read: Record<string, unknown>,
): Record<string, unknown> {
  const [first, second, ...more] = fields;
  if (more.length > 0 || first === undefined || second === undefined) return read;
  const { state, volume, id } = read;
  if (first.name === 'state' && volume !== undefined) {
    return inState(volume as Volume, state as SoilState) as unknown as Record<string, unknown>;
  }
  return first.name === 'id' && second.name === 'text' ? { ...CAUTIONS[id as CautionId] } : read;
}

function checkCautions(reading: Reading, list: unknown): void {
  if (!Array.isArray(list) || list.length > 0) return;
  reading.fail('the list is empty. A plan is not read without its cautions', ['cautions']);
}

function refuseOthers(
  reading: Reading,
  fields: readonly FieldCode[],
  value: Readonly<Record<string, unknown>>,
): void {
  for (const key of Object.keys(value)) {
    reading.spend(1);
    if (fields.some(({ name }) => name === key)) continue;
    reading.fail('unknown field: a plan has none of this name', [key]);
  }
}

/** The working is no part of the JSON of a plan: what was saved without it has no steps. */
function hideWorking(read: Record<string, unknown>): void {
  const value = read['working'] ?? [];
  // who plans the job again may hang the steps on it before it is frozen
  Object.defineProperty(read, 'working', { value, enumerable: false, configurable: true });
}

function readWord(reading: Reading, words: readonly string[], value: unknown): unknown {
  if (typeof value === 'string' && words.includes(value)) return value;
  const list = words.length > MOST_WORDS ? '' : `. Use one of ${words.join(', ')}`;
  reading.fail(`${shown(value)} is not a word that a plan has here${list}`);
  return words[0];
}

/** Choices that a message lists. */
const MOST_WORDS = 7;

function readPlain(reading: Reading, name: string, value: unknown): unknown {
  if (Object.hasOwn(SI_UNIT, name)) return readSavedQuantity(reading, name as Dimension, value);
  switch (name) {
    case 'text':
      return readText(reading, value);
    case 'number':
      return readSavedNumber(reading, value);
    case 'digits':
      return readSavedDigits(reading, value);
    case 'flag':
      if (typeof value !== 'boolean') reading.fail(`expected true or false, got ${shown(value)}`);
      return value === true;
    case 'source':
      return readSource(reading, value);
    case 'step':
      return typeof value === 'number' ? readSavedNumber(reading, value) : readText(reading, value);
    case 'value':
      return readValue(reading, value);
    case 'values':
      return Array.isArray(value)
        ? readList(reading, { kind: 'plain', name: 'value' }, value)
        : readValue(reading, value);
    case 'outline':
      checkOutlineForm(reading, value);
      return readForm(reading, outlineCode(value), value);
    default:
      if (value !== Number(name)) reading.fail(`expected ${name}, got ${shown(value)}`);
      return Number(name);
  }
}

/** Form of an id of a source: the catalogue stays out of the reader, `renderWorking` looks ids up in it. */
const SOURCE_ID = /^[a-z0-9-]{1,60}$/;

function readSource(reading: Reading, value: unknown): unknown {
  if (typeof value !== 'string' || !SOURCE_ID.test(value)) {
    reading.fail(`expected the id of a source, got ${shown(value)}`);
  }
  return value;
}

/** A figure of a warning or a step: a quantity of any dimension, a number or text. */
function readValue(reading: Reading, value: unknown): unknown {
  if (typeof value === 'string') return readText(reading, value);
  if (typeof value === 'number') return readSavedNumber(reading, value, true);
  return readSavedQuantity(reading, undefined, value);
}

/** Line breaks and other control characters. */
const CONTROL = /[\u0000-\u001f\u007f\u2028\u2029]/;

function readText(reading: Reading, value: unknown): string {
  if (typeof value !== 'string') {
    reading.fail(`expected text, got ${shown(value)}`);
    return '';
  }
  const isName = NAMES.has(String(reading.at.at(-1)));
  if (isName && value.trim() === '') reading.fail('the name is empty');
  const most = LONG.has(String(reading.at.at(-1))) ? MOST_LONG_TEXT : MOST_TEXT;
  reading.spend(value.length / PER_PART);
  if (value.length > most) {
    reading.fail(`more than ${most} characters`);
    return '';
  }
  if (CONTROL.test(value)) reading.fail('has a line break or control character');
  return value;
}

/** Texts of the working, with the digits of many values. */
const LONG: ReadonlySet<string> = new Set(['text', 'formula', 'method']);
/** Texts that are never empty. */
const NAMES: ReadonlySet<string> = new Set(['id', 'name', 'pavement', 'surface', 'material']);
