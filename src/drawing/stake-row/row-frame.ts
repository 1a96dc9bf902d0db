import type { DrawStyle } from '../draw-options.js';
import { roundFactor } from '../frame/scale.js';
import type { Point } from '../svg/shapes.js';
import type { StakeRow } from './stake-row.js';

/** Where a row of stakes stands in the picture. Internal. */
export interface RowFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly line: number;
  readonly pixelsPerMetre: number;
  /** Offsets over the scale along the row. */
  readonly factor: number;
  /** A station along the row and an offset to the left of it [m]. */
  readonly to: (station: number, offset: number) => Point;
}

/** The farthest stake or the tolerance is drawn this far off the line, and half as much more. */
const LEAST_OFF = 26;
const GUTTER = 40;
const CLEAR = 42;

/** Lays out a row from a height down: along the picture, left of the row upward. Internal. */
export function rowFrame(
  { stakes, tolerance, moves }: StakeRow,
  top: number,
  style: DrawStyle,
): RowFrame {
  const stations = stakes.map(({ station }) => station.toNumber('m'));
  const first = Math.min(...stations);
  const long = Math.max(...stations) - first;
  const offs = stakes.map(({ offset }) => Math.abs(offset.toNumber('m')));
  const moved = moves.map(({ distance }) => distance.toNumber('m'));
  const most = Math.max(...offs, ...moved, tolerance?.toNumber('m') ?? 0);
  const left = style.margin + GUTTER;
  const right = style.width - style.margin - GUTTER;
  const pixelsPerMetre = long > 0 ? (right - left) / long : 1;
  const least = LEAST_OFF / (most * pixelsPerMetre);
  const factor = most === 0 || least <= 1 ? 1 : roundFactor(least, 'up');
  const reach = Math.max(...offs, tolerance?.toNumber('m') ?? 0) * pixelsPerMetre * factor;
  const line = top + CLEAR + reach;
  return {
    left,
    right,
    top,
    bottom: line + reach + CLEAR,
    line,
    pixelsPerMetre,
    factor,
    to: (station, offset) => [
      left + (station - first) * pixelsPerMetre,
      line - offset * pixelsPerMetre * factor,
    ],
  };
}
