import { divideRatios, multiplyRatios, subtractRatios, type Ratio } from '../units/ratio.js';
import type { Vector } from '../units/vector.js';

/**
 * How far a point lies below a chord from the same start, square to the stations: what an edge or a
 * string leaves between. Internal.
 */
export const belowChord = (chord: Vector, point: Vector): Ratio =>
  subtractRatios(divideRatios(multiplyRatios(chord.y, point.x), chord.x), point.y);
