import { decimalOf, type Ratio } from './big-ratio.js';

/** Digits as written: `n / 10^places`; places may be negative. Internal. */
export interface Digits {
  /** All digits as a whole number, with the sign. */
  readonly n: bigint;
  /** Number of digits after the point. */
  readonly places: number;
}

const DIGITS = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,6}))?$/;

/** Splits digits such as `-12`, `.5`, `1e-7`; undefined for anything else. Internal. */
export function digitsOf(text: string): Digits | undefined {
  const [, sign, whole = '', part = '', power = '0'] = DIGITS.exec(text) ?? [];
  if (sign === undefined || whole + part === '') return undefined;
  const n = BigInt(whole + part);
  return { n: sign === '-' ? -n : n, places: part.length - Number(power) };
}

/** Digits as a ratio. Internal. */
export const ratioOfDigits = ({ n, places }: Digits): Ratio =>
  places >= 0 ? decimalOf(n, places) : decimalOf(n * 10n ** BigInt(-places), 0);
