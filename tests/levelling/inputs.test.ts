import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { buildUp, lifts } from 'settline/build-up';
import {
  allowableMisclosure,
  beamError,
  closeBenchmark,
  curvatureRefraction,
  cutFill,
  describeCutFill,
  errorBudget,
  gaugeBlock,
  headingError,
  laserReversal,
  reduceLevels,
  rodTargets,
  rodTilt,
  spreadMisclosure,
  stakeRods,
  twoPegTest,
} from 'settline/levelling';
import { length } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const WALK = buildUp({
  layers: [
    { name: 'paver', thickness: '60 mm' },
    { name: 'base', thickness: '250 mm' },
  ],
});
const LIFTS = lifts({ thickness: '250 mm', maxLift: '100 mm', compactedPerLoose: '0.8' });
const SET_UP = { benchmark: '30 m', back: '1.42 m' };

const BOOK = {
  start: '30 m',
  rows: [
    { point: 'BM', back: '1.5 m', distance: '0 m' },
    { point: 'A', intermediate: '1.2 m', distance: '10 m' },
    { point: 'TP', fore: '1.4 m', back: '1.6 m', distance: '20 m' },
    { point: 'BM', fore: '1.7 m', distance: '40 m' },
  ],
  known: '30 m',
  allowable: { k: '10 mm', per: '1 km' },
  adjustBy: 'distance',
} as const;

const CASES: Readonly<Record<string, MisspeltCase>> = {
  reduceLevels: [
    reduceLevels,
    BOOK,
    [
      ['strat', 'start'],
      ['row', 'rows'],
      ['knwon', 'known'],
      ['alowable', 'allowable'],
      ['allowable.K', 'k'],
      ['adjustby', 'adjustBy'],
      ['rows[0].bakc', 'back'],
      ['rows[1].intermediat', 'intermediate'],
      ['rows[3].fores', 'fore'],
      ['rows[2].distanse', 'distance'],
    ],
  ],
  allowableMisclosure: [
    allowableMisclosure,
    { rule: { k: '3 mm', per: 'set-up' }, setUps: 4 },
    [
      ['rules', 'rule'],
      ['setups', 'setUps'],
      ['rule.pre', 'per'],
    ],
  ],
  spreadMisclosure: [
    spreadMisclosure,
    { known: '1 m', points: [{ point: 'A', elevation: '1.01 m', along: 1 }] },
    [
      ['knwon', 'known'],
      ['points[0].alnog', 'along'],
    ],
  ],
  cutFill: [
    cutFill,
    {
      instrumentHeight: SET_UP,
      reading: '1 m',
      surface: 'subgrade',
      target: '29.7 m',
      tolerance: '1 cm',
      uncertainty: '1 mm',
    },
    [
      ['instrumentheight', 'instrumentHeight'],
      ['instrumentHeight.benchmarks', 'benchmark'],
      ['tolrance', 'tolerance'],
      ['surfcae', 'surface'],
    ],
  ],
  twoPegTest: [
    twoPegTest,
    {
      midway: { a: '1.8 m', b: '1.3 m' },
      offset: { a: '1.41 m', b: '0.9 m' },
      distances: { midway: { a: '20 m', b: '20 m' }, offset: { a: '50 m', b: '10 m' } },
      rule: { error: '3 mm', over: '30 m', reading: '1 mm' },
    },
    [
      ['midWay', 'midway'],
      ['distance', 'distances'],
      ['distances.offsets', 'offset'],
      ['distances.midway.A', 'a'],
      ['rule.errors', 'error'],
    ],
  ],
  laserReversal: [
    laserReversal,
    {
      distance: '30 m',
      x: { first: '1 m', second: '1.001 m' },
      y: { first: '1 m', second: '1.001 m' },
      accuracy: { error: '1 mm', over: '10 m' },
      uncertainty: '1 mm',
    },
    [
      ['X', 'x'],
      ['y.frist', 'first'],
      ['acuracy', 'accuracy'],
      ['accuracy.eror', 'error'],
      ['accuracy.ovr', 'over'],
    ],
  ],
  beamError: [
    beamError,
    { distance: '30 m', accuracy: { angle: '10 arcsec' }, limit: '3 mm' },
    [
      ['accuracy.angel', 'angle'],
      ['limt', 'limit'],
    ],
  ],
  headingError: [
    headingError,
    { gradeX: '1%', gradeY: '2%', heading: '3 deg', at: { x: '10 m', y: '5 m' } },
    [
      ['headin', 'heading'],
      ['at.Y', 'y'],
    ],
  ],
  gaugeBlock: [
    gaugeBlock,
    { slope: '2%', length: '2 m', error: '1 mm' },
    [
      ['lenght', 'length'],
      ['errors', 'error'],
    ],
  ],
  rodTilt: [
    rodTilt,
    { reading: '2 m', lean: { by: '1 cm', over: '1 m' } },
    [
      ['leans', 'lean'],
      ['lean.ovr', 'over'],
    ],
  ],
  curvatureRefraction: [
    curvatureRefraction,
    { sight: '60 m', refraction: '1/7', limit: '1 mm' },
    [['refracton', 'refraction']],
  ],
  errorBudget: [
    errorBudget,
    {
      random: [{ name: 'rod', sigma: '1 mm' }],
      systematic: [{ name: 'tilt', error: '-1 mm' }],
      tolerance: '1 cm',
      coverage: 2,
      deviation: '5 mm',
    },
    [
      ['randon', 'random'],
      ['systematics', 'systematic'],
      ['coverge', 'coverage'],
      ['random[0].sigm', 'sigma'],
      ['systematic[0].errors', 'error'],
    ],
  ],
  closeBenchmark: [
    closeBenchmark,
    {
      ...SET_UP,
      shots: [
        { point: 'A', reading: '1 m', after: '1 h' },
        { point: 'BM', reading: '1.42 m', known: '30 m', after: '2 h' },
      ],
      allowable: '1 cm',
    },
    [
      ['benchmarks', 'benchmark'],
      ['shot', 'shots'],
      ['shots[0].readng', 'reading'],
      ['shots[1].knwon', 'known'],
      ['shots[1].aftr', 'after'],
    ],
  ],
};

