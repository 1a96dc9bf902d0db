import { describe, expect, test } from 'vitest';
import { planDistance, pointByTapes } from 'settline/stakes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const from = (a: string, b: string, uncertainty?: string) =>
  [
    { x: '10 m', y: '20 m', distance: a, ...(uncertainty === undefined ? {} : { uncertainty }) },
    { x: '10 m', y: '25 m', distance: b, ...(uncertainty === undefined ? {} : { uncertainty }) },
  ] as const;

describe('a point by two tapes', () => {
  test('3-4-5 is exact, on either side', () => {
    // the line runs north: left is west. t = (9 - 16 + 25) / 10 = 1.8, h = 2.4
    const west = pointByTapes({ from: from('3 m', '4 m'), side: 'left' });
    expect(west.point.x.to('m').toString()).toBe('7.6');
    expect(west.point.y.to('m').toString()).toBe('21.8');
    expect(west.along.to('m').toString()).toBe('1.8');
    expect(west.offset.to('m').toString()).toBe('2.4');
    expect(west.crossingAngle.to('deg').toFixed(15)).toBe('90.000000000000000');
    expect(west.isWeakFix).toBe(false);
    expect(west.ellipse).toBeNull();
    const east = pointByTapes({ from: from('3 m', '4 m'), side: 'right' });
    expect(east.point.x.to('m').toString()).toBe('12.4');
    expect(east.offset.to('m').toString()).toBe('-2.4');
  });

  test('tapes at right angles: a circle of their uncertainty', () => {
    const { ellipse } = pointByTapes({ from: from('3 m', '4 m', '5 mm'), side: 'left' });
    expect(ellipse?.semiMajor.toNumber('mm')).toBeCloseTo(5, 9);
    expect(ellipse?.semiMinor.toNumber('mm')).toBeCloseTo(5, 9);
    expect(ellipse?.position.toNumber('mm')).toBeCloseTo(5 * Math.SQRT2, 9);
    expect(ellipse?.within95.semiMajor.toNumber('mm')).toBeCloseTo(12.2387, 4);
  });

  test('tapes that cross at 60 degrees', () => {
    // an even triangle of 5 m: axes u / sqrt(1.5) and u / sqrt(0.5), the long one along the line
    const { crossingAngle, ellipse, isWeakFix } = pointByTapes({
      from: from('5 m', '5 m', '3 mm'),
      side: 'right',
    });
    expect(crossingAngle.to('deg').toFixed(12)).toBe('60.000000000000');
    expect(isWeakFix).toBe(false);
    expect(ellipse?.semiMajor.toNumber('mm')).toBeCloseTo(3 * Math.SQRT2, 9);
    expect(ellipse?.semiMinor.toNumber('mm')).toBeCloseTo(3 / Math.sqrt(1.5), 9);
    // the line runs north
    const azimuth = ellipse?.azimuth.toNumber('deg') ?? Number.NaN;
    expect(Math.min(azimuth, 180 - azimuth)).toBeCloseTo(0, 6);
  });

  test('one sure tape: the point can only swing about its fixed end', () => {
    const [a, b] = from('3 m', '4 m', '0 mm');
    const { ellipse } = pointByTapes({ from: [a, { ...b, uncertainty: '8 mm' }], side: 'left' });
    expect(ellipse?.semiMajor.toNumber('mm')).toBeCloseTo(8, 9);
    expect(ellipse?.semiMinor.toNumber('mm')).toBeCloseTo(0, 9);
    // square to the first tape, which points (-2.4, 1.8): azimuth of (1.8, 2.4) is atan(0.75)
    expect(ellipse?.azimuth.toNumber('deg')).toBeCloseTo((Math.atan(0.75) * 180) / Math.PI, 6);
  });

  test('tapes that cross too flat are flagged', () => {
    const of = (a: string, b: string) => pointByTapes({ from: from(a, b), side: 'left' });
    // over a line of 5 m, even tapes of 9.659 m cross at 30 degrees
    expect(of('9.7 m', '9.7 m').isWeakFix).toBe(true);
    expect(of('9.6 m', '9.6 m').isWeakFix).toBe(false);
    // and of 2.588 m at 150 degrees
    expect(of('2.58 m', '2.58 m').isWeakFix).toBe(true);
    expect(of('2.6 m', '2.6 m').isWeakFix).toBe(false);
    expect(of('2.58 m', '2.58 m').note).toContain('another fixed point');
  });

  test('tapes that only touch fix a point without an ellipse', () => {
    const touch = pointByTapes({ from: from('2 m', '3 m', '3 mm'), side: 'left' });
    expect(touch.point.y.to('m').toString()).toBe('22');
    expect(touch.offset.isZero()).toBe(true);
    expect(touch.ellipse).toBeNull();
    expect(touch.isWeakFix).toBe(true);
  });

  test('nor do tapes that cross by less than floats can tell', () => {
    const [a, b] = from('2 m', '3 m', '3 mm');
    const longer = { value: '3.00000000000000000000000000000000001', unit: 'm' } as const;
    const close = pointByTapes({ from: [a, { ...b, distance: longer }], side: 'left' });
    expect(close.offset.isZero()).toBe(false);
    expect(close.ellipse).toBeNull();
  });

  test.each([
    [
      '2 m',
      '2.9 m',
      'the tapes are 0.1 m short of meeting: 2 m and 2.9 m, with the fixed points 5 m apart',
    ],
    [
      '9 m',
      '3.5 m',
      'the longer tape is 0.5 m too long to meet the other: 9 m and 3.5 m, with the fixed points 5 m apart',
    ],
  ])('%s and %s do not meet', (a, b, words) => {
    const issue = expectFault(
      () => pointByTapes({ from: from(a, b), side: 'left' }),
      'TRIANGLE_IMPOSSIBLE',
    );
    expect(issue.message).toContain(words);
    expect(issue.path).toEqual(['from']);
  });

  testRefusals(pointByTapes, { from: from('3 m', '4 m', '1 mm'), side: 'left' }, [
    ['side', undefined, 'REQUIRED'],
    ['side', 'up', 'UNKNOWN_CHOICE'],
    ['from', [from('3 m', '4 m')[0]], 'TOO_FEW'],
    ['from', [], 'EMPTY_LIST'],
    ['from.0.distance', '0 m', 'NOT_POSITIVE'],
    ['from.1.distance', 4, 'UNIT_MISSING'],
    ['from.1.uncertainty', undefined, 'REQUIRED'],
    ['from.1.y', '20 m', 'POINTS_COINCIDE', 'from[1]'],
    ['from.0.x', undefined, 'REQUIRED'],
  ]);
});

