import { fromSI, type Angle, type Slope } from '../units/quantity.js';
import { negateRatio, type Ratio } from '../units/ratio.js';
import { norm } from '../units/vector.js';
import { azimuthOf } from './azimuth.js';

/** The steepest slope of a surface and the direction in which it falls. */
export interface Fall {
  /** Steepest slope, not negative. Water follows it. */
  readonly slope: Slope;
  /** Downhill direction, clockwise from +y; null for a level surface. */
  readonly downhillAzimuth: Angle | null;
  /** True for a level surface. */
  readonly isLevel: boolean;
}

/** Steepest slope of a gradient, not negative. Internal. */
export const steepestOf = (gradeX: Ratio, gradeY: Ratio): Slope =>
  fromSI('slope', norm({ x: gradeX, y: gradeY }));

/** Steepest slope and downhill direction of a gradient. Internal. */
export function fallOf(gradeX: Ratio, gradeY: Ratio): Fall {
  const downhillAzimuth = azimuthOf({ x: negateRatio(gradeX), y: negateRatio(gradeY) });
  return {
    slope: steepestOf(gradeX, gradeY),
    downhillAzimuth,
    isLevel: downhillAzimuth === null,
  };
}
