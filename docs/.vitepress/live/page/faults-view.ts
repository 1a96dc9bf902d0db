import { pathText, type Issue } from 'settline/errors';
import { makeElement } from './make-element.js';

/** A fault in words, with the path of its field and the code. */
export const faultElement = (
  { path, message, code }: Issue,
  more: readonly (Node | string)[] = [],
): HTMLElement =>
  makeElement('li', {
    children: [
      ...(path.length === 0 ? [] : [makeElement('code', { text: pathText(path) }), ': ']),
      message,
      ' ',
      makeElement('code', { class: 'code', text: code }),
      ...more,
    ],
  });