describe('a taped length in plan', () => {
  test('5 along a rise of 3 is 4, either way', () => {
    for (const rise of ['3 m', '-3 m']) {
      const { plan, correction, slopeCorrection, sagCorrection } = planDistance({
        taped: '5 m',
        rise,
      });
      expect(plan.to('m').toString()).toBe('4');
      expect(correction.to('m').toString()).toBe('-1');
      expect(slopeCorrection.equals(correction)).toBe(true);
      expect(sagCorrection.isZero()).toBe(true);
    }
    expect(planDistance({ taped: '5 m', slope: '75%' }).plan.to('m').toString()).toBe('4');
    expect(planDistance({ taped: '5 m', slope: '-75%' }).plan.to('m').toString()).toBe('4');
  });

  test('level: as taped', () => {
    expect(planDistance({ taped: '5 m' }).correction.isZero()).toBe(true);
    expect(planDistance({ taped: '5 m', rise: '0 m' }).plan.to('m').toString()).toBe('5');
    expect(planDistance({ taped: '5 m', slope: '0%' }).plan.to('m').toString()).toBe('5');
  });

  test('a tape that stands upright has no plan', () => {
    expectFault(() => planDistance({ taped: '18 m', rise: '18 m' }), 'TRIANGLE_IMPOSSIBLE');
    expect(planDistance({ taped: '18 m', rise: '17.999 m' }).plan.toNumber('m')).toBeGreaterThan(0);
  });

  test('a hanging tape: per bay, never over the whole', () => {
    const tape = { weightPerLength: '0.2 N/m', tension: '50 N' } as const;
    // 0.04 x 27 000 / 60 000 = 18 mm in one bay of 30 m, a ninth in three
    const one = planDistance({ taped: '30 m', hanging: tape });
    expect(one.sagCorrection.to('mm').toString()).toBe('-18');
    expect(one.plan.to('m').toString()).toBe('29.982');
    const three = planDistance({ taped: '30 m', hanging: { ...tape, bays: 3 } });
    expect(three.sagCorrection.to('mm').toString()).toBe('-2');
    expect(three.working).toHaveLength(2);
  });

  test('a tape that loses more than a tenth of its length is refused', () => {
    const sagged = (weightPerLength: string) =>
      planDistance({ taped: '30 m', hanging: { weightPerLength, tension: '30 N' } });
    // (1.5 x 30 / 30)^2 / 24 of 30 m; with 1.6 it is 0.107
    expect(sagged('1.5 N/m').sagCorrection.to('m').toString()).toBe('-2.8125');
    const { path } = expectFault(() => sagged('1.6 N/m'), 'OUT_OF_RANGE');
    expect(path).toEqual(['hanging', 'tension']);
  });

  test('sag comes off before the slope', () => {
    const tape = { weightPerLength: '0.2 N/m', tension: '50 N' } as const;
    const both = planDistance({ taped: '30 m', rise: '1 m', hanging: tape });
    expect(both.plan.toNumber('m')).toBeCloseTo(Math.sqrt(29.982 ** 2 - 1), 12);
    expect(both.slopeCorrection.plus(both.sagCorrection).equals(both.correction)).toBe(true);
  });

  testRefusals(
    planDistance,
    {
      taped: '18 m',
      rise: '1 m',
      hanging: { weightPerLength: '0.2 N/m', tension: '50 N', bays: 2 },
    },
    [
      ['taped', '0 m', 'NOT_POSITIVE'],
      ['rise', '18 m', 'TRIANGLE_IMPOSSIBLE'],
      ['rise', '-19 m', 'TRIANGLE_IMPOSSIBLE'],
      ['slope', '2%', 'CONFLICTING_FIELDS'],
      ['hanging.weightPerLength', '0 N/m', 'NOT_POSITIVE'],
      ['hanging.tension', '50 kg', 'UNIT_UNKNOWN'],
      ['hanging.tension', '0.5 N', 'OUT_OF_RANGE'],
      ['hanging.bays', 1.5, 'NOT_WHOLE'],
      ['hanging.bays', 0, 'NOT_POSITIVE'],
    ],
  );
});
