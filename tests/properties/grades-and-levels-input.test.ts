import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import { buildUp } from 'settline/build-up';
import * as grading from 'settline/grading';
import * as levelling from 'settline/levelling';
import { isQuantity } from 'settline/units';
import { runs } from '../runs.js';

const LINE = grading.gradeLine({
  points: [
    { station: '0 m', elevation: '30 m' },
    { station: '9 m', grade: '-2%' },
  ],
});
const WALK = buildUp({ layers: [{ name: 'paver', thickness: '60 mm' }] });
const PLANE = { gradeX: '1%', gradeY: '2%', point: { x: '0 m', y: '0 m', z: '1 m' } };
const CORNER = (x: string, y: string, z: string) => ({ x, y, z });
const PAIR = { a: '1 m', b: '2 m' };

/** Every function that takes one options object, with options that it takes. */
const CALLS: Readonly<Record<string, readonly [run: (options: never) => unknown, valid: object]>> =
  {
    gradeLine: [
      grading.gradeLine,
      {
        points: [
          { station: '0 m', elevation: '30 m' },
          { station: '9 m', grade: '-2%' },
        ],
      },
    ],
    bentGrade: [
      grading.bentGrade,
      {
        levels: [
          { x: '0 m', y: '0 m', elevation: '30 m' },
          { x: '9 m', y: '0 m', elevation: '29.9 m' },
          { x: '9 m', y: '8 m', elevation: '29.8 m' },
        ],
        crossSlope: '2%',
        halfWidth: '1.5 m',
      },
    ],
    requiredStakes: [
      grading.requiredStakes,
      {
        path: [
          { x: '0 m', y: '0 m' },
          { x: '5 m', y: '0 m' },
        ],
        line: LINE,
        spacing: '3 m',
        places: [{ station: '1 m', reason: 'drain' }],
        mergeWithin: '1 cm',
      },
    ],
    planeThrough: [
      grading.planeThrough,
      {
        points: [
          CORNER('0 m', '0 m', '1 m'),
          CORNER('5 m', '0 m', '1 m'),
          CORNER('0 m', '5 m', '2 m'),
        ],
      },
    ],
    warpedSurface: [
      grading.warpedSurface,
      {
        length: '5 m',
        width: '3 m',
        corners: { startRight: '1 m', endRight: '1 m', startLeft: '2 m', endLeft: '1 m' },
        paver: { length: '20 cm', width: '10 cm' },
      },
    ],
    valleyLine: [
      grading.valleyLine,
      { first: PLANE, second: { ...PLANE, gradeX: '0%' }, inFirst: { x: '1 m', y: '0 m' } },
    ],
    combineSlopes: [grading.combineSlopes, { longSlope: '1%', crossSlope: '2%', travel: '30 deg' }],
    slopesAlong: [grading.slopesAlong, { gradeX: '1%', gradeY: '2%', travel: '30 deg' }],
    checkSlope: [
      grading.checkSlope,
      { fall: '2%', limits: { minimum: '1%', maximum: '3%' }, uncertainty: '0.1%' },
    ],
    fallBetween: [
      grading.fallBetween,
      { from: '1 m', to: '0.9 m', distance: '5 m', minimumFall: '2%' },
    ],
    rampRun: [
      grading.rampRun,
      {
        rise: '1 m',
        maximumSlope: '1:12',
        maximumRisePerFlight: '50 cm',
        landing: '1 m',
        room: '9 m',
      },
    ],
    levelChange: [grading.levelChange, { rise: '3/8 in' }],
    sillClearance: [
      grading.sillClearance,
      {
        sill: '1 m',
        finishedGradeAtWall: '80 cm',
        minimumClearance: '150 mm',
        away: { elevation: '75 cm', distance: '2 m' },
      },
    ],
    stepLayout: [
      grading.stepLayout,
      { rise: '1 m', maximumRiser: '15 cm', tread: '30 cm', treadFall: '1%' },
    ],
    verticalCurve: [
      grading.verticalCurve,
      {
        start: { station: '0 m', elevation: '1 m' },
        before: '1%',
        after: '-2%',
        changePer: { change: '1%', distance: '1 m' },
      },
    ],
    gradeBreak: [
      grading.gradeBreak,
      {
        before: '1%',
        after: '-8%',
        vehicle: {
          wheelbase: '2.8 m',
          underside: '14 cm',
          overhang: '1 m',
          overhangHeight: '20 cm',
        },
        limit: { change: '3%', distance: '3 m' },
        uncertainty: '1 mm',
      },
    ],
    reduceLevels: [
      levelling.reduceLevels,
      {
        start: '30 m',
        rows: [
          { point: 'BM', back: '1 m', distance: '0 m' },
          { point: 'A', intermediate: '1.1 m', distance: '5 m' },
          { point: 'BM', fore: '1.01 m', distance: '9 m' },
        ],
        known: '30 m',
        allowable: { k: '1 cm', per: '1 km' },
        adjustBy: 'distance',
      },
    ],
    allowableMisclosure: [
      levelling.allowableMisclosure,
      { rule: { k: '3 mm', per: 'set-up' }, setUps: 4 },
    ],
    spreadMisclosure: [
      levelling.spreadMisclosure,
      { known: '1 m', points: [{ point: 'A', elevation: '1.01 m', along: 1 }] },
    ],
    rodTargets: [
      levelling.rodTargets,
      { instrumentHeight: '2 m', finishedGrade: '1 m', buildUp: WALK, rodLength: '4 m' },
    ],
    stakeRods: [
      levelling.stakeRods,
      {
        instrumentHeight: '2 m',
        buildUp: WALK,
        stakes: [{ id: 'A', finishedGrade: '1 m', ground: '1 m' }],
      },
    ],
    cutFill: [
      levelling.cutFill,
      {
        instrumentHeight: { benchmark: '1 m', back: '1 m' },
        reading: '1 m',
        surface: 'subgrade',
        target: '1 m',
        tolerance: '1 cm',
      },
    ],
    twoPegTest: [
      levelling.twoPegTest,
      {
        midway: PAIR,
        offset: PAIR,
        distances: { midway: '20 m', offset: { a: '50 m', b: '10 m' } },
        rule: { error: '3 mm', over: '30 m', reading: '1 mm' },
      },
    ],
    laserReversal: [
      levelling.laserReversal,
      {
        distance: '30 m',
        x: { first: '1 m', second: '1.001 m' },
        accuracy: { error: '1 mm', over: '10 m' },
      },
    ],
    beamError: [
      levelling.beamError,
      { distance: '30 m', accuracy: { angle: '10 arcsec' }, limit: '3 mm' },
    ],
    headingError: [
      levelling.headingError,
      { gradeX: '1%', gradeY: '2%', heading: '3 deg', at: { x: '10 m', y: '5 m' } },
    ],
    rodTilt: [levelling.rodTilt, { reading: '2 m', lean: { by: '1 cm', over: '1 m' } }],
    curvatureRefraction: [
      levelling.curvatureRefraction,
      { sight: '60 m', refraction: '1/7', limit: '1 mm' },
    ],
    errorBudget: [
      levelling.errorBudget,
      {
        random: [{ name: 'rod', sigma: '1 mm' }],
        systematic: [{ name: 'tilt', error: '-1 mm' }],
        tolerance: '1 cm',
        coverage: 2,
        deviation: '5 mm',
      },
    ],
    closeBenchmark: [
      levelling.closeBenchmark,
      {
        benchmark: '30 m',
        back: '1 m',
        shots: [
          { point: 'A', reading: '1 m', after: '1 h' },
          { point: 'BM', reading: '1.01 m', known: '30 m', after: '2 h' },
        ],
        allowable: '1 cm',
      },
    ],
    gaugeBlock: [levelling.gaugeBlock, { slope: '2%', length: '2 m', error: '1 mm' }],
  };

