import { copyLinkButton } from '../page/copy-link.js';
import { numberedText, type LineMark, type NumberedText } from '../page/line-numbers.js';
import { makeButton, makeElement } from '../page/make-element.js';
import { keepStateInHash, linkWithState } from '../page/state-in-hash.js';
import type { LineResult, RunFault } from './messages.js';
import { LONGEST_RUN, runExample, warmUp, type RunOutcome } from './run-example.js';

const SECOND = 1000;
const WIDEST_LINES = { least: 3, most: 30 } as const;

/** An example that is opened. */
export interface Opened {
  readonly code: string;
  /** The text to start with: the code, or what a link holds. */
  readonly state: string;
  readonly name: string;
}

/** Opens the editor in place of the code; `run` runs what is in it. */
export function openEditor(
  root: ShadowRoot,
  { code, state, name }: Opened,
): { readonly run: () => void } {
  const editor = numberedText('Example code; Control and Enter runs it', WIDEST_LINES);
  const said = makeElement('p', { class: 'answer', attributes: { role: 'status' } });
  const lines = makeElement('ul', {
    class: 'lines',
    attributes: { 'aria-label': 'results by line' },
  });
  const run = (): void => {
    said.textContent = 'Running.';
    const text = editor.field.value;
    runExample(text)
      .catch((): RunOutcome => ({ lines: [], faults: [LOAD_FAULT], isStopped: false }))
      .then((outcome) => {
        if (editor.field.value === text) showOutcome(outcome, { editor, said, lines });
      })
      .catch(() => undefined);
  };
  const keep = (): void => {
    const { value } = editor.field;
    keepStateInHash(name, value === code ? undefined : value);
  };
  editor.field.addEventListener('input', () => {
    keep();
    editor.mark(new Map());
    lines.replaceChildren();
    said.textContent = '';
  });
  editor.field.addEventListener('focus', () => {
    warmUp().catch(() => undefined);
  });
  editor.field.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    run();
  });
  const reset = makeButton('Reset', () => {
    editor.write(code);
    keep();
    run();
  });
  const bar = makeElement('div', {
    class: 'bar',
    children: [
      makeButton('Run', run, { class: 'main' }),
      reset,
      copyLinkButton(() => linkWithState(name, editor.field.value)),
      makeElement('span', { class: 'hint', text: 'Control + Enter runs it' }),
    ],
  });
  root.replaceChildren(editor.element, bar, said, lines);
  editor.write(state);
  // from its start: at the end of a long line the rest would be out of sight
  editor.field.setSelectionRange(0, 0);
  editor.field.focus();
  return { run };
}

const LOAD_FAULT: RunFault = {
  line: null,
  code: null,
  path: '',
  message: 'the worker that runs examples could not be loaded. Reload the page.',
};

interface Shown {
  readonly editor: NumberedText;
  readonly said: HTMLElement;
  readonly lines: HTMLElement;
}

function showOutcome({ lines, faults, isStopped }: RunOutcome, shown: Shown): void {
  const marks = new Map<number, LineMark>(
    lines.map(({ line, isEqual }) => [line, isEqual ? 'good' : 'bad']),
  );
  for (const { line } of faults) if (line !== null) marks.set(line, 'bad');
  shown.editor.mark(marks);
  shown.lines.replaceChildren(...faults.map(faultLine), ...lines.map(resultLine));
  shown.said.textContent = isStopped
    ? `Stopped after ${LONGEST_RUN / SECOND} seconds. Look for a loop that does not end.`
    : summary(lines, faults);
}

function summary(lines: readonly LineResult[], faults: readonly RunFault[]): string {
  if (faults.length > 0) return faults.length === 1 ? 'One fault.' : `${faults.length} faults.`;
  const other = lines.filter(({ isEqual }) => !isEqual).length;
  if (lines.length === 0) return 'It ran. Write //=> behind an expression to see its value.';
  if (other === 0) return 'Every line gives what is written.';
  return other === 1
    ? 'One line gives another value than is written.'
    : `${other} lines give other values than are written.`;
}

function resultLine({ line, isEqual, shown, written }: LineResult): HTMLElement {
  const words = isEqual ? 'as written' : `written: ${written === '' ? 'nothing' : written}`;
  return makeElement('li', {
    children: [
      `line ${line} gives `,
      makeElement('code', { text: shown }),
      ' ',
      makeElement('span', { class: isEqual ? 'good' : 'bad', text: `(${words})` }),
    ],
  });
}

function faultLine({ line, code, path, message }: RunFault): HTMLElement {
  return makeElement('li', {
    class: 'bad',
    children: [
      ...(line === null ? [] : [`line ${line}: `]),
      ...(path === '' ? [] : [makeElement('code', { text: path }), ': ']),
      message,
      ...(code === null ? [] : [' ', makeElement('code', { class: 'code', text: code })]),
    ],
  });
}
