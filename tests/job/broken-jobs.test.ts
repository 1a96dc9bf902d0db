import { describe, expect, test } from 'vitest';
import { isSettlineError, pathText, planJob, tryPlanJob, type ErrorCode } from 'settline';
import { readJob, type JobInput } from 'settline/job';
import { cedarCourtFile } from '../cedar-court.js';
import type { Loose, LooseJob } from '../loose-job.js';

interface Broken {
  readonly name: string;
  readonly break: (job: LooseJob) => unknown;
  readonly path: string;
  readonly code: ErrorCode;
  readonly says: string;
}

const pavement = (job: LooseJob, index = 0) => job.pavements[index] ?? expect.unreachable();
const layer = (job: LooseJob, index: number) => pavement(job).layers[index] ?? expect.unreachable();
const line = (job: LooseJob, index = 0) => job.stringLines[index] ?? expect.unreachable();
const stake = (job: LooseJob, index: number) => job.stakes[index] ?? expect.unreachable();
const stone = (job: LooseJob) => job.materials.stones[0] ?? expect.unreachable();
const sand = (job: LooseJob) => job.materials.sands[0] ?? expect.unreachable();
const paver = (job: LooseJob) => job.materials.pavers[0] ?? expect.unreachable();
const old = (job: LooseJob) => (job['oldPaving'] as Loose[])[0] ?? expect.unreachable();
const points = (job: LooseJob) => (pavement(job)['outline'] as { points: unknown[] }).points;
const set = (target: Loose, key: string, value: unknown) => {
  target[key] = value;
};
const own = (target: object, key: string, value: unknown) => {
  Object.defineProperty(target, key, { value, enumerable: true, configurable: true });
};