const ROD_STAKES = {
  instrumentHeight: '31.42 m',
  buildUp: WALK,
  lifts: LIFTS,
  stakes: [{ id: 'A', finishedGrade: '30 m', ground: '1 m' }],
  rodLength: '4 m',
} as const;
const ROD_TARGETS = {
  instrumentHeight: SET_UP,
  finishedGrade: '30 m',
  buildUp: WALK,
  lifts: LIFTS,
  rodLength: '4 m',
} as const;

describe('a misspelt field is refused with the name that was meant', () => {
  testMisspelt(CASES);

  test('also beside a build-up', () => {
    const { rodLength, ...targets } = ROD_TARGETS;
    const meant = (run: () => unknown) =>
      faultsOf(run).map(({ path, params }) => [pathText(path), params['meant']]);
    expect(meant(() => rodTargets({ ...targets, rodLenght: rodLength } as never))).toEqual([
      ['rodLenght', 'rodLength'],
    ]);
    const stakes = [{ id: 'A', finishGrade: '30 m' }];
    expect(meant(() => stakeRods({ ...ROD_STAKES, stakes } as never))).toEqual([
      ['stakes[0].finishGrade', 'finishedGrade'],
    ]);
  });
});

describe('answers or refuses, whatever is put into a field', () => {
  testGarbage({
    ...Object.fromEntries(
      Object.entries(CASES).map(([name, [run, valid]]) => [name, [run, valid] as const]),
    ),
    // the fields of a result that is passed on are spoilt as well
    rodTargets: [rodTargets, ROD_TARGETS],
    stakeRods: [stakeRods, ROD_STAKES],
  });

  test('describeCutFill takes what cutFill gives, or a surface and a cut', () => {
    const wrong = [
      undefined,
      null,
      5,
      [],
      {},
      { surface: 'base', cut: '5 mm' },
      { cut: length('1 m') },
    ];
    for (const value of wrong) {
      const fault = expectFault(() => describeCutFill(value as never, { as: 'mm' }), 'WRONG_TYPE');
      expect(fault.message).toBe('pass the result of cutFill()');
    }
    const cut = { surface: 'base top', cut: length('5 mm') };
    expectFault(() => describeCutFill(cut, null as never), 'WRONG_TYPE');
    expect(describeCutFill(cut)).toBe('cut 5 mm to base top');
  });
});

