import { entry, known } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import { textMark } from '../frame/text-label.js';
import { element, textElement } from '../svg/element.js';
import { line, polylines } from '../svg/shapes.js';
import { fitText } from '../svg/text-width.js';
import type { BandRow, ProfileFigures } from './profile-figures.js';
import type { Strip } from './profile-strips.js';

/** The figures at the stakes of a strip, row by row, and lines that lead to them. Internal. */
export function bandMarks(
  strip: Strip,
  {
    figures,
    bottom,
    column,
    style,
  }: {
    readonly figures: ProfileFigures;
    readonly bottom: number;
    readonly column: number;
    readonly style: DrawStyle;
  },
): {
  readonly leaders: string;
  readonly marks: readonly string[];
  readonly bottom: number;
} {
  const { size, small, margin, width, label } = style;
  const { columns, stakes } = strip;
  const marks: string[] = [];
  let y = bottom + 14;
  for (const { key, cells, isBetween } of figures.band) {
    const isId = key === 'row-stake';
    marks.push(line('leader', [margin, y], [width - margin, y]));
    y += small * 1.25;
    marks.push(
      textMark({
        text: fitText(label(key), small, width - 2 * margin),
        x: margin,
        y,
        size: small,
        style: 'faint row',
      }),
    );
    y += size * 1.25;
    marks.push(
      element(
        'g',
        { class: isId ? `strong ${key}` : key, 'font-size': size, 'text-anchor': 'middle' },
        rowTexts(strip, {
          cells,
          isBetween,
          y,
          fit: (cell) => (isId ? fitText(cell, size * 1.13, column - 8) : cell),
        }),
      ),
    );
    y += size * 0.5;
  }
  const leaders = polylines(
    'leader',
    stakes.map(({ station }, index) => [
      [strip.x(station), bottom - 16],
      [entry(columns, index), bottom + 14],
    ]),
  );
  return { leaders, marks, bottom: y };
}

/** The figures of a row, each below its stake or between two. */
function rowTexts(
  { columns, first }: Strip,
  {
    cells,
    isBetween,
    y,
    fit,
  }: Pick<BandRow, 'cells' | 'isBetween'> & {
    readonly y: number;
    readonly fit: (cell: string) => string;
  },
): string {
  let texts = '';
  columns.forEach((at, index) => {
    const next = columns[index + 1];
    if (isBetween && next === undefined) return;
    const x = isBetween ? (at + known(next, 'next column')) / 2 : at;
    texts += textElement('text', { x, y }, fit(entry(cells, first + index)));
  });
  return texts;
}
