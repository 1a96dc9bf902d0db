import { describe, expect, test } from 'vitest';
import { outlineArea } from 'settline/outline';
import { siteVolumes } from 'settline/volumes';

const LEVEL = { z0: '0 m', gradeX: '0%', gradeY: '0%' };

/** Spot heights of a plane over a square about the origin. */
const planeOver = (half: number, height: (x: number, y: number) => number) => ({
  unit: 'm' as const,
  points: [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ].map(([x = 0, y = 0]) => [x, y, Number(height(x, y).toFixed(9))] as const),
});

/** A full circle about the origin: two half circles. */
const circle = (radius: number) => ({
  unit: 'm' as const,
  points: [
    [-radius, 0],
    [radius, 0],
  ] as const,
  arcs: [0, 1].map((edge) => ({ edge, bulgeMiddleOrdinate: `${radius} m` })),
});

/** The upper or lower half of it. */
const halfCircle = (radius: number, side: 'upper' | 'lower') => ({
  unit: 'm' as const,
  points: (side === 'lower'
    ? [
        [-radius, 0],
        [radius, 0],
      ]
    : [
        [radius, 0],
        [-radius, 0],
      ]) as [number, number][],
  arcs: [{ edge: 0, bulgeMiddleOrdinate: `${radius} m` }],
});

const inM3 = (volume: { toNumber(unit: 'm3'): number }): number => volume.toNumber('m3');