describe('one fault for each bad field, all at once', () => {
  const faults = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${pathText(path)} ${code}`);

  test('a bad reading does not hide the rows that cannot stand', () => {
    const rows = [
      { point: 'BM', back: '1.5' },
      { point: 'A', intermediate: '1.2 m', fore: '1 m' },
      { point: 'TP', fore: '1.4 m', backs: '1.6 m' },
      { point: 'B' },
      { point: 'BM', intermediate: '1.7 m' },
    ];
    expect(faults(() => reduceLevels({ start: '30 m', rows, known: '30 m' }))).toEqual([
      'rows[0].back UNIT_MISSING',
      'rows[2].backs UNKNOWN_FIELD',
      'rows[1] BOOK_ROW',
      'rows[3] BOOK_ROW',
      'rows[4].fore BOOK_ROW',
    ]);
  });

  test('every fault of a level book says why, for translation', () => {
    const reasons = (rows: readonly object[]) =>
      faultsOf(() => reduceLevels({ start: '30 m', rows } as never)).map(
        ({ params }) => params['reason'],
      );
    const start = { point: 'BM', back: '1 m' };
    const end = { point: 'BM', fore: '1 m' };
    expect(reasons([end, end])).toEqual(['first-row', 'no-backsight']);
    expect(reasons([start, { point: 'A' }, end])).toEqual(['no-reading']);
    expect(reasons([start, { point: 'A', back: '1 m' }, end])).toEqual(['back-alone']);
    expect(reasons([start, { ...end, intermediate: '1 m' }])).toEqual(['sight-not-alone']);
    expect(reasons([start, { ...end, back: '1 m' }])).toEqual(['last-row']);
  });

  test('set-ups and distances, in order', () => {
    const along = (...line: readonly (number | string)[]) =>
      faults(() =>
        spreadMisclosure({
          known: '1 m',
          points: line.map((one) => ({ point: 'A', elevation: '1 m', along: one })),
        }),
      );
    expect(along(1, '2 m', 3)).toEqual(['points[1].along WRONG_TYPE']);
    expect(along('1 m', '3 m', '2 m')).toEqual(['points[2].along NOT_INCREASING']);
    expect(along(2, 0, 3)).toEqual(['points[1].along NOT_INCREASING']);
    expect(along('1 m', '1 m', 0)).toEqual([
      'points[2].along NOT_INCREASING',
      'points[2].along NOT_POSITIVE',
    ]);
    // nothing is nothing, counted or measured
    const points = [
      { point: 'A', elevation: '1 m', along: 0 },
      { point: 'B', elevation: '1.01 m', along: '5 m' },
    ];
    expect(spreadMisclosure({ known: '1 m', points }).points[0]?.correction.isZero()).toBe(true);
  });

  test('two set-ups balanced the same way are told beside a bad reading', () => {
    const pegs = {
      midway: { a: '1.8 m', b: '1.3' },
      offset: { a: '1.4 m', b: '0.9 m' },
      distances: { midway: '20 m', offset: { a: '30 m', b: '30 m' } },
    };
    expect(faults(() => twoPegTest(pegs))).toEqual([
      'midway.b UNIT_MISSING',
      'distances SIGHTS_EQUAL',
    ]);
  });

  test('a rule says what it counts by', () => {
    const [fault] = faultsOf(() => allowableMisclosure({ rule: { k: '3 mm', per: '1 km' } }));
    expect([fault?.path, fault?.message]).toEqual([
      ['distance'],
      'missing. The rule counts by distance, such as "250 m"',
    ]);
    const [per] = faultsOf(() => allowableMisclosure({ rule: { k: '3 mm', per: '5' } }));
    expect(per?.message).toContain('"set-up" or "1 km"');
  });
});
