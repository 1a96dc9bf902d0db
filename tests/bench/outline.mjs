// Outlines: area and widening from a hundred points to a million, ours beside general-purpose geometry
// packages and a bare loop over a typed array. Digits stand beside speed.
import ClipperLib from 'clipper-lib';
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { polygonArea, polygonCentroid, polygonLength } from 'd3-polygon';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Centroid from 'jsts/org/locationtech/jts/algorithm/Centroid.js';
import { ringArea, ringCrossing, ringMeasures, widenRing } from 'settline/geometry';
import { outlineArea, widenOutline } from 'settline/outline';
import { nanoseconds } from './cpu.mjs';
import { compare, compareGrowth, printTable, shown } from './report.mjs';

const [EAST, NORTH] = [500_000, 4_500_000];
const RADIUS = 100;

/** A regular ring: its area, perimeter, centroid and widening have closed forms. */
function ring(count, x0 = EAST, y0 = NORTH) {
  const xy = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    const turn = (2 * Math.PI * i) / count;
    xy[2 * i] = x0 + RADIUS * Math.cos(turn);
    xy[2 * i + 1] = y0 + RADIUS * Math.sin(turn);
  }
  return xy;
}

const exactArea = (count) => (count * RADIUS ** 2 * Math.sin((2 * Math.PI) / count)) / 2;
const exactPerimeter = (count) => 2 * count * RADIUS * Math.sin(Math.PI / count);
const exactWidened = (count, by) =>
  exactArea(count) + exactPerimeter(count) * by + by * by * count * Math.tan(Math.PI / count);

const pairsOf = (xy) => Array.from({ length: xy.length / 2 }, (_, i) => [xy[2 * i], xy[2 * i + 1]]);

/** What any pass costs that reads the points and takes one square root for each. */
function bareLoop(xy) {
  let sum = 0;
  for (let k = 0; k < xy.length; k += 2) {
    const x = xy[k];
    const y = xy[k + 1];
    sum += Math.sqrt(x * x + y * y);
  }
  return sum;
}

const factory = new GeometryFactory();
function geometryOf(xy) {
  const coordinates = pairsOf(xy).map(([x, y]) => new Coordinate(x, y));
  return factory.createPolygon(factory.createLinearRing([...coordinates, coordinates[0]]));
}

const error = (got, exact) => `off by ${Math.abs(got / exact - 1).toExponential(0)}`;
const from = ([x, y]) => `centroid off by ${Math.hypot(x - EAST, y - NORTH).toExponential(0)} m`;

function areas() {
  compareGrowth('Area, perimeter and centroid', [1e2, 1e4, 1e6], (count) => {
    const xy = ring(count);
    const pairs = pairsOf(xy);
    const geometry = geometryOf(xy);
    return [
      {
        name: 'settline ringMeasures',
        run: () => ringMeasures(xy),
        result: ({ area, centroid }) => `${error(area, exactArea(count))}, ${from(centroid)}`,
      },
      {
        name: 'settline ringArea (area alone)',
        run: () => ringArea(xy),
        result: (area) => error(area, exactArea(count)),
      },
      { name: 'bare loop, one root a point (floor)', run: () => bareLoop(xy) },
      {
        name: 'd3-polygon',
        run: () => [polygonArea(pairs), polygonLength(pairs), polygonCentroid(pairs)],
        result: ([area, , centroid]) =>
          `${error(Math.abs(area), exactArea(count))}, ${from(centroid)}`,
      },
      {
        name: 'jsts',
        run: () => [geometry.getArea(), geometry.getLength(), Centroid.getCentroid(geometry)],
        result: ([area, , { x, y }]) => `${error(area, exactArea(count))}, ${from([x, y])}`,
      },
    ];
  });
}

/** Offset by general packages; each gives an area. */
function clipper2(pairs, by) {
  const path = pairs.map(([x, y]) => ({ x, y }));
  const out = inflatePathsD([path], by, JoinType.Miter, EndType.Polygon, 1000, 8);
  return sumOf(out.map((ringPath) => ringPath.flatMap(({ x, y }) => [x, y])));
}

const SCALE = 1e6;
function clipperOne(pairs, by) {
  const offset = new ClipperLib.ClipperOffset(1000);
  const path = pairs.map(([x, y]) => ({ X: Math.round(x * SCALE), Y: Math.round(y * SCALE) }));
  offset.AddPath(path, ClipperLib.JoinType.jtMiter, ClipperLib.EndType.etClosedPolygon);
  const out = new ClipperLib.Paths();
  offset.Execute(out, by * SCALE);
  return sumOf(out.map((ringPath) => ringPath.flatMap(({ X, Y }) => [X / SCALE, Y / SCALE])));
}

function jsts(geometry, by) {
  const parameters = new BufferParameters(
    8,
    BufferParameters.CAP_FLAT,
    BufferParameters.JOIN_MITRE,
    1000,
  );
  return BufferOp.bufferOp(geometry, by, parameters).getArea();
}

function sumOf(rings) {
  return Math.abs(
    rings.reduce((sum, flat) => {
      const area = ringArea(Float64Array.from(flat));
      let twice = 0;
      for (let k = 0; k < flat.length; k += 2) {
        const next = (k + 2) % flat.length;
        twice += (flat[k] - flat[0]) * (flat[next + 1] - flat[1]);
        twice -= (flat[next] - flat[0]) * (flat[k + 1] - flat[1]);
      }
      return sum + Math.sign(twice) * area;
    }, 0),
  );
}

