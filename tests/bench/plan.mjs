// A whole plan: two pavements and twelve stakes, and where its time goes.
import { readFileSync } from 'node:fs';
import { Session } from 'node:inspector/promises';
import { planJob, renderJobSheet } from 'settline/job';
import { nanoseconds, printTable } from './report.mjs';

const job = JSON.parse(
  readFileSync(new URL('../../examples/cedar-court.json', import.meta.url), 'utf8'),
);
// the built-in site has eleven stakes; one more on the terrace makes twelve
job.stringLines[2].stakes.splice(2, 0, {
  id: 'G2a',
  x: '19 ft',
  y: '50.5 ft',
  finish: '213.12 ft',
});

export async function run() {
  const plan = planJob(job);
  const rows = [['', 'time']];
  const time = async (name, of) =>
    rows.push([name, `${((await nanoseconds(of)) / 1e6).toFixed(2)} ms`]);
  await time('planJob, warm', () => planJob(job));
  await time('JSON of the plan', () => JSON.stringify(plan));
  await time('the sheet', () => renderJobSheet(plan, { system: 'us' }));
  await time('the working', () => planJob(job).working.length);
  printTable(
    `A plan of ${plan.pavements.length} pavements and ${countStakes(plan)} stakes (aim: under 2 ms)`,
    rows,
  );
  printTable('Where the time of planJob goes (share of samples, inclusive)', await shares());
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
    readJob: 'reading and checking the job',
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
