import { describe, expect, test } from 'vitest';
import {
  checkSlope,
  combineSlopes,
  planeThrough,
  slopesAlong,
  valleyLine,
  warpedSurface,
} from 'settline/grading';
import { length } from 'settline/units';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';

const point = (x: number | string, y: number | string, z: number | string) => ({
  x: { value: x, unit: 'm' } as const,
  y: { value: y, unit: 'm' } as const,
  z: { value: z, unit: 'm' } as const,
});

describe('planeThrough', () => {
  const APRON = [point(0, 0, 30), point(10, 0, 29.7), point(0, 5, 29.8)];

  test('three points by pencil: 3 % and 4 % make 5 %', () => {
    const plane = planeThrough({ points: APRON });
    expect(plane.gradeX.to('percent').toString()).toBe('-3');
    expect(plane.gradeY.to('percent').toString()).toBe('-4');
    expect(plane.slope.to('percent').toString()).toBe('5');
    expect(plane.isLevel).toBe(false);
    expect(plane.isExact).toBe(true);
    expect(plane.rms.isZero()).toBe(true);
    // atan(3 / 4) east of north
    expect(plane.downhillAzimuth?.toNumber('deg')).toBeCloseTo(36.86989764584402, 12);
    expect(plane.elevationAt({ x: '10 m', y: '5 m' }).toNumber('m')).toBe(29.5);
  });

  test('the eight main directions are exact', () => {
    const directions = [
      [0, -1, 0],
      [-1, -1, 45],
      [-1, 0, 90],
      [-1, 1, 135],
      [0, 1, 180],
      [1, 1, 225],
      [1, 0, 270],
      [1, -1, 315],
    ] as const;
    for (const [gx, gy, azimuth] of directions) {
      const plane = planeThrough({ points: [point(0, 0, 0), point(1, 0, gx), point(0, 1, gy)] });
      expect(plane.downhillAzimuth?.to('deg').toString(), `${gx}, ${gy}`).toBe(`${azimuth}`);
    }
  });

  test('a level plane has no way down', () => {
    const plane = planeThrough({ points: [point(0, 0, 2), point(5, 0, 2), point(0, 5, 2)] });
    expect(plane.downhillAzimuth).toBeNull();
    expect(plane.isLevel).toBe(true);
    expect(plane.slope.isZero()).toBe(true);
  });

  test('four corners of a twisted square: the residuals are a quarter of the twist', () => {
    const plane = planeThrough({
      points: [
        { ...point(0, 0, 0), id: 'A' },
        { ...point(1, 0, 0), id: 'B' },
        { ...point(1, 1, 0.04), id: 'C' },
        { ...point(0, 1, 0), id: 'D' },
      ],
    });
    expect(plane.residuals.map(({ id, residual }) => [id, residual.toNumber('mm')])).toEqual([
      ['A', 10],
      ['B', -10],
      ['C', 10],
      ['D', -10],
    ]);
    expect(plane.worst.id).toBe('A');
    expect(planeThrough({ points: APRON }).worst.id).toBeNull();
    expect(plane.rms.toNumber('mm')).toBe(10);
    expect(plane.isExact).toBe(false);
    expect(plane.point.x.toNumber('m')).toBe(0.5);
    expect(plane.point.z.toNumber('mm')).toBe(10);
  });

  test('fixed levels are kept, the others give way', () => {
    const twisted = [
      { ...point(0, 0, 0), fixed: true },
      { ...point(1, 0, 0), fixed: true },
      point(1, 1, 0.04),
      point(0, 1, 0),
    ];
    const plane = planeThrough({ points: twisted });
    expect(plane.residuals.map(({ residual }) => residual.toNumber('mm'))).toEqual([0, 0, 20, -20]);
    expect(plane.gradeY.toNumber('percent')).toBe(2);
    const held = planeThrough({
      points: twisted.map((one, k) => (k === 2 ? { ...one, fixed: true } : one)),
    });
    expect(held.residuals.map(({ residual }) => residual.toNumber('mm'))).toEqual([0, 0, 0, -40]);
  });

  test('outside its points the plane is carried on, and says so', () => {
    const plane = planeThrough({ points: APRON });
    const at = (x: string, y: string) => plane.at({ x, y }).extrapolated;
    expect(at('1 m', '1 m')).toBe(false);
    // corners and sides belong to it
    expect([at('0 m', '0 m'), at('5 m', '0 m'), at('5 m', '2.5 m')]).toEqual([false, false, false]);
    expect([at('5.001 m', '2.5 m'), at('-0.001 m', '0 m'), at('0 m', '5.1 m')]).toEqual([
      true,
      true,
      true,
    ]);
  });

  test('large coordinates and thirds lose nothing', () => {
    const [east, north] = ['500000', '4500000/7'].map((digits) => length(digits, 'm'));
    const plane = planeThrough({
      points: APRON.map(({ x, y, z }) => ({
        x: length(x.value, x.unit).plus(east ?? length('0 m')),
        y: length(y.value, y.unit).plus(north ?? length('0 m')),
        z,
      })),
    });
    expect(plane.gradeX.to('percent').toString()).toBe('-3');
    expect(plane.isExact).toBe(true);
  });

  testRefusals(planeThrough, { points: APRON }, [
    ['points', undefined, 'REQUIRED'],
    ['points', APRON.slice(0, 2), 'TOO_FEW'],
    ['points', Array.from({ length: 1001 }, () => APRON[0]), 'TOO_MANY'],
    ['points.0.z', undefined, 'REQUIRED'],
    ['points.0.x', '7', 'UNIT_MISSING'],
    ['points.0.id', '', 'EMPTY'],
    ['points.0.fixed', 'yes', 'WRONG_TYPE'],
    ['points', [point(0, 0, 0), point(1, 1, 1), point(3, 3, 3)], 'POINTS_COLLINEAR'],
    [
      'points',
      [point(0, 0, 0), point(1, 0, 0), point(2, 0, 0)].map((one) => ({ ...one, fixed: true })),
      'POINTS_COLLINEAR',
    ],
    ['points', [...APRON, point(9, 9, 9)].map((one) => ({ ...one, fixed: true })), 'TOO_MANY'],
  ]);

  test('a place that is asked for is read like any other', () => {
    const plane = planeThrough({ points: APRON });
    expectFault(() => plane.elevationAt({ x: '1 m' } as never), 'REQUIRED');
  });
});