const BROKEN: readonly Broken[] = [
  {
    name: 'a thickness without a unit',
    break: (job) => set(layer(job, 2), 'thickness', 10),
    path: 'pavements[0].layers[2].thickness',
    code: 'UNIT_MISSING',
    says: '10 has no unit',
  },
  {
    name: 'a thickness as bare text',
    break: (job) => set(layer(job, 2), 'thickness', '10'),
    path: 'pavements[0].layers[2].thickness',
    code: 'UNIT_MISSING',
    says: 'has no unit',
  },
  {
    name: 'a negative thickness',
    break: (job) => set(layer(job, 2), 'thickness', '-10 in'),
    path: 'pavements[0].layers[2].thickness',
    code: 'NOT_POSITIVE',
    says: '-10 in is not greater than zero',
  },
  {
    name: 'a thickness of zero',
    break: (job) => set(layer(job, 0), 'thickness', '0 mm'),
    path: 'pavements[0].layers[0].thickness',
    code: 'NOT_POSITIVE',
    says: 'not greater than zero',
  },
  {
    name: 'a thickness a thousand times too large',
    break: (job) => set(layer(job, 2), 'thickness', '250 m'),
    path: 'pavements[0].layers[2].thickness',
    code: 'OUT_OF_RANGE',
    says: 'Check the digits and the unit',
  },
  {
    name: 'a thickness in pounds',
    break: (job) => set(layer(job, 2), 'thickness', '10 lb'),
    path: 'pavements[0].layers[2].thickness',
    code: 'UNIT_UNKNOWN',
    says: '"lb" is not a unit of length',
  },
  {
    name: 'a thickness with two readings',
    break: (job) => set(layer(job, 2), 'thickness', '5-6 in'),
    path: 'pavements[0].layers[2].thickness',
    code: 'TEXT_UNREADABLE',
    says: 'a range, a subtraction, or feet and inches?',
  },
  {
    name: 'thirteen inches in a foot',
    break: (job) => set(stake(job, 1), 'x', `5' 13"`),
    path: 'stakes[1].x',
    code: 'TEXT_UNREADABLE',
    says: 'makes a whole larger unit or more',
  },
  {
    name: 'a division by zero on the tape',
    break: (job) => set(layer(job, 0), 'thickness', '2 3/0 in'),
    path: 'pavements[0].layers[0].thickness',
    code: 'TEXT_UNREADABLE',
    says: 'a fraction over zero',
  },
  {
    name: 'null for a length',
    break: (job) => set(job, 'stringHeight', null),
    path: 'stringHeight',
    code: 'WRONG_TYPE',
    says: 'expected a length',
  },
  {
    name: 'a list for a length',
    break: (job) => set(job, 'stringHeight', ['18 in']),
    path: 'stringHeight',
    code: 'WRONG_TYPE',
    says: 'got a list',
  },
  {
    name: 'an empty text for a length',
    break: (job) => set(job, 'stringHeight', ''),
    path: 'stringHeight',
    code: 'TEXT_UNREADABLE',
    says: 'the text is empty',
  },
  {
    name: 'NaN for a value',
    break: (job) => set(job, 'stringHeight', { value: Number.NaN, unit: 'in' }),
    path: 'stringHeight',
    code: 'NOT_FINITE',
    says: 'NaN is not a number',
  },
  {
    name: 'infinity for a value',
    break: (job) => set(job, 'stringHeight', { value: Number.POSITIVE_INFINITY, unit: 'in' }),
    path: 'stringHeight',
    code: 'NOT_FINITE',
    says: 'Infinity is not a number',
  },
  {
    name: 'the text NaN for a value',
    break: (job) => set(job, 'stringHeight', { value: 'NaN', unit: 'in' }),
    path: 'stringHeight',
    code: 'NOT_A_NUMBER',
    says: '"NaN" is not a number',
  },
  {
    name: 'a unit of another kind',
    break: (job) => set(job, 'stringHeight', { value: 18, unit: 'ft2' }),
    path: 'stringHeight',
    code: 'DIMENSION_MISMATCH',
    says: 'ft2 is a unit of area, not of length',
  },
  {
    name: 'a unit that does not exist',
    break: (job) => set(job, 'stringHeight', { value: 18, unit: 'cubits' }),
    path: 'stringHeight',
    code: 'UNIT_UNKNOWN',
    says: 'Use one of mm, cm, m',
  },
  {
    name: 'a third key beside value and unit',
    break: (job) => set(job, 'stringHeight', { value: 18, unit: 'in', about: 1 }),
    path: 'stringHeight.about',
    code: 'UNKNOWN_FIELD',
    says: 'value and unit',
  },
  {
    name: 'a negative string height',
    break: (job) => set(job, 'stringHeight', '-18 in'),
    path: 'stringHeight',
    code: 'NEGATIVE',
    says: '-18 in is negative. Write 0 or more',
  },
  {
    name: 'no string height',
    break: (job) => delete job['stringHeight'],
    path: 'stringHeight',
    code: 'REQUIRED',
    says: 'missing. Write "15 in"',
  },
  {
    name: 'no version',
    break: (job) => delete job['version'],
    path: 'version',
    code: 'REQUIRED',
    says: 'missing. Write 1',
  },
  {
    name: 'a version of the future',
    break: (job) => set(job, 'version', 2),
    path: 'version',
    code: 'UNKNOWN_CHOICE',
    says: 'reads version 1',
  },
  {
    name: 'an unknown field at the top',
    break: (job) => set(job, 'colour', 'red'),
    path: 'colour',
    code: 'UNKNOWN_FIELD',
    says: 'version, name, stringHeight',
  },
  {
    name: 'a misspelt field in a layer',
    break: (job) => {
      delete layer(job, 0)['thickness'];
      set(layer(job, 0), 'thikness', '2 in');
    },
    path: 'pavements[0].layers[0].thikness',
    code: 'UNKNOWN_FIELD',
    says: 'Did you mean thickness?',
  },
  {
    name: 'a __proto__ key',
    break: (job) => own(job, '__proto__', { polluted: true }),
    path: '__proto__',
    code: 'UNKNOWN_FIELD',
    says: 'unknown field',
  },
  {
    name: 'a constructor key in a stake',
    break: (job) => own(stake(job, 0), 'constructor', { prototype: {} }),
    path: 'stakes[0].constructor',
    code: 'UNKNOWN_FIELD',
    says: 'unknown field',
  },
  {
    name: 'a prototype key as the id of a pavement that is asked for',
    break: (job) => set(line(job), 'pavement', '__proto__'),
    path: 'stringLines[0].pavement',
    code: 'UNKNOWN_ID',
    says: 'Use court, terrace',
  },
  {
    name: 'no pavements',
    break: (job) => set(job, 'pavements', []),
    path: 'pavements',
    code: 'EMPTY_LIST',
    says: 'the list is empty',
  },
  {
    name: 'pavements that are no list',
    break: (job) => set(job, 'pavements', { court: {} }),
    path: 'pavements',
    code: 'WRONG_TYPE',
    says: 'expected a list',
  },
  {
    name: 'no layers',
    break: (job) => set(pavement(job), 'layers', []),
    path: 'pavements[0].layers',
    code: 'EMPTY_LIST',
    says: 'the list is empty',
  },
  {
    name: 'no base',
    break: (job) => pavement(job).layers.splice(2),
    path: 'pavements[0].layers',
    code: 'REQUIRED',
    says: 'no layer has the kind base. Add one',
  },
  {
    name: 'two pavers',
    break: (job) => pavement(job).layers.unshift({ kind: 'paver', name: 'cap', thickness: '1 in' }),
    path: 'pavements[0].layers',
    code: 'DUPLICATE_ID',
    says: '2 layers have the kind paver. Remove all but one of them',
  },
  {
    name: 'layers upside down',
    break: (job) => pavement(job).layers.reverse(),
    path: 'pavements[0].layers[1].kind',
    code: 'LAYER_ORDER',
    says: 'layers are not in order. List them from the top down: paver, bedding, base, sub-base',
  },
  {
    name: 'two layers of one name',
    break: (job) =>
      pavement(job).layers.splice(3, 0, { kind: 'base', thickness: '4 in', material: 'stone' }),
    path: 'pavements[0].layers[3].name',
    code: 'DUPLICATE_ID',
    says: '"base" is already used by layers[2]. Give each layer its own name',
  },
  {
    name: 'a layer of an unknown kind',
    break: (job) => set(layer(job, 2), 'kind', 'gravel'),
    path: 'pavements[0].layers[2].kind',
    code: 'UNKNOWN_CHOICE',
    says: '"gravel" is not one of paver, bedding, base, sub-base',
  },
  {
    name: 'an unknown use',
    break: (job) => set(pavement(job), 'use', 'runway'),
    path: 'pavements[0].use',
    code: 'UNKNOWN_CHOICE',
    says: 'residential-driveway',
  },
  {
    name: 'no subgrade',
    break: (job) => delete pavement(job)['subgrade'],
    path: 'pavements[0].subgrade',
    code: 'REQUIRED',
    says: 'Choose one of well-drained, clay, wet-or-weak',
  },
  {
    name: 'frost as text',
    break: (job) => set(pavement(job), 'frost', 'yes'),
    path: 'pavements[0].frost',
    code: 'WRONG_TYPE',
    says: 'expected true or false, got "yes"',
  },
  {
    name: 'an outline that crosses itself',
    break: (job) => {
      const [a, b, c, d] = points(job);
      points(job).splice(0, 4, a, c, b, d);
    },
    path: 'pavements[0].outline.points',
    code: 'SELF_INTERSECTION',
    says: 'edge 1 and edge 3 cross or touch. List the points in order around the outline. Edge 1 runs from the first point to the second',
  },
  {
    name: 'an outline of two points',
    break: (job) => points(job).splice(2),
    path: 'pavements[0].outline.points',
    code: 'TOO_FEW',
    says: 'three points or more, got 2',
  },
  {
    name: 'an outline on one line',
    break: (job) => points(job).splice(0, 6, [0, 0], [1, 1], [2, 2]),
    path: 'pavements[0].outline.points',
    code: 'ZERO_AREA',
    says: 'the outline has no area',
  },
  {
    name: 'a point given twice',
    break: (job) => points(job).splice(1, 0, [0, 0]),
    path: 'pavements[0].outline.points',
    code: 'POINTS_COINCIDE',
    says: 'points 1 and 2 are the same',
  },
  {
    name: 'an outline without a unit',
    break: (job) => delete (pavement(job)['outline'] as Loose)['unit'],
    path: 'pavements[0].outline.unit',
    code: 'UNIT_MISSING',
    says: 'Write the unit of the points, such as "ft" or "m"',
  },
  {
    name: 'an outline in pounds',
    break: (job) => set(pavement(job)['outline'] as Loose, 'unit', 'lb'),
    path: 'pavements[0].outline.unit',
    code: 'DIMENSION_MISMATCH',
    says: 'lb is a unit of mass, not of length',
  },
  {
    name: 'a point of three coordinates',
    break: (job) => points(job).splice(0, 1, [0, 0, 0]),
    path: 'pavements[0].outline.points[0]',
    code: 'WRONG_TYPE',
    says: 'expected a point [x, y]',
  },
  {
    name: 'a coordinate that is null',
    break: (job) => points(job).splice(0, 1, [0, null]),
    path: 'pavements[0].outline.points[0][1]',
    code: 'WRONG_TYPE',
    says: 'expected a number',
  },
  {
    name: 'a coordinate of absurd size',
    break: (job) => points(job).splice(0, 1, [0, 1e30]),
    path: 'pavements[0].outline.points[0][1]',
    code: 'OUT_OF_RANGE',
    says: 'Check the digits',
  },
  {
    name: 'no outline',
    break: (job) => delete (pavement(job) as Loose)['outline'],
    path: 'pavements[0].outline',
    code: 'REQUIRED',
    says: 'missing. Write { "unit"',
  },
  {
    name: 'too few edges',
    break: (job) => set(pavement(job), 'edges', ['open', 'building']),
    path: 'pavements[0].edges',
    code: 'COUNT_MISMATCH',
    says: '2 edges are listed for an outline of 6',
  },
  {
    name: 'an unknown kind of edge',
    break: (job) => set(pavement(job), 'edges', ['open', 'open', 'open', 'wall', 'open', 'open']),
    path: 'pavements[0].edges[3]',
    code: 'UNKNOWN_CHOICE',
    says: 'open, adjoining, restraint, slab, building',
  },
  {
    name: 'old paving of an unknown kind',
    break: (job) => set(old(job), 'material', 'brick'),
    path: 'oldPaving[0].material',
    code: 'UNKNOWN_CHOICE',
    says: 'asphalt, concrete',
  },
  {
    name: 'old paving without a thickness',
    break: (job) => delete old(job)['thickness'],
    path: 'oldPaving[0].thickness',
    code: 'REQUIRED',
    says: 'missing. Write "5 in"',
  },
  {
    name: 'a fall without a form',
    break: (job) => set(job, 'minimumFall', 2),
    path: 'minimumFall',
    code: 'UNIT_MISSING',
    says: '2 has no unit. Write "2%"',
  },
  {
    name: 'a ratio that can be read both ways',
    break: (job) => set(job, 'minimumFall', '2:48'),
    path: 'minimumFall',
    code: 'TEXT_UNREADABLE',
    says: 'neither side is 1',
  },
  {
    name: 'the same pavement twice',
    break: (job) => set(pavement(job, 1), 'id', 'court'),
    path: 'pavements[1].id',
    code: 'DUPLICATE_ID',
    says: '"court" is already used by entry 1 of this list',
  },
  {
    name: 'the same stake twice',
    break: (job) => set(stake(job, 1), 'id', 'K1'),
    path: 'stakes[1].id',
    code: 'DUPLICATE_ID',
    says: '"K1" is already used by entry 1 of this list',
  },
  {
    name: 'a stake twice on a string',
    break: (job) => line(job).stakes.splice(1, 1, 'K1'),
    path: 'stringLines[0].stakes[1]',
    code: 'DUPLICATE_ID',
    says: '"K1" is already stake 1 of this string',
  },
  {
    name: 'a stake that is not there',
    break: (job) => line(job).stakes.splice(1, 1, 'K9'),
    path: 'stringLines[0].stakes[1]',
    code: 'UNKNOWN_ID',
    says: 'no stake has the id "K9". Use K1, K2',
  },
  {
    name: 'a string of no length',
    break: (job) => {
      job.stakes.push({ ...stake(job, 0), id: 'S9' });
      line(job).stakes = ['K1', 'K2', 'S9'];
    },
    path: 'stringLines[0].stakes',
    code: 'POINTS_COINCIDE',
    says: 'starts and ends at the same point',
  },
  {
    name: 'two neighbours on one spot',
    break: (job) => Object.assign(stake(job, 2), { x: '14 ft', y: '-3 ft 1 1/8 in' }),
    path: 'stringLines[0].stakes[2]',
    code: 'POINTS_COINCIDE',
    says: 'at the same point as the one before it',
  },
  {
    name: 'a string on one stake',
    break: (job) => line(job).stakes.splice(1),
    path: 'stringLines[0].stakes',
    code: 'TOO_FEW',
    says: '1 stake given, at least 2 needed',
  },
  {
    name: 'a stake far from the others',
    break: (job) => set(stake(job, 2), 'x', '30 km'),
    path: 'stringLines[0].stakes[2]',
    code: 'OUT_OF_RANGE',
    says: 'more than 10 km from the one before it',
  },
  {
    name: 'base and sub-base too thick together',
    break: (job) => {
      set(layer(job, 2), 'thickness', '3 m');
      set(layer(job, 3), 'thickness', '2001 mm');
    },
    path: 'pavements[0].layers',
    code: 'OUT_OF_RANGE',
    says: 'together are 5.001 m thick, more than 5 m',
  },
  {
    name: 'a string for a pavement that is not there',
    break: (job) => set(line(job), 'pavement', 'patio'),
    path: 'stringLines[0].pavement',
    code: 'UNKNOWN_ID',
    says: 'no pavement has the id "patio". Use court, terrace',
  },
  {
    name: 'stakes that stand in a square',
    break: (job) => {
      // F1 to F3, and G1 in the fourth corner
      const corners = [
        { x: '10 ft', y: '36 ft' },
        { x: '11 ft', y: '36 ft' },
        { x: '11 ft', y: '37 ft' },
        { x: '10 ft', y: '37 ft' },
      ];
      corners.forEach((place, k) => Object.assign(stake(job, 5 + k), place));
      line(job, 1).stakes = ['F1', 'F2', 'F3', 'G1'];
    },
    path: 'stringLines[1].stakes',
    code: 'DIRECTION_UNDEFINED',
    says: 'spread equally in every direction',
  },
  {
    name: 'an id that is a number',
    break: (job) => set(stake(job, 0), 'id', 7),
    path: 'stakes[0].id',
    code: 'WRONG_TYPE',
    says: 'expected text, got 7',
  },
  {
    name: 'an id of spaces',
    break: (job) => set(stake(job, 0), 'id', '  '),
    path: 'stakes[0].id',
    code: 'EMPTY',
    says: 'the text is empty',
  },
  {
    name: 'a name with a line break',
    break: (job) => set(job, 'name', 'a\nb'),
    path: 'name',
    code: 'BAD_CHARACTER',
    says: 'has a line break',
  },
  {
    name: 'a name without end',
    break: (job) => set(job, 'name', 'x'.repeat(100)),
    path: 'name',
    code: 'TOO_LONG',
    says: 'more than 60 characters',
  },
  {
    name: 'a ratio the wrong way up',
    break: (job) => set(stone(job), 'compactedPerLoose', 1.25),
    path: 'materials.stones[0].compactedPerLoose',
    code: 'OUT_OF_RANGE',
    says: 'Write compacted over loose',
  },
  {
    name: 'moisture in percent',
    break: (job) => set(stone(job), 'moisture', 5),
    path: 'materials.stones[0].moisture',
    code: 'OUT_OF_RANGE',
    says: '5 is more than 1',
  },
  {
    name: 'waste below zero',
    break: (job) => set(sand(job), 'waste', -0.1),
    path: 'materials.sands[0].waste',
    code: 'NEGATIVE',
    says: '-0.1 is negative',
  },
  {
    name: 'moisture as words',
    break: (job) => set(stone(job), 'moisture', 'damp'),
    path: 'materials.stones[0].moisture',
    code: 'NOT_A_NUMBER',
    says: '"damp" is not a number',
  },
  {
    name: 'a lift too thin to count',
    break: (job) => set(stone(job), 'maxLift', '0.01 mm'),
    path: 'pavements[0].layers[2].thickness',
    code: 'OUT_OF_RANGE',
    says: 'makes 21590 lifts of "stone", more than 500. Check the digits and the unit',
  },
  {
    name: 'a density without a unit',
    break: (job) => set(job.soil, 'bankDensity', 3200),
    path: 'soil.bankDensity',
    code: 'UNIT_MISSING',
    says: '3200 has no unit. Write "3700 lb/yd3"',
  },
  {
    name: 'a swell factor of thirty',
    break: (job) => set(job.soil, 'loosePerBank', 30),
    path: 'soil.loosePerBank',
    code: 'OUT_OF_RANGE',
    says: '30 is outside 0.9 to 3',
  },
  {
    name: 'a truck in bare tons',
    break: (job) => set(job.truck, 'payload', '12 tons'),
    path: 'truck.payload',
    code: 'UNIT_AMBIGUOUS',
    says: 't (1000 kg), ton-us (2000 lb) or ton-uk (2240 lb)',
  },
  {
    name: 'a truck that holds nothing',
    break: (job) => set(job.truck, 'boxVolume', '0 yd3'),
    path: 'truck.boxVolume',
    code: 'NOT_POSITIVE',
    says: 'not greater than zero',
  },
  {
    name: 'no truck',
    break: (job) => delete (job as Loose)['truck'],
    path: 'truck',
    code: 'REQUIRED',
    says: 'missing. Write an object with boxVolume, payload',
  },
  {
    name: 'a joint as wide as a paver',
    break: (job) => set(paver(job), 'joint', '8 in'),
    path: 'materials.pavers[0].joint',
    code: 'OUT_OF_RANGE',
    says: 'Check the digits',
  },
];

