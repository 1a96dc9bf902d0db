import { describe, expect, test } from 'vitest';
import * as settline from 'settline';
import type { Step } from 'settline';
import { attempt } from 'settline/errors';
import { planJob } from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';
import { heronYardJob } from '../heron-yard.js';
import { millGarthJob } from '../mill-garth.js';
import { recordedCalls } from '../properties/recorded-calls.js';
import { slateWharfJob } from '../slate-wharf.js';
import { formulaFaults } from './evaluate-step.js';
import { StepKinds } from './step-kinds.js';
import { stepsIn } from './steps-in.js';

const { calls } = await recordedCalls();
const worked = calls
  .map(({ name, call, given }) => ({ name, given, steps: stepsOfCall(() => call(...given)) }))
  .filter(({ steps }) => steps.length > 0);

/** An example may show a refusal. */
function stepsOfCall(run: () => unknown): readonly Step[] {
  const outcome = attempt(run);
  return outcome.ok ? stepsIn(outcome.value) : [];
}

describe('every formula of an example gives its result by another program', () => {
  test('there are many', () => {
    expect(worked.flatMap(({ steps }) => steps).length).toBeGreaterThan(250);
  });

  test.each(worked)('$name', ({ steps }) => {
    expect(formulaFaults(steps)).toEqual([]);
  });
});

test('every step has a title, and every figure of it a symbol and a name', () => {
  for (const { name, steps } of worked) {
    for (const { title, given, result } of steps) {
      const words = [title, ...[...given, result].flatMap((one) => [one.symbol, one.name])];
      expect(
        words.filter((word) => word.trim() === ''),
        `${name}: ${title}`,
      ).toEqual([]);
    }
  }
});

const sites = [cedarCourtJob(), heronYardJob(), millGarthJob(), slateWharfJob()].map((job) => ({
  job,
  steps: planJob(job).working,
}));

test('every procedure is that of a function of the library, and says what it does', () => {
  const all = [...worked, ...sites].flatMap(({ steps }) => steps);
  const procedures = all.flatMap((step) => (step.kind === 'procedure' ? [step] : []));
  expect(procedures.length).toBeGreaterThan(100);
  for (const { title, procedure, method } of procedures) {
    expect(Object.keys(settline), title).toContain(procedure);
    expect(method, title).toMatch(/\w+ \w+/);
  }
});

test('nine in ten kinds of step are formulas', () => {
  const kinds = new StepKinds();
  for (const { name, given, steps } of worked) {
    // the steps of a plan that is read back are those of the plan
    if (name !== 'planFromJSON') kinds.add(name, given, steps);
  }
  for (const { job, steps } of sites) kinds.add('planJob', job, steps);
  const { count, procedures } = kinds;
  const share = (count - procedures.length) / count;
  process.stdout.write(
    `${count - procedures.length} of ${count} kinds of step are formulas, ${(share * 100).toFixed(1)} %. Procedures:\n${procedures.map((name) => `  ${name}\n`).join('')}`,
  );
  expect(count).toBeGreaterThan(150);
  expect(share).toBeGreaterThanOrEqual(0.9);
});