test('no function is left out', () => {
  const others = ['describeCutFill'];
  const all = [...Object.keys(grading), ...Object.keys(levelling)].sort();
  expect([...Object.keys(CALLS), ...others].sort()).toEqual(all);
});

/** Things that stand where a measure should, and measures at the edges of what is taken. */
const wrong = fc.oneof(
  fc.anything(),
  fc.double(),
  fc.constantFrom(
    '0 m',
    '-0 mm',
    '1e-30 m',
    '20 m',
    '10 km',
    '100 km',
    '1e30 ft',
    '1/3 in',
    '0%',
    '1000%',
    '1e-20%',
    '90 deg',
    '-1 arcsec',
    '1 h',
  ),
  fc.record({
    value: fc.oneof(fc.double(), fc.integer()),
    unit: fc.constantFrom('m', 'mm', 'in', 'percent', 'deg', 'h', 'stone'),
  }),
);

/** A copy with one leaf or branch replaced: the way down is chosen by numbers. */
function replaced(value: unknown, way: readonly number[], by: unknown): unknown {
  const [turn, ...rest] = way;
  if (turn === undefined || typeof value !== 'object' || value === null || isQuantity(value)) {
    return by;
  }
  const keys = Object.keys(value);
  const key = keys[turn % Math.max(1, keys.length)];
  if (key === undefined) return by;
  const entries = Object.entries(value).map(([name, inner]) => [
    name,
    name === key ? replaced(inner, rest, by) : (inner as unknown),
  ]);
  return Array.isArray(value)
    ? entries.map(([, inner]) => inner)
    : (Object.fromEntries(entries) as unknown);
}

/** Asserts that no number in a result is NaN or infinite. */
function expectNumbers(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (isQuantity(value)) expect(value.si.isFinite()).toBe(true);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectNumbers);
}

describe('whatever is put in, a result of numbers comes out, or faults with codes', () => {
  test.each(Object.entries(CALLS))('%s', (_, [run, valid]) => {
    expectNumbers(run(valid as never));
    const way = fc.array(fc.nat(9), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(way, wrong, (turns, by) => {
        let result: unknown;
        try {
          result = run(replaced(valid, turns, by) as never);
        } catch (error) {
          expect(isSettlineError(error), String(error)).toBe(true);
          return;
        }
        expectNumbers(result);
        expectNumbers((result as { working: unknown }).working);
      }),
      runs(150),
    );
  });
});
