import { describe, expect, test } from 'vitest';
import { surfaceVolumes } from 'settline/geometry';

const LEVEL = { z0: 0, gradeX: 0, gradeY: 0 };
type Point = readonly [number, number, number];

const floats = (points: readonly Point[]): Float64Array => Float64Array.from(points.flat());

/** Numbers from 0 to 1 that are the same in each run. */
function makeRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const rest = [...list];
  for (let k = rest.length; k > 0; k -= 1) {
    const other = Math.floor(random() * k);
    const [one] = rest.splice(other, 1);
    if (one !== undefined) rest.push(one);
  }
  return rest;
}

/** Cut of a triangle of depths, worked out by cutting it where the depth is zero. */
function cutOf(corners: readonly Point[]): number {
  const above: Point[] = [];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length] ?? a;
    if (a[2] >= 0) above.push(a);
    if (a[2] * b[2] < 0) {
      const t = a[2] / (a[2] - b[2]);
      above.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), 0]);
    }
  });
  let sum = 0;
  for (let k = 1; k + 1 < above.length; k += 1) {
    const [a, b, c] = [above[0], above[k], above[k + 1]] as [Point, Point, Point];
    const double = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    sum += (Math.abs(double) / 2) * ((a[2] + b[2] + c[2]) / 3);
  }
  return sum;
}

/** Cut of a grid along each diagonal of each cell: their mean, and half of what they differ by. */
function bothDiagonals(columns: number, rows: number, grid: readonly Point[]) {
  let [mean, doubt] = [0, 0];
  for (let row = 0; row + 1 < rows; row += 1) {
    for (let column = 0; column + 1 < columns; column += 1) {
      const k = row * columns + column;
      const [a, b, c, d] = [grid[k], grid[k + 1], grid[k + columns + 1], grid[k + columns]] as [
        Point,
        Point,
        Point,
        Point,
      ];
      const one = cutOf([a, b, c]) + cutOf([a, c, d]);
      const other = cutOf([a, b, d]) + cutOf([b, c, d]);
      mean += (one + other) / 2;
      doubt += Math.abs(one - other) / 2;
    }
  }
  return { mean, doubt };
}

function gridOf(columns: number, rows: number, height: (x: number, y: number) => number): Point[] {
  return Array.from({ length: columns * rows }, (_, k) => {
    const [x, y] = [(k % columns) * 1.1, Math.floor(k / columns) * 0.7];
    return [x, y, height(x, y)];
  });
}

const BUMPY = gridOf(4, 4, (x, y) => 1 + Math.sin(3 * x) + 0.7 * Math.cos(4 * y) * Math.sin(x));
const DEEP = BUMPY.map(([x, y, z]): Point => [x, y, z + 2]);

