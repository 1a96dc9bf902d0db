import { makeElement } from '../page/make-element.js';

/** A part that folds away, and is made when it is open. */
export interface LazyFold {
  readonly element: HTMLElement;
  /** What it shows from now on; null for nothing. */
  readonly show: (make: (() => Promise<Node>) | null) => void;
}

/** Makes a part that loads what it shows once a reader opens it. */
export function lazyFold(title: string, isOpen: boolean): LazyFold {
  const place = makeElement('div');
  const element = makeElement('details', {
    attributes: { open: isOpen },
    children: [makeElement('summary', { text: title }), place],
  });
  let wanted: (() => Promise<Node>) | null = null;
  const fill = (): void => {
    if (!element.open || wanted === null) return;
    const make = wanted;
    void make().then((content) => {
      if (wanted === make) place.replaceChildren(content);
    });
  };
  element.addEventListener('toggle', fill);
  return {
    element,
    show: (make) => {
      wanted = make;
      if (make === null) place.replaceChildren();
      else fill();
    },
  };
}
