// How deep the dig is along a marked line: the places where it is looked up.
import { describe, expect, test } from 'vitest';
import { length, type Length } from 'settline/units';
import { depthAlong, placesInside } from '../../src/job/plan/earth/depth-along.js';
import { digOutline } from '../../src/job/plan/areas/in-dig.js';

const m = (value: number): Length => length(`${value} m`);
const place = (x: number, y: number) => ({ x: m(x), y: m(y) });
const rectangle = (x: number, y: number, wide: number, deep: number) => ({
  points: [place(x, y), place(x + wide, y), place(x + wide, y + deep), place(x, y + deep)],
  arcs: [],
});
/** 40 m by 4 m, its first corner away from zero. */
const drive = digOutline({ outer: rectangle(100, 200, 40, 4), holes: [] });
const withIsland = digOutline({
  outer: rectangle(100, 200, 40, 4),
  holes: [rectangle(104, 201.05, 1, 1.9)],
});

/** Places as metres from the first corner. */
const seen = (outline: typeof drive, ...path: (readonly [number, number])[]) =>
  placesInside(
    path.map(([x, y]) => place(x, y)),
    outline,
  ).map(({ x, y }) => [x.toNumber('m') - 100, y.toNumber('m') - 200] as const);

/** Deepest where the line is, by a depth that is known at each place. */
const deepest = (
  depthAt: (x: number, y: number) => number | null,
  ...path: (readonly [number, number])[]
) =>
  depthAlong(
    path.map(([x, y]) => place(x, y)),
    drive,
    {
      dig: { depth: m(0.25) },
      depthAt: ({ x, y }) => {
        const depth = depthAt(x.toNumber('m') - 100, y.toNumber('m') - 200);
        return depth === null ? null : m(depth);
      },
    },
  ).toNumber('m');

describe('places along a line', () => {
  test('a line across is looked at from edge to edge, every 100 mm, and nowhere else', () => {
    const across = seen(drive, [110, 190], [110, 210]);
    expect(across).toHaveLength(41);
    expect(across.at(0)?.[1]).toBeCloseTo(0, 9);
    expect(across.at(1)?.[1]).toBeCloseTo(0.1, 9);
    expect(across.at(-1)?.[1]).toBeCloseTo(4, 9);
    for (const [x] of across) expect(x).toBeCloseTo(10, 9);
  });

  test('a long line is looked at in 200 steps, so that it stays quick', () => {
    const along = seen(drive, [90, 202], [150, 202]);
    expect(along).toHaveLength(201);
    expect(along.at(0)?.[0]).toBeCloseTo(0, 9);
    expect(along.at(1)?.[0]).toBeCloseTo(0.2, 9);
    expect(along.at(-1)?.[0]).toBeCloseTo(40, 9);
  });

  test('a line that ends in the dig is looked at up to its end', () => {
    const into = seen(drive, [110, 190], [110, 200.95]);
    expect(into).toHaveLength(11);
    expect(into.at(-1)?.[1]).toBeCloseTo(0.95, 9);
  });

  test('each stretch of a bent line counts, a slanting one by its own length', () => {
    const bent = seen(drive, [110, 190], [110, 201], [113, 204.999999], [120, 210]);
    // 1 m straight in, then 5 m, less a hair, up to the far edge, which the slant crosses
    expect(bent.length).toBeGreaterThan(11 + 33);
    expect(bent[11]?.[1]).toBeCloseTo(1, 9);
    expect(Math.max(...bent.map(([, y]) => y))).toBeCloseTo(4, 9);
  });

  test('an island that is not dug is left out', () => {
    const past = seen(withIsland, [104.5, 190], [104.5, 210]);
    expect(past).toHaveLength(24);
    expect(past.filter(([, y]) => y > 1.05 + 1e-9 && y < 2.95 - 1e-9)).toEqual([]);
  });

  test('a line beside the dig, or along its edge outside, has no place in it', () => {
    expect(seen(drive, [90, 205], [150, 205])).toEqual([]);
    expect(seen(drive, [150, 190], [150, 210])).toEqual([]);
    expect(seen(drive, [90, 199], [150, 199])).toEqual([]);
  });
});

describe('the deepest dig along a line', () => {
  test('at the edge where the ground falls that way, and not the mean', () => {
    const falling = (_x: number, y: number) => 0.2 + 0.05 * y;
    expect(deepest(falling, [110, 190], [110, 210])).toBeCloseTo(0.4, 9);
    expect(deepest(falling, [110, 201], [110, 202])).toBeCloseTo(0.3, 9);
  });

  test('in a hollow that the line runs through, 150 mm wide', () => {
    const hollow = (_x: number, y: number) => (Math.abs(y - 2.5) < 0.075 ? 0.9 : 0.3);
    expect(deepest(hollow, [110, 190], [110, 210])).toBeCloseTo(0.9, 9);
  });

  test('where levels reach a part only, that part; where none does, the mean depth of the dig', () => {
    expect(deepest((x) => (x < 11 ? 0.3 : null), [110, 202], [130, 202])).toBeCloseTo(0.3, 9);
    expect(deepest(() => null, [110, 190], [110, 210])).toBeCloseTo(0.25, 9);
    expect(deepest(() => 1, [90, 205], [150, 205])).toBeCloseTo(0.25, 9);
  });
});
