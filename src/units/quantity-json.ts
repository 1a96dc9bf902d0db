import { hasEnd, isSmall, type Ratio } from './big-ratio.js';
import { SI_UNIT, unitsOf, type Dimension, type Unit } from './catalogue.js';
import { digitsText } from './digits-text.js';
import { entryOf } from './find-unit.js';
import type { QuantityJSON } from './quantity-types.js';
import { divideRatios } from './ratio.js';

/** Writes an exact value in SI units as JSON; equal values give equal JSON. Internal. */
export function quantityJSON(dimension: Dimension, exact: Ratio): QuantityJSON {
  const si = SI_UNIT[dimension];
  if (dimension !== 'angle' && hasEnd(exact)) return { value: exactText(exact), unit: si };
  for (const unit of unitsToTry(dimension)) {
    const factor = entryOf(dimension, unit).exact;
    // digits that do not end in SI do not end in a unit whose factor ends either
    if (hasEnd(factor) && !hasEnd(exact)) continue;
    const inUnit = divideRatios(exact, factor);
    if (hasEnd(inUnit)) return { value: exactText(inUnit), unit };
  }
  return { value: exactText(exact), unit: si };
}

/** The first unit in which the digits end is used. */
const unitsToTry = (dimension: Dimension): readonly Unit[] =>
  dimension === 'angle' ? ['deg', 'rad', 'gon'] : unitsOf(dimension);

/** All digits, or a fraction in lowest terms if they do not end. Internal. */
export function exactText(a: Ratio): string {
  if (!hasEnd(a)) return `${a.n}/${a.d}`;
  return digitsText(a.n, isSmall(a) ? Math.round(Math.log10(a.d)) : a.places);
}

/** Up to here a float prints exactly the digits that it was made from. */
const MOST_DIGITS = 1e15;

/**
 * The value in a form for cloning and deep comparison: equal values have equal forms. A float means
 * its shortest digits, as everywhere. Internal.
 */
export const plainValue = (exact: Ratio): number | string =>
  isSmall(exact) && exact.n < MOST_DIGITS && exact.n > -MOST_DIGITS
    ? exact.n / exact.d
    : exactText(exact);
