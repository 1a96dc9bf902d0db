import { describe, expect, test } from 'vitest';
import {
  describeWarning,
  planFromJSON,
  planJob,
  renderJobSheet,
  tryPlanJob,
  type JobPlan,
} from 'settline/job';
import { pathText, type ErrorCode } from 'settline';
import type { Length, Slope } from 'settline/units';
import { inMetric } from '../in-metric.js';
import { planFile } from '../plan-file.js';
import { slateWharfFile, slateWharfJob } from '../slate-wharf.js';
import { withoutTexts } from './without-texts.js';

interface Loose {
  [key: string]: Loose;
  [index: number]: Loose;
}

const opened = (value: unknown) => value as Loose;
const changed = (change: (job: Loose) => unknown): unknown => {
  const job = slateWharfFile();
  change(opened(job));
  return job;
};
const levelsOf = (job: Loose): unknown => job['pavements']?.[0]?.['grade']?.['levels'];
const set = (target: Loose | undefined, key: string, value: unknown) => {
  (target as Record<string, unknown>)[key] = value;
};
const feet = (value: Length | null | undefined) => value?.to('ft').toString();
const percent = (value: Slope | undefined) =>
  value?.to('percent').toSignificantDigits(12).toString();

const plan = planJob(slateWharfJob());
const [apron, path] = plan.pavements;
const stakes = new Map(plan.stringLines.flatMap((line) => line.stakes).map((one) => [one.id, one]));
const warned = (one: JobPlan) => one.warnings.map(({ code, subject }) => `${code} ${subject}`);

describe('the level book of a job', () => {
  test('is reduced, and its misclosure spread, by pencil', () => {
    // 2 set-ups, computed 99.98 against 100: 0.01 back for each
    expect(plan.levelBook?.rows.map(({ elevation }) => feet(elevation))).toEqual([
      '100',
      '100.2',
      '100.2',
      '99.29',
      '99.3',
      '99.34',
      '99.98',
    ]);
    expect(plan.levelBook?.rows.map(({ adjusted }) => feet(adjusted))).toEqual([
      '100',
      '100.21',
      '100.21',
      '99.3',
      '99.32',
      '99.36',
      '100',
    ]);
    expect(feet(plan.levelBook?.misclosure)).toBe('-0.02');
    expect(plan.levelBook?.isAccepted).toBe(true);
  });

  test('with a slip is reported, not spread, and warned of', () => {
    const slip = planFile(
      changed((job) => set(job['levelBook']?.['rows']?.[6], 'fore', '4.18 ft')),
    );
    expect(slip.levelBook?.isAccepted).toBe(false);
    expect(feet(slip.levelBook?.rows.at(-1)?.adjusted)).toBe('99.88');
    expect(warned(slip)[0]).toBe('LEVELS_DO_NOT_CLOSE level book');
    const [first] = slip.warnings;
    if (first === undefined) expect.unreachable();
    expect(describeWarning(first, { system: 'us' })).toContain('misclosure is 1 7/16 in');
  });
});