function broken(how: (job: LooseJob) => unknown): LooseJob {
  const job = cedarCourtFile();
  how(job);
  return job;
}

test('there are more than forty broken jobs', () => {
  expect(BROKEN.length).toBeGreaterThan(70);
});

describe('a broken job is refused in words that help', () => {
  test.each(BROKEN)('$name', ({ break: how, path, code, says }) => {
    const outcome = tryPlanJob(broken(how));
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    const found = outcome.errors.map((issue) => ({ ...issue, at: pathText(issue.path) }));
    const wanted = found.find((issue) => issue.at === path || issue.at.endsWith(`["${path}"]`));
    expect(wanted, JSON.stringify(found)).toMatchObject({ code });
    expect(wanted?.message).toContain(says);
    expect(Object.getPrototypeOf({})).not.toHaveProperty('polluted');
  });

  test.each([
    undefined,
    null,
    5,
    'text',
    '{"version":1}',
    [],
    true,
    Number.NaN,
    new Map(),
    () => 1,
    Symbol('job'),
    10n,
    { toString: 5 },
    Object.create(null),
  ])('%o is no job', (input) => {
    let caught: unknown;
    try {
      planJob(input as JobInput);
    } catch (error) {
      caught = error;
    }
    expect(isSettlineError(caught)).toBe(true);
    if (isSettlineError(caught)) expect(caught.code).toBe('JOB_INVALID');
  });
});

