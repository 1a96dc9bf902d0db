import { describe, expect, test } from 'vitest';
import { areaByBearings, areaByOffsets } from 'settline/outline';
import { testRefusals } from '../refusals.js';

describe('areaByOffsets', () => {
  test('a parabola is exact by Simpson, in any number of strips', () => {
    // y = x (6 - x): area 36
    for (const strips of [2, 4, 6]) {
      const d = 6 / strips;
      const offsets = Array.from({ length: strips + 1 }, (_, i) => ({
        value: i * d * (6 - i * d),
        unit: 'm' as const,
      }));
      const { simpson } = areaByOffsets({ offsets, spacing: { value: d, unit: 'm' } });
      expect(simpson?.to('m2').toString()).toBe('36');
    }
  });

  test('two offsets make one trapezoid', () => {
    const result = areaByOffsets({ offsets: ['2 ft', '4 ft'], spacing: '10 ft' });
    expect(result.trapezoid.to('ft2').toString()).toBe('30');
    expect([result.simpson, result.lastStrip, result.difference]).toEqual([null, null, null]);
    expect(result.working).toHaveLength(1);
  });

  test('three strips: two by Simpson, one trapezoid; equal spacings may come as a list', () => {
    const offsets = ['0 m', '3 m', '0 m', '6 m'];
    const one = areaByOffsets({ offsets, spacing: '1 m' });
    // 1/3 (0 + 12 + 0) and (0 + 6) / 2
    expect(one.simpson?.to('m2').toString()).toBe('7');
    expect(one.lastStrip?.to('m2').toString()).toBe('3');
    expect(one.difference?.to('m2').toString()).toBe('1');
    const list = areaByOffsets({ offsets, spacing: ['1 m', '100 cm', '1000 mm'] });
    expect(list.simpson?.to('m2').toString()).toBe('7');
    expect(one.working.map((step) => step.result.value)).toEqual([one.trapezoid, one.simpson]);
  });

  testRefusals(areaByOffsets, { offsets: ['1 m', '2 m', '3 m'], spacing: '1 m' }, [
    ['offsets', undefined, 'REQUIRED'],
    ['offsets', [], 'EMPTY_LIST'],
    ['offsets', ['1 m'], 'TOO_FEW'],
    ['offsets.1', '-1 m', 'NEGATIVE', 'offsets[1]'],
    ['offsets.1', 5, 'UNIT_MISSING', 'offsets[1]'],
    ['offsets.2', { value: NaN, unit: 'm' }, 'NOT_FINITE', 'offsets[2]'],
    ['offsets.2', '101 km', 'OUT_OF_RANGE', 'offsets[2]'],
    ['spacing', undefined, 'REQUIRED'],
    ['spacing', '0 m', 'NOT_POSITIVE'],
    ['spacing', ['1 m'], 'COUNT_MISMATCH'],
    ['spacing', ['1 m', '0 m'], 'NOT_POSITIVE', 'spacing[1]'],
  ]);
});

const square = [
  { bearing: 'N 0 E', distance: '10 m' },
  { bearing: 'N 90 E', distance: '10 m' },
  { bearing: 'S 0 W', distance: '10 m' },
  { bearing: 'S 90 W', distance: '10 m' },
];

