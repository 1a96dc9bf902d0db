// Floats answer first where a stake is left out of a row; exact sums decide what they cannot tell. So the
// floats must be as near to the exact offsets as they say.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gradeRow } from '../../src/stakes/grade-row.js';
import { planRow } from '../../src/stakes/plan-row.js';
import { ratioToNumber } from '../../src/units/ratio.js';
import { readNumber } from '../../src/units/read-number.js';
import type { Vector } from '../../src/units/vector.js';
import { runs } from '../runs.js';

const millimetres = (most: number) =>
  fc.integer({ min: -most, max: most }).map((whole) => readNumber(whole / 1000));
const row: fc.Arbitrary<readonly Vector[]> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 60_000 }), { minLength: 4, maxLength: 12 }),
    fc.array(millimetres(500), { minLength: 12, maxLength: 12 }),
  )
  .map(([stations, heights]) =>
    stations.map((x, index) => ({
      x: readNumber(x / 1000),
      y: heights[index] ?? readNumber(0),
    })),
  );

test.each([
  ['in profile', gradeRow],
  ['in plan', planRow],
])('offsets of a row %s without one stake, in floats and exactly', (_what, make) => {
  fc.assert(
    fc.property(row, (points) => {
      const { rough, exact, count } = make(points);
      expect(count).toBe(points.length);
      for (const without of points.keys()) {
        const [floats, ratios] = [rough(without), exact(without)];
        if (floats === undefined || ratios === undefined) continue;
        for (const of of points.keys()) {
          const off = Math.abs(Math.abs(floats.offset(of)) - Math.abs(ratioToNumber(ratios(of))));
          expect(off).toBeLessThanOrEqual(floats.slack);
        }
      }
    }),
    runs(60),
  );
});

test.each([
  ['in profile', gradeRow],
  ['in plan', planRow],
])('floats tell the offsets of a long row %s without one of its stakes', (_what, make) => {
  const points = Array.from({ length: 20 }, (_, k) => ({
    x: readNumber(3 * k),
    y: readNumber(k === 7 ? 0.2 : k * 0.06),
  }));
  const row = make(points);
  const floats = row.rough(7);
  expect(floats?.slack).toBeLessThan(1e-9);
  // without the seventh stake the others are in one line
  for (const of of points.keys()) {
    const expected = of === 7 ? Math.abs(0.2 - 7 * 0.06) : 0;
    expect(Math.abs(Math.abs(floats?.offset(of) ?? Number.NaN) - expected)).toBeLessThan(0.02);
  }
});
