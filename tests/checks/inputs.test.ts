import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import {
  checkBondLine,
  checkCompaction,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLevels,
  checkLippage,
  checkThickness,
  describeCheckMove,
  layerReport,
  relativeCompaction,
  trialStrip,
} from 'settline/checks';
import { faultsOf } from '../faults.js';
import { testGarbage } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const reading = (station: string, height: string) => ({ station, height });
const PROFILE = [reading('0 m', '0 mm'), reading('1 m', '-4 mm'), reading('2 m', '0 mm')];

const CASES: Readonly<Record<string, MisspeltCase>> = {
  checkLevels: [
    checkLevels,
    {
      layer: 'base',
      readings: [{ id: 'A', plan: '29.8 m', measured: '29.81 m' }],
      tolerance: { over: '10 mm', under: '10 mm' },
      uncertainty: '1 mm',
    },
    [
      ['layers', 'layer'],
      ['tolerence', 'tolerance'],
      ['readings[0].mesured', 'measured'],
      ['tolerance.udner', 'under'],
      ['uncertianty', 'uncertainty'],
    ],
  ],
  checkThickness: [
    checkThickness,
    {
      layer: 'base',
      design: '8 in',
      readings: [
        { id: 'A', thickness: '8 in' },
        { id: 'B', top: '10 m', bottom: '9.8 m' },
        { id: 'C', rodOnTop: '1.43 m', rodOnBottom: '1.62 m' },
      ],
      tolerance: 'paver-guide-in',
      averageTolerance: { over: '1/4 in', under: '1/4 in' },
    },
    [
      ['desing', 'design'],
      ['averagetolerance', 'averageTolerance'],
      ['readings[0].thicknes', 'thickness'],
      ['readings[1].botom', 'bottom'],
      ['readings[2].rodOntop', 'rodOnTop'],
      ['averageTolerance.ovre', 'over'],
    ],
  ],
  'checkFlatness, judged': [
    checkFlatness,
    { layer: 'base', profile: PROFILE, tolerance: { maximum: '10 mm', over: '3 m' } },
    [
      ['profil', 'profile'],
      ['tolerence', 'tolerance'],
      ['layr', 'layer'],
      ['profile[1].statoin', 'station'],
      ['tolerance.maximun', 'maximum'],
    ],
  ],
  'checkFlatness, measured': [
    checkFlatness,
    { profile: PROFILE, length: '3 m' },
    [
      ['lenght', 'length'],
      ['profile[0].hieght', 'height'],
    ],
  ],
  checkLippage: [
    checkLippage,
    {
      place: 'drain',
      readings: [{ id: 'A', lippage: '3 mm' }],
      tolerance: { minimum: '1 mm', maximum: '3 mm' },
    },
    [
      ['plaec', 'place'],
      ['readings[0].lipage', 'lippage'],
      ['tolerance.maximun', 'maximum'],
    ],
  ],
  checkJointWidth: [
    checkJointWidth,
    { readings: [{ id: 'A', width: '3 mm' }], tolerance: { maximum: '5 mm' }, minimumShare: 0.9 },
    [
      ['minimumshare', 'minimumShare'],
      ['readings[0].widht', 'width'],
    ],
  ],
  checkBondLine: [
    checkBondLine,
    {
      line: 'bond line of the walk',
      readings: ['0 m', '5 m', '10 m'].map((station) => ({ station, offset: '0 mm' })),
      tolerance: 'paver-guide-mm',
    },
    [
      ['lien', 'line'],
      ['readings[1].ofset', 'offset'],
    ],
  ],
  checkFall: [
    checkFall,
    {
      layer: 'pavers',
      readings: [{ id: 'A', fall: '60 mm', run: '3 m' }],
      tolerance: { minimum: '1%', maximum: '5%' },
      standardUncertainty: '2 mm',
    },
    [
      ['standarduncertainty', 'standardUncertainty'],
      ['readings[0].fal', 'fall'],
      ['tolerance.minimun', 'minimum'],
    ],
  ],
  checkCompaction: [
    checkCompaction,
    {
      layer: 'base',
      readings: [{ id: 'A', wetDensity: '2.1 t/m3', moisture: 0.1 }],
      maximumDryDensity: '2 t/m3',
      test: 'standard',
      tolerance: { minimumPercent: 95 },
      uncertainty: 1,
    },
    [
      ['maximumDryDensty', 'maximumDryDensity'],
      ['readings[0].moistrue', 'moisture'],
      ['tolerance.minimumpercent', 'minimumPercent'],
    ],
  ],
  relativeCompaction: [
    relativeCompaction,
    {
      wetDensity: '2.05 t/m3',
      moisture: 0.11,
      maximumDryDensity: '1.92 t/m3',
      optimumMoisture: 0.125,
    },
    [
      ['wetdensity', 'wetDensity'],
      ['optimumMoistrue', 'optimumMoisture'],
    ],
  ],
  trialStrip: [
    trialStrip,
    {
      readings: [
        { loose: '128 mm', compacted: '103 mm' },
        { bottom: '9.9 m', looseTop: '10.025 m', compactedTop: '10 m' },
      ],
      compactedThickness: '100 mm',
    },
    [
      ['compactedthickness', 'compactedThickness'],
      ['readings[0].lose', 'loose'],
      ['readings[1].looseTpo', 'looseTop'],
    ],
  ],
};

