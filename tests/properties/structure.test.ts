import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  allowableEsals,
  designEsals,
  requiredModulus,
  requiredStructuralNumber,
  serviceLife,
  structuralNumber,
  structuralThickness,
} from 'settline/structure';
import { length, pressure } from 'settline/units';

/** Floats of a measure: none so small that it is refused as a slip. */
const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-20 ? 0 : x));
const terms = fc.record({
  reliability: between(50, 99.99),
  overallDeviation: between(0, 1),
  serviceabilityLoss: between(0.2, 4),
});
const modulus = between(300, 100_000).map((psi) => pressure(psi, 'psi'));

test('traffic, structural number and modulus turn each other round', () => {
  fc.assert(
    fc.property(terms, modulus, between(0.1, 15), (own, resilientModulus, given) => {
      const { esals } = allowableEsals({ ...own, resilientModulus, structuralNumber: given });
      fc.pre(esals <= 1e10);
      const back = requiredStructuralNumber({ ...own, resilientModulus, esals });
      expect(Math.abs(back.structuralNumber - given)).toBeLessThan(1e-9);
      const ground = requiredModulus({ ...own, esals, structuralNumber: given });
      expect(ground.resilientModulus.toNumber('Pa') / resilientModulus.toNumber('Pa')).toBeCloseTo(
        1,
        10,
      );
    }),
  );
});

test('more structure, firmer ground, less reliability: more traffic', () => {
  fc.assert(
    fc.property(
      terms,
      modulus,
      between(0.01, 29),
      between(1e-3, 1),
      (own, resilientModulus, sn, d) => {
        const at = (changed: object) =>
          allowableEsals({ ...own, resilientModulus, structuralNumber: sn, ...changed }).esals;
        expect(at({ structuralNumber: sn + d })).toBeGreaterThan(at({}));
        expect(at({ resilientModulus: resilientModulus.times(1 + d) })).toBeGreaterThan(at({}));
        expect(at({ reliability: 50 })).toBeGreaterThanOrEqual(at({}));
      },
    ),
  );
});

test('layers add up in any unit, and the last one can be found from the rest', () => {
  const layer = fc.record({
    inches: fc.integer({ min: 1, max: 400 }).map((eighths) => eighths / 8),
    coefficient: fc.integer({ min: 1, max: 50 }).map((n) => (n / 100).toString()),
    drainage: fc.integer({ min: 4, max: 14 }).map((n) => (n / 10).toString()),
  });
  fc.assert(
    fc.property(fc.array(layer, { minLength: 2, maxLength: 6 }), (list) => {
      const stack = (unit: 'in' | 'mm') =>
        structuralNumber({
          layers: list.map(({ inches, ...rest }, k) => ({
            name: `${k}`,
            thickness:
              unit === 'in' ? length(inches, 'in') : length(length(inches, 'in').to('mm'), 'mm'),
            ...rest,
          })),
        });
      const { structuralNumber: needed, layers } = stack('in');
      expect(stack('mm').structuralNumber).toBe(needed);
      fc.pre(needed <= 30);
      const last = list.at(-1);
      const above = layers.at(-2)?.downTo ?? 0;
      if (last === undefined) return;
      const { inches, ...own } = last;
      const found = structuralThickness({ needed, above, ...own, step: '1/8 in' });
      expect(found.thickness.toNumber('in')).toBeCloseTo(inches, 9);
    }),
  );
});

test('the life is as long as its traffic was counted', () => {
  fc.assert(
    fc.property(
      between(0.01, 1000),
      between(0.1, 60),
      between(-0.1, 0.3),
      (perDay, years, growth) => {
        const { esals, firstYear } = designEsals({ perDay, years, growth });
        fc.pre(esals <= 1e10);
        const life = serviceLife({ esals, firstYear, growth }).years ?? NaN;
        expect(life / years).toBeCloseTo(1, 8);
      },
    ),
  );
});
