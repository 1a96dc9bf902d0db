import type { JobPlan } from 'settline/job';
import type { UnitSystem } from 'settline/units';
import { makeElement } from '../page/make-element.js';
import type { Readings } from './readings-view.js';
import type { Library } from './library.js';

/** The parts of what was planned, each made when it is opened. */
export interface Folds {
  readonly element: HTMLElement;
  readonly show: (plan: JobPlan, system: UnitSystem) => void;
  readonly hide: () => void;
}

interface Fold {
  readonly element: HTMLDetailsElement;
  readonly draw: (plan: JobPlan, system: UnitSystem) => void;
}

type Make = (plan: JobPlan, system: UnitSystem) => HTMLElement;

function makeFold(title: string, make: Make, isOpen = false): Fold {
  const place = makeElement('div');
  const element = makeElement('details', {
    attributes: { open: isOpen },
    children: [makeElement('summary', { text: title }), place],
  });
  let wanted: (() => HTMLElement) | undefined;
  const fill = (): void => {
    if (!element.open || wanted === undefined) return;
    place.replaceChildren(wanted());
    wanted = undefined;
  };
  element.addEventListener('toggle', fill);
  return {
    element,
    draw: (plan, system) => {
      wanted = () => make(plan, system);
      fill();
    },
  };
}

/** Text for print and screen, as the library writes it. */
export const sheetElement = (label: string, text: string): HTMLElement =>
  makeElement('pre', {
    class: 'sheet',
    text,
    attributes: { tabindex: 0, role: 'region', 'aria-label': label },
  });

/** Makes the parts below the job file. */
export function makeFolds(host: Element, library: Library, readings: Readings): Folds {
  const folds = [
    makeFold('Sheet', (plan, system) => sheetElement('Sheet', library.sheetOf(plan, system)), true),
    makeFold('Drawings', (plan, system) =>
      library.drawingsElement(plan, system, host.clientWidth - DRAWING_MARGIN),
    ),
    makeFold('Order list', library.orderElement),
    makeFold('Figures and their working', (plan) => library.figuresElement(plan)),
    makeFold('Readings as built', (plan, system) => readings.show(plan, system)),
  ];
  const element = makeElement('div', { children: folds.map((fold) => fold.element) });
  return {
    element,
    show: (plan, system) => {
      element.hidden = false;
      for (const fold of folds) fold.draw(plan, system);
    },
    hide: () => {
      element.hidden = true;
    },
  };
}

/** Padding and border of the frame. */
const DRAWING_MARGIN = 40;
