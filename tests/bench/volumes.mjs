// Surface volumes: ours beside general-purpose triangulations and a bare loop over the points.
import cdt2d from 'cdt2d';
import { Delaunay } from 'd3-delaunay';
import Delaunator from 'delaunator';
import { surfaceVolumes } from 'settline/geometry';
import { compare } from '../../dist/volumes/surface/compare.js';
import { readSurface } from '../../dist/volumes/surface/read-surface.js';
import { printTable } from './report.mjs';

/** A number from 0 to 1 that depends on its place alone: each run measures the same points. */
function scattered(k) {
  const x = Math.sin(k * 12.9898 + 4.1414) * 43758.5453;
  return x - Math.floor(x);
}

/** Points over 100 m by 100 m, on a plane that the result can be checked against. */
function pointsOf(count) {
  const points = new Float64Array(3 * count);
  points.set([0, 0, 1, 100, 0, 3, 100, 100, 4, 0, 100, 2]);
  for (let k = 4; k < count; k += 1) {
    const [x, y] = [100 * scattered(2 * k), 100 * scattered(2 * k + 1)];
    points.set([x, y, 1 + 0.02 * x + 0.01 * y], 3 * k);
  }
  return points;
}

/** Mean height 2.5 m over 10 000 m2. */
const EXACT = 25_000;

/** Best time of a run in milliseconds: once, then again for a quarter of a second. */
function time(run) {
  const end = performance.now() + 250;
  let best = Infinity;
  do {
    const start = performance.now();
    run();
    best = Math.min(best, performance.now() - start);
  } while (performance.now() < end);
  return best;
}

const triangleVolume = (a, b, c) =>
  (Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) * (a[2] + b[2] + c[2])) /
  6;

function xyOf(points) {
  const xy = new Float64Array((2 * points.length) / 3);
  for (let k = 0; k < xy.length / 2; k += 1) {
    xy[2 * k] = points[3 * k];
    xy[2 * k + 1] = points[3 * k + 1];
  }
  return xy;
}

const LEVEL = { z0: 0, gradeX: 0, gradeY: 0 };
const ORIGIN = { x: 0, y: 0 };
const contenders = [
  {
    name: 'settline',
    most: Infinity,
    run: (points) => surfaceVolumes({ existing: points, design: LEVEL }).cut,
  },
  {
    name: 'bare loop: gather heights and corners of ready triangles',
    most: Infinity,
    prepare: (points) => ({ points, triangles: new Delaunator(xyOf(points)).triangles }),
    run: ({ points, triangles }) => {
      let sum = 0;
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
        sum +=
          points[a] + points[a + 1] + points[a + 2] + points[b] + points[b + 1] + points[b + 2];
        sum += points[c] + points[c + 1] + points[c + 2];
      }
      return sum;
    },
    isFloor: true,
  },
  {
    name: 'delaunator alone, points in the order given',
    most: Infinity,
    prepare: xyOf,
    run: (xy) => new Delaunator(xy).triangles.length,
    isFloor: true,
  },
  {
    name: 'd3-delaunay and a loop over its triangles',
    most: Infinity,
    run: (points) => {
      const { triangles } = new Delaunay(xyOf(points));
      let sum = 0;
      for (let t = 0; t < triangles.length; t += 3) {
        const at = (k) => points.subarray(3 * triangles[t + k], 3 * triangles[t + k] + 3);
        sum += triangleVolume(at(0), at(1), at(2));
      }
      return sum;
    },
  },
  {
    name: 'cdt2d and a loop over its triangles',
    most: 1e4,
    prepare: (points) =>
      Array.from({ length: points.length / 3 }, (_, k) => [...points.subarray(3 * k, 3 * k + 3)]),
    run: (points) =>
      cdt2d(points.map(([x, y]) => [x, y])).reduce(
        (sum, [a, b, c]) => sum + triangleVolume(points[a], points[b], points[c]),
        0,
      ),
  },
];

const SIZES = [1e2, 1e3, 1e4, 1e5, 1e6];
const shown = (ms) =>
  ms < 1 ? `${(1000 * ms).toFixed(0)} us` : `${ms.toFixed(ms < 100 ? 1 : 0)} ms`;

/** Peak of the memory during a run, over what was there before, in megabytes. */
function peakMemory(run) {
  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  const kept = run();
  const peak = process.resourceUsage().maxRSS * 1024;
  return { kept, megabytes: Math.max(0, peak - before) / 1e6 };
}

