import Ajv from 'ajv';
import { describe, expect, test } from 'vitest';
import { attempt, pathText, type Issue } from 'settline';
import * as z from 'zod/mini';
import { jobJsonSchema, jobSchema, planJob, readJob } from 'settline/job';
import { DIMENSIONS, unitsOf } from 'settline/units';
import { fieldTexts } from '../../.config/write-field-texts.mjs';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import slateWharf from '../../examples/slate-wharf.json' with { type: 'json' };
import type { About } from '../../src/input/about.js';
import type { Shape } from '../../src/input/shape.js';
import { FIELD_TEXTS } from '../../src/job/schema/field-texts.js';
import { JOB } from '../../src/job/schema/job-shape.js';
import { unitPattern } from '../../src/job/schema/unit-pattern.js';

type Path = readonly (string | number)[];
type Part = Readonly<Record<string, unknown>>;

const isPart = (value: unknown): value is Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const { $schema, ...schema } = jobJsonSchema();
const validate = new Ajv({ allErrors: true }).compile(schema);
const SITES: readonly unknown[] = [cedarCourt, millGarth, slateWharf];

describe('the texts of the fields', () => {
  test('are those of the interfaces', () => {
    expect(FIELD_TEXTS).toEqual(fieldTexts());
  });

  test('stand on every field of the JSON Schema, with a title, outlines and spot heights included', () => {
    const bare: string[] = [];
    let fields = 0;
    const visit = (part: unknown, path: Path) => {
      if (Array.isArray(part)) part.forEach((one, k) => visit(one, [...path, k]));
      if (!isPart(part)) return;
      if (isPart(part['properties'])) {
        for (const [name, field] of Object.entries(part['properties'])) {
          fields += 1;
          const { title, description: text } = isPart(field) ? field : {};
          if (typeof text !== 'string' || text.length < 5) bare.push(pathText([...path, name]));
          if (typeof title !== 'string' || !/^[A-Z]/.test(title)) bare.push(`title of ${name}`);
        }
      }
      for (const [key, value] of Object.entries(part)) visit(value, [...path, key]);
    };
    visit(schema, []);
    expect(bare).toEqual([]);
    expect(fields).toBeGreaterThan(150);
  });
});

describe('the JSON Schema', () => {
  test('is of draft 2020-12, known by a relative id', () => {
    expect($schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema['$id']).toBe('job.schema.json');
  });

  test('may be named in a job file, which is kept', () => {
    const named = { ...cedarCourt, $schema: './job.schema.json' };
    expect(validate(named)).toBe(true);
    expect(readJob(named).$schema).toBe('./job.schema.json');
    const plan = planJob(readJob(named));
    expect(plan.job.$schema).toBe('./job.schema.json');
    expect(plan.totals).toEqual(planJob(readJob(cedarCourt)).totals);
    expect(faultsWith(cedarCourt, ['$schema'], 7)).toMatchObject([
      { path: ['$schema'], code: 'WRONG_TYPE' },
    ]);
  });

  test('is what the schema of zod shows, made when asked for', () => {
    const { $schema: draft, ...shown } = z.toJSONSchema(jobSchema, { io: 'input' });
    expect(draft).toBe($schema);
    expect(shown).toEqual(schema);
    const read = z.safeParse(jobSchema, { version: 1 });
    expect(read.error?.issues[0]).toMatchObject({ path: ['name'], params: { code: 'REQUIRED' } });
  });

  test.each([
    ['7\' 3 5/8"', true],
    ['7′ 3⅝″', true],
    ['½ in', true],
    ['-.5 m', true],
    ['−3 mm', true],
    ['0', true],
    ['12', false],
    ['12.5', false],
    ['in', false],
    ['1:48', false],
  ])('takes the text %s for a length: %s', (text, isTaken) => {
    expect(new RegExp(unitPattern('length'), 'u').test(text)).toBe(isTaken);
  });

  test.each([
    ['2%', true],
    ['1:48', true],
    ['1 in 48', true],
    ['¼" per ft', true],
    ['1.2°', true],
    ['2', false],
    ['per ft', false],
  ])('takes the text %s for a slope: %s', (text, isTaken) => {
    expect(new RegExp(unitPattern('slope'), 'u').test(text)).toBe(isTaken);
  });

  test.each(DIMENSIONS)('takes a number with any unit of %s as text', (dimension) => {
    const pattern = new RegExp(unitPattern(dimension), 'u');
    const units: readonly string[] = unitsOf(dimension);
    for (const unit of units) expect(`1/2 ${unit}`).toMatch(pattern);
    expect(units.length).toBeGreaterThan(2);
    expect('1/2').not.toMatch(pattern);
  });

  test.each(SITES.map((site, k) => [k, site] as const))('takes built-in site %i', (_k, site) => {
    expect(validate(site), JSON.stringify(validate.errors)).toBe(true);
  });

  test.each([
    ['an unknown field', ['colour'], 'red'],
    ['a misspelt field in a layer', ['pavements', 0, 'layers', 0, 'thikness'], '2 in'],
    ['a bare length', ['stringHeight'], 18],
    ['an unknown kind', ['pavements', 0, 'layers', 0, 'kind'], 'gravel'],
    ['a list with nothing in it', ['pavements'], []],
    ['an outline with a field it does not have', ['pavements', 0, 'outline', 'depth'], 1],
  ] as const)('refuses %s', (_name, path, value) => {
    expect(validate(withValue(cedarCourt, path, value))).toBe(false);
  });
});

