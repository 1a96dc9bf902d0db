import Delaunator from 'delaunator';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSettlineError } from 'settline';
import { outlineArea } from 'settline/outline';
import { surfaceVolumes, type SurfaceVolumes } from 'settline/geometry';
import {
  averageEndArea,
  gridVolumes,
  prismoidal,
  siteVolumes,
  stateVolume,
  soilBalance,
} from 'settline/volumes';
import { area, length } from 'settline/units';
import { runs } from '../runs.js';

type Point = readonly [x: number, y: number, z: number];
type Place = readonly [x: number, y: number];

const RUNS = runs(100);
const flat = (points: readonly (readonly number[])[]) => Float64Array.from(points.flat());

/** Points on a fine grid, so that lines of many points, squares and circles occur often. */
const coordinate = fc.integer({ min: 0, max: 20 });
const height = fc.integer({ min: -8, max: 8 }).map((eighths) => eighths / 8);
const cloud = (least = 4): fc.Arbitrary<Point[]> =>
  fc
    .uniqueArray(fc.tuple(coordinate, coordinate, height), {
      minLength: least,
      maxLength: 40,
      selector: ([x, y]) => 100 * x + y,
    })
    .filter((points) => hullArea(points) > 0);

/** A site that reaches over the square of 20 by its corners. */
const site = cloud(1).map((points): Point[] => {
  const corners = [
    [0, 0],
    [20, 0],
    [20, 20],
    [0, 20],
  ] as const;
  const rest = points.filter(([x, y]) => !corners.some(([a, b]) => a === x && b === y));
  return [...corners.map(([x, y]): Point => [x, y, (x - y) / 40]), ...rest];
});

/** Points of which no four lie on one circle, so that there is one triangulation only. */
const scattered = cloud().map((points) =>
  points.map(([x, y, z], k): Point => [x + Math.sin(7 * k + 1) / 32, y + Math.cos(5 * k) / 32, z]),
);

const plane = fc.record({
  z0: height,
  gradeX: fc.integer({ min: -8, max: 8 }).map((k) => k / 128),
  gradeY: fc.integer({ min: -8, max: 8 }).map((k) => k / 128),
});

/** A star round the middle of the square: simple by construction, convex or not. */
const star: fc.Arbitrary<Place[]> = fc
  .array(fc.integer({ min: 2, max: 9 }), { minLength: 3, maxLength: 14 })
  .map((radii) =>
    radii.map((radius, i): Place => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [10 + radius * Math.cos(angle), 10 + radius * Math.sin(angle)];
    }),
  );

function ringArea(ring: readonly (readonly number[])[]): number {
  let double = 0;
  ring.forEach(([x = 0, y = 0], k) => {
    const [nx = 0, ny = 0] = ring[(k + 1) % ring.length] ?? [];
    double += x * ny - nx * y;
  });
  return double / 2;
}

function hullArea(points: readonly Point[]): number {
  const { hull } = new Delaunator(Float64Array.from(points.flatMap(([x, y]) => [x, y])));
  return Math.abs(ringArea([...hull].map((k) => points[k] ?? [0, 0])));
}

function near(a: number, b: number, size = 1): void {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-11 * Math.max(size, Math.abs(a)));
}

function alike(a: SurfaceVolumes, b: SurfaceVolumes, tolerance = 1e-9): void {
  for (const field of [
    'cut',
    'fill',
    'net',
    'cutArea',
    'fillArea',
    'area',
    'uncoveredArea',
  ] as const) {
    expect(Math.abs(a[field] - b[field]), field).toBeLessThanOrEqual(tolerance);
  }
  const depths = [a, b].map(({ deepestCut, deepestFill }) => [
    deepestCut?.depth ?? 0,
    deepestFill?.depth ?? 0,
  ]);
  expect(Math.abs((depths[0]?.[0] ?? 0) - (depths[1]?.[0] ?? 0))).toBeLessThanOrEqual(tolerance);
  expect(Math.abs((depths[0]?.[1] ?? 0) - (depths[1]?.[1] ?? 0))).toBeLessThanOrEqual(tolerance);
}

