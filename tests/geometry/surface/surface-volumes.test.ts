import { describe, expect, test } from 'vitest';
import { surfaceVolumes } from 'settline/geometry';
import { expectFault } from '../../faults.js';

const LEVEL = { z0: 0, gradeX: 0, gradeY: 0 };

/** Four corners of a rectangle, each at its height. */
function rectangle(width: number, depth: number, heights: readonly number[]): Float64Array {
  const [a = 0, b = 0, c = 0, d = 0] = heights;
  return Float64Array.of(0, 0, a, width, 0, b, width, depth, c, 0, depth, d);
}

describe('a surface against a plane', () => {
  test('a level platform 6 m x 4 m, half a metre above the design', () => {
    const dig = surfaceVolumes({
      existing: rectangle(6, 4, [1, 1, 1, 1]),
      design: { ...LEVEL, z0: 0.5 },
    });
    expect(dig).toEqual({
      cut: 12,
      fill: 0,
      net: 12,
      diagonalDoubt: 0,
      cutArea: 24,
      fillArea: 0,
      area: 24,
      uncoveredArea: 0,
      deepestCut: { depth: 0.5, x: 0, y: 0 },
      deepestFill: null,
    });
  });

  test('a tilted plane crosses the level design in the middle', () => {
    // from -1 at x = 0 to +1 at x = 8: a wedge of 4 x 1 / 2 over 3 on each side
    const dig = surfaceVolumes({ existing: rectangle(8, 3, [-1, 1, 1, -1]), design: LEVEL });
    expect(dig.cut).toBeCloseTo(6, 14);
    expect(dig.fill).toBeCloseTo(6, 14);
    expect([dig.cutArea, dig.fillArea]).toEqual([12, 12]);
    expect(dig.deepestFill).toMatchObject({ depth: 1, x: 0 });
  });

  test('of places with one depth the first along x counts, then along y, in any order', () => {
    const corners = [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ] as const;
    for (const first of [0, 1, 2, 3]) {
      for (const way of [1, 3]) {
        const listed = [0, 1, 2, 3].map((k) => corners[(first + way * k) % 4] ?? [0, 0]);
        const at = (height: number) =>
          Float64Array.from(listed.flatMap(([x, y]) => [x, y, height]));
        const words = `${first} ${way}`;
        const place = { depth: 0.5, x: 0, y: 0 };
        const cut = surfaceVolumes({ existing: at(0.5), design: LEVEL });
        expect([cut.deepestCut, cut.deepestFill], words).toEqual([place, null]);
        const fill = surfaceVolumes({ existing: at(-0.5), design: LEVEL });
        expect([fill.deepestCut, fill.deepestFill], words).toEqual([null, place]);
      }
    }
  });

  test('a pyramid', () => {
    const existing = Float64Array.of(0, 0, 0, 6, 0, 0, 6, 6, 0, 0, 6, 0, 3, 3, 2);
    expect(surfaceVolumes({ existing, design: LEVEL }).cut).toBeCloseTo(24, 13);
    expect(surfaceVolumes({ existing, design: LEVEL }).deepestCut).toEqual({
      depth: 2,
      x: 3,
      y: 3,
    });
    // above half its height it is a pyramid of an eighth of the volume
    const top = surfaceVolumes({ existing, design: { ...LEVEL, z0: 1 } });
    expect(top.cut).toBeCloseTo(3, 13);
    expect(top.cutArea).toBeCloseTo(9, 13);
    expect(top.fill).toBeCloseTo(36 - 24 + 3, 13);
  });
});