describe('the instrument', () => {
  test('height is benchmark and backsight', () => {
    expect(feet(plan.levelling?.instrumentHeight)).toBe('104.62');
    expect(feet(plan.levelling?.closing?.drift)).toBe('0.01');
    expect(plan.levelling?.closing?.verdict).toBe('pass');
  });

  test('the benchmark may be a point of the book', () => {
    const other = planFile(
      changed((job) => set(job['levelling'], 'benchmark', { levelled: 'turn' })),
    );
    expect(feet(other.levelling?.instrumentHeight)).toBe('103.92');
    expect(other.levelling?.benchmark).toBe('turn');
  });

  test('a drift at the tolerance passes, a hair beyond is warned of', () => {
    const at = (reading: string) =>
      planFile(changed((job) => set(job['levelling']?.['closing'], 'reading', reading)));
    expect(at('4.64 ft').levelling?.closing?.verdict).toBe('pass');
    const moved = at('4.6400001 ft');
    expect(moved.levelling?.closing?.verdict).toBe('fail');
    expect(warned(moved)).toContain('INSTRUMENT_MOVED mark on the step');
  });

  test('rod readings at a stake, by pencil', () => {
    // A1: finish 100.21 + (100.21 - 100.21) x ... = 100.21 at the slab line
    const rods = stakes.get('A1')?.rods ?? [];
    expect(rods.map(({ surface }) => surface)).toEqual([
      'string',
      'finished grade',
      'bedding top',
      'base top',
      'lift 2 top',
      'lift 1 top',
      'subgrade',
    ]);
    expect(rods.map(({ rod }) => rod.to('in').toFixed(4))).toEqual([
      '36.9200', // 104.62 - 100.21 ft, less the 16 in of the string
      '52.9200', // 104.62 - 100.21 ft
      '56.1700', // + 3 1/4 in
      '57.1700', // + 1 in
      '60.8367', // + 11/3 in
      '64.5033', // + 11/3 in
      '68.1700', // + 11/3 in
    ]);
    expect(rods.every(({ reach }) => reach === 'on-rod')).toBe(true);
  });

  test('readings off the rod are warned of', () => {
    const short = planFile(changed((job) => set(job['levelling'], 'rodLength', '5.5 ft')));
    const codes = short.warnings.filter(({ code }) => code === 'ROD_CANNOT_REACH');
    expect(codes.map(({ subject, values }) => `${subject} ${String(values['surface'])}`)).toContain(
      'stake A1 subgrade',
    );
    expect(
      codes.map(({ subject, values }) => `${subject} ${String(values['surface'])}`),
    ).not.toContain('stake A1 lift 1 top');
    const low = planFile(changed((job) => set(job['levelling'], 'backsight', '0.5 ft')));
    const high = low.warnings.find(({ code }) => code === 'ROD_CANNOT_REACH');
    expect(high?.values['reach']).toBe('above-instrument');
    expect(renderJobSheet(low, { system: 'us' })).toMatch(/A1 +OUT/);
  });

  test('a stake without a level has no reading, and that is said', () => {
    const bare = planFile(
      changed((job) => delete (job['pavements']?.[1] as Partial<Loose>)['grade']),
    );
    expect(bare.stringLines[2]?.stakes[0]?.rods).toBeNull();
    expect(warned(bare)).toContain('ROD_NEEDS_FINISH stake F1');
  });
});

