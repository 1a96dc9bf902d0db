import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clipLine, crosses } from '../../src/drawing/frame/box.js';
import { placeLabels } from '../../src/drawing/frame/place-labels.js';
import { clipPolygon, clipRing } from '../../src/drawing/plan/clip.js';
import { runs } from '../runs.js';

const view = { x: 0, y: 0, width: 400, height: 300 };
const one = { text: 'A', size: 10, at: [200, 150] as const };

describe('labels with a direction', () => {
  test('stand first on the side that they are sent to', () => {
    const place = (toward: number) =>
      placeLabels([{ ...one, toward }], { view, taken: [] }).placed[0]?.box;
    expect(place(Math.PI / 2)?.y).toBeLessThan(140);
    expect(place(-Math.PI / 2)?.y).toBeGreaterThan(150);
    expect(place(Math.PI)?.x).toBeLessThan(195);
  });

  test('read upward where they are turned, in a box as high as they are long', () => {
    const words = { ...one, text: 'a long text', isTurned: true };
    const { placed } = placeLabels([words], { view, taken: [] });
    expect(placed[0]?.isTurned).toBe(true);
    expect(placed[0]?.box.height).toBeGreaterThan(3 * (placed[0]?.box.width ?? Infinity));
  });

  test('stand clear of lines where there is room, and on them where there is none', () => {
    const through = [[0, 150] as const, [400, 150] as const] as const;
    const { placed } = placeLabels([one], { view, taken: [], lines: [through] });
    expect(placed.map(({ box }) => crosses(through, box))).toEqual([false]);
    const everywhere = Array.from(
      { length: 300 },
      (_, y) => [[0, y] as const, [400, y] as const] as const,
    );
    expect(placeLabels([one], { view, taken: [], lines: everywhere }).placed).toHaveLength(1);
  });

  test('stand no farther off than they may', () => {
    const taken = [{ x: 100, y: 50, width: 200, height: 200 }];
    expect(placeLabels([{ ...one, rings: 3 }], { view, taken }).left).toHaveLength(1);
    expect(placeLabels([one], { view, taken }).left).toHaveLength(0);
  });
});

describe('what is cut to a box', () => {
  const number = fc.double({ min: -1000, max: 1000, noNaN: true });
  const point = fc.tuple(number, number);
  const isIn = ([x, y]: readonly [number, number]) =>
    x >= -1e-6 && y >= -1e-6 && x <= 400 + 1e-6 && y <= 300 + 1e-6;

  test('lies in it', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 12 }), (ring) => {
        expect(clipPolygon(ring, view).every(isIn)).toBe(true);
        expect(clipRing(ring, view).flat().every(isIn)).toBe(true);
      }),
      runs(300),
    );
  });

  test('is left as it is where it lies inside', () => {
    const ring = [
      [10, 10],
      [50, 10],
      [50, 40],
    ] as const;
    expect(clipPolygon(ring, view)).toEqual(ring);
    expect(clipRing(ring, view)).toEqual([[...ring, ring[0]]]);
  });

  test('is cut where it crosses a side, and nothing where it lies outside', () => {
    expect(clipLine([-100, 150], [500, 150], view)).toEqual([
      [
        [0, 150],
        [400, 150],
      ],
    ]);
    expect(clipLine([-100, 150], [-50, 150], view)).toEqual([]);
    expect(clipLine([-100, 10], [10, -100], view)).toEqual([]);
  });
});
