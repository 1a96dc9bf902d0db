import * as library from 'settline';
import type { LineResult, RunFault } from './messages.js';
import { LIBRARY, NOTE, prepareExample } from './prepare.js';
import { isSame } from './same-value.js';
import { shownValue } from './shown-value.js';

/** What a run of an example gave. */
export interface CodeResult {
  readonly lines: readonly LineResult[];
  readonly faults: readonly RunFault[];
}

/** A line, and what it was to give; they are compared once the example has run. */
interface Noted {
  readonly line: number;
  readonly value: unknown;
  readonly expected: () => Promise<unknown>;
  readonly written: string;
}

/** Takes what a line gives; its own `line` is that of the statement that runs. */
interface Note {
  (line: number, value: unknown, expected: () => Promise<unknown>, written: string): void;
  line: number | null;
}

const anAsyncFunction = async (): Promise<void> => Promise.resolve();
const AsyncFunction = anAsyncFunction.constructor as new (
  ...parts: string[]
) => (...given: unknown[]) => Promise<void>;

/** The names of the library that the code speaks of, and the built-in site as `job`. */
function preludeFor(code: string, site: string): Readonly<Record<string, unknown>> {
  const words = new Set(code.match(/[A-Za-z_$][\w$]*/g));
  const named = Object.entries(library).filter(([name]) => words.has(name));
  const job = words.has('job') ? { job: library.readJob(JSON.parse(site)) } : {};
  return { ...job, ...Object.fromEntries(named) };
}

async function lineResult({ line, value, expected, written }: Noted): Promise<LineResult> {
  const shown = shownValue(value);
  try {
    return { line, isEqual: isSame(value, await expected()), shown, written };
  } catch {
    return { line, isEqual: false, shown, written };
  }
}

function faultsOf(error: unknown, line: number | null): RunFault[] {
  if (library.isSettlineError(error)) {
    return error.issues.map(({ code, path, message }) => ({
      line,
      code,
      path: library.pathText(path),
      message,
    }));
  }
  const message = error instanceof Error ? `${error.name}: ${error.message}` : shownValue(error);
  return [{ line, code: null, path: '', message }];
}

/** Runs an example; `site` is the text of the file that stands for `job`. */
export async function runCode(code: string, site: string): Promise<CodeResult> {
  const prepared = await prepareExample(code);
  if (!prepared.ok) {
    const { line, message } = prepared;
    return { lines: [], faults: [{ line, code: null, path: '', message }] };
  }
  const noted: Noted[] = [];
  const take = (...[line, value, expected, written]: Parameters<Note>): void => {
    noted.push({ line, value, expected, written });
  };
  const note: Note = Object.assign(take, { line: null });
  const prelude = preludeFor(prepared.body, site);
  let faults: readonly RunFault[] = [];
  try {
    const body = `"use strict";{\n${prepared.body}\n}`;
    const example = new AsyncFunction(LIBRARY, NOTE, ...Object.keys(prelude), body);
    await example(library, note, ...Object.values(prelude));
  } catch (error) {
    faults = faultsOf(error, note.line);
  }
  return { lines: await Promise.all(noted.map(lineResult)), faults };
}
