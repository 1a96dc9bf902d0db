import { describe, expect, test } from 'vitest';
import { circleInRing } from '../../../src/geometry/ring/circle-in-ring.js';

const box = (west: number, south: number, east: number, north: number): number[] => [
  ...[west, south],
  ...[east, south],
  ...[east, north],
  ...[west, north],
];

/** The same line the other way round. */
const turned = (ring: readonly number[]): number[] =>
  ring
    .flatMap((_, k) => (k % 2 === 0 ? [ring.slice(k, k + 2)] : []))
    .reverse()
    .flat();

/** What a line at this distance from the centre cuts off a circle of 1 m. */
const beyond = (off: number): number => Math.acos(off) - off * Math.sqrt(1 - off * off);

/** The part of a quarter of that circle within this distance of one of its straight sides. */
const beside = (off: number): number => (off * Math.sqrt(1 - off * off) + Math.asin(off)) / 2;

/** A box from 0.6 m to 6 m off the centre, turned by 30 degrees. */
const askew = [
  [0.6, -5],
  [6, -5],
  [6, 5],
  [0.6, 5],
].flatMap(([out = 0, along = 0]) => {
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  return [out * cos - along * sin, out * sin + along * cos];
});

describe('a circle of 1 m about the origin', () => {
  test.each([
    ['wholly inside', box(-2, -2, 2, 2), Math.PI],
    ['around the line', [0.1, 0.1, 0.4, 0.2, 0.2, 0.5], 0.055],
    ['with its centre at a corner', box(0, 0, 3, 3), Math.PI / 4],
    [
      'with a corner inside it',
      box(-0.2, -0.3, 3, 3),
      Math.PI / 4 + beside(0.2) + beside(0.3) + 0.06,
    ],
    ['cut by one edge', box(0.5, -5, 5, 5), beyond(0.5)],
    ['cut by one edge askew', askew, beyond(0.6)],
    ['cut by two edges', box(-5, -0.5, 5, 0.25), Math.PI - beyond(0.5) - beyond(0.25)],
    ['outside', box(3, 3, 4, 4), 0],
    ['beside an edge that it does not reach', box(1.5, -5, 5, 5), 0],
  ])('%s', (_, ring, area) => {
    expect(circleInRing(ring, 1)).toBeCloseTo(area, 13);
    expect(circleInRing(turned(ring), 1)).toBeCloseTo(area, 13);
    const twice = ring.map((one) => 2 * one);
    expect(circleInRing(twice, 2)).toBeCloseTo(4 * area, 12);
  });
});