describe('finished grade by fixed levels', () => {
  test('warped between four corners: linear across at the slab and along each side', () => {
    // A2, 2 ft left of the apron and 14 ft down: z = 100.21 - 0.85 x 0.35 + twist u v
    // twist = 100.21 - 100.21 + 99.32 - 99.36 = -0.04, u = -2/12, v = 14/40
    const wanted = 100.21 - 0.85 * 0.35 + (-2 / 12) * (14 / 40) * -0.04;
    expect(stakes.get('A2')?.finishElevation?.toNumber('ft')).toBeCloseTo(wanted, 12);
    expect(stakes.get('A2')?.extrapolated).toBe(true);
    expect(stakes.get('A2')?.finishFrom).toBe('fixed-levels');
    expect(apron?.grade?.levels.every(({ miss }) => miss.isZero())).toBe(true);
    expect(apron?.grade?.twist?.abs().to('ft').toString()).toBe('0.04');
  });

  test('along a line, with a fall square to it', () => {
    // door 100.25 at station 16, 6 ft to the left at -2 %: 100.25 - 0.12
    expect(feet(stakes.get('F2')?.finishElevation)).toBe('100.13');
    expect(feet(stakes.get('F1')?.finishElevation)).toBe('99.93');
    expect(stakes.get('F1')?.extrapolated).toBe(false);
    expect(path?.grade?.stretches.map(({ grade }) => percent(grade))).toEqual(['1.25', '-1']);
    // sqrt(1.25^2 + 2^2) and sqrt(1 + 4)
    expect(percent(path?.grade?.flattest)).toBe(String(Number(Math.sqrt(5).toPrecision(12))));
    expect(percent(path?.grade?.steepest)).toBe(
      String(Number(Math.sqrt(1.25 ** 2 + 4).toPrecision(12))),
    );
    // the fall between stakes counts the cross slope in
    const [fall] = plan.stringLines[2]?.slopes ?? [];
    expect(percent(fall?.fall)).toBe(String(Number(Math.sqrt(1.25 ** 2 + 4).toPrecision(12))));
  });

  test('carried on beyond the ends of a line', () => {
    const far = planFile(changed((job) => set(job['stakes']?.[9], 'x', '0 ft')));
    const last = far.stringLines[2]?.stakes[2];
    expect(last?.extrapolated).toBe(true);
    expect(feet(last?.finishElevation)).toBe('100.01'); // 100.17 - 4 x 1 % - 0.12
  });

  test('beside a bend a stake belongs to the stretch on its side of the mitre', () => {
    const bent = planFile(
      changed((job) => {
        set(job['pavements']?.[1]?.['grade'], 'levels', [
          { x: '-28 ft', y: '0 ft', elevation: '100 ft' },
          { x: '-12 ft', y: '0 ft', elevation: '100.16 ft' },
          { x: '-12 ft', y: '20 ft', elevation: '99.16 ft' },
        ]);
        set(job['pavements']?.[1]?.['grade'], 'crossSlope', '0%');
        set(job['stakes']?.[9], 'x', '-11 ft');
      }),
    );
    const [first, second, third] = bent.stringLines[2]?.stakes ?? [];
    expect(feet(first?.finishElevation)).toBe('100'); // abreast of the start
    expect(feet(second?.finishElevation)).toBe('99.86'); // 6 ft along the second stretch at -5 %
    // a foot outside the bend the second stretch is 21 ft long from its mitre, and this is 7 ft of it
    expect(third?.finishElevation?.toNumber('ft')).toBeCloseTo(100.16 - 7 / 21, 12);
  });

  const plane = (...extra: Record<string, unknown>[]) =>
    changed((job) => {
      set(job['pavements']?.[0], 'grade', {
        kind: 'plane',
        levels: [
          { name: 'slab', x: '0 ft', y: '0 ft', elevation: '100 ft' },
          { x: '12 ft', y: '0 ft', elevation: '100 ft' },
          { x: '0 ft', y: '40 ft', elevation: '99.2 ft' },
          ...extra,
        ],
      });
    });

  test('a plane through three levels', () => {
    const laid = planFile(plane());
    const grade = laid.pavements[0]?.grade;
    expect([percent(grade?.steepest), percent(grade?.flattest), grade?.verdict]).toEqual([
      '2',
      '2',
      'pass',
    ]);
    expect(grade?.downhillAzimuth?.to('deg').toString()).toBe('0');
    expect(feet(laid.stringLines[0]?.stakes[1]?.finishElevation)).toBe('99.72');
    expect(laid.warnings.filter(({ code }) => code === 'GRADE_MISSES_LEVEL')).toEqual([]);
  });

  test('a fourth level that the plane misses is named, above or below', () => {
    const laid = planFile(plane({ name: 'kerb', x: '12 ft', y: '40 ft', elevation: '99.24 ft' }));
    const found = laid.warnings.filter(({ code }) => code === 'GRADE_MISSES_LEVEL');
    // the plane of least squares over a rectangle misses each corner by a quarter of 0.04 ft
    expect(found.map(({ values }) => [values['level'], values['side']])).toEqual([
      ['slab', 'above'],
      ['level 2', 'below'],
      ['level 3', 'below'],
      ['kerb', 'above'],
    ]);
    expect(found.map(({ values }) => feet(values['off'] as Length))).toEqual([
      '0.01',
      '0.01',
      '0.01',
      '0.01',
    ]);
    const held = planFile(
      plane({ name: 'kerb', x: '12 ft', y: '40 ft', elevation: '99.24 ft', fixed: true }),
    );
    expect(feet(held.pavements[0]?.grade?.levels[3]?.miss)).toBe('0');
  });

  test('water at the building and a grade too flat are warned of', () => {
    const back = planFile(
      changed((job) => {
        set(job['pavements']?.[1]?.['grade'], 'crossSlope', '0.5%');
        set(job['pavements']?.[1]?.['grade']?.['levels']?.[0], 'elevation', '100.17 ft');
      }),
    );
    // edge 1 lies at the house, y = 0; + to the left rises away from it
    expect(back.pavements[1]?.grade?.shedAtBuilding).toEqual([1]);
    expect(warned(back)).toContain('FALLS_TO_BUILDING Office path');
    expect(warned(back)).toContain('FALL_TOO_SMALL Office path');
    expect(path?.grade?.shedAtBuilding).toEqual([]);
    expect(apron?.grade?.shedAtBuilding).toEqual([]);
  });

  test('which way round the outline runs makes no difference to the building side', () => {
    const turned = planFile(
      changed((job) => {
        const pavement = job['pavements']?.[1];
        set(pavement?.['outline'], 'points', [
          [-28, 4],
          [-4, 4],
          [-4, 0],
          [-28, 0],
        ]);
        set(pavement, 'edges', ['open', 'open', 'building', 'open']);
        set(pavement?.['grade'], 'crossSlope', '2%');
      }),
    );
    expect(turned.pavements[1]?.grade?.shedAtBuilding).toEqual([3]);
  });
});

