import { pathText, type Issue } from 'settline/errors';
import { keptTogether } from '../page/both-systems.js';
import { copyLinkButton } from '../page/copy-link.js';
import { faultElement } from '../page/faults-view.js';
import {
  isJsonObject,
  lineOf,
  readJson,
  type JsonObject,
  type JsonReading,
} from '../page/json-text.js';
import { numberedText, type NumberedText } from '../page/line-numbers.js';
import { drawingElement, makeButton, makeElement } from '../page/make-element.js';
import { keepStateInHash, linkWithState, stateInHash } from '../page/state-in-hash.js';
import type { Block, BlockResult } from './block.js';
import { makeForm, type Form } from './form.js';
import { lazyFold, type LazyFold } from './lazy-fold.js';

/** Wait after a key, so that a half-typed value is not judged and read out. */
const PAUSE = 200;
const NARROWEST = 280;
const WIDEST = 720;

const printJson = (options: JsonObject): string => JSON.stringify(options, null, 2);

/** What a block shows of its calculation, each part in a place of its own. */
interface Places {
  readonly answer: HTMLElement;
  readonly faults: HTMLElement;
  readonly drawing: HTMLElement;
  readonly tables: LazyFold;
  readonly working: LazyFold;
  readonly notes: HTMLElement;
}

function makePlaces(isShort: boolean): Places {
  return {
    answer: makeElement('p', { class: 'answer', attributes: { role: 'status' } }),
    faults: makeElement('ul', { class: 'faults', attributes: { 'aria-label': 'faults' } }),
    drawing: makeElement('div'),
    tables: lazyFold('All values', false),
    working: lazyFold('Working', !isShort),
    notes: makeElement('div', { class: 'notes' }),
  };
}

const folded = (title: string, content: Node): HTMLElement =>
  makeElement('details', {
    class: 'no-print',
    children: [makeElement('summary', { text: title }), content],
  });

/** A block in its page: what is edited, and where its outcome is shown. */
interface Shown {
  readonly block: Block;
  /** Name of its state in the address. */
  readonly name: string;
  readonly places: Places;
  readonly form: Form;
  readonly json: NumberedText;
}

/** Shows what the text of the options gives. */
function calculate({ block, name, places, form, json }: Shown): void {
  const text = json.field.value;
  const reading = readJson(text);
  keepStateInHash(name, text === printJson(block.options) ? undefined : text);
  if (!reading.ok || !isJsonObject(reading.value)) {
    showJsonFault(reading, json, places);
    return;
  }
  const outcome = block.run(reading.value);
  const faults = outcome.ok ? [] : outcome.errors;
  showFaults({ faults, form, json, reading, places });
  if (outcome.ok) showResult(outcome.value, places);
  else hideResult(places, faults.length === 1 ? 'One fault.' : `${faults.length} faults.`);
}

function showJsonFault(reading: JsonReading, json: NumberedText, places: Places): void {
  const message = reading.ok ? 'write an object in { }.' : reading.message;
  const at = reading.ok ? 0 : reading.at.from;
  const { line } = lineOf(json.field.value, at);
  json.mark(new Map([[line, 'bad']]));
  const words = `Line ${line} of the options: ${message}`;
  places.faults.replaceChildren(makeElement('li', { text: words }));
  hideResult(places, 'The options are not JSON.');
}

/** Puts other options in, as text; the form follows where they can be read. */
function take(text: string, { form, json }: Shown): void {
  json.write(text);
  const reading = readJson(text);
  if (reading.ok && isJsonObject(reading.value)) form.show(reading.value);
}