export function run() {
  const largest = pointsOf(1e6);
  // first of all, because the peak of a process never falls
  const { megabytes } = peakMemory(() => surfaceVolumes({ existing: largest, design: LEVEL }));
  const sizes = SIZES.map((count) => ({ count, points: pointsOf(count) }));
  const times = contenders.map(({ most, prepare = (points) => points, run: calculate }) =>
    sizes.map(({ count, points }) => {
      if (count > most) return undefined;
      const input = prepare(points);
      return time(() => calculate(input));
    }),
  );
  printTable('Cut of scattered points against a plane (time, and ratio to ours)', [
    ['', ...SIZES.map(String), 'off the exact volume', 'growth'],
    ...contenders.map(
      ({ name, most, prepare = (points) => points, run: calculate, isFloor }, k) => {
        const own = times[k] ?? [];
        const cells = own.map((ms, n) =>
          ms === undefined ? '-' : `${shown(ms)} (${(ms / times[0][n]).toPrecision(2)})`,
        );
        const off = Math.abs(calculate(prepare(sizes[most < 1e5 ? 2 : 3].points)) / EXACT - 1);
        const growth =
          own[4] === undefined ? '' : `n^${Math.log10(own[4] / own[3]).toFixed(2)} from 1e5 to 1e6`;
        return [name, ...cells, isFloor ? '' : off.toExponential(0), growth];
      },
    ),
  ]);
  share(sizes);
  harder(sizes);
  console.log(`\nPeak memory over the points themselves at 1e6 points: ${megabytes.toFixed(0)} MB`);
}

/** What each stage takes, by the modules of the build: the same points, sorted as ours sorts them. */
function share(sizes) {
  const stages = { 'reading and sorting': [], 'its triangles': [], integration: [] };
  for (const { points } of sizes) {
    const read = () => readSurface(points, 'existing', ORIGIN);
    const surface = read();
    const triangles = time(() => new Delaunator(surface.xy));
    stages['reading and sorting'].push(Math.max(0, time(read) - triangles));
    stages['its triangles'].push(triangles);
    stages.integration.push(time(() => compare(surface, LEVEL)));
  }
  const whole = sizes.map((_, k) =>
    Object.values(stages).reduce((sum, times) => sum + times[k], 0),
  );
  printTable('Stages, and their share of the whole', [
    ['', ...SIZES.map(String)],
    ...Object.entries(stages).map(([name, times]) => [
      name,
      ...times.map((ms, k) => `${shown(ms)} (${((100 * ms) / whole[k]).toFixed(0)} %)`),
    ]),
  ]);
}

/** Dense figures with nothing between them: a triangulation that adds point by point has a hard time. */
const MOST_ON_RINGS = 1e5;

/** An outline, a second surface, and figures that bring a triangulation to its knees. */
function harder(sizes) {
  const star = Float64Array.from({ length: 80 }, (_, k) => {
    const [turn, radius] = [(Math.PI * (k >> 1)) / 20, (k >> 1) % 2 === 0 ? 45 : 25];
    return 50 + radius * (k % 2 === 0 ? Math.cos(turn) : Math.sin(turn));
  });
  const figures = {
    'scattered points': ({ points }) => ({ existing: points, design: LEVEL }),
    'in an outline of 40 corners': ({ points }) => ({
      existing: points,
      design: LEVEL,
      outline: star,
    }),
    'against another surface of as many points': ({ points, count }) => ({
      existing: points,
      design: pointsOf(count + 1).map((v, k) => (k % 3 === 2 ? 0 : k > 12 ? 100 - v : v)),
    }),
    'on a grid': ({ count }) => ({ existing: gridOf(Math.round(Math.sqrt(count))), design: LEVEL }),
    'each point four times': ({ points }) => ({
      existing: points.map((_, k) => points[k % (3 * Math.ceil(points.length / 12))]),
      design: LEVEL,
    }),
    'on a line, one beside it': ({ count }) => ({ existing: lineOf(count), design: LEVEL }),
    'rings, as many points round as across': ({ count }) => {
      const side = Math.round(Math.sqrt(count));
      return { existing: ringsOf(side, side), design: LEVEL };
    },
    'on one circle': ({ count }) => ({ existing: ringsOf(count, 1), design: LEVEL }),
    'on 20 rings': ({ count }) => ({ existing: ringsOf(count / 20, 20), design: LEVEL }),
  };
  const onFewRings = new Set(['on one circle', 'on 20 rings']);
  const few = sizes.slice(2);
  const rows = [['', ...few.map(({ count }) => String(count)), 'growth, last step']];
  for (const [name, make] of Object.entries(figures)) {
    const measured = few.filter(({ count }) => !onFewRings.has(name) || count <= MOST_ON_RINGS);
    const times = measured.map((size) => {
      const options = make(size);
      return time(() => surfaceVolumes(options));
    });
    const growth = Math.log10(times.at(-1) / times.at(-2)).toFixed(2);
    rows.push([name, ...few.map((_, k) => (k in times ? shown(times[k]) : '-')), `n^${growth}`]);
  }
  printTable('Outlines, two surfaces, hard figures', rows);
}

function gridOf(side) {
  const points = new Float64Array(3 * side * side);
  for (let k = 0; k < side * side; k += 1) points.set([k % side, Math.floor(k / side), 1], 3 * k);
  return points;
}

function ringsOf(round, rings) {
  const points = new Float64Array(3 * round * rings);
  for (let k = 0; k < round * rings; k += 1) {
    const turn = (2 * Math.PI * (k % round)) / round;
    const radius = (100 * (1 + Math.floor(k / round))) / rings;
    points.set([radius * Math.cos(turn), radius * Math.sin(turn), 1], 3 * k);
  }
  return points;
}

function lineOf(count) {
  const points = new Float64Array(3 * count);
  for (let k = 1; k < count; k += 1) points.set([0.37 * k, 0.11 * k, 1], 3 * k);
  points.set([0, count / 4, 1], 0);
  return points;
}
