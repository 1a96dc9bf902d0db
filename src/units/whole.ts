/** Whole numbers of any size: powers of ten, lengths, the greatest common divisor. */

const MOST_POWERS = 500;
const powers: bigint[] = [];

/** Ten to a whole power that is not negative. Internal. */
export function powerOfTen(exponent: number): bigint {
  if (exponent > MOST_POWERS) return 10n ** BigInt(exponent);
  return (powers[exponent] ??= 10n ** BigInt(exponent));
}

/** A whole number without its sign. Internal. */
export const sizeOf = (n: bigint): bigint => (n < 0n ? -n : n);

/** Number of binary digits of a whole number, or one more. Internal. */
export function bitsOf(n: bigint): number {
  const size = Math.abs(Number(n));
  if (size < Number.POSITIVE_INFINITY) return Math.floor(Math.log2(size + 1)) + 1;
  return 4 * sizeOf(n).toString(16).length;
}

/** Up to here floats hold whole numbers, and the whole part of a quotient is right. */
const FLOAT = BigInt(Number.MAX_SAFE_INTEGER);
/** From here on Euclid's steps are taken several at a time. */
const LONG = 2n ** 160n;

/** The greatest common divisor of two whole numbers that are not negative. Internal. */
export function commonDivisor(a: bigint, b: bigint): bigint {
  let high = a;
  let low = b;
  while (low > LONG) [high, low] = manySteps(high, low);
  while (low > FLOAT) {
    const rest = high % low;
    high = low;
    low = rest;
  }
  return low === 0n ? high : BigInt(commonDivisorOfFloats(Number(low), Number(high % low)));
}

/** The greatest common divisor of two whole floats up to 2^53, not negative. Internal. */
export function commonDivisorOfFloats(a: number, b: number): number {
  let high = a;
  let low = b;
  while (low !== 0) {
    // a remainder of floats (%) takes three times as long
    const rest = high - Math.floor(high / low) * low;
    high = low;
    low = rest;
  }
  return high;
}

/**
 * Several of Euclid's steps at once, from the leading digits (Lehmer; as Algorithm L of Knuth, The
 * Art of Computer Programming, volume 2, section 4.5.2, from memory).
 */
function manySteps(a: bigint, b: bigint): [bigint, bigint] {
  const shift = BigInt(bitsOf(a > b ? a : b) - 50);
  let high = Number(a >> shift);
  let low = Number(b >> shift);
  let p = 1;
  let q = 0;
  let r = 0;
  let s = 1;
  while (low + r !== 0 && low + s !== 0) {
    const quotient = Math.floor((high + p) / (low + r));
    if (quotient !== Math.floor((high + q) / (low + s))) break;
    const [nextR, nextS, nextLow] = [p - quotient * r, q - quotient * s, high - quotient * low];
    p = r;
    q = s;
    high = low;
    r = nextR;
    s = nextS;
    low = nextLow;
  }
  if (q === 0) return [b, a % b];
  return [BigInt(p) * a + BigInt(q) * b, BigInt(r) * a + BigInt(s) * b];
}

/** Up to here the whole part of a float's root is right. */
const SQUARE_OF_FLOAT = 2n ** 52n;

/** The largest whole number whose square is no more than another. Internal. */
export function rootOf(n: bigint): bigint {
  if (n < SQUARE_OF_FLOAT) return BigInt(Math.floor(Math.sqrt(Number(n))));
  const shift = BigInt(Math.max(0, Math.floor((bitsOf(n) - 50) / 2)));
  // Newton's rule starts from above
  let root = (BigInt(Math.floor(Math.sqrt(Number(n >> (2n * shift))))) + 1n) << shift;
  for (;;) {
    const next = (root + n / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}