test('all faults come at once, each with path, code, words and params', () => {
  const outcome = tryPlanJob(
    broken((job) => {
      set(layer(job, 0), 'thickness', 2);
      set(stake(job, 0), 'x', 'here');
      set(job, 'colour', 'red');
      set(job.truck, 'payload', '12 tons');
    }),
  );
  expect(outcome.ok).toBe(false);
  if (outcome.ok) return;
  expect(outcome.errors.map(({ path, code }) => `${pathText(path)} ${code}`).sort()).toEqual([
    'colour UNKNOWN_FIELD',
    'pavements[0].layers[0].thickness UNIT_MISSING',
    'stakes[0].x UNIT_UNKNOWN',
    'truck.payload UNIT_AMBIGUOUS',
  ]);
});

test('faults of shape do not hide faults between fields', () => {
  const outcome = tryPlanJob(
    broken((job) => {
      set(layer(job, 0), 'thickness', 2);
      set(job, 'colour', 'red');
      set(pavement(job), 'edges', ['open']);
      set(pavement(job, 1), 'id', 'court');
      set(line(job, 2), 'pavement', 'patio');
      set(stake(job, 1), 'id', 'K1');
      set(layer(job, 1), 'material', 'gravel');
      pavement(job, 1).layers.splice(2);
      delete job['stringHeight'];
    }),
  );
  if (outcome.ok) expect.unreachable();
  expect(outcome.errors.map(({ path, code }) => `${pathText(path)} ${code}`).sort()).toEqual([
    'colour UNKNOWN_FIELD',
    'pavements[0].edges COUNT_MISMATCH',
    'pavements[0].layers[0].thickness UNIT_MISSING',
    'pavements[0].layers[1].material UNKNOWN_ID',
    'pavements[1].id DUPLICATE_ID',
    'pavements[1].layers REQUIRED',
    'stakes[1].id DUPLICATE_ID',
    'stringHeight REQUIRED',
  ]);
});

