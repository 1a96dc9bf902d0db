import { attempt, pathText } from 'settline/errors';
import { explain, type Explanation, type JobPlan } from 'settline/job';
import { inWords } from '../page/both-systems.js';
import { makeElement } from '../page/make-element.js';
import { sourceInWords, stepsElement } from '../page/working-view.js';
import type { Figure, PlanPart } from './plan-parts.js';

/**
 * Where a figure of a plan comes from: its step, and what went into that, as far as a reader opens it.
 * Where no step gives the figure, all steps about its part.
 */
export function whyElement(plan: JobPlan, part: PlanPart, { path }: Figure): HTMLElement {
  const found = attempt(() => explain(plan, path));
  const content = found.ok ? [originElement(found.value)] : partElements(plan, part);
  return makeElement('div', { class: 'why', children: content });
}

function partElements({ working }: JobPlan, { name, subject }: PlanPart): HTMLElement[] {
  const own = working.filter((step) => step.subject === subject);
  const words = `No one step gives this figure alone. The working of ${name}:`;
  return [makeElement('p', { text: words }), stepsElement(own)];
}

/** The words for an origin that has no step of its own. */
function endInWords(origin: Exclude<Explanation, { origin: 'step' }>): string {
  if (origin.origin === 'job') return `from the job file: ${pathText(origin.path)}`;
  if (origin.origin === 'published') return `published: ${sourceInWords(origin.source)}`;
  return 'stated by the step';
}

function originElement(origin: Explanation): HTMLElement {
  const own = `${inWords(origin.value)}, ${origin.name}`;
  if (origin.origin !== 'step') {
    return makeElement('p', { text: `${own}: ${endInWords(origin)}` });
  }
  const known = origin.from.filter((one) => one.origin !== 'stated');
  return makeElement('div', {
    children: [stepsElement([origin.step]), ...known.map(inputElement)],
  });
}

/** One thing that went into a step; one that has a step of its own opens to show it. */
function inputElement(part: Explanation): HTMLElement {
  if (part.origin !== 'step') return originElement(part);
  const summary = makeElement('summary', { text: `${inWords(part.value)}, ${part.name}` });
  const element = makeElement('details', { children: [summary] });
  const open = (): void => {
    element.append(originElement(part));
  };
  element.addEventListener('toggle', open, { once: true });
  return element;
}
