import type { Ratio } from './big-ratio.js';
import { SI_UNIT, type Dimension, type Unit } from './catalogue.js';
import type { Decimal } from './decimal.js';
import { entryOf } from './find-unit.js';
import { divideRatios, isSmall, quotientToDecimal, wholeRatio } from './ratio.js';
import { PLAIN, tapeText } from './tape-text.js';

/** How a quantity was written: a unit, or feet and inches. Internal. */
export type WrittenAs = Unit | 'ft-in';

/** A value as people write it, to 40 digits. Internal. */
export const fullText = (dimension: Dimension, exact: Ratio, written?: WrittenAs): string =>
  textOf(dimension, exact, written, (value) => value.toString());

/** A short form of a value: six significant digits, and a mark if there are more. Internal. */
export const shortText = (dimension: Dimension, exact: Ratio, written?: WrittenAs): string =>
  textOf(dimension, exact, written, shortened);

const MOST_DIGITS = 6;
const DOWN = 1;

function shortened(value: Decimal): string {
  if (value.precision() <= MOST_DIGITS) return value.toString();
  const cut = value.toSignificantDigits(MOST_DIGITS, DOWN);
  // a whole number that is cut keeps its size
  return cut.e < MOST_DIGITS ? `${cut.toString()}…` : cut.toExponential().replace('e', '…e');
}

function textOf(
  dimension: Dimension,
  exact: Ratio,
  written: WrittenAs | undefined,
  print: (value: Decimal) => string,
): string {
  if (written === 'ft-in') return feetAndInches(exact) ?? inUnit('in', dimension, exact, print);
  return inUnit(unitOfText(dimension, written), dimension, exact, print);
}

/** Slopes and angles have one form, whatever they were written as. Internal. */
export function unitOfText(dimension: Dimension, written: Unit | undefined): Unit {
  if (dimension === 'slope') return 'percent';
  if (dimension === 'angle') return 'deg';
  return written ?? SI_UNIT[dimension];
}

function inUnit(
  unit: Unit,
  dimension: Dimension,
  exact: Ratio,
  print: (value: Decimal) => string,
): string {
  const value = quotientToDecimal(exact, entryOf(dimension, unit).exact);
  return `${print(value)}${markOf(unit)}`;
}

/** A unit after a number, with the space before it; a percent sign has none. Internal. */
export const markOf = (unit: Unit): string => (unit === 'percent' ? '%' : ` ${unit}`);

/** The finest division of an inch on a tape. */
const PARTS = 128;

/** Feet and inches, if the length is a whole number of marks of the tape. */
function feetAndInches(exact: Ratio): string | undefined {
  const part = divideRatios(entryOf('length', 'in').exact, wholeRatio(PARTS));
  const parts = divideRatios(exact, part);
  if (!isSmall(parts) || parts.d !== 1) return undefined;
  return tapeText(parts.n, { partsPerInch: PARTS, isInches: false, marks: PLAIN });
}
