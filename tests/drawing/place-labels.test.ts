import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInside, overlaps } from '../../src/drawing/frame/box.js';
import { labelMarks, placeLabels } from '../../src/drawing/frame/place-labels.js';
import { runs } from '../runs.js';

const view = { x: 0, y: 0, width: 400, height: 300 };
const point = fc.tuple(
  fc.double({ min: 0, max: 400, noNaN: true }),
  fc.double({ min: 0, max: 300, noNaN: true }),
);

describe('labels near their points', () => {
  test('lie apart, inside, clear of what stands there; what finds no place is told', () => {
    const taken = [{ x: 100, y: 100, width: 80, height: 40 }];
    fc.assert(
      fc.property(fc.array(point, { maxLength: 60 }), (points) => {
        const requests = points.map((at, k) => ({ text: `stake ${k}`, size: 13, at }));
        const { placed, left } = placeLabels(requests, { view, taken });
        expect(placed.length + left.length).toBe(requests.length);
        const boxes = [...taken, ...placed.map(({ box }) => box)];
        boxes.forEach((box, k) => {
          expect(isInside(box, view)).toBe(true);
          expect(boxes.slice(k + 1).filter((other) => overlaps(box, other))).toEqual([]);
        });
      }),
      runs(60),
    );
  });

  test('stand right of the point where that is free, without a leader', () => {
    const { placed } = placeLabels([{ text: 'A', size: 10, at: [200, 150] }], { view, taken: [] });
    expect(placed[0]?.leader).toBeNull();
    expect(placed[0]?.x).toBe(206);
    expect(labelMarks(placed)).toHaveLength(1);
  });

  test('have a leader from the point where they stand far off', () => {
    const taken = [{ x: 150, y: 100, width: 100, height: 100 }];
    const { placed } = placeLabels([{ text: 'A', size: 10, at: [200, 150] }], { view, taken });
    expect(placed[0]?.leader?.[0]).toEqual([200, 150]);
    expect(labelMarks(placed)).toHaveLength(2);
  });

  test('come back where there is no place at all', () => {
    const request = { text: 'A', size: 10, at: [200, 150] as const };
    expect(placeLabels([request], { view, taken: [view] })).toEqual({
      placed: [],
      left: [request],
    });
  });
});
