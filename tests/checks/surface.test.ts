import { describe, expect, test } from 'vitest';
import {
  checkBondLine,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLippage,
  describeCheckMove,
  type CheckMove,
} from 'settline/checks';
import { formulaOf } from '../formula-of.js';
import { testRefusals } from '../refusals.js';

const moves = (check: {
  readonly outOfTolerance: readonly { readonly id: string; readonly move: CheckMove | null }[];
}) => check.outOfTolerance.map(({ id, move }) => `${id}: ${describeCheckMove(move, { as: 'mm' })}`);
const verdicts = (check: { readonly readings: readonly { readonly verdict: string }[] }) =>
  check.readings.map(({ verdict }) => verdict);
const metres = (value: number) => ({ value, unit: 'm' as const });
const mm = (value: number | string) => ({ value, unit: 'mm' as const });

describe('checkFlatness', () => {
  const profile = (spacing: number, heights: readonly (number | string)[]) =>
    heights.map((height, k) => ({ station: metres(k * spacing), height: mm(height) }));
  const base = (heights: readonly (number | string)[], spacing = 1.5) =>
    checkFlatness({
      layer: 'base',
      profile: profile(spacing, heights),
      tolerance: 'paver-guide-mm',
    });

  test('a gap of the tolerance passes, a hair more fails', () => {
    expect(base([0, -10, 0]).verdict).toBe('pass');
    const over = base([0, '-10.000001', 0]);
    expect(over.verdict).toBe('fail');
    expect(moves(over)).toEqual(['2: add 10 mm']);
    expect(over.greatestGap.to('mm').toString()).toBe('10.000001');
    expect(over.edgeLength.to('m').toString()).toBe('3');
  });

  test('lists every low spot with its own gap and contacts', () => {
    const check = base([0, -12, 0, -4, 0, -15, -20, 0], 1);
    expect(moves(check)).toEqual(['2: add 12 mm', '6: add 15 mm', '7: add 20 mm']);
    expect(check.readings[6]?.between?.map((one) => one.toNumber('m'))).toEqual([4, 7]);
    expect(check.readings[1]?.station.toNumber('m')).toBe(1);
    expect(check.readings[0]?.between).toBeNull();
    expect(check.at.toNumber('m')).toBe(6);
  });

  test('pavers are raised, with ids of their own', () => {
    const check = checkFlatness({
      layer: 'pavers',
      profile: profile(1, [0, -13, 0]).map((one, k) => ({ ...one, id: `row ${k}` })),
      tolerance: { maximum: '1/2 in', over: '10 ft' },
    });
    expect(moves(check)).toEqual(['row 1: raise 13 mm']);
    expect(check).toMatchObject({ toleranceSet: null, source: null });
  });

  test('the uncertainty of a gap', () => {
    const check = (gap: number) =>
      checkFlatness({
        layer: 'base',
        profile: profile(1.5, [0, -gap, 0]),
        tolerance: 'paver-guide-mm',
        uncertainty: '1 mm',
      }).verdict;
    expect([9, 9.5, 11, 11.5].map(check)).toEqual(['pass', 'unclear', 'unclear', 'fail']);
  });

  test('a pass is unclear where readings stand too far apart, a fail stays', () => {
    const far = profile(1, [0, -1, 0, 0, 0]).map((one, k) =>
      k === 4 ? { ...one, station: metres(7) } : one,
    );
    const options = { layer: 'base', tolerance: 'paver-guide-mm' } as const;
    const check = checkFlatness({ ...options, profile: far });
    expect(check).toMatchObject({ verdict: 'unclear', isSparse: true, outOfTolerance: [] });
    expect(check.note).toContain('fewer than three readings');
    const low = far.map((one, k) => (k === 1 ? { ...one, height: mm(-11) } : one));
    expect(checkFlatness({ ...options, profile: low }).verdict).toBe('fail');
  });

  const valid = { layer: 'base', profile: profile(1, [0, 1, 0]), tolerance: 'paver-guide-mm' };
  testRefusals(checkFlatness, valid, [
    ['layer', undefined, 'REQUIRED'],
    ['tolerance', undefined, 'REQUIRED'],
    ['layer', 'subgrade', 'LIMIT_NOT_SET', 'tolerance'],
    ['layer', 'bedding', 'LIMIT_NOT_SET', 'tolerance'],
    ['profile', profile(2, [0, 1, 0]), 'READINGS_TOO_SPARSE'],
    ['profile', profile(1, [0, 1]), 'READINGS_TOO_SPARSE'],
    ['profile.1.id', '3', 'DUPLICATE_ID', 'profile[2].id'],
    ['profile.1.id', '', 'EMPTY', 'profile[1].id'],
    ['profile.1.station', '0 m', 'NOT_INCREASING', 'profile[1].station'],
    ['tolerance', { maximum: '10 mm', over: '0 m' }, 'NOT_POSITIVE', 'tolerance.over'],
    ['tolerance', { over: '3 m' }, 'REQUIRED', 'tolerance.maximum'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('checkBondLine', () => {
  const line = (spacing: number, offsets: readonly (number | string)[]) =>
    offsets.map((offset, k) => ({ station: metres(k * spacing), offset: mm(offset) }));
  const own = { maximum: '10 mm', over: '8 m' };

  test('on the limit passes, a hair more fails; + left moves right', () => {
    const check = checkBondLine({ readings: line(2, [0, 10, 0, '-10.01', 0]), tolerance: own });
    expect(verdicts(check)).toEqual(['pass', 'pass', 'pass', 'fail', 'pass']);
    expect(moves(check)).toEqual(['4: move 10 mm left']);
    expect(check.greatest.to('mm').toString()).toBe('10.01');
    expect(check.at.toNumber('m')).toBe(6);
    expect(check.limits.minimum.to('mm').toString()).toBe('-10');
  });

  test('the base line need not be parallel: what counts is the string', () => {
    const check = checkBondLine({ readings: line(2, [0, 50, 100, 150, 212]), tolerance: own });
    expect(check.readings.map(({ value }) => value.to('mm').toString())).toEqual([
      '0',
      '-3',
      '-6',
      '-9',
      '0',
    ]);
    expect(check.verdict).toBe('pass');
  });

  test('the string moves on along a line longer than itself', () => {
    const check = checkBondLine({
      readings: line(4, [0, 0, 0, 12, 0]),
      tolerance: { maximum: '5 mm', over: '8 m' },
    });
    // held on 8 and 16 m the string leaves 12 mm; on 4 and 12 m the reading at 8 m lies 6 mm right
    expect(moves(check)).toEqual(['3: move 6 mm left', '4: move 12 mm right']);
    expect(check.readings[3]?.between?.map((one) => one.toNumber('m'))).toEqual([8, 16]);
    expect(check.readings[0]?.between).toBeNull();
  });

  test('a string is not shortened at the end of the line', () => {
    // a shorter string from 2 m on would leave 6 mm at 4 m
    const check = checkBondLine({ readings: line(2, [0, 9, 0, 3]), tolerance: own });
    expect(check.readings.map(({ value }) => value.to('mm').toString())).toEqual([
      '0',
      '8',
      '-2',
      '0',
    ]);
  });

  const valid = { readings: line(2, [0, 1, 0]), tolerance: 'paver-guide-mm' };
  testRefusals(checkBondLine, valid, [
    ['readings', line(2, [0]), 'TOO_FEW'],
    ['readings', line(2, [0, 1]), 'READINGS_TOO_SPARSE'],
    ['readings', line(10, [0, 1, 2]), 'READINGS_TOO_SPARSE'],
    ['readings.2.station', '2 m', 'NOT_INCREASING', 'readings[2].station'],
    ['readings.0.offset', undefined, 'REQUIRED', 'readings[0].offset'],
    ['line', '', 'EMPTY'],
    ['tolerance', 'block-laying-clauses', 'LIMIT_NOT_SET'],
  ]);
});

describe('checkLippage', () => {
  const lips = (...values: readonly (number | string)[]) =>
    values.map((value, k) => ({ id: `P${k}`, lippage: mm(value) }));

  test('between pavers', () => {
    const check = checkLippage({
      place: 'pavers',
      readings: lips(0, 3, '3.001', 5),
      tolerance: 'paver-guide-mm',
    });
    expect(verdicts(check)).toEqual(['pass', 'pass', 'fail', 'fail']);
    expect(moves(check)).toEqual(['P2: lower 1 mm', 'P3: lower 2 mm']);
    expect(check.cautions.map(({ id }) => id)).toEqual(['access']);
  });

  test('at a drain the paver stands above the grate, within limits', () => {
    const readings = lips(-2, '2.999', 3, 10, 12);
    const check = checkLippage({ place: 'drain', readings, tolerance: 'paver-guide-mm' });
    expect(verdicts(check)).toEqual(['fail', 'fail', 'pass', 'pass', 'fail']);
    expect(moves(check)).toEqual(['P0: raise 5 mm', 'P1: raise 1 mm', 'P4: lower 2 mm']);
    const access = checkLippage({
      place: 'accessible-drain',
      readings: [{ id: 'a', lippage: '1/4 in' }],
      tolerance: 'permeable-guide',
    });
    expect(access).toMatchObject({ verdict: 'pass', source: 'permeable-tolerances' });
  });

  test('limits of the caller, with uncertainty', () => {
    const check = checkLippage({
      place: 'pavers',
      readings: lips(1, 2, 4),
      tolerance: { maximum: '2 mm' },
      uncertainty: '1 mm',
    });
    expect(verdicts(check)).toEqual(['pass', 'unclear', 'fail']);
  });

  const valid = { place: 'pavers', readings: lips(1), tolerance: 'paver-guide-mm' };
  testRefusals(checkLippage, valid, [
    ['place', 'kerb', 'UNKNOWN_CHOICE'],
    ['place', 'accessible-drain', 'LIMIT_NOT_SET', 'tolerance'],
    ['readings.0.lippage', '-1 mm', 'NEGATIVE', 'readings[0].lippage'],
    ['readings.0.lippage', '2 m', 'OUT_OF_RANGE', 'readings[0].lippage'],
    ['tolerance', {}, 'REQUIRED'],
    ['tolerance', { minimum: '3 mm', maximum: '2 mm' }, 'LIMITS_CONTRADICT'],
    ['tolerance', 'ufgs-02780-mm', 'LIMIT_NOT_SET'],
  ]);
});

describe('checkJointWidth', () => {
  const joints = (...values: readonly (number | string)[]) =>
    values.map((value, k) => ({ id: `P${k}`, width: mm(value) }));

  test('limits, share and sizes', () => {
    const check = checkJointWidth({
      readings: joints(2, 5, '1.9', '5.1'),
      tolerance: 'paver-guide-mm',
    });
    expect(verdicts(check)).toEqual(['pass', 'pass', 'fail', 'fail']);
    expect(moves(check)).toEqual(['P2: open 1 mm', 'P3: close up 1 mm']);
    expect(check).toMatchObject({ share: 0.5, verdict: 'fail' });
    expect(check.narrowest.to('mm').toString()).toBe('1.9');
    expect(check.widest.to('mm').toString()).toBe('5.1');
    expect(check.average.to('mm').toString()).toBe('3.5');
  });

  test('passes with the share that is asked for, exactly', () => {
    const readings = joints(3, 3, 9);
    const share = (minimumShare: string) =>
      checkJointWidth({ readings, tolerance: 'paver-guide-mm', minimumShare }).verdict;
    expect(share('0.6666666666666666')).toBe('pass');
    expect(share('2/3')).toBe('pass');
    expect(share('0.6666666666666667')).toBe('fail');
    expect(share('0')).toBe('pass');
  });

  test('is unclear where the doubtful joints decide', () => {
    const check = (minimumShare: number) =>
      checkJointWidth({
        readings: joints(3, 5, 5, 9),
        tolerance: 'paver-guide-mm',
        uncertainty: '0.5 mm',
        minimumShare,
      });
    expect(check(0.25)).toMatchObject({ verdict: 'pass', share: 0.25 });
    expect(check(0.75).verdict).toBe('unclear');
    expect(check(0.76).verdict).toBe('fail');
  });

  test('a set with one limit only', () => {
    const check = checkJointWidth({ readings: joints(0, 4), tolerance: 'irc-sp-63-2004' });
    expect(check.verdict).toBe('pass');
    expect(check.limits.minimum).toBeNull();
  });

  testRefusals(checkJointWidth, { readings: joints(3), tolerance: 'paver-guide-mm' }, [
    ['readings.0.width', '-1 mm', 'NEGATIVE', 'readings[0].width'],
    ['minimumShare', 90, 'OUT_OF_RANGE'],
    ['tolerance', 'spec-526-mm', 'LIMIT_NOT_SET'],
    ['tolerance', { minimum: '3 mm', maximum: '2 mm' }, 'LIMITS_CONTRADICT'],
  ]);
});

describe('checkFall', () => {
  const drop = (...values: readonly (number | string)[]) =>
    values.map((value, k) => ({ id: `P${k}`, fall: mm(value), run: '3 m' }));

  test('on the limit passes, a hair flatter fails; the low end goes down', () => {
    const check = checkFall({
      layer: 'pavers',
      readings: drop(60, '59.9999', 30, -30),
      tolerance: 'paver-guide-mm',
    });
    expect(verdicts(check)).toEqual(['pass', 'fail', 'fail', 'fail']);
    expect(moves(check)).toEqual(['P1: lower 1 mm', 'P2: lower 30 mm', 'P3: lower 90 mm']);
    expect(check.cautions.map(({ id }) => id)).toEqual(['drainage']);
  });

  test('too steep raises the low end; without a least either way counts', () => {
    const readings = drop(60, 61, -60, -61);
    const check = checkFall({ layer: 'pavers', readings, tolerance: { maximum: '2%' } });
    expect(verdicts(check)).toEqual(['pass', 'fail', 'pass', 'fail']);
    expect(moves(check)).toEqual(['P1: raise 1 mm', 'P3: lower 1 mm']);
    const between = checkFall({
      layer: 'pavers',
      readings,
      tolerance: { minimum: '1%', maximum: '2%' },
    });
    expect(verdicts(between)).toEqual(['pass', 'fail', 'fail', 'fail']);
  });

  test('the uncertainty of two heights is 2 sqrt(2) s / L', () => {
    // 2 sqrt(2) x 1 mm / 2 m = 0.1414 %
    const check = (fall: string) =>
      checkFall({
        layer: 'pavers',
        readings: [{ id: 'a', fall, run: '2 m' }],
        tolerance: 'paver-guide-in',
        standardUncertainty: '1 mm',
      });
    expect(check('40 mm').readings[0]?.uncertainty.toNumber('percent')).toBeCloseTo(
      0.1 * Math.SQRT2,
      14,
    );
    expect(
      ['42.83 mm', '42.82 mm', '37.18 mm', '37.17 mm'].map((fall) => check(fall).verdict),
    ).toEqual(['pass', 'unclear', 'unclear', 'fail']);
    const step = check('40 mm').working.find(({ title }) => title.startsWith('Uncertainty'));
    expect(formulaOf(step)).toBe('u = k * sqrt(2) * s / L');
    expect(step?.given[0]).toMatchObject({ symbol: 'k', value: 2, source: 'nist-tn1297' });
  });

  testRefusals(checkFall, { layer: 'x', readings: drop(60), tolerance: 'paver-guide-in' }, [
    ['readings.0.run', '0 m', 'NOT_POSITIVE', 'readings[0].run'],
    ['readings.0.fall', undefined, 'REQUIRED', 'readings[0].fall'],
    ['tolerance', 'irc-sp-63-2004', 'LIMIT_NOT_SET'],
    ['tolerance', { minimum: '-1%' }, 'NEGATIVE', 'tolerance.minimum'],
    ['tolerance', { maximum: '200%' }, 'OUT_OF_RANGE', 'tolerance.maximum'],
    ['standardUncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});
