import type { DrawStyle } from '../draw-options.js';
import { dimensionLine } from '../frame/dimension.js';
import { scaleBar } from '../frame/scale.js';
import { textMark } from '../frame/text-label.js';
import type { Picture } from '../frame/frame-drawing.js';
import { line } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';
import type { DigFigure, SectionFigures } from './section-figures.js';
import { turnedColumns, type SectionFrame } from './section-frame.js';

/** Dimensions of the dig left of the picture, reading upward. Internal. */
export function turnedDimensions(
  figures: SectionFigures,
  frame: SectionFrame,
  style: DrawStyle,
): string[] {
  const { label } = style;
  const { dig, stripped, isFill } = figures;
  const count = turnedColumns(figures, style);
  const pitch = (frame.left - style.margin) / count;
  const all = [
    { of: dig, text: label(isFill ? 'fill' : 'dig', { depth: dig.figure }) },
    ...(stripped === null || count === 1
      ? []
      : [
          { of: stripped.paving, text: `${label('old-paving')} ${stripped.paving.figure}` },
          {
            of: stripped.soil,
            text: `${label(stripped.isFill ? 'fill-area' : 'soil')} ${stripped.soil.figure}`,
          },
        ]),
  ];
  return all.flatMap(({ of, text }, index) =>
    of.isZero
      ? []
      : turnedDimension(of, text, { x: style.margin + (index + 1) * pitch - 5, frame, style }),
  );
}

function turnedDimension(
  { from, to }: DigFigure,
  text: string,
  {
    x,
    frame,
    style,
  }: { readonly x: number; readonly frame: SectionFrame; readonly style: DrawStyle },
): string[] {
  const { small: size } = style;
  const [a, b] = [frame.y(from), frame.y(to)];
  const shown = fitText(text, size, frame.bottom - frame.top);
  const half = textWidth(shown, size) / 2;
  const middle = Math.max(frame.top + half, Math.min((a + b) / 2, frame.bottom - half));
  return [
    line('leader', [x, a], [frame.left, a]),
    line('leader', [x, b], [frame.left, b]),
    ...dimensionLine([x, a], [x, b]),
    textMark({
      text: shown,
      x: x - 5,
      y: middle,
      size,
      anchor: 'middle',
      isTurned: true,
      style: 'figure',
    }),
  ];
}

/** What goes past the paving, below the picture, and the scale. Internal. */
export function levelDimensions(
  { reaches, subgrade }: SectionFigures,
  {
    frame,
    top,
    style,
  }: { readonly frame: SectionFrame; readonly top: number; readonly style: DrawStyle },
): Picture {
  const { small, size, label, units } = style;
  const pitch = size * 1.7;
  const x = frame.edge + 10;
  const room = style.width - style.margin - x;
  const marks = reaches.flatMap(({ key, reach, figure }, index) => {
    const y = top + (index + 0.6) * pitch;
    const value = `${figure} ${units.depthUnit}`;
    const name = fitText(label(key), small, room - textWidth(value, size, true) - 8);
    return [
      line('leader', [frame.x(reach), frame.y(subgrade)], [frame.x(reach), y]),
      ...dimensionLine([frame.x(reach), y], [frame.edge, y]),
      textMark({ text: value, x, y: y + size * 0.35, size, style: 'strong reach' }),
      textMark({
        text: name,
        x: x + textWidth(value, size, true) + 8,
        y: y + size * 0.35,
        size: small,
      }),
    ];
  });
  const foot = top + reaches.length * pitch;
  const down =
    reaches.length === 0
      ? []
      : [line('leader', [frame.edge, frame.y(subgrade)], [frame.edge, foot])];
  const bar = scaleBar(
    frame.pixelsPerMetre,
    {
      at: [frame.left, foot + pitch * 0.6],
      most: 120,
      name: (text) => label('scale-across', { bar: text }),
    },
    style,
  );
  return { marks: [...down, ...marks, ...bar], bottom: foot + pitch * 1.2 };
}
