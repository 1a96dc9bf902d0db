// Zones of marked lines against a general geometry package: union of rectangles, cut by the dig.
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { handDig } from 'settline/site';
import { runs } from '../runs.js';

type Point = readonly [number, number];

/** What is asked of a figure of the package, whose types are loose. */
interface Figure {
  getArea(): number;
}

const factory = new GeometryFactory();
const unite = (a: Figure, b: Figure) => OverlayOp.union(a, b) as Figure;
const common = (a: Figure, b: Figure) => OverlayOp.intersection(a, b) as Figure;
const less = (a: Figure, b: Figure) => OverlayOp.difference(a, b) as Figure;
const polygon = (points: readonly Point[]): Figure => {
  const [first = [0, 0]] = points;
  const closed = [...points, first].map(([x, y]) => new Coordinate(x, y));
  return factory.createPolygon(factory.createLinearRing(closed)) as Figure;
};

const OUTER: readonly Point[] = [
  [0, 0],
  [9, 0],
  [9, 2],
  [4, 3],
  [8, 7],
  [0, 6],
];
const HOLE: readonly Point[] = [
  [1, 2],
  [3, 1],
  [3.5, 2.5],
  [2, 4],
];

/** The rectangle round a stretch, carried on by the reach past both ends. */
function rectangle([ax, ay]: Point, [bx, by]: Point, reach: number): Figure {
  const size = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [((bx - ax) / size) * reach, ((by - ay) / size) * reach];
  return polygon([
    [ax - ux + uy, ay - uy - ux],
    [bx + ux + uy, by + uy - ux],
    [bx + ux - uy, by + uy + ux],
    [ax - ux - uy, ay - uy + ux],
  ]);
}

const place = fc.tuple(fc.integer({ min: -300, max: 1200 }), fc.integer({ min: -300, max: 1000 }));
const marked = fc.record({
  path: fc.uniqueArray(place, { minLength: 2, maxLength: 5, selector: (at) => at.join() }),
  reach: fc.integer({ min: 5, max: 150 }),
});

test('the zones in a dig with a hole, as a geometry package finds them', () => {
  const dig = less(polygon(OUTER), polygon(HOLE));
  fc.assert(
    fc.property(fc.array(marked, { minLength: 1, maxLength: 5 }), (lines) => {
      const stretches = lines.flatMap(({ path, reach }) =>
        path.slice(1).map(([bx, by], k) => {
          const [ax, ay] = path[k] ?? [bx, by];
          return rectangle([ax / 100, ay / 100], [bx / 100, by / 100], reach / 100);
        }),
      );
      const union = stretches.reduce((all, one) => unite(all, one));
      const { area } = handDig({
        outline: { unit: 'm', points: OUTER, holes: [{ points: HOLE }] },
        depth: '1 m',
        lines: lines.map(({ path, reach }, k) => ({
          id: `${k}`,
          path: path.map(([x, y]) => ({
            x: { value: x, unit: 'cm' },
            y: { value: y, unit: 'cm' },
          })),
          width: '0 m',
          tolerance: { value: reach, unit: 'cm' },
        })),
      });
      const expected = common(union, dig).getArea();
      expect(area.toNumber('m2')).toBeCloseTo(expected, 8);
    }),
    runs(100),
  );
});
