import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios, multiplyRatios } from '../units/ratio.js';

/** `rise / run`, exactly; the run is not zero. Internal. */
export const slopeBetween = (rise: Length, run: Length): Slope =>
  fromSI('slope', divideRatios(exactOf(rise), exactOf(run)));

/** `whole x part / of`, exactly, with one division. Internal. */
export const shareOf = (whole: Length, part: Length, of: Length): Length =>
  fromSI('length', divideRatios(multiplyRatios(exactOf(whole), exactOf(part)), exactOf(of)));
