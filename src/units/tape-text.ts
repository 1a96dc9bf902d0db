/** The marks that a length is printed with. Internal. */
export interface Marks {
  /** Before a negative length. */
  readonly minus: string;
  /** After feet. */
  readonly foot: string;
  /** After inches. */
  readonly inch: string;
  /** Between a whole number and its fraction. */
  readonly joint: string;
  /** Prints a fraction in lowest terms. */
  readonly fraction: (fraction: readonly [number, number]) => string;
}

/** Marks of a keyboard. Internal. */
export const PLAIN: Marks = {
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

/** Primes, a minus sign and fraction characters. Internal. */
export const TYPOGRAPHIC: Marks = {
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

/** How a whole number of parts of an inch is printed. Internal. */
export interface TapeStyle {
  /** Parts in an inch, a power of two. */
  readonly partsPerInch: number;
  /** True for inches alone, without feet. */
  readonly isInches: boolean;
  /** The marks to print with. */
  readonly marks: Marks;
}

/** Feet, inches and a fraction from a whole number of parts of an inch. Internal. */
export function tapeText(steps: number, { partsPerInch, isInches, marks }: TapeStyle): string {
  const total = Math.abs(steps);
  const sign = steps < 0 ? marks.minus : '';
  const inches = Math.floor(total / partsPerInch);
  const fraction = reduced(total % partsPerInch, partsPerInch);
  if (isInches) return `${sign}${inchText(inches, fraction, marks, true)} in`;
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
  let n = parts;
  let d = of;
  while (n % 2 === 0) {
    n /= 2;
    d /= 2;
  }
  return [n, d];
}
