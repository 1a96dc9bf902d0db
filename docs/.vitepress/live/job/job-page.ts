import type { JobPlan } from 'settline/job';
import { copyLinkButton } from '../page/copy-link.js';
import { readJson } from '../page/json-text.js';
import { numberedText } from '../page/line-numbers.js';
import { makeButton, makeElement } from '../page/make-element.js';
import { keepStateInHash, linkWithState } from '../page/state-in-hash.js';
import { isSiteName, SITES } from './example-sites.js';
import { makeFolds } from './folds.js';
import { showFaults } from './json-faults.js';
import { keepJob, LINK_NAME, type KeptJob } from './kept-job.js';
import { packText } from './packed-text.js';
import { makeReadings } from './readings-view.js';
import type { Library } from './library.js';

const PAUSE = 350;

/** A labelled choice. */
function choiceOf(label: string, choices: readonly (readonly [string, string])[]) {
  const id = `choice-${label.toLowerCase().replaceAll(' ', '-')}`;
  const control = makeElement('select', {
    attributes: { id },
    children: choices.map(([value, text]) =>
      makeElement('option', { text, attributes: { value } }),
    ),
  });
  const element = makeElement('div', {
    class: 'field',
    children: [makeElement('label', { text: label, attributes: { for: id } }), control],
  });
  return { element, control };
}

const barElement = (link: () => string): HTMLElement =>
  makeElement('div', {
    class: 'bar',
    children: [
      makeButton('Print', () => {
        window.print();
      }),
      copyLinkButton(link),
      makeElement('span', {
        class: 'hint',
        text: 'Nothing leaves this page. It is kept on this device.',
      }),
    ],
  });

/** Makes the job page: everything is worked out in the page, and nothing leaves it. */
export function makeJobPage(root: ShadowRoot, library: Library, start: KeptJob): void {
  const site = choiceOf(
    'Example site',
    Object.entries(SITES).map(([value, { name }]) => [value, name] as const),
  );
  const system = choiceOf('Units', [
    ['us', 'feet and inches'],
    ['metric', 'metric'],
  ]);
  const editor = numberedText('Job file', { least: 12, most: 28 });
  const said = makeElement('p', { class: 'answer', attributes: { role: 'status' } });
  const faults = makeElement('ul', { class: 'faults', attributes: { 'aria-label': 'faults' } });
  const readings = makeReadings(library, () => keep());
  const folds = makeFolds(root.host, library, readings);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let packed = '';

  const unit = (): 'us' | 'metric' => (system.control.value === 'metric' ? 'metric' : 'us');

  function keep(): void {
    const text = editor.field.value;
    keepJob({ text, readings: readings.text(), system: unit() });
  }

  function plan(): void {
    const reading = readJson(editor.field.value);
    const outcome = reading.ok ? library.planOf(reading.value) : undefined;
    const found = outcome?.ok === false ? outcome.errors : [];
    showFaults(faults, editor, reading, found);
    said.textContent = planned(outcome?.ok === true ? outcome.value : undefined, found.length);
    if (outcome?.ok === true) folds.show(outcome.value, unit());
    else folds.hide();
    keep();
    void packText(editor.field.value).then((letters) => {
      packed = letters;
    });
  }

  const take = (text: string): void => {
    editor.write(text);
    plan();
  };
  editor.field.addEventListener('input', () => {
    clearTimeout(timer);
    keep();
    keepStateInHash(LINK_NAME, undefined);
    timer = setTimeout(plan, PAUSE);
  });
  system.control.addEventListener('change', plan);
  const use = makeButton('Use this site', () => {
    const name = site.control.value;
    if (!isSiteName(name)) return;
    void SITES[name].load().then(({ default: text }) => {
      keepStateInHash(LINK_NAME, undefined);
      readings.write('');
      take(text);
    });
  });
  const bar = barElement(() => linkWithState(LINK_NAME, packed));
  root.replaceChildren(
    makeElement('section', {
      class: 'block',
      attributes: { 'aria-label': 'Job' },
      children: [
        makeElement('div', {
          class: 'line no-print',
          children: [site.element, use, system.element],
        }),
        makeElement('div', { class: 'no-print', children: [editor.element] }),
        said,
        faults,
        bar,
        folds.element,
      ],
    }),
  );
  system.control.value = start.system;
  readings.write(start.readings);
  take(start.text);
}

function planned(plan: JobPlan | undefined, faults: number): string {
  if (plan === undefined) {
    if (faults === 0) return 'The job file is not JSON.';
    return faults === 1 ? 'The job file has one fault.' : `The job file has ${faults} faults.`;
  }
  const { warnings } = plan;
  if (warnings.length === 0) return `${plan.name}: planned.`;
  const count = warnings.length === 1 ? 'one point' : `${warnings.length} points`;
  return `${plan.name}: planned, with ${count} to check before you dig.`;
}