describe('cut less fill is net, and the difference of separate integrals', () => {
  const base = { z0: -10, gradeX: 0, gradeY: 0 };

  test('against a plane, inside an outline', () => {
    fc.assert(
      fc.property(site, plane, star, (points, design, ring) => {
        const [existing, outline] = [flat(points), flat(ring)];
        const dig = surfaceVolumes({ existing, design, outline });
        expect(dig.net).toBe(dig.cut - dig.fill);
        expect(Math.min(dig.cut, dig.fill, dig.cutArea, dig.fillArea)).toBeGreaterThanOrEqual(0);
        const under = surfaceVolumes({ existing, design: base, outline });
        const corners = [
          [0, 0],
          [20, 0],
          [20, 20],
          [0, 20],
        ] as const;
        const { z0, gradeX, gradeY } = design;
        const top = corners.map(([x, y]) => [x, y, z0 + gradeX * x + gradeY * y]);
        const other = surfaceVolumes({ existing: flat(top), design: base, outline });
        near(dig.net, under.net - other.net, 1000);
        near(dig.area, Math.abs(ringArea(ring)), 100);
        expect(dig.cutArea + dig.fillArea).toBeLessThanOrEqual(dig.area * (1 + 1e-12));
        expect(dig.uncoveredArea).toBe(0);
      }),
      RUNS,
    );
  });

  test('against a surface, inside an outline', () => {
    fc.assert(
      fc.property(site, site, star, (points, others, ring) => {
        const [existing, design, outline] = [flat(points), flat(others), flat(ring)];
        const dig = surfaceVolumes({ existing, design, outline });
        const under = surfaceVolumes({ existing, design: base, outline });
        const other = surfaceVolumes({ existing: design, design: base, outline });
        near(dig.net, under.net - other.net, 1000);
        near(dig.area, Math.abs(ringArea(ring)), 100);
        const back = surfaceVolumes({ existing: design, design: existing, outline });
        near(dig.cut, back.fill, 100);
        near(dig.fillArea, back.cutArea, 100);
        near(dig.deepestCut?.depth ?? 0, back.deepestFill?.depth ?? 0);
      }),
      RUNS,
    );
  });
});

describe('every pair of triangles, cut by brute force, gives the same', () => {
  type Corner = readonly [x: number, y: number, z: number];

  function trianglesOf(points: readonly Point[]): Corner[][] {
    const { triangles } = new Delaunator(Float64Array.from(points.flatMap(([x, y]) => [x, y])));
    return Array.from({ length: triangles.length / 3 }, (_, t) =>
      [2, 1, 0].map((k) => points[triangles[3 * t + k] ?? 0] ?? [0, 0, 0]),
    );
  }

  /** The part of a polygon where a function of its corners is not negative. */
  function where(polygon: readonly Corner[], of: (corner: Corner) => number): Corner[] {
    return polygon.flatMap((here, k): Corner[] => {
      const next = polygon[(k + 1) % polygon.length] ?? here;
      const [f, g] = [of(here), of(next)];
      const t = f / (f - g);
      const crossing = here.map((value, axis) => value + t * ((next[axis] ?? 0) - value));
      const between: Corner[] = f < 0 !== g < 0 ? [crossing as unknown as Corner] : [];
      return f >= 0 ? [here, ...between] : between;
    });
  }

  const heightOn = ([a, b, c]: readonly Corner[], x: number, y: number): number => {
    if (a === undefined || b === undefined || c === undefined) return Number.NaN;
    const double = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    const wb = ((x - a[0]) * (c[1] - a[1]) - (y - a[1]) * (c[0] - a[0])) / double;
    const wc = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / double;
    return a[2] + wb * (b[2] - a[2]) + wc * (c[2] - a[2]);
  };

  function volumeOf(polygon: readonly Corner[]): number {
    const [first] = polygon;
    if (first === undefined) return 0;
    return polygon.slice(1, -1).reduce((sum, b, k) => {
      const c = polygon[k + 2] ?? b;
      return sum + (ringArea([first, b, c]) * (first[2] + b[2] + c[2])) / 3;
    }, 0);
  }

  test('two clouds that overlap as they fall', () => {
    fc.assert(
      fc.property(
        scattered,
        scattered,
        fc.tuple(coordinate, coordinate),
        (points, others, [dx, dy]) => {
          const moved = others.map(([x, y, z]): Point => [x + dx / 2, y + dy / 2, z]);
          let [cut, net, whole] = [0, 0, 0];
          // seen from the first point, as the library sees them: where four points lie on one
          // circle, which diagonal is taken depends on where they are seen from
          const [ox, oy] = points[0] ?? [0, 0];
          const seen = (list: readonly Point[]) =>
            list.map(([x, y, z]): Point => [x - ox, y - oy, z]);
          for (const one of trianglesOf(seen(points))) {
            for (const other of trianglesOf(seen(moved))) {
              const shared = other.reduce<Corner[]>((polygon, [ax, ay], k) => {
                const [bx, by] = other[(k + 1) % 3] ?? [0, 0];
                return where(polygon, ([x, y]) => (bx - ax) * (y - ay) - (by - ay) * (x - ax));
              }, one);
              const depths = shared.map(([x, y, z]): Corner => [x, y, z - heightOn(other, x, y)]);
              net += volumeOf(depths);
              cut += volumeOf(where(depths, ([, , d]) => d));
              whole += ringArea(shared);
            }
          }
          const run = () => surfaceVolumes({ existing: flat(points), design: flat(moved) });
          if (whole < 1e-9) {
            expect(run).toThrow();
            return;
          }
          const dig = run();
          near(dig.area, whole, 1000);
          near(dig.net, net, 1000);
          near(dig.cut, cut, 1000);
        },
      ),
      runs(100),
    );
  });
});

