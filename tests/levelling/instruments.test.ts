import { describe, expect, test } from 'vitest';
import {
  beamError,
  curvatureRefraction,
  errorBudget,
  gaugeBlock,
  headingError,
  laserReversal,
  rodTilt,
  twoPegTest,
} from 'settline/levelling';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

describe('twoPegTest', () => {
  // a line of sight that climbs 0.2 mm/m; B stands 0.5 m above A
  const PEGS = {
    midway: { a: '1.804 m', b: '1.304 m' },
    offset: { a: '1.41 m', b: '0.902 m' },
    distances: { midway: '20 m', offset: { a: '50 m', b: '10 m' } },
  } as const;

  test('by pencil', () => {
    const level = twoPegTest(PEGS);
    expect(level.collimation).toBe(0.0002);
    expect(level.lineOfSight.to('mm/m').toString()).toBe('0.2');
    expect(level.corrected.a.to('m').toString()).toBe('1.4');
    expect(level.corrected.b.to('m').toString()).toBe('0.9');
    expect(level.trueDifference.to('m').toString()).toBe('0.5');
    expect(level.rule).toBeNull();
    expect(level.working.map(({ result }) => result.symbol)).toEqual(['c', 'a']);
  });

  test('sights of the second set-up alone, and equal sights by default', () => {
    const short = twoPegTest({ ...PEGS, distances: { a: '50 m', b: '10 m' } });
    expect(short.lineOfSight.equals(twoPegTest(PEGS).lineOfSight)).toBe(true);
    const paired = twoPegTest({
      ...PEGS,
      distances: { ...PEGS.distances, midway: { a: '20 m', b: '20 m' } },
    });
    expect(paired.corrected.a.equals(short.corrected.a)).toBe(true);
  });

  test('against a rule, with four readings of one uncertainty', () => {
    const judged = (error: string, reading?: string) =>
      twoPegTest({
        ...PEGS,
        rule: { error, over: '60 m', ...(reading === undefined ? {} : { reading }) },
      }).rule;
    // 12 mm over 60 m; an uncertainty of 1 mm a reading makes 2 mm in 40 m, 3 mm in 60 m
    expect(judged('12 mm')?.error.toNumber('mm')).toBe(12);
    expect(judged('12 mm')?.verdict).toBe('pass');
    expect(judged('11 mm')?.verdict).toBe('fail');
    expect(judged('12 mm', '1 mm')?.uncertainty.toNumber('mm')).toBe(3);
    expect(judged('12 mm', '1 mm')?.verdict).toBe('unclear');
    expect(judged('15 mm', '1 mm')?.verdict).toBe('pass');
    expect(judged('8.9 mm', '1 mm')?.verdict).toBe('fail');
    // a line of sight that falls
    const falling = twoPegTest({
      ...PEGS,
      offset: { a: '1.39 m', b: '0.898 m' },
      rule: { error: '11 mm', over: '60 m' },
    });
    expect(falling.rule?.error.toNumber('mm')).toBe(-12);
    expect(falling.rule?.verdict).toBe('fail');
  });

  test('two set-ups that are balanced alike show nothing', () => {
    const alike = { ...PEGS, distances: { midway: '20 m', offset: { a: '30 m', b: '30 m' } } };
    expectFault(() => twoPegTest(alike), 'SIGHTS_EQUAL');
  });

  testRefusals(twoPegTest, PEGS, [
    ['midway', undefined, 'REQUIRED'],
    ['midway.a', '-1 m', 'NEGATIVE'],
    ['offset.b', '30 m', 'OUT_OF_RANGE'],
    ['distances', undefined, 'REQUIRED'],
    ['distances.offset.a', undefined, 'REQUIRED'],
    ['distances.midway', '-5 m', 'NEGATIVE'],
    ['distances', { a: '5 m' }, 'REQUIRED', 'distances.b'],
    ['rule', { error: '0 mm', over: '30 m' }, 'NOT_POSITIVE', 'rule.error'],
    ['rule', { error: '1 mm', over: '0 m' }, 'NOT_POSITIVE', 'rule.over'],
  ]);
});

