import { describe, expect, test } from 'vitest';
import { checkGradation } from 'settline/materials';
import { GRADATIONS, type GradationName } from 'settline/sources';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const rows = (pairs: readonly (readonly [sieve: string, percent: number | string])[]) =>
  pairs.map(([sieve, percent]) => ({ sieve, percent }));
const good = rows([
  ['2.36 mm', 100],
  ['1.18 mm', 95],
  ['0.6 mm', 75],
  ['0.3 mm', 45],
  ['0.15 mm', 20],
  ['0.075 mm', 12],
]);
const joint = { passing: good, limits: 'joint-sand' } as const;
const withRow = (sieve: string, percent: number | string) =>
  good.map((row) => (row.sieve === sieve ? { sieve, percent } : row));

describe('gradation', () => {
  test('a sand within its limits on every sieve', () => {
    const check = checkGradation(joint);
    expect(check).toMatchObject({ verdict: 'pass', unused: [], source: 'joint-sand-clause' });
    expect(check.sieves.map(({ verdict }) => verdict)).toEqual(Array(6).fill('pass'));
    expect(check.working[0]).toMatchObject({ source: 'joint-sand-clause' });
    expect(check.note).toBe('The sand is within its limits on every sieve.');
  });

  test('on a limit passes, slightly over fails, and says which way', () => {
    const at = (percent: number | string) =>
      checkGradation({ ...joint, passing: withRow('0.3 mm', percent) });
    expect([at(60).verdict, at(30).verdict]).toEqual(['pass', 'pass']);
    const fine = at('60.0001');
    expect([fine.verdict, fine.sieves[3]?.code]).toEqual(['fail', 'too-fine']);
    expect(fine.note).toContain('too fine');
    const coarse = at('29.9999');
    expect([coarse.verdict, coarse.sieves[3]?.code]).toEqual(['fail', 'too-coarse']);
    expect(coarse.note).toContain('too coarse');
  });

  test('too fine here and too coarse there is gap-graded', () => {
    const passing = rows([
      ['2.36 mm', 100],
      ['1.18 mm', 95],
      ['0.6 mm', 55],
      ['0.3 mm', 55],
      ['0.15 mm', 55],
      ['0.075 mm', 12],
    ]);
    const { verdict, note } = checkGradation({ ...joint, passing });
    expect(verdict).toBe('fail');
    expect(note).toContain('gap-graded');
  });

  test('an uncertainty leaves what is near a limit open', () => {
    const at = (percent: number, uncertainty: number) =>
      checkGradation({ ...joint, passing: withRow('0.3 mm', percent), uncertainty });
    expect(at(58, 2).verdict).toBe('pass');
    expect(at(59, 2).verdict).toBe('unclear');
    expect(at(59, 2).note).toContain('tested again');
    expect(at(62.5, 2).verdict).toBe('fail');
  });

  test('a sieve that is only unclear does not name the fault of another', () => {
    // 95 - 2 is more than 90; 4 + 2 may be 5
    const limits = [
      { sieve: '0.6 mm', minimum: 40, maximum: 90 },
      { sieve: '0.075 mm', minimum: 5, maximum: 15 },
    ];
    const passing = rows([
      ['0.6 mm', 95],
      ['0.075 mm', 4],
    ]);
    const { verdict, sieves, note } = checkGradation({ passing, limits, uncertainty: 2 });
    expect(verdict).toBe('fail');
    expect(sieves.map((sieve) => [sieve.verdict, sieve.code])).toEqual([
      ['fail', 'too-fine'],
      ['unclear', 'too-coarse'],
    ]);
    expect(note).toContain('too fine: it holds water');
  });

  test('a sieve that was not measured leaves the verdict open; others are not used', () => {
    const passing = [...good.slice(1), { sieve: '0.425 mm', percent: 60 }];
    const { verdict, sieves, unused, note } = checkGradation({ ...joint, passing });
    expect(verdict).toBe('unclear');
    expect(sieves[0]).toMatchObject({ percent: null, verdict: null, code: null });
    expect(unused.map((sieve) => sieve.to('mm').toString())).toEqual(['0.425']);
    expect(note).toContain('missing ones');
  });

  test('a sieve twice is told without a number', () => {
    const { message, params } = expectFault(
      () => checkGradation({ ...joint, passing: [...good, { sieve: '1.18 mm', percent: 95 }] }),
      'DUPLICATE_ID',
    );
    expect(message).toBe('the same sieve is listed before this one. List each sieve once');
    expect(params['earlier']).toBe(1);
  });

  test('openings within one percent are the same sieve, in any order', () => {
    const passing = [...good.slice(1), { sieve: '2.383 mm', percent: 100 }];
    expect(checkGradation({ ...joint, passing }).verdict).toBe('pass');
    const other = [...good.slice(1), { sieve: '2.384 mm', percent: 100 }];
    expect(checkGradation({ ...joint, passing: other }).verdict).toBe('unclear');
  });

  test('limits of the job', () => {
    const limits = [{ sieve: '0.075 mm', minimum: 0, maximum: 3 }];
    const check = checkGradation({ passing: good, limits });
    expect(check).toMatchObject({ verdict: 'fail', source: null });
    expect(check.unused).toHaveLength(5);
    expect(check.working[0]?.source).toBe('derived');
    expect(
      checkGradation({ passing: good, limits: [{ ...limits[0], maximum: 12 } as never] }).verdict,
    ).toBe('pass');
  });

  test('the published limits hold together: coarser sieves let no less through', () => {
    for (const table of Object.values(GRADATIONS)) {
      for (const edge of ['minimum', 'maximum'] as const) {
        const values = table.map((row) => Number(row[edge].value));
        expect(values).toEqual([...values].sort((a, b) => b - a));
      }
    }
  });

  testRefusals(checkGradation, joint, [
    ['passing', [], 'EMPTY_LIST'],
    ['passing.1.percent', 101, 'OUT_OF_RANGE', 'passing[1].percent'],
    ['passing.1.percent', -1, 'NEGATIVE', 'passing[1].percent'],
    ['passing.2.percent', 96, 'PASSING_RISES', 'passing[2].percent'],
    ['passing.1.sieve', '2.37 mm', 'DUPLICATE_ID', 'passing[1].sieve'],
    ['passing.1.sieve', '0 mm', 'NOT_POSITIVE', 'passing[1].sieve'],
    ['passing.1.sieve', 1.18, 'UNIT_MISSING', 'passing[1].sieve'],
    ['limits', 'gravel', 'UNKNOWN_CHOICE'],
    ['limits', [], 'EMPTY_LIST'],
    [
      'limits',
      [{ sieve: '1 mm', minimum: 5, maximum: 4 }],
      'LIMITS_CONTRADICT',
      'limits[0].maximum',
    ],
    [
      'limits',
      [
        { sieve: '1 mm', minimum: 1, maximum: 4 },
        { sieve: '1.005 mm', minimum: 1, maximum: 4 },
      ],
      'DUPLICATE_ID',
      'limits[1].sieve',
    ],
    ['uncertainty', 101, 'OUT_OF_RANGE'],
  ]);

  test('percent retained is told by its rise', () => {
    const retained = good.map(({ sieve, percent }) => ({ sieve, percent: 100 - Number(percent) }));
    const { message } = expectFault(
      () => checkGradation({ ...joint, passing: retained }),
      'PASSING_RISES',
    );
    expect(message).toContain('percent retained');
  });
});

test.each(Object.keys(GRADATIONS) as GradationName[])(
  'a sand on every limit of %s passes, outside it fails',
  (name) => {
    for (const edge of ['minimum', 'maximum'] as const) {
      const passing = GRADATIONS[name].map((row) => ({
        sieve: `${row.sieve.value} mm`,
        percent: row[edge].value,
      }));
      expect(checkGradation({ passing, limits: name }).verdict).toBe('pass');
      const moved = passing.map(({ sieve, percent }, index) => ({
        sieve,
        percent: index === passing.length - 2 ? shifted(percent, edge) : percent,
      }));
      const { verdict } = checkGradation({ passing: moved, limits: name });
      expect(verdict).toBe(moved[passing.length - 2]?.percent === '0' ? 'pass' : 'fail');
    }
  },
);

const shifted = (percent: string, edge: 'minimum' | 'maximum') =>
  edge === 'maximum' ? `${percent}.001` : `${Math.max(0, Number(percent) - 0.001)}`;
