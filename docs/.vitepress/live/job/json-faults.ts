import { pathText, type Issue } from 'settline/errors';
import { faultElement } from '../page/faults-view.js';
import { lineOf, type JsonReading } from '../page/json-text.js';
import type { NumberedText } from '../page/line-numbers.js';
import { makeButton, makeElement } from '../page/make-element.js';

/** Shows the faults of a text of JSON in a list and at their lines. */
export function showFaults(
  list: HTMLElement,
  editor: NumberedText,
  reading: JsonReading,
  faults: readonly Issue[],
): void {
  const text = editor.field.value;
  if (!reading.ok) {
    const { line, column } = lineOf(text, reading.at.from);
    editor.mark(new Map([[line, 'bad']]));
    const show = placeButton(editor, reading.at, `line ${line}`, `show line ${line}`);
    const words = `line ${line}, character ${column}: ${reading.message} `;
    list.replaceChildren(makeElement('li', { children: [words, show] }));
    return;
  }
  const placed = faults.map((fault) => {
    const span = reading.spanOf(fault.path);
    return { fault, span, line: lineOf(text, span.from).line };
  });
  editor.mark(new Map(placed.map(({ line }) => [line, 'bad'] as const)));
  list.replaceChildren(
    ...placed.map(({ fault, span, line }) => {
      const name = `show ${pathText(fault.path)} at line ${line}`;
      return faultElement(fault, [' ', placeButton(editor, span, `line ${line}`, name)]);
    }),
  );
}

const placeButton = (
  editor: NumberedText,
  { from, to }: { readonly from: number; readonly to: number },
  words: string,
  name: string,
): HTMLElement =>
  makeButton(words, () => editor.select(from, to), {
    class: 'place',
    attributes: { 'aria-label': name },
  });