/** A copy with one value changed. */
function withValue(whole: unknown, [step, ...rest]: Path, value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(whole)) {
    return whole.map((one: unknown, k) => (k === step ? withValue(one, rest, value) : one));
  }
  const part = isPart(whole) ? whole : {};
  return { ...part, [step]: withValue(part[step], rest, value) };
}

interface FieldAt {
  /** `*` stands for any entry of a list. */
  readonly path: readonly string[];
  readonly about: About;
}

/** Every field of the job that is a quantity or a number. */
function amountsIn(shape: Shape, path: readonly string[] = []): FieldAt[] {
  return Object.entries(shape).flatMap(([key, { about }]) =>
    about === undefined ? [] : amountsOf(about, [...path, key]),
  );
}

function amountsOf(about: About, path: readonly string[]): FieldAt[] {
  if (about.kind === 'object') return amountsIn(about.shape, path);
  if (about.kind === 'list') {
    const { about: item } = about.item;
    return item === undefined ? [] : amountsOf(item, [...path, '*']);
  }
  if (about.kind === 'either') {
    return about.fields.flatMap((field) =>
      field.about === undefined ? [] : amountsOf(field.about, path),
    );
  }
  const isAmount = about.kind === 'quantity' || about.kind === 'number' || about.kind === 'whole';
  return isAmount ? [{ path, about }] : [];
}

/** The places in a file that a path with stars may mean; the last step need not be there. */
function placesOf(value: unknown, [step, ...rest]: readonly string[], path: Path = []): Path[] {
  if (step === undefined) return [path];
  if (step === '*') {
    if (!Array.isArray(value)) return [];
    return value.flatMap((one, k) => placesOf(one, rest, [...path, k]));
  }
  return isPart(value) ? placesOf(value[step], rest, [...path, step]) : [];
}

const faultsWith = (site: unknown, path: Path, value: unknown): readonly Issue[] => {
  const outcome = attempt(() => readJob(withValue(site, path, value)));
  return outcome.ok ? [] : outcome.errors;
};

/** Values just inside and just outside what a field takes. */
function edgesOf(about: About): { readonly inside: unknown[]; readonly outside: unknown[] } {
  if (about.kind === 'quantity') {
    const { most, sign } = about.range;
    const [beyond, some] = [most.times('1.000001'), most.times('0.01')];
    const low = {
      positive: { inside: [some], outside: [0, some.negated()] },
      'not-negative': { inside: [0, some], outside: [some.negated()] },
      any: { inside: [0, most.negated()], outside: [beyond.negated()] },
    }[sign];
    return { inside: [most, ...low.inside], outside: [beyond, ...low.outside] };
  }
  if (about.kind !== 'number' && about.kind !== 'whole') return { inside: [], outside: [] };
  const { least, most = 1, sign } = about.rule;
  const step = about.kind === 'whole' ? 1 : 1e-6;
  const low = least ?? 0;
  const isOpen = sign === 'positive' && least === undefined;
  return { inside: [isOpen ? step : low, most], outside: [isOpen ? low : low - step, most + step] };
}

