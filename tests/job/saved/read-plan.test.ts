import { describe, expect, test } from 'vitest';
import {
  checkJob,
  comparePlans,
  materialList,
  planFromJSON,
  publishedFigures,
  readPlan,
  renderJobSheet,
  renderWorking,
  workSteps,
  type JobPlan,
} from 'settline/job';
import { pathText } from 'settline';
import { drawPlan } from 'settline/drawing';
import { builtInPlans, savedPlan } from '../../built-in-plans.js';
import { expectFault, faultsOf } from '../../faults.js';
import { mutable } from '../../mutable.js';
import { jobOfPlan } from '../../../src/job/saved/job-of-plan.js';
import { JOB_NUMBERS } from '../../../src/job/saved/job-numbers.js';
import { planFields, type Code } from '../../../src/job/saved/shape-code.js';
import { readWholeJob } from '../../../src/job/read/read-job.js';
import { otherTypes } from './same-types.js';

const SYSTEMS = ['us', 'metric'] as const;

/** A sheet without the note that says how it was read. */
function withoutNote(sheet: string): string {
  let isNote = false;
  const kept: string[] = [];
  for (const line of sheet.split('\n')) {
    isNote = line.startsWith('!! ') || (isNote && line.startsWith('   '));
    if (!isNote) kept.push(line);
  }
  return kept.join('\n');
}

describe.each(builtInPlans())('%s, saved and read without the planner', (_name, plan) => {
  const saved = savedPlan(plan);
  const read = readPlan(saved);

  test('every field has the type that it had', () => {
    const { fields, found } = otherTypes(plan, read);
    expect(found).toEqual([]);
    expect(fields).toBeGreaterThan(500);
    const planned = otherTypes(plan, planFromJSON(saved));
    expect(planned.found).toEqual([]);
    expect(planned.fields).toBe(fields);
  });

  test('every figure is the one that was saved', () => {
    const marked = { ...JSON.parse(JSON.stringify(plan)), figures: 'unchecked' } as unknown;
    expect(JSON.parse(JSON.stringify(read))).toEqual(marked);
  });

  test('a clone reads like JSON', () => {
    expect(JSON.stringify(readPlan(structuredClone(plan)))).toBe(JSON.stringify(read));
  });

  test.each(SYSTEMS)(
    'its sheet is the same but for the note at the top and the figures of each source: %s',
    (system) => {
      const sheet = renderJobSheet(read, { system });
      expect(sheet).toContain('FIGURES NOT CHECKED');
      expect(sheet.indexOf('FIGURES NOT CHECKED')).toBeLessThan(sheet.indexOf('CHECK BEFORE'));
      const whole = renderJobSheet(plan, { system });
      const [before = '', sources = ''] = withoutNote(sheet).split('WHERE THE FIGURES COME FROM');
      expect(before).toBe(whole.split('WHERE THE FIGURES COME FROM')[0]);
      // without its working a plan names its sources, not the figures taken from each
      for (const { title } of read.sources) expect(sources.replace(/\s+/g, ' ')).toContain(title);
      expect(sources).not.toContain('From it:');
    },
  );

  test('order list, steps of work, drawings and comparison take it', () => {
    expect(JSON.stringify(materialList(read))).toBe(JSON.stringify(materialList(plan)));
    expect(JSON.stringify(workSteps(read))).toBe(JSON.stringify(workSteps(plan)));
    expect(drawPlan(read, { system: 'us' })).toBe(drawPlan(plan, { system: 'us' }));
    expect(comparePlans(plan, read)).toEqual([]);
  });

  test('the job in it is the job as it was read', () => {
    expect(jobOfPlan(plan)).toEqual(readWholeJob(plan.job));
    expect(jobOfPlan(read)).toEqual(readWholeJob(plan.job));
  });

  test('its working comes along if it is saved with it', () => {
    expect(read.working).toEqual([]);
    const sent = savedPlan({ ...plan, working: plan.working });
    const whole = readPlan(sent);
    expect(JSON.stringify(whole)).not.toContain('"working"');
    expect(savedPlan({ ...plan, working: whole.working })).toEqual(sent);
    const isDepth = ({ title }: { title: string }) => title.startsWith('Depth of the subgrade');
    const depths = whole.working.filter(isDepth);
    expect(depths.length).toBeGreaterThan(0);
    for (const system of SYSTEMS) {
      expect(renderWorking(depths, { system })).toBe(
        renderWorking(plan.working.filter(isDepth), { system }),
      );
    }
    expect(planFromJSON(sent).working).toHaveLength(plan.working.length);
  });

  test('its working cites no source that the plan does not name', () => {
    const [figure] = publishedFigures(plan);
    const sources = plan.sources.filter(({ id }) => id !== figure?.source);
    const sent = savedPlan({ ...plan, sources, working: plan.working });
    const cited = plan.working.flatMap(({ given }, step) =>
      given.flatMap(({ source }, index) =>
        source === figure?.source ? [pathText(['working', step, 'given', index, 'source'])] : [],
      ),
    );
    expect(cited.length).toBeGreaterThan(0);
    expect(faultsOf(() => readPlan(sent)).map(({ path }) => pathText(path))).toEqual(cited);
  });
});

