import { describe, expect, test } from 'vitest';
import {
  checkJob,
  describeNextStep,
  describeStakeAction,
  planFromJSON,
  planJob,
  renderCheckSheet,
  type JobCheck,
} from 'settline/job';
import { pathText } from 'settline';
import { length } from 'settline/units';
import { faultsOf } from '../faults.js';
import { cedarCourtFile, cedarCourtJob } from '../cedar-court.js';
import { planFile } from '../plan-file.js';
import { slateWharfJob } from '../slate-wharf.js';

const plan = planJob(cedarCourtJob());
const COURT = ['K1', 'K2', 'K3', 'K4', 'K5', 'F1', 'F2', 'F3'];
const SUBGRADE = { subgrade: { over: '1/2 in', under: '3/4 in' } };

/** Readings at all stakes of the court: string fence is 24 in up, 6 in above string kerb. */
const all = (surface: string, belowKerb: string, except: Record<string, string> = {}) =>
  COURT.map((stake) => {
    const below = length(belowKerb).plus(length(stake.startsWith('F') ? '6 in' : '0 in'));
    return { stake, surface, belowString: except[stake] ?? below };
  });
const only = (check: JobCheck) => {
  const [surface] = check.surfaces;
  if (surface === undefined) expect.unreachable();
  return surface;
};
const inch = (value: { to: (unit: 'in') => { toString: () => string } } | null | undefined) =>
  value?.to('in').toString();

describe('levels as built against the plan', () => {
  test('on the limit passes, a hair over fails', () => {
    // subgrade of the court lies 36 3/4 in below string kerb; 1/2 in high is 36 1/4 in
    const at = checkJob(plan, {
      readings: all('subgrade', '36 1/4 in', { K2: '37 1/2 in' }),
      tolerances: SUBGRADE,
    });
    expect(at.verdict).toBe('pass');
    expect(only(at).stakes.map(({ value }) => inch(value))).toEqual(
      COURT.map((id) => (id === 'K2' ? '-0.75' : '0.5')),
    );
    const over = checkJob(plan, {
      readings: all('subgrade', '36 3/4 in', { F2: '42.2499999 in', K2: '37.5000001 in' }),
      tolerances: SUBGRADE,
    });
    expect(over.verdict).toBe('fail');
    expect(only(over).level.outOfTolerance).toEqual(['K2', 'F2']);
    expect(only(over).next).toEqual({
      step: 'correct',
      stakes: ['K2', 'F2'],
      surface: null,
      spread: null,
    });
  });

  test('what is uncertain is neither passed nor failed', () => {
    const check = checkJob(plan, {
      readings: all('subgrade', '36 3/4 in', { K3: '36 3/16 in' }),
      tolerances: SUBGRADE,
      uncertainty: '1/8 in',
    });
    expect(check.verdict).toBe('unclear');
    expect(only(check).next.step).toBe('measure-again');
    expect(only(check).next.stakes).toEqual(['K3']);
  });

  test('stakes that were not read are asked for before the surface is covered', () => {
    const check = checkJob(plan, {
      readings: all('subgrade', '36 3/4 in').slice(0, 6),
      tolerances: SUBGRADE,
    });
    expect(check.verdict).toBe('pass');
    expect(only(check).missing).toEqual(['F2', 'F3']);
    expect(describeNextStep(only(check), { system: 'us' })).toBe(
      'Within tolerance so far. Measure F2, F3 too before you cover this surface.',
    );
  });

  test('a surface that passes leads to the one above, with the loose lift', () => {
    const step = (surface: string, belowString: string, kind: string) =>
      describeNextStep(
        only(
          checkJob(plan, {
            readings: all(surface, belowString),
            tolerances: { [kind]: { over: '1/4 in', under: '1/4 in' } },
          }),
        ),
        { system: 'us' },
      );
    // sub-base in two lifts of 3 in, base in two of 4 1/4 in; loose, over 0.78
    expect(step('subgrade', '36 3/4 in', 'subgrade')).toBe(
      'Go on to lift 1 top: spread 3 7/8 in loose.',
    );
    expect(step('sub-base top', '30 3/4 in', 'sub-base')).toBe(
      'Go on to lift 3 top: spread 5 7/16 in loose.',
    );
    expect(step('lift 3 top', '26 1/2 in', 'lift')).toBe(
      'Go on to base top: spread 5 7/16 in loose.',
    );
    expect(step('base top', '22 1/4 in', 'base')).toBe('Go on to bedding top.');
    expect(step('bedding top', '21 1/4 in', 'bedding')).toBe('Go on to finished grade.');
    expect(step('finished grade', '18 in', 'pavers')).toBe(
      'Within tolerance: this was the last surface.',
    );
  });

  test('surfaces come from the ground up, pavement by pavement', () => {
    const check = checkJob(plan, {
      readings: [
        { stake: 'G1', surface: 'base top', belowString: '13 1/4 in' },
        { stake: 'K1', surface: 'base top', belowString: '22 1/4 in' },
        { stake: 'K1', surface: 'lift 1 top', belowString: '33 3/4 in' },
        { stake: 'K1', surface: 'subgrade', belowString: '36 3/4 in' },
      ],
      tolerances: {
        ...SUBGRADE,
        base: 'irc-sp-63-2004',
        lift: { over: '1/4 in', under: '1/4 in' },
      },
    });
    expect(check.surfaces.map(({ pavement, surface }) => `${pavement}: ${surface}`)).toEqual([
      'Parking court: subgrade',
      'Parking court: lift 1 top',
      'Parking court: base top',
      'Terrace: base top',
    ]);
    expect(check.surfaces[2]?.level.source).toBe('irc-sp-63-2004');
    expect(check.surfaces[0]?.level.source).toBeNull();
  });
});

