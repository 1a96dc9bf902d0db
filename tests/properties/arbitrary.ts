import fc from 'fast-check';
import { length, type Length, type LengthUnit } from 'settline/units';
import { runs } from '../runs.js';

/** How many cases a property of the ground floor is tried on. */
export const MANY = runs(2_000);

/** How many cases a property of a whole calculation is tried on. */
export const SOME = runs(200);

const UNITS: readonly LengthUnit[] = ['mm', 'cm', 'm', 'in', 'ft', 'yd'];

/** Decimal digits as people type them: up to six before and nine after the point. */
export const digits = (most = 900_000): fc.Arbitrary<string> =>
  fc
    .tuple(fc.integer({ min: -most, max: most }), fc.integer({ min: 0, max: 9 }))
    .map(([whole, places]) => {
      if (places === 0) return `${whole}`;
      const text = `${Math.abs(whole)}`.padStart(places + 1, '0');
      const sign = whole < 0 ? '-' : '';
      return `${sign}${text.slice(0, -places)}.${text.slice(-places)}`;
    });

/** Any length within a site, of either sign, in any unit, thirds and survey feet included. */
export const anyLength: fc.Arbitrary<Length> = fc.oneof(
  fc.tuple(digits(), fc.constantFrom(...UNITS)).map(([value, unit]) => length(value, unit)),
  fc
    .tuple(fc.integer({ min: -100_000, max: 100_000 }), fc.integer({ min: 1, max: 128 }))
    .map(([n, d]) => length(`${n}/${d}`, 'in')),
  digits().map((value) => length(value, 'ft-us')),
);

/** A length of more than zero and less than a number of metres. */
export const positiveLength = (metres: number): fc.Arbitrary<Length> =>
  fc
    .tuple(fc.integer({ min: 1, max: 99_999 }), fc.constantFrom('mm', 'in'))
    .map(([steps, unit]) =>
      unit === 'mm' ? length(steps * 0.1, 'mm') : length(`${steps}/64`, 'in'),
    )
    .filter((one) => one.toNumber('m') < metres);
