import { describe, expect, test } from 'vitest';
import { explain, renderJobSheet, renderWorking, type JobPlan } from 'settline/job';
import type { Loose } from '../loose-job.js';
import { planFile } from '../plan-file.js';
import { slateWharfFile } from '../slate-wharf.js';

/** Slate Wharf with another level book. */
function withBook(book: Loose): JobPlan {
  const job = slateWharfFile();
  job['levelBook'] = { ...(job['levelBook'] as Loose), ...book };
  return planFile(job);
}

/** Its rows with distances in feet; undefined for none. */
function rowsAt(distances: readonly (number | undefined)[]): Loose[] {
  const { rows } = slateWharfFile()['levelBook'] as { rows: Loose[] };
  return rows.map((row, k) => {
    const at = distances[k];
    return at === undefined ? row : { ...row, distance: `${at} ft` };
  });
}

const stepNamed = (plan: JobPlan, title: string) => {
  const step = plan.working.find((one) => one.title === title);
  if (step?.kind !== 'formula') expect.unreachable(title);
  return step;
};

const valuesOf = (plan: JobPlan, title: string): string[] =>
  stepNamed(plan, title).given.map(({ symbol, text }) => `${symbol} = ${text}`);

describe('a misclosure of -0.02 ft that is spread by distance', () => {
  // the line is 40 ft long, so each foot takes 0.0005 ft
  test.each([
    ['the first row at a distance', [100, 105, 110, 120, 125, 130, 140], 's0 = 100 ft'],
    ['the first row without one', [undefined, 5, 10, 20, 25, 30, 40], 's0 = 0 m'],
  ] as const)('%s', (_name, distances, start) => {
    const plan = withBook({ rows: rowsAt(distances), adjustBy: 'distance' });
    const corrections = plan.levelBook?.rows.map(({ correction }) =>
      correction.to('ft').toFixed(5),
    );
    expect(corrections).toEqual([
      '0.00000',
      '0.00250',
      '0.00500',
      '0.01000',
      '0.01250',
      '0.01500',
      '0.02000',
    ]);
    const title = 'Correction of turn';
    expect(stepNamed(plan, title).formula).toBe('c = -m * (s - s0) / (S - s0)');
    const [s, last] = [distances[3], distances[6]];
    expect(valuesOf(plan, title)).toEqual(['m = -0.02 ft', `s = ${s} ft`, start, `S = ${last} ft`]);
    const text = renderWorking([stepNamed(plan, 'Correction of mark')], { system: 'us' });
    expect(text).toContain('c = 0');
  });

  test('and may be as much as a rule by distance allows', () => {
    // 0.02 ft for 10 ft, of 40 ft: 0.02 x sqrt(4) = 0.04 ft
    const rule = { k: '0.02 ft', per: '10 ft' };
    const plan = withBook({ rows: rowsAt([undefined, 5, 10, 20, 25, 30, 40]), rule });
    expect(plan.levelBook?.allowable?.to('ft').toString()).toBe('0.04');
    expect(plan.levelBook?.isAccepted).toBe(true);
    expect(stepNamed(plan, 'Allowable misclosure').formula).toBe('a = k * sqrt(D / d)');
    expect(valuesOf(plan, 'Allowable misclosure')).toEqual([
      'k = 0.02 ft',
      'D = 40 ft',
      'd = 10 ft',
    ]);
  });
});

describe('where an allowable misclosure comes from', () => {
  test('the job gives it', () => {
    const plan = withBook({ rule: undefined, allowable: '0.03 ft' });
    expect(explain(plan, ['levelBook', 'allowable'])).toMatchObject({
      origin: 'job',
      path: ['levelBook', 'allowable'],
    });
  });

  test('a rule by set-ups gives it', () => {
    expect(explain(withBook({}), ['levelBook', 'allowable'])).toMatchObject({ origin: 'step' });
  });
});

