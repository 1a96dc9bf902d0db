// The exact arithmetic under the quantities against a general-purpose fraction package.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { Wide } from '../../src/units/decimal.js';
import { lowestTerms } from '../../src/units/lowest-terms.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  isSmall,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  quotientToNumber,
  ratioToDecimal,
  settleRatio,
  signOfRatio,
  widen,
  type Ratio,
} from '../../src/units/ratio.js';
import { readNumber } from '../../src/units/read-number.js';
import { squareRoot } from '../../src/units/root.js';
import { roundQuotient, type Rounding } from '../../src/units/round-ratio.js';
import { MANY } from './arbitrary.js';

interface Both {
  readonly ours: Ratio;
  readonly theirs: Fraction;
}

const from = (text: string): Both => ({ ours: readNumber(text), theirs: new Fraction(text) });

/** Numbers near every edge of the float form: small, long, tiny, thirds, powers of ten. */
const numbers: fc.Arbitrary<Both> = fc
  .oneof(
    fc.integer({ min: -1000, max: 1000 }).map((n) => `${n}`),
    fc
      .tuple(fc.bigInt(-(10n ** 18n), 10n ** 18n), fc.integer({ min: 0, max: 20 }))
      .map(([n, places]) => {
        const digits = `${n < 0n ? -n : n}`.padStart(places + 1, '0');
        const sign = n < 0n ? '-' : '';
        return places === 0
          ? `${n}`
          : `${sign}${digits.slice(0, -places)}.${digits.slice(-places)}`;
      }),
    fc
      .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 1, max: 5000 }))
      .map(([n, d]) => `${n}/${d}`),
    fc.constantFrom(
      '9007199254740991',
      '-9007199254740991',
      '9007199254740993',
      '1e15',
      '0.000000000000001',
      '0.1',
      '1e-20',
      '90071992547409.93',
    ),
  )
  .map((text) =>
    text.includes('e')
      ? { ours: readNumber(text), theirs: new Fraction(new Wide(text).toFixed()) }
      : from(text),
  );

const same = (ours: Ratio, theirs: Fraction) => {
  const { n, d } = lowestTerms(ours);
  expect(`${n}/${d}`).toBe(`${theirs.s * theirs.n}/${theirs.d}`);
};

/** A value in floats is in lowest form, so that equal values are equal field by field. */
const isCanonical = (a: Ratio) => {
  if (!isSmall(a)) return;
  expect(Number.isSafeInteger(a.n)).toBe(true);
  expect(Object.is(a.n, -0)).toBe(false);
  expect(Math.log10(a.d) % 1).toBe(0);
  if (a.d > 1) expect(a.n % 10).not.toBe(0);
};

describe('against fractions', () => {
  test('sums, differences, products', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        for (const [ours, theirs] of [
          [addRatios(a.ours, b.ours), a.theirs.add(b.theirs)],
          [addRatios(a.ours, negateRatio(b.ours)), a.theirs.sub(b.theirs)],
          [multiplyRatios(a.ours, b.ours), a.theirs.mul(b.theirs)],
        ] as const) {
          same(ours, theirs);
          isCanonical(ours);
        }
      }),
      MANY,
    );
  });

  test('quotients', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        if (signOfRatio(b.ours) === 0) return;
        const quotient = divideRatios(a.ours, b.ours);
        same(quotient, a.theirs.div(b.theirs));
        isCanonical(quotient);
        expect(quotientToDecimal(a.ours, b.ours).eq(ratioToDecimal(quotient))).toBe(true);
        expect(quotientToNumber(a.ours, b.ours)).toBe(ratioToDecimal(quotient).toNumber());
      }),
      MANY,
    );
  });

  test('order and sign', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        expect(compareRatios(a.ours, b.ours)).toBe(a.theirs.compare(b.theirs));
        expect(signOfRatio(a.ours)).toBe(a.theirs.compare(0));
      }),
      MANY,
    );
  });

  test('rounding', () => {
    const roundings = fc.constantFrom<Rounding>('half-up', 'half-even', 'up', 'down');
    fc.assert(
      fc.property(numbers, numbers, roundings, (a, b, rounding) => {
        if (signOfRatio(b.ours) <= 0) return;
        const quotient = a.theirs.div(b.theirs).abs();
        const floor = quotient.floor();
        const over = quotient.sub(floor);
        const tie = over.compare(new Fraction(1, 2));
        const isOdd = !floor.mod(2).equals(0);
        const ups = {
          up: over.compare(0) > 0,
          down: false,
          'half-up': tie >= 0,
          'half-even': tie > 0 || (tie === 0 && isOdd),
        };
        const size = ups[rounding] ? floor.add(1) : floor;
        const rounded = roundQuotient(a.ours, b.ours, rounding);
        same(rounded, a.theirs.compare(0) < 0 ? size.neg() : size);
        isCanonical(rounded);
      }),
      MANY,
    );
  });

  test('equal values are kept alike, however they were come by', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        const back = addRatios(addRatios(a.ours, b.ours), negateRatio(b.ours));
        const settled = isSmall(back) ? back : settleRatio(back, ratioToDecimal(back));
        const start = isSmall(a.ours) ? a.ours : settleRatio(a.ours, ratioToDecimal(a.ours));
        expect(isSmall(settled)).toBe(isSmall(start));
        if (isSmall(settled)) expect(settled).toEqual(start);
        same(widen(a.ours), a.theirs);
      }),
      MANY,
    );
  });

  test('roots of squares are exact', () => {
    fc.assert(
      fc.property(numbers, (a) => {
        const root = squareRoot(multiplyRatios(a.ours, a.ours));
        const error = ratioToDecimal(root).minus(ratioToDecimal(a.ours).abs());
        expect(error.abs().lte(ratioToDecimal(root).times('1e-38'))).toBe(true);
        if (isSmall(a.ours)) same(root, a.theirs.abs());
      }),
      MANY,
    );
  });
});
