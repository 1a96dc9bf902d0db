import { describe, expect, test } from 'vitest';
import { isQuantity, pathText, type FieldPath } from 'settline';
import {
  describeWarning,
  describeWorkStep,
  explain,
  planFromJSON,
  planJob,
  renderJobSheet,
  renderWorking,
  tryPlanJob,
  workSteps,
  type Explanation,
  type JobInput,
} from 'settline/job';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import type { Loose } from '../loose-job.js';

const FROST = {
  airIndex: { value: 600, unit: 'C-days' },
  seasonDays: 110,
  meanAnnual: { value: 6, unit: 'C' },
  soil: 'silt-clay',
  dryDensity: '1600 kg/m3',
  moisture: 0.2,
  baseMoisture: 0.04,
};
const PLATE = { plant: 'plate', mass: '400 kg', plateArea: '0.25 m2' };
const WHOLE = {
  cbr: 6,
  frostGroup: 'F4',
  frost: FROST,
  plant: PLATE,
  optimum: [{ stone: 'stone', optimumMoisture: 0.06, moisture: 0.03 }],
  storm: { depth: '36 mm', time: '1 h', inlet: '0.2 l/s' },
};

/** A drive of 10 by 4 m with 300 mm of base, restrained all round: its base is as wide as the paving. */
const site = (ground: object | undefined, fields: Loose = {}) =>
  levelSite(
    [
      pavementOn(rectangle(0, 0, 10, 4), {
        id: 'drive',
        edges: ['restraint', 'restraint', 'restraint', 'restraint'],
        ...fields,
      }),
    ],
    ground === undefined ? {} : { ground },
  ) as unknown as JobInput;

const planOf = (ground: object | undefined, fields: Loose = {}) => planJob(site(ground, fields));
const groundOf = (ground: object | undefined, fields: Loose = {}) =>
  planOf(ground, fields).pavements[0]?.ground ?? null;
const codesOf = (ground: object | undefined, fields: Loose = {}) =>
  planOf(ground, fields).warnings.map(({ code }) => code);
const quiet = codesOf(undefined);
const addedBy = (ground: object, fields: Loose = {}) =>
  codesOf(ground, fields).filter((code) => !quiet.includes(code));