describe('areaByBearings', () => {
  test('due courses close and come out exactly', () => {
    const { area, perimeter, closure, points } = areaByBearings({
      courses: square,
      start: { x: '500 m', y: '1000 m' },
    });
    expect(area.to('m2').toString()).toBe('100');
    expect(perimeter.to('m').toString()).toBe('40');
    expect(closure.distance.to('m').toString()).toBe('0');
    expect(closure.oneIn).toBeNull();
    // a pentagon closes to the last of 40 digits, and that is no misclosure
    const pentagon = ['N 0 E', 'N 72 E', 'S 36 E', 'S 36 W', 'N 72 W'];
    const round = areaByBearings({
      courses: pentagon.map((bearing) => ({ bearing, distance: '1 m' })),
    });
    expect(round.closure.oneIn).toBeNull();
    const off = pentagon.map((bearing, k) => ({ bearing, distance: k === 0 ? '1.005 m' : '1 m' }));
    expect(areaByBearings({ courses: off }).closure.oneIn).toBe(1001);
    expect(points.map(({ x, y }) => `${x.to('m').toString()} ${y.to('m').toString()}`)).toEqual([
      '500 1000',
      '500 1010',
      '510 1010',
      '510 1000',
    ]);
  });

  test('shares a misclosure out by length', () => {
    const long = square.map((course, index) =>
      index === 0 ? { ...course, distance: '10.4 m' } : course,
    );
    const { closure, courses, working } = areaByBearings({ courses: long });
    expect(closure.latitude.to('m').toString()).toBe('0.4');
    expect(closure.distance.to('m').toString()).toBe('0.4');
    expect(closure.oneIn).toBe(101);
    // 0.4 x 10.4 / 40.4 off the first, 0.4 x 10 / 40.4 off the others
    expect(courses[0]?.adjustedLatitude.to('m').toFixed(9)).toBe((10.4 - 4.16 / 40.4).toFixed(9));
    expect(courses[1]?.adjustedLatitude.to('m').toFixed(9)).toBe((-4 / 40.4).toFixed(9));
    expect(courses[1]?.latitude.to('m').toString()).toBe('0');
    expect(working).toHaveLength(2);
  });

  test.each([
    ['N 30 E', 0.5, Math.sqrt(0.75)],
    ['s 30°00\'00" w', -0.5, -Math.sqrt(0.75)],
    ['N45W', -Math.SQRT1_2, Math.SQRT1_2],
    ['S 59-30-36 E', Math.sin((59.51 * Math.PI) / 180), -Math.cos((59.51 * Math.PI) / 180)],
    ['S 59 30.6 E', Math.sin((59.51 * Math.PI) / 180), -Math.cos((59.51 * Math.PI) / 180)],
  ])('%s', (bearing, x, y) => {
    // out by the bearing, and home by due courses
    const { courses } = areaByBearings({
      courses: [
        { bearing, distance: '1 m' },
        { bearing: x > 0 ? 'S 80 W' : 'S 80 E', distance: '3 m' },
        { bearing: 'N 10 W', distance: '5 m' },
      ],
    });
    expect(courses[0]?.departure.toNumber('m')).toBeCloseTo(x, 15);
    expect(courses[0]?.latitude.toNumber('m')).toBeCloseTo(y, 15);
  });

  const at = (field: string) => `courses[1].${field}`;
  testRefusals(areaByBearings, { courses: square }, [
    ['courses', undefined, 'REQUIRED'],
    ['courses', square.slice(0, 2), 'TOO_FEW'],
    ['courses', Array.from({ length: 10_001 }, () => square[0]), 'TOO_MANY'],
    ['courses', [square[0], square[1], square[3], square[2]].concat(square), 'SELF_INTERSECTION'],
    ['courses.1.bearing', 'E 30 N', 'TEXT_UNREADABLE', at('bearing')],
    ['courses.1.bearing', 'N 91 E', 'TEXT_UNREADABLE', at('bearing')],
    ['courses.1.bearing', 'N 30-60-00 E', 'TEXT_UNREADABLE', at('bearing')],
    ['courses.1.bearing', 'N 30-00-60 E', 'TEXT_UNREADABLE', at('bearing')],
    ['courses.1.bearing', '', 'EMPTY', at('bearing')],
    ['courses.1.bearing', 45, 'WRONG_TYPE', at('bearing')],
    ['courses.1.distance', '0 m', 'NOT_POSITIVE', at('distance')],
    ['courses.1.distance', undefined, 'REQUIRED', at('distance')],
    ['start', { x: '0 m' }, 'REQUIRED', 'start.y'],
  ]);
});
