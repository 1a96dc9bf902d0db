// Memory: the most that a fresh process holds while it does one thing, and what a kept plan takes.
import { inFresh, peakMemory } from './fresh.mjs';
import { printTable } from './report.mjs';

const POINTS = `const n = 1e6, xy = new Float64Array(2 * n);
  for (let i = 0; i < n; i += 1) {
    xy[2 * i] = 100 * Math.cos((2 * Math.PI * i) / n);
    xy[2 * i + 1] = 100 * Math.sin((2 * Math.PI * i) / n);
  }`;
const PAIRS = 'const pairs = Array.from({ length: n }, (_, i) => [xy[2 * i], xy[2 * i + 1]]);';
const HEIGHTS = `const n = 1e6, xyz = new Float64Array(3 * n);
  for (let i = 0; i < n; i += 1) {
    xyz[3 * i] = 100 * ((i * 0.618033988749895) % 1);
    xyz[3 * i + 1] = 100 * ((i * 0.754877666246693) % 1);
    xyz[3 * i + 2] = 1 + 0.02 * xyz[3 * i];
  }`;
const ours = (call) => `const m = await import('settline/geometry'); m.${call};`;

const MILLION = [
  ['settline ringMeasures', POINTS, ours('ringMeasures(xy)')],
  ['settline ringCrossing', POINTS, ours('ringCrossing(xy)')],
  ['settline widenRing', POINTS, ours('widenRing(xy, 1e-5)')],
  [
    'd3-polygon, centroid',
    POINTS,
    `const m = await import('d3-polygon'); ${PAIRS} m.polygonCentroid(pairs);`,
  ],
  ['settline fitLine', POINTS, ours('fitLine(xy)')],
  [
    'settline surfaceVolumes against a plane',
    HEIGHTS,
    ours('surfaceVolumes({ existing: xyz, design: { z0: 0, gradeX: 0, gradeY: 0 } })'),
  ],
  [
    'delaunator alone',
    HEIGHTS,
    `const { default: D } = await import('delaunator'); const xy = new Float64Array(2 * n);
     for (let i = 0; i < n; i += 1) { xy[2 * i] = xyz[3 * i]; xy[2 * i + 1] = xyz[3 * i + 1]; }
     new D(xy);`,
  ],
];

export function run() {
  const bare = new Map([POINTS, HEIGHTS].map((make) => [make, peakMemory(make)]));
  printTable('Peak of a process at 1e6 points, beyond one that only makes the points', [
    ['', 'more'],
    ...MILLION.map(([name, make, code]) => [
      name,
      `${(peakMemory(`${make}\n${code}`) - bare.get(make)).toFixed(0)} MB`,
    ]),
  ]);
  plans();
}

/** What stays after the collector has been, for each of a hundred plans that are kept. */
function plans() {
  const kept = (make) => {
    const code = `const { readFileSync } = await import('node:fs');
      const job = JSON.parse(readFileSync('examples/cedar-court.json', 'utf8'));
      const { planJob } = await import('settline/job');
      const make = ${make}; const kept = [make(), make()]; gc();
      const used = process.memoryUsage().heapUsed;
      for (let k = 0; k < 100; k += 1) kept.push(make());
      gc(); const more = process.memoryUsage().heapUsed - used + 0 * kept.length;`;
    const [bytes] = inFresh(code, { report: 'more', flags: ['--expose-gc'] });
    return `${(bytes / 100 / 1024).toFixed(0)} kB`;
  };
  printTable('Memory of a plan that is kept', [
    ['', 'each'],
    ['plan', kept('() => planJob(job)')],
    [
      'plan whose working has been asked for',
      kept('() => { const p = planJob(job); p.working.length; return p; }'),
    ],
    ['its JSON as text', kept('() => Buffer.from(JSON.stringify(planJob(job))).toString()')],
  ]);
}
