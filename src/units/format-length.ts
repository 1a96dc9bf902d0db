import { fault } from '../errors.js';
import { formatStyle, type FormatStyle, type LengthForm } from './format-style.js';
import { isQuantity, type Length } from './quantity.js';
import { roundTo, stepsIn, type Rounding } from './rounding.js';

/** How a length is printed. */
export interface FormatLengthOptions {
  /** Feet and inches (`5' 6 1/2"`) or one unit (`1.689 m`). */
  readonly as: LengthForm;
  /**
   * The step to round to. Default: 1/16 in for feet and inches or inches, 0.01 ft, 0.01 yd, 1 mm,
   * 0.1 cm, 0.001 m.
   */
  readonly nearest?: string | Length;
  /** Default `half-even`. */
  readonly rounding?: Rounding;
  /** `typographic` prints primes, a minus sign and built fractions. Default `plain`. */
  readonly marks?: 'plain' | 'typographic';
  /** Print a comma for the decimal point. Default false. */
  readonly decimalComma?: boolean;
}

/**
 * Prints a length to the nearest step: `round(length / step) x step`, rounded once. What is printed
 * reads back, with {@link parseLength}, as exactly the rounded length.
 *
 * @param quantity - any length, negative too
 * @returns feet and inches always show the feet: `0' 6 1/2"`, `-1' 0"`; never 12 inches
 * @throws `INCREMENT_UNSUITABLE` where the form cannot show the step (1 mm in feet and inches),
 *   `INCREMENT_NOT_POSITIVE`, `UNIT_UNKNOWN`, `OUT_OF_RANGE`
 * @source nist-sp811
 * @example
 * formatLength(length('66.49 in'), { as: 'ft-in', nearest: '1/2 in' }) //=> `5' 6 1/2"`
 * formatLength(length('11 31/32 in'), { as: 'ft-in', nearest: '1/16 in' }) //=> `1' 0"`
 * formatLength(length('5.5 ft'), { as: 'm' }) //=> '1.676 m'
 */
export function formatLength(quantity: Length, options: FormatLengthOptions): string {
  if (!isQuantity(quantity) || quantity.dimension !== 'length') {
    throw fault('DIMENSION_MISMATCH', 'expected a length to print');
  }
  const style = formatStyle(options.as, options.nearest);
  const rounding = options.rounding ?? 'half-even';
  if (style.kind === 'decimal') return decimalText(quantity, style, rounding, options);
  const steps = stepsIn(quantity, style.step, rounding).toNumber();
  if (!Number.isSafeInteger(steps)) throw fault('OUT_OF_RANGE', 'too long for a tape');
  return fractionText(steps, style.partsPerInch, options);
}

/** Feet, inches and a fraction from a whole number of parts of an inch: carries cannot go wrong. */
function fractionText(steps: number, partsPerInch: number, options: FormatLengthOptions): string {
  const marks = options.marks === 'typographic' ? TYPOGRAPHIC : PLAIN;
  const total = Math.abs(steps);
  const sign = steps < 0 ? marks.minus : '';
  const inches = Math.floor(total / partsPerInch);
  const fraction = reduced(total % partsPerInch, partsPerInch);
  if (options.as === 'in') return `${sign}${inchText(inches, fraction, marks, true)} in`;
  const feet = Math.floor(inches / 12);
  return `${sign}${feet}${marks.foot} ${inchText(inches % 12, fraction, marks, false)}${marks.inch}`;
}

type Fraction = readonly [number, number] | undefined;

function inchText(inches: number, fraction: Fraction, marks: Marks, dropZero: boolean): string {
  if (fraction === undefined) return `${inches}`;
  const text = marks.fraction(fraction);
  if (inches === 0 && dropZero) return text;
  return `${inches}${marks.joint}${text}`;
}

function reduced(parts: number, of: number): Fraction {
  if (parts === 0) return undefined;
  let [n, d] = [parts, of];
  while (n % 2 === 0) [n, d] = [n / 2, d / 2];
  return [n, d];
}

function decimalText(
  quantity: Length,
  style: FormatStyle & { kind: 'decimal' },
  rounding: Rounding,
  options: FormatLengthOptions,
): string {
  const marks = options.marks === 'typographic' ? TYPOGRAPHIC : PLAIN;
  const rounded = roundTo(quantity, style.step, rounding);
  const sign = rounded.isNegative() ? marks.minus : '';
  const value = rounded.abs().to(style.unit);
  const localised = (text: string) =>
    options.decimalComma === true ? text.replace('.', ',') : text;
  if (options.as !== 'ft-in') {
    return `${sign}${localised(value.toFixed(style.places))} ${style.unit}`;
  }
  const feet = value.divToInt(12);
  const inches = value.minus(feet.times(12));
  return `${sign}${feet.toFixed()}${marks.foot} ${localised(inches.toFixed(style.places))}${marks.inch}`;
}

interface Marks {
  readonly minus: string;
  readonly foot: string;
  readonly inch: string;
  readonly joint: string;
  readonly fraction: (fraction: readonly [number, number]) => string;
}

const PLAIN: Marks = {
  minus: '-',
  foot: "'",
  inch: '"',
  joint: ' ',
  fraction: ([n, d]) => `${n}/${d}`,
};

const GLYPHS: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

const TYPOGRAPHIC: Marks = {
  minus: '−',
  foot: '′',
  inch: '″',
  joint: '',
  fraction: ([n, d]) => GLYPHS[`${n}/${d}`] ?? `${raised(n)}⁄${lowered(d)}`,
};

const raised = (n: number): string => inDigits(n, '⁰¹²³⁴⁵⁶⁷⁸⁹');
const lowered = (n: number): string => inDigits(n, '₀₁₂₃₄₅₆₇₈₉');

function inDigits(n: number, digits: string): string {
  return `${n}`.replace(/\d/g, (plain) => digits.charAt(Number(plain)));
}