describe('four points on one circle are joined along both diagonals', () => {
  test('a single cell: two triangles of each diagonal, by pencil', () => {
    // one corner of four is 1 high: 1/3 along one diagonal, 1/6 along the other
    const existing = Float64Array.of(0, 0, 1, 1, 0, 0, 1, 1, 0, 0, 1, 0);
    const cell = surfaceVolumes({ existing, design: LEVEL });
    expect(cell.cut).toBeCloseTo(0.25, 14);
    expect(cell.diagonalDoubt).toBeCloseTo(1 / 12, 14);
    expect(cell.area).toBe(1);
  });

  test.each([
    ['all cut', DEEP],
    ['cut and fill', BUMPY.map(([x, y, z]): Point => [x, y, z - 1])],
  ])('a grid in any order: %s', (_, grid) => {
    const { mean, doubt } = bothDiagonals(4, 4, grid);
    const random = makeRandom(11);
    for (let run = 0; run < 40; run += 1) {
      const found = surfaceVolumes({ existing: floats(shuffled(grid, random)), design: LEVEL });
      expect(found.cut).toBeCloseTo(mean, 12);
      expect(found.diagonalDoubt).toBeGreaterThan(0.01);
      // of cut and fill the one that differs more counts
      expect(found.diagonalDoubt).toBeGreaterThan(doubt - 1e-12);
    }
    expect(surfaceVolumes({ existing: floats(DEEP), design: LEVEL }).diagonalDoubt).toBeCloseTo(
      bothDiagonals(4, 4, DEEP).doubt,
      12,
    );
  });

  test('a grid turned by a quarter, mirrored, turned by 3, 4, 5, and far away', () => {
    const { mean } = bothDiagonals(4, 4, DEEP);
    const moves: ((x: number, y: number) => readonly [number, number])[] = [
      (x, y) => [-y, x],
      (x, y) => [-x, y],
      (x, y) => [0.6 * x - 0.8 * y, 0.8 * x + 0.6 * y],
      (x, y) => [x + 500_000, y + 4_500_000],
      (x, y) => [500_000 + 0.6 * x - 0.8 * y, 4_500_000 + 0.8 * x + 0.6 * y],
    ];
    const random = makeRandom(5);
    for (const [index, move] of moves.entries()) {
      for (let run = 0; run < 20; run += 1) {
        const moved = shuffled(DEEP, random).map(([x, y, z]): Point => [...move(x, y), z]);
        const found = surfaceVolumes({ existing: floats(moved), design: LEVEL });
        expect(Math.abs(found.cut / mean - 1)).toBeLessThan(index < 3 ? 1e-12 : 2e-9);
      }
    }
  });

  test('inside an outline that cuts the cells', () => {
    const outline = Float64Array.of(0.3, 0.2, 3, 0.5, 2.1, 1.9, 0.5, 1.7);
    const random = makeRandom(3);
    const first = surfaceVolumes({ existing: floats(DEEP), design: LEVEL, outline });
    expect(first.diagonalDoubt).toBeGreaterThan(0);
    for (let run = 0; run < 40; run += 1) {
      const existing = floats(shuffled(DEEP, random));
      const found = surfaceVolumes({ existing, design: LEVEL, outline });
      expect(found.cut).toBeCloseTo(first.cut, 12);
      expect(found.diagonalDoubt).toBeCloseTo(first.diagonalDoubt, 12);
      expect(found.deepestCut?.depth).toBeCloseTo(first.deepestCut?.depth ?? 0, 12);
    }
  });

  test('against another grid, in any order of both', () => {
    const design = gridOf(3, 5, (x, y) => 0.4 * Math.sin(5 * x * y) - 0.3);
    const random = makeRandom(8);
    const first = surfaceVolumes({ existing: floats(DEEP), design: floats(design) });
    expect(first.diagonalDoubt).toBeGreaterThan(0.01);
    for (let run = 0; run < 20; run += 1) {
      const found = surfaceVolumes({
        existing: floats(shuffled(DEEP, random)),
        design: floats(shuffled(design, random)),
      });
      expect(found.net).toBeCloseTo(first.net, 12);
      expect(found.diagonalDoubt).toBeCloseTo(first.diagonalDoubt, 12);
    }
  });

  test('two surfaces over one cell: the mean of four, by brute force', () => {
    const corners = (heights: readonly number[]): Point[] =>
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ].map(([x = 0, y = 0], k): Point => [x, y, heights[k] ?? 0]);
    const [upper, lower] = [corners([0, 1, -1, 2]), corners([1, 0, 0.5, 0.4])];
    /** Height on a cell joined from corner 0 to 2, or from 1 to 3. */
    const on = (cell: readonly Point[], slants: boolean, u: number, v: number): number => {
      const [a = 0, b = 0, c = 0, d = 0] = cell.map(([, , z]) => z);
      if (slants) return v < u ? a + (b - a) * u + (c - b) * v : a + (c - d) * u + (d - a) * v;
      return u + v < 1 ? a + (b - a) * u + (d - a) * v : c + (d - c) * (1 - u) + (b - c) * (1 - v);
    };
    const steps = 400;
    let sum = 0;
    for (let k = 0; k < steps * steps; k += 1) {
      const [u, v] = [((k % steps) + 0.5) / steps, (Math.floor(k / steps) + 0.5) / steps];
      for (const one of [true, false]) {
        for (const other of [true, false])
          sum += Math.max(0, on(upper, one, u, v) - on(lower, other, u, v));
      }
    }
    const found = surfaceVolumes({ existing: floats(upper), design: floats(lower) });
    expect(found.cut).toBeCloseTo(sum / (steps * steps), 4);
  });
});

