import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import {
  bentGrade,
  checkSlope,
  combineSlopes,
  fallBetween,
  gradeBreak,
  gradeLine,
  levelChange,
  planeThrough,
  rampRun,
  requiredStakes,
  sillClearance,
  slopesAlong,
  stepLayout,
  valleyLine,
  verticalCurve,
  warpedSurface,
} from 'settline/grading';
import { faultsOf } from '../faults.js';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const at = (x: string, y: string) => ({ x, y });
const level = (x: string, y: string, z: string) => ({ x, y, z });

const LINE = {
  points: [
    { station: '0 m', elevation: '30 m' },
    { station: '10 m', elevation: '29.8 m' },
    { station: '16 m', grade: '-3%' },
  ],
} as const;

const CASES: Readonly<Record<string, MisspeltCase>> = {
  bentGrade: [
    bentGrade,
    {
      levels: [
        { name: 'door', x: '0 m', y: '0 m', elevation: '30 m' },
        { x: '9 m', y: '0 m', elevation: '29.8 m' },
      ],
      crossSlope: '1%',
      halfWidth: '2 m',
    },
    [
      ['level', 'levels'],
      ['levels[0].nam', 'name'],
      ['levels[1].elevatoin', 'elevation'],
      ['crossSlop', 'crossSlope'],
      ['halfwidth', 'halfWidth'],
    ],
  ],
  gradeLine: [
    gradeLine,
    LINE,
    [
      ['point', 'points'],
      ['points[0].statoin', 'station'],
      ['points[1].elevatoin', 'elevation'],
      ['points[2].grad', 'grade'],
    ],
  ],
  requiredStakes: [
    requiredStakes,
    {
      path: [at('0 m', '0 m'), at('5 m', '0 m'), at('5 m', '5 m')],
      closed: true,
      spacing: '2 m',
      places: [{ station: '1 m', reason: 'drain' }],
      mergeWithin: '10 mm',
    },
    [
      ['pathes', 'path'],
      ['close', 'closed'],
      ['spaceing', 'spacing'],
      ['mergeWithn', 'mergeWithin'],
      ['path[1].X', 'x'],
      ['places[0].station_', 'station'],
      ['places[0].reasons', 'reason'],
    ],
  ],
  planeThrough: [
    planeThrough,
    {
      points: [
        { ...level('0 m', '0 m', '30 m'), id: 'slab', fixed: true },
        level('6 m', '0 m', '30 m'),
        level('0 m', '9 m', '29.8 m'),
      ],
    },
    [
      ['point', 'points'],
      ['points[1].Z', 'z'],
      ['points[0].ID', 'id'],
      ['points[0].fixd', 'fixed'],
    ],
  ],
  warpedSurface: [
    warpedSurface,
    {
      length: '9 m',
      width: '6 m',
      corners: { startRight: '30 m', startLeft: '30 m', endRight: '29.7 m', endLeft: '29.8 m' },
      paver: { length: '200 mm', width: '100 mm' },
    },
    [
      ['lenght', 'length'],
      ['corner', 'corners'],
      ['corners.endleft', 'endLeft'],
      ['paver.widht', 'width'],
    ],
  ],
  valleyLine: [
    valleyLine,
    {
      first: { gradeX: '-2%', gradeY: '0%', point: level('0 m', '0 m', '30 m') },
      second: { gradeX: '0%', gradeY: '-3%', point: level('0 m', '0 m', '29.8 m') },
      inFirst: at('0 m', '0 m'),
      path: [at('0 m', '0 m'), at('14 m', '0 m'), at('14 m', '8 m')],
      closed: true,
    },
    [
      ['frist', 'first'],
      ['infirst', 'inFirst'],
      ['first.gradex', 'gradeX'],
      ['second.points', 'point'],
      ['first.point.Z', 'z'],
    ],
  ],
  combineSlopes: [
    combineSlopes,
    { longSlope: '-4%', crossSlope: '2%', travel: '10 deg' },
    [
      ['longslope', 'longSlope'],
      ['crosSlope', 'crossSlope'],
      ['travle', 'travel'],
    ],
  ],
  slopesAlong: [
    slopesAlong,
    { gradeX: '-3%', gradeY: '1%', travel: '90 deg' },
    [['gradX', 'gradeX']],
  ],
  checkSlope: [
    checkSlope,
    { fall: '2%', limits: { minimum: '1%', maximum: '3%' }, uncertainty: '0.1%' },
    [
      ['fal', 'fall'],
      ['limit', 'limits'],
      ['limits.minimun', 'minimum'],
      ['limits.maximun', 'maximum'],
      ['uncertanty', 'uncertainty'],
    ],
  ],
  fallBetween: [
    fallBetween,
    { from: '30 m', to: '29.7 m', distance: '14 m', minimumFall: '2%' },
    [
      ['form', 'from'],
      ['minimunFall', 'minimumFall'],
    ],
  ],
  rampRun: [
    rampRun,
    {
      rise: '1 m',
      maximumSlope: '1:12',
      maximumRisePerFlight: '500 mm',
      landing: '1.5 m',
      room: '20 m',
    },
    [
      ['maximumSlop', 'maximumSlope'],
      ['maximumRisePerFligth', 'maximumRisePerFlight'],
      ['landig', 'landing'],
      ['rom', 'room'],
    ],
  ],
  levelChange: [levelChange, { rise: '3/8 in' }, [['raise', 'rise']]],
  sillClearance: [
    sillClearance,
    {
      sill: '30.2 m',
      finishedGradeAtWall: '30.04 m',
      minimumClearance: '150 mm',
      away: { elevation: '29.97 m', distance: '3.05 m' },
      uncertainty: '2 mm',
    },
    [
      ['finishedGradeAtwall', 'finishedGradeAtWall'],
      ['minimumClearence', 'minimumClearance'],
      ['away.distnace', 'distance'],
    ],
  ],
  stepLayout: [
    stepLayout,
    { rise: '600 mm', maximumRiser: '150 mm', tread: '350 mm', treadFall: '2%' },
    [
      ['maximumRizer', 'maximumRiser'],
      ['treadfall', 'treadFall'],
    ],
  ],
  verticalCurve: [
    verticalCurve,
    {
      start: { station: '0 m', elevation: '30 m' },
      before: '-4%',
      after: '2%',
      changePer: { change: '1%', distance: '1 m' },
    },
    [
      ['strat', 'start'],
      ['changeper', 'changePer'],
      ['start.elevations', 'elevation'],
      ['changePer.changes', 'change'],
    ],
  ],
  gradeBreak: [
    gradeBreak,
    {
      before: '2%',
      after: '-8%',
      vehicle: {
        wheelbase: '2.8 m',
        underside: '140 mm',
        overhang: '1 m',
        overhangHeight: '200 mm',
      },
      limit: { change: '3%', distance: '3 m' },
      uncertainty: '1 mm',
    },
    [
      ['vehicles', 'vehicle'],
      ['vehicle.wheelBase', 'wheelbase'],
      ['vehicle.overhangheight', 'overhangHeight'],
      ['limit.distanse', 'distance'],
    ],
  ],
};