const [[, plan] = []] = builtInPlans();
if (plan === undefined) expect.unreachable();
const saved = () => mutable(savedPlan(plan) as JobPlan);

/** What each field of a part of a plan holds, by its name. */
function codesByName(code: Code, name: string, found = new Map<string, Set<string>>()) {
  if (code.kind === 'plain' || code.kind === 'choice') {
    const word = code.kind === 'plain' ? code.name : 'choice';
    found.set(name, (found.get(name) ?? new Set()).add(word));
  } else if (code.kind === 'object') {
    for (const field of code.fields) codesByName(field.code, field.name, found);
  } else if (code.kind === 'either') {
    for (const field of code.of.flat()) codesByName(field.code, field.name, found);
  } else codesByName(code.of, name, found);
  return found;
}

test('fields of a job are told by their names: numbers, and outlines', () => {
  const job = planFields().find(({ name }) => name === 'job');
  if (job === undefined) expect.unreachable();
  const codes = [...codesByName(job.code, 'job')];
  const numbers = codes.filter(([, words]) => words.has('digits'));
  expect(new Set(numbers.map(([name]) => name))).toEqual(JOB_NUMBERS);
  for (const [name, words] of numbers) {
    expect([name, words.has('text') || words.has('choice')]).toEqual([name, false]);
  }
  const outlines = codes.filter(([, words]) => words.has('outline'));
  expect(outlines).toEqual([['outline', new Set(['outline'])]]);
});

