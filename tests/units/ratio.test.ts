// The arithmetic under the quantities at its edges, against fractions of whole numbers.
import { expect, test } from 'vitest';
import { quotientOfTerms, lowestTerms } from '../../src/units/lowest-terms.js';
import {
  absoluteRatio,
  addRatios,
  compareRatios,
  divideRatios,
  greaterRatio,
  lesserRatio,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  quotientToNumber,
  ratioToDecimal,
  ratioToNumber,
  roughNumber,
  roundedQuotient,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../src/units/ratio.js';
import { readNumber, readWritten } from '../../src/units/read-number.js';
import { roundQuotient, type Rounding } from '../../src/units/round-ratio.js';
import { bitsOf, commonDivisor, rootOf } from '../../src/units/whole.js';

type Fraction = readonly [n: bigint, d: bigint];

/** The values at which floats, their decimals or their digits come to an end. */
const VALUES: readonly Fraction[] = [
  ...[0n, 1n, -1n, 2n, 3n, -7n, 10n, 625n, 1_000_000n, 3937n].map((n) => [n, 1n] as const),
  ...[1n, -2n, 7n].map((n) => [n, 3n] as const),
  ...[-5n, 1n, 15n].map((n) => [n, 10n] as const),
  ...[1n, 127n, -381n].map((n) => [n, 1250n] as const),
  [1200n, 3937n],
  [1n, 2n ** 20n],
  [-3n, 2n ** 60n],
  // the largest whole floats, and the next ones
  ...[-1n, 0n, 1n].flatMap((more) => [
    [2n ** 53n + more, 1n] as const,
    [-(2n ** 53n) - more, 1n] as const,
  ]),
  [2n ** 53n - 1n, 10n],
  [2n ** 53n - 1n, 10n ** 15n],
  [2n ** 53n - 1n, 10n ** 16n],
  [2n ** 53n - 1n, 2n ** 53n + 1n],
  [1n, 2n ** 53n - 1n],
  // fifteen places, and sixteen
  ...[15n, 16n, 30n, 58n].flatMap((power) => [
    [1n, 10n ** power] as const,
    [-(10n ** power), 1n] as const,
    [10n ** power, 3n] as const,
  ]),
  [45n, 10n ** 15n],
  // quotients that end after many zeros are appended
  [1n, 10n ** 9n],
  [-8n, 10n ** 15n],
  [2n ** 8n, 10n ** 8n],
  [2n ** 14n, 10n ** 8n],
  [5n ** 10n, 10n ** 10n],
  [4_503_599_627_370_496n, 1n],
  // sums and quotients of many digits
  [12_345_678_901_234_567_890_123_456_789n, 10n ** 20n],
  [7n ** 80n, 3n ** 70n],
  [-(11n ** 60n), 7n ** 61n],
  [2n ** 200n - 1n, 3n ** 120n],
];

const size = (n: bigint): bigint => (n < 0n ? -n : n);
const divisor = (a: bigint, b: bigint): bigint => (b === 0n ? a : divisor(b, a % b));
const reduced = (n: bigint, d: bigint): Fraction => {
  const common = divisor(size(n), size(d));
  return d < 0n ? [-n / common, -d / common] : [n / common, d / common];
};
const ours = ([n, d]: Fraction): Ratio => readWritten(`${n}/${d}`);

/** The fields that a value is to have. */
function fields([upper, lower]: Fraction): Ratio {
  const [n, d] = reduced(upper, lower);
  let rest = d;
  let places = 0;
  for (; rest % 10n === 0n; places += 1) rest /= 10n;
  for (const prime of [2n, 5n]) for (; rest % prime === 0n; places += 1) rest /= prime;
  if (rest !== 1n) return { n, d, places: -1 };
  const digits = (n * 10n ** BigInt(places)) / d;
  return places <= 15 && size(digits) < 2n ** 53n
    ? { n: Number(digits), d: 10 ** places }
    : { n: digits, d: 10n ** BigInt(places), places };
}

function expectFields(got: Ratio, wanted: Fraction): void {
  expect(got).toStrictEqual(fields(wanted));
}

/** All pairs of values. */
const pairs = VALUES.flatMap((a) => VALUES.map((b) => [a, b] as const));

test('each value is read in its one form', () => {
  for (const value of VALUES) {
    expectFields(ours(value), value);
    expectFields(negateRatio(ours(value)), [-value[0], value[1]]);
    expectFields(absoluteRatio(ours(value)), [size(value[0]), value[1]]);
    const [n, d] = reduced(...value);
    expect(lowestTerms(ours(value))).toStrictEqual({ n, d });
    expect(signOfRatio(ours(value))).toBe(n > 0n ? 1 : n < 0n ? -1 : 0);
  }
});

test('sums and differences', () => {
  for (const [a, b] of pairs) {
    const [left, right, under] = [a[0] * b[1], b[0] * a[1], a[1] * b[1]];
    expectFields(addRatios(ours(a), ours(b)), [left + right, under]);
    expectFields(subtractRatios(ours(a), ours(b)), [left - right, under]);
  }
});

test('products and quotients', () => {
  for (const [a, b] of pairs) {
    expectFields(multiplyRatios(ours(a), ours(b)), [a[0] * b[0], a[1] * b[1]]);
    if (b[0] === 0n) continue;
    expectFields(divideRatios(ours(a), ours(b)), [a[0] * b[1], a[1] * b[0]]);
    if (b[0] < 0n) continue;
    const [n, d] = reduced(a[0] * b[1], a[1] * b[0]);
    expect(quotientOfTerms(lowestTerms(ours(a)), lowestTerms(ours(b)))).toStrictEqual({ n, d });
  }
});

test('order', () => {
  for (const [a, b] of pairs) {
    const difference = a[0] * b[1] - b[0] * a[1];
    const order = difference > 0n ? 1 : difference < 0n ? -1 : 0;
    const [x, y] = [ours(a), ours(b)];
    expect(compareRatios(x, y)).toBe(order);
    expect(lesserRatio(x, y)).toBe(order <= 0 ? x : y);
    expect(greaterRatio(x, y)).toBe(order >= 0 ? x : y);
  }
});

/** The part above the whole decides, or at the half the rounding. */
function roundedBy(rounding: Rounding, over: bigint, d: bigint, whole: bigint): bigint {
  const isUp = {
    up: over > 0n,
    down: false,
    'half-up': 2n * over >= d,
    'half-even': 2n * over > d || (2n * over === d && whole % 2n === 1n),
  }[rounding];
  return isUp ? whole + 1n : whole;
}

test('rounding to whole numbers', () => {
  const halves: readonly Fraction[] = [1n, 3n, 5n, -1n, -3n, 2n ** 53n - 1n, 10n ** 30n + 1n].map(
    (n) => [n, 2n],
  );
  for (const [a, b] of [...pairs, ...halves.map((half) => [half, [1n, 1n]] as const)]) {
    if (b[0] <= 0n) continue;
    const [n, d] = reduced(a[0] * b[1], a[1] * b[0]);
    const whole = size(n) / d;
    for (const rounding of ['half-even', 'half-up', 'up', 'down'] as const) {
      const to = roundedBy(rounding, size(n) % d, d, whole);
      expectFields(roundQuotient(ours(a), ours(b), rounding), [n < 0n ? -to : to, 1n]);
    }
  }
});

/** A quotient as the digits of a decimal of forty, a tie to the even one. */
function fortyDigits(n: bigint, d: bigint): Fraction {
  if (n === 0n) return [0n, 1n];
  let power = 0n;
  const part = (): bigint =>
    power >= 0n ? (size(n) * 10n ** power) / d : size(n) / (d * 10n ** -power);
  while (`${part()}`.length < 40) power += 1n;
  while (`${part()}`.length > 40) power -= 1n;
  const [raised, unit] = power >= 0n ? [size(n) * 10n ** power, d] : [size(n), d * 10n ** -power];
  const to = roundedBy('half-even', raised % unit, unit, raised / unit);
  const signed = n < 0n ? -to : to;
  return power >= 0n ? reduced(signed, 10n ** power) : [signed * 10n ** -power, 1n];
}

const ties: readonly Fraction[] = [
  [10n ** 39n * 10n + 5n, 10n],
  [10n ** 39n * 10n + 15n, 10n],
  [-(10n ** 39n * 10n) - 15n, 10n],
  [10n ** 40n - 1n, 1n],
  [10n ** 40n, 1n],
  [10n ** 45n - 1n, 1n],
  [10n ** 60n + 5n * 10n ** 20n, 1n],
  [10n ** 60n + 5n * 10n ** 20n + 1n, 1n],
  [10n ** 60n - 5n * 10n ** 19n, 10n ** 80n],
];

test('read out in forty digits', () => {
  const one: Fraction = [1n, 1n];
  for (const [a, b] of [...pairs, ...ties.map((tie) => [tie, one] as const)]) {
    if (b[0] === 0n) continue;
    const [n, d] = reduced(a[0] * b[1], a[1] * b[0]);
    const [digits, under] = fortyDigits(n, d);
    const decimal = quotientToDecimal(ours(a), ours(b));
    expectFields(readWritten(decimal.toString()), [digits, under]);
    expectFields(roundedQuotient(ours(a), ours(b)), [digits, under]);
    expect(ratioToDecimal(ours([n, d])).toString()).toBe(decimal.toString());
    expect(decimal.isNegative()).toBe(n < 0n);
  }
});

test('read out as the nearest float', () => {
  for (const [a, b] of pairs) {
    if (b[0] === 0n) continue;
    const [n, d] = reduced(a[0] * b[1], a[1] * b[0]);
    // forty digits tell the nearest of two floats, but for ties, which end within them
    const nearest = Number(quotientToDecimal(ours(a), ours(b)).toString());
    expect(quotientToNumber(ours(a), ours(b))).toBe(nearest);
    expect(ratioToNumber(ours([n, d]))).toBe(nearest);
    expect(Math.abs(roughNumber(ours([n, d])) - nearest)).toBeLessThanOrEqual(
      Math.abs(nearest) * 1e-15,
    );
  }
});

test('floats between two others, and beyond what they hold', () => {
  const number = (n: bigint, d: bigint) => ratioToNumber(ours([n, d]));
  // a tie goes to the even one, a part above a tie does not
  expect(number(2n ** 53n + 1n, 1n)).toBe(2 ** 53);
  expect(number(2n ** 53n + 3n, 1n)).toBe(2 ** 53 + 4);
  expect(number((2n ** 53n + 1n) * 10n ** 40n + 1n, 10n ** 40n)).toBe(2 ** 53 + 2);
  expect(number(-((2n ** 53n + 1n) * 3n ** 80n) - 1n, 3n ** 80n)).toBe(-(2 ** 53) - 2);
  expect(number(7n ** 500n, 3n * 7n ** 500n)).toBe(1 / 3);
  expect(roughNumber(ours([7n ** 500n, 3n ** 888n]))).toBe(number(7n ** 500n, 3n ** 888n));
  expect(number(3n ** 600n, 7n)).toBe(Number(3n ** 600n / 7n));
  expect(number(1n, 3n ** 640n)).toBeGreaterThan(0);
  expect(number(1n, 3n ** 640n)).toBeLessThan(2 ** -1014);
});

test('floats as their digits', () => {
  expectFields(wholeRatio(-5), [-5n, 1n]);
  expectFields(wholeRatio(2 ** 53), [2n ** 53n, 1n]);
  expectFields(wholeRatio(0.375), [3n, 8n]);
  expectFields(wholeRatio(1.5e-20), [15n, 10n ** 21n]);
  expectFields(wholeRatio(1e22), [10n ** 22n, 1n]);
  expectFields(readNumber(-0), [0n, 1n]);
});

test('the common divisor, short and long', () => {
  const numbers = [0n, 1n, 6n, 9n, 2n ** 53n, 2n ** 53n - 1n, 2n ** 60n * 9n, 10n ** 30n];
  const long = [7n ** 90n * 2n, 7n ** 60n * 11n ** 30n, 2n ** 160n, 2n ** 161n + 1n, 3n ** 200n];
  // quotients of Euclid's steps: all ones, and one very large
  let [a, b] = [1n, 1n];
  for (let step = 0; step < 400; step += 1) [a, b] = [b, a + b];
  const hard = [a, b, a * 10n ** 40n + 1n, 10n ** 80n, 10n ** 80n + 1n];
  for (const one of [...numbers, ...long, ...hard])
    for (const other of [...numbers, ...long, ...hard])
      expect(commonDivisor(one, other)).toBe(divisor(one, other));
});

test('binary digits, and the root of a whole number', () => {
  for (const power of [0n, 1n, 20n, 25n, 26n, 51n, 52n, 53n, 54n, 100n, 1023n, 1024n, 3000n]) {
    for (const more of [-1n, 0n, 1n]) {
      const n = 2n ** power + more;
      const digits = n === 0n ? 0 : n.toString(2).length;
      expect(bitsOf(n)).toBeGreaterThanOrEqual(digits);
      expect(bitsOf(n)).toBeLessThanOrEqual(digits + 4);
      expect(bitsOf(-n)).toBe(bitsOf(n));
      expect(rootOf(n * n)).toBe(n);
      if (n > 0n) expect(rootOf(n * n - 1n)).toBe(n - 1n);
      expect(rootOf(n * n + 2n * n)).toBe(n);
    }
  }
});
