import { describe, expect, test } from 'vitest';
import {
  baseOrder,
  bedRange,
  beddingSand,
  bondDrift,
  borderCourse,
  checkGradation,
  describeRowFit,
  describeScreedLevel,
  edgeRestraint,
  geotextile,
  geotextileOverlap,
  herringboneLines,
  jointSand,
  jointTopUp,
  orderPacks,
  outlineEdges,
  rowFit,
  screedLevel,
  soldierCurve,
  unitCount,
  unitMass,
  unitSuitability,
  yieldCheck,
} from 'settline/materials';
import { faultsOf } from '../faults.js';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const unit = { length: '200 mm', width: '100 mm' };
const outline = {
  unit: 'm',
  points: [
    [0, 0],
    [6, 0],
    [6, 4],
    [0, 4],
  ],
};
const stone = { compactedDryDensity: '3700 lb/yd3', compactedPerLoose: 0.8 };
const joints = { area: '9 m2', unit, joint: '3 mm', density: '1600 kg/m3' };
const row = { width: '4.73 m', size: '200 mm', joint: '3 mm' };
const bed = { paver: '60 mm', bedding: '25 mm', settlement: '6 mm' };

const cases: Readonly<Record<string, MisspeltCase>> = {
  baseOrder: [
    baseOrder,
    { area: '9 m2', thickness: '200 mm', ...stone, waste: 0.1 },
    [
      ['wast', 'waste'],
      ['are', 'area'],
      ['thicknes', 'thickness'],
      ['compactedPerLose', 'compactedPerLoose'],
      ['compactedDryDensty', 'compactedDryDensity'],
    ],
  ],
  'baseOrder of parts': [
    baseOrder,
    { parts: [{ name: 'drive', area: '9 m2', thickness: '200 mm' }], ...stone },
    [
      ['part', 'parts'],
      ['parts[0].thicknes', 'thickness'],
      ['parts[0].nam', 'name'],
    ],
  ],
  yieldCheck: [
    yieldCheck,
    {
      tickets: ['20 t', { mass: '20 t', moisture: 0.05 }],
      compactedVolume: '20 m3',
      expectedDryDensity: '2 t/m3',
      limits: { minimum: 0.9, maximum: 1.1 },
    },
    [
      ['moistur', 'moisture'],
      ['tickets[1].mas', 'mass'],
      ['limits.minimun', 'minimum'],
    ],
  ],
  beddingSand: [
    beddingSand,
    {
      area: '9 m2',
      thickness: '25 mm',
      settlement: '6 mm',
      bulking: { damp: '10 in', flooded: '8 in' },
      rising: { unit, joint: '3 mm', rise: '10 mm' },
    },
    [
      ['setlement', 'settlement'],
      ['bulking.floded', 'flooded'],
      ['rising.ris', 'rise'],
      ['rising.unit.widht', 'width'],
    ],
  ],
  bedRange: [
    bedRange,
    {
      nominal: '25 mm',
      deviations: [{ id: 'A', deviation: '7 mm' }],
      limits: { minimum: '20 mm', maximum: '30 mm' },
    },
    [
      ['uncertanty', 'uncertainty'],
      ['deviations[0].deviaton', 'deviation'],
      ['limits.maximun', 'maximum'],
    ],
  ],
  screedLevel: [screedLevel, bed, [['finishGrade', 'finishedGrade']]],
  checkGradation: [
    checkGradation,
    {
      passing: [{ sieve: '1.18 mm', percent: 90 }],
      limits: [{ sieve: '1.18 mm', minimum: 80, maximum: 100 }],
    },
    [
      ['passings', 'passing'],
      ['passing[0].percnt', 'percent'],
      ['limits[0].seive', 'sieve'],
    ],
  ],
  unitCount: [
    unitCount,
    { area: '9 m2', unit, joint: '3 mm', edge: [{ length: '3 m', angle: '45 deg' }], reuse: 0.1 },
    [
      ['patern', 'pattern'],
      ['edge[0].angel', 'angle'],
      ['edge[0].iscurved', 'isCurved'],
      ['unit.lenght', 'length'],
    ],
  ],
  outlineEdges: [outlineEdges, { outline, axis: '30 deg' }, [['axes', 'axis']]],
  unitMass: [
    unitMass,
    {
      unit,
      thickness: '60 mm',
      density: '2300 kg/m3',
      pallet: { unitsPerLayer: 40, layers: 10, empty: '20 kg' },
    },
    [
      ['joints', 'joint'],
      ['pallet.layer', 'layers'],
    ],
  ],
  unitSuitability: [
    unitSuitability,
    {
      length: '300 mm',
      thickness: '60 mm',
      use: 'residential-driveway',
      smallestCut: { share: 0.5, width: '50 mm' },
    },
    [
      ['guid', 'guide'],
      ['smallestCut.shares', 'share'],
      ['minimumCutShar', 'minimumCutShare'],
    ],
  ],
  rowFit: [
    rowFit,
    { ...row, endJoints: 1, jointLimits: { minimum: '2 mm', maximum: '6 mm' } },
    [
      ['endJoint', 'endJoints'],
      ['minimumPeice', 'minimumPiece'],
      ['jointLimits.minmum', 'minimum'],
    ],
  ],
  bondDrift: [
    bondDrift,
    { bias: '0.4 mm', scatter: '0.1 mm', tolerance: '13 mm', module: '103 mm' },
    [
      ['bia', 'bias'],
      ['tolerence', 'tolerance'],
    ],
  ],
  herringboneLines: [
    herringboneLines,
    { unit, joint: '3 mm', width: '4 m' },
    [
      ['tolerence', 'tolerance'],
      ['unit.widths', 'width'],
    ],
  ],
  borderCourse: [
    borderCourse,
    {
      outline,
      unit,
      joint: '3 mm',
      course: 'soldier',
      corner: 'mitre',
      edges: [true, true, false, true],
    },
    [
      ['corners', 'corner'],
      ['edge', 'edges'],
    ],
  ],
  soldierCurve: [
    soldierCurve,
    { unit, joint: '3 mm', maximumJoint: '5 mm', radius: '3 m' },
    [
      ['maximumJoints', 'maximumJoint'],
      ['radios', 'radius'],
    ],
  ],
  jointSand: [
    jointSand,
    { ...joints, depth: '60 mm', recess: '3 mm', bag: '25 kg' },
    [
      ['riseFromBet', 'riseFromBed'],
      ['reces', 'recess'],
      ['bags', 'bag'],
    ],
  ],
  jointTopUp: [
    jointTopUp,
    { ...joints, depthLost: '15 mm', limit: '12 mm' },
    [
      ['limits', 'limit'],
      ['depthLos', 'depthLost'],
    ],
  ],
  edgeRestraint: [
    edgeRestraint,
    {
      runs: ['12 m', { length: '9 m', isCurved: true }],
      piece: '2.4 m',
      spikeSpacing: '300 mm',
      lap: '10 mm',
    },
    [
      ['spikePerJoint', 'spikesPerJoint'],
      ['runs[1].isClose', 'isClosed'],
      ['runs[1].lenght', 'length'],
    ],
  ],
  geotextile: [
    geotextile,
    { length: '12.7 m', width: '5.7 m', rollWidth: '3.8 m', overlap: '600 mm', rollLength: '50 m' },
    [
      ['upturns', 'upturn'],
      ['overlaps', 'overlap'],
      ['rollLenght', 'rollLength'],
    ],
  ],
  'geotextile over an outline': [
    geotextile,
    {
      outline: {
        unit: 'm',
        points: [
          [0, 0],
          [9, 0],
          [9, 4],
        ],
        arcs: [{ edge: 0, bulgeMiddleOrdinate: 1 }],
      },
      rollWidth: '3.8 m',
      overlap: '600 mm',
      rollLength: '50 m',
      endLap: '1 m',
    },
    [
      ['outlin', 'outline'],
      ['outline.point', 'points'],
      ['rollWidht', 'rollWidth'],
    ],
  ],
  geotextileOverlap: [geotextileOverlap, { cbr: 2 }, [['tables', 'table']]],
  orderPacks: [
    orderPacks,
    { units: 3129, packs: [{ name: 'layer', holds: 40 }], minimum: 2 },
    [
      ['unit', 'units'],
      ['soldby', 'soldBy'],
      ['packs[0].hold', 'holds'],
    ],
  ],
  'orderPacks of a mass': [
    orderPacks,
    { mass: '260 kg', packs: [{ name: 'bag', holds: '25 kg' }] },
    [['mas', 'mass']],
  ],
  describeRowFit: [
    (options) => describeRowFit(rowFit(row), options),
    { system: 'us' },
    [['sistem', 'system']],
  ],
  describeScreedLevel: [
    (options) => describeScreedLevel(screedLevel(bed), options),
    { system: 'metric' },
    [['systems', 'system']],
  ],
};

