import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { layerReport } from 'settline/checks';
import {
  checkJob,
  describeNextStep,
  planJob,
  renderCheckSheet,
  type JobCheck,
  type JobReadings,
} from 'settline/job';
import { faultsOf } from '../faults.js';
import { cedarCourtJob } from '../cedar-court.js';
import { testMisspelt } from '../misspelt.js';
import { plainCourtFile } from '../plain-court.js';
import { planFile } from '../plan-file.js';
import { without } from '../without.js';

const plan = planJob(cedarCourtJob());
const GATE = { pavement: 'court', place: 'by the gate' };

/** Three readings 5 ft apart, the middle one low by a depth. */
const dip = (depth: string) => [
  { station: '0 ft', height: '0 in' },
  { station: '5 ft', height: `-${depth}` },
  { station: '10 ft', height: '0 in' },
];
const flatness = {
  ...GATE,
  surface: 'finished grade',
  profile: dip('3/8 in'),
  tolerance: 'paver-guide-in',
} as const;
const compaction = {
  ...GATE,
  surface: 'base top',
  readings: [{ id: 'a', wetDensity: '2.058 t/m3', moisture: 0.05 }],
  maximumDryDensity: '2 t/m3',
  test: 'standard',
  tolerance: 'paver-guide-mm',
} as const;
const fall = {
  ...GATE,
  surface: 'finished grade',
  readings: [{ id: 'a', fall: '1 in', run: '50 in' }],
  tolerance: { minimum: '2%' },
} as const;
const lippage = {
  ...GATE,
  at: 'pavers',
  readings: [{ id: 'a', lippage: '1/8 in' }],
  tolerance: 'paver-guide-in',
} as const;
const jointWidth = {
  ...GATE,
  readings: [
    { id: 'a', width: '2 mm' },
    { id: 'b', width: '5 mm' },
  ],
  tolerance: 'paver-guide-mm',
} as const;
const bondLine = {
  ...GATE,
  readings: [
    { station: '0 ft', offset: '0 in' },
    { station: '20 ft', offset: '1/2 in' },
    { station: '40 ft', offset: '0 in' },
  ],
  tolerance: 'paver-guide-in',
} as const;
const all = {
  compaction: [compaction],
  flatness: [flatness],
  fall: [fall],
  lippage: [lippage],
  jointWidth: [jointWidth],
  bondLine: [bondLine],
} satisfies JobReadings;

const checksOf = (check: JobCheck) => check.pavements.flatMap(({ checks }) => checks);
const only = (readings: JobReadings) => {
  const [placed, ...rest] = checksOf(checkJob(plan, readings));
  if (placed === undefined || rest.length > 0) expect.unreachable();
  return placed.check;
};
const faults = (readings: unknown) =>
  faultsOf(() => checkJob(plan, readings as JobReadings)).map(
    ({ path, code }) => `${pathText(path)} ${code}`,
  );

