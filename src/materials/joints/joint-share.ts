import { exactOf, type Length } from '../../units/quantity.js';
import { divideRatios, ONE_RATIO, subtractRatios, type Ratio } from '../../units/ratio.js';
import { moduleOf, type Unit } from '../pavers/unit.js';

/**
 * Share of the area that is joint: `1 - l w / ((l + j) (w + j))`. The corner where two joints cross
 * counts once. Internal.
 */
export function jointShare(unit: Unit, joint: Length): Ratio {
  const filled = divideRatios(
    exactOf(unit.length.times(unit.width)),
    exactOf(moduleOf(unit, joint).area),
  );
  return subtractRatios(ONE_RATIO, filled);
}
