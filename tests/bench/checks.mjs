// The straightedge along a long profile: beside a plain double loop over typed arrays, and beside the
// upper hull of every position by a general hull package.
import { polygonHull } from 'd3-polygon';
import { scanStraightedge } from 'settline/geometry';
import { checkFlatness } from 'settline/checks';
import { nanoseconds } from './cpu.mjs';
import { compare, compareGrowth, printTable, shown as time } from './report.mjs';

const LENGTH = 3;

/** A rolling surface with rough spots, the same at every run, readings about `spacing` apart. */
function profileOf(count, spacing) {
  const flat = new Float64Array(2 * count);
  let seed = 7;
  for (let i = 0; i < count; i += 1) {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    flat[2 * i] = (i + 0.3 * (seed / 2147483648)) * spacing;
    flat[2 * i + 1] = 0.01 * Math.sin(flat[2 * i] / 4) + 0.003 * (seed / 2147483648);
  }
  return flat;
}

/** The same rule, reading by reading. */
function doubleLoop(flat) {
  let greatest = 0;
  for (let i = 0; i < flat.length; i += 2) {
    let to = i;
    let steepest = -Infinity;
    for (let k = i + 2; k < flat.length && flat[k] - flat[i] <= LENGTH; k += 2) {
      const slope = (flat[k + 1] - flat[i + 1]) / (flat[k] - flat[i]);
      if (slope >= steepest) {
        to = k;
        steepest = slope;
      }
    }
    for (let k = i + 2; k < to; k += 2) {
      const gap = flat[i + 1] + steepest * (flat[k] - flat[i]) - flat[k + 1];
      if (gap > greatest) greatest = gap;
    }
  }
  return greatest;
}

/** The hull of the readings under every position, and every reading below it. */
function hullOfEach(flat) {
  const points = Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]]);
  let greatest = 0;
  for (let i = 0, end = 0; i < points.length; i += 1) {
    while (end < points.length && points[end][0] - points[i][0] <= LENGTH) end += 1;
    // a point far below closes the hull, so that the rest of it is the upper one
    const [from, to] = [points[i], points[end - 1]];
    if (end - i < 3) continue;
    const under = [(from[0] + to[0]) / 2, -1e6];
    const upper = polygonHull([...points.slice(i, end), under])
      .filter((point) => point !== under)
      .sort((a, b) => a[0] - b[0]);
    for (let k = i + 1, edge = 0; k < end - 1; k += 1) {
      while (upper[edge + 1][0] < points[k][0]) edge += 1;
      const [a, b] = [upper[edge], upper[edge + 1]];
      const gap = a[1] + ((b[1] - a[1]) * (points[k][0] - a[0])) / (b[0] - a[0]) - points[k][1];
      if (gap > greatest) greatest = gap;
    }
  }
  return greatest;
}

/** A loop that only reads the profile. */
function read(flat) {
  let sum = 0;
  for (let i = 0; i < flat.length; i += 1) sum += flat[i];
  return sum;
}

const shown = (metres) => `${(1000 * metres).toFixed(12)} mm`;

export async function run() {
  for (const [count, spacing] of [
    [20_000, 0.1],
    [20_000, 0.025],
    [5_000, 0.001],
  ]) {
    const flat = profileOf(count, spacing);
    compare(`${count} readings, ${LENGTH / spacing} under the edge`, [
      {
        name: 'scanStraightedge',
        run: () => scanStraightedge(flat, { length: LENGTH }).greatestGap,
        result: shown,
      },
      { name: 'double loop', run: () => doubleLoop(flat), result: shown },
      { name: 'hull package, every position', run: () => hullOfEach(flat), result: shown },
      { name: 'reading only (floor)', run: () => read(flat) },
    ]);
  }
  compareGrowth('A straightedge over readings 0.1 m apart', [1e3, 1e4, 1e5], (count) => {
    const flat = profileOf(count, 0.1);
    return [
      {
        name: 'scanStraightedge',
        run: () => scanStraightedge(flat, { length: LENGTH }).greatestGap,
      },
      { name: 'double loop', run: () => doubleLoop(flat) },
      { name: 'reading only (floor)', run: () => read(flat) },
    ];
  });
  const flat = profileOf(200, 0.1);
  const metres = (value) => ({ value: value.toFixed(4), unit: 'm' });
  const profile = Array.from({ length: 200 }, (_, i) => ({
    station: metres(flat[2 * i]),
    height: metres(flat[2 * i + 1]),
  }));
  const exact = nanoseconds(() => checkFlatness({ profile, length: '3 m' }));
  printTable('The exact one, for a person to read', [
    ['', 'time'],
    ['200 readings, 30 under the edge', time(exact)],
  ]);
}