describe('a misspelt field is refused with the name that was meant', () => {
  testMisspelt(CASES);
});

const levels = checkLevels({
  layer: 'base',
  readings: [{ id: 'A', plan: '29.8 m', measured: '29.82 m' }],
  tolerance: { over: '10 mm', under: '10 mm' },
});

describe('answers or refuses, whatever it gets', () => {
  testGarbage({
    ...CASES,
    layerReport: [
      layerReport,
      { layer: 'Base of the drive', checks: [levels], system: 'metric', remarks: 'dry' },
    ],
    describeCheckMove: [
      (move: never) => ({ text: describeCheckMove(move, { as: 'mm' }) }),
      { action: 'cut', by: levels.readings[0]?.move?.by },
    ],
  });

  test('layerReport: a field is not swallowed', () => {
    const options = { layer: 'x', checks: [levels], system: 'us', remark: 'dry' };
    const [fault] = faultsOf(() => layerReport(options as never));
    expect([fault?.code, fault?.params['meant']]).toEqual(['UNKNOWN_FIELD', 'remarks']);
  });
});

describe('a result that was tampered with is refused, not half printed', () => {
  const forged = (part: object) => {
    const { working } = levels;
    const check = Object.defineProperties(
      {},
      Object.getOwnPropertyDescriptors({ ...levels, ...part }),
    );
    return Object.defineProperty(check, 'working', {
      value: working,
      enumerable: false,
      writable: true,
    });
  };
  const report = (check: unknown) =>
    layerReport({ layer: 'x', checks: [check], system: 'us' } as never);
  const [first] = levels.readings;

  test('whole, it is taken', () => {
    expect(report(forged({})).verdict).toBe('fail');
  });

  test.each([
    { check: 'toString' },
    { verdict: 'good' },
    { limits: {} },
    { limits: null },
    { readings: [null] },
    { readings: [{ ...first, value: 5 }] },
    { readings: [{ ...first, move: { action: 'cut' } }] },
    { source: 'nowhere' },
    { cautions: 'none' },
    { note: 5 },
    { toleranceSet: 5 },
  ])('%j', (part) => {
    const [fault] = faultsOf(() => report(forged(part)));
    expect([fault?.code, pathText(fault?.path ?? [])]).toEqual(['WRONG_TYPE', 'checks[0]']);
  });

  test.each([[{}], [[{ title: 'x' }]], [[{ ...levels.working[0], source: 'nowhere' }]]])(
    'working %j',
    (working) => {
      const check = Object.defineProperty(forged({}), 'working', { value: working });
      expect(faultsOf(() => report(check))[0]?.code).toBe('WRONG_TYPE');
    },
  );
});

describe('one fault for each bad field, all at once', () => {
  const faults = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${code} ${pathText(path)}`);

  test('thickness', () => {
    const readings = [
      { id: 'a', top: '1 m' },
      { id: 'a', thickness: 5 },
      { id: 'c', bottom: '1 m', rodOnTop: '1 m' },
    ];
    const run = () =>
      checkThickness({
        layer: 'pavers',
        design: 8,
        readings,
        tolerance: 'paver-guide-in',
      } as never);
    expect(faults(run)).toEqual([
      'UNIT_MISSING design',
      'DUPLICATE_ID readings[1].id',
      'REQUIRED readings[0].bottom',
      'UNIT_MISSING readings[1].thickness',
      'CONFLICTING_FIELDS readings[2]',
      'LIMIT_NOT_SET tolerance',
    ]);
  });

  test('flatness: a reading that could not be read does not hide the order of the others', () => {
    const profile = [
      reading('0 m', '0 mm'),
      reading('2', '0 mm'),
      reading('3 m', '0 mm'),
      reading('1 m', '0 mm'),
    ];
    expect(faults(() => checkFlatness({ profile, tolerance: 'paver-guide-mm' } as never))).toEqual([
      'UNIT_MISSING profile[1].station',
      'NOT_INCREASING profile[3].station',
      'REQUIRED layer',
    ]);
  });

  test('a reading is told by its place in the list, counted from 1, or by the one before it', () => {
    const profile = [reading('0 m', '0 mm'), reading('3 m', '0 mm'), reading('1 m', '0 mm')];
    const says = (id: string) =>
      faultsOf(() => {
        const named = profile.map((one, k) => ({ ...one, id: k === 1 ? id : `${k}` }));
        return checkFlatness({ layer: 'base', profile: named, tolerance: '5 mm' } as never);
      }).map(({ message }) => message);
    expect(says('0')).toContain(
      '"0" is already used by entry 1 of this list. Give each reading its own',
    );
    expect(says('1')).toContain(
      'is not beyond the station of the reading before it. List readings in order along the line',
    );
  });
});
