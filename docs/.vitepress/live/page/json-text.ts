/** A value of JSON. */
export type Json = string | number | boolean | null | readonly Json[] | JsonObject;
/** An object of JSON. */
export interface JsonObject {
  readonly [key: string]: Json;
}

/** Path of a value: names and places. */
export type Path = readonly (string | number)[];

/** Where something stands in a text: from its first character to the one after its last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A text of JSON with the place of each value, or the first fault of the text. */
export type JsonReading =
  | { readonly ok: true; readonly value: Json; readonly spanOf: (path: Path) => Span }
  | { readonly ok: false; readonly message: string; readonly at: Span };

interface Placed {
  readonly span: Span;
  readonly parts: ReadonlyMap<string | number, Placed>;
}

class TextFault extends Error {
  readonly at: Span;

  constructor(message: string, at: Span) {
    super(message);
    this.at = at;
  }
}

const DEEPEST = 100;
const NO_PARTS: Placed['parts'] = new Map();

/** A place in a text that moves on as tokens are taken. */
interface Scanner {
  readonly text: string;
  place: number;
}

function refuse({ text, place }: Scanner, message: string, from = place, to = from + 1): never {
  throw new TextFault(message, { from, to: Math.min(to, text.length) });
}

/** The next character that is no space; empty at the end. */
function next(scanner: Scanner): string {
  while (/[ \t\r\n]/.test(scanner.text[scanner.place] ?? '')) scanner.place += 1;
  return scanner.text[scanner.place] ?? '';
}

const found = (scanner: Scanner): string => {
  const token = next(scanner);
  return token === '' ? 'found the end' : `found ${JSON.stringify(token)}`;
};

function take(scanner: Scanner, token: string, expected: string): void {
  if (next(scanner) !== token) refuse(scanner, `${found(scanner)}. Write ${expected}.`);
  scanner.place += token.length;
}

/** What a pattern matches just here; undefined where it does not. */
function match(scanner: Scanner, pattern: RegExp): string | undefined {
  pattern.lastIndex = scanner.place;
  return pattern.exec(scanner.text)?.[0];
}

function readString(scanner: Scanner): string {
  const token = match(scanner, /"(?:[^"\\\n]|\\.)*"/y);
  if (token === undefined) return refuse(scanner, 'this text has no closing quote.');
  try {
    const read = JSON.parse(token) as string;
    scanner.place += token.length;
    return read;
  } catch {
    const message = `${token} has a character that JSON cannot hold. Write \\n for a new line.`;
    return refuse(scanner, message);
  }
}

const WORDS = new Map([
  ['true', true],
  ['false', false],
  ['null', null],
]);

function readPlain(scanner: Scanner): Json {
  if (next(scanner) === '"') return readString(scanner);
  const token = match(scanner, /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y);
  if (token === undefined) {
    const message = `${found(scanner)}. Write a value: text in double quotes, a number, [ or {.`;
    return refuse(scanner, message);
  }
  scanner.place += token.length;
  const word = WORDS.get(token);
  return word === undefined ? Number(token) : word;
}

type Read = readonly [value: Json, parts: Placed['parts']];

function readList(scanner: Scanner, depth: number): Read {
  const values: Json[] = [];
  const parts = new Map<number, Placed>();
  take(scanner, '[', '[');
  while (next(scanner) !== ']') {
    if (values.length > 0) take(scanner, ',', 'a comma between entries, or ] at the end');
    const [value, placed] = readValue(scanner, depth);
    parts.set(values.length, placed);
    values.push(value);
  }
  scanner.place += 1;
  return [values, parts];
}

function readName(scanner: Scanner, parts: Placed['parts']): string {
  if (next(scanner) !== '"') {
    refuse(scanner, `${found(scanner)}. Write the field's name in double quotes.`);
  }
  const from = scanner.place;
  const name = readString(scanner);
  if (parts.has(name)) {
    refuse(scanner, `"${name}" is written twice. Remove one of them.`, from, scanner.place);
  }
  return name;
}

function readObject(scanner: Scanner, depth: number): Read {
  const entries: [string, Json][] = [];
  const parts = new Map<string, Placed>();
  take(scanner, '{', '{');
  while (next(scanner) !== '}') {
    if (entries.length > 0) take(scanner, ',', 'a comma between fields, or } at the end');
    const name = readName(scanner, parts);
    take(scanner, ':', 'a colon after the name');
    const [value, placed] = readValue(scanner, depth);
    parts.set(name, placed);
    entries.push([name, value]);
  }
  scanner.place += 1;
  return [Object.fromEntries(entries), parts];
}

function readAny(scanner: Scanner, depth: number): Read {
  const token = next(scanner);
  if (token === '[') return readList(scanner, depth);
  return token === '{' ? readObject(scanner, depth) : [readPlain(scanner), NO_PARTS];
}

function readValue(scanner: Scanner, depth: number): [Json, Placed] {
  next(scanner);
  const from = scanner.place;
  if (depth > DEEPEST) refuse(scanner, 'lists and objects lie too deep in each other.');
  const [value, parts] = readAny(scanner, depth + 1);
  return [value, { span: { from, to: scanner.place }, parts }];
}

/** Reads JSON and keeps where each value stands, so that a fault of a field can be shown in the text. */
export function readJson(text: string): JsonReading {
  const scanner: Scanner = { text, place: 0 };
  try {
    const [value, placed] = readValue(scanner, 0);
    if (next(scanner) !== '') refuse(scanner, `${found(scanner)} after the end. Remove it.`);
    return { ok: true, value, spanOf: (path) => spanIn(placed, path) };
  } catch (error) {
    if (error instanceof TextFault) return { ok: false, message: error.message, at: error.at };
    throw error;
  }
}

/** The span of a path; where a part is missing, that of the nearest value round it. */
function spanIn(placed: Placed, path: Path): Span {
  let here = placed;
  for (const step of path) {
    const part = here.parts.get(step);
    if (part === undefined) break;
    here = part;
  }
  return here.span;
}

/** Line and column of a character, both counted from 1. */
export function lineOf(
  text: string,
  at: number,
): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** True for an object of JSON. */
export const isJsonObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a path; undefined where there is none. */
export function valueAt(value: Json, path: Path): Json | undefined {
  let here: Json | undefined = value;
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined;
    if (!Object.hasOwn(here, step)) return undefined;
    here = (here as Readonly<Record<string | number, Json>>)[step];
  }
  return here;
}

/** A copy with another value at a path; undefined takes the field away. */
export function withValueAt(value: Json, path: Path, put: Json | undefined): Json {
  const [step, ...rest] = path;
  if (step === undefined) return put ?? null;
  if (typeof step === 'number') {
    const list: Json[] = Array.isArray(value) ? [...(value as readonly Json[])] : [];
    if (rest.length === 0 && put === undefined) list.splice(step, 1);
    else list[step] = withValueAt(list[step] ?? emptyFor(rest), rest, put);
    return list;
  }
  const fields = isJsonObject(value) ? value : {};
  if (rest.length > 0 || put !== undefined) {
    return { ...fields, [step]: withValueAt(fields[step] ?? emptyFor(rest), rest, put) };
  }
  return Object.fromEntries(Object.entries(fields).filter(([name]) => name !== step));
}

const emptyFor = ([next]: Path): Json => (typeof next === 'number' ? [] : {});
