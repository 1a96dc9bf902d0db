import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compareQuantities,
  convert,
  DIMENSIONS,
  formatLength,
  fromJSON,
  length,
  parseLength,
  roundTo,
  unitsOf,
  type Length,
  type QuantityJSON,
  type Rounding,
  type Unit,
} from 'settline/units';
import { isSettlineError } from 'settline';
import { expectReason } from '../faults.js';
import { anyLength, digits, MANY } from './arbitrary.js';
import { runs } from '../runs.js';

const ROUNDINGS: readonly Rounding[] = ['half-up', 'half-even', 'up', 'down'];
const TAPE = [1, 2, 4, 8, 16, 32, 64, 128] as const;

const unitPair = fc
  .constantFrom(...DIMENSIONS)
  .chain((dimension) =>
    fc.tuple(
      fc.constantFrom<Unit>(...unitsOf(dimension)),
      fc.constantFrom<Unit>(...unitsOf(dimension)),
    ),
  );

describe('round trips', () => {
  test('parse(format(x)) is x rounded, in feet and inches', () => {
    fc.assert(
      fc.property(
        anyLength,
        fc.constantFrom(...TAPE),
        fc.constantFrom(...ROUNDINGS),
        fc.constantFrom('ft-in' as const, 'in' as const),
        fc.constantFrom('plain' as const, 'typographic' as const),
        (x, parts, rounding, as, marks) => {
          const nearest = length(`1/${parts}`, 'in');
          const printed = formatLength(x, { as, nearest, rounding, marks });
          expect(parseLength(printed).equals(roundTo(x, nearest, rounding))).toBe(true);
          expect(printed).not.toMatch(/(?:^|\D)12(?: \d+\/\d+)?["″]/);
        },
      ),
      MANY,
    );
  });

  test('parse(format(x)) is x rounded, in one unit', () => {
    fc.assert(
      fc.property(
        anyLength,
        fc.constantFrom('mm', 'cm', 'm', 'ft', 'yd', 'ft-us', 'in'),
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom(...ROUNDINGS),
        fc.boolean(),
        (x, as, places, rounding, decimalComma) => {
          const nearest = length(places === 0 ? '1' : `0.${'0'.repeat(places - 1)}1`, as);
          const printed = formatLength(x, { as, nearest, rounding, decimalComma });
          const isFraction = printed.includes('/');
          // three decimals after a comma look like thousands, but for metres
          if (/^[-−]?[1-9]\d{0,2},\d{3} (?!m$)/.test(printed)) {
            const options = { surveyFoot: true, decimalComma: true };
            expectReason(() => parseLength(printed, options), 'GROUPING');
            return;
          }
          const read = parseLength(printed, {
            surveyFoot: true,
            decimalComma: decimalComma && !isFraction,
          });
          expect(read.equals(roundTo(x, nearest, rounding))).toBe(true);
        },
      ),
      MANY,
    );
  });

  test('convert there and back', () => {
    fc.assert(
      fc.property(digits(), unitPair, (value, [from, to]) => {
        const there = convert(value, from, to as never);
        const back = convert(there, to, from as never);
        const error = back.minus(value).abs();
        expect(error.lte(back.abs().times('1e-38'))).toBe(true);
      }),
      MANY,
    );
  });

  test('quantities convert there and back with no error at all', () => {
    fc.assert(
      fc.property(anyLength, (x) => {
        for (const unit of unitsOf('length')) {
          const there = x.dividedBy(length(1, unit));
          const back = length(1, unit).times(there);
          expect(back.minus(x).abs().compare(length('1e-30', 'm'))).toBeLessThan(0);
        }
        expect(x.times('3/7').times('7/3').equals(x)).toBe(true);
      }),
      MANY,
    );
  });

  test('JSON', () => {
    fc.assert(
      fc.property(anyLength, fc.integer({ min: 1, max: 999 }), (x, k) => {
        const part = x.dividedBy(k);
        const json = JSON.stringify(part);
        const again = fromJSON(JSON.parse(json) as QuantityJSON) as Length;
        expect(again.equals(part)).toBe(true);
        expect(JSON.stringify(again)).toBe(json);
      }),
      MANY,
    );
  });
});

describe('order and algebra', () => {
  test('total order', () => {
    fc.assert(
      fc.property(anyLength, anyLength, anyLength, (a, b, c) => {
        expect(a.compare(b)).toBe(b.compare(a) === 0 ? 0 : -b.compare(a));
        const [low, middle, high] = [a, b, c].sort(compareQuantities);
        expect(low?.compare(middle ?? a)).toBeLessThanOrEqual(0);
        expect(middle?.compare(high ?? a)).toBeLessThanOrEqual(0);
        expect(low?.compare(high ?? a)).toBeLessThanOrEqual(0);
        expect(a.compare(b) === 0).toBe(JSON.stringify(a) === JSON.stringify(b));
      }),
      MANY,
    );
  });

  test('sums and products obey their laws exactly', () => {
    fc.assert(
      fc.property(anyLength, anyLength, anyLength, (a, b, c) => {
        expect(a.plus(b).equals(b.plus(a))).toBe(true);
        expect(
          a
            .plus(b)
            .plus(c)
            .equals(a.plus(b.plus(c))),
        ).toBe(true);
        expect(a.plus(b).minus(b).equals(a)).toBe(true);
        expect(a.times(b).equals(b.times(a))).toBe(true);
        expect(a.times(b.plus(c)).equals(a.times(b).plus(a.times(c)))).toBe(true);
        if (!b.isZero()) expect(a.times(b).dividedBy(b).equals(a)).toBe(true);
        expect(a.negated().plus(a).isZero()).toBe(true);
        expect(a.abs().isNegative()).toBe(false);
      }),
      MANY,
    );
  });

  test('rounding is near, on the step, monotone and done once', () => {
    fc.assert(
      fc.property(
        anyLength,
        anyLength,
        fc.constantFrom(...TAPE),
        fc.constantFrom(...ROUNDINGS),
        (a, b, parts, rounding) => {
          const step = length(`1/${parts}`, 'in');
          const rounded = roundTo(a, step, rounding);
          expect(rounded.dividedBy(step).isInteger()).toBe(true);
          const most = rounding.startsWith('half') ? step.dividedBy(2) : step;
          expect(rounded.minus(a).abs().compare(most)).toBeLessThanOrEqual(0);
          expect(roundTo(rounded, step, rounding).equals(rounded)).toBe(true);
          if (a.compare(b) <= 0) {
            expect(rounded.compare(roundTo(b, step, rounding))).toBeLessThanOrEqual(0);
          }
        },
      ),
      MANY,
    );
  });
});

describe('the reader of lengths withstands anything', () => {
  const readsOrRefuses = (text: string) => {
    try {
      expect(Number.isFinite(parseLength(text).toNumber('m'))).toBe(true);
    } catch (error) {
      if (!isSettlineError(error)) throw error;
      expect(error.issues).toHaveLength(1);
      expect(error.params['position']).toBeGreaterThanOrEqual(0);
    }
  };

  test('arbitrary Unicode', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 150 }), readsOrRefuses), MANY);
  });

  test('pieces of lengths in any order', () => {
    const piece = fc.constantFrom(
      ...[
        '5',
        '6.5',
        '.5',
        '1/2',
        '9/8',
        '½',
        '⁷⁄₁₆',
        "'",
        '"',
        '′',
        '″',
        "''",
        '-',
        '−',
        '+',
        ' ',
      ],
      ...['ft', 'in', 'yd', 'm', 'mm', 'MM', 'us-ft', 'x', '/', ':', ',', '.', 'e3', '²', '~', '٣'],
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 9 }), fc.boolean(), (pieces, decimalComma) => {
        const text = pieces.join('');
        readsOrRefuses(text);
        try {
          const read = parseLength(text, { decimalComma, surveyFoot: true });
          const again = parseLength(` ${text} `, { decimalComma, surveyFoot: true });
          expect(again.equals(read)).toBe(true);
        } catch (error) {
          expect(isSettlineError(error)).toBe(true);
        }
      }),
      runs(10_000),
    );
  });

  test('a megabyte of anything is answered at once', () => {
    for (const unit of ['1', "5'", '1/', ' ', '½', '-', '(', "'", '\u200b', '9 ']) {
      expect(() => parseLength(unit.repeat(1_000_000 / unit.length))).toThrow(/longer|long/);
    }
  });
});
