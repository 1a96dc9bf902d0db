// A whole plan: two pavements and twelve stakes, and where its time goes.
import { readFileSync } from 'node:fs';
import { Session } from 'node:inspector/promises';
import { planFromJSON, planJob, renderJobSheet } from 'settline/job';
import { loadInternals } from './internals.mjs';
import { compare, compareGrowth, printTable } from './report.mjs';

const siteOf = (name) =>
  JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'));

const job = siteOf('cedar-court');
// the built-in site has eleven stakes; one more on the terrace makes twelve
job.stakes.push({ id: 'G2a', x: '19 ft', y: '50.5 ft', finish: '213.12 ft' });
job.stringLines[2].stakes.splice(2, 0, 'G2a');

/** A plan runs through much code, which takes its time to be compiled to the last tier. */
const PACE = { warm: 3_000_000, batch: 60_000 };

/** Parts that a job need not have, and a site that has them: a part costs what its absence saves. */
const PARTS = {
  'cedar-court': ['stakes.ground', 'oldPaving', 'pavements.edges', 'pavements.crossSlope'],
  'heron-yard': [
    'existingLevels',
    'oldPaving',
    'excavation',
    'utilities',
    'trees',
    'string',
    'pavements.edges',
    'pavements.grade',
    'pavements.border',
    'pavements.betweenStrings',
    'pavements.taperedBase',
    'materials.jointSand',
    'materials.edgeRestraint',
    'materials.geotextile',
  ],
  'slate-wharf': ['ground', 'levelling', 'rates', 'stakes.ground'],
};

/** A site without one of its parts, on all its pavements or stakes. */
function without(site, part) {
  const left = structuredClone(site);
  const [field, inner] = part.split('.');
  const holders = inner === undefined ? [left] : [left[field]].flat();
  for (const holder of holders) delete holder[inner ?? field];
  return left;
}

/** No unknown key is looked for: what the strictness of the reader costs. */
const LAX = {
  'input/unknown-field.ts': `const NONE: ReadonlySet<string> = new Set();
    export const refuseUnknown = (): ReadonlySet<string> => NONE;`,
};
const INSIDES = `
  export { planJob } from './src/job/plan-job.js';
  export { readJob, readWholeJob } from './src/job/read/read-job.js';`;

export async function run() {
  const plan = planJob(job);
  const json = JSON.stringify(plan);
  const text = JSON.stringify(job);
  const strict = await loadInternals('strict', INSIDES);
  const lax = await loadInternals('lax', INSIDES, LAX);
  const read = strict.readJob(job);
  compare(
    'A plan with and without the look for unknown keys',
    [
      { name: 'planJob', run: () => strict.planJob(job) },
      { name: 'planJob, unknown keys not looked for', run: () => lax.planJob(job) },
    ],
    PACE,
  );
  compare(
    `A plan of ${plan.pavements.length} pavements and ${countStakes(plan)} stakes, warm`,
    [
      { name: 'planJob', run: () => strict.planJob(job) },
      { name: 'reading the job', run: () => strict.readWholeJob(job) },
      { name: 'reading it, unknown keys not looked for', run: () => lax.readWholeJob(job) },
      { name: 'readJob (gives the job back as well)', run: () => strict.readJob(job) },
      {
        name: 'planJob of a job that readJob gave',
        run: () => strict.planJob(read),
      },
      {
        name: 'JSON.parse of the job file',
        run: () => JSON.parse(text),
      },
      { name: 'planJob and its working', run: () => strict.planJob(job).working.length },
      { name: 'JSON of the plan', run: () => JSON.stringify(plan) },
      { name: 'planFromJSON', run: () => planFromJSON(JSON.parse(json)) },
      { name: 'the sheet', run: () => renderJobSheet(plan, { system: 'us' }) },
    ],
    PACE,
  );
  const byStakes = (count) => {
    const big = withStakes(count);
    return [
      { name: 'planJob', run: () => strict.planJob(big) },
      { name: 'reading the job', run: () => strict.readWholeJob(big) },
    ];
  };
  compareGrowth('planJob by stakes', [12, 48, 192], byStakes, { what: 'stakes', pace: PACE });
  for (const [name, parts] of Object.entries(PARTS)) {
    const site = siteOf(name);
    const runOf = (of) => () => strict.planJob(of);
    compare(
      `What the parts of examples/${name}.json cost: a plan without each of them`,
      [
        { name: 'all of it', run: runOf(site) },
        ...parts.map((part) => ({ name: `without ${part}`, run: runOf(without(site, part)) })),
      ],
      PACE,
    );
  }
  printTable('Where the time of planJob goes (share of samples, inclusive)', await shares());
}

/** The job with so many stakes on its last string, side by side. */
function withStakes(count) {
  const big = structuredClone(job);
  const line = big.stringLines.at(-1);
  const stakeOf = (id) => big.stakes.find((stake) => stake.id === id);
  const [first, last] = [stakeOf(line.stakes[0]), stakeOf(line.stakes.at(-1))];
  const others = big.stakes.filter(({ id }) => !line.stakes.includes(id));
  const inches = (stake, axis) => 12 * Number.parseFloat(stake[axis]);
  const more = count - others.length;
  const own = Array.from({ length: more }, (_, k) => {
    const place = (axis) => {
      const [from, to] = [inches(first, axis), inches(last, axis)];
      return `${(from + ((to - from) * k) / (more - 1)).toFixed(3)} in`;
    };
    return { id: `S${k}`, x: place('x'), y: place('y'), finish: first.finish };
  });
  big.stakes = [...others, ...own];
  line.stakes = own.map(({ id }) => id);
  return big;
}

const countStakes = (plan) => plan.stringLines.reduce((sum, { stakes }) => sum + stakes.length, 0);

/** Inclusive share of each part, from the profiler of the engine. */
async function shares() {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.setSamplingInterval', { interval: 100 });
  await session.post('Profiler.start');
  for (let k = 0; k < 1500; k += 1) planJob(job);
  const { profile } = await session.post('Profiler.stop');
  session.disconnect();
  const nodes = new Map(profile.nodes.map((node) => [node.id, node]));
  const parents = new Map(
    profile.nodes.flatMap(({ id, children = [] }) => children.map((child) => [child, id])),
  );
  const parts = new Map();
  let total = 0;
  profile.samples.forEach((sample, k) => {
    const spent = profile.timeDeltas[k];
    const seen = new Set();
    for (let id = sample; id !== undefined; id = parents.get(id))
      seen.add(nodes.get(id).callFrame.functionName);
    if (!seen.has('planJob') && !seen.has('(garbage collector)')) return;
    total += spent;
    for (const name of seen) parts.set(name, (parts.get(name) ?? 0) + spent);
  });
  const named = {
    readWholeJob: 'reading and checking the job',
    planPavement: 'pavements',
    planStringLine: 'strings',
    planTotals: 'orders and loads',
    findWarnings: 'warnings',
    normalJob: 'the job in SI units',
    deepFreeze: 'freezing',
    '(garbage collector)': 'garbage collection',
  };
  return [
    ['part', 'share'],
    ...Object.entries(named).map(([name, words]) => [
      words,
      `${((100 * (parts.get(name) ?? 0)) / total).toFixed(0)} %`,
    ]),
  ];
}
