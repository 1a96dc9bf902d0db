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
import { cedarCourtJob } from '../cedar-court.js';
import { millGarthJob } from '../mill-garth.js';

const plan = planJob(cedarCourtJob());
const us = renderJobSheet(plan, { system: 'us' });
const metric = renderJobSheet(planJob(millGarthJob()), { system: 'metric' });

/** A line of the sheet as its words. */
const words = (sheet: string) => sheet.split('\n').map((line) => line.trim().replace(/ +/g, ' '));
/** The part of the sheet under a heading. */
const under = (sheet: string, title: string) => sheet.split(`\n${title}\n`)[1] ?? '';

describe('the sheet in feet and inches', () => {
  test.each([
    'Cedar Court 27 (an invented site)',
    '! Stake K2 stands out of line: move it 1 1/8 in',
    'paver 3 1/4 18 21 1/4',
    'bedding 1 21 1/4 22 1/4',
    'base 8 1/2 22 1/4 30 3/4',
    'sub-base 6 30 3/4 36 3/4',
    'subgrade: dig to 36 3/4',
    'dig 19 3/8',
    'old concrete to strip 5 1/2',
    'then soil to dig 13 7/8',
    '1 restrained 44\' 0" 0 0',
    '2 open 20\' 0" 17 20',
    '6 building 33\' 0" 0 0',
    'paving 1270.0 ft2',
    'base 1381.1 ft2',
    'dig 1401.1 ft2',
    '1 3 7/8 3 32 7/8 33 3/4',
    '4 5 7/16 4 1/4 21 1/16 22 1/4',
    'base, compacted 61.81 yd3',
    'pavers to fill / to order 5520 / 5741',
    'K1 0\' 0" 17 19 3/4 14 1/4',
    'K1 212.39 ft 213.89 ft',
    'K2 1 1/8 right OUT',
    '> move K2 1 1/8 in left',
    'K1 to K2 along 2.0 % in all 2.2 % ok',
    'G2 to G1 along 1.7 % in all 2.5 % ok',
    'order in whole yards 89 yd3',
    'loads (the payload decides) 9',
  ])('%s', (line) => {
    expect(words(us)).toContain(line);
  });

  test('a pavement on a string of its own height prints its depths from there', () => {
    const court = under(us, 'PARKING COURT').replace(/\s+/g, ' ');
    expect(court).toContain('Depths below a string 18 in above finished grade (in)');
    const terrace = words(under(us, 'TERRACE'));
    expect(terrace.join(' ')).toContain('Depths below a string 9 in above finished grade (in)');
    for (const line of [
      'paver 3 1/4 9 12 1/4',
      'base 5 13 1/4 18 1/4',
      'subgrade: dig to 18 1/4',
      '1 6 7/16 5 11 13/16 13 1/4',
    ]) {
      expect(terrace).toContain(line);
    }
  });

  test('where no ground was measured the stakes are listed without it', () => {
    const garden = under(us, 'STRING GARDEN for Terrace');
    expect(garden).toContain('Stakes along the string; ground not measured');
    expect(words(garden)).toContain('G2 7\' 0"');
    expect(garden).not.toContain('soil left');
  });
});

describe('the sheet in metres', () => {
  test.each([
    'Mill Garth 5 (an invented site)',
    'paver 80 250 330',
    'base 320 355 675',
    'subgrade: dig to 465',
    '3 open 4.667 m 380 530',
    'paving 67.80 m2',
    'L2 2.400 m 240 435 360',
    'L1 48.310 m 48.560 m',
    '> move L2 36 mm right',
    'order in whole cubic metres 39 m3',
    'old asphalt, weight 13.6 t',
  ])('%s', (line) => {
    expect(words(metric)).toContain(line);
  });

  test('has no inch or foot in it', () => {
    expect(metric).not.toMatch(/\d (?:in|ft|yd3|ft2|short tons)\b|\d["']/);
    expect(us).not.toMatch(/\d (?:mm|m|m3|m2|t)\b/);
  });

  test('either site prints in either system', () => {
    const turned = renderJobSheet(plan, { system: 'metric' });
    // 18 in and 36 3/4 in; 14 ft and 20 ft; 1270 ft2; 17 in
    expect(turned).toContain('457 mm above finished grade');
    expect(words(turned)).toEqual(
      expect.arrayContaining([
        'subgrade: dig to 933',
        '2 open 6.096 m 432 508',
        'paving 117.99 m2',
        '> move K2 29 mm left',
      ]),
    );
    expect(turned).not.toMatch(/\d (?:in|ft|yd3|ft2|short tons)\b|\d["']/);
  });
});

test('cautions and sources close the sheet', () => {
  for (const sheet of [us, metric]) {
    for (const { text } of plan.cautions) {
      expect(sheet.replace(/\s+/g, ' ')).toContain(text);
    }
    expect(sheet).toContain('BEFORE YOU DIG');
    expect(sheet.replace(/\s+/g, ' ')).toContain('licensed engineer');
  }
  // what is added for wet ground and frost has no source; nothing is added on well-drained ground
  expect(metric).toContain('[common-practice]');
  expect(us).not.toContain('[common-practice]');
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
  [{ system: 'us', width: 50.5 }, 'NOT_WHOLE'],
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
    STAKE_IN_DIG: { pavement: 'Terrace' },
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
  expect(text).toContain('Parking court: Depth of the subgrade below finished grade');
  expect(text).toContain('D = 18 3/4 in (total build-up)');
  expect(text).toContain('[Geometry and arithmetic; worked out here]');
  expect(renderWorking(plan.working, { system: 'metric' })).toContain(
    'D = 476 mm (total build-up)',
  );
  for (const line of renderWorking(plan.working, { system: 'us', width: 60 }).split('\n')) {
    expect(line.length).toBeLessThanOrEqual(72);
  }
});
