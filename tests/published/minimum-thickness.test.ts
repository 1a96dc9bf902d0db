// Source: Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade
// association guide), tolerance tables. Read. The inch and the millimetre figures are printed side by
// side and rounded apart.
// Source: PAV-TEC-002-22 Construction of Interlocking Concrete Pavements, Purpose. Read.
import { describe, expect, test } from 'vitest';
import { minimumBuildUp } from 'settline/build-up';
import { MINIMUM_THICKNESS, PAVER_TOLERANCES } from 'settline/sources';

const uses = ['pedestrian', 'residential-driveway', 'parking-or-residential-street'] as const;

describe('minimum thicknesses by use, well-drained ground', () => {
  const printed = {
    pedestrian: { base: ['4', '100'], paver: ['2.375', '60'] },
    'residential-driveway': { base: ['6', '150'], paver: ['2.375', '60'] },
    'parking-or-residential-street': { base: ['8', '200'], paver: ['3.125', '80'] },
  } as const;

  test.each(uses)('%s', (use) => {
    const inches = minimumBuildUp({ use, subgrade: 'well-drained' });
    expect(inches.base.to('in').toString()).toBe(printed[use].base[0]);
    expect(inches.publishedBase.to('in').toString()).toBe(printed[use].base[0]);
    expect(inches.paver.to('in').toString()).toBe(printed[use].paver[0]);
    expect(inches.bedding.to('in').toString()).toBe('1');
    expect(inches.adjustments).toEqual([]);
    expect(inches.sources).toEqual(['paver-tolerances']);
    const millimetres = minimumBuildUp({ use, subgrade: 'well-drained', edition: 'mm' });
    expect(millimetres.base.to('mm').toString()).toBe(printed[use].base[1]);
    expect(millimetres.paver.to('mm').toString()).toBe(printed[use].paver[1]);
    expect(millimetres.bedding.to('mm').toString()).toBe('25');
  });

  test('the construction guide prints the same paver thicknesses', () => {
    // PAV-TEC-002-22, Purpose: 60 mm (2 3/8 in) and 80 mm (3 1/8 in)
    expect(MINIMUM_THICKNESS.pedestrian.paver.in.value).toBe('2.375');
    expect(MINIMUM_THICKNESS['parking-or-residential-street'].paver.mm.value).toBe('80');
  });
});

describe('more base on poor ground', () => {
  // From memory: 50 to 100 mm more on wet or weak clay or in frost; no source. Marked so.
  test.each([
    ['clay', false, '2', 'common-practice'],
    ['wet-or-weak', false, '4', 'common-practice'],
    ['well-drained', true, '2', 'common-practice'],
    ['clay', true, '4', 'common-practice'],
    ['wet-or-weak', true, '6', 'common-practice'],
  ] as const)('%s, frost %s: %s in more', (subgrade, frost, inches, status) => {
    for (const use of uses) {
      const least = minimumBuildUp({ use, subgrade, frost });
      expect(least.base.minus(least.publishedBase).to('in').toString()).toBe(inches);
      expect(least.adjustments.map((one) => one.status)).toEqual(
        least.adjustments.map(() => status),
      );
      expect(least.notes).toHaveLength(least.adjustments.length);
      expect(least.notes.join()).toContain('common practice, no source');
      expect(least.sources).toContain('common-practice');
    }
  });

  test('the structure is left to an engineer', () => {
    const { cautions } = minimumBuildUp({ use: 'pedestrian', subgrade: 'clay' });
    expect(cautions.map(({ id }) => id)).toEqual(['structure']);
    expect(cautions[0]?.text).toContain('licensed engineer');
  });
});

test('tolerances as printed', () => {
  // same guide, tolerance tables, inch edition
  expect(
    Object.fromEntries(Object.entries(PAVER_TOLERANCES).map(([name, { value }]) => [name, value])),
  ).toEqual({
    baseThicknessOver: '0.75',
    baseThicknessUnder: '0.5',
    baseSurfacePer10ft: '0.375',
    surfaceFlatnessPer10ft: '0.375',
    jointLeast: '0.0625',
    jointMost: '0.1875',
    lippageMost: '0.125',
    bondLinePer50ft: '0.5',
    jointFillBelowTop: '0.5',
    slopeLeast: '2',
  });
  for (const { source, status } of Object.values(PAVER_TOLERANCES)) {
    expect(source).toBe('paver-tolerances');
    expect(status).toBe('read');
  }
});