describe('readings between the stakes, by pencil', () => {
  test('each on its limit passes', () => {
    const check = checkJob(plan, all);
    expect(check.verdict).toBe('pass');
    expect(check.surfaces).toEqual([]);
    expect(
      checksOf(check).map(({ check: one, surface, kind, place }) => [
        one.check,
        surface,
        kind,
        place,
        one.source,
      ]),
    ).toEqual([
      ['compaction', 'base top', 'base', 'by the gate', 'paver-tolerances'],
      ['flatness', 'finished grade', 'pavers', 'by the gate', 'paver-tolerances'],
      ['fall', 'finished grade', 'pavers', 'by the gate', null],
      ['lippage', 'finished grade', 'pavers', 'by the gate', 'paver-tolerances'],
      ['joint-width', 'finished grade', 'pavers', 'by the gate', 'paver-tolerances'],
      ['bond-line', 'finished grade', 'pavers', 'by the gate', 'paver-tolerances'],
    ]);
  });

  test('a gap of 7/16 in under 10 ft is 1/16 in over the 3/8 in of the guide', () => {
    const check = only({ flatness: [{ ...flatness, profile: dip('7/16 in') }] });
    expect(check.verdict).toBe('fail');
    expect(check.outOfTolerance.map(({ id, margin }) => [id, margin.toString()])).toEqual([
      ['2', '-0.0625 in'],
    ]);
    expect(check.subject).toBe('pavers');
  });

  test('2.057 t/m3 wet at 5 % is 1.959 t/m3 dry, less than 98 % of 2 t/m3', () => {
    const readings = [{ id: 'a', wetDensity: '2.057 t/m3', moisture: 0.05 }];
    const check = only({ compaction: [{ ...compaction, readings }] });
    expect(check.verdict).toBe('fail');
    expect(check.outOfTolerance[0]?.move?.action).toBe('compact');
  });

  test('1 in over 51 in is less than 2 %', () => {
    const readings = [{ id: 'a', fall: '1 in', run: '51 in' }];
    const check = only({ fall: [{ ...fall, readings }] });
    expect(check.verdict).toBe('fail');
    // 2 % of 51 in is 1.02 in
    expect(check.outOfTolerance[0]?.move?.by?.to('in').toString()).toBe('0.02');
    const unsure = only({ fall: [{ ...fall, standardUncertainty: '2 mm' }] });
    expect(unsure.verdict).toBe('unclear');
  });

  test('a lip of 3/16 in is 1/16 in over; at a drain it may stand 1/8 in to 3/8 in above', () => {
    const readings = [{ id: 'a', lippage: '3/16 in' }];
    const check = only({ lippage: [{ ...lippage, readings }] });
    expect(check.outOfTolerance[0]?.move?.by?.toString()).toBe('0.0625 in');
    expect(only({ lippage: [{ ...lippage, at: 'drain', readings }] }).verdict).toBe('pass');
    const low = [{ id: 'a', lippage: '-1/16 in' }];
    expect(only({ lippage: [{ ...lippage, at: 'drain', readings: low }] }).verdict).toBe('fail');
  });

  test('one joint in three out of limits passes where two in three are enough', () => {
    const readings = [...jointWidth.readings, { id: 'c', width: '6 mm' }];
    expect(only({ jointWidth: [{ ...jointWidth, readings }] }).verdict).toBe('fail');
    expect(only({ jointWidth: [{ ...jointWidth, readings, minimumShare: 0.6 }] }).verdict).toBe(
      'pass',
    );
  });

  test('a joint 9/16 in off a 50 ft string is out', () => {
    const [first, , last] = bondLine.readings;
    const readings = [first, { station: '20 ft', offset: '9/16 in' }, last];
    const check = only({ bondLine: [{ ...bondLine, readings }] });
    expect(check.outOfTolerance.map(({ move }) => move?.action)).toEqual(['move-right']);
  });

  test('limits of your own, and the uncertainty of a reading', () => {
    const own = { ...flatness, tolerance: { maximum: '1/4 in', over: '10 ft' } };
    expect(only({ flatness: [own] }).verdict).toBe('fail');
    expect(only({ flatness: [{ ...own, uncertainty: '1/8 in' }] }).verdict).toBe('unclear');
  });
});

