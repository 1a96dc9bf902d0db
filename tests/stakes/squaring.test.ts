import { describe, expect, test } from 'vitest';
import { checkCorner, checkSquare, threeFourFive } from 'settline/stakes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

describe('four corners', () => {
  const garage = { length: '12 m', width: '5 m', diagonals: ['13 m', '13 m'] } as const;

  test('square: nothing to move', () => {
    const check = checkSquare({ ...garage, tolerance: '0 mm' });
    expect(check.verdict).toBe('pass');
    expect(check.move).toBeNull();
    expect(check.outOfSquare.isZero()).toBe(true);
    expect(check.diagonalMisfit.isZero()).toBe(true);
    expect(check.angleError.isZero()).toBe(true);
    expect(check.sideErrors).toEqual([]);
    expect(check.faults).toEqual([]);
  });

  test('the far side leans right: it is moved left, and the other way round', () => {
    const right = checkSquare({ ...garage, diagonals: ['13.02 m', '12.98 m'] });
    // (13.02^2 - 12.98^2) / 48 = 1.04 / 48
    expect(right.outOfSquare.times(48).to('m').toString()).toBe('1.04');
    expect(right.move).toMatchObject({ side: 'far', direction: 'left' });
    expect(right.angleError.isNegative()).toBe(false);
    expect(right.verdict).toBeNull();
    const left = checkSquare({ ...garage, diagonals: ['12.98 m', '13.02 m'] });
    expect(left.move?.direction).toBe('right');
    expect(left.angleError.isNegative()).toBe(true);
    expect(left.outOfSquare.equals(right.outOfSquare)).toBe(true);
  });

  test('the move squares it up', () => {
    // near side 30, sheared by 0.6: corners (0, 0), (30, 0), (30.6, 20), (0.6, 20)
    const check = checkSquare({
      length: '30 m',
      width: { value: Math.hypot(0.6, 20), unit: 'm' },
      diagonals: [
        { value: Math.hypot(30.6, 20), unit: 'm' },
        { value: Math.hypot(29.4, 20), unit: 'm' },
      ],
    });
    expect(check.outOfSquare.toNumber('m')).toBeCloseTo(0.6, 12);
    expect(check.move?.direction).toBe('left');
    expect(check.angleError.toNumber('rad')).toBeCloseTo(Math.atan(0.03), 12);
    expect(check.diagonalMisfit.toNumber('m')).toBeCloseTo(0, 12);
  });

  test('equal diagonals and unequal sides are no rectangle', () => {
    // even trapezium: near 12, far 11.8, height 5
    const diagonal = { value: Math.hypot(11.9, 5), unit: 'm' } as const;
    const side = { value: Math.hypot(0.1, 5), unit: 'm' } as const;
    const check = checkSquare({
      ...garage,
      diagonals: [diagonal, diagonal],
      sides: { near: '12 m', far: '11.8 m', left: side, right: side },
      tolerance: '10 mm',
    });
    expect(check.outOfSquare.isZero()).toBe(true);
    expect(check.verdict).toBe('fail');
    expect(check.faults).toEqual(['sides-differ']);
    expect(check.note).toContain('not a rectangle');
    expect(check.diagonalMisfit.toNumber('m')).toBeCloseTo(0, 12);
    expect(
      check.sideErrors.map(({ side: name, error }) => `${name} ${error.to('mm').toFixed(0)}`),
    ).toEqual(['near 0', 'far -200', 'left 1', 'right 1']);
    expect(check.sideDifferences.map((one) => one.to('mm').toString())).toEqual(['200', '0']);
  });

  test('diagonals that do not fit the sides: a length was misread', () => {
    const check = checkSquare({ ...garage, diagonals: ['13.1 m', '13.1 m'], tolerance: '10 mm' });
    expect(check.faults).toEqual(['length-misread']);
    expect(check.diagonalMisfit.to('mm').toString()).toBe('100');
    expect(check.note).toContain('misread');
  });

  test('with an uncertain tape the verdict may be unclear', () => {
    const slack = { ...garage, diagonals: ['13.01 m', '12.99 m'], tolerance: '10 mm' } as const;
    // 10.8 mm out of square; one length counts 13 / 24 sqrt(2) = 0.766
    expect(checkSquare(slack).verdict).toBe('fail');
    expect(checkSquare({ ...slack, uncertainty: '1 mm' }).verdict).toBe('unclear');
    expect(checkSquare({ ...slack, uncertainty: '0.5 mm' }).verdict).toBe('fail');
    expect(checkSquare({ ...garage, tolerance: '10 mm', uncertainty: '1 mm' }).verdict).toBe(
      'pass',
    );
  });

  test('the tolerance itself passes', () => {
    const check = {
      ...garage,
      length: '13 m',
      width: '13 m',
      diagonals: ['18.5 m', '18.24 m'],
    } as const;
    // (342.25 - 332.6976) / 52 = 0.1837
    const exact = checkSquare(check).outOfSquare;
    expect(checkSquare({ ...check, tolerance: exact }).faults).not.toContain('out-of-square');
    expect(
      checkSquare({ ...check, tolerance: exact.times('0.99999999999999999999') }).faults,
    ).toContain('out-of-square');
  });

  testRefusals(checkSquare, { ...garage, tolerance: '1 mm', uncertainty: '1 mm' }, [
    ['length', '0 m', 'NOT_POSITIVE'],
    ['width', undefined, 'REQUIRED'],
    ['diagonals', ['13 m'], 'TOO_FEW'],
    ['diagonals', ['13 m', '13 m', '13 m'], 'TOO_MANY'],
    ['diagonals', [], 'EMPTY_LIST'],
    ['diagonals', ['17 m', '13 m'], 'TRIANGLE_IMPOSSIBLE', 'diagonals[0]'],
    ['diagonals', ['13 m', '7 m'], 'TRIANGLE_IMPOSSIBLE', 'diagonals[1]'],
    ['sides', { near: '12 m', far: '12 m', left: '5 m' }, 'REQUIRED', 'sides.right'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['uncertainty', 2, 'UNIT_MISSING'],
    ['tolerance', undefined, 'REQUIRED'],
  ]);
});

describe('one corner', () => {
  const corner = { base: '4 m', side: '3 m', diagonal: '5 m' } as const;

  test('square', () => {
    const check = checkCorner({ ...corner, tolerance: '0 mm' });
    expect(check.angle.to('deg').toFixed(20)).toBe('90.00000000000000000000');
    expect(check.move).toBeNull();
    expect(check.verdict).toBe('pass');
    expect(check.trueDiagonal.to('m').toString()).toBe('5');
  });

  test('a short diagonal: the corner is narrow, the end of the side goes away', () => {
    // e = (25 - 24.8004) / 8 = 24.95 mm
    const check = checkCorner({ ...corner, diagonal: '4.98 m', tolerance: '25 mm' });
    expect(check.outOfSquare.to('mm').toString()).toBe('24.95');
    expect(check.move?.direction).toBe('away');
    expect(check.angleError.isNegative()).toBe(false);
    expect(check.angle.toNumber('deg')).toBeLessThan(90);
    expect(check.verdict).toBe('pass');
    const wide = checkCorner({ ...corner, diagonal: '5.02 m', tolerance: '25 mm' });
    expect(wide.move?.direction).toBe('toward');
    expect(wide.verdict).toBe('fail');
  });

  test('the uncertainty of each length counts', () => {
    // near square: parts 1, 3/4 and 5/4 make sqrt(50) / 4 = 1.77
    const of = (uncertainty: string) =>
      checkCorner({ ...corner, diagonal: '4.98 m', tolerance: '20 mm', uncertainty }).verdict;
    expect(of('1 mm')).toBe('fail');
    expect(of('2 mm')).toBe('unclear');
  });

  testRefusals(checkCorner, corner, [
    ['diagonal', '7 m', 'TRIANGLE_IMPOSSIBLE'],
    ['diagonal', '1 m', 'TRIANGLE_IMPOSSIBLE'],
    ['base', '0 m', 'NOT_POSITIVE'],
    ['side', 3, 'UNIT_MISSING'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
    ['uncertainty', '1 mm', 'REQUIRED', 'tolerance'],
  ]);
});

describe('3-4-5', () => {
  test('as large as the tape, in whole steps or not', () => {
    expect(threeFourFive({ longest: '30 m' }).part.to('m').toString()).toBe('6');
    expect(threeFourFive({ longest: '29.9 ft', step: '1 ft' }).five.to('ft').toString()).toBe('25');
    expect(threeFourFive({ longest: '30 ft', step: '1 ft' }).five.to('ft').toString()).toBe('30');
    expect(threeFourFive({ longest: '5 ft', step: '1 ft' }).part.to('ft').toString()).toBe('1');
  });

  test.each([
    ['left', '-1.8', '2.4'],
    ['right', '1.8', '-2.4'],
  ] as const)('marks in plan, off to the %s', (side, x, y) => {
    // base along (4, 3): unit (0.8, 0.6), left (-0.6, 0.8)
    const { marks } = threeFourFive({
      longest: '5 m',
      baseLine: { corner: { x: '100 m', y: '50 m' }, along: { x: '108 m', y: '56 m' }, side },
    });
    expect(marks?.four.x.to('m').toString()).toBe('103.2');
    expect(marks?.four.y.to('m').toString()).toBe('52.4');
    expect(marks?.three.x.to('m').minus(100).toString()).toBe(x);
    expect(marks?.three.y.to('m').minus(50).toString()).toBe(y);
  });

  test('the larger, the squarer', () => {
    const of = (longest: string) =>
      threeFourFive({ longest, uncertainty: '3 mm' }).angleUncertainty?.toNumber('rad') ??
      Number.NaN;
    // 3 mm sqrt(2) 5 / 12 over a part of 1 m
    expect(of('5 m')).toBeCloseTo((0.003 * Math.SQRT2 * 5) / 12, 15);
    expect(of('10 m')).toBeCloseTo(of('5 m') / 2, 15);
    expect(threeFourFive({ longest: '5 m' }).angleUncertainty).toBeNull();
  });

  test('a base line of no length', () => {
    const spot = { x: '1 m', y: '1 m' };
    const issue = expectFault(
      () =>
        threeFourFive({ longest: '5 m', baseLine: { corner: spot, along: spot, side: 'left' } }),
      'POINTS_COINCIDE',
    );
    expect(issue.path).toEqual(['baseLine', 'along']);
  });

  testRefusals(
    threeFourFive,
    {
      longest: '25 ft',
      step: '1 ft',
      baseLine: { corner: { x: '0 m', y: '0 m' }, along: { x: '1 m', y: '0 m' }, side: 'left' },
    },
    [
      ['longest', '0 ft', 'NOT_POSITIVE'],
      ['longest', '4.9 ft', 'OUT_OF_RANGE', 'step'],
      ['baseLine.side', 'north', 'UNKNOWN_CHOICE'],
      ['baseLine.side', undefined, 'REQUIRED'],
      ['baseLine.corner', undefined, 'REQUIRED'],
      ['uncertainty', '-1 mm', 'NEGATIVE'],
    ],
  );
});
