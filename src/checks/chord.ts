import { divideRatios, multiplyRatios, subtractRatios, type Ratio } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';

/**
 * Distance of a point below a chord from the same start, square to the stations: the gap under an
 * edge or a string. Internal.
 */
export const belowChord = (chord: Vector, point: Vector): Ratio =>
  subtractRatios(divideRatios(multiplyRatios(chord.y, point.x), chord.x), point.y);
