import { makeElement } from './make-element.js';

/** A plain field for text of many lines, with a number beside each. */
export interface NumberedText {
  readonly element: HTMLElement;
  readonly field: HTMLTextAreaElement;
  /** Marks lines, counted from 1, with a letter each. */
  readonly mark: (marks: ReadonlyMap<number, LineMark>) => void;
  /** Puts other text in. */
  readonly write: (text: string) => void;
  /** Selects a part and scrolls to it. */
  readonly select: (from: number, to: number) => void;
}

/** How a line is marked. */
export type LineMark = 'good' | 'bad';

const MARKS: Readonly<Record<LineMark, string>> = { good: '=', bad: '!' };

/** Makes the field. Tab moves on, as everywhere in a page. */
export function numberedText(label: string, rows: { least: number; most: number }): NumberedText {
  const numbers = makeElement('div', { class: 'numbers', attributes: { 'aria-hidden': 'true' } });
  const field = makeElement('textarea', {
    attributes: {
      'aria-label': label,
      spellcheck: 'false',
      autocapitalize: 'off',
      autocomplete: 'off',
      wrap: 'off',
    },
  });
  let marks: ReadonlyMap<number, LineMark> = new Map();
  const draw = (): void => {
    const count = field.value.split('\n').length;
    field.rows = Math.min(rows.most, Math.max(rows.least, count));
    numbers.replaceChildren(
      ...Array.from({ length: count }, (_, index) => {
        const mark = marks.get(index + 1);
        const text = `${mark === undefined ? '' : `${MARKS[mark]} `}${index + 1}`;
        return makeElement('span', { text, class: mark ?? '' });
      }),
    );
    numbers.scrollTop = field.scrollTop;
  };
  field.addEventListener('input', draw);
  field.addEventListener('scroll', () => {
    numbers.scrollTop = field.scrollTop;
  });
  return {
    element: makeElement('div', { class: 'numbered', children: [numbers, field] }),
    field,
    mark: (given) => {
      marks = given;
      draw();
    },
    write: (text) => {
      field.value = text;
      draw();
    },
    select: (from, to) => {
      field.focus();
      field.setSelectionRange(from, to);
      const line = field.value.slice(0, from).split('\n').length;
      const height = field.scrollHeight / Math.max(1, field.value.split('\n').length);
      field.scrollTop = Math.max(0, (line - 3) * height);
    },
  };
}
