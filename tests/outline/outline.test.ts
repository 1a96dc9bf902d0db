import { describe, expect, test } from 'vitest';
import { outlineArea, widenOutline, type OutlineInput } from 'settline/outline';
import { length } from 'settline/units';
import { contains } from '../../src/outline/contains.js';
import { readNumber } from '../../src/units/read-number.js';
import { expectFault, faultsOf } from '../faults.js';

const feet = (...points: (readonly [number, number])[]): OutlineInput => ({ unit: 'ft', points });
const drive = feet([0, 0], [36, 0], [36, 14], [0, 14]);
const lShape = feet([0, 0], [9, 0], [9, 4], [5, 4], [5, 7], [0, 7]);

describe('outlineArea', () => {
  test('is exact, either way round', () => {
    const { area, perimeter, centroid, orientation } = outlineArea({ outline: drive });
    expect(area.to('ft2').toString()).toBe('504');
    expect(perimeter.to('ft').toString()).toBe('100');
    expect([centroid.x.to('ft').toString(), centroid.y.to('ft').toString()]).toEqual(['18', '7']);
    expect(orientation).toBe('counter-clockwise');
    const back = outlineArea({ outline: feet([0, 14], [36, 14], [36, 0], [0, 0]) });
    expect(back.area.equals(area)).toBe(true);
    expect(back.orientation).toBe('clockwise');
    expect(back.centroid.x.to('ft').toString()).toBe('18');
  });

  test('takes points as lengths, and a repeated first point', () => {
    const corner = (x: string, y: string) => ({ x, y });
    const { area } = outlineArea({
      outline: [
        corner('0 in', '0 m'),
        corner('36 ft', '0 m'),
        corner('12 yd', '168 in'),
        corner('0 m', '14 ft'),
        corner('0 m', '0 ft'),
      ],
    });
    expect(area.to('ft2').toString()).toBe('504');
  });

  test('large coordinates lose no digits', () => {
    const shift = ([x, y]: readonly [number, number]) =>
      [`${500_000 + x}.123456789`, `${4_500_000 + y}.987654321`] as const;
    const far = outlineArea({
      outline: {
        unit: 'm',
        points: [
          shift([0, 0]),
          shift([9, 0]),
          shift([9, 4]),
          shift([5, 4]),
          shift([5, 7]),
          shift([0, 7]),
        ],
      },
    });
    expect(far.area.to('m2').toString()).toBe('51');
    expect(far.centroid.x.minus(length('500000.123456789', 'm')).to('m').toFixed(12)).toBe(
      '3.911764705882',
    );
  });

  test('working', () => {
    expect(outlineArea({ outline: drive }).working[0]?.result.value).toEqual(
      outlineArea({ outline: drive }).area,
    );
  });
});

describe('an arc that is nearly straight', () => {
  const square = (side: number, bulge: string) =>
    outlineArea({
      outline: {
        unit: 'm',
        points: [
          [0, 0],
          [side, 0],
          [side, side],
          [0, side],
        ],
        arcs: [{ edge: 0, bulgeMiddleOrdinate: Number(bulge) }],
      },
    });

  test.each([
    [10, '1e-20'],
    [300, '1e-18'],
    [300, '1.39e-17'],
    [100, '1.39e-17'],
    [40, '1e-30'],
  ])('leaves the centroid of a square of %d m, with %s m, where it is', (side, bulge) => {
    const { centroid, area } = square(side, bulge);
    expect(centroid.y.to('m').toFixed(12)).toBe((side / 2).toFixed(12));
    // 2/3 of chord and middle ordinate; the rest is beyond what a float shows
    const extra = area.minus(length(side, 'm').times(length(side, 'm')));
    expect(extra.toNumber('m2') / ((2 / 3) * side * Number(bulge))).toBeCloseTo(1, 12);
  });

  test('series and formulas meet where one takes over from the other', () => {
    // a chord of 10 m: t = 2 M / C is 1e-5 at 0.05 mm; d = A / M and m = moment / M^2 change with t^2 only
    const parts = (bulge: string) => {
      const { area, centroid } = square(10, bulge);
      const extra = area.minus(length(10, 'm').times(length(10, 'm')));
      const moment = centroid.y
        .times(area)
        .minus(length(500, 'm').times(length(1, 'm')).times(length(1, 'm')));
      return {
        extra: extra.toNumber('m2') / Number(bulge),
        moment: moment.toNumber('m3') / Number(bulge) ** 2,
      };
    };
    const [below, above] = [parts('0.00004999999'), parts('0.00005000001')];
    expect(below.extra / above.extra).toBeCloseTo(1, 14);
    expect(below.moment / above.moment).toBeCloseTo(1, 12);
    // C / 15 x 4 M^2
    expect(below.moment).toBeCloseTo((-10 * 4) / 15, 9);
  });
});