describe('inside an outline', () => {
  const existing = rectangle(10, 10, [1, 1, 1, 1]);
  const volumeIn = (outline: Float64Array | readonly Float64Array[]) =>
    surfaceVolumes({ existing, design: LEVEL, outline });

  test('a rectangle, in either direction, closed or not', () => {
    expect(volumeIn(Float64Array.of(1, 1, 4, 1, 4, 3, 1, 3)).cut).toBeCloseTo(6, 13);
    expect(volumeIn(Float64Array.of(1, 1, 1, 3, 4, 3, 4, 1)).cut).toBeCloseTo(6, 13);
    expect(volumeIn(Float64Array.of(1, 1, 4, 1, 4, 3, 1, 3, 1, 1)).cut).toBeCloseTo(6, 13);
  });

  test('a concave outline', () => {
    // an L of 6 x 6 less 4 x 4
    const bent = Float64Array.of(1, 1, 7, 1, 7, 3, 3, 3, 3, 7, 1, 7);
    expect(volumeIn(bent).cut).toBeCloseTo(20, 13);
    // a comb: five teeth of 1 x 6 on a back of 9 x 1
    const comb = [0.5, 0.5, 9.5, 0.5];
    for (let tooth = 4; tooth >= 0; tooth -= 1) {
      const x = 0.5 + 2 * tooth;
      comb.push(x + 1, 7.5, x, 7.5);
      if (tooth > 0) comb.push(x, 1.5, x - 1, 1.5);
    }
    expect(volumeIn(Float64Array.from(comb)).cut).toBeCloseTo(9 + 5 * 6, 12);
  });

  test('an island', () => {
    const rings = [
      Float64Array.of(1, 1, 7, 1, 7, 7, 1, 7),
      Float64Array.of(3, 3, 3, 5, 5, 5, 5, 3),
    ];
    expect(volumeIn(rings).cut).toBeCloseTo(32, 13);
  });

  test('where the surface ends short of the outline, the rest is told', () => {
    const dig = volumeIn(Float64Array.of(8, 0, 13, 0, 13, 10, 8, 10));
    expect(dig.cut).toBeCloseTo(20, 13);
    expect(dig.uncoveredArea).toBeCloseTo(30, 13);
    const away = () => volumeIn(Float64Array.of(11, 0, 13, 0, 13, 10));
    expect(expectFault(away, 'SURFACES_APART').path).toEqual(['outline']);
    // 4 mm beyond the edge of 10 m
    const short = volumeIn(Float64Array.of(0, 0, 10.004, 0, 10.004, 10, 0, 10));
    expect(short.uncoveredArea).toBeCloseTo(0.04, 11);
  });

  test('what rounding leaves out of an outline is not told as missing', () => {
    const spots = Float64Array.from({ length: 3 * 49 }, (_, k) => {
      const [row, column] = [Math.floor(k / 21), Math.floor(k / 3) % 7];
      return [column * 2.1, row * 1.7, column / 7 - row / 3][k % 3] ?? 0;
    });
    for (let k = 1; k <= 20; k += 1) {
      const [x, y, far] = [k / 7, k / 11, 12 - k / 13];
      const outline = Float64Array.of(x, y, far, k / 17, far, 9.7, x, 10 - k / 19);
      const dig = surfaceVolumes({ existing: spots, design: LEVEL, outline });
      expect(dig.uncoveredArea).toBe(0);
    }
  });
});

describe('a surface against a surface', () => {
  test('two planes triangulated otherwise', () => {
    const existing = rectangle(10, 10, [1, 1, 1, 1]);
    const design = Float64Array.of(0, 0, 0, 10, 0, 2, 10, 10, 2, 0, 10, 0, 3, 7, 0.6, 8, 2, 1.6);
    const dig = surfaceVolumes({ existing, design });
    expect(dig.cut).toBeCloseTo(25, 12);
    expect(dig.fill).toBeCloseTo(25, 12);
    expect(dig.area).toBeCloseTo(100, 12);
    const back = surfaceVolumes({ existing: design, design: existing });
    expect(back.fill).toBeCloseTo(25, 12);
    expect(back.deepestFill?.depth).toBeCloseTo(1, 14);
  });

  test('the common area only', () => {
    const existing = rectangle(10, 10, [1, 1, 1, 1]);
    const design = existing.map((value, k) => (k % 3 === 2 ? 0 : value + 4));
    expect(surfaceVolumes({ existing, design }).cut).toBeCloseTo(36, 12);
    const away = existing.map((value, k) => (k % 3 === 2 ? 0 : value + 10));
    const fault = expectFault(() => surfaceVolumes({ existing, design: away }), 'SURFACES_APART');
    expect(fault.path).toEqual(['design']);
    expect(fault.message).toContain('share no area');
  });
});