describe('invariance', () => {
  test('shift to large coordinates, order of points, start and direction of the outline', () => {
    fc.assert(
      fc.property(site, plane, star, fc.nat(), (points, design, ring, start) => {
        const dig = surfaceVolumes({ existing: flat(points), design, outline: flat(ring) });
        const [dx, dy] = [500_000, 4_500_000];
        const k = start % ring.length;
        const turned = [...ring.slice(k), ...ring.slice(0, k)].reverse();
        // corners of the ring on a grid that large coordinates keep
        const fine = (value: number) => Math.round(value * 2 ** 20) / 2 ** 20;
        const far = surfaceVolumes({
          existing: flat([...points].reverse().map(([x, y, z]) => [x + dx, y + dy, z])),
          design: {
            ...design,
            z0: design.z0 - design.gradeX * dx - design.gradeY * dy,
          },
          outline: flat(turned.map(([x, y]) => [fine(x) + dx, fine(y) + dy])),
        });
        // cocircular points may be joined otherwise: compare what does not depend on it
        expect(Math.abs(far.area - dig.area)).toBeLessThan(1e-3);
        const same = surfaceVolumes({
          existing: flat(points.map(([x, y, z]) => [x + dx, y + dy, z])),
          design: { ...design, z0: design.z0 - design.gradeX * dx - design.gradeY * dy },
          outline: flat(ring.map(([x, y]) => [fine(x) + dx, fine(y) + dy])),
        });
        const home = surfaceVolumes({
          existing: flat(points),
          design,
          outline: flat(ring.map(([x, y]) => [fine(x), fine(y)])),
        });
        alike(same, home);
      }),
      RUNS,
    );
  });

  test('a quarter turn, a mirror and a lift of both surfaces', () => {
    fc.assert(
      fc.property(scattered, plane, (points, design) => {
        const dig = surfaceVolumes({ existing: flat(points), design });
        const turned = surfaceVolumes({
          existing: flat(points.map(([x, y, z]) => [-y, x, z])),
          design: { z0: design.z0, gradeX: -design.gradeY, gradeY: design.gradeX },
        });
        alike(dig, turned);
        const mirrored = surfaceVolumes({
          existing: flat(points.map(([x, y, z]) => [x, -y, z + 3])),
          design: { z0: design.z0 + 3, gradeX: design.gradeX, gradeY: -design.gradeY },
        });
        alike(dig, mirrored);
      }),
      RUNS,
    );
  });

  test('any turn of a plane surface', () => {
    fc.assert(
      fc.property(star, fc.integer({ min: 0, max: 359 }), (ring, degrees) => {
        const [cos, sin] = [
          Math.cos((degrees * Math.PI) / 180),
          Math.sin((degrees * Math.PI) / 180),
        ];
        const turn = ([x, y]: readonly number[]): Place => [
          (x ?? 0) * cos - (y ?? 0) * sin,
          (x ?? 0) * sin + (y ?? 0) * cos,
        ];
        const corners = [
          [0, 0],
          [20, 0],
          [20, 20],
          [0, 20],
        ] as const;
        const existing = flat(corners.map(([x, y]) => [...turn([x, y]), (x - 9) / 20]));
        const level = { z0: 0, gradeX: 0, gradeY: 0 };
        const dig = surfaceVolumes({ existing, design: level, outline: flat(ring.map(turn)) });
        const straight = surfaceVolumes({
          existing: flat(corners.map(([x, y]) => [x, y, (x - 9) / 20])),
          design: level,
          outline: flat(ring),
        });
        alike(dig, straight);
      }),
      RUNS,
    );
  });
});

