import { toQuantity } from '../../units/construct.js';
import { formatFor } from '../../units/format-for.js';
import { writtenAs, type AnyQuantity, type Length } from '../../units/quantity.js';
import { inWords, type SheetSystem } from './units-of-sheet.js';

const DIGITS = 8;

/** A quantity in the marks of the sheet, with its value before rounding where that differs. Internal. */
export function measureWithExact(value: AnyQuantity, system: SheetSystem): string {
  const text = formatFor(value, system);
  const printed: AnyQuantity = toQuantity(value.dimension, text);
  if ((printed as Length).equals(value as Length)) return inWords(text);
  return `${inWords(text)}, unrounded ${inWords(exactText(value, printed))}`;
}

/** The value in the unit of the text; dots where its digits go on. */
function exactText(value: AnyQuantity, printed: AnyQuantity): string {
  const form = writtenAs(printed);
  const unit = form === 'ft-in' || form === undefined ? 'in' : form;
  const exact = (value as Length).to(unit as 'in');
  const short = exact.toSignificantDigits(DIGITS);
  const name = unit === 'percent' ? '%' : unit === 'ton-us' ? 'short tons' : unit;
  return `${short.toFixed()}${short.equals(exact) ? '' : '...'} ${name}`;
}
