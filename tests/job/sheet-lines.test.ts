// What a sheet says of sites that the examples have not, each by pencil; the site is in danger-site.ts.
import { expect, test } from 'vitest';
import {
  planFromJSON,
  renderJobSheet,
  renderWorkSteps,
  type JobPlan,
  type PlanWarning,
} from 'settline/job';
import { savedPlan } from '../built-in-plans.js';
import type { LooseJob } from '../loose-job.js';
import { mutable } from '../mutable.js';
import { planFile } from '../plan-file.js';
import { driveOf, harmlessSite, layGrade } from './danger-site.js';

function planWith(change: (job: LooseJob) => void): JobPlan {
  const job = harmlessSite();
  change(job);
  return planFile(job);
}

const flatText = (text: string): string => text.replace(/\s+/g, ' ');

const sheetOf = (plan: JobPlan): string => flatText(renderJobSheet(plan, { system: 'metric' }));

test('a plane of levels that do not fit says by how much, and which way', () => {
  // one corner 40 mm up: the best plane misses each corner by a quarter of it, up and down in turn
  const plan = planWith((job) =>
    layGrade(job, 'plane', [
      [0, 0, 50.2],
      [8, 0, 50],
      [8, 4, 50],
      [0, 4, 50.24],
    ]),
  );
  const misses = plan.pavements[0]?.grade?.levels.map(({ miss }) => miss.toNumber('mm'));
  expect(misses?.map(Math.round)).toEqual([-10, 10, -10, 10]);
  const sheet = sheetOf(plan);
  expect(sheet).toContain('10 mm above it');
  expect(sheet).toContain('10 mm below it');
  expect(sheet).toMatch(/flattest fall [^ ]+ ok/);
});

test('a fall below the minimum is too flat', () => {
  // 40 mm in 8 m
  const plan = planWith((job) =>
    layGrade(job, 'plane', [
      [0, 0, 50.04],
      [8, 0, 50],
      [8, 4, 50],
      [0, 4, 50.04],
    ]),
  );
  expect(sheetOf(plan)).toContain('flattest fall 0.5% TOO FLAT');
});

test('an edge that bends in, and one that bends out', () => {
  const plan = planWith((job) => {
    driveOf(job)['outline'] = {
      unit: 'm',
      points: [
        [0, 0],
        [8, 0],
        [8, 4],
        [0, 4],
      ],
      arcs: [
        { edge: 1, bulgeMiddleOrdinate: -0.1 },
        { edge: 3, bulgeMiddleOrdinate: 0.15 },
      ],
    };
  });
  const sheet = sheetOf(plan);
  expect(sheet).toContain('its middle is 100 mm into the paving from the straight line');
  expect(sheet).toContain('its middle is 150 mm out of the paving from the straight line');
});

test.each<[string, readonly (string | null)[], string]>([
  ['one edge', ['restraint', null, 'restraint', 'building'], 'edge 2'],
  ['two edges', ['restraint', null, null, 'building'], 'edges 2 and 3'],
  ['three edges', [null, null, null, 'building'], 'edges 1, 2 and 3'],
  ['no edge said', [null, null, null, null], 'every edge'],
])('%s of which nothing is said', (_name, edges, named) => {
  const plan = planWith((job) => {
    driveOf(job)['edges'] = edges;
  });
  const isUnsaid = ({ code }: PlanWarning) => code === 'EDGE_NOT_SAID';
  expect(plan.warnings.filter(isUnsaid).map(({ values }) => values)).toEqual([{ edges: named }]);
});

test('a pavement without a name is named by its id', () => {
  const plan = planWith((job) => {
    delete driveOf(job)['name'];
    // both levels in the western 2 m of the 8 m: the rest is 6 m beyond, three times as far
    layGrade(job, 'line', [
      [0, 2, 50],
      [2, 2, 49.95],
    ]);
  });
  const [extended] = plan.warnings.filter(({ code }) => code === 'GRADE_EXTENDED');
  expect(extended?.subject).toBe('drive');
  expect(extended?.values['far']).toMatchObject({ dimension: 'length' });
});

test('fabric of a short roll is ordered by the roll', () => {
  const plan = planWith((job) => {
    job.materials['geotextile'] = {
      rollWidth: '6 m',
      rollLength: '5 m',
      overlap: '300 mm',
    };
  });
  // 8 m in pieces of 5 m that lap by 0.3 m: two rolls
  const steps = flatText(renderWorkSteps(plan, { system: 'metric' }));
  expect(steps).toContain('2 rolls');
});

test('of many altered figures a sheet names some and counts the rest', () => {
  const saved = mutable(savedPlan(planWith(() => undefined)) as JobPlan);
  const altered = saved.stringLines.flatMap((line) =>
    line.stakes.map((stake) => Object.assign(stake, { station: { value: '77', unit: 'm' } })),
  );
  const plan = planFromJSON(saved, { accept: 'altered' });
  expect(plan.altered).toHaveLength(altered.length);
  expect(sheetOf(plan)).toMatch(
    /ALTERED PLAN\. Its job gives other figures than this sheet: .+ and \d more\./,
  );
});