test('a hairpin whose long edges pass close to many points is kept to', () => {
  const bumps = fc.array(fc.integer({ min: 2, max: 60 }), { minLength: 6, maxLength: 40 });
  fc.assert(
    fc.property(bumps, bumps, (upper, lower) => {
      // two bands along a slit of 0.02, joined at the right
      const chain = (heights: readonly number[], sign: 1 | -1) =>
        heights.map((y, k): Place => [(100 * k) / (heights.length - 1), (sign * y) / 100]);
      const ring: Place[] = [
        [0, 0.01],
        ...chain(upper, 1),
        [101, 0.5],
        [101, -0.5],
        ...chain(lower, -1).reverse(),
        [0, -0.01],
        [100.5, -0.01],
        [100.5, 0.01],
      ];
      const existing = flat([
        [-1, -1, 2],
        [102, -1, 2],
        [102, 1, 2],
        [-1, 1, 2],
      ]);
      const level = { z0: 0, gradeX: 0, gradeY: 0 };
      const dig = surfaceVolumes({ existing, design: level, outline: flat(ring) });
      near(dig.cut, 2 * Math.abs(ringArea(ring)), 100);
      expect(dig.uncoveredArea).toBe(0);
    }),
    RUNS,
  );
});

test('volumes add up over a split of the outline', () => {
  fc.assert(
    fc.property(site, plane, fc.integer({ min: 1, max: 19 }), (points, design, at) => {
      const existing = flat(points);
      const within = (from: number, to: number) =>
        surfaceVolumes({
          existing,
          design,
          outline: Float64Array.of(from, 0, to, 0, to, 20, from, 20),
        });
      const [whole, left, right] = [within(0, 20), within(0, at), within(at, 20)];
      for (const field of ['cut', 'fill', 'cutArea', 'fillArea', 'area'] as const) {
        near(whole[field], left[field] + right[field], 100);
      }
      expect(Math.max(left.deepestCut?.depth ?? 0, right.deepestCut?.depth ?? 0)).toBeCloseTo(
        whole.deepestCut?.depth ?? 0,
        12,
      );
    }),
    RUNS,
  );
});

test('an island takes away what it holds', () => {
  fc.assert(
    fc.property(site, plane, star, (points, design, ring) => {
      const existing = flat(points);
      const inner = flat(ring.map(([x, y]) => [10 + (x - 10) / 3, 10 + (y - 10) / 3]));
      const whole = surfaceVolumes({ existing, design, outline: flat(ring) });
      const hole = surfaceVolumes({ existing, design, outline: inner });
      const rest = surfaceVolumes({ existing, design, outline: [flat(ring), inner] });
      near(rest.cut, whole.cut - hole.cut, 100);
      near(rest.fill, whole.fill - hole.fill, 100);
    }),
    RUNS,
  );
});