test('a benchmark out of the level book is explained by its row', () => {
  const job = slateWharfFile();
  job['levelling'] = { ...(job['levelling'] as Loose), benchmark: { levelled: 'turn' } };
  const found = explain(planFile(job), ['levelling', 'elevation']);
  if (found.origin !== 'step') expect.unreachable();
  expect(found.step.title).toBe('Adjusted level of turn');
});

describe('the levels on the sheet', () => {
  const sheetOf = (change: (job: ReturnType<typeof slateWharfFile>) => void): string => {
    const job = slateWharfFile();
    change(job);
    const sheet = renderJobSheet(planFile(job), { system: 'us' });
    const [, levels = ''] = sheet.split('\nLEVELS');
    return levels.split(/\n(?=[A-Z]{3,}[A-Z ,]*\n)/)[0] ?? '';
  };
  const bookOf = (job: Loose): Loose => job['levelBook'] as Loose;

  test.each<[string, (job: ReturnType<typeof slateWharfFile>) => void, string[], string[]]>([
    [
      'instrument and book',
      () => undefined,
      ['height of instrument', 'benchmark read again', 'Level book', 'adjusted', 'misclosure'],
      ['Read the benchmark again before you pack up.'],
    ],
    [
      'a book alone',
      (job) => delete job['levelling'],
      ['Level book', 'adjusted', 'misclosure', 'allowable'],
      ['height of instrument', 'backsight'],
    ],
    [
      'an instrument alone',
      (job) => {
        delete job['levelBook'];
        const levels = (job.pavements[0]?.['grade'] as { levels: Loose[] }).levels;
        for (const level of levels) {
          delete level['levelled'];
          level['elevation'] = '100 ft';
        }
      },
      ['height of instrument', 'backsight'],
      ['Level book', 'misclosure'],
    ],
    [
      'an instrument that was not checked',
      (job) => delete (job['levelling'] as Loose)['closing'],
      ['Read the benchmark again before you pack up.'],
      ['benchmark read again', 'MOVED'],
    ],
    [
      'an instrument that moved by 0.13 ft, 1 9/16 in',
      (job) => {
        (job['levelling'] as Loose)['closing'] = { reading: '4.75 ft', tolerance: '0.02 ft' };
      },
      ['1 9/16 in off, MOVED'],
      [],
    ],
    [
      'a book that closes on no known mark',
      (job) => {
        delete bookOf(job)['known'];
        delete bookOf(job)['rule'];
      },
      ['Level book', 'rise'],
      ['misclosure', 'allowable', 'adjusted'],
    ],
    [
      'a book without a limit of its misclosure',
      (job) => delete bookOf(job)['rule'],
      ['misclosure', 'adjusted', 'No allowable misclosure was given.'],
      ['  allowable '],
    ],
  ])('%s', (_name, change, shown, notShown) => {
    const levels = sheetOf(change);
    for (const words of shown) expect(levels).toContain(words);
    for (const words of notShown) expect(levels).not.toContain(words);
  });
});

test('a book that only goes down has no sum of rises', () => {
  const { rows } = slateWharfFile()['levelBook'] as { rows: Loose[] };
  // each row is lower than the one before: readings grow
  const down = rows.map((row, k) => ({
    ...row,
    ...(row['intermediate'] === undefined ? {} : { intermediate: `${4.7 + 0.1 * k} ft` }),
    ...(row['fore'] === undefined ? {} : { fore: `${4.7 + 0.1 * k} ft` }),
    ...(row['back'] === undefined ? {} : { back: '4.62 ft' }),
  }));
  const titles = withBook({ rows: down, known: undefined }).working.map(({ title }) => title);
  expect(titles).toContain('Sum of the falls');
  expect(titles).not.toContain('Sum of the rises');
  const both = planFile(slateWharfFile()).working.map(({ title }) => title);
  expect(both).toEqual(expect.arrayContaining(['Sum of the falls', 'Sum of the rises']));
});