describe('what it refuses, by path', () => {
  type Spoil = (plan: ReturnType<typeof saved>) => unknown;
  const first = <T>([one]: readonly T[]): T => one ?? expect.unreachable();
  const CASES: readonly (readonly [string, Spoil, string])[] = [
    [
      'a line break in a name',
      (p) => (first(p.pavements).name = 'Drive\nPath'),
      'pavements[0].name',
    ],
    ['an empty name', (p) => (p.name = ' '), 'name'],
    ['a long name', (p) => (p.name = 'x'.repeat(3000)), 'name'],
    [
      'a negative thickness',
      (p) =>
        Object.assign(first(first(p.pavements).buildUp.layers), {
          thickness: { value: '-1', unit: 'm' },
        }),
      'pavements[0].buildUp.layers[0].thickness',
    ],
    [
      'a layer thicker than any',
      (p) =>
        Object.assign(first(first(p.pavements).buildUp.layers), {
          thickness: { value: '6', unit: 'm' },
        }),
      'pavements[0].buildUp.layers[0].thickness',
    ],
    [
      'a negative area',
      (p) => Object.assign(p.totals, { digArea: { value: '-4', unit: 'm2' } }),
      'totals.digArea',
    ],
    [
      'an absurd volume',
      (p) =>
        Object.assign(p.pavements[0]?.earth ?? {}, { stripped: { value: '1e80', unit: 'm3' } }),
      'pavements[0].earth.stripped',
    ],
    [
      'a figure that never ends',
      (p) => Object.assign(p.totals, { digArea: { value: '1e19999', unit: 'm2' } }),
      'totals.digArea',
    ],
    [
      'an area for a length',
      (p) => Object.assign(first(p.stringLines), { stringHeight: { value: '1', unit: 'm2' } }),
      'stringLines[0].stringHeight.unit',
    ],
    [
      'text for a number',
      (p) => Object.assign(first(p.totals.pavers), { order: '6817' }),
      'totals.pavers[0].order',
    ],
    ['half a paver', (p) => (first(p.totals.pavers).order = 1.5), 'totals.pavers[0].order'],
    ['pavers below zero', (p) => (first(p.totals.pavers).order = -1), 'totals.pavers[0].order'],
    ['null where nothing is null', (p) => Object.assign(p, { totals: null }), 'totals'],
    ['no cautions at all', (p) => (p.cautions = []), 'cautions'],
    ['one caution less', (p) => p.cautions.splice(0, 1), 'cautions'],
    [
      'a part without its cautions',
      (p) => (first(p.pavements).minimum.cautions = []),
      'pavements[0].minimum.cautions',
    ],
    [
      'a caution that there is not',
      (p) => Object.assign(first(p.cautions), { id: 'none' }),
      'cautions[0].id',
    ],
    [
      'a part that is missing',
      (p) => Reflect.deleteProperty(first(p.pavements), 'earth'),
      'pavements[0].earth',
    ],
    [
      'a part too many',
      (p) => Object.assign(first(p.pavements), { colour: 'red' }),
      'pavements[0].colour',
    ],
    [
      'a code that there is not',
      (p) => Object.assign(first(p.warnings), { code: 'ALL_WELL' }),
      'warnings[0].code',
    ],
    ['another version', (p) => Object.assign(p, { version: '1' }), 'version'],
    [
      'a string of another pavement',
      (p) => (first(p.stringLines).pavement = 'nowhere'),
      'stringLines[0].pavement',
    ],
    [
      'another pavement than in the job',
      (p) => (first(p.pavements).id = 'other'),
      'pavements[0].id',
    ],
    [
      'a material that the job has not',
      (p) => (first(p.totals.stones).material = 'mud'),
      'totals.stones[0].material',
    ],
    ['a kind of layer less', (p) => first(p.pavements).layerKinds.pop(), 'pavements[0].layerKinds'],
    [
      'no strings, and none in the job',
      (p) => {
        p.stringLines = [];
        p.job.stringLines = [];
      },
      'stringLines',
    ],
    [
      'one stake on a string, and in the job',
      (p) => {
        first(p.stringLines).stakes.splice(1);
        first(p.job.stringLines).stakes.splice(1);
      },
      'stringLines[0].stakes',
    ],
    [
      'pavers alone, of one kind',
      (p) => {
        first(p.pavements).buildUp.layers.splice(1);
        first(p.pavements).layerKinds.splice(1);
      },
      'pavements[0].buildUp',
    ],
    ['an edge less', (p) => first(p.pavements).edges.pop(), 'pavements[0].edges'],
    [
      'an edge too many',
      ({ pavements }) => first(pavements).edges.push(first(first(pavements).edges)),
      'pavements[0].edges',
    ],
    ['no dig', (p) => (first(p.pavements).digOutline = []), 'pavements[0].digOutline'],
    [
      'an island of one corner',
      ({ pavements: [one] }) =>
        one?.digHoles.push({ points: one.digOutline.slice(0, 1), arcs: [] }),
      'pavements[0].digHoles[0].points',
    ],
    ['no lifts', (p) => (first(p.pavements).lifts = []), 'pavements[0].lifts'],
    [
      'no dig where the ground was measured',
      (p) => Object.assign(first(first(p.stringLines).stakes), { dig: null }),
      'stringLines[0].stakes[0].dig',
    ],
    [
      'no soil where the ground was measured',
      (p) => Object.assign(first(first(p.stringLines).stakes), { soil: null }),
      'stringLines[0].stakes[0].soil',
    ],
    ['a job that is none', (p) => Object.assign(p, { job: 5 }), 'job'],
    [
      'an outline of two points',
      (p) => Object.assign(first(p.job.pavements), { outline: [] }),
      'job.pavements[0].outline',
    ],
  ];

  test.each(CASES)('%s', (_name, spoil, path) => {
    for (const read of [readPlan, planFromJSON]) {
      const spoilt = saved();
      spoil(spoilt);
      const faults = faultsOf(() => read(spoilt));
      expect(faults.map((fault) => `${pathText(fault.path)} ${fault.code}`)).toEqual([
        `${path} PLAN_INVALID`,
      ]);
    }
  });

  test('every fault at once, up to 100, and the number of the rest', () => {
    const spoilt = { kind: 'settline-plan', version: 1, pavements: Array(300).fill(5) };
    const faults = faultsOf(() => readPlan(spoilt));
    expect(faults).toHaveLength(101);
    expect(faults.at(-1)?.code).toBe('MORE_FAULTS');
    expect(faults.at(-1)?.params['count']).toBeGreaterThan(200);
  });

  test('cycles, depth without end and one list in all places', () => {
    const cycle = saved() as unknown as Record<string, unknown>;
    cycle['pavements'] = [cycle];
    expectFault(() => readPlan(cycle), 'PLAN_INVALID');
    let deep: unknown = [];
    for (let k = 0; k < 50_000; k += 1) deep = [deep];
    expectFault(() => readPlan({ ...saved(), pavements: deep }), 'PLAN_INVALID');
    const wide: unknown[] = [];
    const part = { ...saved().pavements[0], lifts: wide, stones: wide, edges: wide };
    for (let k = 0; k < 3000; k += 1) wide.push(part);
    const fault = expectFault(() => readPlan({ ...saved(), pavements: wide }), 'PLAN_INVALID');
    expect(fault.message).not.toBe('');
  });

  test('an object that throws when it is read', () => {
    const trap = Object.defineProperty(saved(), 'totals', {
      enumerable: true,
      get: () => {
        throw new TypeError('a trap');
      },
    });
    expectFault(() => readPlan(trap), 'PLAN_INVALID');
    expectFault(() => planFromJSON(trap), 'PLAN_INVALID');
  });
});

describe('what it keeps and says', () => {
  test('cautions are in the words of the library', () => {
    const other = saved();
    for (const caution of other.cautions) caution.text = 'All is well.';
    expect(readPlan(other).cautions).toEqual(plan.cautions);
  });

  test('a plan that was read as altered stays altered', () => {
    const changed = planFromJSON({ ...saved(), name: 'Elm Court' }, { accept: 'altered' });
    const again = readPlan(savedPlan(changed));
    expect([again.figures, again.altered]).toEqual(['altered', [['name']]]);
  });

  test('the work as built is not checked against figures that were not planned', () => {
    const fault = expectFault(() => checkJob(readPlan(saved()), {}), 'PLAN_INVALID');
    expect(fault.message).toContain('planFromJSON');
  });
});
