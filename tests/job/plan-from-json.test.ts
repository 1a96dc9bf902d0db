import { describe, expect, test } from 'vitest';
import { comparePlans, planFromJSON, renderJobSheet, type JobPlan } from 'settline/job';
import { pathText } from 'settline';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { LIBRARY_VERSION } from '../../src/library-version.js';
import { builtInPlans, savedPlan } from '../built-in-plans.js';
import { expectFault, faultsOf } from '../faults.js';
import { mutable } from '../mutable.js';

const [[, plan] = []] = builtInPlans();
if (plan === undefined) expect.unreachable();
const saved = () => mutable(savedPlan(plan) as JobPlan);

/** A plan with another paver order, a longer surface and a moved stake. */
function changed() {
  const other = saved();
  const [pavers] = other.totals.pavers;
  const [line] = other.stringLines;
  const [pavement] = other.pavements;
  if (pavers === undefined || line === undefined || pavement === undefined) expect.unreachable();
  pavers.order += 1;
  Object.assign(pavement, { extension: { value: '1', unit: 'm' } });
  line.note = 'nothing to do';
  return other;
}

const PATHS = ['pavements[0].extension', 'stringLines[0].note', 'totals.pavers[0].order'];

describe('figures that the job does not give', () => {
  test('all are told, in the order of the plan', () => {
    const faults = faultsOf(() => planFromJSON(changed()));
    expect(faults.map(({ path }) => pathText(path))).toEqual(PATHS);
    expect(new Set(faults.map(({ code }) => code))).toEqual(new Set(['PLAN_ALTERED']));
    expect(faults[2]?.params).toMatchObject({ planned: '6817', got: '6818' });
    expect(faults[2]?.message).not.toContain('version');
  });

  test('no more than 100 are listed, and the rest counted', () => {
    const other = mutable(savedPlan({ ...plan, working: plan.working }) as JobPlan);
    for (const step of other.working) {
      step.title = 'x';
      step.result.name = 'y';
    }
    const faults = faultsOf(() => planFromJSON(other));
    const more = 2 * plan.working.length - 100;
    expect(more).toBeGreaterThan(0);
    expect(faults.filter(({ code }) => code === 'PLAN_ALTERED')).toHaveLength(100);
    const last = faults[100];
    expect([last?.code, last?.params['count']]).toEqual(['MORE_FAULTS', more]);
  });

  test('accepted, they are read as saved and marked', () => {
    const read = planFromJSON(changed(), { accept: 'altered' });
    expect(read.figures).toBe('altered');
    expect(read.altered.map(pathText)).toEqual(PATHS);
    expect(read.totals.pavers[0]?.order).toBe(6818);
    expect(read.pavements[0]?.extension.to('m').toString()).toBe('1');
    expect(Object.isFrozen(read.pavements[0]?.dig)).toBe(true);
  });

  test('the sheet says so on top', () => {
    const sheet = renderJobSheet(planFromJSON(changed(), { accept: 'altered' }), { system: 'us' });
    const top = sheet.slice(0, sheet.indexOf('CHECK BEFORE')).replace(/\s+/g, ' ');
    expect(top).toContain('ALTERED PLAN');
    for (const path of PATHS) expect(top).toContain(path);
    expect(top).not.toContain('version');
  });

  test('a plan without changes is not marked', () => {
    const read = planFromJSON(saved(), { accept: 'altered' });
    expect([read.figures, read.altered]).toEqual(['planned', []]);
    expect(read).toEqual(plan);
  });

  test('working that was changed is told', () => {
    const sent = savedPlan({ ...plan, working: plan.working }) as JobPlan;
    const other = mutable(sent);
    const [step] = other.working;
    if (step === undefined) expect.unreachable();
    step.title = 'another title';
    const faults = faultsOf(() => planFromJSON(other));
    expect(faults.map(({ path }) => pathText(path))).toEqual(['working[0].title']);
  });

  test('an unknown choice of what to accept is refused', () => {
    const fault = expectFault(
      () => planFromJSON(saved(), { accept: 'all' as 'same' }),
      'UNKNOWN_CHOICE',
    );
    expect(fault.path).toEqual(['accept']);
  });
});

describe('versions of the library', () => {
  const byAnother = () => Object.assign(changed(), { libraryVersion: '0.0.9' });

  test('the version is that of the package', () => {
    const file = join(import.meta.dirname, '../../package.json');
    const { version } = JSON.parse(readFileSync(file, 'utf8')) as { version: string };
    expect([LIBRARY_VERSION, plan.libraryVersion]).toEqual([version, version]);
  });

  test('figures that differ name both versions', () => {
    const [fault] = faultsOf(() => planFromJSON(byAnother()));
    expect(fault?.message).toContain('version 0.0.9 of the library');
    expect(fault?.message).toContain(`this is version ${LIBRARY_VERSION}`);
    expect(fault?.params).toMatchObject({ savedBy: '0.0.9', readBy: LIBRARY_VERSION });
    const read = planFromJSON(byAnother(), { accept: 'altered' });
    const sheet = renderJobSheet(read, { system: 'us' }).replace(/\s+/g, ' ');
    expect(sheet).toContain(`version 0.0.9 of the library, and read by version ${LIBRARY_VERSION}`);
  });

  test('the version alone makes no other plan', () => {
    const other = Object.assign(saved(), { libraryVersion: '0.0.9' });
    const read = planFromJSON(other);
    expect(read).toEqual(plan);
    expect(comparePlans(plan, read)).toEqual([]);
  });
});
