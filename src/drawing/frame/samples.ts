import { line, rectangle } from '../svg/shapes.js';
import { arrow } from './arrow.js';
import type { LegendEntry } from './legend.js';

const HALF = 15;
const SIDE = 8;

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
      ...[x - HALF, x + HALF - SIDE].map((left) =>
        rectangle('stake', { x: left, y: y - SIDE / 2, width: SIDE, height: SIDE }),
      ),
    ].join(''),
  of: 'string',
};
