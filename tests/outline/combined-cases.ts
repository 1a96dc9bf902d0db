// Outlines for tests of what several cover together: by hand, and from fast-check.
import fc from 'fast-check';
import { outlineArea, type OutlineInput } from 'settline/outline';
import type { ScanEdge } from './scan-area.js';

type Pairs = readonly (readonly [number, number])[];
interface Arc {
  readonly edge: number;
  readonly bulgeMiddleOrdinate: number;
}

/** A ring that runs counter-clockwise. */
export interface TestRing {
  readonly points: Pairs;
  readonly arcs: readonly Arc[];
}

/** A figure in metres, and the same as edges. */
export interface TestFigure {
  readonly rings: readonly TestRing[];
}

export const outlineOf = ({ rings: [outer, ...holes] }: TestFigure): OutlineInput => ({
  unit: 'm',
  points: outer?.points ?? [],
  arcs: outer?.arcs ?? [],
  holes,
});

export const edgesOf = ({ rings }: TestFigure): ScanEdge[] =>
  rings.flatMap(({ points, arcs }, ring) =>
    points.map((a, edge): ScanEdge => {
      const bulge = arcs.find((arc) => arc.edge === edge)?.bulgeMiddleOrdinate ?? 0;
      const b = points[(edge + 1) % points.length] ?? a;
      return { a, b, bulge: ring === 0 ? bulge : -bulge };
    }),
  );

export const rectangle = (
  x: number,
  y: number,
  width: number,
  depth: number,
): Exclude<OutlineInput, readonly unknown[]> => ({
  unit: 'm',
  points: [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ],
});

/** A circle as two arcs; as a hole its bulges are negative. */
export const circle = (x: number, y: number, radius: number, sign = 1) => ({
  unit: 'm' as const,
  points: [
    [x - radius, y],
    [x + radius, y],
  ] as const,
  arcs: [0, 1].map((edge) => ({ edge, bulgeMiddleOrdinate: sign * radius })),
});

const isSound = (figure: TestFigure): boolean => {
  try {
    return outlineArea({ outline: outlineOf(figure) }).area.toNumber('m2') > 0;
  } catch {
    return false;
  }
};

const toMillimetre = (value: number): number => Math.round(value * 1e3) / 1e3;

function starOf(
  centre: readonly [number, number],
  radii: readonly number[],
  bulges: readonly number[],
) {
  const points = radii.map((radius, k): [number, number] => {
    const turn = (2 * Math.PI * k) / radii.length;
    return [
      toMillimetre(centre[0] + radius * Math.cos(turn)),
      toMillimetre(centre[1] + radius * Math.sin(turn)),
    ];
  });
  const arcs = bulges.slice(0, radii.length).flatMap((bulge, edge): Arc[] => {
    return bulge === 0 ? [] : [{ edge, bulgeMiddleOrdinate: bulge }];
  });
  return { points, arcs };
}

const place = fc.tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: -6, max: 6 }));
const bulge = fc.oneof(
  fc.constant(0),
  fc.integer({ min: -900, max: 2500 }).map((v) => v / 1e3),
);

/** A star of 3 to 7 corners, straight or with arcs, with or without a hole. */
export const star = (withArcs: boolean): fc.Arbitrary<TestFigure> =>
  fc
    .record({
      centre: place,
      radii: fc.array(
        fc.integer({ min: 3000, max: 9000 }).map((v) => v / 1e3),
        {
          minLength: 3,
          maxLength: 7,
        },
      ),
      bulges: fc.array(withArcs ? bulge : fc.constant(0), { minLength: 7, maxLength: 7 }),
      hole: fc.boolean(),
    })
    .map(({ centre, radii, bulges, hole }) => {
      const inner = starOf(centre, [1, 0.7, 0.8], withArcs ? [0, -0.2] : []);
      return { rings: [starOf(centre, radii, bulges), ...(hole ? [inner] : [])] };
    })
    .filter(isSound);

/** Corners on a coarse grid: edges that run along each other, corners on edges, corners that meet. */
export const coarse: fc.Arbitrary<TestFigure> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })), {
    minLength: 3,
    maxLength: 7,
  })
  .map((points) => {
    const twice = points.reduce((sum, [x, y], k) => {
      const [nextX, nextY] = points[(k + 1) % points.length] ?? [x, y];
      return sum + x * nextY - nextX * y;
    }, 0);
    return { rings: [{ points: twice < 0 ? [...points].reverse() : points, arcs: [] }] };
  })
  .filter(isSound);
