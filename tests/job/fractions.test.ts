import { expect, test } from 'vitest';
import { planFromJSON, planJob, readJob, renderJobSheet } from 'settline/job';
import { cedarCourtFile } from '../cedar-court.js';

const file = cedarCourtFile();
const { stones, sands, pavers } = file.materials;
Object.assign(file.soil, { loosePerBank: '5/3', compactedPerBank: '6/7' });
for (const loose of [...stones, ...sands]) {
  Object.assign(loose, { compactedPerLoose: '5/6', moisture: '1/30', waste: '1/12' });
}
for (const paver of pavers) Object.assign(paver, { breakage: '1/30' });
const plan = planJob(readJob(file));

test('a fraction in a job counts as all of itself', () => {
  for (const { spoil, lifts, stones: ordered, bedding } of plan.pavements) {
    expect(spoil.loose.volume.equals(spoil.bank.volume.times('5/3'))).toBe(true);
    for (const { loose, compacted } of lifts) {
      expect(loose.equals(compacted.times('6/5'))).toBe(true);
    }
    for (const { order } of [...ordered, bedding]) {
      const { loose, compacted } = order;
      expect(loose.volume.equals(compacted.volume.times('6/5').times('13/12'))).toBe(true);
    }
  }
});

test('its plan is the same after it was saved', () => {
  const saved = JSON.stringify(plan);
  const again = planFromJSON(JSON.parse(saved));
  expect(again.figures).toBe('planned');
  expect(JSON.stringify(again)).toBe(saved);
  expect(JSON.stringify(planJob(plan.job))).toBe(saved);
  const options = { system: 'us' } as const;
  expect(renderJobSheet(again, options)).toBe(renderJobSheet(plan, options));
});