describe('closed forms', () => {
  const level = { z0: 0, gradeX: 0, gradeY: 0 };

  test('two planes over a rectangle: a straight zero line', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 50 }), (at, steep) => {
        // depth g (x - c) over 10 by 4: triangles in section
        const [c, g] = [at / 10, steep / 100];
        const dig = surfaceVolumes({
          existing: flat([
            [0, 0, 0],
            [10, 0, 10 * g],
            [10, 4, 10 * g],
            [0, 4, 0],
          ]),
          design: { ...level, z0: c * g },
        });
        near(dig.cut, (4 * g * (10 - c) ** 2) / 2);
        near(dig.fill, (4 * g * c ** 2) / 2);
        near(dig.cutArea, 4 * (10 - c), 40);
      }),
      RUNS,
    );
  });

  test('a pyramid cut by a level plane: the top is similar to the whole', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), (tenths) => {
        const existing = flat([
          [0, 0, 0],
          [6, 0, 0],
          [6, 6, 0],
          [0, 6, 0],
          [3, 3, 2],
        ]);
        const dig = surfaceVolumes({ existing, design: { ...level, z0: tenths / 5 } });
        near(dig.cut, 24 * (1 - tenths / 10) ** 3, 24);
      }),
    );
  });

  test('a paraboloid by refinement: the error falls with the square of the spacing', () => {
    const cap = (cells: number) => {
      const points: number[] = [];
      for (let i = 0; i <= cells; i += 1) {
        for (let j = 0; j <= cells; j += 1) {
          const [x, y] = [(2 * i) / cells - 1, (2 * j) / cells - 1];
          points.push(x, y, 1 - x * x - y * y);
        }
      }
      return surfaceVolumes({ existing: Float64Array.from(points), design: level }).cut;
    };
    const errors = [16, 32, 64, 128].map((cells) => Math.abs(cap(cells) - Math.PI / 2));
    errors.slice(1).forEach((error, k) => {
      expect((errors[k] ?? 0) / error).toBeGreaterThan(3.5);
      expect((errors[k] ?? 0) / error).toBeLessThan(4.5);
    });
    expect(errors[3]).toBeLessThan(1e-3);
  });

  test('a dig that narrows like a wedge or a pyramid agrees with the prismoidal rule', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 }), (a, b) => {
        const [width, depth] = [a / 10, b / 100];
        const existing = flat([
          [0, 0, depth],
          [0, width, depth],
          [7, 0, 0],
          [7, width, 0],
        ]);
        const wedge = prismoidal({
          first: area(a * b, 'm2').dividedBy(1000),
          middle: area(a * b, 'm2').dividedBy(2000),
          last: area(0, 'm2'),
          length: length(7, 'm'),
        });
        near(surfaceVolumes({ existing, design: level }).cut, wedge.toNumber('m3'));
      }),
      RUNS,
    );
  });

  test('a ring sector: section times the way of its centroid (Pappus)', () => {
    // a curved walk from 3 m to 4.2 m, a quarter turn, 0.25 m deep at the inside and 0.1 m outside
    const [inside, outside] = [3, 4.2];
    const steps = 90;
    const ring: Place[] = [];
    for (let k = 0; k <= steps; k += 1) {
      const turn = (k / steps) * (Math.PI / 2);
      ring.push([outside * Math.cos(turn), outside * Math.sin(turn)]);
    }
    for (let k = steps; k >= 0; k -= 1) {
      const turn = (k / steps) * (Math.PI / 2);
      ring.push([inside * Math.cos(turn), inside * Math.sin(turn)]);
    }
    const points: Point[] = [];
    for (let k = 0; k <= 400; k += 1) {
      const turn = (k / 400) * (Math.PI / 2);
      for (let r = 28; r <= 44; r += 1) {
        const radius = r / 10;
        points.push([
          radius * Math.cos(turn),
          radius * Math.sin(turn),
          0.25 - ((radius - inside) / 1.2) * 0.15,
        ]);
      }
    }
    const dig = surfaceVolumes({ existing: flat(points), design: level, outline: flat(ring) });
    const section = 1.2 * 0.175;
    // centroid of the trapezoid from the inside edge: w (a + 2 b) / (3 (a + b))
    const centroid = inside + (1.2 * (0.25 + 0.2)) / (3 * 0.35);
    expect(dig.cut / (section * centroid * (Math.PI / 2))).toBeCloseTo(1, 3);
    const ends = averageEndArea({
      areas: [area(section, 'm2'), area(section, 'm2')],
      spacing: length((centroid * Math.PI) / 2, 'm'),
    });
    expect(dig.cut / ends.toNumber('m3')).toBeCloseTo(1, 3);
  });

  test('grid cells and surfaces agree where the cells are planes', () => {
    fc.assert(
      fc.property(plane, star, ({ z0, gradeX, gradeY }, ring) => {
        const rows = [0, 5, 10, 15, 20].map((y) =>
          [0, 5, 10, 15, 20].map((x) => z0 + gradeX * x + gradeY * y),
        );
        const outline = { unit: 'm', points: ring } as const;
        const grid = gridVolumes({ depths: { unit: 'm', rows }, spacing: '5 m', outline });
        const points = [0, 20].flatMap((y) =>
          [0, 20].map((x) => [x, y, z0 + gradeX * x + gradeY * y] as const),
        );
        const dig = siteVolumes({
          existing: { unit: 'm', points },
          design: { z0: '0 m', gradeX: '0%', gradeY: '0%' },
          outline,
        });
        // pieces with cut and fill are halved seven times: 1/16384 of the depths in a cell
        expect(Math.abs(grid.cut.toNumber('m3') - dig.cut.toNumber('m3'))).toBeLessThan(0.01);
        near(grid.net.toNumber('m3'), dig.net.toNumber('m3'), 1000);
        near(grid.area.toNumber('m2'), outlineArea({ outline }).area.toNumber('m2'), 100);
      }),
      runs(30),
    );
  });
});