describe('under arcs of the outline', () => {
  test('a plane over a circle: area times the depth in the middle, to 1e-12', () => {
    const existing = planeOver(6, (x, y) => 1.5 + 0.03 * x - 0.02 * y);
    const dig = siteVolumes({ existing, design: LEVEL, outline: circle(5) });
    expect(inM3(dig.cut.volume) / (Math.PI * 25 * 1.5)).toBeCloseTo(1, 11);
    expect(Math.abs(dig.cutArea.toNumber('m2') / (Math.PI * 25) - 1)).toBeLessThan(1e-12);
    expect(dig.isCovered).toBe(true);
    expect(dig.diagonalDoubt.isZero()).toBe(true);
  });

  test('a plane over half a circle: its centre lies 4 r / 3 pi out', () => {
    const existing = planeOver(6, (_, y) => 1 + 0.1 * y);
    const area = (Math.PI * 25) / 2;
    const out = 20 / (3 * Math.PI);
    for (const side of ['upper', 'lower'] as const) {
      const dig = siteVolumes({ existing, design: LEVEL, outline: halfCircle(5, side) });
      const exact = area * (1 + (side === 'upper' ? 0.1 : -0.1) * out);
      expect(Math.abs(inM3(dig.cut.volume) / exact - 1)).toBeLessThan(1e-9);
    }
  });

  test('a plane that comes out of the ground in the middle of the circle', () => {
    // the wedge over half a circle: 2/3 r^3 times its grade
    const existing = planeOver(6, (x) => 0.1 * x);
    const dig = siteVolumes({ existing, design: LEVEL, outline: circle(5) });
    const wedge = ((2 / 3) * 125) / 10;
    expect(Math.abs(inM3(dig.cut.volume) / wedge - 1)).toBeLessThan(1e-9);
    expect(Math.abs(inM3(dig.fill.volume) / wedge - 1)).toBeLessThan(1e-9);
    expect(Math.abs(dig.cutArea.toNumber('m2') / (12.5 * Math.PI) - 1)).toBeLessThan(1e-9);
  });

  test('the ground breaks under the arc: a roof over a circle', () => {
    // 1 - |x| / 10 over a circle of 4: the mean of |x| is 4 r / 3 pi
    const existing = {
      unit: 'm' as const,
      points: [-5, 0, 5].flatMap((x) => [-5, 5].map((y) => [x, y, 1 - Math.abs(x) / 10] as const)),
    };
    const dig = siteVolumes({ existing, design: LEVEL, outline: circle(4) });
    const exact = Math.PI * 16 * (1 - (0.1 * 16) / (3 * Math.PI));
    expect(Math.abs(inM3(dig.cut.volume) / exact - 1)).toBeLessThan(1e-9);
  });

  test('arcs inward, arcs of a hole, feet: a full cut covers the area of the outline', () => {
    const outline = {
      unit: 'ft' as const,
      points: [
        [0, 0],
        [30, 0],
        [34, 20],
        [0, 24],
      ] as const,
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: '-3 ft' },
        { edge: 2, bulgeMiddleOrdinate: '5 ft' },
      ],
      holes: [
        {
          points: [
            [10, 10],
            [16, 10],
            [16, 15],
          ] as const,
          arcs: [
            { edge: 0, bulgeMiddleOrdinate: '0.8 ft' },
            { edge: 1, bulgeMiddleOrdinate: '-0.5 ft' },
          ],
        },
      ],
    };
    const existing = {
      unit: 'ft' as const,
      points: [-9, 40].flatMap((x) => [-9, 40].map((y) => [x, y, 101 + x / 50] as const)),
    };
    const design = { z0: '100 ft', gradeX: '2%', gradeY: '0%' };
    const dig = siteVolumes({ existing, design, outline });
    const { area } = outlineArea({ outline });
    expect(Math.abs(dig.cutArea.toNumber('ft2') / area.toNumber('ft2') - 1)).toBeLessThan(2e-12);
    expect(Math.abs(dig.cut.toNumber('ft3') / area.toNumber('ft2') - 1)).toBeLessThan(2e-12);
    expect(dig.uncoveredArea.isZero()).toBe(true);
  });

  test('a circle that touches the edge of what was measured is covered', () => {
    const dig = siteVolumes({ existing: planeOver(5, () => 1), design: LEVEL, outline: circle(5) });
    expect(dig.isCovered).toBe(true);
  });

  test('where no height reaches, the bows are not counted either', () => {
    const existing = {
      unit: 'm' as const,
      points: [0, 6].flatMap((x) => [-6, 6].map((y) => [x, y, 1] as const)),
    };
    const dig = siteVolumes({ existing, design: LEVEL, outline: circle(5) });
    expect(dig.cutArea.toNumber('m2') / (12.5 * Math.PI)).toBeCloseTo(1, 9);
    expect(dig.uncoveredArea.toNumber('m2') / (12.5 * Math.PI)).toBeCloseTo(1, 9);
  });

  test('a bumpy grid under an arc: as fine sampling tells', () => {
    const height = (column: number, row: number) => 2 + ((column * 7 + row * 5) % 4) / 5;
    const points = Array.from(
      { length: 49 },
      (_, k) => [(k % 7) - 3, Math.floor(k / 7) - 3] as const,
    );
    const existing = {
      unit: 'm' as const,
      points: points.map(([x, y]) => [x, y, height(x + 3, y + 3)] as const),
    };
    // the mean of both diagonals in each cell
    const meanAt = (x: number, y: number): number => {
      const [i, j] = [Math.floor(x) + 3, Math.floor(y) + 3];
      const [u, v] = [x - Math.floor(x), y - Math.floor(y)];
      const [a, b, c, d] = [height(i, j), height(i + 1, j), height(i + 1, j + 1), height(i, j + 1)];
      const one = v < u ? a + (b - a) * u + (c - b) * v : a + (c - d) * u + (d - a) * v;
      const far = c + (d - c) * (1 - u) + (b - c) * (1 - v);
      return (one + (u + v < 1 ? a + (b - a) * u + (d - a) * v : far)) / 2;
    };
    let sum = 0;
    const steps = 1200;
    for (let row = 0; row < steps; row += 1) {
      // midpoints across each chord of the circle, weighted by its length
      const y = ((row + 0.5) / steps) * 5 - 2.5;
      const reach = Math.sqrt(6.25 - y * y);
      let along = 0;
      for (let k = 0; k < 400; k += 1) along += meanAt(((k + 0.5) / 400) * 2 * reach - reach, y);
      sum += (along / 400) * 2 * reach * (5 / steps);
    }
    const dig = siteVolumes({ existing, design: LEVEL, outline: circle(2.5) });
    expect(Math.abs(inM3(dig.cut.volume) / sum - 1)).toBeLessThan(2e-5);
    expect(inM3(dig.diagonalDoubt)).toBeGreaterThan(0.1);
  });
});
