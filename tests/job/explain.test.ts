import { describe, expect, test } from 'vitest';
import { pathText, type FieldPath } from 'settline/errors';
import {
  explain,
  planFromJSON,
  planJob,
  publishedFigures,
  readPlan,
  renderJobSheet,
  type Explanation,
  type JobPlan,
  type PlanStep,
} from 'settline/job';
import { SOIL_TYPES, SOURCES } from 'settline/sources';
import { isQuantity, type AnyQuantity } from 'settline/units';
import { cedarCourtJob } from '../cedar-court.js';
import { expectFault } from '../faults.js';
import { heronYardJob } from '../heron-yard.js';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import { millGarthJob } from '../mill-garth.js';
import { planFile } from '../plan-file.js';
import { slateWharfJob } from '../slate-wharf.js';
import { without } from '../without.js';

const sites = [
  ['Cedar Court', planJob(cedarCourtJob())],
  ['Heron Yard', planJob(heronYardJob())],
  ['Mill Garth', planJob(millGarthJob())],
  ['Slate Wharf', planJob(slateWharfJob())],
] as const;

/** Quantities of a plan that have no chain of their own, with the reason. */
const EXCEPTIONS: readonly (readonly [RegExp, string])[] = [[/^job\b/, 'the job itself']];

const isException = (path: FieldPath): boolean =>
  EXCEPTIONS.some(([pattern]) => pattern.test(pathText(path)));

interface Held {
  readonly path: FieldPath;
  readonly value: AnyQuantity;
}

function quantitiesIn(holder: unknown, path: FieldPath = []): Held[] {
  if (isQuantity(holder)) return isException(path) ? [] : [{ path, value: holder }];
  if (typeof holder !== 'object' || holder === null) return [];
  return Object.entries(holder).flatMap(([key, part]) =>
    quantitiesIn(part, [...path, Array.isArray(holder) ? Number(key) : key]),
  );
}

