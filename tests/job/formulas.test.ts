import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob, type JobInput } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';
import { formulaFaults } from '../formulas/evaluate-step.js';
import { heronYardJob } from '../heron-yard.js';
import { millGarthJob } from '../mill-garth.js';
import { jobOf, site } from '../properties/site-jobs.js';
import { runs } from '../runs.js';
import { slateWharfJob } from '../slate-wharf.js';

const faultsOfPlan = (job: JobInput): string[] => formulaFaults(planJob(job).working);

describe('the formulas of a plan hold', () => {
  test.each([
    ['Cedar Court', cedarCourtJob],
    ['Heron Yard', heronYardJob],
    ['Mill Garth', millGarthJob],
    ['Slate Wharf', slateWharfJob],
  ])('%s', (_, job) => {
    expect(faultsOfPlan(job())).toEqual([]);
  });

  test('of made-up sites', { timeout: 600_000 }, () => {
    fc.assert(
      fc.property(site, fc.constantFrom('us' as const, 'metric' as const), (of, system) => {
        expect(faultsOfPlan(jobOf(of, system))).toEqual([]);
      }),
      runs(50),
    );
  });
});
