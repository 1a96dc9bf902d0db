import { describe, expect, test } from 'vitest';
import { siteVolumes } from 'settline/volumes';
import { planeThrough } from 'settline/grading';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

const YARD = {
  unit: 'ft',
  points: [
    [0, 0, 10],
    [27, 0, 10],
    [27, 27, 10],
    [0, 27, 10],
  ],
} as const;
const LEVEL = { z0: '9 ft', gradeX: '0%', gradeY: '0%' };

describe('cut and fill of a site', () => {
  test('27 ft by 27 ft by 1 ft is exactly 27 yards, in the bank', () => {
    const dig = siteVolumes({ existing: YARD, design: LEVEL });
    expect(dig.cut.state).toBe('bank');
    expect(dig.fill.state).toBe('compacted');
    expect(dig.cut.to('yd3').toString()).toBe('27');
    expect(dig.fill.to('yd3').toString()).toBe('0');
    expect(dig.cutArea.to('ft2').toString()).toBe('729');
    expect(dig.meanDepth.to('ft').toString()).toBe('1');
    expect(dig.deepestCut?.depth.to('ft').toString()).toBe('1');
    expect([dig.deepestFill, dig.isCovered]).toEqual([null, true]);
    expect(dig.cautions.map(({ id }) => id)).toEqual(['excavation', 'utilities']);
  });

  test('far from its datum a site keeps every digit', () => {
    const points = YARD.points.map(([x, y, z]) => [x + 500_000, y + 4_500_000, z] as const);
    // 2 % along x and 1 % along y from the first corner, which is to be dug by 1 ft
    const z0 = { value: '-54991', unit: 'ft' } as const;
    const dig = siteVolumes({
      existing: { unit: 'ft', points },
      design: { z0, gradeX: '2%', gradeY: '1%' },
    });
    // mean rise 0.27 + 0.135 over the middle
    expect(dig.net.to('ft3').toString()).toBe(`${729 * (1 - 0.405)}`);
    expect(dig.deepestCut?.x.to('ft').toString()).toBe('500000');
    expect(dig.deepestCut?.y.to('ft').toString()).toBe('4500000');
  });

  test('metres, lengths one by one, a plane by a point', () => {
    const existing = YARD.points.map(([x, y, z]) => ({
      x: `${x} m`,
      y: { value: y, unit: 'm' } as const,
      z: `${z} m`,
    }));
    const level = (x: string, y: string) => ({ x, y, z: '9.5 m' });
    const design = planeThrough({
      points: [level('0 m', '0 m'), level('9 m', '0 m'), level('0 m', '9 m')],
    });
    const dig = siteVolumes({ existing, design });
    expect(dig.net.to('m3').toString()).toBe('364.5');
  });

  test('a tilted site balances about its middle', () => {
    const existing = {
      unit: 'm',
      points: [
        [0, 0, 1],
        [8, 0, -1],
        [8, 3, -1],
        [0, 3, 1],
      ],
    } as const;
    const dig = siteVolumes({ existing, design: { z0: '0 m', gradeX: '0%', gradeY: '0%' } });
    expect([dig.cut, dig.fill].map((v) => v.to('m3').toString())).toEqual(['6', '6']);
    expect(dig.net.isZero()).toBe(true);
    expect(dig.deepestFill?.x.to('m').toString()).toBe('8');
    expect(dig.working.map(formulaOf)).toEqual(['N = C - F', 'd = N / A']);
  });

  test('against spot heights and against four warped corners', () => {
    const against = siteVolumes({
      existing: YARD,
      design: { unit: 'ft', points: YARD.points.map(([x, y, z]) => [x, y, z - 2] as const) },
    });
    expect(against.cut.to('yd3').toString()).toBe('54');
    const warped = siteVolumes({
      existing: YARD,
      design: {
        unit: 'ft',
        corners: [
          [0, 0, 10],
          [27, 0, 9],
          [27, 27, 10],
          [0, 27, 9],
        ],
      },
    });
    // mean of the corners: half a foot everywhere between 0 and 1
    expect(warped.cut.to('yd3').toString()).toBe('13.5');
    expect(warped.fill.to('yd3').toNumber()).toBe(0);
  });

  test('an outline with an arc and an island, partly beyond the heights', () => {
    const half = siteVolumes({
      existing: YARD,
      design: LEVEL,
      outline: {
        unit: 'ft',
        points: [
          [4, 4],
          [14, 4],
        ],
        arcs: [
          { edge: 0, bulgeMiddleOrdinate: '2 ft' },
          { edge: 1, bulgeMiddleOrdinate: '5 ft' },
        ],
      },
    });
    expect(half.isCovered).toBe(true);
    // half a disc of 5 ft, and a segment of 10 ft by 2 ft
    const radius = 100 / 16 + 1;
    const turn = 2 * Math.asin(5 / radius);
    const segment = (radius ** 2 * (turn - Math.sin(turn))) / 2;
    expect(half.cut.toNumber('ft3') / ((Math.PI * 25) / 2 + segment)).toBeCloseTo(1, 3);
    const island = siteVolumes({
      existing: YARD,
      design: LEVEL,
      outline: {
        unit: 'ft',
        points: [
          [18, 0],
          [36, 0],
          [36, 27],
          [18, 27],
        ],
        holes: [
          [
            [20, 2],
            [23, 2],
            [23, 5],
            [20, 5],
          ],
        ],
      },
    });
    expect(island.cut.to('ft3').toString()).toBe('234');
    expect(island.isCovered).toBe(false);
    expect(island.uncoveredArea.to('ft2').toString()).toBe('243');
  });
});