describe('a misspelt field is refused with the name that was meant', () => {
  testMisspelt(CASES);

  test('also for a place that is asked for', () => {
    const line = gradeLine(LINE);
    const plane = planeThrough({
      points: [level('0 m', '0 m', '1 m'), level('5 m', '0 m', '1 m'), level('0 m', '5 m', '2 m')],
    });
    const [fault, ...others] = faultsOf(() => plane.at({ x: '1 m', Y: '2 m' } as never));
    expect([fault?.code, fault?.params['meant'], others]).toEqual(['UNKNOWN_FIELD', 'y', []]);
    expect(line.elevationAt(0).toNumber('m')).toBe(30);
  });
});

describe('answers or refuses, whatever is put into a field', () => {
  testGarbage({
    ...Object.fromEntries(
      Object.entries(CASES).map(([name, [run, valid]]) => [name, [run, valid] as const]),
    ),
    'requiredStakes along a line': [
      requiredStakes,
      { line: gradeLine(LINE), spacing: '5 m', places: [] },
    ],
  });
});

describe('one fault for each bad field, all at once', () => {
  const faults = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${pathText(path)} ${code}`);

  test('fields that could not be read raise no second fault', () => {
    expect(
      faults(() =>
        checkSlope({
          fall: '2',
          limits: { minimum: '5x', maximum: '-1%' },
          uncertainty: '11',
        }),
      ),
    ).toEqual([
      'fall UNIT_MISSING',
      'limits.minimum UNIT_UNKNOWN',
      'limits.maximum NOT_POSITIVE',
      'uncertainty UNIT_MISSING',
    ]);
  });

  test('a fault between fields is told beside the faults of fields', () => {
    expect(
      faults(() =>
        gradeLine({
          points: [
            { station: '0 m', elevation: '30' },
            { station: '5 m', elevation: '30 m' },
            { station: '4 m', elevation: '30 m', grade: '1%' },
            { station: '4 m', elevation: '30 m' },
          ],
        } as never),
      ),
    ).toEqual(['points[0].elevation UNIT_MISSING', 'points[2].elevation CONFLICTING_FIELDS']);
    expect(
      faults(() =>
        valleyLine({
          first: { gradeX: '1', gradeY: '0%', point: level('0 m', '0 m', '1 m') },
          second: { gradeX: '0%', gradeY: '0%', point: level('0 m', '0 m', '1 m') },
          path: [at('0 m', '0 m'), at('0 m', '0 m'), at('1 m', '0 m')],
        }),
      ),
    ).toEqual(['first.gradeX UNIT_MISSING', 'path[1] POINTS_COINCIDE']);
  });

  test('too many fixed levels are counted beside a point that could not be read', () => {
    const points = [
      level('0 m', '0 m', '1 m'),
      level('5 m', '0 m', '1 m'),
      level('0 m', '5 m', '2'),
    ];
    expect(
      faults(() =>
        planeThrough({
          points: [...points, level('5 m', '5 m', '1 m')].map((one) => ({ ...one, fixed: true })),
        }),
      ),
    ).toEqual(['points[2].z UNIT_MISSING', 'points TOO_MANY']);
  });

  test('the faults of a message name the value as it was written', () => {
    const [fault] = faultsOf(() => levelChange({ rise: '-3 in' }));
    expect(fault?.message).toContain('-3 in');
  });
});