describe('hostile input', () => {
  const level = { z0: 0, gradeX: 0, gradeY: 0 };

  test('accepted input gives finite numbers, the rest is refused with a code', () => {
    const wild = fc.oneof(
      { weight: 6, arbitrary: coordinate },
      { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Infinity, -0, 1e-12, 1e9, 1e300) },
    );
    const floats = fc.array(wild, { maxLength: 45 }).map((list) => Float64Array.from(list));
    fc.assert(
      fc.property(floats, fc.option(floats), fc.option(floats), (existing, design, outline) => {
        try {
          const dig = surfaceVolumes({
            existing,
            design: design ?? level,
            ...(outline === null ? {} : { outline }),
          });
          for (const value of Object.values(dig)) {
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
          }
          expect(dig.area).toBeGreaterThan(0);
        } catch (error) {
          expect(isSettlineError(error), String(error)).toBe(true);
        }
      }),
      runs(1000),
    );
  });

  /** What is smaller than floats can multiply is refused as such. */
  const measurable = (value: number) => (Math.abs(value) < 1e-90 ? 0 : value);

  test('points on a line, wherever it runs, have no width', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5e6, max: 5e6, noNaN: true }).map(measurable),
        fc.double({ min: -3, max: 3, noNaN: true }).map(measurable),
        fc.uniqueArray(fc.integer({ min: -100, max: 100 }), { minLength: 3, maxLength: 30 }),
        (at, steep, steps) => {
          const existing = flat(steps.map((x) => [at + x, steep * x - at, 1]));
          expect(() => surfaceVolumes({ existing, design: level })).toThrow(/one line/);
        },
      ),
      RUNS,
    );
  });

  test('repeated points change nothing; two heights at one place are refused', () => {
    fc.assert(
      fc.property(scattered, plane, fc.nat(), (points, design, which) => {
        const extra = points[which % points.length] ?? [0, 0, 0];
        const dig = surfaceVolumes({ existing: flat(points), design });
        const twice = [...points, extra, ...points];
        alike(surfaceVolumes({ existing: flat(twice), design }), dig);
        const other: Point = [extra[0], extra[1], extra[2] + 0.001];
        expect(() => surfaceVolumes({ existing: flat([...points, other]), design })).toThrow(
          /two heights/,
        );
      }),
      RUNS,
    );
  });

  test('the input is left as it was', () => {
    const points = flat([
      [0, 0, 1],
      [3, 0, 1],
      [0, 3, 1],
    ]);
    const before = [...points];
    surfaceVolumes({
      existing: points,
      design: points,
      outline: Float64Array.of(0, 0, 1, 0, 0, 1),
    });
    expect([...points]).toEqual(before);
  });

  test('a hundred thousand points and more, on a grid, twice each', () => {
    const side = 240;
    const points: number[] = [];
    for (let twice = 0; twice < 2; twice += 1) {
      for (let i = 0; i < side; i += 1) {
        for (let j = 0; j < side; j += 1) points.push(i, j, (i + j) / side);
      }
    }
    const dig = surfaceVolumes({ existing: Float64Array.from(points), design: level });
    // a plane over (side - 1)^2, mean height (side - 1) / side
    near(dig.cut, (side - 1) ** 3 / side, 1e5);
    points[3 * side * side + 2] = 5;
    expect(() => surfaceVolumes({ existing: Float64Array.from(points), design: level })).toThrow(
      /points 0 and 57600/,
    );
  });
});

test('soil is conserved through its states, exactly', () => {
  const volume = fc.integer({ min: 0, max: 10_000 }).map((k) => `${k / 8} yd3`);
  fc.assert(
    fc.property(
      volume,
      volume,
      fc.integer({ min: 90, max: 300 }),
      fc.integer({ min: 40, max: 200 }),
      fc.integer({ min: 0, max: 100 }),
      (cut, fill, loose, compacted, usable) => {
        const balance = soilBalance({
          cut: stateVolume(cut, 'bank'),
          fill: stateVolume(fill, 'compacted'),
          factors: { loosePerBank: loose / 100, compactedPerBank: compacted / 100 },
          usable: usable / 100,
        });
        expect(balance.conservation.difference.isZero()).toBe(true);
        expect(balance.spoil.volume.isNegative() || balance.borrow.volume.isNegative()).toBe(false);
        const back = balance.reused.volume.plus(balance.borrow.volume);
        expect(back.equals(balance.neededBank.volume)).toBe(true);
      },
    ),
    RUNS,
  );
});
