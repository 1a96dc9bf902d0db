import type { JobPlan } from 'settline/job';
import type { UnitSystem } from 'settline/units';
import { readJson } from '../page/json-text.js';
import { numberedText } from '../page/line-numbers.js';
import { makeElement } from '../page/make-element.js';
import { sheetElement } from './folds.js';
import { showFaults } from './json-faults.js';
import type { Library } from './library.js';

/** Readings of the work as built, and what the library makes of them. */
export interface Readings {
  /** Shows the readings against a plan. */
  readonly show: (plan: JobPlan, system: UnitSystem) => HTMLElement;
  readonly text: () => string;
  readonly write: (text: string) => void;
}

const PAUSE = 350;

/** Makes the readings; `changed` is called after each edit. */
export function makeReadings(library: Library, changed: () => void): Readings {
  const editor = numberedText('Readings', { least: 8, most: 24 });
  const faults = makeElement('ul', {
    class: 'faults',
    attributes: { 'aria-label': 'faults of the readings' },
  });
  const sheet = makeElement('div');
  const said = makeElement('p', { attributes: { role: 'status' } });
  const lead = makeElement('p', {
    class: 'no-print',
    text: 'It starts with the subgrade as planned at the stakes of the first string. Write what you measured.',
  });
  const element = makeElement('div', {
    children: [
      lead,
      makeElement('div', { class: 'no-print', children: [editor.element] }),
      said,
      faults,
      sheet,
    ],
  });
  let against: { readonly plan: JobPlan; readonly system: UnitSystem } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function check(): void {
    if (against === undefined) return;
    const { plan, system } = against;
    const reading = readJson(editor.field.value);
    const outcome = reading.ok ? library.checkOf(plan, reading.value, system) : undefined;
    showFaults(faults, editor, reading, outcome?.ok === false ? outcome.errors : []);
    const text = outcome?.ok === true ? outcome.value : undefined;
    said.textContent =
      text === undefined ? 'The readings have faults.' : 'The readings are checked.';
    sheet.replaceChildren(
      ...(text === undefined ? [] : [sheetElement('Check of the readings', text)]),
    );
    changed();
  }

  editor.field.addEventListener('input', () => {
    changed();
    clearTimeout(timer);
    timer = setTimeout(check, PAUSE);
  });
  return {
    show: (plan, system) => {
      against = { plan, system };
      if (editor.field.value === '') editor.write(library.readingsStart(plan, system));
      check();
      return element;
    },
    text: () => editor.field.value,
    write: (text) => {
      editor.write(text);
    },
  };
}
