import { drawDig, drawPlan, drawProfile, drawSection } from 'settline/drawing';
import { isSettlineError } from 'settline/errors';
import type { JobPlan } from 'settline/job';
import type { UnitSystem } from 'settline/units';
import { drawingElement, makeElement } from '../page/make-element.js';

const WIDE = 600;

/** A drawing, or in its place the library's words where it refuses to draw. */
function drawn(name: string, draw: () => string): HTMLElement {
  try {
    return makeElement('figure', {
      children: [makeElement('figcaption', { text: name }), drawingElement(draw())],
    });
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    return makeElement('p', { class: 'fault', text: `${name}: ${error.message}` });
  }
}

/** All drawings of a plan, for the room there is. */
export function drawingsElement(plan: JobPlan, system: UnitSystem, room: number): HTMLElement {
  const options = { system, theme: 'screen', ...(room < WIDE ? { narrow: true } : {}) } as const;
  const parts = [
    drawn('Site from above', () => drawPlan(plan, options)),
    ...plan.pavements.flatMap(({ id, name }) => [
      drawn(`${name}: section`, () => drawSection(plan, { ...options, pavement: id })),
      drawn(`${name}: depths of the dig`, () => drawDig(plan, { ...options, pavement: id })),
    ]),
    ...plan.stringLines.map(({ id }) =>
      drawn(`String ${id}: profile`, () => drawProfile(plan, { ...options, string: id })),
    ),
  ];
  return makeElement('div', { children: parts });
}
