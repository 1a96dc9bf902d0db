import { describe, expect, test } from 'vitest';
import { ringCrossing } from 'settline/geometry';

const square = Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4);

describe('ringCrossing', () => {
  test.each([
    ['a bow tie', [0, 0, 2, 2, 2, 0, 0, 2], [[0, 2]]],
    [
      'a corner on an edge',
      [0, 0, 4, 0, 4, 4, 2, 0, 0, 4],
      [
        [0, 2],
        [0, 3],
      ],
    ],
    [
      'an edge that runs back over another',
      [0, 0, 4, 0, 2, 0, 2, 3],
      [
        [0, 1],
        [0, 2],
      ],
    ],
    [
      'all on one line',
      [0, 0, 1, 1, 2, 2, 3, 3],
      [
        [0, 3],
        [1, 3],
        [2, 3],
      ],
    ],
  ])('%s', (_, points, pairs) => {
    const { first, second } = ringCrossing(Float64Array.from(points)) ?? {};
    expect(pairs).toContainEqual([first, second]);
  });

  test('the tip of a notch on the far edge, whichever way it points', () => {
    const notch = (tip: number) => [0, 0, 4, 0, 4, 4, 0, 4, 0, 2.5, tip, 2, 0, 1.5];
    const turned = (ring: readonly number[]) =>
      ring.map((_, k) => (k % 2 === 0 ? -(ring[k + 1] ?? 0) : (ring[k - 1] ?? 0)));
    let [touching, apart] = [notch(4), notch(3.9)];
    for (const quarter of [0, 1, 2, 3]) {
      const { first, second } = ringCrossing(Float64Array.from(touching)) ?? {};
      expect(
        [4, 5].map((edge) => [1, edge]),
        `${quarter}`,
      ).toContainEqual([first, second]);
      expect(ringCrossing(Float64Array.from(apart)), `${quarter}`).toBeNull();
      [touching, apart] = [turned(touching), turned(apart)];
    }
  });

  test('a repeated point and a repeated end are no crossing', () => {
    expect(ringCrossing(Float64Array.of(0, 0, 4, 0, 4, 0, 4, 4, 0, 4, 0, 0))).toBeNull();
    expect(ringCrossing(square)).toBeNull();
  });

  test('decides what floats cannot: a point one unit in the last place off an edge', () => {
    const edge = (y: number) => Float64Array.of(0, 0, 3, 1, 3, 4, 1.5, y, 0, 4);
    expect(ringCrossing(edge(0.5))?.first).toBe(0);
    expect(ringCrossing(edge(0.5 + 2 ** -53 * 2))).toBeNull();
  });

  test('large and awkward: a comb, a spiral, a grid line of points', () => {
    const comb: number[] = [];
    for (let i = 0; i < 50_000; i += 1)
      comb.push(i, i % 2 === 0 ? 10 : 1, i + 0.5, i % 2 === 0 ? 10 : 1);
    comb.push(50_000, 0, 0, 0);
    expect(ringCrossing(Float64Array.from(comb))).toBeNull();
    // one tooth reaches through the spine
    comb[2 * 20_001 * 2 + 1] = -1;
    expect(ringCrossing(Float64Array.from(comb))).not.toBeNull();
  }, 60_000);
});