describe('the action at a stake, in the words of the trade', () => {
  const said = (
    surface: string,
    kind: string,
    belowString: string,
    system: 'us' | 'metric' = 'us',
  ) => {
    const check = checkJob(plan, {
      readings: [{ stake: 'K1', surface, belowString }],
      tolerances: { [kind]: { over: '1/4 in', under: '1/4 in' } },
    });
    const { kind: of, stakes } = only(check);
    const [stake] = stakes;
    if (stake === undefined) expect.unreachable();
    return describeStakeAction(stake, { kind: of, system });
  };

  test.each([
    ['subgrade', 'subgrade', '36 1/4 in', '1/2 in high: cut 1/2 in and compact'],
    [
      'subgrade',
      'subgrade',
      '37 1/4 in',
      '1/2 in low: fill with base stone, 5/8 in loose, and compact; never with soil',
    ],
    ['base top', 'base', '21 3/4 in', '1/2 in high: take off 1/2 in and compact'],
    [
      'base top',
      'base',
      '22 3/4 in',
      '1/2 in low: loosen the top, spread 5/8 in of loose stone and compact',
    ],
    ['bedding top', 'bedding', '20 3/4 in', '1/2 in high: strike off 1/2 in'],
    ['bedding top', 'bedding', '21 3/4 in', '1/2 in low: add sand and screed up 1/2 in'],
    [
      'finished grade',
      'pavers',
      '17 1/2 in',
      '1/2 in high: lift, take out 1/2 in of bedding, lay again and compact',
    ],
    [
      'finished grade',
      'pavers',
      '18 1/2 in',
      '1/2 in low: lift, add 1/2 in of bedding, lay again and compact; if the bed gets too thick, mend the base',
    ],
    ['base top', 'base', '22 1/4 in', 'within tolerance'],
  ])('%s (%s) at %s', (surface, kind, belowString, words) => {
    expect(said(surface, kind, belowString)).toBe(words);
  });

  test('in millimetres', () => {
    expect(said('base top', 'base', '22 3/4 in', 'metric')).toBe(
      '13 mm low: loosen the top, spread 16 mm of loose stone and compact',
    );
  });
});

