import type { LengthUnit } from './catalogue.js';
import { fromUnit, type Length } from './quantity.js';
import { divideRatios, wholeRatio } from './ratio.js';

/** A length of `n / d` units, exact, without reading text. Internal. */
export const partOf = (n: number, d: number, unit: LengthUnit): Length =>
  fromUnit('length', divideRatios(wholeRatio(n), wholeRatio(d)), unit);