/** Makes the form of a block and all that it shows. */
export function makeBlock(
  root: ShadowRoot,
  block: Block,
  { name, isShort }: { readonly name: string; readonly isShort: boolean },
): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const calculateSoon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      calculate(shown);
    }, PAUSE);
  };
  const json = numberedText('All options as JSON', { least: 4, most: 24 });
  const form = makeForm(block.fields, (edited) => {
    json.write(printJson(edited));
    calculateSoon();
  });
  const shown: Shown = { block, name, places: makePlaces(isShort), form, json };
  json.field.addEventListener('input', () => {
    take(json.field.value, shown);
    calculateSoon();
  });
  root.replaceChildren(blockElement(shown));
  take(stateInHash(name) ?? printJson(block.options), shown);
  calculate(shown);
  window.addEventListener('hashchange', () => {
    const state = stateInHash(name);
    if (state === undefined || state === json.field.value) return;
    take(state, shown);
    calculate(shown);
  });
}

function blockElement(shown: Shown): HTMLElement {
  const { block, name, places, form, json } = shown;
  const reset = makeButton('Reset', () => {
    take(printJson(block.options), shown);
    calculate(shown);
  });
  const copy = copyLinkButton(() => linkWithState(name, json.field.value));
  const results = makeElement('div', {
    class: 'results',
    children: [places.answer, places.faults, places.drawing],
  });
  return makeElement('section', {
    class: 'block',
    attributes: { 'aria-label': block.title },
    children: [
      makeElement('p', { class: 'title', text: block.title }),
      makeElement('div', { class: 'sides', children: [form.element, results] }),
      places.tables.element,
      places.working.element,
      folded('Options as JSON', json.element),
      places.notes,
      makeElement('div', { class: 'bar', children: [reset, copy, callsOf(block)] }),
    ],
  });
}

const callsOf = ({ calls }: Block): HTMLElement =>
  makeElement('span', {
    class: 'calls',
    children: [
      'Calls ',
      ...calls.flatMap((call, index) => [
        ...(index === 0 ? [] : [', ']),
        makeElement('code', { text: call }),
      ]),
    ],
  });

interface Found {
  readonly faults: readonly Issue[];
  readonly form: Form;
  readonly json: NumberedText;
  readonly reading: JsonReading & { readonly ok: true };
  readonly places: Places;
}

/** Each fault at its field, in the list, and at its line of the JSON. */
function showFaults({ faults, form, json, reading, places }: Found): void {
  form.mark(faults);
  const text = json.field.value;
  json.mark(
    new Map(
      faults.map(({ path }) => [lineOf(text, reading.spanOf(path).from).line, 'bad'] as const),
    ),
  );
  places.faults.replaceChildren(
    ...faults.map((fault) => {
      const { from, to } = reading.spanOf(fault.path);
      const { line } = lineOf(text, from);
      const show = makeButton(
        `line ${line}`,
        () => {
          json.element.closest('details')?.setAttribute('open', '');
          json.select(from, to);
        },
        {
          class: 'place',
          attributes: { 'aria-label': `show ${pathText(fault.path)} at line ${line} of the JSON` },
        },
      );
      return faultElement(fault, [' ', show]);
    }),
  );
}

function showResult(shown: BlockResult, places: Places): void {
  const { answer, result, working, notes, cautions, draw } = shown;
  places.answer.textContent = keptTogether(answer);
  places.tables.show(async () => {
    const { resultElement } = await import('../page/result-view.js');
    return resultElement(result);
  });
  places.working.show(async () => {
    const { stepsElement } = await import('../page/working-view.js');
    return stepsElement(working);
  });
  const texts = [...notes, ...cautions.map(({ text }) => text)];
  places.notes.replaceChildren(...texts.map((text) => makeElement('p', { text })));
  if (draw === null) {
    places.drawing.replaceChildren();
    return;
  }
  const room = Math.max(places.drawing.clientWidth, NARROWEST);
  const width = Math.round(Math.min(WIDEST, room));
  void Promise.resolve(draw(width)).then((svg) => {
    if (places.answer.textContent === keptTogether(answer))
      places.drawing.replaceChildren(drawingElement(svg));
  });
}

function hideResult(places: Places, words: string): void {
  places.answer.textContent = words;
  places.tables.show(null);
  places.working.show(null);
  places.drawing.replaceChildren();
}