describe('refusals', () => {
  const valid = { existing: YARD, design: LEVEL };
  testRefusals(siteVolumes, valid, [
    ['existing', undefined, 'REQUIRED'],
    ['design', { ...LEVEL, corners: YARD.points }, 'CONFLICTING_FIELDS'],
    ['design', { ...YARD, corners: YARD.points }, 'CONFLICTING_FIELDS'],
    ['existing', { points: YARD.points }, 'UNIT_MISSING', 'existing.unit'],
    ['existing', { ...YARD, unit: 'rod' }, 'UNIT_UNKNOWN', 'existing.points[0][0]'],
    ['existing.points', [], 'EMPTY_LIST'],
    ['existing.points', [[0, 0]], 'WRONG_TYPE', 'existing.points[0]'],
    ['existing.points', [[0, 0, 'deep']], 'NOT_A_NUMBER', 'existing.points[0][2]'],
    ['existing.points', [[0, 0, Number.NaN]], 'NOT_FINITE', 'existing.points[0][2]'],
    ['existing.points', [[0, 0, 99999]], 'OUT_OF_RANGE', 'existing.points[0][2]'],
    [
      'existing.points',
      [
        [0, 0, 1],
        [1, 0, 1],
      ],
      'TOO_FEW',
    ],
    [
      'existing.points',
      [
        [0, 0, 1],
        [1, 1, 1],
        [3, 3, 1],
      ],
      'POINTS_COLLINEAR',
    ],
    ['existing.points', [...YARD.points, [27, 0, 11]], 'TWO_HEIGHTS', 'existing.points[4]'],
    ['design', undefined, 'REQUIRED'],
    ['design', { z0: '1 m' }, 'REQUIRED', 'design.gradeX'],
    ['design', { gradeX: '0%', gradeY: '0%' }, 'REQUIRED', 'design.z0'],
    ['design.z0', 9, 'UNIT_MISSING'],
    ['design.gradeX', '3 ft', 'UNIT_UNKNOWN'],
    [
      'design',
      { ...LEVEL, point: { x: '0 m', y: '0 m', z: '0 m' } },
      'CONFLICTING_FIELDS',
      'design',
    ],
    ['design', { unit: 'ft', corners: YARD.points.slice(1) }, 'COUNT_MISMATCH', 'design.corners'],
    [
      'design',
      { unit: 'ft', corners: [0, 2, 1, 3].map((k) => YARD.points[k]) },
      'CORNERS_NOT_CONVEX',
      'design.corners',
    ],
    [
      'outline',
      {
        unit: 'ft',
        points: [
          [50, 0],
          [60, 0],
          [60, 9],
        ],
      },
      'SURFACES_APART',
    ],
    [
      'outline',
      {
        unit: 'ft',
        points: [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 9],
        ],
      },
      'SELF_INTERSECTION',
      'outline.points',
    ],
  ]);

  test('too many heights for the exact border name the bulk function', () => {
    const points = Array.from({ length: 20_001 }, (_, k) => [k, 0, 0] as const);
    expect(() => siteVolumes({ existing: { unit: 'm', points }, design: LEVEL })).toThrow(
      /surfaceVolumes/,
    );
  });
});
