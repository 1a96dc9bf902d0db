import type { DrawStyle } from '../draw-options.js';
import { spreadRows } from '../frame/spread-rows.js';
import { textMark } from '../frame/text-label.js';
import { tick } from '../frame/dimension.js';
import { line, polyline } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { SectionFigures } from './section-figures.js';
import { ROW, type SectionFrame } from './section-frame.js';

interface Row {
  readonly kind: 'surface' | 'layer';
  readonly depth: number;
  readonly figure: string;
  readonly name: string;
}

/** The column beside a section: depths from the string down, and the thickness of each layer between. Internal. */
export function columnMarks(
  figures: SectionFigures,
  frame: SectionFrame,
  style: DrawStyle,
): { readonly marks: readonly string[]; readonly bottom: number } {
  const rows = rowsOf(figures, style);
  const spacing = style.size * ROW;
  const wishes = rows.map(({ depth }) => frame.y(depth));
  const places = spreadRows(wishes, { spacing, from: frame.top, to: frame.bottom });
  const x = frame.right + 11;
  const surfaces = rows.flatMap(({ kind }, index) =>
    kind === 'surface' ? [wishes[index] ?? 0] : [],
  );
  const width = Math.max(
    ...rows.map(({ kind, figure }) =>
      kind === 'surface' ? textWidth(figure, style.size, true) : 0,
    ),
  );
  return {
    marks: [
      ...headMarks(frame, style),
      line('dimension', [x, surfaces[0] ?? 0], [x, surfaces.at(-1) ?? 0]),
      ...surfaces.map((y) => tick([x, y])),
      ...rows.flatMap((row, index) =>
        rowMarks(row, { wish: wishes[index] ?? 0, y: places[index] ?? 0, x, width, frame, style }),
      ),
    ],
    bottom: (places.at(-1) ?? frame.bottom) + spacing,
  };
}

/** Surfaces and layers in turn, from the string down. */
function rowsOf(
  { hasString, surfaces, layers }: SectionFigures,
  { label, units }: DrawStyle,
): Row[] {
  const string: Row[] = hasString
    ? [{ kind: 'surface', depth: 0, figure: units.depth(NO_LENGTH), name: label('string-level') }]
    : [];
  return [
    ...string,
    ...surfaces.map(({ kind, depth, figure, name }): Row => ({
      kind: 'surface',
      depth,
      figure,
      name: kind === 'finish' ? label('finish-row') : name,
    })),
    ...layers.map(({ name, figure, top, bottom }): Row => ({
      kind: 'layer',
      depth: (top + bottom) / 2,
      figure,
      name,
    })),
  ].sort((a, b) => a.depth - b.depth);
}

function headMarks({ table, top }: SectionFrame, style: DrawStyle): string[] {
  const { small: size, label, width, margin } = style;
  const y = top - size * 1.3;
  const half = (width - margin - table) / 2 - 6;
  return [
    textMark({
      text: fitText(label('depth'), size, half),
      x: table,
      y,
      size,
      style: 'faint',
    }),
    textMark({
      text: fitText(label('thickness'), size, half),
      x: width - margin,
      y,
      size,
      anchor: 'end',
      style: 'faint',
    }),
  ];
}

interface Place {
  readonly wish: number;
  readonly y: number;
  readonly x: number;
  readonly width: number;
  readonly frame: SectionFrame;
  readonly style: DrawStyle;
}

const GAP = 9;

function rowMarks(
  { kind, figure, name }: Row,
  { wish, y, x, width, frame, style }: Place,
): string[] {
  const { size, small } = style;
  const right = style.width - style.margin;
  const base = y + size * 0.35;
  if (kind === 'surface') {
    const from = frame.table + width + GAP;
    return [
      polyline('leader', [
        [x, wish],
        [frame.table - 4, y],
      ]),
      textMark({
        text: figure,
        x: frame.table + width,
        y: base,
        size,
        anchor: 'end',
        style: 'strong depth',
      }),
      textMark({
        text: fitText(name, small, right - from),
        x: from,
        y: base,
        size: small,
        style: 'surface',
      }),
    ];
  }
  const from = frame.table + GAP;
  const room = right - from - textWidth(figure, size, true) - GAP;
  return [
    textMark({ text: fitText(name, small, room), x: from, y: base, size: small, style: 'layer' }),
    textMark({ text: figure, x: right, y: base, size, anchor: 'end', style: 'strong thickness' }),
  ];
}
