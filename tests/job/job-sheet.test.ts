import { describe, expect, test } from 'vitest';
import {
  describeWarning,
  planFromJSON,
  planJob,
  renderJobSheet,
  renderWorking,
  type PlanWarning,
  type WarningCode,
} from 'settline/job';
import { area, length, slope } from 'settline/units';
import { expectFault } from '../faults.js';
import { heronBendJob } from '../heron-bend.js';

const plan = planJob(heronBendJob());
const us = renderJobSheet(plan, { system: 'us' });
const metric = renderJobSheet(plan, { system: 'metric' });

/** A line of the sheet as its words. */
const words = (sheet: string) => sheet.split('\n').map((line) => line.trim().replace(/ +/g, ' '));

describe('the sheet in feet and inches', () => {
  test.each([
    'Heron Bend 14 (an invented site)',
    '! Stake N3 stands out of line: move it 1 1/2 in',
    'paver 2 3/8 12 14 3/8',
    'bedding 1 14 3/8 15 3/8',
    'base 10 15 3/8 25 3/8',
    'subgrade: dig to 25 3/8',
    'base 6 15 3/8 21 3/8',
    'dig 13 3/8',
    'old asphalt to strip 2',
    'then soil to dig 11 3/8',
    '1 open 36\' 0" 12 12',
    '4 building 14\' 0" 0 0',
    'paving 504.0 ft2',
    'base 592.0 ft2',
    '1 4 3/16 3 5/16 21 3/16 22 1/16',
    '3 4 3/16 3 5/16 14 9/16 15 3/8',
    'base, compacted 18.27 yd3',
    'pavers to fill / to order 1720 / 1806',
    'S1 0\' 0" 11 1/2 13 7/8 11 7/8',
    'S1 99.95 ft 100.95 ft',
    'N3 1 1/2 left OUT',
    '> move N3 1 1/2 in right',
    'S1 to S2 along 2.5 % in all 2.5 % ok',
    'W1 to W2 along 1.7 % in all 2.2 % ok',
    'order in whole yards 28 yd3',
    'loads (the payload decides) 4',
  ])('%s', (line) => {
    expect(words(us)).toContain(line);
  });
});

