import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ratioToDecimal } from '../../src/units/ratio.js';
import { readNumber } from '../../src/units/read-number.js';
import { squareRoot } from '../../src/units/root.js';
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
