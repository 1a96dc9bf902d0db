import { describe, expect, test } from 'vitest';
import { stringSag } from 'settline/string-line';
import { faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';
import { formulaFaults } from '../formulas/evaluate-step.js';

const line = { tension: '50 N', weightPerLength: '0.02 N/m' } as const;

test('the parabola is exact: 0.02 x 100 / 400 is 5 mm', () => {
  const sag = stringSag({ ...line, span: '10 m' });
  expect(sag.sagAtMidspan.to('mm').toString()).toBe('5');
  // the catenary is more by (w L / (2 H))^2 / 12, here 0.002^2 / 12
  expect(sag.catenarySag.minus(sag.sagAtMidspan).toNumber('m') / 0.005).toBeCloseTo(
    0.002 ** 2 / 12,
    12,
  );
  expect(sag.sagWithMidStake.toNumber('mm')).toBeCloseTo(1.25, 6);
  expect(sag.at).toBeNull();
  expect(sag.maximumSpan).toBeNull();
  expect(sag.minimumTension).toBeNull();
  expect(sag.inTolerance).toBeNull();
});

test('at a place: nothing at the ties, three quarters at a quarter', () => {
  const at = (from: string, slope = '0%') =>
    stringSag({ ...line, span: '10 m', from, slope }).at?.sag.toNumber('mm') ?? Number.NaN;
  expect(at('0 m')).toBe(0);
  expect(at('10 m')).toBe(0);
  expect(at('2.5 m')).toBeCloseTo(3.75, 5);
  expect(at('5 m')).toBeCloseTo(5, 5);
  expect(at('0 m', '20%')).toBeCloseTo(0, 20);
});

test('an inclined string sags by 1 over the cosine of its slope', () => {
  const level = stringSag({ ...line, span: '10 m' });
  const steep = stringSag({ ...line, span: '10 m', slope: '75%' });
  expect(steep.sagAtMidspan.dividedBy(level.sagAtMidspan).toString()).toBe('1.25');
  const down = stringSag({ ...line, span: '10 m', slope: '-75%' });
  expect(down.catenarySag.toNumber('mm')).toBeCloseTo(steep.catenarySag.toNumber('mm'), 12);
  // a catenary solved by its end points, in another package of 50 digits
  const other = stringSag({
    tension: '60 N',
    weightPerLength: '1.2 g/m',
    span: '15 m',
    slope: '20%',
    from: '4 m',
  });
  expect(other.catenarySag.to('m').toFixed(30)).toBe('0.005625484654064431723959822750');
  expect(other.at?.sag.to('m').toFixed(30)).toBe('0.004400181810169878310406154425');
});

describe('under a tolerance', () => {
  test('a sag of just the tolerance is within it', () => {
    const { catenarySag } = stringSag({ ...line, span: '20 m' });
    const sag = stringSag({ ...line, span: '20 m', tolerance: catenarySag });
    expect(sag.inTolerance).toBe(true);
    expect(sag.note).toContain('low by the sag');
  });

  test('the greatest span and the tension needed keep it, and no more', () => {
    for (const slope of ['0%', '30%']) {
      const sag = stringSag({ ...line, span: '20 m', slope, tolerance: '5 mm' });
      expect(sag.inTolerance).toBe(false);
      expect(sag.note).toContain('too much');
      const [maximumSpan, minimumTension] = [sag.maximumSpan ?? '1 m', sag.minimumTension ?? '1 N'];
      const shorter = stringSag({ ...line, span: maximumSpan, slope, tolerance: '5 mm' });
      expect(shorter.inTolerance).toBe(true);
      expect(shorter.catenarySag.to('mm').toFixed(25)).toBe('5.0000000000000000000000000');
      const tighter = stringSag({
        ...line,
        tension: minimumTension,
        span: '20 m',
        slope,
        tolerance: '5 mm',
      });
      expect(tighter.inTolerance).toBe(true);
      expect(tighter.catenarySag.to('mm').toFixed(25)).toBe('5.0000000000000000000000000');
    }
  });

  test('a slack string too, where the parabola is far off', () => {
    // w L / H = 3.9: the parabola says 4.875 m, the catenary 6.629 m
    const slack = stringSag({
      tension: '1 N',
      weightPerLength: '0.39 N/m',
      span: '10 m',
      tolerance: '5 m',
    });
    expect(slack.sagAtMidspan.to('m').toString()).toBe('4.875');
    expect(slack.catenarySag.toNumber('m')).toBeCloseTo((Math.cosh(1.95) - 1) / 0.39, 12);
    const back = stringSag({
      tension: '1 N',
      weightPerLength: '0.39 N/m',
      span: slack.maximumSpan ?? '1 m',
    });
    expect(back.catenarySag.to('m').toFixed(25)).toBe('5.0000000000000000000000000');
    const tight = stringSag({
      tension: slack.minimumTension ?? '1 N',
      weightPerLength: '0.39 N/m',
      span: '10 m',
    });
    expect(tight.catenarySag.to('m').toFixed(25)).toBe('5.0000000000000000000000000');
  });

  test('well within it', () => {
    const sag = stringSag({ ...line, span: '2 m', tolerance: '5 mm' });
    expect(sag.inTolerance).toBe(true);
    expect(sag.note).toContain('that much less');
    expect(sag.maximumSpan?.toNumber('m')).toBeCloseTo(10, 5);
  });
});

test('the working names the two formulas, and both hold', () => {
  const { working } = stringSag({ ...line, span: '10 m' });
  expect(working.map(formulaOf)).toEqual([
    'f = w * L^2 * sqrt(1 + g^2) / (8 * H)',
    'z = w * L / (2 * H)',
    'f = H / w * (exp(z / 2) - exp(-z / 2))^2 / 2 * sqrt(1 + (2 * g * z / (exp(z) - exp(-z)))^2)',
  ]);
  const steep = stringSag({ ...line, span: '10 m', slope: '2%' }).working;
  expect(formulaFaults(working)).toEqual([]);
  expect(formulaFaults(steep)).toEqual([]);
});

testRefusals(stringSag, { ...line, span: '10 m', from: '5 m', slope: '2%', tolerance: '5 mm' }, [
  ['span', '0 m', 'NOT_POSITIVE'],
  ['span', 10, 'UNIT_MISSING'],
  ['tension', '0 N', 'NOT_POSITIVE'],
  ['tension', '0.04 N', 'OUT_OF_RANGE'],
  ['tension', undefined, 'REQUIRED'],
  ['weightPerLength', '0 g/m', 'NOT_POSITIVE'],
  ['weightPerLength', '30 N/m', 'OUT_OF_RANGE', 'tension'],
  ['from', '10.001 m', 'OUT_OF_RANGE'],
  ['from', '-1 mm', 'NEGATIVE'],
  ['slope', '101%', 'OUT_OF_RANGE'],
  ['tolerance', '0 mm', 'NOT_POSITIVE'],
  ['tolerance', '5.001 m', 'OUT_OF_RANGE'],
]);

test('a missing span is one fault, not three', () => {
  const faults = faultsOf(() =>
    stringSag({ ...line, span: undefined as never, from: '1 m', tolerance: '1 mm' }),
  );
  expect(faults.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual(['REQUIRED span']);
});