describe('spots that are read', () => {
  const [east, north] = [4_500_000, 4_500_000];
  // a triangle 10 m long: its area is 5 times its height
  const sliver = (height: number) =>
    Float64Array.of(east, north, 1, east + 10, north, 1, east + 5, north + height, 1);

  test('a micrometre of width is a surface, a few last digits of the coordinates are none', () => {
    const { area } = surfaceVolumes({ existing: sliver(1e-6), design: LEVEL });
    expect(area / 5e-6).toBeCloseTo(1, 2);
    const none = () => surfaceVolumes({ existing: sliver(5e-9), design: LEVEL });
    expectFault(none, 'POINTS_COLLINEAR');
  });

  test.each([
    [2, 3],
    [3, 2],
  ])('one place at %i m and at %i m: both are named as they were given', (first, second) => {
    const existing = Float64Array.of(
      ...[9, 9, 1, 4, 4, first, 0, 0, 1, 9, 0, 1, 4, 4, second, 0, 9, 1],
    );
    const fault = expectFault(() => surfaceVolumes({ existing, design: LEVEL }), 'TWO_HEIGHTS');
    expect(fault.path).toEqual(['existing', 4]);
    expect(fault.message).toContain('points 1 and 4 are at one place');
    const same = existing.map((value, k) => (k % 3 === 2 ? 1 : value));
    expect(surfaceVolumes({ existing: same, design: LEVEL }).cut).toBeCloseTo(81, 12);
  });

  test.each([
    [2e8, 'larger'],
    [1e-200, 'smaller'],
  ])('%f m is %s than anything on a site', (x, word) => {
    const existing = Float64Array.of(0, 0, 1, x, 0, 1, 0, 9, 1);
    const fault = expectFault(() => surfaceVolumes({ existing, design: LEVEL }), 'OUT_OF_RANGE');
    expect(fault.message).toContain(`${word} than anything on a site`);
  });
});

describe('a surface on its design', () => {
  // a third and a seventh are no floats: every height is rounded
  const height = (x: number, y: number) => 100 + x / 3 - y / 7;
  const place = (k: number) => [500_000 + ((k * 37) % 101) / 7, 4_500_000 + ((k * 53) % 97) / 3];
  const sloped = Float64Array.from({ length: 90 }, (_, k) => {
    const [x = 0, y = 0] = place(Math.floor(k / 3));
    return [x, y, height(x, y)][k % 3] ?? 0;
  });

  test('rounding is neither cut nor fill', () => {
    const others = Float64Array.from({ length: 150 }, (_, k) => {
      const [x = 0, y = 0] = place(Math.floor(k / 3) + 11);
      return [x, y, height(x, y)][k % 3] ?? 0;
    });
    for (const design of [{ z0: 100, gradeX: 1 / 3, gradeY: -1 / 7 }, others]) {
      const { area, ...rest } = surfaceVolumes({ existing: sloped, design });
      expect(area).toBeGreaterThan(100);
      const none = {
        cut: 0,
        fill: 0,
        net: 0,
        diagonalDoubt: 0,
        cutArea: 0,
        fillArea: 0,
        uncoveredArea: 0,
      };
      expect(rest).toEqual({ ...none, deepestCut: null, deepestFill: null });
    }
  });

  test('a hundredth of a millimetre is', () => {
    const lower = sloped.map((value, k) => (k % 3 === 2 ? value - 1e-5 : value));
    for (const design of [{ z0: 100 - 1e-5, gradeX: 1 / 3, gradeY: -1 / 7 }, lower]) {
      const { area, cut, cutArea, fillArea } = surfaceVolumes({ existing: sloped, design });
      expect(cutArea / area).toBeCloseTo(1, 12);
      expect(fillArea).toBe(0);
      expect(cut / area / 1e-5).toBeCloseTo(1, 3);
    }
  });
});

