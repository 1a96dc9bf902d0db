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

/** A closed figure. Internal. */
export const polygon = (style: string, points: readonly Point[]): string =>
  element('polygon', { class: style, points: pointsText(points) });

/** Several closed figures of one style. Internal. */
export const polygons = (style: string, figures: readonly (readonly Point[])[]): string =>
  element('path', { class: style, d: figures.map((points) => `M${pointsText(points)}Z`).join('') });

/** Several straight lines of one style, each from point to point. Internal. */
export const polylines = (style: string, lines: readonly (readonly Point[])[]): string =>
  element('path', {
    class: style,
    d: lines.map((points) => `M${pointsText(points)}`).join(''),
    fill: 'none',
  });

/** Where an upright rectangle lies. */
interface Upright {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** An upright rectangle. Internal. */
export const rectangle = (style: string, { x, y, width, height }: Upright): string =>
  element('rect', { class: style, x, y, width, height });

/** Its corners, from the top left on. Internal. */
export const cornersOfBox = ({ x, y, width, height }: Upright): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const pointsText = (points: readonly Point[]): string =>
  points.map(([x, y]) => `${coordinateText(x)},${coordinateText(y)}`).join(' ');