describe('checks of a job', () => {
  const broken = { ...all, lippage: [{ ...lippage, readings: [{ id: 'a', lippage: '1 in' }] }] };
  const check = checkJob(plan, {
    ...broken,
    readings: [{ stake: 'G1', surface: 'subgrade', belowString: '18 1/4 in' }],
    tolerances: { subgrade: { over: '1/2 in', under: '1/2 in' } },
  });

  test('the verdict is the worst of each pavement and of all', () => {
    expect(check.verdict).toBe('fail');
    expect(check.pavements.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['court', 'fail'],
      ['terrace', 'pass'],
    ]);
    const [, terrace] = checkJob(plan, all).pavements;
    expect(terrace?.verdict).toBeNull();
  });

  test('tells what was planned, and what nobody checked', () => {
    const [court, terrace] = check.pavements;
    expect(court?.buildUp.layers.map(({ thickness }) => thickness.toString())).toEqual([
      '3.25 in',
      '1 in',
      '8.5 in',
      '6 in',
    ]);
    expect(court?.buildUp.total.to('in').toString()).toBe('18.75');
    expect([court?.use, court?.subgrade]).toEqual([
      'parking-or-residential-street',
      'well-drained',
    ]);
    expect(court?.notChecked.map(({ check: kind, surfaces }) => [kind, ...surfaces])).toEqual([
      [
        'level',
        'subgrade',
        'lift 1 top',
        'sub-base top',
        'lift 3 top',
        'base top',
        'bedding top',
        'finished grade',
      ],
      ['thickness', 'sub-base top', 'base top', 'bedding top'],
      ['compaction', 'subgrade', 'sub-base top'],
      ['flatness', 'base top'],
    ]);
    expect(terrace?.notChecked.map(({ check: kind }) => kind)).toEqual([
      'level',
      'thickness',
      'compaction',
      'flatness',
      'fall',
      'lippage',
      'joint-width',
      'bond-line',
    ]);
    expect(terrace?.notChecked[0]?.surfaces).toEqual(['base top', 'bedding top', 'finished grade']);
  });

  test('the sheet says ok only if nothing is left to read or to check', () => {
    const own = { over: '1 mm', under: '1 mm' };
    const tolerances = {
      ...{ subgrade: own, lift: own, 'sub-base': own, base: own, bedding: own, pavers: own },
    };
    const of = <T extends object>(one: T) =>
      plan.pavements.map(({ id }) => ({ ...one, pavement: id }));
    const onSurfaces = <T extends object>(kind: string, one: T) =>
      checkJob(plan, { lippage: [lippage] }).pavements.flatMap(({ id, notChecked }) =>
        (notChecked.find(({ check: left }) => left === kind)?.surfaces ?? []).map((surface) => ({
          ...one,
          pavement: id,
          surface,
        })),
      );
    const guess = plan.stringLines.flatMap(({ pavement, stakes }) =>
      onSurfaces('level', {}).flatMap(({ pavement: id, surface }) =>
        id === pavement
          ? stakes.map((stake) => ({ stake: stake.id, surface, belowString: '9 in' }))
          : [],
      ),
    );
    const readings = checkJob(plan, { readings: guess, tolerances }).surfaces.flatMap(
      ({ surface, stakes }) =>
        stakes.map(({ id, plannedBelowString }) => ({
          stake: id,
          surface,
          belowString: plannedBelowString,
        })),
    );
    const whole: JobReadings = {
      readings,
      tolerances,
      thickness: { 'sub-base': own, base: own, bedding: own },
      compaction: onSurfaces('compaction', compaction),
      flatness: onSurfaces('flatness', flatness),
      fall: of(fall),
      lippage: of(lippage),
      jointWidth: of(jointWidth),
      bondLine: of(bondLine),
    };
    const headline = (given: JobReadings) =>
      renderCheckSheet(checkJob(plan, given), { system: 'us', width: 80 })
        .split('\n')
        .find((line) => line.startsWith('As built'));
    const soFar = 'As built, compared with the plan: ok so far. Not everything has been checked.';
    expect(headline(whole)).toBe('As built, compared with the plan: ok');
    // a stake, a surface, a kind of check
    expect(headline({ ...whole, readings: readings.slice(1) })).toBe(soFar);
    expect(
      headline({ ...whole, readings: readings.filter(({ surface }) => surface !== 'subgrade') }),
    ).toBe(soFar);
    expect(headline({ ...whole, fall: of(fall).slice(1) })).toBe(soFar);
    expect(headline(all)).toBe(soFar);
    expect(headline(broken)).toBe('As built, compared with the plan: OUT');
  });

  test('carries the working and the cautions of every check, and goes through JSON', () => {
    const titles = check.working.map(({ title }) => title);
    expect(titles).toContain('Lippage at a');
    expect(titles).toContain('Share of joints within the limits');
    expect(titles[0]).toBe('Level of the subgrade at G1 against the plan');
    expect(check.cautions.map(({ id }) => id)).toEqual([
      'utilities',
      'excavation',
      'structure',
      'drainage',
      'access',
    ]);
    const text = JSON.stringify(check);
    expect(JSON.stringify(JSON.parse(text))).toBe(text);
    expect(Object.isFrozen(check.pavements[0]?.checks[0])).toBe(true);
  });

  test('the checks go into a report as they are', () => {
    const checks = checksOf(check).map((one) => one.check);
    const report = layerReport({ layer: 'Court', checks, system: 'us' });
    expect(report.checks.map(({ verdict }) => verdict)).toEqual([
      'pass',
      'pass',
      'pass',
      'fail',
      'pass',
      'pass',
    ]);
  });

  test('the sheet of the check prints them, their limits and where these come from', () => {
    const sheet = renderCheckSheet(check, { system: 'us', width: 80 });
    expect(sheet).toContain('LIPPAGE BETWEEN PAVERS of Parking court, finished grade, by the gate');
    expect(sheet).toContain('> a, 1 in: lower 7/8 in');
    expect(sheet).toContain('tolerance: no more than 1/8 in [1]');
    expect(sheet).toContain('[1] Construction Tolerances');
    expect(sheet).toContain('tolerance: at least 2%, set for this job');
    expect(renderCheckSheet(checkJob(plan, { fall: [fall] }), { system: 'us' })).not.toContain(
      'WHERE THE TOLERANCES',
    );
  });
});