describe('other points on one circle', () => {
  const onCircle = (count: number, at: (k: number) => number): Point[] =>
    Array.from({ length: count }, (_, k) => {
      const angle = at(k);
      return [5 * Math.cos(angle), 5 * Math.sin(angle), 3 + Math.sin(k * k)];
    });

  test('five points: the mean over their five fans', () => {
    const ring = onCircle(5, (k) => k + 0.1 * Math.sin(k));
    const fans = ring.map((_, apex) => {
      let sum = 0;
      for (let k = 1; k < 4; k += 1) {
        sum += cutOf([0, k, k + 1].map((step) => ring[(apex + step) % 5] ?? [0, 0, 0]));
      }
      return sum;
    });
    const mean = fans.reduce((sum, cut) => sum + cut, 0) / 5;
    const random = makeRandom(2);
    for (let run = 0; run < 20; run += 1) {
      const found = surfaceVolumes({ existing: floats(shuffled(ring, random)), design: LEVEL });
      expect(found.cut).toBeCloseTo(mean, 11);
      expect(found.diagonalDoubt).toBeCloseTo((Math.max(...fans) - Math.min(...fans)) / 2, 11);
    }
  });

  test.each([8, 9, 24])('%i points: any order, any quarter turn', (count) => {
    const ring = onCircle(count, (k) => (2 * Math.PI * (k + 0.3)) / count);
    const random = makeRandom(4);
    const first = surfaceVolumes({ existing: floats(ring), design: LEVEL });
    for (let run = 0; run < 20; run += 1) {
      const turned = shuffled(ring, random).map(([x, y, z]): Point =>
        run % 2 === 0 ? [x, y, z] : [-y, x, z],
      );
      const found = surfaceVolumes({ existing: floats(turned), design: LEVEL });
      expect(found.cut).toBeCloseTo(first.cut, 11);
      expect(found.diagonalDoubt).toBeCloseTo(first.diagonalDoubt, 11);
    }
    expect(first.diagonalDoubt).toBeGreaterThan(0);
  });
});

describe('where nothing is open', () => {
  test('uneven points in any order, without any doubt', () => {
    const random = makeRandom(9);
    const points = Array.from({ length: 40 }, (): Point => [9 * random(), 7 * random(), random()]);
    const first = surfaceVolumes({ existing: floats(points), design: LEVEL });
    expect(first.diagonalDoubt).toBe(0);
    for (let run = 0; run < 20; run += 1) {
      const found = surfaceVolumes({ existing: floats(shuffled(points, random)), design: LEVEL });
      expect(found.cut).toBeCloseTo(first.cut, 12);
      expect(found.diagonalDoubt).toBe(0);
    }
  });

  test('an uneven set with some cells of a grid in it', () => {
    const random = makeRandom(6);
    const scattered = Array.from({ length: 12 }, (): Point => [
      4 + 5 * random(),
      3 * random(),
      random(),
    ]);
    const points = [...BUMPY, ...scattered];
    const first = surfaceVolumes({ existing: floats(points), design: LEVEL });
    expect(first.diagonalDoubt).toBeGreaterThan(0);
    for (let run = 0; run < 40; run += 1) {
      const found = surfaceVolumes({ existing: floats(shuffled(points, random)), design: LEVEL });
      expect(found.cut).toBeCloseTo(first.cut, 12);
      expect(found.diagonalDoubt).toBeCloseTo(first.diagonalDoubt, 12);
    }
  });

  test('a grid on a plane', () => {
    const plane = gridOf(4, 4, (x, y) => 1 + 0.02 * x - 0.015 * y);
    expect(surfaceVolumes({ existing: floats(plane), design: LEVEL }).diagonalDoubt).toBe(0);
  });
});
