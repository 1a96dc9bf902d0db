import Delaunator from 'delaunator';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { delaunay } from '../../../src/geometry/surface/delaunay.js';
import { runs } from '../../runs.js';

type Point = readonly [x: number, y: number];

function expectSame(points: readonly Point[]): void {
  const xy = Float64Array.from(points.flat());
  const { triangles, halfedges, hull } = new Delaunator(xy);
  expect(delaunay(xy)).toEqual({ triangles, halfedges, hull });
}

const many = (count: number, place: (k: number) => Point): Point[] =>
  Array.from({ length: count }, (_, k) => place(k));
const round = (count: number, radius: number) => (k: number) => {
  const angle = (2 * Math.PI * k) / count;
  return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
};

const scattered = fc.double({ min: -100, max: 100, noNaN: true });
const onGrid = fc.integer({ min: 0, max: 6 });

test.each([
  ['scattered', scattered],
  ['on a grid, some twice', onGrid],
] as const)('the triangles of the package: %s', (_, coordinate) => {
  const points = fc.array(fc.tuple(coordinate, coordinate), { maxLength: 80 });
  fc.assert(fc.property(points, expectSame), runs(200));
});

test.each([3, 4, 5, 12, 100, 1001, 5000])(
  'the triangles of the package: %i on a circle',
  (count) => {
    expectSame(many(count, round(count, 100)));
  },
);

test('the triangles of the package: rings with points between them', () => {
  expectSame(many(600, (k) => round(200, 1 + Math.floor(k / 200))(k)));
  expectSame(many(400, (k) => (k % 4 === 0 ? [Math.sin(k), Math.cos(3 * k)] : round(100, 2)(k))));
});

test.each([
  ['none', []],
  ['one', [[1, 2]]],
  ['one place', many(9, () => [4, 4])],
  ['one line', many(30, (k) => [(k * 7) % 30, (k * 14) % 60])],
  ['upright', many(12, (k) => [5, (k * 5) % 12])],
] as const)('no triangles: %s', (_, points) => {
  expectSame(points);
  expect(delaunay(Float64Array.from(points.flat())).triangles).toHaveLength(0);
});

test('points on one circle take no longer than n log n', () => {
  const spent = (count: number): number => {
    const xy = Float64Array.from(many(count, round(count, 100)).flat());
    const start = process.cpuUsage();
    delaunay(xy);
    const { user, system } = process.cpuUsage(start);
    return user + system;
  };
  // sixteen times the points: by walking round the hull it would be some 256 times the time
  const few = Math.max(spent(5_000), spent(5_000));
  expect(spent(80_000) / few).toBeLessThan(100);
});
