import { SOURCES } from 'settline/sources';
import type { Step } from 'settline';
import { inWords } from './both-systems.js';
import { formulaElement } from './formula-view.js';
import { makeElement } from './make-element.js';

const STATUS = {
  read: 'read in this publication',
  memory: 'from memory: confirm it before use',
  'common-practice': 'common practice, no publication',
  derived: 'geometry or arithmetic',
} as const;

/** Title, section and status of a source, in words. */
export function sourceInWords(id: Step['source']): string {
  const { title, section, status } = SOURCES[id];
  if (status === 'derived') return STATUS.derived;
  return [title, section, STATUS[status]].filter((part) => part !== '').join('; ');
}

/** The formula of a step, or what it does in words. */
const ruleElement = (step: Step): HTMLElement =>
  step.kind === 'formula'
    ? makeElement('div', { class: 'formula', children: [formulaElement(step.formula)] })
    : makeElement('p', {
        children: [makeElement('code', { text: step.procedure }), `: ${step.method}`],
      });

/** One step: title, formula, what was put in, result, source. */
export function stepElement(step: Step): HTMLElement {
  const { title, given, result, source } = step;
  const inputs = given.map(({ symbol, name, value }) =>
    makeElement('li', {
      children: [makeElement('var', { text: symbol }), ` = ${inWords(value)}, ${name}`],
    }),
  );
  return makeElement('li', {
    class: 'step',
    children: [
      makeElement('strong', { text: title }),
      ruleElement(step),
      makeElement('ul', { children: inputs }),
      makeElement('p', {
        class: 'result',
        children: [
          makeElement('var', { text: result.symbol }),
          ` = ${inWords(result.value)}, ${result.name}`,
        ],
      }),
      makeElement('p', { class: 'source', text: `Source: ${sourceInWords(source)}` }),
    ],
  });
}

/** The steps as a list. */
export const stepsElement = (steps: readonly Step[]): HTMLElement =>
  makeElement('ol', { class: 'steps', children: steps.map(stepElement) });