describe('by string, by rod, by elevation', () => {
  const wharf = planJob(slateWharfJob());
  const at = (reading: object, rest: object = {}) =>
    only(
      checkJob(wharf, {
        readings: [{ stake: 'A1', surface: 'base top', ...reading }],
        tolerances: { base: { over: '0.01 ft', under: '0.01 ft' } },
        ...rest,
      }),
    ).stakes[0];

  test('all three say the same', () => {
    // finish at A1 is 100.21 ft, base top 4 1/4 in below it: 1198.27 in; string 16 in up; HI 104.62
    const byString = at({ belowString: '20 1/8 in' });
    const byElevation = at({ elevation: '99.86625 ft' });
    const byRod = at({ rod: '4.75 ft' });
    expect(inch(byString?.value)).toBe('0.125');
    expect(inch(byElevation?.value)).toBe('0.125'); // 1198.395 in
    // 104.62 - 4.75 = 99.87 ft or 1198.44 in: 0.17 in high
    expect(inch(byRod?.value)).toBe('0.17');
    expect(byRod?.verdict).toBe('fail');
    expect(inch(byRod?.plan)).toBe('1198.27');
    expect(inch(byString?.measuredBelowString)).toBe('20.125');
  });

  test('a new set-up counts from its own height', () => {
    const moved = at({ rod: '5.65 ft' }, { instrumentHeight: '105.52 ft' });
    expect(inch(moved?.value)).toBe('0.17');
  });
});

test('thickness where top and bottom were read at one stake', () => {
  const check = checkJob(plan, {
    readings: [
      { stake: 'G1', surface: 'subgrade', belowString: '18 1/4 in' },
      { stake: 'G1', surface: 'base top', belowString: '13 1/4 in' },
      { stake: 'G2', surface: 'subgrade', belowString: '17 7/8 in' },
      { stake: 'G2', surface: 'base top', belowString: '13 1/2 in' },
      { stake: 'G3', surface: 'base top', belowString: '13 1/4 in' },
    ],
    tolerances: { ...SUBGRADE, base: { over: '3/8 in', under: '3/8 in' } },
    thickness: { base: 'paver-guide-in' },
  });
  const base = check.surfaces[1];
  // G2: 17 7/8 - 13 1/2 = 4 3/8 in, 5/8 in thin; the guide lets 1/2 in under pass
  expect(base?.thickness?.readings.map(({ id, value }) => `${id} ${inch(value) ?? ''}`)).toEqual([
    'G1 5',
    'G2 4.375',
  ]);
  expect(base?.level.verdict).toBe('pass');
  expect(base?.thickness?.verdict).toBe('fail');
  expect(base?.verdict).toBe('fail');
  expect(base?.next.stakes).toEqual(['G2']);
  expect(check.surfaces[0]?.thickness).toBeNull();
});

test('is plain, frozen, the same after JSON, and shows its working', () => {
  const check = checkJob(plan, { readings: all('subgrade', '36 in'), tolerances: SUBGRADE });
  expect(Object.isFrozen(check)).toBe(true);
  expect(Object.isFrozen(only(check).stakes)).toBe(true);
  const text = JSON.stringify(check);
  expect(JSON.stringify(JSON.parse(text))).toBe(text);
  expect(text).not.toMatch(/NaN|Infinity/);
  expect(check.working).toHaveLength(16);
  expect(check.working[0]?.title).toBe('Level of the subgrade at K1 against the plan');
  const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
  const same = checkJob(again, { readings: all('subgrade', '36 in'), tolerances: SUBGRADE });
  expect(JSON.stringify(same)).toBe(text);
  expect(check.cautions.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['utilities', 'excavation', 'drainage']),
  );
});

