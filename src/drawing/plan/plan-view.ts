import { fault } from '../../errors.js';
import type { Box } from '../frame/box.js';
import type { DrawStyle } from '../draw-options.js';
import type { Point } from '../svg/shapes.js';
import type { Place } from './rings-in-metres.js';

/** A plan as it lies in a picture: x to the right, y up. Internal. */
export interface PlanView {
  readonly pixelsPerMetre: number;
  readonly to: (place: Place) => Point;
  /** All that may be drawn on. */
  readonly area: Box;
  readonly bottom: number;
}

const LEAST_HEIGHT = 120;

/** Puts places into a picture from a height down, with clear space on each side. Internal. */
export function planView(
  places: readonly Place[],
  {
    top,
    gutter,
    style,
  }: { readonly top: number; readonly gutter: Point; readonly style: DrawStyle },
): PlanView {
  const { west, east, south, north } = boundsOf(places);
  const room = style.width - 2 * style.margin - 2 * gutter[0];
  const tallest = style.isNarrow ? 460 : 560;
  const [wide, high] = [east - west, north - south];
  const pixelsPerMetre = Math.min(room / wide, tallest / high);
  if (!(pixelsPerMetre > 0 && pixelsPerMetre < Infinity)) {
    throw fault('NOT_FINITE', 'the site is too large or too small to draw. Check the coordinates');
  }
  const inside = Math.max(LEAST_HEIGHT, high * pixelsPerMetre);
  const height = inside + 2 * gutter[1];
  const x0 = style.width / 2 - (wide / 2) * pixelsPerMetre;
  const y0 = top + height / 2 - (high / 2) * pixelsPerMetre;
  const bottom = top + height;
  return {
    pixelsPerMetre,
    to: ([x, y]) => [x0 + (x - west) * pixelsPerMetre, y0 + (north - y) * pixelsPerMetre],
    area: { x: style.margin, y: top, width: style.width - 2 * style.margin, height },
    bottom,
  };
}

/** The box round places [m]. Internal. */
export function boundsOf(places: readonly Place[]) {
  const bounds = { west: Infinity, east: -Infinity, south: Infinity, north: -Infinity };
  for (const [x, y] of places) {
    bounds.west = Math.min(bounds.west, x);
    bounds.east = Math.max(bounds.east, x);
    bounds.south = Math.min(bounds.south, y);
    bounds.north = Math.max(bounds.north, y);
  }
  return bounds;
}
