import { line, type Point } from '../svg/shapes.js';

const TICK = 5;

/** A slanted stroke where a dimension line ends. Internal. */
export const tick = ([x, y]: Point): string =>
  line('tick', [x - TICK, y + TICK], [x + TICK, y - TICK]);

/** A dimension line with ticks at its ends. Internal. */
export const dimensionLine = (from: Point, to: Point): string[] => [
  line('dimension', from, to),
  tick(from),
  tick(to),
];
