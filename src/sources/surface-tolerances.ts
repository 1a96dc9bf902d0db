import { printed, type ReferenceValue } from './reference-value.js';

const guide = (value: string, unit: 'in' | 'percent'): ReferenceValue =>
  printed(value, unit, 'paver-tolerances');

/**
 * Tolerances for interlocking concrete pavements as the guide prints them (inch edition). Source:
 * `paver-tolerances`.
 */
export const PAVER_TOLERANCES = Object.freeze({
  /** Base thickness above and below the design. */
  baseThicknessOver: guide('0.75', 'in'),
  baseThicknessUnder: guide('0.5', 'in'),
  /** Base surface under a 10 ft straightedge. */
  baseSurfacePer10ft: guide('0.375', 'in'),
  /** Finished surface under a 10 ft straightedge. */
  surfaceFlatnessPer10ft: guide('0.375', 'in'),
  minimumJoint: guide('0.0625', 'in'),
  maximumJoint: guide('0.1875', 'in'),
  maximumLippage: guide('0.125', 'in'),
  bondLinePer50ft: guide('0.5', 'in'),
  jointFillBelowTop: guide('0.5', 'in'),
  /** Minimum slope for drainage. */
  minimumSlope: guide('2', 'percent'),
});
