import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ratioToDecimal } from '../../src/units/ratio.js';
import { readNumber, readWritten } from '../../src/units/read-number.js';
import { isRoundedRoot, squareRoot } from '../../src/units/root.js';
import { runs } from '../runs.js';

const Decimal40 = Decimal.clone({ precision: 40, rounding: Decimal.ROUND_HALF_EVEN });

test('roots of small decimals have the digits that decimals give', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER }),
      fc.integer({ min: 0, max: 15 }),
      fc.integer({ min: 1, max: 15 }),
      (digits, power, keep) => {
        const n = Math.max(1, Math.floor(digits / 10 ** (15 - keep)));
        const value = new Decimal(`${n}e-${power}`);
        const root = ratioToDecimal(squareRoot(readNumber(value.toFixed())));
        expect(root.toFixed()).toBe(Decimal40.sqrt(value).toFixed());
      },
    ),
    runs(6_000),
  );
});

test.each([
  ['0', '0'],
  ['2', '1.41421356237309504880168872420969807857'],
  ['0.000000000000002', '0.00000004472135954999579392818347337462552470881'],
  ['0.0009', '0.03'],
  ['99999999', '9999.99994999999987499999937499999609375'],
])('sqrt(%s) = %s', (value, root) => {
  expect(ratioToDecimal(squareRoot(readNumber(value))).toFixed()).toBe(root);
});

/** The largest whole number whose square is no more, by halving. */
function wholeRoot(n: bigint): bigint {
  let [low, high] = [0n, 1n];
  while (high * high <= n) high *= 2n;
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    if (middle * middle <= n) low = middle;
    else high = middle;
  }
  return low;
}

/** A root to forty digits, as a fraction. */
function rounded(n: bigint, d: bigint): readonly [bigint, bigint] {
  let power = 0n;
  const part = () => wholeRoot(power >= 0n ? (n * 100n ** power) / d : n / (d * 100n ** -power));
  while (`${part()}`.length < 41) power += 1n;
  while (`${part()}`.length > 41) power -= 1n;
  const digits = (part() + 5n) / 10n;
  power -= 1n;
  return power >= 0n ? [digits, 10n ** power] : [digits * 10n ** -power, 1n];
}

describe('at the edges', () => {
  const squares = [
    ...[0n, 1n, 3n, 10n, 89_999_999n, 90_000_000n, 90_000_001n, 94_906_265n, 94_906_267n],
    ...[2n ** 52n, 2n ** 53n + 1n, 10n ** 20n],
    // more than forty digits
    ...[5n ** 58n, 10n ** 40n + 5n],
  ];
  const unders = [1n, 3n, 7n, 10n, 16n, 1250n, 3937n, 10n ** 7n, 10n ** 8n, 10n ** 15n, 2n ** 43n];

  test('roots of squares are exact', () => {
    for (const n of squares)
      for (const d of unders) {
        const [root, square] = [readWritten(`${n}/${d}`), readWritten(`${n * n}/${d * d}`)];
        expect(squareRoot(square), `${n}/${d}`).toStrictEqual(root);
      }
  });

  test('roots of no squares have forty digits', () => {
    const uppers = [
      2n,
      3n,
      5n,
      15n,
      17n,
      24n,
      10n ** 15n,
      2n ** 53n - 1n,
      10n ** 60n + 1n,
      7n ** 151n,
    ];
    for (const n of [...uppers, ...squares.map((one) => one * one + 1n), 67_108_865n ** 2n - 1n])
      for (const d of [...unders, 10n ** 60n, 3n ** 101n]) {
        const root = wholeRoot(n * d);
        if (root * root === n * d) continue;
        const [digits, under] = rounded(n, d);
        const got = squareRoot(readWritten(`${n}/${d}`));
        expect(got, `${n}/${d}`).toStrictEqual(readWritten(`${digits}/${under}`));
      }
  });

  test('a root says whether it was rounded', () => {
    for (const text of ['2', '0.1', '1/3', '2/9', '4/3', '7e30'])
      expect(isRoundedRoot(squareRoot(readNumber(text)))).toBe(true);
    for (const text of ['4', '0.09', '4/9', '1/9', '0'])
      expect(isRoundedRoot(squareRoot(readNumber(text)))).toBe(false);
  });
});
