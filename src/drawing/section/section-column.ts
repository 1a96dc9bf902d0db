import { entry, lastOf } from '../../invariant.js';
import type { DrawStyle } from '../draw-options.js';
import { spreadRows } from '../frame/spread-rows.js';
import { columnHeads, depthRow, thicknessRow } from '../frame/column-row.js';
import { tick } from '../frame/dimension.js';
import { line } from '../svg/shapes.js';
import { textWidth } from '../svg/text-width.js';
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
    kind === 'surface' ? [entry(wishes, index)] : [],
  );
  const width = Math.max(
    ...rows.map(({ kind, figure }) =>
      kind === 'surface' ? textWidth(figure, style.size, true) : 0,
    ),
  );
  return {
    marks: [
      ...columnHeads(frame.table, frame.top - style.small * 1.3, style),
      line('dimension', [x, entry(surfaces, 0)], [x, lastOf(surfaces)]),
      ...surfaces.map((y) => tick([x, y])),
      ...rows.flatMap((row, index) => {
        const [wish, y] = [entry(wishes, index), entry(places, index)];
        const place = { wish, y, x, table: frame.table, width };
        return row.kind === 'surface'
          ? depthRow(row, place, { kind: 'surface', style })
          : thicknessRow(row, place, style);
      }),
    ],
    bottom: lastOf(places) + spacing,
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
