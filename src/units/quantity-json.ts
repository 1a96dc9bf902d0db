import { SI_UNIT, unitsOf, type Dimension, type Unit } from './catalogue.js';
import { Wide, type Decimal } from './decimal.js';
import type { UnitEntry } from './engine.js';
import { entryOf } from './find-unit.js';
import { isTerminating, lowestTerms, quotientOfTerms, type LowestTerms } from './lowest-terms.js';
import { isSmall, widen, type Ratio } from './ratio.js';

/** A quantity as JSON: the exact digits (or `'a/b'` where no unit ends the digits) and the unit. */
export interface QuantityJSON {
  readonly value: string;
  readonly unit: string;
}

/** Writes an exact value in SI units as JSON; equal values come out alike. Internal. */
export function quantityJSON(dimension: Dimension, exact: Ratio): QuantityJSON {
  if (dimension !== 'angle' && (isSmall(exact) || exact.d.eq(1))) {
    return { value: digitsOf(widen(exact).n), unit: SI_UNIT[dimension] };
  }
  return shortestJSON(dimension, exact);
}

/** The first unit in which the digits end; a fraction in SI units where they end in none. */
function shortestJSON(dimension: Dimension, exact: Ratio): QuantityJSON {
  const units: readonly Unit[] =
    dimension === 'angle' ? ['deg', 'rad', 'gon'] : [SI_UNIT[dimension], ...unitsOf(dimension)];
  const own = lowestTerms(exact);
  for (const unit of units) {
    const terms = quotientOfTerms(own, termsOf(entryOf(dimension, unit)));
    if (isTerminating(terms.d)) return { value: decimalText(terms), unit };
  }
  return { value: `${own.n}/${own.d}`, unit: SI_UNIT[dimension] };
}

const unitTerms = new Map<UnitEntry, LowestTerms>();

/** The factor of a unit to SI in lowest terms, worked out once. */
function termsOf(entry: UnitEntry): LowestTerms {
  const known = unitTerms.get(entry) ?? lowestTerms(entry.exact);
  unitTerms.set(entry, known);
  return known;
}

function decimalText({ n, d }: { n: bigint; d: bigint }): string {
  return digitsOf(Wide.div(n.toString(), d.toString()));
}

/** All digits; with an exponent only where the zeros would not end. */
function digitsOf(value: Decimal): string {
  return Math.abs(value.e) > 300 ? value.toExponential() : value.toFixed();
}
