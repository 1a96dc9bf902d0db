// The exact arithmetic under the quantities against a general-purpose fraction package.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { Decimal } from 'decimal.js';
import { lowestTerms } from '../../src/units/lowest-terms.js';
import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  negateRatio,
  quotientToDecimal,
  quotientToNumber,
  ratioToDecimal,
  ratioToNumber,
  roughNumber,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../../src/units/ratio.js';
import { readNumber } from '../../src/units/read-number.js';
import { squareRoot } from '../../src/units/root.js';
import { roundQuotient, type Rounding } from '../../src/units/round-ratio.js';
import { runs } from '../runs.js';
import { MANY } from './arbitrary.js';

const Wide = Decimal.clone({ precision: 120, rounding: Decimal.ROUND_HALF_EVEN });
const Decimal40 = Decimal.clone({ precision: 40, rounding: Decimal.ROUND_HALF_EVEN });

interface Both {
  readonly ours: Ratio;
  readonly theirs: Fraction;
}

const from = (text: string): Both => ({ ours: readNumber(text), theirs: fractionOf(text) });

/** fraction.js reads neither exponents nor a fraction of decimals. */
function fractionOf(text: string): Fraction {
  const [n = '', d = '1'] = text.split('/');
  return decimalOf(n).div(decimalOf(d));
}

function decimalOf(text: string): Fraction {
  const [digits = '', power = '0'] = text.split('e');
  const scale = `1${'0'.repeat(Math.abs(Number(power)))}`;
  const fraction = new Fraction(digits);
  return Number(power) < 0 ? fraction.div(scale) : fraction.mul(scale);
}

/** Numbers at every edge: of the floats, of their decimals, long ones, thirds, powers of ten. */
const EDGES = [
  ...['0', '1', '-1', '10', '1/3', '-2/3', '1/7', '1200/3937', '1/1048576', '0.1', '0.3048'],
  ...['9007199254740991', '-9007199254740991', '9007199254740992', '9007199254740993'],
  ...['90071992547409.93', '0.9007199254740991', '9.007199254740993', '4503599627370496'],
  ...['999999999999999', '1e15', '1000000000000001', '1e16', '-1e16'],
  ...['0.000000000000001', '0.0000000000000001', '1e-15', '1e-16', '-1e-20', '1e-58', '1e58'],
  ...['9007199254740991/9007199254740993', '1/9007199254740991', '1e15/3', '3/1e15'],
  `${'1234567890'.repeat(12)}/1e100`,
  `${'9'.repeat(120)}/${'7'.repeat(119)}`,
  `0.${'3'.repeat(39)}4`,
  `1.${'0'.repeat(38)}5`,
];

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
    fc
      .tuple(fc.bigInt(-(10n ** 60n), 10n ** 60n), fc.bigInt(1n, 10n ** 60n))
      .map(([n, d]) => `${n}/${d}`),
    fc.constantFrom(...EDGES),
  )
  .map(from);

/** The one way in which a value is to be kept, worked out from the other package's fraction. */
function canonical({ s, n, d }: Fraction): Ratio {
  const upper = s * n;
  let rest = d;
  let places = 0;
  for (; rest % 10n === 0n; places += 1) rest /= 10n;
  for (; rest % 2n === 0n; places += 1) rest /= 2n;
  for (; rest % 5n === 0n; places += 1) rest /= 5n;
  if (rest !== 1n) return { n: upper, d, places: -1 };
  const digits = (upper * 10n ** BigInt(places)) / d;
  const isSmall = places <= 15 && Number.isSafeInteger(Number(digits));
  if (isSmall) return { n: Number(digits), d: Number(10n ** BigInt(places)) };
  return { n: digits, d: 10n ** BigInt(places), places };
}

/** The same value in the same fields: equal values are equal field by field. */
const same = (ours: Ratio, theirs: Fraction) => {
  const expected = canonical(theirs);
  // a million comparisons: the words for a difference only where there is one
  if (placesOf(ours) !== placesOf(expected) || !areSame(ours, expected)) {
    expect(ours).toEqual(expected);
    expect.unreachable('negative zero');
  }
};

const placesOf = (a: Ratio): number | undefined => ('places' in a ? a.places : undefined);
const areSame = (a: Ratio, b: Ratio): boolean => Object.is(a.n, b.n) && Object.is(a.d, b.d);

