// What computes in the pages, without a browser: every block answers with its ready numbers, and the
// figures of a plan that the page asks `explain` about are there.
import { readFileSync } from 'node:fs';
import { attempt } from 'settline/errors';
import { explain, planJob, type JobInput } from 'settline/job';
import { describe, expect, test } from 'vitest';
import { BLOCKS, type BlockName } from '../../docs/.vitepress/live/blocks/index.js';
import { partsOf } from '../../docs/.vitepress/live/job/plan-parts.js';

const site = new URL('../../examples/mill-garth.json', import.meta.url);
const plan = planJob(JSON.parse(readFileSync(site, 'utf8')) as JobInput);

test('every figure of a plan has an origin, and the working knows every part by its name', () => {
  const parts = partsOf(plan);
  const subjects = plan.working.map(({ subject }) => subject);
  for (const { subject } of parts) expect(subjects).toContain(subject);
  const outcomes = parts.flatMap(({ figures }) =>
    figures.map(({ path }) => attempt(() => explain(plan, path))),
  );
  const faults = outcomes.flatMap((one) => (one.ok ? [] : one.errors.map(({ code }) => code)));
  expect(outcomes.length).toBeGreaterThan(300);
  expect(faults).toEqual([]);
});

describe.each(Object.keys(BLOCKS) as BlockName[])('block %s', (name) => {
  test('answers with its ready numbers', async () => {
    const { block } = await BLOCKS[name]();
    const outcome = block.run(block.options);
    expect(outcome.ok ? outcome.value.answer : outcome.errors).toMatch(/^[A-Z\d].*\.$/);
  });
});