describe('widenOutline', () => {
  test('mitred: A + P d + d^2 sum(tan(turn / 2))', () => {
    const { area, outline } = widenOutline({ outline: drive, by: '1 ft' });
    expect(area.to('ft2').toString()).toBe(`${504 + 100 + 4}`);
    expect(
      outline.map(({ x, y }) => [x, y].map((one) => one.to('ft').toString()).join(' ')),
    ).toEqual(['-1 -1', '37 -1', '37 15', '-1 15']);
    // five turns left, one right: 4 tan(45)
    expect(widenOutline({ outline: lShape, by: '1 ft' }).area.to('ft2').toString()).toBe(
      `${51 + 32 + 4}`,
    );
  });

  test('each edge by its own distance', () => {
    const perEdge = ['12 in', '12 in', '12 in', '0 in'];
    expect(widenOutline({ outline: drive, perEdge }).area.to('ft2').toString()).toBe('592');
    const clockwise = feet([0, 14], [36, 14], [36, 0], [0, 0]);
    // edges: north, east, south, west
    expect(widenOutline({ outline: clockwise, perEdge }).area.to('ft2').toString()).toBe('592');
  });

  test('edges in one line with different distances get a step', () => {
    const split = feet([0, 0], [10, 0], [10, 5], [4, 5], [0, 5]);
    const { area, outline } = widenOutline({
      outline: split,
      perEdge: ['0 ft', '0 ft', '1 ft', '0 ft', '0 ft'],
    });
    expect(area.to('ft2').toString()).toBe('56');
    expect(outline).toHaveLength(6);
    const same = widenOutline({ outline: split, by: '1 ft' });
    expect(same.outline).toHaveLength(5);
  });

  test('by nothing is the same area', () => {
    expect(widenOutline({ outline: lShape, by: '0 m' }).area.to('ft2').toString()).toBe('51');
  });

  test.each([
    [() => widenOutline({ outline: drive }), 'REQUIRED'],
    [() => widenOutline({ outline: drive, by: '-1 ft' }), 'NEGATIVE'],
    [() => widenOutline({ outline: drive, by: '1 km' }), 'OUT_OF_RANGE'],
    [() => widenOutline({ outline: drive, perEdge: ['1 ft'] }), 'COUNT_MISMATCH'],
    [
      () => widenOutline({ outline: drive, perEdge: ['1 ft', '1 ft', '1 ft', 5 as never] }),
      'UNIT_MISSING',
    ],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('outlines that are none', () => {
  test.each([
    [feet([0, 0], [1, 0]), 'TOO_FEW'],
    [feet([0, 0], [1, 1], [2, 2], [3, 3]), 'ZERO_AREA'],
    [feet([0, 0], [2, 2], [2, 0], [0, 2]), 'SELF_INTERSECTION'],
    // touches its own edge at a corner
    [feet([0, 0], [4, 0], [4, 4], [2, 0], [0, 4]), 'SELF_INTERSECTION'],
    // runs back over itself
    [feet([0, 0], [4, 0], [2, 0], [2, 3]), 'SELF_INTERSECTION'],
    // touches at a point shared by two corners
    [feet([0, 0], [2, 2], [4, 0], [4, 4], [2, 2], [0, 4]), 'SELF_INTERSECTION'],
    [feet([0, 0], [0, 0], [1, 0], [1, 1]), 'POINTS_COINCIDE'],
    [feet(), 'EMPTY_LIST'],
    [feet([0, 0], [1, Number.NaN], [1, 1]), 'NOT_FINITE'],
    [
      {
        unit: 'kg',
        points: [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
      } as never,
      'DIMENSION_MISMATCH',
    ],
    [{ unit: 5, points: [] } as never, 'WRONG_TYPE'],
    [{ points: [] }, 'UNIT_MISSING'],
    ['outline' as never, 'WRONG_TYPE'],
    [undefined as never, 'REQUIRED'],
    [[{ x: '0 m', y: '0 m' }, { x: '1 m' }] as never, 'REQUIRED'],
    [
      { unit: 'm', points: Array.from({ length: 10_001 }, (_, i): [number, number] => [i, i * i]) },
      'TOO_MANY',
    ],
  ] as const)('%j', (outline, code) => {
    expectFault(() => outlineArea({ outline }), code);
  });

  test('how many points are needed is said, with arcs and without', () => {
    const words = (outline: OutlineInput) => faultsOf(() => outlineArea({ outline }))[0]?.message;
    expect(words(feet([0, 0], [1, 0]))).toBe('an outline needs three points or more, got 2');
    const arcs = [{ edge: 0, bulgeMiddleOrdinate: 1 }];
    expect(words({ unit: 'ft', points: [[0, 0]], arcs })).toBe(
      'an outline needs two points joined by arcs or more, got 1',
    );
  });

  test('the two edges that cross are named', () => {
    const [issue] = faultsOf(() =>
      outlineArea({ outline: feet([0, 0], [5, 0], [5, 5], [2, 5], [2, -1], [0, 4]) }),
    );
    expect(issue?.params).toEqual({ first: 0, second: 3 });
    expect(issue?.message).toBe(
      'edge 0 and edge 3 cross or touch. List the points in order around the outline. Edge 0 runs from the first point to the second',
    );
  });

  test('points and holes count from 0, as in the result', () => {
    const says = (outline: OutlineInput) => faultsOf(() => outlineArea({ outline }))[0]?.message;
    expect(says(feet([0, 0], [0, 0], [5, 5], [0, 5]))).toBe(
      'points 0 and 1 are the same point (the first point is point 0). Remove one of them',
    );
    const holes = [feet([20, 0], [21, 0], [21, 1])];
    const points = [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
    ] as const;
    expect(says({ unit: 'ft', points, holes })).toBe(
      'hole 0 is outside the outline (the first hole is hole 0). Check its points',
    );
  });

  test('near misses are no crossing: exact arithmetic decides', () => {
    const tiny = '0.00000000000000000001';
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, tiny],
        [0, 4],
      ],
    } as const;
    expect(outlineArea({ outline }).area.to('m2').toFixed(6)).toBe('8.000000');
    const touching = {
      unit: 'm',
      points: [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
    } as const;
    expectFault(() => outlineArea({ outline: touching }), 'SELF_INTERSECTION');
  });
});

test('contains tells inside, outside and on the edge', () => {
  const at = (x: number | string, y: number | string) => ({
    x: readNumber(x),
    y: readNumber(y),
  });
  const ell = [at(0, 0), at(9, 0), at(9, 4), at(5, 4), at(5, 7), at(0, 7)];
  for (const [x, y, inside] of [
    [1, 1, true],
    [6, 5, false],
    [5, 5, true],
    [9, 2, true],
    [0, 0, true],
    [-1, 0, false],
    [10, 4, false],
    [3, 4, true],
    [-1, 4, false],
    [7, 4, true],
    ['7', '4.00000000000000000000001', false],
    [4, 7.1, false],
  ] as const) {
    expect(contains(ell, at(x, y)), `${x} ${y}`).toBe(inside);
    expect(contains([...ell].reverse(), at(x, y)), `${x} ${y} reversed`).toBe(inside);
  }
});