describe('warpedSurface', () => {
  const DRIVE = {
    length: '10 m',
    width: '4 m',
    corners: { startRight: '30 m', endRight: '29.8 m', startLeft: '29.9 m', endLeft: '29.9 m' },
  } as const;
  const surface = warpedSurface(DRIVE);

  test('its corners, edges and middle', () => {
    expect(surface.twist.toNumber('mm')).toBe(200);
    expect(surface.isPlane).toBe(false);
    expect(surface.centre.toNumber('m')).toBe(29.9);
    expect(surface.grades.right.toNumber('percent')).toBe(-2);
    expect(surface.grades.left.toNumber('percent')).toBe(0);
    expect(surface.grades.start.toNumber('percent')).toBe(-2.5);
    expect(surface.grades.end.toNumber('percent')).toBe(2.5);
    expect(surface.lowCorners).toEqual(['endRight']);
    const at = (station: string, offset: string) =>
      surface.elevationAt({ station, offset }).toNumber('m');
    expect([at('0 m', '0 m'), at('10 m', '0 m'), at('10 m', '4 m'), at('0 m', '4 m')]).toEqual([
      30, 29.8, 29.9, 29.9,
    ]);
    expect(at('5 m', '2 m')).toBe(29.9);
  });

  test('slopes there, and their extremes', () => {
    const middle = surface.at({ station: '5 m', offset: '2 m' });
    expect(middle.longSlope.toNumber('percent')).toBe(-1);
    expect(middle.crossSlope.toNumber('percent')).toBe(0);
    expect(middle.steepest.toNumber('percent')).toBe(1);
    // the cross slope turns: a line across lies level, and the long slope runs out at the left
    expect([surface.longTurns, surface.crossTurns]).toEqual([false, true]);
    expect(surface.flattest.isZero()).toBe(true);
    expect(surface.steepest.toNumber('percent')).toBeCloseTo(Math.hypot(2, 2.5), 13);
    const steep = warpedSurface({ ...DRIVE, corners: { ...DRIVE.corners, endLeft: '29.6 m' } });
    expect(steep.flattest.toNumber('percent')).toBeCloseTo(Math.hypot(2, 2.5), 13);
  });

  test('outside its corners it is carried on, and says so', () => {
    const outside = (station: string, offset: string) =>
      surface.at({ station, offset }).extrapolated;
    expect([outside('0 m', '0 m'), outside('10 m', '4 m')]).toEqual([false, false]);
    expect([outside('-1 mm', '0 m'), outside('0 m', '4.001 m')]).toEqual([true, true]);
  });

  test('how a paver rocks: its share of the twist', () => {
    const rock = warpedSurface({
      ...DRIVE,
      paver: { length: '200 mm', width: '100 mm' },
    }).paverRock;
    // 200 mm x 0.2 / 10 x 0.1 / 4
    expect(rock?.toNumber('mm')).toBe(0.1);
    expect(surface.paverRock).toBeNull();
  });

  test('corners of one height', () => {
    const level = warpedSurface({
      ...DRIVE,
      corners: { startRight: '1 m', endRight: '1 m', startLeft: '2 m', endLeft: '2 m' },
    });
    expect(level.lowCorners).toEqual(['startRight', 'endRight']);
    expect(level.isPlane).toBe(true);
  });

  testRefusals(warpedSurface, { ...DRIVE, paver: { length: '200 mm', width: '100 mm' } }, [
    ['length', '0 m', 'NOT_POSITIVE'],
    ['width', undefined, 'REQUIRED'],
    ['corners', undefined, 'REQUIRED'],
    ['corners.endLeft', undefined, 'REQUIRED'],
    ['corners.startLeft', '11 km', 'OUT_OF_RANGE'],
    ['paver.width', '0 mm', 'NOT_POSITIVE'],
  ]);
  test('a place that is asked for is read like any other', () => {
    expectFault(() => surface.at({ station: '1' } as never), 'UNIT_MISSING');
  });
});

