// The inch and the millimetre figures are printed side by side and rounded apart.
import { describe, expect } from 'vitest';
import { minimumBuildUp } from 'settline/build-up';
import { MINIMUM_THICKNESS, PAVER_TOLERANCES } from 'settline/sources';
import { expectExact } from '../printed.js';
import { published, publishedEach } from './published.js';

const uses = ['pedestrian', 'residential-driveway', 'parking-or-residential-street'] as const;

describe('minimum thicknesses by use, well-drained ground', () => {
  const printed = {
    pedestrian: { base: ['4', '100'], paver: ['2.375', '60'] },
    'residential-driveway': { base: ['6', '150'], paver: ['2.375', '60'] },
    'parking-or-residential-street': { base: ['8', '200'], paver: ['3.125', '80'] },
  } as const;

  publishedEach({ source: 'paver-tolerances', section: 'tolerance tables', kind: 'printed' }, uses)(
    '%s',
    (use) => {
      const inches = minimumBuildUp({ use, subgrade: 'well-drained' });
      expectExact(inches.base.to('in').toString(), printed[use].base[0]);
      expectExact(inches.publishedBase.to('in').toString(), printed[use].base[0]);
      expectExact(inches.paver.to('in').toString(), printed[use].paver[0]);
      expectExact(inches.bedding.to('in').toString(), '1');
      expect(inches.adjustments).toEqual([]);
      expect(inches.sources).toEqual(['paver-tolerances']);
      const millimetres = minimumBuildUp({ use, subgrade: 'well-drained', edition: 'mm' });
      expectExact(millimetres.base.to('mm').toString(), printed[use].base[1]);
      expectExact(millimetres.paver.to('mm').toString(), printed[use].paver[1]);
      expectExact(millimetres.bedding.to('mm').toString(), '25');
    },
  );

  published(
    { source: 'paver-construction', section: 'Purpose', kind: 'printed' },
    'the construction guide prints the same paver thicknesses',
    () => {
      // 60 mm (2 3/8 in) and 80 mm (3 1/8 in)
      expectExact(MINIMUM_THICKNESS.pedestrian.paver.in.value, '2.375');
      expectExact(MINIMUM_THICKNESS['parking-or-residential-street'].paver.mm.value, '80');
    },
  );
});

published(
  { source: 'paver-tolerances', section: 'tolerance tables, inch edition', kind: 'printed' },
  'tolerances as printed',
  () => {
    const printed = {
      baseThicknessOver: '0.75',
      baseThicknessUnder: '0.5',
      baseSurfacePer10ft: '0.375',
      surfaceFlatnessPer10ft: '0.375',
      minimumJoint: '0.0625',
      maximumJoint: '0.1875',
      maximumLippage: '0.125',
      bondLinePer50ft: '0.5',
      jointFillBelowTop: '0.5',
      minimumSlope: '2',
    };
    expectExact(
      Object.entries(PAVER_TOLERANCES).map(([name, { value }]) => `${name} ${value}`),
      Object.entries(printed).map(([name, value]) => `${name} ${value}`),
    );
  },
);
