// The published table prints inches and rounded millimetres: the smaller of the two decides.
// 2 3/8 in is 60.325 mm beside 60 mm, 3 1/8 in is 79.375 mm beside 80 mm, 1 in is 25.4 mm beside
// 25 mm, 4, 6 and 8 in are 101.6, 152.4 and 203.2 mm beside 100, 150 and 200 mm.
import { describe, expect, test } from 'vitest';
import { planJob, type JobInput } from 'settline/job';

type Pavement = JobInput['pavements'][number];
type Case = readonly [
  use: Pavement['use'],
  part: 'paver' | 'bedding' | 'base',
  thickness: string,
  warnings: readonly string[],
];

const MATERIAL: Readonly<Record<string, object>> = {
  bedding: { material: 'sand' },
  base: { material: 'stone' },
  'sub-base': { material: 'stone' },
};

const THICK = { paver: '100 mm', bedding: '25 mm', base: '600 mm' };

function warningsOf(ground: Partial<Pavement>, layers: Readonly<Record<string, string>>): string[] {
  const plan = planJob({
    version: 1,
    name: 'Edges of the table (an invented site)',
    stringHeight: '300 mm',
    stakeTolerance: '10 mm',
    pavements: [
      {
        id: 'court',
        name: 'Court',
        use: 'pedestrian',
        subgrade: 'well-drained',
        layers: Object.entries(layers).map(([kind, thickness]) => ({
          kind,
          thickness,
          ...MATERIAL[kind],
        })),
        outline: {
          unit: 'm',
          points: [
            [0, 0],
            [6, 0],
            [6, 4],
            [0, 4],
          ],
        },
        ...ground,
      },
    ],
    stringLines: [
      {
        id: 'north',
        pavement: 'court',
        stakes: ['N1', 'N2', 'N3'],
      },
    ],
    materials: {
      stones: [
        {
          id: 'stone',
          maxLift: '100 mm',
          compactedDryDensity: '2.1 t/m3',
          compactedPerLoose: 0.8,
        },
      ],
      sands: [{ id: 'sand', compactedDryDensity: '1.7 t/m3', compactedPerLoose: 0.9 }],
    },
    stakes: [
      { id: 'N1', x: '0 m', y: '-1 m' },
      { id: 'N2', x: '3 m', y: '-1 m' },
      { id: 'N3', x: '6 m', y: '-1 m' },
    ],
    soil: { bankDensity: '1.8 t/m3', loosePerBank: 1.25, compactedPerBank: 0.9 },
    truck: { boxVolume: '8 m3', payload: '12 t' },
  } as unknown as JobInput);
  return plan.warnings.map(({ code }) => code).filter((code) => /^(PAVER|BEDDING|BASE)/.test(code));
}

describe('layers against the smaller of the two editions', () => {
  const few = (use: Pavement['use'], least: string, less: string): readonly Case[] => [
    [use, 'paver', least, []],
    [use, 'paver', less, ['PAVER_BELOW_MINIMUM']],
  ];
  test.each<Case>([
    ...few('pedestrian', '60 mm', '59.99 mm'),
    ...few('residential-driveway', '60 mm', '59.99 mm'),
    ...few('parking-or-residential-street', '3 1/8 in', '79.37 mm'),
    ['residential-driveway', 'paver', '2 3/8 in', []],
    ['parking-or-residential-street', 'paver', '80 mm', []],
    ['pedestrian', 'bedding', '25 mm', []],
    ['pedestrian', 'bedding', '1 in', []],
    ['pedestrian', 'bedding', '24.99 mm', ['BEDDING_OFF_NOMINAL']],
    ['pedestrian', 'bedding', '25.41 mm', ['BEDDING_OFF_NOMINAL']],
    ['pedestrian', 'base', '100 mm', []],
    ['pedestrian', 'base', '99.99 mm', ['BASE_BELOW_MINIMUM']],
    ['residential-driveway', 'base', '150 mm', []],
    ['residential-driveway', 'base', '149.99 mm', ['BASE_BELOW_MINIMUM']],
    ['parking-or-residential-street', 'base', '200 mm', []],
    ['parking-or-residential-street', 'base', '199.99 mm', ['BASE_BELOW_MINIMUM']],
  ])('%s: %s of %s', (use, part, thickness, warnings) => {
    const layers = THICK;
    expect(warningsOf({ use }, { ...layers, [part]: thickness })).toEqual(warnings);
  });

  test('base and sub-base count together', () => {
    const layers = { paver: THICK.paver, bedding: THICK.bedding, base: '60 mm' };
    expect(warningsOf({}, { ...layers, 'sub-base': '40 mm' })).toEqual([]);
    expect(warningsOf({}, { ...layers, 'sub-base': '39.99 mm' })).toEqual(['BASE_BELOW_MINIMUM']);
  });

  test.each([
    [{ subgrade: 'clay' }, '150 mm', '149.99 mm'],
    [{ subgrade: 'wet-or-weak' }, '200 mm', '199.99 mm'],
    [{ subgrade: 'wet-or-weak', frost: true }, '250 mm', '249.99 mm'],
  ] as const)('common practice on %o: %s', (ground, least, less) => {
    const layers = { paver: THICK.paver, bedding: THICK.bedding };
    expect(warningsOf(ground, { ...layers, base: least })).toEqual([]);
    expect(warningsOf(ground, { ...layers, base: less })).toEqual(['BASE_BELOW_PRACTICE']);
  });
});
