import { line, rectangle, type Point } from '../svg/shapes.js';
import { arrow } from './arrow.js';
import type { LegendEntry } from './legend.js';

const HALF = 15;
const STAKE = 4;

/** An arrow in a legend. Internal. */
export const ARROW_SAMPLE: LegendEntry['sample'] = {
  mark: ([x, y]) => arrow('fall', [x - HALF, y], [x + HALF, y]).join(''),
  of: 'fall',
};

/** A string with its stakes in a legend. Internal. */
export const STRING_SAMPLE: LegendEntry['sample'] = {
  mark: ([x, y]) =>
    [
      line('string', [x - HALF, y], [x + HALF, y]),
      ...[x - HALF + STAKE, x + HALF - STAKE].map((at) => stake([at, y])),
    ].join(''),
  of: 'string',
};

const stake = ([x, y]: Point): string =>
  rectangle('stake', { x: x - STAKE, y: y - STAKE, width: 2 * STAKE, height: 2 * STAKE });