describe('valleyLine', () => {
  const EAST = { gradeX: '2%', gradeY: '-1%', point: { x: '5 m', y: '0 m', z: '30.1 m' } } as const;
  const WEST = {
    gradeX: '-2%',
    gradeY: '-1%',
    point: { x: '-5 m', y: '0 m', z: '30.1 m' },
  } as const;

  test('two planes that fall to one line make a valley', () => {
    const valley = valleyLine({ first: EAST, second: WEST });
    expect([valley.kind, valley.shape]).toEqual(['valley', 'sag']);
    expect(valley.slope.toNumber('percent')).toBe(1);
    // the planes fall to -y, and so does the line
    expect(valley.downhillAzimuth).not.toBeNull();
    expect(valley.downhillAzimuth?.toNumber('deg')).toBe(0);
    expect(valley.point.x.isZero()).toBe(true);
    expect(valley.point.z.toNumber('m')).toBe(30);
    expect(valley.cautions.map(({ id }) => id)).toEqual(['drainage']);
  });

  test('seen from the other side, the same planes make a ridge', () => {
    const ridge = valleyLine({ first: EAST, second: WEST, inFirst: { x: '-1 m', y: '0 m' } });
    expect([ridge.kind, ridge.shape]).toEqual(['ridge', 'crest']);
  });

  test('planes that fall one way make a break', () => {
    const flat = { ...WEST, gradeX: '1%', point: { x: '0 m', y: '0 m', z: '30 m' } };
    expect(valleyLine({ first: EAST, second: flat }).kind).toBe('break');
  });

  test('stakes where the line meets the edges: in sides, at corners, along a side', () => {
    const stakes = (path: readonly (readonly [string, string])[], closed = true) =>
      valleyLine({
        first: EAST,
        second: WEST,
        path: path.map(([x, y]) => ({ x, y })),
        closed,
      }).stakes.map(({ edge, station, x, y, z }) => [
        edge,
        station.toNumber('m'),
        x.toNumber('m'),
        y.toNumber('m'),
        z.toNumber('m'),
      ]);
    const square = [
      ['-2 m', '0 m'],
      ['2 m', '0 m'],
      ['2 m', '3 m'],
      ['-2 m', '3 m'],
    ] as const;
    expect(stakes(square)).toEqual([
      [0, 2, 0, 0, 30],
      [2, 2, 0, 3, 29.97],
    ]);
    // an open path does not run back: a corner on the line counts once
    expect(
      stakes(
        [
          ['-1 m', '0 m'],
          ['0 m', '0 m'],
          ['1 m', '1 m'],
        ],
        false,
      ),
    ).toEqual([[1, 0, 0, 0, 30]]);
    expect(
      stakes(
        [
          ['0 m', '0 m'],
          ['0 m', '2 m'],
        ],
        false,
      ),
    ).toEqual([
      [0, 0, 0, 0, 30],
      [0, 2, 0, 2, 29.98],
    ]);
    expect(
      stakes(
        [
          ['1 m', '0 m'],
          ['2 m', '2 m'],
        ],
        false,
      ),
    ).toEqual([]);
  });

  test('a level valley has no way down', () => {
    const [first, second] = [EAST, WEST].map((plane) => ({ ...plane, gradeY: '0%' }));
    const valley = valleyLine({ first: first ?? EAST, second: second ?? WEST });
    expect(valley.slope.isZero()).toBe(true);
    expect(valley.downhillAzimuth).toBeNull();
  });

  test('takes what planeThrough gives', () => {
    const first = planeThrough({
      points: [point(0, 0, 30), point(5, 0, 30.1), point(0, 5, 29.95)],
    });
    expect(valleyLine({ first, second: WEST }).slope.toNumber('percent')).toBe(1);
  });

  test('a point of the edge twice is told without a number', () => {
    const twice = [0, 0].map(() => ({ x: '0 m', y: '0 m' }));
    const { message } = expectFault(
      () => valleyLine({ first: EAST, second: WEST, path: twice }),
      'POINTS_COINCIDE',
    );
    expect(message).toBe('is the same point as the one before it. Remove one of them');
  });

  testRefusals(
    valleyLine,
    {
      first: EAST,
      second: WEST,
      path: [
        { x: '0 m', y: '0 m' },
        { x: '1 m', y: '0 m' },
        { x: '1 m', y: '1 m' },
      ],
    },
    [
      ['first', undefined, 'REQUIRED'],
      ['first.gradeX', undefined, 'REQUIRED'],
      ['first.gradeX', '-2%', 'PLANES_PARALLEL', 'second'],
      ['second.point', undefined, 'REQUIRED'],
      ['inFirst', { x: '0 m', y: '3 m' }, 'SIDE_UNKNOWN'],
      ['path', [{ x: '0 m', y: '0 m' }], 'TOO_FEW'],
      ['path.1', { x: '0 m', y: '0 m' }, 'POINTS_COINCIDE', 'path[1]'],
      ['closed', 1, 'WRONG_TYPE'],
    ],
  );
});