describe('a warped design', () => {
  const existing = rectangle(10, 10, [1, 1, 1, 1]);

  test('four corners out of a plane: the volume is exact, the middle is met closely', () => {
    const corners = Float64Array.of(0, 0, 0, 10, 0, 1, 10, 10, 0, 0, 10, 1);
    const dig = surfaceVolumes({ existing, design: { corners } });
    expect(dig.cut).toBeCloseTo(50, 12);
    expect(dig.fill).toBe(0);
    // in a quarter: depth 1 - (u + v - 2 u v), its mean 1 - (1/4 + 1/4 - 1/8)
    const outline = Float64Array.of(0, 0, 5, 0, 5, 5, 0, 5);
    expect(surfaceVolumes({ existing, design: { corners }, outline }).cut).toBeCloseTo(15.625, 12);
    const back = Float64Array.of(0, 0, 0, 0, 10, 1, 10, 10, 0, 10, 0, 1);
    expect(surfaceVolumes({ existing, design: { corners: back }, outline }).cut).toBeCloseTo(
      15.625,
      12,
    );
  });

  test('four corners of a plane, smaller than the site', () => {
    const corners = Float64Array.of(2, 2, 0, 6, 2, 0.4, 6, 6, 0.8, 2, 6, 0.4);
    const dig = surfaceVolumes({ existing, design: { corners } });
    expect(dig.area).toBeCloseTo(16, 12);
    expect(dig.cut).toBeCloseTo(16 * 0.6, 12);
    expect(dig.deepestCut).toEqual({ depth: 1, x: 2, y: 2 });
  });
});

