import { exactOf, fromSI, type Angle, type Length, type Slope } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { norm } from '../units/vector.js';
import { azimuthOf } from './azimuth.js';

/** The steepest slope of a surface and the direction in which it falls. */
export interface Fall {
  /** Steepest slope, not negative. Water runs along it. */
  readonly slope: Slope;
  /** Downhill direction, clockwise from +y; null for a level surface. */
  readonly downhillAzimuth: Angle | null;
  /** True for a level surface. */
  readonly isLevel: boolean;
}

/** Steepest slope of a gradient, not negative. Internal. */
export const steepestOf = (gradeX: Ratio, gradeY: Ratio): Slope =>
  fromSI('slope', norm({ x: gradeX, y: gradeY }));

const squareOf = (value: Length | Slope): Ratio => multiplyRatios(exactOf(value), exactOf(value));

/**
 * Steepest slope of a surface that rises by a height over a run and by a slope square to it,
 * `sqrt(rise^2 / run^2 + c^2)`. A slanted run has an exact square only, so the root is taken once, of
 * squares: a fall exactly on a limit is exact. The run is not zero. Internal.
 */
export const steepestAlong = (rise: Length, squaredRun: Ratio, cross: Slope): Slope =>
  fromSI('slope', squareRoot(addRatios(divideRatios(squareOf(rise), squaredRun), squareOf(cross))));

/** Steepest slope and downhill direction of a gradient. Internal. */
export function fallOf(gradeX: Ratio, gradeY: Ratio): Fall {
  const downhillAzimuth = azimuthOf({ x: negateRatio(gradeX), y: negateRatio(gradeY) });
  return {
    slope: steepestOf(gradeX, gradeY),
    downhillAzimuth,
    isLevel: downhillAzimuth === null,
  };
}