describe('the sheet of a check', () => {
  const check = checkJob(plan, {
    readings: [
      { stake: 'G1', surface: 'subgrade', belowString: '18 1/4 in' },
      { stake: 'G2', surface: 'subgrade', belowString: '17 3/8 in' },
      { stake: 'G2', surface: 'base top', belowString: '13 1/2 in' },
    ],
    tolerances: { ...SUBGRADE, base: { over: '3/8 in', under: '3/8 in' } },
    thickness: { base: { over: '1/2 in', under: '1/2 in' } },
  });

  test('prints plan, reading, difference, action and next step', () => {
    const sheet = renderCheckSheet(check, { system: 'us' });
    expect(sheet).toMatch(/SUBGRADE of Terrace/);
    expect(sheet).toMatch(/G2 +18 1\/4 +17 3\/8 +\+7\/8 +OUT/);
    expect(sheet).toContain('> G2: 7/8 in high: cut 7/8 in and compact');
    expect(sheet).toMatch(/Thickness 3 7\/8 to 3 7\/8 in, planned 5 in: OUT/);
    const metric = renderCheckSheet(check, { system: 'metric' });
    expect(metric).toMatch(/G2 +464 +441 +\+22 +OUT/);
    expect(metric).not.toMatch(/\d in\b/);
  });

  test('fits its width, and refuses others', () => {
    for (const width of [40, 48, 100]) {
      for (const text of renderCheckSheet(check, { system: 'us', width }).split('\n')) {
        expect(text.length).toBeLessThanOrEqual(width);
      }
    }
    expect(faultsOf(() => renderCheckSheet(check, { system: 'us', width: 30 }))[0]?.code).toBe(
      'OUT_OF_RANGE',
    );
    expect(faultsOf(() => renderCheckSheet(check, { system: 'si' as never }))[0]?.code).toBe(
      'UNKNOWN_CHOICE',
    );
  });
});

test.each<[string, object, string]>([
  [
    'an unknown stake',
    { readings: [{ stake: 'Q9', surface: 'subgrade', belowString: '25 in' }] },
    'readings[0].stake UNKNOWN_ID',
  ],
  [
    'an unknown surface',
    { readings: [{ stake: 'K1', surface: 'gravel', belowString: '25 in' }] },
    'readings[0].surface UNKNOWN_CHOICE',
  ],
  [
    'a surface of another pavement',
    { readings: [{ stake: 'G1', surface: 'lift 2 top', belowString: '20 in' }] },
    'readings[0].surface UNKNOWN_CHOICE',
  ],
  [
    'two readings in one place',
    {
      readings: [
        ...all('subgrade', '36 in'),
        { stake: 'K1', surface: 'subgrade', belowString: '26 in' },
      ],
    },
    'readings[8] DUPLICATE_ID',
  ],
  [
    'two ways at once',
    { readings: [{ stake: 'K1', surface: 'subgrade', belowString: '25 in', rod: '5 ft' }] },
    'readings[0] CONFLICTING_FIELDS',
  ],
  ['no way at all', { readings: [{ stake: 'K1', surface: 'subgrade' }] }, 'readings[0] REQUIRED'],
  [
    'a rod without an instrument',
    { readings: [{ stake: 'K1', surface: 'subgrade', rod: '5 ft' }] },
    'instrumentHeight REQUIRED',
  ],
  [
    'a reading without a unit',
    { readings: [{ stake: 'K1', surface: 'subgrade', belowString: 25 }] },
    'readings[0].belowString UNIT_MISSING',
  ],
  ['no readings', { readings: [] }, 'readings EMPTY_LIST'],
  ['no tolerance', { tolerances: {} }, 'tolerances.subgrade REQUIRED'],
  [
    'a set that does not limit it',
    { tolerances: { subgrade: 'paver-guide-in' } },
    'tolerances.subgrade LIMIT_NOT_SET',
  ],
  [
    'a negative tolerance',
    { tolerances: { subgrade: { over: '-1 in', under: '1 in' } } },
    'tolerances.subgrade.over NEGATIVE',
  ],
  ['no readings at all', { readings: undefined }, 'readings REQUIRED'],
])('refuses %s', (_name, change, fault) => {
  const readings = { readings: all('subgrade', '36 3/4 in'), tolerances: SUBGRADE, ...change };
  const faults = faultsOf(() => checkJob(plan, readings));
  expect(faults.map(({ path, code }) => `${pathText(path)} ${code}`)).toContain(fault);
});

test('an elevation where the plan knows none is refused', () => {
  const job = cedarCourtFile();
  delete job.stakes[0]?.['finish'];
  const bare = planFile(job);
  const faults = faultsOf(() =>
    checkJob(bare, {
      readings: [{ stake: 'K1', surface: 'subgrade', elevation: '98 ft' }],
      tolerances: SUBGRADE,
    }),
  );
  expect(faults.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([
    'readings[0].belowString REQUIRED',
  ]);
});
