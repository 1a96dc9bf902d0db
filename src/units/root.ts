import { Decimal40, ONE, Wide } from './decimal.js';
import { isSmall, ratio, widen, type Ratio } from './ratio.js';
import type { SmallDecimal } from './small-decimal.js';

/**
 * The square root of a ratio that is not negative: exact for perfect squares, else to 40 digits.
 * `sqrt(n / d) = sqrt(n d) / d`, so that a square of thirds comes out exact too. Internal.
 */
export function squareRoot(a: Ratio): Ratio {
  if (isSmall(a)) {
    const root = Math.sqrt(a.n * a.d);
    if (Number.isInteger(root) && root <= 9e7) return ratio(new Wide(root), new Wide(a.d));
    return wholeRoot(a);
  }
  const { n, d } = widen(a);
  const square = n.times(d);
  const root = new Wide(Decimal40.sqrt(square));
  const isExact = d === ONE || root.times(root).eq(square);
  return isExact ? ratio(root, d) : ratio(new Wide(Decimal40.div(root, d)));
}

/** True for a root that had to be rounded to 40 digits. Internal. */
export const isRoundedRoot = (root: Ratio): boolean => !isSmall(root) && root.d === ONE;

const DIGITS = 40;

/** The root of a small decimal in whole numbers: three times as fast as in decimals, the same digits. */
function wholeRoot({ n, d }: SmallDecimal): Ratio {
  // n / d = square / 10^(2 places), with two digits to spare in the root
  const power = Math.round(Math.log10(d));
  const places = DIGITS + 2 + Math.ceil((power - Math.floor(Math.log10(n))) / 2);
  const square = BigInt(n) * 10n ** BigInt(2 * places - power);
  const root = floorRoot(square, Math.sqrt(n / d), places);
  const spare = root.toString().length - DIGITS;
  const unit = 10n ** BigInt(spare);
  const rest = root % unit;
  // never a tie: what is left out of an inexact root makes half a unit more than half
  const rounded = root / unit + (2n * rest >= unit ? 1n : 0n);
  return ratio(new Wide(`${rounded}e${spare - places}`));
}

/** The largest whole number whose square is not above another, by Newton's rule from a float. */
function floorRoot(square: bigint, near: number, places: number): bigint {
  const shift = 15 - Math.floor(Math.log10(near));
  const lead = BigInt(Math.round(near * 10 ** shift));
  let root = places >= shift ? lead * 10n ** BigInt(places - shift) : lead;
  root = (root + square / root) >> 1n;
  root = (root + square / root) >> 1n;
  while (root * root > square) root -= 1n;
  while ((root + 1n) * (root + 1n) <= square) root += 1n;
  return root;
}