const at = (plan: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>((holder, key) => (holder as Record<string | number, unknown>)[key], plan);

/** True for the same value; a job holds numbers as digits. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'string') return a === Number(b);
  if (!isQuantity(a) || !isQuantity(b)) return a === b;
  return JSON.stringify(a) === JSON.stringify(b);
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [value]);

/** All parts of an explanation, itself included. */
const partsOf = (one: Explanation): Explanation[] =>
  one.origin === 'step' ? [one, ...one.from.flatMap(partsOf)] : [one];

/** Numbers that belong to a formula: a zero is what is not there, a row of a table has a number. */
const isConstant = ({ name, value }: Explanation): boolean =>
  isQuantity(value) ? value.isZero() : value === 0 || name === 'rows before';

describe.each(sites)('%s', (_, plan) => {
  const held = quantitiesIn(plan);

  test('every quantity has a chain', () => {
    expect(held.length).toBeGreaterThan(250);
    for (const { path, value } of held) {
      const found = explain(plan, path);
      expect(isSame(found.value, value), pathText(path)).toBe(true);
      if (found.origin !== 'step') continue;
      const { value: result } = found.step.result;
      expect(
        listOf(result).some((item) => isSame(item, value)),
        pathText(path),
      ).toBe(true);
    }
  });

  test('every chain ends in the job, in published figures or in constants', () => {
    const ends = new Map<Explanation['origin'], number>();
    for (const { path } of held) {
      for (const part of partsOf(explain(plan, path))) {
        ends.set(part.origin, (ends.get(part.origin) ?? 0) + 1);
        const where = `${pathText(path)}: ${part.name} ${String(part.value)}`;
        if (part.origin === 'stated') expect(isConstant(part), where).toBe(true);
        if (part.origin === 'published') expect(Object.keys(SOURCES), where).toContain(part.source);
        if (part.origin === 'job') {
          expect(isSame(part.value, at(plan.job, part.path)), where).toBe(true);
        }
      }
    }
    expect([...ends.keys()].sort()).toEqual(['job', 'published', 'stated', 'step']);
    expect(ends.get('job')).toBeGreaterThan(held.length);
  });

  test('steps give and take what stands in the fields that they name', () => {
    for (const step of plan.working) {
      const { title, result } = step;
      step.paths.forEach((path, k) => {
        const value = Array.isArray(result.value) ? listOf(result.value)[k] : result.value;
        expect(isSame(value, at(plan, path)), `${title} gives ${pathText(path)}`).toBe(true);
      });
      for (const [symbol, paths] of Object.entries(step.takes)) {
        const values = listOf(step.given.find((one) => one.symbol === symbol)?.value);
        expect([0, values.length], `${title} takes ${symbol}`).toContain(paths.length);
        paths.forEach((path, k) => {
          const words = `${title} takes ${symbol} from ${pathText(path)}`;
          expect(isSame(values[k], at(plan, path)), words).toBe(true);
        });
      }
    }
  });

  test('no two steps give one field', () => {
    const given = plan.working.flatMap(({ paths }) => paths.map((path) => pathText(path)));
    expect(given.length).toBeGreaterThan(200);
    expect(given.filter((path, k) => given.indexOf(path) !== k)).toEqual([]);
  });
});

test('what is measured along the sides of a border is a step of its own', () => {
  const measured = planJob(heronYardJob()).working.filter(
    ({ title, subject }) =>
      title === 'Sides and units measured for the count' && subject === 'Drive',
  );
  const symbols = measured.map(({ result }) => result.symbol);
  // centre lines, runs and pitch of the border; then edges of the field, the angle, the paver
  expect(symbols.slice(0, 3)).toEqual(['c', 'r', 'p']);
  expect([...new Set(symbols.slice(3))].sort()).toEqual(['E', 'L', 'W', 'a']);
});

test('the sides of a border count from 1, as edges do in a job', () => {
  const named = planJob(heronYardJob()).working.flatMap(({ given }) =>
    given.filter(({ symbol, name }) => /^[cr]$/.test(symbol) && name.includes(' of side ')),
  );
  expect(named.map(({ name }) => name)).toEqual([
    'centre line of side 1, 2, 3, 4, 5, 6 (counted from 1), half the depth of the course in',
    'run of side 1, 2 and 3 and 4, 5, 6 (counted from 1)',
  ]);
});

test('the area of an outline takes the middle ordinates of its arcs, if it has any', () => {
  const taken = (job: ReturnType<typeof millGarthJob>) =>
    planJob(job)
      .working.filter(({ part, paths }) =>
        paths.some((path) => pathText([...part, ...path]).endsWith('areas.paving')),
      )
      .map(({ given }) => given.map(({ symbol }) => symbol).includes('M'));
  expect(taken(millGarthJob())).toEqual([true, false]);
});

describe('an explanation', () => {
  const plan = planJob(cedarCourtJob());

  test('of a soil depth goes down to the readings at the stakes', () => {
    const soil = explain(plan, ['pavements', 0, 'dig', 'soil']);
    expect(soil).toMatchObject({
      origin: 'step',
      name: 'soil to dig',
      from: [
        { origin: 'step', name: 'depth of dig' },
        { origin: 'step', name: 'old surface' },
      ],
    });
    const ends = partsOf(soil).flatMap((one) => (one.origin === 'job' ? [pathText(one.path)] : []));
    expect(ends).toContain('stakes[0].ground');
    expect(ends).toContain('oldPaving[0].thickness');
    expect(ends).toContain('pavements[0].layers[0].thickness');
  });

  test('of a field that repeats the job is that field', () => {
    expect(explain(plan, ['pavements', 0, 'buildUp', 'layers', 2, 'thickness'])).toMatchObject({
      origin: 'job',
      path: ['pavements', 0, 'layers', 2, 'thickness'],
    });
    expect(explain(plan, ['job', 'stringHeight'])).toMatchObject({ path: ['stringHeight'] });
  });

  test('does not mistake a value for another that is equal', () => {
    const job = cedarCourtJob();
    const same = planJob({ ...job, stringHeight: '3 1/8 in' });
    const below = explain(same, ['stringLines', 0, 'stakes', 0, 'finish']);
    expect(below).toMatchObject({ from: [{ origin: 'job', path: ['stringHeight'] }] });
    const layer = explain(same, ['pavements', 0, 'buildUp', 'layers', 0, 'bottom']);
    expect(layer).toMatchObject({
      from: [{ origin: 'job', path: ['pavements', 0, 'layers', 0, 'thickness'] }],
    });
  });

  test('is frozen, and the same for a plan that is read back', () => {
    const path = ['pavements', 0, 'earth', 'cut', 'volume'];
    const found = explain(plan, path);
    expect(Object.isFrozen(found)).toBe(true);
    const again = explain(planFromJSON(JSON.parse(JSON.stringify(plan))), path);
    const names = (one: Explanation) => partsOf(one).map(({ name, origin }) => `${origin} ${name}`);
    expect(names(again)).toEqual(names(found));
  });

  test('is refused for what is no plan, no path, no value, and what no step gives', () => {
    expectFault(() => explain({} as JobPlan, ['name']), 'PLAN_INVALID');
    for (const path of [[], 'name', [null], [-1], [1.5]]) {
      expectFault(() => explain(plan, path as FieldPath), 'WRONG_TYPE');
    }
    for (const path of [['pavements'], ['pavements', 9, 'extension'], ['nothing'], ['levelBook']]) {
      expectFault(() => explain(plan, path), 'UNKNOWN_FIELD');
    }
    expectFault(() => explain(plan, ['name']), 'NOT_EXPLAINED');
    const read = readPlan(JSON.parse(JSON.stringify(plan)));
    expectFault(() => explain(read, ['pavements', 0, 'dig', 'soil']), 'NOT_EXPLAINED');
  });
});

describe('published figures', () => {
  const own = (steps: readonly PlanStep[]) =>
    steps.flatMap(({ given }) => given.filter(({ source }) => source !== null));

  test.each(sites)('of %s are those that its working uses, each once', (_, plan) => {
    const figures = publishedFigures(plan);
    const keys = figures.map(({ name, value, source }) => `${name} ${String(value)} ${source}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(own(plan.working).length).toBeGreaterThanOrEqual(figures.length);
    for (const { source, title, section, status, usedIn } of figures) {
      expect(SOURCES[source]).toMatchObject({ title, section, status });
      expect(usedIn.length).toBeGreaterThan(0);
    }
  });

  test.each(SOIL_TYPES)('each from a source that the plan names, soil %s', (soil) => {
    const job = heronYardJob();
    for (const subgrade of ['well-drained', 'clay', 'wet-or-weak'] as const) {
      for (const material of ['asphalt', 'concrete'] as const) {
        const plan = planJob({
          ...without(job, 'minimumFall'),
          excavation: { soil },
          oldPaving: (job.oldPaving ?? []).map((one) => ({ ...without(one, 'density'), material })),
          pavements: job.pavements.map((one) => ({ ...one, subgrade, frost: true })),
        });
        const named = plan.sources.map(({ id }) => id);
        expect(named).toEqual(
          expect.arrayContaining(publishedFigures(plan).map(({ source }) => source)),
        );
        expect(new Set(named).size).toBe(named.length);
      }
    }
  });

  test('of a drive: minimum thicknesses, least extension, old concrete', () => {
    const figures = publishedFigures(planJob(cedarCourtJob()));
    expect(figures.map(({ name, value }) => `${name}: ${String(value)}`)).toContain(
      'loose density of old concrete: 2400 lb/yd3',
    );
    expect(figures.find(({ name }) => name === 'minimum extension')?.usedIn.length).toBe(2);
  });

  test('a figure of a warning has the chain of the figure that it repeats', () => {
    const plan = planJob(slateWharfJob());
    const cover = plan.warnings.findIndex(({ code }) => code === 'UTILITY_COVER');
    expect(explain(plan, ['warnings', cover, 'values', 'least'])).toMatchObject({
      origin: 'job',
      path: ['utilities', expect.any(Number), 'minimumCover'],
    });
    const roots = plan.warnings.findIndex(({ code }) => code === 'ROOTS_CUT');
    expect(explain(plan, ['warnings', roots, 'values', 'reach'])).toEqual(
      explain(plan, ['pavements', 0, 'nearby', 'trees', 0, 'zone', 'cut', 'distance']),
    );
    expectFault(() => explain(plan, ['warnings', cover, 'code']), 'NOT_EXPLAINED');
  });

  test('a published minimum fall is one, and a given one is not', () => {
    const job = cedarCourtJob();
    const bare = planJob(without(job, 'minimumFall'));
    const names = (plan: JobPlan) => publishedFigures(plan).map(({ name }) => name);
    expect(names(bare)).toContain('published minimum fall');
    expect(names(planJob({ ...job, minimumFall: '2%' }))).not.toContain('published minimum fall');
    expect(explain(bare, ['minimumFall'])).toMatchObject({ from: [{ origin: 'published' }] });
  });

  test('the sheet lists those, and the sources of a plan that was read without its working', () => {
    const plan = planJob(cedarCourtJob());
    const end = (one: JobPlan) =>
      renderJobSheet(one, { system: 'us', width: 120 }).split('WHERE THE FIGURES COME FROM')[1] ??
      '';
    expect(end(plan)).toContain('minimum extension 6 in');
    expect(end(plan)).not.toContain(SOURCES['nist-sp811'].title);
    expect(end(readPlan(JSON.parse(JSON.stringify(plan))))).toContain(SOURCES['nist-sp811'].title);
  });
});

test('fill in low ground has a chain, for each stone that fills', () => {
  const low = pavementOn(rectangle(0, 0, 4, 4), { id: 'low', existingAboveFinish: '-600 mm' });
  const plan = planFile(levelSite([low]));
  const [stone] = plan.totals.stones;
  // the dig 0.5 m out: 5 x 5, the subgrade 400 mm down and so 200 mm over the ground
  expect(stone?.fill?.volume.to('m3').toString()).toBe('5');
  const found = explain(plan, ['totals', 'stones', 0, 'fill', 'volume']);
  if (found.origin !== 'step') expect.unreachable(found.origin);
  expect(found.step.title).toBe('Fill of stone');
  expect(found.step.takes['s']?.map((path) => pathText(path))).toEqual([
    'pavements[0].stones[1].order.compacted.volume',
  ]);
});

test('low ground is filled with the lowest stone, unless the job names another', () => {
  const [pavers, bedding, base] = layersOn();
  const layers = [pavers, bedding, base, { ...base, kind: 'sub-base', material: 'coarse' }];
  const fillOf = (fill: object) => {
    const low = pavementOn(rectangle(0, 0, 4, 4), {
      id: 'low',
      layers,
      existingAboveFinish: '-1 m',
    });
    const site = levelSite([low]);
    const stones = site.materials['stones'] ?? [];
    Object.assign(site.materials, { stones: [...stones, { ...stones[0], id: 'coarse' }], ...fill });
    return planFile(site).pavements[0]?.stones.find(({ layer }) => layer === 'fill')?.material;
  };
  expect([fillOf({}), fillOf({ fill: 'stone' })]).toEqual(['coarse', 'stone']);
});

test('a cross slope has no sign, whichever way the string runs', () => {
  const crossOf = (stakes: readonly string[]) => {
    const level = (x: number, y: number, elevation: string) => ({
      x: `${x} m`,
      y: `${y} m`,
      elevation,
    });
    const levels = [level(0, 0, '10 m'), level(4, 0, '10 m'), level(0, 4, '9.92 m')];
    const drive = pavementOn(rectangle(0, 0, 4, 4), {
      id: 'drive',
      grade: { kind: 'plane', levels },
    });
    const plan = planFile(
      levelSite([drive], { stringLines: [{ id: 'a', pavement: 'drive', stakes }] }),
    );
    const step = plan.working.find(({ title }) => title.startsWith('Cross slope from'));
    const slope = step?.result.value;
    return isQuantity(slope) ? slope.toJSON() : slope;
  };
  // 80 mm down to the north in 4 m
  expect(crossOf(['S1', 'S2'])).toEqual(expect.objectContaining({ value: '0.02' }));
  expect(crossOf(['S2', 'S1'])).toEqual(crossOf(['S1', 'S2']));
});
