import { checkOptions, isFlag, isOneOf, readOption } from './check-options.js';
import { formatStyle, isLengthForm } from './format-style.js';
import { parseLength } from './parse-length.js';
import { printInStyle } from './print-length.js';
import { quantityOf, writtenAs, type Length } from './quantity.js';
import type { LengthForm } from './quantity-types.js';
import type { Rounding } from './round-ratio.js';
import { isRounding } from './rounding.js';

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
 * {@link parseLength} reads the printed text back as exactly the rounded length, but for three
 * decimals after a decimal comma in mm, cm, in, ft or yd: `1,500 mm` could be thousands.
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
  const { nearest, ...others } = options;
  const form = options.as ?? writtenAs(own) ?? 'm';
  const style =
    nearest === undefined
      ? formatStyle(form)
      : readOption('nearest', () => formatStyle(form, stepIn(nearest)));
  return printInStyle(own, style, others);
}

const MOST_STEPS = 100;
const steps = new Map<string, Length>();

/** Reads a step, and keeps it if it is text. */
function stepIn(nearest: string | Length): Length {
  if (typeof nearest !== 'string') return quantityOf('length', nearest);
  const known = steps.get(nearest);
  if (known !== undefined) return known;
  const step = parseLength(nearest, { surveyFoot: true });
  if (steps.size < MOST_STEPS) steps.set(nearest, step);
  return step;
}