describe('slopes along and across', () => {
  test('a plane met from four sides', () => {
    const met = (travel: string) => {
      const { longSlope, crossSlope } = slopesAlong({ gradeX: '-3%', gradeY: '1%', travel });
      return [longSlope.toNumber('percent'), crossSlope.toNumber('percent')];
    };
    expect(met('0 deg')).toEqual([1, 3]);
    expect(met('90 deg')).toEqual([-3, 1]);
    expect(met('180 deg')).toEqual([-1, -3]);
    expect(met('270 deg')).toEqual([3, -1]);
    expect(met('-90 deg')).toEqual([3, -1]);
  });

  test('half of a slope is exactly half, at 30 and 60 degrees whichever way round', () => {
    const along = (travel: string) => {
      const { longSlope, crossSlope } = slopesAlong({ gradeX: '0%', gradeY: '4%', travel });
      return [longSlope.to('percent').toString(), crossSlope.to('percent').toString()];
    };
    for (const travel of ['60 deg', '300 deg', '-60 deg', '420 deg'])
      expect(along(travel)[0]).toBe('2');
    for (const travel of ['120 deg', '240 deg']) expect(along(travel)[0]).toBe('-2');
    for (const travel of ['30 deg', '150 deg']) expect(along(travel)[1]).toBe('2');
    for (const travel of ['210 deg', '330 deg', '-30 deg']) expect(along(travel)[1]).toBe('-2');
    const root = Math.sqrt(12);
    for (const [travel, slope] of [
      ['30 deg', root],
      ['330 deg', root],
      ['150 deg', -root],
    ] as const) {
      expect(Number(along(travel)[0])).toBeCloseTo(slope, 14);
    }
    expect(Number(along('15 deg')[0])).toBeCloseTo(4 * Math.cos(Math.PI / 12), 14);
    expect(Number(along('75 deg')[1])).toBeCloseTo(4 * Math.sin((75 * Math.PI) / 180), 14);
  });

  test('a slope on its limit passes, and diagonals of a plane that falls both ways are level', () => {
    const { longSlope } = slopesAlong({ gradeX: '0%', gradeY: '4%', travel: '60 deg' });
    expect(checkSlope({ fall: longSlope, limits: { minimum: '2%' } }).verdict).toBe('pass');
    expect(checkSlope({ fall: longSlope, limits: { maximum: '2%' } }).verdict).toBe('pass');
    const even = (travel: string) => slopesAlong({ gradeX: '1%', gradeY: '1%', travel });
    expect(even('45 deg').crossSlope.isZero()).toBe(true);
    expect(even('225 deg').crossSlope.isZero()).toBe(true);
    expect(even('135 deg').longSlope.isZero()).toBe(true);
    expect(even('-45 deg').longSlope.isZero()).toBe(true);
  });

  test('combined again they are the steepest slope', () => {
    const walk = combineSlopes({ longSlope: '-3%', crossSlope: '4%' });
    expect(walk.steepest.to('percent').toString()).toBe('5');
    // falls ahead and to the right: 53.13 degrees right of travel
    expect(walk.downhillFromTravel?.toNumber('deg')).toBeCloseTo(53.13010235415598, 12);
    expect(walk.downhillAzimuth).toBeNull();
    const north = combineSlopes({ longSlope: '-3%', crossSlope: '0%', travel: '350 deg' });
    expect(north.downhillAzimuth?.toNumber('deg')).toBe(350);
    const over = combineSlopes({ longSlope: '0%', crossSlope: '1%', travel: '350 deg' });
    expect(over.downhillAzimuth?.toNumber('deg')).toBe(80);
    const under = combineSlopes({ longSlope: '0%', crossSlope: '1%', travel: '-100 deg' });
    expect(under.downhillAzimuth?.toNumber('deg')).toBe(350);
  });

  test('level both ways', () => {
    const level = combineSlopes({ longSlope: '0%', crossSlope: '0%', travel: '10 deg' });
    expect(level.isLevel).toBe(true);
    expect(level.downhillFromTravel).toBeNull();
    expect(level.downhillAzimuth).toBeNull();
  });

  testRefusals(combineSlopes, { longSlope: '1%', crossSlope: '2%' }, [
    ['longSlope', undefined, 'REQUIRED'],
    ['crossSlope', '1001%', 'OUT_OF_RANGE'],
    ['travel', '3601 deg', 'OUT_OF_RANGE'],
  ]);
  testRefusals(slopesAlong, { gradeX: '1%', gradeY: '2%', travel: '0 deg' }, [
    ['gradeX', undefined, 'REQUIRED'],
    ['gradeY', '1 m', 'UNIT_UNKNOWN'],
    ['travel', undefined, 'REQUIRED'],
  ]);
});