/** Only moves the corners: right as long as no edge vanishes, and does not know. */
function moveCorners(xy, by) {
  const out = new Float64Array(xy.length);
  const n = xy.length;
  for (let k = 0; k < n; k += 2) {
    const b = k === 0 ? n - 2 : k - 2;
    const a = k === n - 2 ? 0 : k + 2;
    const ux = xy[k] - xy[b];
    const uy = xy[k + 1] - xy[b + 1];
    const vx = xy[a] - xy[k];
    const vy = xy[a + 1] - xy[k + 1];
    const u = Math.sqrt(ux * ux + uy * uy);
    const v = Math.sqrt(vx * vx + vy * vy);
    const nx = uy / u + vy / v;
    const ny = -ux / u - vx / v;
    const part = (2 * by) / (nx * nx + ny * ny);
    out[k] = xy[k] + part * nx;
    out[k + 1] = xy[k + 1] + part * ny;
  }
  return ringArea(out);
}

function smallOutlines() {
  const outlines = {
    'a rectangle': [
      [0, 0],
      [36, 0],
      [36, 14],
      [0, 14],
    ],
    'an L of six corners': [
      [0, 0],
      [9, 0],
      [9, 4],
      [5, 4],
      [5, 7],
      [0, 7],
    ],
    'twelve slanted edges': Array.from({ length: 12 }, (_, i) => {
      const radius = i % 2 === 0 ? 7 : 10;
      const turn = (2 * Math.PI * i) / 12;
      return [radius * Math.cos(turn), radius * Math.sin(turn)].map(
        (v) => Math.round(v * 1e3) / 1e3,
      );
    }),
  };
  for (const [name, points] of Object.entries(outlines)) {
    const outline = { unit: 'm', points };
    const perEdge = points.map((_, edge) => (edge === 0 ? '0 m' : '0.4 m'));
    const geometry = geometryOf(Float64Array.from(points.flat()));
    compare(`Widen ${name} by 0.4 m`, [
      {
        name: 'settline widenOutline, exact, read and checked',
        run: () => widenOutline({ outline, by: '0.4 m' }),
        result: ({ area }) => area.to('m2').toString(),
      },
      {
        name: 'settline widenOutline, an edge at a building',
        run: () => widenOutline({ outline, perEdge }),
      },
      { name: 'settline outlineArea', run: () => outlineArea({ outline }) },
      { name: 'clipper2-ts', run: () => clipper2(points, 0.4), result: String },
      { name: 'clipper-lib', run: () => clipperOne(points, 0.4), result: String },
      { name: 'jsts', run: () => jsts(geometry, 0.4), result: String },
    ]);
  }
}

function widening() {
  const by = 0.4;
  compareGrowth('Widen a ring, mitred', [1e2, 1e3, 1e4], (count) => {
    const xy = ring(count, 0, 0);
    const pairs = pairsOf(xy);
    const geometry = geometryOf(xy);
    const result = (area) => error(area, exactWidened(count, by));
    return [
      { name: 'settline widenRing', run: () => widenRing(xy, by).area, result },
      { name: 'bare loop that moves corners (floor)', run: () => moveCorners(xy, by), result },
      { name: 'clipper2-ts', run: () => clipper2(pairs, by), result },
      { name: 'clipper-lib', run: () => clipperOne(pairs, by), result },
      { name: 'jsts', run: () => jsts(geometry, by), result },
    ];
  });
}

/** Shapes that make naive ways quadratic. */
function awkward() {
  const rows = [
    ['', 'points', 'crossing', 'widen 0.1', 'widen 0.6 (all closes)', 'clipper2-ts 0.6'],
  ];
  for (const teeth of [500, 2000]) {
    const flat = [];
    for (let i = 0; i < teeth; i += 1)
      flat.push(i, i % 2 === 0 ? 10 : 1, i + 1, i % 2 === 0 ? 10 : 1);
    flat.push(teeth, 0, 0, 0);
    const xy = Float64Array.from(flat);
    const pairs = pairsOf(xy).reverse();
    const times = [];
    for (const run of [
      () => ringCrossing(xy),
      () => widenRing(xy, 0.1),
      () => widenRing(xy, 0.6),
      () => clipper2(pairs, 0.6),
    ]) {
      times.push(shown(nanoseconds(run)));
    }
    rows.push(['comb', xy.length / 2, ...times]);
  }
  const line = Float64Array.from({ length: 2e5 }, (_, k) => k >> 1);
  const zigzag = Float64Array.from({ length: 2e5 }, (_, k) => {
    const i = k >> 1;
    if (k % 2 === 1) return i < 5e4 ? i % 2 : 3 + (i % 2);
    return i < 5e4 ? i : 1e5 - 1 - i;
  });
  for (const [name, xy] of [
    ['all on a line', line],
    ['zigzag', zigzag],
  ]) {
    rows.push([name, xy.length / 2, shown(nanoseconds(() => ringCrossing(xy)))]);
  }
  printTable('Awkward figures', rows);
}

export function run() {
  areas();
  smallOutlines();
  widening();
  awkward();
}