describe('laserReversal', () => {
  const MARKS = {
    distance: '30 m',
    x: { first: '1.503 m', second: '1.5 m' },
    y: { first: '1.5 m', second: '1.501 m' },
    accuracy: { error: '3 mm', over: '60 m' },
  } as const;

  test('half the difference is the error', () => {
    const laser = laserReversal(MARKS);
    expect(laser.x.difference.toNumber('mm')).toBe(3);
    expect(laser.x.error.toNumber('mm')).toBe(1.5);
    expect(laser.y?.error.toNumber('mm')).toBe(-0.5);
    expect(laser.maximumDifference.toNumber('mm')).toBe(3);
    // exactly what is promised
    expect([laser.x.verdict, laser.y?.verdict, laser.verdict]).toEqual(['pass', 'pass', 'pass']);
    // atan(1.5 mm / 30 m)
    expect(laser.x.angle.toNumber('arcsec')).toBeCloseTo(10.3132, 4);
    expect(laser.working).toHaveLength(3);
  });

  test('two marks of uncertainty u are worth sqrt(2) u', () => {
    const verdict = (uncertainty: string) =>
      laserReversal({ ...MARKS, y: { first: '1.501 m', second: '1.5 m' }, x: MARKS.y, uncertainty })
        .verdict;
    // a margin of 2 mm: sqrt(2) 1.41 mm keeps it, sqrt(2) 1.42 mm does not
    expect(verdict('1.41 mm')).toBe('pass');
    expect(verdict('1.42 mm')).toBe('unclear');
  });

  test('one axis alone, and beyond the promise', () => {
    const { distance, x } = MARKS;
    const one = laserReversal({ distance, x, accuracy: { angle: '5 arcsec' } });
    expect(one.y).toBeNull();
    expect(one.verdict).toBe('fail');
    expect(one.cautions.map(({ id }) => id)).toEqual(['laser']);
  });

  testRefusals(laserReversal, MARKS, [
    ['distance', '0 m', 'NOT_POSITIVE'],
    ['x', undefined, 'REQUIRED'],
    ['x.first', undefined, 'REQUIRED'],
    ['y.second', '1', 'UNIT_MISSING'],
    ['accuracy', undefined, 'REQUIRED'],
    ['accuracy', {}, 'REQUIRED', 'accuracy.error'],
    ['accuracy', { error: '1 mm' }, 'REQUIRED', 'accuracy.over'],
    [
      'accuracy',
      { error: '1 mm', over: '1 m', angle: '1 deg' },
      'CONFLICTING_FIELDS',
      'accuracy.error',
    ],
    ['accuracy', { angle: '2 deg' }, 'OUT_OF_RANGE', 'accuracy.angle'],
    ['accuracy.error', '-1 mm', 'NEGATIVE'],
    ['accuracy.over', '0 m', 'NOT_POSITIVE'],
    ['uncertainty', '-1 mm', 'NEGATIVE'],
  ]);
});

describe('beamError', () => {
  test('errors on opposite sides add up', () => {
    const beam = beamError({ distance: '60 m', accuracy: { error: '1.5 mm', over: '30 m' } });
    expect(beam.error.toNumber('mm')).toBe(3);
    expect(beam.between.toNumber('mm')).toBe(6);
    expect(beam.maximumDistance).toBeNull();
  });

  test('the distance that a limit allows', () => {
    const beam = beamError({
      distance: '10 m',
      accuracy: { error: '1.5 mm', over: '30 m' },
      limit: '4 mm',
    });
    expect(beam.maximumDistance?.toNumber('m')).toBe(80);
    expectFault(
      () => beamError({ distance: '10 m', accuracy: { angle: '0 deg' }, limit: '4 mm' }),
      'NOT_POSITIVE',
    );
  });

  testRefusals(beamError, { distance: '10 m', accuracy: { angle: '10 arcsec' } }, [
    ['distance', '0 m', 'NOT_POSITIVE'],
    ['accuracy.angle', '-1 arcsec', 'NEGATIVE'],
    ['limit', '0 mm', 'NOT_POSITIVE'],
  ]);
});