describe('against fractions', () => {
  test('numbers as they are read', () => {
    for (const text of EDGES) same(readNumber(text), fractionOf(text));
    fc.assert(
      fc.property(numbers, ({ ours, theirs }) => {
        same(ours, theirs);
        const { n, d } = lowestTerms(ours);
        expect(`${n}/${d}`).toBe(`${theirs.s * theirs.n}/${theirs.d}`);
      }),
      MANY,
    );
  });

  test('sums, differences, products', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        same(addRatios(a.ours, b.ours), a.theirs.add(b.theirs));
        same(subtractRatios(a.ours, b.ours), a.theirs.sub(b.theirs));
        same(multiplyRatios(a.ours, b.ours), a.theirs.mul(b.theirs));
        same(negateRatio(a.ours), a.theirs.neg());
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
        expect(quotientToDecimal(a.ours, b.ours).eq(ratioToDecimal(quotient))).toBe(true);
        expect(quotientToNumber(a.ours, b.ours)).toBe(ratioToNumber(quotient));
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
      }),
      MANY,
    );
  });

  test('long chains of operations, a million in a deep run', () => {
    let done = 0;
    fc.assert(
      fc.property(
        fc.array(numbers, { minLength: 3, maxLength: 3 }),
        fc.array(fc.nat(3 * 3 * 4 - 1), { minLength: 50, maxLength: 50 }),
        (start, steps) => {
          const values = [...start];
          for (const [k, step] of steps.entries()) {
            done += 1;
            values[k % 3] = operated(values, step);
            // what has grown too long starts again
            if (isLong(values[k % 3])) values[k % 3] = start[k % 3] ?? ZERO;
          }
        },
      ),
      runs(2_000),
    );
    expect(done).toBeGreaterThanOrEqual(100_000);
  });
});

const ZERO: Both = from('0');
const isLong = (value: Both | undefined): boolean =>
  `${lowestTerms(value?.ours ?? ZERO.ours).d}`.length > 150;

/** One operation on two of three values, both ways, compared. */
function operated(values: readonly Both[], step: number): Both {
  const a = values[step % 3] ?? ZERO;
  const b = values[Math.floor(step / 3) % 3] ?? ZERO;
  const operation = Math.floor(step / 9);
  if (operation === 3 && signOfRatio(b.ours) === 0) return a;
  const both = {
    ours: [addRatios, subtractRatios, multiplyRatios, divideRatios][operation]?.(a.ours, b.ours),
    theirs: [
      () => a.theirs.add(b.theirs),
      () => a.theirs.sub(b.theirs),
      () => a.theirs.mul(b.theirs),
      () => a.theirs.div(b.theirs),
    ][operation]?.(),
  };
  const { ours = ZERO.ours, theirs = ZERO.theirs } = both;
  same(ours, theirs);
  return { ours, theirs };
}

describe('read out', () => {
  test('forty digits, a tie to the even one', () => {
    fc.assert(
      fc.property(numbers, ({ ours, theirs }) => {
        const expected = Decimal40.div(`${theirs.s * theirs.n}`, `${theirs.d}`);
        expect(ratioToDecimal(ours).toFixed()).toBe(expected.toFixed());
      }),
      MANY,
    );
    expect(ratioToDecimal(readNumber(`1.${'0'.repeat(38)}05`)).toString()).toBe('1');
    expect(ratioToDecimal(readNumber(`1.${'0'.repeat(38)}15`)).toString()).toBe(
      `1.${'0'.repeat(38)}2`,
    );
    expect(ratioToDecimal(readNumber(`-1.${'0'.repeat(38)}051`)).toString()).toBe(
      `-1.${'0'.repeat(38)}1`,
    );
    expect(ratioToDecimal(readNumber('9'.repeat(45))).toFixed()).toBe(`1${'0'.repeat(45)}`);
  });

  test('the nearest float', () => {
    fc.assert(
      fc.property(numbers, ({ ours, theirs }) => {
        const exact = Wide.div(`${theirs.s * theirs.n}`, `${theirs.d}`);
        const nearest = ratioToNumber(ours);
        expect(nearest).toBe(Number(exact.toString()));
        const rough = roughNumber(ours);
        expect(Math.abs(rough - nearest)).toBeLessThanOrEqual(Math.abs(nearest) * 1e-15);
      }),
      MANY,
    );
  });

  test('floats beyond the exponents of one part alone', () => {
    const long = readNumber(`${'7'.repeat(400)}/${'3'.repeat(400)}`);
    expect(ratioToNumber(long)).toBe(7 / 3);
    expect(roughNumber(long)).toBe(7 / 3);
    expect(ratioToNumber(divideRatios(readNumber('1e-60'), readNumber('1e-60')))).toBe(1);
  });

  test('a decimal as a ratio', () => {
    fc.assert(
      fc.property(numbers, ({ theirs }) => {
        const decimal = Decimal40.div(`${theirs.s * theirs.n}`, `${theirs.d}`);
        same(decimalRatio(decimal), fractionOf(decimal.toFixed()));
      }),
      MANY,
    );
  });
});

describe('roots', () => {
  test('of squares are exact, thirds too', () => {
    fc.assert(
      fc.property(numbers, (a) => {
        const root = squareRoot(multiplyRatios(a.ours, a.ours));
        same(root, a.theirs.abs());
      }),
      MANY,
    );
  });

  test('of anything else have forty digits, rounded once', () => {
    fc.assert(
      fc.property(numbers, ({ ours, theirs }) => {
        if (signOfRatio(ours) <= 0) return;
        const exact = Wide.sqrt(Wide.div(`${theirs.n}`, `${theirs.d}`));
        const root = ratioToDecimal(squareRoot(ours));
        expect(root.toFixed()).toBe(exact.toSignificantDigits(40).toFixed());
      }),
      MANY,
    );
  });
});
