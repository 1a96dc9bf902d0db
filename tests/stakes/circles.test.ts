import { describe, expect, test } from 'vitest';
import { circleThrough } from 'settline/stakes';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const point = (x: string, y: string) => ({ x, y });

describe('through three points', () => {
  test('exactly, on a 3-4-5 circle', () => {
    const circle = circleThrough({
      points: [point('5 m', '0 m'), point('3 m', '4 m'), point('-4 m', '3 m')],
    });
    expect(circle.centre.x.isZero()).toBe(true);
    expect(circle.centre.y.isZero()).toBe(true);
    expect(circle.radius.to('m').toString()).toBe('5');
    expect(circle.isExact).toBe(true);
    expect(circle.ok).toBeNull();
    expect(circle.radiusUncertainty).toBeNull();
    // from (5, 0) to (-4, 3): 180 less atan(3 / 4)
    expect(circle.turn.toNumber('deg')).toBeCloseTo(180 - (Math.atan(0.75) * 180) / Math.PI, 10);
    expect(circle.note).toContain('fourth');
  });

  test('three points are not judged: a circle always goes through them', () => {
    const points = [point('5 m', '0 m'), point('3 m', '4 m'), point('-4 m', '3 m')];
    expect(circleThrough({ points, tolerance: '1 mm' }).ok).toBeNull();
  });

  test('at site coordinates in thirds of an inch', () => {
    const east = (inches: number) => ({ value: `${inches + 60_000_000}/3`, unit: 'in' }) as const;
    const circle = circleThrough({
      points: [
        { x: east(15), y: '0 in' },
        { x: east(9), y: '4 in' },
        { x: east(-12), y: '3 in' },
      ],
    });
    expect(circle.radius.to('in').toString()).toBe('5');
    expect(circle.centre.x.to('in').toString()).toBe('20000000');
  });

  test('a flat arc says so, and how much its radius leans on the ordinate', () => {
    // chord 4 m, middle ordinate 20 mm: R = 16 / 0.16 + 0.01 = 100.01 m, dR/dM = 1/2 - 16 / 0.0032
    const circle = circleThrough({
      points: [point('0 m', '0 m'), point('2 m', '20 mm'), point('4 m', '0 m')],
    });
    expect(circle.radius.to('m').toString()).toBe('100.01');
    expect(circle.isFlat).toBe(true);
    expect(circle.radiusPerOrdinate).toBeCloseTo(-4999.5, 5);
    expect(circle.note).toContain('flat');
  });
});

describe('near more points', () => {
  test('residuals and moves of a kerb', () => {
    // four points on a circle of 5 m about the origin, and one 30 mm outside: the fit gives way to it
    const circle = circleThrough({
      points: [
        { id: 'a', ...point('5 m', '0 m') },
        { id: 'b', ...point('3 m', '4 m') },
        { id: 'c', ...point('0 m', '5.03 m') },
        { id: 'd', ...point('-3 m', '4 m') },
        { id: 'e', ...point('-5 m', '0 m') },
      ],
      tolerance: '15 mm',
    });
    expect(circle.isExact).toBe(false);
    expect(circle.ok).toBe(false);
    expect(circle.moves.map(({ id, direction }) => `${id} ${direction}`)).toEqual(['c inward']);
    expect(circle.moves[0]?.distance.equals(circle.residuals[2] ?? circle.radius)).toBe(true);
    expect(circle.note).toBe('Move the points listed.');
    expect(circle.radiusUncertainty?.toNumber('mm')).toBeGreaterThan(1);
  });

  test('points that all lie on one circle come out exactly', () => {
    const circle = circleThrough({
      points: [point('5 m', '0 m'), point('3 m', '4 m'), point('0 m', '5 m'), point('-4 m', '3 m')],
      tolerance: '0 mm',
    });
    expect(circle.isExact).toBe(true);
    expect(circle.ok).toBe(true);
    expect(circle.radius.to('m').toString()).toBe('5');
  });

  test('a point in place twice is no fault', () => {
    const circle = circleThrough({
      points: [point('5 m', '0 m'), point('5 m', '0 m'), point('3 m', '4 m'), point('-4 m', '3 m')],
    });
    expect(circle.radius.to('m').toFixed(9)).toBe('5.000000000');
  });
});

describe('refused', () => {
  test('points in line, exactly or on one spot', () => {
    const line = [point('0 m', '0 m'), point('1/3 m', '1/3 m'), point('2 m', '2 m')];
    expectFault(() => circleThrough({ points: line }), 'POINTS_COLLINEAR');
    expectFault(
      () => circleThrough({ points: [...line, point('7 m', '7 m')] }),
      'POINTS_COLLINEAR',
    );
    const hair = { x: '3 m', y: { value: '1e-20', unit: 'm' } } as const;
    const almost = [point('0 m', '0 m'), point('1 m', '0 m'), point('7 m', '0 m'), hair];
    expect(expectFault(() => circleThrough({ points: almost }), 'POINTS_COLLINEAR').path).toEqual([
      'points',
    ]);
    const spot = point('1 m', '2 m');
    expectFault(() => circleThrough({ points: [spot, spot, spot] }), 'POINTS_COINCIDE');
  });

  const points = [point('5 m', '0 m'), point('3 m', '4 m'), point('-4 m', '3 m')];
  testRefusals(circleThrough, { points, tolerance: '1 mm' }, [
    ['points', points.slice(0, 2), 'TOO_FEW'],
    ['points', [], 'EMPTY_LIST'],
    ['points.1.x', 3, 'UNIT_MISSING'],
    ['points.2.y', undefined, 'REQUIRED'],
    ['tolerance', '-1 mm', 'NEGATIVE'],
  ]);
});
