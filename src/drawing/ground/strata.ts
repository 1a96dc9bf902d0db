import { entry, lastOf } from '../../invariant.js';
import { columnHeads, depthRow, thicknessRow } from '../frame/column-row.js';
import { tick, dimensionLine } from '../frame/dimension.js';
import type { Picture } from '../frame/frame-drawing.js';
import { hatched, type Hatch } from '../frame/hatches.js';
import { scaleBar } from '../frame/scale.js';
import { spreadRows } from '../frame/spread-rows.js';
import { textMark } from '../frame/text-label.js';
import type { DrawStyle } from '../draw-options.js';
import { cornersOfBox, line, polyline } from '../svg/shapes.js';
import { fitText, textWidth } from '../svg/text-width.js';

/** A band of the ground, and what the column beside it says. Internal. */
export interface Stratum {
  readonly name: string;
  readonly hatch: Hatch;
  /** Below the surface [m]. */
  readonly top: number;
  readonly bottom: number;
  /** Thickness as printed; empty where there is none. */
  readonly figure: string;
}

/** A level across the ground. Internal. */
export interface Level {
  readonly name: string;
  /** Below the surface [m]. */
  readonly depth: number;
  readonly figure: string;
  /** Style of its line. */
  readonly line: string;
}

/** Bands of the ground with levels across them. Internal. */
export interface Strata {
  readonly strata: readonly Stratum[];
  readonly levels: readonly Level[];
  /** Where the picture ends [m]. */
  readonly lowest: number;
  /** True if the lowest band goes on below the picture. */
  readonly goesOn: boolean;
  /** A dimension left of the picture; null for none. */
  readonly reach: { readonly depth: number; readonly text: string } | null;
}

const SIZES = {
  wide: { reach: 30, table: 270, high: 300 },
  narrow: { reach: 24, table: 204, high: 260 },
} as const;
/** Height of a row of the column in parts of its type size. */
const ROW = 1.4;
const BESIDE = 22;

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly table: number;
  readonly pixelsPerMetre: number;
  readonly y: (depth: number) => number;
}

/** Draws bands of the ground to scale, with a column of their depths and thicknesses. Internal. */
export function strataPicture(of: Strata, top: number, style: DrawStyle): Picture {
  const frame = frameOf(of, top, style);
  const column = columnMarks(of, frame, style);
  const { left, right, bottom, pixelsPerMetre, y } = frame;
  const foot = Math.max(bottom, column.bottom) + style.small * 1.6;
  const bar = scaleBar(pixelsPerMetre, { at: [left, foot], most: style.width / 3 }, style);
  return {
    marks: [
      ...of.strata.map((one) => stratumMark(one, frame)),
      ...(of.goesOn ? [breakLine(frame)] : []),
      ...of.levels.map(({ depth, line: name }) => line(name, [left, y(depth)], [right, y(depth)])),
      ...reachMarks(of, frame, style),
      ...column.marks,
      ...bar,
    ],
    bottom: foot + style.small,
  };
}

function frameOf({ strata, levels, lowest }: Strata, top: number, style: DrawStyle): Frame {
  const { isNarrow, margin, width, size } = style;
  const sizes = SIZES[isNarrow ? 'narrow' : 'wide'];
  const rows = strata.length + levels.length + 1;
  const high = Math.max(sizes.high, rows * size * ROW);
  const head = top + 30;
  const table = width - margin - sizes.table;
  const pixelsPerMetre = high / lowest;
  return {
    left: margin + sizes.reach,
    right: table - BESIDE,
    top: head,
    bottom: head + high,
    table,
    pixelsPerMetre,
    y: (depth) => head + depth * pixelsPerMetre,
  };
}

const stratumMark = ({ hatch, top, bottom }: Stratum, { left, right, y }: Frame): string =>
  hatched(
    'area',
    cornersOfBox({ x: left, y: y(top), width: right - left, height: y(bottom) - y(top) }),
    hatch,
  );

/** Where the ground goes on. */
function breakLine({ left, right, bottom }: Frame): string {
  const middle = (left + right) / 2;
  return polyline('finish', [
    [left, bottom],
    [middle - 10, bottom],
    [middle - 4, bottom - 6],
    [middle + 4, bottom + 6],
    [middle + 10, bottom],
    [right, bottom],
  ]);
}

function reachMarks({ reach }: Strata, frame: Frame, { small: size }: DrawStyle): string[] {
  if (reach === null) return [];
  const { left, top, bottom, y } = frame;
  const x = left - 8;
  const shown = fitText(reach.text, size, bottom - top);
  const half = textWidth(shown, size) / 2;
  const end = y(reach.depth);
  const middle = Math.max(top + half, Math.min((top + end) / 2, bottom - half));
  return [
    ...dimensionLine([x, top], [x, end]),
    textMark({
      text: shown,
      x: x - 6,
      y: Math.round(middle),
      size,
      anchor: 'middle',
      isTurned: true,
    }),
  ];
}

interface Row {
  readonly isLevel: boolean;
  readonly depth: number;
  readonly figure: string;
  readonly name: string;
}

function columnMarks(of: Strata, frame: Frame, style: DrawStyle): Picture {
  const rows = rowsOf(of);
  const { size } = style;
  const spacing = size * ROW;
  const wishes = rows.map(({ depth }) => frame.y(depth));
  const places = spreadRows(wishes, { spacing, from: frame.top, to: frame.bottom });
  const room = Math.max(
    ...rows.map(({ isLevel, figure }) => (isLevel ? textWidth(figure, size, true) : 0)),
  );
  return {
    marks: [
      ...columnHeads(frame.table, frame.top - size * 1.1, style),
      ...rows.flatMap((row, index) => {
        const [wish, y] = [entry(wishes, index), entry(places, index)];
        const x = frame.right + 8;
        const place = { wish, y, x, table: frame.table, width: room };
        if (!row.isLevel) return thicknessRow(row, place, style);
        return [tick([x, wish]), ...depthRow(row, place, { kind: 'level', style })];
      }),
    ],
    bottom: lastOf(places) + spacing / 2,
  };
}

/** Levels and bands in turn, from the surface down; a level stands over the band that it is on top of. */
const rowsOf = ({ strata, levels }: Strata): Row[] =>
  [
    ...levels.map(({ depth, figure, name }): Row => ({ isLevel: true, depth, figure, name })),
    ...strata.map(({ name, figure, top, bottom }): Row => ({
      isLevel: false,
      depth: (top + bottom) / 2,
      figure,
      name,
    })),
  ].sort((a, b) => a.depth - b.depth);
