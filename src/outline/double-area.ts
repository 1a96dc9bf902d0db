import { fromSI, type Area } from '../units/quantity.js';
import {
  addRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  ZERO_RATIO,
  HALF_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { cross, type Vector } from '../units/vector.js';
import { forEachEdge } from './ring.js';

/** Twice the signed area: positive if the points run counter-clockwise. Internal. */
export function doubleArea(points: readonly Vector[]): Ratio {
  let sum: Ratio = ZERO_RATIO;
  forEachEdge(points, (a, b) => {
    sum = addRatios(sum, cross(a, b));
  });
  return sum;
}

/** The area for a signed double area. Internal. */
export const areaOfDouble = (twice: Ratio): Area =>
  fromSI('area', multiplyRatios(signOfRatio(twice) < 0 ? negateRatio(twice) : twice, HALF_RATIO));
