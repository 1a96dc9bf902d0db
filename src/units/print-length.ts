import { fault } from '../errors.js';
import { digitsText } from './digits-text.js';
import { formatStyle, type FormatStyle } from './format-style.js';
import { exactOf, writtenAs, type Length } from './quantity.js';
import type { LengthForm } from './quantity-types.js';
import { isSmall } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';
import { PLAIN, tapeText, TYPOGRAPHIC } from './tape-text.js';

/** How a length is printed, checked. Internal. */
export interface PrintLengthOptions {
  readonly as?: LengthForm;
  readonly nearest?: Length;
  readonly rounding?: Rounding;
  readonly marks?: 'plain' | 'typographic';
  readonly decimalComma?: boolean;
}

/** Prints a length as `formatLength` does, from checked options: it reads no text. Internal. */
export function printLength(quantity: Length, options: PrintLengthOptions): string {
  const form = options.as ?? writtenAs(quantity) ?? 'm';
  return printInStyle(quantity, formatStyle(form, options.nearest), options);
}

/** The same in a style that is known. Internal. */
export function printInStyle(
  quantity: Length,
  style: FormatStyle,
  options: Omit<PrintLengthOptions, 'nearest'>,
): string {
  const exact = exactOf(quantity);
  const steps = roundQuotient(exact, exactOf(style.step), options.rounding ?? 'half-even');
  if (!isSmall(steps)) throw tooLong();
  if (style.kind === 'decimal') return decimalText(steps.n, style, options);
  const marks = marksOf(options);
  return tapeText(steps.n, { partsPerInch: style.partsPerInch, isInches: style.isInches, marks });
}

const marksOf = ({ marks }: PrintLengthOptions) => (marks === 'typographic' ? TYPOGRAPHIC : PLAIN);

const tooLong = () => fault('OUT_OF_RANGE', 'too long to print');

/** Decimals from a whole number of steps, by the digits: no second rounding. */
function decimalText(
  steps: number,
  style: FormatStyle & { kind: 'decimal' },
  options: PrintLengthOptions,
): string {
  const marks = marksOf(options);
  const total = Math.abs(steps) * style.lastPlaces;
  if (total > Number.MAX_SAFE_INTEGER) throw tooLong();
  const sign = steps < 0 ? marks.minus : '';
  const point = options.decimalComma === true ? ',' : '.';
  if (!style.hasFeet) return `${sign}${digitsText(total, style.places, point)} ${style.unit}`;
  const inFoot = 12 * 10 ** style.places;
  const rest = total % inFoot;
  const feet = (total - rest) / inFoot;
  return `${sign}${feet}${marks.foot} ${digitsText(rest, style.places, point)}${marks.inch}`;
}