test.each<[string, (job: LooseJob) => unknown, string]>([
  ['stringHeight', (job) => set(job, 'stringHeight', '6 m'), 'stringHeight OUT_OF_RANGE'],
  [
    'a base thickness',
    (job) => set(layer(job, 2), 'thickness', '6 m'),
    'pavements[0].layers[2].thickness OUT_OF_RANGE',
  ],
  [
    'the rule of the level book',
    (job) =>
      set(job, 'levelBook', {
        start: '30 m',
        rows: [
          { point: 'BM', back: '1 m' },
          { point: 'BM', fore: '1 m' },
        ],
        known: '30 m',
        rule: { k: '0 mm' },
      }),
    'levelBook.rule.k NOT_POSITIVE',
  ],
  [
    'a wrong unit of an outline',
    (job) => set(pavement(job)['outline'] as Loose, 'unit', 'kg'),
    'pavements[0].outline.unit DIMENSION_MISMATCH',
  ],
  [
    'a ratio with a stray letter',
    (job) => set(stone(job), 'compactedPerLoose', '1.2x'),
    'materials.stones[0].compactedPerLoose NOT_A_NUMBER',
  ],
  [
    'a stake far off',
    (job) => set(stake(job, 0), 'x', '90000 km'),
    'stringLines[0].stakes[1] OUT_OF_RANGE',
  ],
])('%s is refused once, where the job has it', (_name, how, fault) => {
  const outcome = tryPlanJob(broken(how));
  if (outcome.ok) expect.unreachable();
  expect(outcome.errors.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([fault]);
});

test('the thrown error carries code, first path and a line for each fault', () => {
  try {
    readJob(broken((job) => set(layer(job, 0), 'thickness', 2)));
    expect.unreachable();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    expect(error.name).toBe('SettlineError');
    expect(error.code).toBe('JOB_INVALID');
    expect(error.path).toEqual(['pavements', 0, 'layers', 0, 'thickness']);
    expect(error.message).toMatch(/^pavements\[0\]\.layers\[0\]\.thickness: 2 has no unit/);
  }
});

test('each field of the built-in job, taken out or replaced, plans or is refused: nothing else', () => {
  const junk = [undefined, null, '', 'x', -1, Number.NaN, [], {}, true, '-1 in', { value: 1 }];
  const visit = (value: unknown, path: (string | number)[], found: (string | number)[][]) => {
    found.push(path);
    if (typeof value !== 'object' || value === null) return;
    for (const [key, part] of Object.entries(value)) {
      visit(part, [...path, Array.isArray(value) ? Number(key) : key], found);
    }
  };
  const paths: (string | number)[][] = [];
  visit(cedarCourtFile(), [], paths);
  let refused = 0;
  for (const path of paths.slice(1)) {
    for (const value of junk) {
      const job = cedarCourtFile();
      let target: Loose = job;
      for (const step of path.slice(0, -1)) target = target[step] as Loose;
      target[path.at(-1) as string] = value;
      const outcome = tryPlanJob(job);
      if (outcome.ok) continue;
      refused += 1;
      for (const issue of outcome.errors) {
        expect(issue.message.length, pathText(issue.path)).toBeGreaterThan(5);
        expect(Array.isArray(issue.path)).toBe(true);
      }
    }
  }
  expect(refused).toBeGreaterThan(1000);
}, 60_000);