describe('the sheet in metres', () => {
  test.each([
    'paver 60 305 365',
    'base 254 391 645',
    '1 open 10.973 m 305 305',
    'paving 46.82 m2',
    'S2 3.658 m 305 340 289',
    'S1 30.465 m 30.770 m',
    '> move N3 38 mm right',
    'order in whole cubic metres 22 m3',
  ])('%s', (line) => {
    expect(words(metric)).toContain(line);
  });

  test('has no inch or foot in it', () => {
    expect(metric).not.toMatch(/\d (?:in|ft|yd3|ft2|short tons)\b|\d["']/);
    expect(us).not.toMatch(/\d (?:mm|m|m3|m2|t)\b/);
  });
});

test('cautions and sources close the sheet', () => {
  for (const sheet of [us, metric]) {
    for (const { text } of plan.cautions) {
      expect(sheet.replace(/\s+/g, ' ')).toContain(text);
    }
    expect(sheet).toContain('BEFORE YOU DIG');
    expect(sheet).toContain('[common-practice]');
    expect(sheet.replace(/\s+/g, ' ')).toContain('licensed engineer');
  }
});

test('every line fits the width', () => {
  for (const width of [40, 48, 64, 100]) {
    for (const system of ['us', 'metric'] as const) {
      const sheet = renderJobSheet(plan, { system, width });
      for (const line of sheet.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
      expect(sheet.endsWith('\n')).toBe(true);
      expect(sheet).not.toMatch(/[^\S\n]\n/);
    }
  }
});

test('a plan from JSON gives the same sheet', () => {
  const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
  expect(renderJobSheet(again, { system: 'us' })).toBe(us);
});

test.each([
  [{ system: 'imperial' }, 'UNKNOWN_CHOICE'],
  [{ system: 'us', width: 20 }, 'OUT_OF_RANGE'],
  [{ system: 'us', width: 50.5 }, 'OUT_OF_RANGE'],
] as const)('refuses %j', (options, code) => {
  expectFault(() => renderJobSheet(plan, options as never), code);
});

test('every warning has words in both systems', () => {
  const values: Record<WarningCode, PlanWarning['values']> = {
    PAVER_BELOW_MINIMUM: { got: length('50 mm'), least: length('60 mm') },
    BEDDING_OFF_NOMINAL: { got: length('2 in'), nominal: length('1 in') },
    BASE_BELOW_MINIMUM: { got: length('3 in'), least: length('4 in') },
    BASE_BELOW_PRACTICE: { got: length('4 in'), practice: length('6 in') },
    STAKE_OUT_OF_LINE: { distance: length('1 in'), direction: 'left' },
    LINE_AMBIGUOUS: { distance: length('1 in'), direction: 'left' },
    LINE_NOT_CHECKED: {},
    FALL_TOO_SMALL: { fall: slope('1%') },
    FILL_NEEDED: { fill: length('1 in') },
    OLD_SURFACE_DEEPER_THAN_DIG: { dig: length('1 in'), fill: length('1 in') },
    OLD_SURFACE_WIDER_THAN_DIG: { area: area('200 ft2'), dig: area('150 ft2') },
    STAKE_IN_DIG: { pavement: 'Drive' },
    DIG_CLOSES_UP: {},
    DIG_RUNS_OUT: { edge: 2 },
    UTILITY_IN_DIG: { line: 'gas', area: area('20 ft2') },
    UTILITY_COVER: { line: 'gas', cover: length('2 in') },
    ROOTS_CUT: { tree: 'oak', reach: length('5 ft'), share: '12 %' },
    UNIT_SHAPE: { text: 'too long for its thickness.' },
    NO_FINISHED_SURFACE: {},
    SURFACE_GAP: { area: area('20 ft2') },
    LOW_GROUND: {
      area: area('20 ft2'),
      depth: length('1 in'),
      x: length('3 ft'),
      y: length('4 ft'),
    },
    GRADE_MISSES_LEVEL: { level: 'slab', off: length('1 in'), side: 'above' },
    FALLS_TO_BUILDING: { edge: 1 },
    ROD_CANNOT_REACH: { surface: 'subgrade', reach: 'beyond-rod' },
    ROD_NEEDS_FINISH: {},
    LEVELS_DO_NOT_CLOSE: { misclosure: length('1 in'), allowable: length('1/4 in') },
    INSTRUMENT_MOVED: { drift: length('1 in'), tolerance: length('1/4 in') },
  };
  const said = Object.entries(values).map(([code, of]) =>
    (['us', 'metric'] as const).map((system) =>
      describeWarning({ code: code as WarningCode, subject: 'stake S1', values: of }, { system }),
    ),
  );
  for (const [inUs, inMetric] of said) {
    expect(inUs).toMatch(/^Stake S1.*\.$/);
    expect(inMetric).not.toMatch(/undefined|\d in\b|ft2/);
    expect(inUs).not.toMatch(/undefined|\d mm\b|m2/);
  }
  expect(new Set(said.flat()).size).toBeGreaterThan(12);
});

test('the working prints in both systems, with the source of each step', () => {
  const text = renderWorking(plan.working, { system: 'us' });
  expect(text).toContain('Drive: Depth of the subgrade below finished grade');
  expect(text).toContain('D = 13.375 in (total build-up)');
  expect(text).toContain('[Geometry and arithmetic; worked out here]');
  expect(renderWorking(plan.working, { system: 'metric' })).toContain(
    'D = 339.72 mm (total build-up)',
  );
  for (const line of renderWorking(plan.working, { system: 'us', width: 60 }).split('\n')) {
    expect(line.length).toBeLessThanOrEqual(72);
  }
});
