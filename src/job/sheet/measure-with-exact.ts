import { printFor } from '../../units/format-for.js';
import { exactOf, ownQuantity, type AnyQuantity, type Length } from '../../units/quantity.js';
import type { Unit } from '../../units/catalogue.js';
import { compareRatios, multiplyRatios } from '../../units/ratio.js';
import { roundQuotient } from '../../units/round-ratio.js';
import { inWords } from './words/in-words.js';
import type { SheetSystem } from './layout/lengths-of-sheet.js';

/** Digits of a value before rounding, and of a large one so many places at least. */
const DIGITS = 8;
const PLACES = 4;

/** A quantity in the marks of the sheet, with its value before rounding where that differs. Internal. */
export function measureWithExact(value: AnyQuantity, system: SheetSystem): string {
  const own = ownQuantity(value);
  const { text, unit, step } = printFor(own, system);
  const exact = exactOf(own);
  const printed = multiplyRatios(roundQuotient(exact, step, 'half-even'), step);
  if (compareRatios(exact, printed) === 0) return inWords(text);
  return `${inWords(text)}, unrounded ${inWords(exactText(own, unit))}`;
}

/** The value in the unit of the text; dots where its digits go on. */
function exactText(value: AnyQuantity, unit: Unit): string {
  const exact = (value as Length).to(unit as 'in');
  const short = exact.toSignificantDigits(Math.max(DIGITS, exact.e + 1 + PLACES));
  const name = unit === 'percent' ? '%' : unit === 'ton-us' ? 'short tons' : unit;
  return `${short.toFixed()}${short.equals(exact) ? '' : '...'} ${name}`;
}
