import { describe, expect, test } from 'vitest';
import {
  bedRange,
  beddingSand,
  bondDrift,
  borderCourse,
  checkGradation,
  edgeRestraint,
  geotextile,
  herringboneLines,
  jointSand,
  jointTopUp,
  orderPacks,
  rowFit,
  screedLevel,
  soldierCurve,
  unitCount,
  unitMass,
  unitSuitability,
  yieldCheck,
} from 'settline/materials';
import type { Worked } from 'settline';
import { formulaFaults } from '../formulas/evaluate-step.js';

const unit = { length: '200 mm', width: '100 mm' };
const paved = { area: '431 ft2', unit, joint: '1/8 in' } as const;
const bed = { area: '40 m2', thickness: '1 in', waste: 0.05, compactedPerLoose: '5/6' } as const;
const sand = { ...bed, compactedDryDensity: '1.7 t/m3', moisture: '0.06' } as const;
const drive = {
  unit: 'm',
  points: [
    [0, 0],
    [12, 0],
    [12, 5],
    [0, 5],
  ],
} as never;
const bay = { ...(drive as object), arcs: [{ edge: 1, bulgeMiddleOrdinate: 2.5 }] } as never;
const row = { size: '200 mm', joint: '3 mm' } as const;
const joints = { ...paved, depth: '60 mm', density: '1.6 t/m3', waste: '0.05' } as const;
const top = {
  ...paved,
  density: '1.6 t/m3',
  waste: '0.05',
  depthLost: '6 mm',
  limit: '1/4 in',
} as const;
const drift = { tolerance: '1/2 in', module: '4 in' } as const;
const packs = [
  { name: 'layer', holds: '8 m2' },
  { name: 'pallet', holds: 10 },
];