describe('the ground of a job', () => {
  test('no block, nothing planned', () => {
    expect(groundOf(undefined)).toBeNull();
    expect(planOf(undefined).cautions.map(({ id }) => id)).not.toContain('ground');
  });

  test('an empty block plans the published rules alone', () => {
    const ground = groundOf({});
    expect(ground?.frost).toBeNull();
    expect([ground?.strength, ground?.runoff, ground?.thickestLift]).toEqual([null, null, null]);
    expect(ground?.thicknesses.map(({ part, governs }) => [part, governs])).toEqual([
      ['paver', 'published'],
      ['bedding', 'published'],
      ['base', 'published'],
    ]);
    const lift = { water: null, action: null, passes: null, verdict: null };
    expect(ground?.lifts).toEqual([1, 2, 3].map((number) => ({ lift: number, ...lift })));
    expect(planOf({}).cautions.map(({ id }) => id)).toContain('ground');
  });

  test('water and passes for each lift', () => {
    // 40 m2 x 0.1 m x 2.1 t/m3 x 0.03 = 252 kg
    const ground = groundOf(WHOLE);
    expect(ground?.lifts.map(({ water }) => water?.to('l').toString())).toEqual([
      '252',
      '252',
      '252',
    ]);
    expect(ground?.lifts.map(({ passes, verdict }) => [passes, verdict])).toEqual([
      [5, 'pass'],
      [5, 'pass'],
      [5, 'pass'],
    ]);
    expect(ground?.thickestLift?.to('mm').toString()).toBe('100');
    const steps = workSteps(planOf(WHOLE)).filter(({ kind }) => kind === 'lift');
    for (const step of steps) {
      const figures = step.figures.map(({ code, value }) => [code, String(value)]);
      expect(figures).toContainEqual(['passes', '5']);
      expect(figures.some(([code]) => code === 'water')).toBe(true);
      expect(describeWorkStep(step, { system: 'metric' })).toContain('Water to add: 252 l.');
      expect(describeWorkStep(step, { system: 'us' })).toContain('Water to add: 67 gal.');
      expect(step.notes.join()).toContain('Sprinkle');
    }
  });

  test('a lift hears of the method, and the subgrade of frost and the storm', () => {
    const notesOf = (ground: object, kind: string, rates: object = {}) => {
      const plan = planJob({ ...site(ground), ...rates });
      return workSteps(plan)
        .filter((step) => step.kind === kind)
        .map(({ notes }) => notes.join(' '));
    };
    const heavy = { plant: { ...PLATE, mass: '340 kg' } };
    const [first = ''] = notesOf(heavy, 'lift');
    expect(first).toContain('The method does not permit a lift this thick with this machine.');
    const own = (passes: number) => ({
      rates: {
        plate: { width: '500 mm', overlap: 0.1, speed: '20 m/min', efficiency: 0.75, passes },
      },
    });
    const ofMethod = 'The published method requires 5 passes of this machine.';
    expect(notesOf({ plant: PLATE }, 'lift', own(4))[0]).toContain(ofMethod);
    expect(notesOf({ plant: PLATE }, 'lift', own(5))[0]).not.toContain(ofMethod);
    expect(notesOf({ plant: PLATE }, 'lift')[0]).not.toContain(ofMethod);
    const [subgrade = ''] = notesOf(WHOLE, 'subgrade');
    expect(subgrade).toContain('Frost goes into this subgrade.');
    expect(subgrade).toContain('more runs off than the drain takes');
    const [calm = ''] = notesOf(
      { ...WHOLE, frostGroup: 'NFS', storm: { ...WHOLE.storm, inlet: '0.34 l/s' } },
      'subgrade',
    );
    expect(calm).not.toMatch(/Frost goes|runs off/);
    expect(notesOf({}, 'subgrade')[0]).not.toMatch(/Frost goes|runs off/);
  });

  test('the moisture of the material counts where the day has none', () => {
    const optimum = [{ stone: 'stone', optimumMoisture: 0.03 }];
    expect(groundOf({ optimum })?.lifts[0]?.action).toBe('add-water');
    const wet = [{ stone: 'stone', optimumMoisture: 0.03, moisture: 0.08 }];
    const plan = planOf({ optimum: wet });
    expect(plan.pavements[0]?.ground?.lifts[0]?.action).toBe('let-dry');
    const lift = workSteps(plan).find(({ kind }) => kind === 'lift');
    expect(lift?.figures.map(({ code }) => code)).not.toContain('water');
    expect(lift?.notes.join()).toContain('too wet');
  });

  test('frost: its depth, the rules for the base, the one that governs', () => {
    const ground = groundOf(WHOLE);
    const [frost, base] = [ground?.frost, ground?.thicknesses[2]];
    expect(frost?.group).toBe('F4');
    const into = (frost?.depth.toNumber('m') ?? 0) - 0.4;
    expect(frost?.intoSubgrade.toNumber('m')).toBeCloseTo(into, 12);
    expect(into).toBeGreaterThan(0.5);
    expect(base?.rules.map(({ rule }) => rule)).toEqual([
      'published',
      'frost-limited',
      'frost-free',
    ]);
    expect(base?.governs).toBe('frost-limited');
    const [, limited, free] = base?.rules ?? [];
    // r is 0.2 / 0.04, no more than 2: b = c / 1.5
    expect(limited?.thickness.toNumber('m')).toBeCloseTo(
      (free?.thickness.toNumber('m') ?? 0) / 1.5,
      9,
    );
    expect(limited?.shortfall.toNumber('m')).toBeCloseTo(
      (limited?.thickness.toNumber('m') ?? 0) - 0.3,
      9,
    );
    expect(base?.rules[0]?.shortfall.isZero()).toBe(true);
    expect(ground?.strength).toBe(3.5);
  });

  test('a street has the foundation of a county among its rules', () => {
    const street = { use: 'parking-or-residential-street', subgrade: 'clay' };
    const base = groundOf({ cbr: 6, frostGroup: 'F4' }, street)?.thicknesses[2];
    // strength 3.5: capping 300 and sub-base 200
    expect(base?.rules.map(({ rule, thickness }) => [rule, thickness.to('mm').toFixed(1)])).toEqual(
      [
        ['published', '203.2'],
        ['poor-ground', '254.0'],
        ['foundation', '500.0'],
      ],
    );
    expect(base?.governs).toBe('foundation');
  });

  test('runoff of the paving', () => {
    // 40 m2 x 0.85 x 0.01 l/s
    expect(groundOf(WHOLE)?.runoff?.to('l/s').toString()).toBe('0.34');
    const storm = { depth: '36 mm', time: '1 h', coefficient: 0.5 };
    expect(groundOf({ storm })?.runoff?.to('l/s').toString()).toBe('0.2');
  });

  test('warnings, each with its twin that is silent', () => {
    const inSubgrade = ['FROST_IN_SUBGRADE', 'FROST_NOT_SAID', 'BASE_BELOW_FROST_RULE'];
    expect(addedBy({ frost: FROST })).toEqual(inSubgrade);
    const said = { frost: true };
    expect(addedBy({ frost: FROST }, said)).toEqual(
      inSubgrade.filter((code) => code !== 'FROST_NOT_SAID'),
    );
    expect(addedBy({ frost: FROST, frostGroup: 'NFS' })).toEqual([]);
    const mild = { ...FROST, airIndex: { value: 5, unit: 'C-days' } };
    expect(addedBy({ frost: mild })).toEqual([]);
    const storm = { depth: '36 mm', time: '1 h' };
    expect(addedBy({ storm: { ...storm, inlet: '0.33 l/s' } })).toEqual(['RUNOFF_OVER_INLET']);
    expect(addedBy({ storm: { ...storm, inlet: '0.34 l/s' } })).toEqual([]);
    expect(addedBy({ plant: { ...PLATE, mass: '340 kg' } })).toEqual(['LIFT_BEYOND_PLANT']);
    expect(addedBy({ plant: PLATE })).toEqual([]);
    // enough base for the rule, and still frost below it
    const deep = { layers: layersOn('1300 mm') };
    expect(addedBy({ frost: FROST }, deep)).not.toContain('BASE_BELOW_FROST_RULE');
  });

  test('warnings in words', () => {
    const plan = planOf({ ...WHOLE, plant: { ...PLATE, mass: '340 kg' } });
    const words = plan.warnings.map((one) => describeWarning(one, { system: 'metric' })).join('\n');
    expect(words).toMatch(/frost goes \d+ mm below finished grade, \d+ mm into the subgrade/);
    expect(words).toMatch(
      /frost goes \d+ mm into the subgrade, but the pavement is planned without/,
    );
    expect(words).toMatch(
      /base is 300 mm\. The rule of limited frost penetration requires \d+ mm\./,
    );
    expect(words).toContain(
      '20.4 l/min runs off in the storm, but the drain takes only 12.0 l/min',
    );
    expect(words).toContain(
      ': the published method does not permit this machine for any lift. Use a heavier machine.',
    );
    const notSaid = plan.warnings.filter(({ code }) => code === 'FROST_NOT_SAID');
    expect(notSaid.map((one) => describeWarning(one, { system: 'us' }))).toEqual([
      expect.stringMatching(/frost goes \d.* in into the subgrade, but .* Set "frost" to true/),
    ]);
  });

  test('a lift too thick for the machine is told with the maximum', () => {
    const job = site({ plant: PLATE });
    const stones = job.materials.stones.map((stone) => ({ ...stone, maxLift: '150 mm' }));
    const plan = planJob({ ...job, materials: { ...job.materials, stones } });
    const [told] = plan.warnings.filter(({ code }) => code === 'LIFT_BEYOND_PLANT');
    expect(told && describeWarning(told, { system: 'metric' })).toBe(
      'Drive: too thick for this machine: lift 1, 2, published maximum 100 mm. Use thinner lifts or a heavier machine.',
    );
  });

  test('each depth of frost that an equation gives in metres is told in the unit of the sheet too', () => {
    const results = planOf({ frost: FROST }).working.map(({ result }) => result);
    const inMetres = results.filter(({ name }) => name === 'depth of frost, in m');
    const depths = results
      .filter(({ name }) => /^depths? of frost$/.test(name))
      .flatMap(({ value }) => value)
      .filter((one) => isQuantity(one));
    expect(inMetres).toHaveLength(2);
    expect(depths.map((depth) => depth.si.toNumber())).toEqual(
      expect.arrayContaining(inMetres.map(({ value }) => value)),
    );
    // a quantity is told in the unit of the sheet
    expect(renderWorking(planOf({ frost: FROST }).working, { system: 'us' })).toMatch(
      /X = [^(]* in \(depths of frost\)/,
    );
  });

  test('on the sheet, with sources and working', () => {
    const plan = planOf(WHOLE);
    const sheet = renderJobSheet(plan, { system: 'metric' });
    expect(sheet).toContain('frost in the subgrade');
    expect(sheet).toMatch(/base, limited frost +\d+ mm governs/);
    expect(renderJobSheet(planOf(undefined), { system: 'metric' })).not.toContain('frost in the');
    const sources = plan.sources.map(({ id }) => id);
    expect(sources).toContain('frost-penetration-limit');
    expect(sources).toContain('reinstatement-lifts');
    expect(new Set(sources).size).toBe(sources.length);
    const titles = plan.working.map(({ title }) => title);
    for (const title of ['Depth of frost', 'Water to add', 'Peak runoff by the rational method']) {
      expect(titles).toContain(title);
    }
  });

  test.each([
    ['all of it', WHOLE],
    ['a bearing ratio', { cbr: 5 }],
    ['a bearing ratio and a frost group', { cbr: 9, frostGroup: 'F3' }],
    ['a winter', { frost: FROST }],
    ['a winter over soil that frost does not lift', { frost: FROST, frostGroup: 'NFS' }],
    ['a winter and a frost group', { cbr: 9, frost: FROST, frostGroup: 'F3' }],
    ['a plate', { plant: PLATE }],
    ['a storm', { storm: { depth: '36 mm', time: '1 h', inlet: '0.33 l/s' } }],
  ])('a plan names every source of its figures: %s', (_, ground) => {
    const plan = planOf(ground);
    const named = plan.sources.map(({ id }) => id);
    const cited = plan.working.flatMap(({ given }) => given.flatMap(({ source }) => source ?? []));
    expect(cited.length).toBeGreaterThan(0);
    expect(cited.filter((source) => !named.includes(source))).toEqual([]);
  });

  test('a saved plan comes back', () => {
    const plan = planOf(WHOLE);
    const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
    expect(again).toEqual(plan);
  });
});

describe('where the figures of the ground come from', () => {
  const ROLLER = { plant: 'single-drum', mass: '3000 kg', drumWidth: '1 m', fill: 'cohesive' };
  const jobs = [
    ['everything', WHOLE, {}],
    [
      'a street on weak ground',
      { cbr: 6, frostGroup: 'F4', plant: ROLLER },
      { use: 'parking-or-residential-street', subgrade: 'clay' },
    ],
    [
      'other units, and the moisture of the material',
      {
        cbr: 2,
        frost: { ...FROST, airIndex: { value: 900, unit: 'F-days' }, surface: 'asphalt' },
        optimum: [{ stone: 'stone', optimumMoisture: 0.09 }],
        storm: { depth: '1 in', time: '1 h', coefficient: 0.7, inlet: '1 l/min' },
      },
      { frost: true, subgrade: 'wet-or-weak' },
    ],
  ] as const;

  /** Every figure of the ground of the first pavement, but names. */
  function figuresIn(holder: unknown, path: FieldPath): FieldPath[] {
    if (isQuantity(holder)) return holder.isZero() ? [] : [path];
    if (typeof holder === 'number') return path.at(-1) === 'lift' ? [] : [path];
    if (typeof holder !== 'object' || holder === null) return [];
    return Object.entries(holder).flatMap(([key, part]) =>
      figuresIn(part, [...path, Array.isArray(holder) ? Number(key) : key]),
    );
  }

  const endsOf = (one: Explanation): Explanation[] =>
    one.origin === 'step' ? one.from.flatMap(endsOf) : [one];

  test.each(jobs)('%s', (_name, block, fields) => {
    const plan = planOf(block, fields);
    const figures = figuresIn(plan.pavements[0]?.ground, ['pavements', 0, 'ground']);
    expect(figures.length).toBeGreaterThan(9);
    for (const path of figures) {
      const found = explain(plan, path);
      expect(found.origin, pathText(path)).toBe('step');
      for (const end of endsOf(found)) {
        const isConstant = isQuantity(end.value) ? end.value.isZero() : end.value === 0;
        expect(
          ['job', 'published', ...(isConstant ? ['stated'] : [])],
          `${pathText(path)}: ${end.name}`,
        ).toContain(end.origin);
      }
    }
    for (const [index, { code, values }] of plan.warnings.entries()) {
      if (!/FROST|INLET|PLANT|PRACTICE/.test(code)) continue;
      for (const [key, value] of Object.entries(values)) {
        if (!isQuantity(value)) continue;
        const found = explain(plan, ['warnings', index, 'values', key]);
        expect(['step', 'job'], `${code} ${key}`).toContain(found.origin);
      }
    }
  });
});

describe('where the moisture of a lift comes from', () => {
  /** The stone of the lifts is the second, in the materials and in the list of the day. */
  const pathsOf = (day: object, material: object) => {
    const { materials, ...rest } = levelSite([pavementOn(rectangle(0, 0, 10, 4), { id: 'drive' })]);
    const { stones, ...others } = materials as { readonly stones: readonly object[] };
    const [stone] = stones;
    const plan = planJob({
      ...rest,
      materials: {
        ...others,
        stones: [
          { ...stone, id: 'spare' },
          { ...stone, ...material },
        ],
      },
      ground: {
        optimum: [
          { stone: 'spare', optimumMoisture: 0.05, moisture: 0.02 },
          { stone: 'stone', optimumMoisture: 0.06, ...day },
        ],
      },
    } as never);
    return plan.working
      .filter(({ title }) => title === 'Water to add')
      .map(({ takes }) => takes['w1']?.map((path) => pathText(path)));
  };

  test.each([
    [{ moisture: 0.03 }, {}, ['job.ground.optimum[1].moisture']],
    [{ moisture: 0.03 }, { moisture: 0.04 }, ['job.ground.optimum[1].moisture']],
    [{}, { moisture: 0.04 }, ['job.materials.stones[1].moisture']],
    // the stone counts as dry: no field says so
    [{}, {}, undefined],
  ])('of the day %j, of the stone %j', (day, material, path) => {
    expect(pathsOf(day, material)).toEqual([path, path, path]);
  });
});

describe('a block that cannot be', () => {
  const faults = (ground: object) => {
    const outcome = tryPlanJob(site(ground));
    return outcome.ok ? [] : outcome.errors.map(({ code, path }) => `${code} ${pathText(path)}`);
  };

  test.each([
    [{ cbr: 0 }, 'NOT_POSITIVE ground.cbr'],
    [{ frostGroup: 'F9' }, 'UNKNOWN_CHOICE ground.frostGroup'],
    [{ plant: { ...PLATE, plateArea: undefined } }, 'REQUIRED ground.plant.plateArea'],
    [{ plant: { ...PLATE, drumWidth: '1 m' } }, 'CONFLICTING_FIELDS ground.plant.drumWidth'],
    [{ plant: { ...PLATE, plateArea: '0 m2' } }, 'NOT_POSITIVE ground.plant.plateArea'],
    [
      { optimum: [{ stone: 'gravel', optimumMoisture: 0.06 }] },
      'UNKNOWN_ID ground.optimum[0].stone',
    ],
    [{ optimum: [] }, 'EMPTY_LIST ground.optimum'],
    [{ storm: { depth: '1 in' } }, 'REQUIRED ground.storm.time'],
    [
      { frost: { ...FROST, meanAnnual: { value: 30, unit: 'F' } } },
      'OUT_OF_RANGE ground.frost.meanAnnual.value',
    ],
    [
      { frost: { ...FROST, meanAnnual: { value: 70, unit: 'C' } } },
      'OUT_OF_RANGE ground.frost.meanAnnual.value',
    ],
    [{ frost: { ...FROST, airIndex: 600 } }, 'WRONG_TYPE ground.frost.airIndex'],
    [{ frost: { ...FROST, moisture: 0.016 } }, 'OUT_OF_RANGE ground.frost'],
    [{ sun: 1 }, 'UNKNOWN_FIELD ground.sun'],
  ])('%j: %s', (ground, expected) => {
    expect(faults(ground)).toEqual([expected]);
  });
});
