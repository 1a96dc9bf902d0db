import type { Dimension } from '../../units/catalogue.js';

const SIGN = '[+\\-\\u2010-\\u2013\\u2212]?';
/** Start of a number: a digit, a point, a built fraction or a raised digit. */
const NUMBER = '[0-9.\\u00b2\\u00b3\\u00b9\\u00bc-\\u00be\\u2070-\\u2079\\u2150-\\u215e]';
/** Start of a unit: a letter, a mark for feet or inches, a degree sign. */
const UNIT = 'A-Za-z\'"\\u00b0\\u00b4\\u02b9\\u02ba\\u2018\\u2019\\u201c\\u201d\\u2032\\u2033';
/** Start of a unit of slope: it may also be 2% or 1:48. */
const SLOPE_UNIT = `${UNIT}%:`;
/** Zero, which needs no unit. */
const ZERO = `${SIGN}0+(?:\\.0*)?`;

/**
 * The pattern of a number followed by a unit. It refuses a bare number and text without a number. The
 * reader checks that the unit exists and fits. Internal.
 */
export function unitPattern(dimension: Dimension): string {
  const unit = dimension === 'slope' ? SLOPE_UNIT : UNIT;
  return `^\\s*(?:${ZERO}\\s*$|${SIGN}${NUMBER}[^${unit}]*[${unit}])`;
}
