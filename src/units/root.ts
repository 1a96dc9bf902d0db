import { decimalOf, fractionOf, hasEnd, isSmall, widened, type Ratio } from './big-ratio.js';
import { smallDecimal } from './small-decimal.js';
import { bitsOf, powerOfTen, rootOf } from './whole.js';

/** Significant digits of a root that is not exact. */
const DIGITS = 40;
/** Below 2^26 the root of a float is a whole number only if it is exact. */
const LARGEST_ROOT = 6.7e7;

/**
 * The square root of a ratio that is not negative: exact for perfect squares, thirds too, else to 40
 * digits. Internal.
 */
export function squareRoot(a: Ratio): Ratio {
  if (hasEnd(a)) return rootOfDecimal(a);
  return rootOfFraction(a) ?? roundedRoot(a);
}

/** True for a root that had to be rounded to 40 digits. Internal. */
export const isRoundedRoot = (root: Ratio): boolean => !isSmall(root) && root.places >= 0;

function rootOfDecimal(a: Ratio): Ratio {
  if (!isSmall(a)) {
    // sqrt(n / 10^p), p even
    const odd = a.places % 2;
    const root = squareRootOf(odd === 0 ? a.n : a.n * 10n);
    return root === undefined ? roundedRoot(a) : decimalOf(root, (a.places + odd) / 2);
  }
  // sqrt(n / d) = sqrt(n d) / d
  const root = Math.sqrt(a.n * a.d);
  return Number.isInteger(root) && root <= LARGEST_ROOT ? smallDecimal(root, a.d) : roundedRoot(a);
}

/** The root of a fraction in lowest terms whose two numbers are squares. */
function rootOfFraction(a: Ratio): Ratio | undefined {
  const { n, d } = widened(a);
  const lower = squareRootOf(d);
  const upper = lower === undefined ? undefined : squareRootOf(n);
  return lower === undefined || upper === undefined ? undefined : fractionOf(upper, lower);
}

/** The last four binary digits of a square. */
const ENDS_OF_SQUARES: ReadonlySet<bigint> = new Set([0n, 1n, 4n, 9n]);

function squareRootOf(n: bigint): bigint | undefined {
  if (!ENDS_OF_SQUARES.has(n & 15n)) return undefined;
  const root = rootOf(n);
  return root * root === n ? root : undefined;
}

/** The root to 40 digits, in whole numbers: three times as fast as in decimals. */
function roundedRoot(a: Ratio): Ratio {
  const { n, d } = widened(a);
  // with two or three digits to spare
  const places = DIGITS + 2 - Math.floor((bitsOf(n) - bitsOf(d)) * Math.log10(2) * 0.5);
  const raised = places >= 0 ? n * powerOfTen(2 * places) : n / powerOfTen(-2 * places);
  const root = rootOf(raised / d);
  const unit = powerOfTen(`${root}`.length - DIGITS);
  // never a tie: the omitted digits of an inexact root make half a unit more than half
  const up = 2n * (root % unit) >= unit ? 1n : 0n;
  const rounded = (root / unit + up) * unit;
  return places >= 0 ? decimalOf(rounded, places) : decimalOf(rounded * powerOfTen(-places), 0);
}