const rows: readonly (readonly [string, () => Worked])[] = [
  [
    'a bed',
    () =>
      bedRange({
        nominal: '1 in',
        deviations: [{ id: 'A', deviation: '-5 mm' }],
        limits: { minimum: '20 mm', maximum: '40 mm' },
      }),
  ],
  ['bedding sand', () => beddingSand(sand)],
  ['bulking in percent', () => beddingSand({ ...sand, bulking: '0.2' })],
  ['bulking in a jar', () => beddingSand({ ...bed, bulking: { damp: '9 in', flooded: '8 in' } })],
  [
    'sand that rises into the joints',
    () => beddingSand({ ...bed, rising: { unit, joint: '3 mm', rise: '20 mm' } }),
  ],
  ['a screed', () => screedLevel({ paver: '60 mm', bedding: '1 in', settlement: '6 mm' })],
  [
    'a gradation',
    () =>
      checkGradation({
        passing: [
          { sieve: '4 mm', percent: 100 },
          { sieve: '2 mm', percent: 79 },
          { sieve: '1 mm', percent: 58.5 },
          { sieve: '0.5 mm', percent: '49.7' },
        ],
        limits: [
          { sieve: '4 mm', minimum: 100, maximum: 100 },
          { sieve: '2 mm', minimum: 80, maximum: 100 },
          { sieve: '1 mm', minimum: 60, maximum: 70 },
          { sieve: '0.5 mm', minimum: 40, maximum: 50 },
          { sieve: '0.25 mm', minimum: 0, maximum: 10 },
        ],
        uncertainty: 1.2,
      }),
  ],
  ['joint sand', () => jointSand(joints)],
  ['joints full enough', () => jointTopUp({ ...top, depthLost: '1/4 in' })],
  ['joints near the limit', () => jointTopUp({ ...top, uncertainty: '1 mm' })],
  ['joints to top up', () => jointTopUp({ ...top, depthLost: '9 mm', uncertainty: '1 mm' })],
  ['a border', () => borderCourse({ outline: drive, unit, joint: '3 mm', course: 'soldier' })],
  [
    'a border round a bay',
    () => borderCourse({ outline: bay, unit, joint: '3 mm', course: 'sailor', corner: 'mitre' }),
  ],
  [
    'a soldier course on a curve',
    () =>
      soldierCurve({
        unit,
        joint: '3 mm',
        maximumJoint: '1/4 in',
        course: 'soldier',
        radius: '3 m',
      }),
  ],
  [
    'edge restraint',
    () =>
      edgeRestraint({
        runs: [
          '12 m',
          '6 ft',
          { length: '9 m', isAgainstWall: true },
          { length: '20 m', isClosed: true },
        ],
        piece: '2.4 m',
        spikeSpacing: '1 ft',
        lap: '100 mm',
        spikesPerJoint: 2,
      }),
  ],
  [
    'fabric over a rectangle',
    () =>
      geotextile({
        length: '20 m',
        width: '22 ft',
        rollWidth: '4 m',
        rollLength: '12 m',
        overlap: '1 ft',
      }),
  ],
  [
    'fabric in one strip',
    () => geotextile({ length: '20 m', width: '12 ft', rollWidth: '4 m', overlap: '1 ft' }),
  ],
  [
    'fabric over an outline',
    () => geotextile({ outline: drive, rollWidth: '2 m', rollLength: '5 m', overlap: '0.3 m' }),
  ],
  [
    'fabric with upturns',
    () => geotextile({ outline: bay, rollWidth: '2 m', overlap: '1/3 m', upturn: '6 in' }),
  ],
  ['herringbone lines', () => herringboneLines({ unit, joint: '3 mm' })],
  ['drift of bias', () => bondDrift({ ...drift, bias: '1/64 in' })],
  ['drift of scatter', () => bondDrift({ ...drift, scatter: '0.7 mm' })],
  ['drift of both', () => bondDrift({ ...drift, bias: '1/64 in', scatter: '1 mm' })],
  ['a row of whole units', () => rowFit({ ...row, width: '4.06 m' })],
  [
    'a row of spread joints',
    () =>
      rowFit({
        ...row,
        width: '4.1 m',
        endJoints: 2,
        jointLimits: { minimum: '2 mm', maximum: '6 mm' },
      }),
  ],
  ['a row with one cut', () => rowFit({ ...row, width: '13 ft', endJoints: 0 })],
  ['a row with two cuts', () => rowFit({ ...row, width: '4.73 m' })],
  ['units and packs', () => orderPacks({ area: '43 m2', packs })],
  ['the smallest order', () => orderPacks({ area: '3 m2', packs, minimum: 2 })],
  ['parts of packs', () => orderPacks({ area: '43 m2', packs, sellsPartPacks: true })],
  ['nothing to order', () => orderPacks({ area: '0 m2', packs, minimum: 2 })],
  [
    'mass of units',
    () => unitMass({ unit, thickness: '60 mm', density: '2.3 t/m3', joint: '1/8 in' }),
  ],
  [
    'shape of a unit',
    () => unitSuitability({ length: '200 mm', thickness: '3 in', use: 'residential-driveway' }),
  ],
  [
    'stone on tickets',
    () =>
      yieldCheck({
        tickets: ['20 t', { mass: '19.4 t', moisture: '0.08' }],
        moisture: '1/30',
        usedElsewhere: '1.2 t',
        compactedVolume: '22 yd3',
        expectedDryDensity: '2.1 t/m3',
      }),
  ],
];

describe('formulas of materials', () => {
  test.each(rows)('%s', (_, run) => {
    const { working } = run();
    expect(working.length).toBeGreaterThan(0);
    expect(formulaFaults(working)).toEqual([]);
  });

  test.each([
    'running-bond',
    'stack-bond',
    'basket-weave',
    'herringbone-90',
    'herringbone-45',
  ] as const)('cuts of %s', (pattern) => {
    const edge = [
      { length: '24 ft', angle: '30 deg', reuse: '1/3' },
      { length: '5 m', angle: '-200 deg' },
      { length: '5 m', isCurved: true },
      { length: '3 m', angle: '10 deg', turn: '90 deg' },
    ];
    const { working } = unitCount({ ...paved, pattern, edge, breakage: '0.03', reuse: '0.5' });
    expect(working.map(({ kind }) => kind).sort()).toEqual([
      ...Array<string>(5).fill('formula'),
      'procedure',
    ]);
    expect(formulaFaults(working)).toEqual([]);
  });
});
