// What stands in a hole of the paving has water on its uphill side, as a house along it has.
import { expect, test } from 'vitest';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import { planFile } from '../plan-file.js';

const PAVING = rectangle(0, 0, 10, 8);
const HOLE = rectangle(4, 3, 6, 5);

/** Edges that water runs at, on a plane that falls 1 in 50 along x and 1 in 100 along y, or rises so. */
function shed(hole: typeof HOLE, along: readonly string[], way: 1 | -1 = 1) {
  const level = (x: number, y: number) => ({
    x: `${x} m`,
    y: `${y} m`,
    elevation: `${(100_000 - way * (20 * x + 10 * y)).toString()} mm`,
  });
  const pavement = pavementOn(PAVING, {
    id: 'court',
    outline: { unit: 'm', points: PAVING, holes: [{ points: hole }] },
    edges: ['building', 'open', 'open', 'open', ...along],
    grade: { kind: 'plane', levels: [level(0, 0), level(10, 0), level(0, 8)] },
  });
  return planFile(levelSite([pavement])).pavements[0]?.grade?.shedAtBuilding;
}

const ALL = ['building', 'building', 'slab', 'slab'];

test('edges of a hole are counted on after the outer ones', () => {
  // the south and the west side of what stands in the hole are uphill of it
  expect(shed(HOLE, ALL)).toEqual([5, 8]);
  // the other way round water comes from the north and the east, and at the house in the south too
  expect(shed(HOLE, ALL, -1)).toEqual([1, 6, 7]);
});

test('which way round the hole runs makes no difference to its sides', () => {
  // west, north, east, south
  const turned = [...HOLE.slice(0, 1), ...HOLE.slice(1).reverse()];
  expect(shed(turned, ALL)).toEqual([5, 8]);
  expect(shed(turned, ALL, -1)).toEqual([1, 6, 7]);
});

test('only sides at a building or slab count', () => {
  expect(shed(HOLE, ['open', 'building', 'restraint', 'slab'])).toEqual([8]);
});
