import { fault } from '../errors.js';
import { checkOptions, isFlag, isOneOf } from './check-options.js';
import { digitsText } from './digits-text.js';
import { formatStyle, isLengthForm, type FormatStyle } from './format-style.js';
import { exactOf, quantityOf, writtenAs, type Length } from './quantity.js';
import type { LengthForm } from './quantity-types.js';
import { isSmall } from './ratio.js';
import { roundQuotient, type Rounding } from './round-ratio.js';
import { isRounding } from './rounding.js';
import { PLAIN, tapeText, TYPOGRAPHIC } from './tape-text.js';

/** How a length is printed. */
export interface FormatLengthOptions {
  /**
   * Feet and inches (`7' 3 5/8"`) or one unit (`2.226 m`). Default: as the length was written; metres
   * for a length that was calculated.
   */
  readonly as?: LengthForm;
  /**
   * The step to round to [length], more than 0. Default: 1/16 in for feet and inches or inches,
   * 0.01 ft, 0.01 yd, 1 mm, 0.1 cm, 0.001 m, 0.001 km, 0.001 mi.
   */
  readonly nearest?: string | Length;
  /** How a value between two steps is rounded. Default: `half-even`. */
  readonly rounding?: Rounding;
  /** `typographic` prints primes, a minus sign and fraction characters. Default: `plain`. */
  readonly marks?: 'plain' | 'typographic';
  /** True to print a decimal comma. Default: false. */
  readonly decimalComma?: boolean;
}

const CHECKS = {
  as: isLengthForm,
  nearest: () => undefined,
  rounding: isRounding,
  marks: isOneOf(['plain', 'typographic']),
  decimalComma: isFlag,
};

/**
 * Prints a length to the nearest step: `round(length / step) x step`, rounded once.
 * {@link parseLength} reads the printed text back as exactly the rounded length.
 *
 * @param quantity - any length, negative too
 * @param options - see {@link FormatLengthOptions}
 * @returns feet and inches always show the feet: `0' 6 1/2"`, `-1' 0"`; never 12 inches
 * @throws `INCREMENT_UNSUITABLE` if the form cannot show the step (1 mm in feet and inches),
 *   `INCREMENT_NOT_POSITIVE`, `UNIT_UNKNOWN`, `DIMENSION_MISMATCH`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE`,
 *   `UNKNOWN_FIELD`, `WRONG_TYPE`
 * @source nist-sp811
 * @example
 * formatLength(length('87.6 in'), { as: 'ft-in', nearest: '1/8 in' }) //=> `7' 3 5/8"`
 * formatLength(length('11 31/32 in'), { as: 'ft-in', nearest: '1/16 in' }) //=> `1' 0"`
 * formatLength(length('5.5 ft'), { as: 'm' }) //=> '1.676 m'
 * formatLength(length('60 mm').times(3)) //=> '180 mm'
 */
export function formatLength(quantity: Length, options: FormatLengthOptions = {}): string {
  const own = quantityOf('length', quantity);
  checkOptions(options, CHECKS);
  const form = options.as ?? writtenAs(own) ?? 'm';
  const style = formatStyle(form, options.nearest);
  const steps = roundQuotient(exactOf(own), exactOf(style.step), options.rounding ?? 'half-even');
  if (!isSmall(steps)) throw tooLong();
  if (style.kind === 'decimal') return decimalText(steps.n, style, options);
  const marks = marksOf(options);
  return tapeText(steps.n, { partsPerInch: style.partsPerInch, isInches: form === 'in', marks });
}

const marksOf = ({ marks }: FormatLengthOptions) => (marks === 'typographic' ? TYPOGRAPHIC : PLAIN);

const tooLong = () => fault('OUT_OF_RANGE', 'too long to print');

/** Decimals from a whole number of steps, by the digits: no second rounding. */
function decimalText(
  steps: number,
  style: FormatStyle & { kind: 'decimal' },
  options: FormatLengthOptions,
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