describe('headingError', () => {
  test('a quarter turn swaps the grades', () => {
    const turned = headingError({
      gradeX: '1%',
      gradeY: '2%',
      heading: '90 deg',
      at: { x: '10 m', y: '0 m' },
    });
    expect(turned.gradeX.to('percent').toFixed(20)).toBe('-2.00000000000000000000');
    expect(turned.gradeY.to('percent').toFixed(20)).toBe('1.00000000000000000000');
    expect(turned.error.to('mm').toFixed(12)).toBe('-300.000000000000');
  });

  test('aimed right there is no error', () => {
    const right = headingError({
      gradeX: '1%',
      gradeY: '2%',
      heading: '0 deg',
      at: { x: '10 m', y: '7 m' },
    });
    expect(right.error.isZero()).toBe(true);
    expect(right.cautions.map(({ id }) => id)).toEqual(['laser']);
  });

  testRefusals(
    headingError,
    { gradeX: '1%', gradeY: '2%', heading: '1 deg', at: { x: '10 m', y: '7 m' } },
    [
      ['gradeX', '200%', 'OUT_OF_RANGE'],
      ['gradeY', undefined, 'REQUIRED'],
      ['heading', '91 deg', 'OUT_OF_RANGE'],
      ['at', undefined, 'REQUIRED'],
      ['at.x', undefined, 'REQUIRED'],
    ],
  );
});

describe('rodTilt', () => {
  test('60 degrees would halve it; 3-4-5 is exact', () => {
    const lean = rodTilt({ reading: '2.5 m', lean: { by: '0.6 m', over: '1 m' } });
    expect(lean.corrected.equals(length('2 m'))).toBe(true);
    expect(lean.error.toNumber('m')).toBe(0.5);
    expect(rodTilt({ reading: '2 m', tilt: '0 deg' }).error.isZero()).toBe(true);
  });

  test('either way, a leaning rod reads too big', () => {
    const right = rodTilt({ reading: '2 m', tilt: '5 deg' });
    const left = rodTilt({ reading: '2 m', tilt: '-5 deg' });
    expect(left.error.equals(right.error)).toBe(true);
    expect(left.error.isNegative()).toBe(false);
    expect(formulaOf(left.working[0])).toBe('r0 = r * cos(t)');
  });

  testRefusals(rodTilt, { reading: '2 m', tilt: '5 deg' }, [
    ['reading', '-1 m', 'NEGATIVE'],
    ['tilt', undefined, 'REQUIRED'],
    ['tilt', '46 deg', 'OUT_OF_RANGE'],
    ['lean', { by: '1 mm', over: '1 m' }, 'CONFLICTING_FIELDS', 'tilt'],
  ]);
  testRefusals(rodTilt, { reading: '2 m', lean: { by: '1 cm', over: '1 m' } }, [
    ['lean.by', '0.8 m', 'OUT_OF_RANGE'],
    ['lean.by', '2 m', 'OUT_OF_RANGE'],
    ['lean.by', '-1 m', 'NEGATIVE'],
    ['lean.over', '0 m', 'NOT_POSITIVE'],
  ]);
});

describe('curvatureRefraction', () => {
  test('exact without refraction', () => {
    const sight = curvatureRefraction({ sight: '12.74 km', refraction: 0 });
    // D^2 / d = 12.74^2 / 12740 km
    expect(sight.curvature.toNumber('m')).toBe(12.74);
    expect(sight.refraction.isZero()).toBe(true);
    expect(sight.error.equals(sight.curvature)).toBe(true);
    expect(sight.maximumSight).toBeNull();
  });

  test('refraction takes back its share', () => {
    const sight = curvatureRefraction({ sight: '1.274 km', refraction: '0.25', limit: '9.555 cm' });
    expect(sight.curvature.toNumber('mm')).toBe(127.4);
    expect(sight.refraction.toNumber('mm')).toBe(31.85);
    expect(sight.error.toNumber('mm')).toBe(95.55);
    // the limit is the error itself
    expect(sight.maximumSight?.equals(length('1.274 km'))).toBe(true);
  });

  testRefusals(curvatureRefraction, { sight: '100 m' }, [
    ['sight', undefined, 'REQUIRED'],
    ['sight', '-1 m', 'NEGATIVE'],
    ['sight', '101 km', 'OUT_OF_RANGE'],
    ['refraction', 1, 'OUT_OF_RANGE'],
    ['refraction', -0.1, 'NEGATIVE'],
    ['limit', '0 mm', 'NOT_POSITIVE'],
  ]);
});