describe('refusals', () => {
  const existing = rectangle(10, 10, [1, 1, 1, 1]);
  const square = Float64Array.of(1, 1, 4, 1, 4, 4, 1, 4);
  const bad = (...values: readonly number[]) => Float64Array.from(values);

  test.each([
    [{}, 'REQUIRED', ['design']],
    [{ design: LEVEL }, 'REQUIRED', ['existing']],
    [{ existing, design: null }, 'WRONG_TYPE', ['design']],
    [{ existing, design: [0, 0, 0] }, 'WRONG_TYPE', ['design']],
    [{ existing, design: { ...LEVEL, gradeZ: 0 } }, 'UNKNOWN_FIELD', ['design', 'gradeZ']],
    [{ existing, design: { ...LEVEL, corners: bad() } }, 'UNKNOWN_FIELD', ['design', 'z0']],
    [{ existing, design: { ...LEVEL, gradeX: '2%' } }, 'WRONG_TYPE', ['design', 'gradeX']],
    [{ existing, design: LEVEL, outlines: [] }, 'UNKNOWN_FIELD', ['outlines']],
    [{ existing, design: LEVEL, outline: null }, 'WRONG_TYPE', ['outline']],
    [{ existing, design: LEVEL, outline: [square, , square] }, 'REQUIRED', ['outline', 1]],
    [{ existing, design: { z0: 0, gradeX: 0 } }, 'REQUIRED', ['design', 'gradeY']],
    [{ existing, design: { ...LEVEL, z0: Number.NaN } }, 'NOT_FINITE', ['design', 'z0']],
    [{ existing, design: { ...LEVEL, z0: 1e9 } }, 'OUT_OF_RANGE', ['design', 'z0']],
    [{ existing: [0, 0, 0], design: LEVEL }, 'WRONG_TYPE', ['existing']],
    [{ existing: bad(0, 0, 0, 1), design: LEVEL }, 'WRONG_TYPE', ['existing']],
    [{ existing: bad(), design: LEVEL }, 'TOO_FEW', ['existing']],
    [{ existing: bad(0, 0, 0, 1, 0, 0), design: LEVEL }, 'TOO_FEW', ['existing']],
    [
      { existing: bad(0, 0, 0, 1, 0, Infinity, 0, 1, 0), design: LEVEL },
      'NOT_FINITE',
      ['existing', 1, 2],
    ],
    [
      { existing: bad(0, 0, 0, 1, 2e8, 0, 0, 1, 0), design: LEVEL },
      'OUT_OF_RANGE',
      ['existing', 1, 1],
    ],
    [{ existing: bad(0, 0, 0, 1, 1, 0, 2, 2, 0), design: LEVEL }, 'POINTS_COLLINEAR', ['existing']],
    [{ existing: bad(5, 5, 0, 5, 5, 0, 5, 5, 0), design: LEVEL }, 'POINTS_COLLINEAR', ['existing']],
    [{ existing, design: bad(0, 0, 0) }, 'TOO_FEW', ['design']],
    [{ existing, design: { corners: bad(0, 0, 0) } }, 'WRONG_TYPE', ['design', 'corners']],
    [
      { existing, design: { corners: bad(0, 0, 0, 5, 5, 0, 5, 0, 0, 0, 5, 0) } },
      'CORNERS_NOT_CONVEX',
      ['design', 'corners'],
    ],
    [{ existing, design: LEVEL, outline: bad(1, 1, 4, 1) }, 'TOO_FEW', ['outline']],
    [{ existing, design: LEVEL, outline: [] }, 'EMPTY_LIST', ['outline']],
    [{ existing, design: LEVEL, outline: bad(1, 1, 4, 1, 9) }, 'WRONG_TYPE', ['outline']],
    [
      { existing, design: LEVEL, outline: bad(1, 1, 4, NaN, 9, 9) },
      'NOT_FINITE',
      ['outline', 1, 1],
    ],
    [
      { existing, design: LEVEL, outline: bad(1, 1, 4, 4, 4, 1, 1, 4) },
      'SELF_INTERSECTION',
      ['outline'],
    ],
    [{ existing, design: LEVEL, outline: bad(1, 1, 4, 1, 9, 1) }, 'SELF_INTERSECTION', ['outline']],
    [
      { existing, design: LEVEL, outline: [square, bad(2, 2, 3, NaN, 3, 3)] },
      'NOT_FINITE',
      ['outline', 1, 1, 1],
    ],
    [
      { existing, design: LEVEL, outline: [square, bad(6, 6, 8, 6, 8, 8)] },
      'HOLE_OUTSIDE',
      ['outline', 1],
    ],
    [
      {
        existing,
        design: LEVEL,
        outline: [square, bad(2, 2, 3.5, 2, 3.5, 3.5, 2, 3.5), bad(2.2, 2.2, 3, 2.2, 3, 3)],
      },
      'HOLE_OUTSIDE',
      ['outline', 2],
    ],
  ] as const)('%#: %j is refused', (options, code, path) => {
    expect(expectFault(() => surfaceVolumes(options as never), code).path).toEqual(path);
  });

  test('nothing at all', () => {
    expectFault(() => surfaceVolumes(undefined as never), 'WRONG_TYPE');
    expectFault(() => surfaceVolumes(existing as never), 'WRONG_TYPE');
    const high = { existing, design: { ...LEVEL, z0: 1e9 } };
    expect(expectFault(() => surfaceVolumes(high), 'OUT_OF_RANGE').message).toContain(
      '1000000000 is not a level or grade on a site',
    );
  });

  test('coordinates that are neither 0 nor measurable', () => {
    const tiny = existing.map((value) => value * 1e-120);
    expectFault(() => surfaceVolumes({ existing: tiny, design: LEVEL }), 'OUT_OF_RANGE');
  });

  test('an outline closer to itself than floats can tell, and one too small for them', () => {
    const site = bad(0, 0, 0, 25, -5, 1, 25, 5, 1, -5, 5, 1, -5, -5, 1);
    const volume = (...outline: readonly number[]) =>
      surfaceVolumes({ existing: site, design: LEVEL, outline: Float64Array.from(outline) });
    expectFault(() => volume(-1, -1, 1, -1, 2e-17, 0, 1, 1, -1, 1, -9e-17, 0), 'SELF_INTERSECTION');
    expect(volume(-1, -1, 1, -1, 2e-15, 0, 1, 1, -1, 1, -9e-15, 0).area).toBeCloseTo(2, 12);
    expectFault(() => volume(1e-20, 0, 3e-20, 0, 3e-20, 2e-20, 0, 3e-20), 'TOO_FEW');
  });

  test('a point that repeats the one before but for its rounding is passed over', () => {
    const outline = bad(1, 1, 4, 1, 4, 4, 1, 4, 1, 1 + 2 ** -52);
    expect(surfaceVolumes({ existing, design: LEVEL, outline }).area).toBeCloseTo(9, 13);
  });
});
