import Ajv from 'ajv';
import { describe, expect, test } from 'vitest';
import { attempt, pathText, type Issue } from 'settline';
import { jobJsonSchema, readJob } from 'settline/job';
import { fieldTexts } from '../../.config/write-field-texts.mjs';
import cedarCourt from '../../examples/cedar-court.json' with { type: 'json' };
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import slateWharf from '../../examples/slate-wharf.json' with { type: 'json' };
import type { About } from '../../src/input/about.js';
import type { Shape } from '../../src/input/shape.js';
import { FIELD_TEXTS } from '../../src/job/schema/field-texts.js';
import { JOB } from '../../src/job/schema/job-shape.js';

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

  test('stand on every field of the JSON Schema, outlines and spot heights included', () => {
    const bare: string[] = [];
    let fields = 0;
    const visit = (part: unknown, path: Path) => {
      if (Array.isArray(part)) part.forEach((one, k) => visit(one, [...path, k]));
      if (!isPart(part)) return;
      if (isPart(part['properties'])) {
        for (const [name, field] of Object.entries(part['properties'])) {
          fields += 1;
          const isQuantity = name === 'value' || (name === 'unit' && 'value' in part['properties']);
          const text = isPart(field) ? field['description'] : undefined;
          if (!isQuantity && (typeof text !== 'string' || text.length < 5)) {
            bare.push(pathText([...path, name]));
          }
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
  test('is of draft 2020-12', () => {
    expect($schema).toBe('https://json-schema.org/draft/2020-12/schema');
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
  expect(sign === 'positive' && least === undefined, 'an open lower end').toBe(false);
  return { inside: [low, most], outside: [low - step, most + step] };
}

/** The site with everything, without what it gives in one of two ways: the other way has room. */
const OTHER_WAYS = [
  ['levelBook', 'rule'],
  ['materials', 'packs', 'base', 'mass'],
  ['materials', 'packs', 'bedding', 'volume'],
].map((path) => withValue(slateWharf, path, undefined));

/** A site and a place in it where a field may stand without a fault. */
function whereFits(path: readonly string[], value: unknown) {
  for (const site of [...SITES, ...OTHER_WAYS]) {
    for (const place of placesOf(site, path)) {
      if (faultsWith(site, place, value).length === 0) return { site, place };
    }
  }
  return expect.unreachable(`no built-in site has room for ${path.join('.')}`);
}

/** Stakes and levels stand near their neighbours: alone they cannot be moved to the end of the range. */
const HAS_NEIGHBOURS = /^(?:stringLines.*stakes|pavements.*levels)\.\*\.[xy]$/;

describe('one range for the schema and the reader', () => {
  const amounts = amountsIn(JOB);

  test('covers the job', () => {
    expect(amounts.length).toBeGreaterThan(80);
    expect(amounts.map(({ path }) => path.join('.'))).toContain('trees.*.radiusPerDiameter');
  });

  test.each(amounts.map((one) => [one.path.join('.'), one] as const))(
    '%s',
    (_n, { path, about }) => {
      const { inside, outside } = edgesOf(about);
      const { site, place } = whereFits(
        path,
        HAS_NEIGHBOURS.test(path.join('.')) ? 0 : inside.at(-1),
      );
      for (const value of HAS_NEIGHBOURS.test(path.join('.')) ? [0] : inside) {
        expect(faultsWith(site, place, value)).toEqual([]);
      }
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