describe('errorBudget', () => {
  const BUDGET = {
    random: [
      { name: 'benchmark', sigma: '3 mm' },
      { name: 'rod', sigma: '4 mm' },
    ],
    tolerance: '15 mm',
  } as const;

  test('root sum of squares, and what remains', () => {
    const budget = errorBudget(BUDGET);
    expect(budget.total.equals(length('5 mm'))).toBe(true);
    expect(budget.uncertainty.toNumber('mm')).toBe(10);
    expect(budget.remaining.toNumber('mm')).toBe(5);
    expect(budget.isEnough).toBe(true);
    expect(budget.shares).toMatchObject([
      { name: 'benchmark', share: 0.36 },
      { name: 'rod', share: 0.64 },
    ]);
    expect(budget.verdict).toBeNull();
    expect(budget.working.map(formulaOf)).toEqual([
      's = sqrt(sum(e[i]^2))',
      'L = T - k * s - abs(b)',
    ]);
  });

  test('a tolerance that the errors use up leaves nothing', () => {
    const budget = errorBudget({ ...BUDGET, tolerance: '10 mm' });
    expect(budget.remaining.isZero()).toBe(true);
    expect(budget.isEnough).toBe(false);
    expect(errorBudget({ ...BUDGET, tolerance: '9 mm' }).remaining.toNumber('mm')).toBe(-1);
    expect(
      errorBudget({ ...BUDGET, tolerance: '9 mm', coverage: 1 }).remaining.toNumber('mm'),
    ).toBe(4);
  });

  // 15 less the deviation from which the -2 mm are taken, against 10 mm of uncertainty
  test.each([
    ['3 mm', 'pass'],
    ['4 mm', 'unclear'],
    ['-7 mm', 'pass'],
    ['-8 mm', 'unclear'],
    ['24 mm', 'fail'],
  ])('a deviation of %s, 2 mm of it systematic and low: %s', (deviation, verdict) => {
    const systematic = [{ name: 'rod', error: '-2 mm' }];
    expect(errorBudget({ ...BUDGET, systematic, deviation }).verdict).toBe(verdict);
  });

  test('systematic errors are added with their sign, not squared', () => {
    const budget = errorBudget({
      ...BUDGET,
      systematic: [
        { name: 'tilt', error: '2 mm' },
        { name: 'sag', error: '-3.5 mm' },
      ],
      deviation: '3.5 mm',
    });
    expect(budget.systematic.toNumber('mm')).toBe(-1.5);
    expect(budget.remaining.toNumber('mm')).toBe(3.5);
    // 3.5 mm less -1.5 mm are 5 mm: 10 mm to the tolerance, just the uncertainty
    expect(budget.verdict).toBe('pass');
    const more = { ...BUDGET, deviation: '-5.01 mm' } as const;
    expect(errorBudget(more).verdict).toBe('unclear');
    expect(errorBudget({ ...BUDGET, deviation: '25.01 mm' }).verdict).toBe('fail');
  });

  test('errors of nothing', () => {
    const budget = errorBudget({ random: [{ name: 'rod', sigma: '0 mm' }], tolerance: '1 mm' });
    expect(budget.shares[0]?.share).toBe(0);
    expect(budget.remaining.toNumber('mm')).toBe(1);
  });

  testRefusals(errorBudget, BUDGET, [
    ['random', [], 'EMPTY_LIST'],
    ['random.0.name', '', 'EMPTY'],
    ['random.0.sigma', '-1 mm', 'NEGATIVE'],
    ['random.0.sigma', undefined, 'REQUIRED'],
    ['systematic', [{ name: 'tilt' }], 'REQUIRED', 'systematic[0].error'],
    ['tolerance', '0 mm', 'NOT_POSITIVE'],
    ['coverage', 0.5, 'OUT_OF_RANGE'],
    ['coverage', 6, 'OUT_OF_RANGE'],
    ['deviation', '11 m', 'OUT_OF_RANGE'],
  ]);
});

describe('gaugeBlock', () => {
  test('slope times length', () => {
    const block = gaugeBlock({ slope: '1:48', length: '4 ft', error: '1/16 in' });
    expect(block.block.equals(length('1 in'))).toBe(true);
    // 1/16 over 48
    expect(block.slopeError?.toNumber('ratio')).toBeCloseTo(1 / 768, 15);
    expect(gaugeBlock({ slope: '2%', length: '2 m' }).slopeError).toBeNull();
  });

  testRefusals(gaugeBlock, { slope: '2%', length: '2 m' }, [
    ['slope', '0%', 'NOT_POSITIVE'],
    ['slope', '200%', 'OUT_OF_RANGE'],
    ['length', '0 m', 'NOT_POSITIVE'],
    ['length', '10.1 km', 'OUT_OF_RANGE'],
    ['error', '-1 mm', 'NEGATIVE'],
  ]);
});
