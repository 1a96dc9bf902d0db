import { addRatios, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import { cross, type Vector } from '../units/vector.js';
import { forEachEdge } from './ring.js';

/** Twice the signed area: positive where the points run counter-clockwise. Internal. */
export function doubleArea(points: readonly Vector[]): Ratio {
  let sum: Ratio = ZERO_RATIO;
  forEachEdge(points, (a, b) => {
    sum = addRatios(sum, cross(a, b));
  });
  return sum;
}