/** The string that the ground was measured from. */
const FROM: Readonly<Record<string, string>> = { K4: 'kerb', F4: 'fence', F1: 'fence' };

/** A court whose stake K4 turns to a string 6 in higher, and F1 to a string of the terrace. */
const turning = () => {
  const job = plainCourtFile();
  job.stakes = job.stakes.map((stake) =>
    Object.hasOwn(FROM, String(stake['id']))
      ? { ...stake, groundFrom: FROM[String(stake['id'])] }
      : stake,
  );
  job.stringLines.push(
    { id: 'end', pavement: 'court', height: '24 in', stakes: ['K4', 'F4'] },
    { id: 'steps', pavement: 'terrace', height: '18 in', stakes: ['F1', 'G1'] },
    { id: 'start', pavement: 'court', stakes: ['K1', 'F1'] },
  );
  return planFile(job);
};

describe('a stake of several strings', () => {
  const turned = turning();
  const tolerances = { subgrade: { over: '1/4 in', under: '1/4 in' } };
  const at = (...readings: object[]) =>
    checkJob(turned, {
      readings: readings.map((one) => ({ surface: 'subgrade', ...one })) as never,
      tolerances,
    });
  const stakesOf = (check: JobCheck) =>
    check.surfaces.flatMap(({ pavementId, stakes }) =>
      stakes.map(({ id, string, value }) => [pavementId, id, string, value.to('in').toString()]),
    );

  test('counts from the string that is named', () => {
    // 12 1/4 in of layers: 30 1/4 in below 18 in, 36 1/4 in below 24 in
    const kerb = at({ stake: 'K4', string: 'kerb', belowString: '30 1/8 in' });
    expect(stakesOf(kerb)).toEqual([['court', 'K4', 'kerb', '0.125']]);
    const end = at({ stake: 'K4', string: 'end', belowString: '36 1/4 in' });
    expect(stakesOf(end)).toEqual([['court', 'K4', 'end', '0']]);
    expect(end.surfaces[0]?.stakes[0]?.plannedBelowString.to('in').toString()).toBe('36.25');
  });

  test('belongs to the pavement of the string', () => {
    // the terrace has 9 1/4 in of layers
    const check = at(
      { stake: 'F1', string: 'steps', belowString: '27 1/4 in' },
      { stake: 'F1', string: 'fence', belowString: '30 1/2 in' },
    );
    expect(stakesOf(check)).toEqual([
      ['court', 'F1', 'fence', '-0.25'],
      ['terrace', 'F1', 'steps', '0'],
    ]);
  });

  test('needs no string where all its strings say the same', () => {
    const check = at({ stake: 'K1', belowString: '30 1/4 in' });
    expect(stakesOf(check)).toEqual([['court', 'K1', 'kerb', '0']]);
  });

  test('is asked for once', () => {
    const check = at({ stake: 'K1', belowString: '30 1/4 in' });
    expect(check.surfaces[0]?.missing).toEqual(['K2', 'K3', 'K4', 'F1', 'F2', 'F3', 'F4']);
    const [surface] = check.surfaces;
    if (surface === undefined) expect.unreachable();
    expect(describeNextStep(surface, { system: 'us' })).toContain('F1, F2, F3, F4 too');
  });

  test('gives thickness from readings below two strings', () => {
    const check = checkJob(turned, {
      readings: [
        { stake: 'K4', string: 'end', surface: 'base top', belowString: '28 1/4 in' },
        { stake: 'K4', string: 'kerb', surface: 'subgrade', belowString: '30 1/2 in' },
      ],
      tolerances: { ...tolerances, base: { over: '1/4 in', under: '1/4 in' } },
      thickness: { base: { over: '1/4 in', under: '1/4 in' } },
    });
    // base top 4 1/4 in, subgrade 12 1/2 in below finished grade
    const thickness = check.surfaces[1]?.thickness;
    expect(thickness?.readings.map(({ value }) => value.to('in').toString())).toEqual(['8.25']);
  });

  test('the sheet names the strings where there are several', () => {
    const two = at(
      { stake: 'K4', string: 'end', belowString: '36 1/4 in' },
      { stake: 'K1', belowString: '30 1/4 in' },
    );
    expect(renderCheckSheet(two, { system: 'us' })).toMatch(/K4 +end +36 1\/4 +36 1\/4/);
    const one = at({ stake: 'K1', belowString: '30 1/4 in' });
    expect(renderCheckSheet(one, { system: 'us' })).not.toContain('string  ');
  });

  test.each<[string, object[], string[]]>([
    ['heights differ', [{ stake: 'K4', belowString: '36 in' }], ['readings[0].string REQUIRED']],
    ['pavements differ', [{ stake: 'F1', elevation: '97 ft' }], ['readings[0].string REQUIRED']],
    [
      'a string of other stakes',
      [{ stake: 'K4', string: 'fence', belowString: '36 in' }],
      ['readings[0].string UNKNOWN_ID'],
    ],
    [
      'no text',
      [{ stake: 'K4', string: 4, belowString: '36 in' }],
      ['readings[0].string WRONG_TYPE'],
    ],
    [
      'a surface of the other pavement',
      [{ stake: 'F1', string: 'steps', surface: 'lift 2 top', belowString: '20 in' }],
      ['readings[0].surface UNKNOWN_CHOICE'],
    ],
    [
      'one place by two strings',
      [
        { stake: 'K4', string: 'kerb', belowString: '30 in' },
        { stake: 'K4', string: 'end', belowString: '36 in' },
      ],
      ['readings[1] DUPLICATE_ID'],
    ],
  ])('refuses: %s', (_name, readings, expected) => {
    const found = faultsOf(() => at(...readings));
    expect(found.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual(expected);
  });
});

describe('refuses', () => {
  test.each<[string, object, string[]]>([
    ['nothing at all', {}, ['readings REQUIRED']],
    ['only tolerances', { tolerances: {} }, ['readings REQUIRED']],
    ['an empty list', { fall: [] }, ['fall EMPTY_LIST']],
    [
      'levels without tolerances',
      { readings: [{ stake: 'K1', surface: 'subgrade', belowString: '36 in' }] },
      ['tolerances.subgrade REQUIRED'],
    ],
    [
      'an unknown pavement',
      { lippage: [{ ...lippage, pavement: 'drive' }] },
      ['lippage[0].pavement UNKNOWN_ID'],
    ],
    [
      'an unknown surface',
      { fall: [{ ...fall, surface: 'gravel' }] },
      ['fall[0].surface UNKNOWN_CHOICE'],
    ],
    [
      'an unknown surface, and not what would limit it',
      { flatness: [{ ...flatness, surface: 'gravel', tolerance: 'permeable-guide' }] },
      ['flatness[0].surface UNKNOWN_CHOICE'],
    ],
    [
      'a second reading in one place, beside other faults',
      {
        readings: ['36 in', '35 in'].map((belowString) => ({
          stake: 'K1',
          surface: 'subgrade',
          belowString,
        })),
        tolerances: {},
      },
      ['tolerances.subgrade REQUIRED', 'readings[1] DUPLICATE_ID'],
    ],
    [
      'a place listed twice',
      { jointWidth: [jointWidth, jointWidth] },
      ['jointWidth[1].place DUPLICATE_ID'],
    ],
    ['no place', { fall: [without(fall, 'place')] }, ['fall[0].place REQUIRED']],
    ['no surface', { flatness: [without(flatness, 'surface')] }, ['flatness[0].surface REQUIRED']],
    ['a layer', { fall: [{ ...fall, layer: 'base' }] }, ['fall[0].layer UNKNOWN_FIELD']],
    [
      'a set without that limit',
      { flatness: [{ ...flatness, surface: 'bedding top' }] },
      ['flatness[0].tolerance LIMIT_NOT_SET'],
    ],
    [
      'a density of the other test',
      { compaction: [{ ...compaction, test: 'modified' }] },
      ['compaction[0].test CONFLICTING_FIELDS'],
    ],
    [
      'lips at a place that is none',
      { lippage: [{ ...lippage, at: 'gate' }] },
      ['lippage[0].at UNKNOWN_CHOICE'],
    ],
    [
      'too few readings under the edge',
      { flatness: [{ ...flatness, profile: dip('1 in').slice(0, 2) }] },
      ['flatness[0].profile READINGS_TOO_SPARSE'],
    ],
    [
      'a width without a unit',
      { jointWidth: [{ ...jointWidth, readings: [{ id: 'a', width: 3 }] }] },
      ['jointWidth[0].readings[0].width UNIT_MISSING'],
    ],
    ['what is no list', { bondLine: bondLine }, ['bondLine WRONG_TYPE']],
    ['what is no place', { bondLine: ['gate'] }, ['bondLine[0] WRONG_TYPE']],
  ])('%s', (_name, readings, expected) => {
    expect(faults(readings)).toEqual(expected);
  });

  const lists = Object.entries(all).flatMap(([name, entries]) =>
    entries.map((entry) => [name, entry] as const),
  );
  test.each(lists)('%s without a tolerance: there is no default', (name, entry) => {
    expect(faults({ [name]: [without(entry, 'tolerance')] })).toEqual([
      `${name}[0].tolerance REQUIRED`,
    ]);
  });

  test('places of one name on two surfaces or pavements, or at pavers and at a drain, are two places', () => {
    const readings = [{ id: 'a', lippage: '1/4 in' }];
    const check = checkJob(plan, {
      flatness: [flatness, { ...flatness, surface: 'base top' }],
      lippage: [lippage, { ...lippage, at: 'drain', readings }],
      fall: [fall, { ...fall, pavement: 'terrace' }],
    });
    expect(check.pavements.map(({ checks }) => checks.length)).toEqual([5, 1]);
  });

  test('all faults at once, each at its field', () => {
    const readings = {
      readings: [{ stake: 'Q9', surface: 'subgrade', belowString: '25 in' }],
      flatness: [
        { ...without(flatness, 'tolerance'), surface: 'gravel', profile: [{ station: '0 ft' }] },
      ],
      lippage: [lippage, { ...lippage, readings: [], pavement: 'drive' }],
      fall: [{ place: '' }],
    };
    expect(faults(readings).sort()).toEqual([
      'fall[0].pavement REQUIRED',
      'fall[0].place EMPTY',
      'fall[0].readings REQUIRED',
      'fall[0].surface REQUIRED',
      'fall[0].tolerance REQUIRED',
      'flatness[0].profile TOO_FEW',
      'flatness[0].profile[0].height REQUIRED',
      'flatness[0].surface UNKNOWN_CHOICE',
      'flatness[0].tolerance REQUIRED',
      'lippage[1].pavement UNKNOWN_ID',
      'lippage[1].readings EMPTY_LIST',
      'readings[0].stake UNKNOWN_ID',
    ]);
  });
});

const run = (readings: JobReadings) => checkJob(plan, readings);
testMisspelt({
  checkJob: [
    run,
    all,
    [
      ['flatnes', 'flatness'],
      ['flatness[0].tolerence', 'tolerance'],
      ['flatness[0].profil', 'profile'],
      ['compaction[0].readings[0].moistur', 'moisture'],
      ['lippage[0].readngs', 'readings'],
      ['bondLine[0].plase', 'place'],
    ],
  ],
});