/** What may be known of the ground, with one machine or another. */
function groundOf(plant: object) {
  return {
    cbr: 5,
    frostGroup: 'F3',
    frost: {
      airIndex: { value: 400, unit: 'C-days' },
      surface: 'concrete',
      seasonDays: 90,
      meanAnnual: { value: 45, unit: 'F' },
      soil: 'silt-clay',
      dryDensity: '1600 kg/m3',
      moisture: 0.2,
      baseMoisture: 0.05,
    },
    plant,
    optimum: [{ stone: 'stone', optimumMoisture: 0.07, moisture: 0.03 }],
    storm: { depth: '1 in', time: '1 h', coefficient: 0.9, inlet: '20 l/min' },
  };
}

/** The site with everything, with what it gives in one of two ways left out or given the other way. */
const OTHER_WAYS = (
  [
    [['levelBook', 'rule'], undefined],
    [['materials', 'stones', 0, 'pack', 'mass'], undefined],
    [['materials', 'sands', 0, 'pack', 'volume'], undefined],
    [['string'], { tension: '60 N', weightPerLength: '0.5 g/m' }],
    [['ground'], groundOf({ plant: 'plate', mass: '400 kg', plateArea: '0.25 m2' })],
    [['ground'], groundOf({ plant: 'single-drum', mass: '1 t', drumWidth: '1 m' })],
    [['pavements', 0, 'border', 'edges'], [1]],
    [['pavements', 0, 'betweenStrings'], { from: 'west', to: 'east', spacing: '1 ft' }],
    [['pavements', 0, 'edges', 1], { along: 'open', batter: 1 }],
    [['pavements', 0, 'edges', 1], { along: 'building', level: '100 ft', footing: '30 in' }],
    [
      ['oldPaving', 0],
      { material: 'asphalt', thickness: '3 in', density: '2.2 t/m3', pavement: 'apron', share: 1 },
    ],
  ] as const
).map(([path, value]) => withValue(slateWharf, path, value));

/** A site and a place in it where a field may stand without a fault. */
function whereFits(path: readonly string[], value: unknown) {
  for (const site of [...SITES, ...OTHER_WAYS]) {
    for (const place of placesOf(site, path)) {
      if (faultsWith(site, place, value).length === 0) return { site, place };
    }
  }
  return expect.unreachable(`no built-in site has room for ${path.join('.')}`);
}

/** Stakes and levels stand near their neighbours, borders lie on edges that are there. */
const BOUND_BY_OTHERS: readonly (readonly [RegExp, unknown])[] = [
  [/^(?:stakes|pavements.*levels)\.\*\.[xy]$/, 0],
  [/^pavements\.\*\.border\.edges\.\*$/, 1],
  [/(?:\.elevation|^levelBook\.(?:start|known)|^stakes\.\*\.finish|\.edges\.\*\.level)$/, '100 ft'],
  // soil so dry or so dense that the equations of conductivity give no depth of frost
  [/^ground\.frost\.dryDensity$/, '1700 kg/m3'],
  [/^ground\.frost\.(?:moisture|baseMoisture)$/, 0.15],
  [/^ground\.frost\.meanAnnual\.value$/, 50],
];

/** Values that a field takes at that place in a site. */
const fitting = (path: readonly string[], inside: readonly unknown[]): readonly unknown[] => {
  const bound = BOUND_BY_OTHERS.find(([name]) => name.test(path.join('.')));
  return bound === undefined ? inside : [bound[1]];
};

describe('one range for the schema and the reader', () => {
  const amounts = amountsIn(JOB);

  test('covers the job', () => {
    expect(amounts.length).toBeGreaterThan(80);
    expect(amounts.map(({ path }) => path.join('.'))).toEqual(
      expect.arrayContaining(['trees.*.radiusPerDiameter', 'pavements.*.edges.*.footing']),
    );
  });

  test.each(amounts.map((one) => [one.path.join('.'), one] as const))(
    '%s',
    (_n, { path, about }) => {
      const { inside, outside } = edgesOf(about);
      const good = fitting(path, inside);
      const { site, place } = whereFits(path, good.at(-1));
      for (const value of good) expect(faultsWith(site, place, value)).toEqual([]);
      for (const value of outside) {
        const faults = faultsWith(site, place, value);
        expect(
          faults.map((fault) => pathText(fault.path)),
          String(value),
        ).toEqual([pathText(place)]);
      }
      if (about.kind === 'quantity') return;
      for (const value of inside) expect(validate(withValue(site, place, value))).toBe(true);
      for (const value of outside) expect(validate(withValue(site, place, value))).toBe(false);
    },
  );
});
