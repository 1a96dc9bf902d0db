// Surface volumes: ours beside general-purpose triangulations and a bare loop over the points.
import cdt2d from 'cdt2d';
import { Delaunay } from 'd3-delaunay';
import Delaunator from 'delaunator';
import { surfaceVolumes } from 'settline/geometry';
import { inRotation } from './cpu.mjs';
import { loadInternals } from './internals.mjs';
import { compareGrowth, power, printTable, shown } from './report.mjs';

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
    name: 'bare loop: gather heights of ready triangles (floor)',
    most: Infinity,
    prepare: (points) => ({ points, triangles: new Delaunator(xyOf(points)).triangles }),
    run: ({ points, triangles }) => {
      let sum = 0;
      for (let t = 0; t < triangles.length; t += 3) {
        const a = 3 * triangles[t];
        const b = 3 * triangles[t + 1];
        const c = 3 * triangles[t + 2];
        sum +=
          points[a] + points[a + 1] + points[a + 2] + points[b] + points[b + 1] + points[b + 2];
        sum += points[c] + points[c + 1] + points[c + 2];
      }
      return sum;
    },
    isFloor: true,
  },
  {
    name: 'delaunator alone, points in the order given (floor)',
    most: Infinity,
    prepare: xyOf,
    run: (xy) => new Delaunator(xy).triangles.length,
    isFloor: true,
  },
  {
    name: 'd3-delaunay and a loop over its triangles',
    most: Infinity,
    run: (points) => netOf(points, xyOf(points)),
  },
  {
    name: 'cdt2d and a loop over its triangles',
    most: 1e3,
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
/** For figures of which each takes long. */
const FEW = [1e3, 1e4, 1e5];

export async function run() {
  compareGrowth('Cut of scattered points against a plane', SIZES, (count) => {
    const points = pointsOf(count);
    return contenders
      .filter(({ most }) => count <= most)
      .map(({ name, prepare = (given) => given, run: calculate, isFloor }) => {
        const input = prepare(points);
        const result = (cut) => `off by ${Math.abs(cut / EXACT - 1).toExponential(0)}`;
        return { name, run: () => calculate(input), ...(isFloor ? {} : { result }) };
      });
  });
  twoSurfaces();
  await stages();
  harder();
}

/** Another surface of as many points, half a metre below the first on average and tilted otherwise. */
function designOf(count) {
  return pointsOf(count + 1).map((v, k) => {
    if (k % 3 === 2) return 2;
    return k > 12 ? 100 - v : v;
  });
}

/** The first surface averages 2.5 m, the second 2 m, over 10 000 m2. */
const NET = 5_000;

function twoSurfaces() {
  compareGrowth('Surface against surface, as many points each', FEW, (count) => {
    const [existing, design] = [pointsOf(count), designOf(count)];
    const [one, other] = [xyOf(existing), xyOf(design)];
    return [
      {
        name: 'settline',
        run: () => surfaceVolumes({ existing, design }),
        result: ({ cut, fill }) =>
          `net off by ${Math.abs((cut - fill) / NET - 1).toExponential(0)}`,
      },
      {
        name: 'delaunator alone, twice (floor)',
        run: () => new Delaunator(one).triangles.length + new Delaunator(other).triangles.length,
      },
      {
        name: 'd3-delaunay, each against a level (cannot part cut from fill)',
        run: () => netOf(existing, one) - netOf(design, other),
        result: (net) => `net off by ${Math.abs(net / NET - 1).toExponential(0)}`,
      },
    ];
  });
}

/** Volume between scattered points and the level of zero. */
function netOf(points, xy) {
  const { triangles } = new Delaunay(xy);
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    const twice =
      (points[b] - points[a]) * (points[c + 1] - points[a + 1]) -
      (points[b + 1] - points[a + 1]) * (points[c] - points[a]);
    sum += (Math.abs(twice) * (points[a + 2] + points[b + 2] + points[c + 2])) / 6;
  }
  return sum;
}

const INSIDES = `
  export { compare } from './src/geometry/surface/compare.js';
  export { readSurface } from './src/geometry/surface/read-surface.js';`;

/** What each stage takes, by the modules of the sources: the same points, sorted as ours sorts them. */
async function stages() {
  const { compare: integrate, readSurface } = await loadInternals('volumes', INSIDES);
  const rows = [
    ['', ...FEW.map(String)],
    ['reading, sorting, triangles'],
    ['of that triangles'],
    ['integration'],
  ];
  for (const count of FEW) {
    const points = pointsOf(count);
    const surface = readSurface(points, 'existing', ORIGIN);
    const times = inRotation([
      () => readSurface(points, 'existing', ORIGIN),
      () => new Delaunator(surface.xy),
      () => integrate(surface, LEVEL),
    ]);
    const whole = times[0].least + times[2].least;
    times.forEach(({ least }, k) =>
      rows[k + 1].push(`${shown(least)} (${((100 * least) / whole).toFixed(0)} %)`),
    );
  }
  printTable('Stages, and their share of the whole', rows);
}

/** An outline, and figures that bring a triangulation to its knees. */
function harder() {
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
  const rows = [['', ...FEW.map(String), 'power of the points']];
  for (const [name, make] of Object.entries(figures)) {
    const times = FEW.map((count) => {
      const options = make({ count, points: pointsOf(count) });
      return inRotation([() => surfaceVolumes(options)])[0].least;
    });
    rows.push([name, ...times.map(shown), power(times, FEW)]);
  }
  printTable('Outlines and hard figures', rows);
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
