import { chordsOf } from '../../../outline/chords.js';
import type { Outline } from '../../../outline/ring.js';
import { roughNumber } from '../../../units/ratio.js';

/** Bounding box of an outline, in metres. Internal. */
export interface Box {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** Arcs reach past their chords by less than this share of the box. */
const MARGIN = 1e-3;

/** Bounding box of an outline, slightly too large. Internal. */
export function boxOf(outline: Outline): Box {
  const { origin } = outline;
  const [x0, y0] = [origin.x.toNumber('m'), origin.y.toNumber('m')];
  const { points } = chordsOf(outline, false);
  const xs = points.map(({ x }) => x0 + roughNumber(x));
  const ys = points.map(({ y }) => y0 + roughNumber(y));
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const [south, north] = [Math.min(...ys), Math.max(...ys)];
  const margin = MARGIN * Math.max(east - west, north - south);
  return {
    west: west - margin,
    east: east + margin,
    south: south - margin,
    north: north + margin,
  };
}

/** True for boxes that do not overlap. Internal. */
export const isApart = (a: Box, b: Box): boolean =>
  a.east < b.west || b.east < a.west || a.north < b.south || b.north < a.south;
