import type { DrawStyle } from '../draw-options.js';
import { textMark } from '../frame/text-label.js';
import { line, polyline } from '../svg/shapes.js';
import { fitText } from '../svg/text-width.js';
import type { ProfileFigures } from './profile-figures.js';
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
  readonly leaders: readonly string[];
  readonly marks: readonly string[];
  readonly bottom: number;
} {
  const { size, small, margin, width, label } = style;
  const { columns, first, stakes } = strip;
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
    columns.forEach((at, index) => {
      const next = columns[index + 1];
      if (isBetween && next === undefined) return;
      const x = isBetween ? (at + (next ?? at)) / 2 : at;
      const cell = cells[first + index] ?? '';
      const text = isId ? fitText(cell, size * 1.13, column - 8) : cell;
      marks.push(
        textMark({ text, x, y, size, anchor: 'middle', style: isId ? `strong ${key}` : key }),
      );
    });
    y += size * 0.5;
  }
  const leaders = stakes.map(({ station }, index) =>
    polyline('leader', [
      [strip.x(station), bottom - 16],
      [columns[index] ?? 0, bottom + 14],
    ]),
  );
  return { leaders, marks, bottom: y };
}