describe('misspelt fields', () => {
  testMisspelt(cases);
});

describe('garbage', () => {
  testGarbage(
    Object.fromEntries(
      Object.entries(cases).map(([name, [run, valid]]) => [name, [run, valid, ['outline']]]),
    ),
  );
});

test('a bad density gives one fault and hides no other', () => {
  const codes = (options: object) =>
    faultsOf(() => baseOrder(options as never)).map(
      ({ code, path }) => `${code} ${path.join('.')}`,
    );
  const layer = { area: '9 m2', thickness: '200 mm' };
  expect(codes({ ...layer, compactedDryDensity: '9 t/m3', compactedPerLoose: 0.8 })).toEqual([
    'OUT_OF_RANGE compactedDryDensity',
  ]);
  expect(codes({ ...layer, compactedDryDensity: 5, looseDryDensity: '2 t/m3' })).toEqual([
    'UNIT_MISSING compactedDryDensity',
  ]);
  expect(codes({ area: 9, thickness: '-1 m', compactedPerLoose: 'x', moisture: 2 })).toEqual([
    'UNIT_MISSING area',
    'NEGATIVE thickness',
    'NOT_A_NUMBER compactedPerLoose',
    'OUT_OF_RANGE moisture',
  ]);
});

test('null is not left out', () => {
  expect(
    faultsOf(() => unitCount({ area: '9 m2', unit, joint: '3 mm', pattern: null as never })),
  ).toMatchObject([{ code: 'UNKNOWN_CHOICE', path: ['pattern'] }]);
  expect(faultsOf(() => geotextileOverlap({ cbr: 2, table: null as never }))).toMatchObject([
    { code: 'UNKNOWN_CHOICE', path: ['table'] },
  ]);
});
