import type { JobPlan } from 'settline/job';
import { both } from '../page/both-systems.js';
import { makeButton, makeElement } from '../page/make-element.js';
import { whyElement } from './origin-view.js';
import { partsOf, type Figure, type PlanPart } from './plan-parts.js';

/** Every figure of a plan, part by part; a press on one shows its working below it. */
export function figuresElement(plan: JobPlan): HTMLElement {
  const parts = partsOf(plan);
  const list = makeElement('ul', { class: 'figures' });
  const choice = makeElement('select', {
    attributes: { id: 'part' },
    children: parts.map(({ name }, index) =>
      makeElement('option', { text: name, attributes: { value: index } }),
    ),
  });
  const show = (): void => {
    const part = parts[Number(choice.value)];
    if (part === undefined) return;
    list.replaceChildren(...part.figures.map((figure) => figureElement(plan, part, figure)));
  };
  choice.addEventListener('change', show);
  show();
  const label = makeElement('label', { text: 'Part of the job', attributes: { for: 'part' } });
  return makeElement('div', {
    children: [makeElement('div', { class: 'field', children: [label, choice] }), list],
  });
}

function figureElement(plan: JobPlan, part: PlanPart, figure: Figure): HTMLElement {
  const entry = makeElement('li');
  const button = makeButton(
    both(figure.value),
    () => {
      const isOpen = button.getAttribute('aria-expanded') === 'true';
      button.setAttribute('aria-expanded', String(!isOpen));
      entry.querySelector('.why')?.remove();
      if (!isOpen) entry.append(whyElement(plan, part, figure));
    },
    { class: 'figure', attributes: { 'aria-expanded': 'false' } },
  );
  entry.append(makeElement('span', { text: `${figure.name} ` }), button);
  return entry;
}