describe('the whole plan with levels', () => {
  test('is the same in metric units, to the last digit', () => {
    const metric = inMetric(slateWharfFile());
    expect(JSON.stringify(metric)).not.toMatch(/\d (?:in|ft)"/);
    expect(JSON.stringify(planFile(metric))).toBe(JSON.stringify(plan));
  });

  test('comes back from JSON, working and all', () => {
    const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
    expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
    expect(JSON.stringify(planJob(again.job))).toBe(JSON.stringify(plan));
    expect(withoutTexts(again.working)).toEqual(withoutTexts(plan.working));
    expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity/);
  });

  test('shows its working and names its sources', () => {
    const titles = plan.working.map(({ subject, title }) => `${subject}: ${title}`);
    expect(titles).toContain('Levels: Height of instrument');
    expect(titles).toContain('Levels: Misclosure');
    expect(titles).toContain('String west: Rod on the subgrade, stake A3');
    expect(plan.sources.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['level-booking', 'grade-with-a-level']),
    );
    expect(plan.cautions.map(({ id }) => id)).toContain('laser');
  });

  test('prints levels, grades and rods on the sheet, none wider than it', () => {
    for (const width of [40, 48, 80]) {
      const sheet = renderJobSheet(plan, { system: 'us', width });
      for (const text of sheet.split('\n')) expect(text.length).toBeLessThanOrEqual(width);
      expect(sheet).toMatch(/height of instrument +104\.62/);
      expect(sheet).toMatch(/slab left +0\.20 +100\.20 +100\.21/);
      expect(sheet).toMatch(/A1 \* +100\.21 +101\.54/);
      expect(sheet).toMatch(/\n {2}A1 +3\.08 +4\.41/);
    }
    expect(renderJobSheet(plan, { system: 'metric' })).toMatch(/height of instrument +31\.888/);
  });
});

