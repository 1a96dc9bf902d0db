import { describe, expect, test } from 'vitest';
import { convert, DIMENSIONS, SI_UNIT, unitsOf, type Unit } from 'settline/units';
import { UNITS, type UnitDefinition } from '../../src/units/catalogue.js';
import { unitEntry } from '../../src/units/engine.js';
import reference from '../reference/units.json' with { type: 'json' };

/** Names of the reference table that the catalogue spells otherwise. */
const SPELLING: Readonly<Record<string, string>> = {
  L: 'l',
  ac: 'acre',
  gal: 'gal-us',
  psf: 'lbf/ft2',
  slope: 'ratio',
};

const known = new Set<string>(DIMENSIONS.flatMap((dimension) => unitsOf(dimension)));
const spelled = (name: string): string => SPELLING[name] ?? name;
const rows = reference.factors.filter(
  ({ from, to }) => known.has(spelled(from)) && known.has(spelled(to)),
);

describe('every exact factor of the reference table', () => {
  test('the table covers the catalogue', () => {
    const covered = new Set(rows.flatMap(({ from, to }) => [spelled(from), spelled(to)]));
    expect([...known].filter((unit) => !covered.has(unit))).toEqual([]);
    expect(rows.length).toBeGreaterThan(130);
  });

  test.each(rows)('$category: $from to $to', ({ from, to, factor, exact, num, den }) => {
    const got = convert(1, spelled(from) as Unit, spelled(to) as never);
    if (!exact) {
      // only degrees and gons against radians are not rational
      expect(got.minus(factor).abs().div(factor).lt('1e-39')).toBe(true);
      return;
    }
    // relative error 0: den times the factor, in the unit of den, is num to the last digit
    const whole = convert(den ?? '1', spelled(from) as Unit, spelled(to) as never);
    expect(whole.toFixed()).toBe(num);
  });
});

test('each unit is its own pair, and SI is one', () => {
  for (const dimension of DIMENSIONS) {
    expect(UNITS[dimension]).toHaveProperty([SI_UNIT[dimension], 'num'], 1);
    expect(UNITS[dimension]).toHaveProperty([SI_UNIT[dimension], 'den'], 1);
    for (const unit of unitsOf(dimension)) {
      expect(unitEntry(unit)?.dimension, unit).toBe(dimension);
    }
  }
});

test('no symbol belongs to two dimensions', () => {
  const all = DIMENSIONS.flatMap((dimension) => unitsOf(dimension));
  expect(new Set(all).size).toBe(all.length);
});

test('each unit has a name of its own, and two units of one have it in the plural', () => {
  const names = DIMENSIONS.flatMap((dimension) =>
    Object.entries<UnitDefinition>(UNITS[dimension]).map(([symbol, unit]) => ({ symbol, ...unit })),
  );
  for (const { symbol, singular, plural } of names) {
    expect(singular, symbol).toMatch(/^[A-Za-z]/);
    if (['ratio', 'percent'].includes(symbol)) continue;
    expect(plural, symbol).not.toBe(singular);
    expect(plural, symbol).toMatch(/s\b|feet/);
  }
  expect(new Set(names.map(({ singular }) => singular)).size).toBe(names.length);
});

test('pi in the catalogue is pi', () => {
  const degrees = convert(180, 'deg', 'rad').toFixed();
  expect(degrees).toBe('3.141592653589793238462643383279502884197');
  expect(Math.abs(Number(degrees) - Math.PI)).toBe(0);
});

test('the tables cannot be changed', () => {
  expect(Object.isFrozen(UNITS)).toBe(true);
  for (const dimension of DIMENSIONS) {
    expect(Object.isFrozen(UNITS[dimension])).toBe(true);
    for (const entry of Object.values(UNITS[dimension])) expect(Object.isFrozen(entry)).toBe(true);
  }
});
