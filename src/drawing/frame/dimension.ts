import { line, type Point } from '../svg/shapes.js';
import { textMark, type TextLabel } from './text-label.js';

const TICK = 5;

/** A slanted stroke where a dimension line ends. Internal. */
export const tick = ([x, y]: Point): string =>
  line('tick', [x - TICK, y + TICK], [x + TICK, y - TICK]);

/** A dimension line with ticks at its ends, and at points between. Internal. */
export const dimensionLine = (from: Point, to: Point, between: readonly Point[] = []): string[] => [
  line('dimension', from, to),
  ...[from, ...between, to].map(tick),
];

/** A level dimension with its text above the line, kept between two sides. Internal. */
export function levelDimension(
  { from, to, y }: { readonly from: number; readonly to: number; readonly y: number },
  label: Omit<TextLabel, 'x' | 'y' | 'anchor' | 'isTurned'>,
  { x, width, long }: { readonly x: number; readonly width: number; readonly long: number },
): string[] {
  const middle = (from + to) / 2;
  const centre = Math.max(x + long / 2, Math.min(middle, x + width - long / 2));
  return [
    ...dimensionLine([from, y], [to, y]),
    textMark({ ...label, x: centre, y: y - 8, anchor: 'middle' }),
  ];
}
