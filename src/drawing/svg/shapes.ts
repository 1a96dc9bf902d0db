import { coordinateText } from './coordinate-text.js';
import { element } from './element.js';

/** A point of a drawing: x to the right, y down. Internal. */
export type Point = readonly [x: number, y: number];

/** A straight line. Internal. */
export const line = (style: string, [x1, y1]: Point, [x2, y2]: Point): string =>
  element('line', { class: style, x1, y1, x2, y2 });

/** Straight lines from point to point. Internal. */
export const polyline = (style: string, points: readonly Point[]): string =>
  element('polyline', { class: style, points: pointsText(points), fill: 'none' });

/** A closed figure; `fill` names a pattern. Internal. */
export const polygon = (style: string, points: readonly Point[], fill?: string): string =>
  element('polygon', { class: style, points: pointsText(points), fill });

/** An upright rectangle. Internal. */
export const rectangle = (
  style: string,
  {
    x,
    y,
    width,
    height,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  fill?: string,
): string => element('rect', { class: style, x, y, width, height, fill });

const pointsText = (points: readonly Point[]): string =>
  points.map(([x, y]) => `${coordinateText(x)},${coordinateText(y)}`).join(' ');