describe('levels that cannot stand are refused', () => {
  const BROKEN: readonly [string, (job: Loose) => unknown, string, ErrorCode, string][] = [
    [
      'a stake with a level of its own on a pavement with a grade',
      (job) => set(job['stakes']?.[1], 'finish', '99.9 ft'),
      'stakes[1].finish',
      'CONFLICTING_FIELDS',
      '"apron" already has a grade through fixed levels. Remove one of them',
    ],
    [
      'a cross slope beside a grade',
      (job) => set(job['pavements']?.[0], 'crossSlope', '2%'),
      'pavements[0].crossSlope',
      'CONFLICTING_FIELDS',
      'Remove one of them',
    ],
    [
      'a cross slope on a warped surface',
      (job) => set(job['pavements']?.[0]?.['grade'], 'crossSlope', '2%'),
      'pavements[0].grade.crossSlope',
      'CONFLICTING_FIELDS',
      'only a grade of kind line has a cross slope',
    ],
    [
      'a corner out of order',
      (job) => set(job['pavements']?.[0]?.['grade']?.['levels']?.[2], 'x', '-12 ft'),
      'pavements[0].grade.levels',
      'NOT_FOUR_CORNERS',
      'in order around it',
    ],
    [
      'three corners',
      (job) => (levelsOf(job) as unknown[]).pop(),
      'pavements[0].grade.levels',
      'TOO_FEW',
      '3 levels. Give 4 for a grade of kind warped',
    ],
    [
      'five corners',
      (job) =>
        (levelsOf(job) as unknown[]).push({
          x: '6 ft',
          y: '50 ft',
          elevation: '99 ft',
        }),
      'pavements[0].grade.levels',
      'NOT_FOUR_CORNERS',
      'four corners',
    ],
    [
      'a plane through levels in line',
      (job) => {
        set(job['pavements']?.[0]?.['grade'], 'kind', 'plane');
        for (const k of [0, 1, 2, 3])
          set(job['pavements']?.[0]?.['grade']?.['levels']?.[k], 'y', '3 ft');
        set(job['pavements']?.[0]?.['grade']?.['levels']?.[2], 'x', '30 ft');
      },
      'pavements[0].grade.levels',
      'POINTS_COLLINEAR',
      'on one line',
    ],
    [
      'a line with a level twice in one place',
      (job) => set(job['pavements']?.[1]?.['grade']?.['levels']?.[1], 'x', '-28 ft'),
      'pavements[1].grade.levels[1]',
      'POINTS_COINCIDE',
      'the one before it',
    ],
    [
      'a level given and named',
      (job) => set(job['pavements']?.[0]?.['grade']?.['levels']?.[0], 'elevation', '100 ft'),
      'pavements[0].grade.levels[0].levelled',
      'CONFLICTING_FIELDS',
      'not both',
    ],
    [
      'a level neither given nor named',
      (job) =>
        delete (job['pavements']?.[0]?.['grade']?.['levels']?.[0] as Partial<Loose>)['levelled'],
      'pavements[0].grade.levels[0].elevation',
      'REQUIRED',
      'name a point of the level book',
    ],
    [
      'a point that is not in the book',
      (job) => set(job['pavements']?.[0]?.['grade']?.['levels']?.[0], 'levelled', 'slab'),
      'pavements[0].grade.levels[0].levelled',
      'UNKNOWN_ID',
      'no point of the level book is called "slab"',
    ],
    [
      'a point that stands twice in the book',
      (job) => set(job['levelBook']?.['rows']?.[2], 'point', 'slab left'),
      'pavements[0].grade.levels[0].levelled',
      'DUPLICATE_ID',
      'is listed 2 times in the level book',
    ],
    [
      'a fixed level on a line',
      (job) => set(job['pavements']?.[1]?.['grade']?.['levels']?.[0], 'fixed', true),
      'pavements[1].grade.levels[0].fixed',
      'CONFLICTING_FIELDS',
      'use kind plane',
    ],
    [
      'a rule and an allowable misclosure',
      (job) => set(job['levelBook'], 'allowable', '0.02 ft'),
      'levelBook.rule',
      'CONFLICTING_FIELDS',
      'not both',
    ],
    [
      'a row of the book without a reading',
      (job) => delete (job['levelBook']?.['rows']?.[1] as Partial<Loose>)['intermediate'],
      'levelBook.rows[1]',
      'BOOK_ROW',
      'no reading',
    ],
    [
      'a book that does not close on its known mark',
      (job) => {
        const last = job['levelBook']?.['rows']?.[6] as Partial<Loose>;
        delete last['fore'];
        set(last as Loose, 'intermediate', '4 ft');
      },
      'levelBook.rows[6].fore',
      'BOOK_ROW',
      'Read a foresight',
    ],
    [
      'a reading longer than any rod',
      (job) => set(job['levelling'], 'backsight', '25 m'),
      'levelling.backsight',
      'OUT_OF_RANGE',
      'Check the digits',
    ],
    [
      'an unknown kind of grade',
      (job) => set(job['pavements']?.[0]?.['grade'], 'kind', 'bowl'),
      'pavements[0].grade.kind',
      'UNKNOWN_CHOICE',
      'line, plane, warped',
    ],
    [
      'an unknown field of the instrument',
      (job) => set(job['levelling'], 'height', '4 ft'),
      'levelling.height',
      'UNKNOWN_FIELD',
      'This object takes benchmark, backsight',
    ],
  ];

  test.each(BROKEN)('%s', (_name, change, path, code, says) => {
    const outcome = tryPlanJob(changed(change));
    if (outcome.ok) expect.unreachable();
    const found = outcome.errors.map((issue) => ({ ...issue, at: pathText(issue.path) }));
    const wanted = found.find(({ at, code: one }) => at === path && one === code);
    expect(wanted?.message, JSON.stringify(found)).toContain(says);
  });
});
