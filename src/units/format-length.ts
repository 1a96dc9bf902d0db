import { fault } from '../errors.js';
import { formatStyle, type FormatStyle, type LengthForm } from './format-style.js';
import { isQuantity, type Length } from './quantity.js';
import { isSmall } from './ratio.js';
import type { Rounding } from './round-ratio.js';
import { stepsIn } from './rounding.js';

/** How a length is printed. */
export interface FormatLengthOptions {
  /** Feet and inches (`7' 3 5/8"`) or one unit (`2.226 m`). */
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
 * formatLength(length('87.6 in'), { as: 'ft-in', nearest: '1/8 in' }) //=> `7' 3 5/8"`
 * formatLength(length('11 31/32 in'), { as: 'ft-in', nearest: '1/16 in' }) //=> `1' 0"`
 * formatLength(length('5.5 ft'), { as: 'm' }) //=> '1.676 m'
 */
export function formatLength(quantity: Length, options: FormatLengthOptions): string {
  if (!isQuantity(quantity) || quantity.dimension !== 'length') {
    throw fault('DIMENSION_MISMATCH', 'expected a length to print');
  }
  const style = formatStyle(options.as, options.nearest);
  const steps = stepsIn(quantity, style.step, options.rounding ?? 'half-even');
  if (!isSmall(steps)) throw fault('OUT_OF_RANGE', 'too long to print');
  return style.kind === 'decimal'
    ? decimalText(steps.n, style, options)
    : fractionText(steps.n, style.partsPerInch, options);
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

/** Decimals from a whole number of steps, by the digits: nothing is rounded again. */
function decimalText(
  steps: number,
  style: FormatStyle & { kind: 'decimal' },
  options: FormatLengthOptions,
): string {
  const marks = options.marks === 'typographic' ? TYPOGRAPHIC : PLAIN;
  const total = Math.abs(steps) * style.lastPlaces;
  if (total > Number.MAX_SAFE_INTEGER) throw fault('OUT_OF_RANGE', 'too long to print');
  const sign = steps < 0 ? marks.minus : '';
  const point = options.decimalComma === true ? ',' : '.';
  if (options.as !== 'ft-in') {
    return `${sign}${withPoint(total, style.places, point)} ${style.unit}`;
  }
  const inFoot = 12 * 10 ** style.places;
  const rest = total % inFoot;
  const feet = (total - rest) / inFoot;
  return `${sign}${feet}${marks.foot} ${withPoint(rest, style.places, point)}${marks.inch}`;
}

function withPoint(lastPlaces: number, places: number, point: string): string {
  if (places === 0) return `${lastPlaces}`;
  const digits = `${lastPlaces}`.padStart(places + 1, '0');
  return `${digits.slice(0, -places)}${point}${digits.slice(-places)}`;
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
