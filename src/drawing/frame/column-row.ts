import type { DrawStyle } from '../draw-options.js';
import { polyline } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';
import { textMark } from './text-label.js';

/** One row of the column beside a picture: a depth, or the thickness between two depths. Internal. */
export interface ColumnRow {
  readonly figure: string;
  readonly name: string;
}

/** Where a row of a column goes. Internal. */
export interface ColumnPlace {
  /** Height of what it is about, at the end of its leader. */
  readonly wish: number;
  /** Height of the row. */
  readonly y: number;
  /** Where its leader begins. */
  readonly x: number;
  /** Left side of the column. */
  readonly table: number;
  /** Width of the longest depth. */
  readonly width: number;
}

const GAP = 9;
const baseOf = (y: number, { size }: DrawStyle): number => y + size * 0.35;
const rightOf = ({ width, margin }: DrawStyle): number => width - margin;

/** What the two figures of a column are. Internal. */
export function columnHeads(table: number, y: number, style: DrawStyle): string[] {
  const { small: size, label } = style;
  const right = rightOf(style);
  const head = (key: 'depth' | 'thickness') => ({
    text: fitText(label(key), size, (right - table) / 2 - 6),
    y,
    size,
    style: 'faint',
  });
  return [
    textMark({ ...head('depth'), x: table }),
    textMark({ ...head('thickness'), x: right, anchor: 'end' }),
  ];
}

/** A depth with its leader and its name; `kind` is the style of the name. Internal. */
export function depthRow(
  { figure, name }: ColumnRow,
  { wish, y, x, table, width }: ColumnPlace,
  { kind, style }: { readonly kind: 'surface' | 'level'; readonly style: DrawStyle },
): string[] {
  const { size, small } = style;
  const from = table + width + GAP;
  const base = baseOf(y, style);
  const shown = fitText(name, small, rightOf(style) - from);
  return [
    polyline('leader', [
      [x, wish],
      [table - 4, y],
    ]),
    textMark({
      text: figure,
      x: table + width,
      y: base,
      size,
      anchor: 'end',
      style: 'strong depth',
    }),
    textMark({ text: shown, x: from, y: base, size: small, style: kind }),
  ];
}

/** A thickness and what has it. Without a figure the name stands alone. Internal. */
export function thicknessRow(
  { figure, name }: ColumnRow,
  { y, table }: ColumnPlace,
  style: DrawStyle,
): string[] {
  const { size, small } = style;
  const [from, right, base] = [table + GAP, rightOf(style), baseOf(y, style)];
  const room = right - from - textWidth(figure, size, true) - GAP;
  const shown = fitText(name, small, room);
  const thickness = { text: figure, x: right, y: base, size, style: 'strong thickness' } as const;
  return [
    textMark({ text: shown, x: from, y: base, size: small, style: 'layer' }),
    ...(figure === '' ? [] : [textMark({ ...thickness, anchor: 'end' })]),
  ];
}
