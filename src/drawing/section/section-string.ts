import type { DrawStyle } from '../draw-options.js';
import { textMark } from '../frame/text-label.js';
import { line, polygon } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';
import type { SectionFigures } from './section-figures.js';
import type { SectionFrame } from './section-frame.js';

const HALF = 6;

/** The string and its stake; nothing where no string serves the pavement. Internal. */
export function stringMarks(
  figures: SectionFigures,
  {
    frame,
    name,
    style,
  }: { readonly frame: SectionFrame; readonly name: string; readonly style: DrawStyle },
): string[] {
  if (!figures.hasString) return [];
  const { small: size, label } = style;
  const x = frame.left + (style.isNarrow ? 10 : 24);
  const y = frame.y(0);
  const foot = Math.min(frame.y(Math.max(figures.old, 0)) + 34, frame.bottom);
  const head = y - 14;
  const text = { size, y: frame.top - 38, x: frame.left };
  const stake = fitText(label('stake'), size, 80);
  const from = frame.left + textWidth(stake, size) + 14;
  const string = fitText(
    label('string', { string: name }),
    size,
    style.width - style.margin - from,
  );
  return [
    polygon('stake', [
      [x - HALF, head],
      [x + HALF, head],
      [x + HALF, foot - 10],
      [x, foot],
      [x - HALF, foot - 10],
    ]),
    line('string', [x - HALF, y], [frame.right, y]),
    textMark({ text: stake, ...text }),
    textMark({ ...text, text: string, x: from, style: 'string-name' }),
  ];
}
