import { expect, test } from 'vitest';
import { pathText } from 'settline';
import { tryPlanJob } from 'settline/job';
import { heronYardFile } from '../heron-yard.js';
import type { Loose, LooseJob } from '../loose-job.js';

/** What every fault of a changed job says, with its path. */
function said(change: (job: LooseJob) => unknown): readonly string[] {
  const job = heronYardFile();
  change(job);
  const outcome = tryPlanJob(job);
  if (outcome.ok) return [];
  return outcome.errors.map(({ path, message }) => `${pathText(path)}: ${message}`);
}

const part = (value: unknown, ...path: (string | number)[]): Loose =>
  path.reduce<unknown>((inner, step) => (inner as Loose)[step], value) as Loose;

const drive = (job: LooseJob) => part(job, 'pavements', 0);
const walk = (job: LooseJob) => part(job, 'pavements', 1);
const outlineOf = (pavement: Loose) => part(pavement, 'outline');
const point = (job: LooseJob, index: number) => part(outlineOf(walk(job)), 'points', index);

type Case = readonly [name: string, change: (job: LooseJob) => unknown, ...says: string[]];

const at = (field: string) => `pavements[1].outline.points[2][0]: ${field}`;

const CASES: readonly Case[] = [
  [
    'a number that repeats the unit of its list',
    (job) => (point(job, 2)[0] = '12.4 m'),
    at(
      '"12.4 m" is not a number. Write a plain number, such as 12.4: the unit is written once, in "unit"',
    ),
  ],
  [
    'a number with another unit than its list',
    (job) => (point(job, 2)[0] = '12.4 ft'),
    at(
      '"12.4 ft" is not a number. Write a plain number, such as 2.225: the unit is written once, in "unit"',
    ),
  ],
  [
    'a number of a list with a decimal comma',
    (job) => (point(job, 2)[0] = '12,4'),
    at(
      '"12,4" is not a number. Write a plain number, such as 12.4: the unit is written once, in "unit"',
    ),
  ],
  [
    'a number of a list that is longer than any measure',
    (job) => (point(job, 2)[0] = `${'7'.repeat(60)} m`),
    at(
      `"${'7'.repeat(37)}..." is not a number. Write a plain number, such as 2.225: the unit is written once, in "unit"`,
    ),
  ],
  [
    'no number in a list',
    (job) => (point(job, 2)[0] = Number.NaN),
    at(
      'NaN is not a number. Write a plain number, such as 2.225: the unit is written once, in "unit"',
    ),
  ],
  [
    'an elevation that repeats the unit of its list',
    (job) => (part(job, 'existingLevels', 'points', 3)[2] = '52.01 m'),
    'existingLevels.points[3][2]: "52.01 m" is not a number. Write a plain number, such as 52.01: the unit is written once, in "unit"',
  ],
  [
    'a fraction that is no number, quoted whole',
    (job) => (job['stringHeight'] = { value: '3 1/2', unit: 'in' }),
    'stringHeight: "3 1/2" is not a number. Write "15 in" or "400 mm"',
  ],
  [
    'a height of a stake',
    (job) => (part(job, 'stakes', 0)['z'] = '52 m'),
    'stakes[0].z: unknown field. This object takes id, x, y, finish, finishAt, ground, groundFrom, groundOn',
  ],
  [
    'a height of a fixed level',
    (job) => (part(drive(job), 'grade', 'levels', 0)['z'] = '52 m'),
    'pavements[0].grade.levels[0].z: unknown field. Did you mean elevation?',
  ],
  [
    'a part of a name that is missing',
    (job) => {
      job['strings'] = job.stringLines;
      Reflect.deleteProperty(job, 'stringLines');
    },
    'strings: unknown field. Did you mean stringLines?',
  ],
  [
    'a stake that is not there, among many',
    (job) => {
      part(job, 'stringLines', 2, 'stakes')[2] = 'S4';
    },
    'stringLines[2].stakes[2]: no stake has the id "S4". Use W1, W2, W3, E1, E2, S2, S3, or one of 1 more',
  ],
  [
    'an id that is there twice: the other one may be the one that is named',
    (job) => (drive(job)['id'] = 'walk'),
    'pavements[1].id: "walk" is already used by entry 1 of this list. Give each entry its own',
  ],
  [
    'an outline without a unit: one fault, not one for each point',
    (job) => (walk(job)['outline'] = outlineOf(walk(job))['points']),
    'pavements[1].outline: these points have no unit. Write { "unit": "ft", "points": [[0, 0], [24, 0], ...] }',
  ],
  [
    'an outline with a hole and no unit',
    (job) => Reflect.deleteProperty(outlineOf(drive(job)), 'unit'),
    'pavements[0].outline.unit: missing. Write the unit of the points, such as "ft" or "m"',
  ],
  [
    'a hole without a unit in an outline of lengths',
    (job) => {
      const [first, second, third] = [
        { x: '0 m', y: '0 m' },
        { x: '5.4 m', y: '0 m' },
        { x: '5.4 m', y: '14 m' },
      ];
      drive(job)['outline'] = {
        points: [first, second, third],
        holes: part(outlineOf(drive(job)), 'holes'),
      };
      Reflect.deleteProperty(drive(job), 'edges');
      Reflect.deleteProperty(drive(job), 'border');
    },
    'pavements[0].outline.holes[0]: these points have no unit. Write { "unit": "ft", "points": [[0, 0], [24, 0], ...] }',
  ],
  [
    'levels without a unit',
    (job) => (job['existingLevels'] = part(job, 'existingLevels', 'points')),
    'existingLevels: these points have no unit. Write { "unit": "ft", "points": [[0, 0, 98.4], ...] }',
  ],
  [
    'null for what may be left out',
    (job) => {
      job['minimumFall'] = null;
      job['trees'] = null;
      job['excavation'] = null;
      drive(job)['frost'] = null;
    },
    'minimumFall: expected a slope, got null. Write "2%", "1:48" or "1/4 in per ft", or leave it out',
    'pavements[0].frost: expected true or false, got null. Leave it out',
    'trees: expected a list [ ... ], got null. Leave it out',
    'excavation: expected an object { ... }, got null. Leave it out',
  ],
  [
    'null for what is needed',
    (job) => (job['stringHeight'] = null),
    'stringHeight: expected a length, got null. Write "15 in" or "400 mm"',
  ],
  [
    'nothing in lists and names',
    (job) => {
      job['name'] = '';
      job.stringLines = [];
    },
    'name: the text is empty. Fill it in',
    'stringLines: the list is empty. Give 1 or more strings',
  ],
  [
    'parts that are missing',
    (job) => {
      Reflect.deleteProperty(job, 'materials');
      Reflect.deleteProperty(job, 'truck');
      Reflect.deleteProperty(part(drive(job), 'grade'), 'levels');
    },
    'materials: missing. Write an object with stones, sands',
    'pavements[0].grade.levels: missing. Write a list of levels: [ ... ]',
    'truck: missing. Write an object with boxVolume, payload',
  ],
  [
    'decimal commas',
    (job) => {
      job['stringHeight'] = '1,500 mm';
      part(drive(job), 'grade', 'levels', 0)['elevation'] = '52,40 m';
      part(job, 'soil')['loosePerBank'] = '1,3';
    },
    'stringHeight: cannot read "1,500 mm": a comma: decimal or grouping? (at character 2). Write "1.500 mm" or "1500 mm"',
    'pavements[0].grade.levels[0].elevation: cannot read "52,40 m": a comma: decimal or grouping? (at character 3). Write "52.40 m"',
    'soil.loosePerBank: "1,3" is not a number. Write "1.3"',
  ],
  [
    'points of an outline in the wrong order, counted from 1',
    (job) => {
      const points = part(outlineOf(walk(job)), 'points') as unknown as unknown[];
      points.push(...points.splice(1, 1));
    },
    'pavements[1].outline.points: edge 1 and edge 3 cross or touch. List the points in order around the outline. Edge 1 runs from the first point to the second',
  ],
  [
    'a point twice, counted from 1',
    (job) => (part(outlineOf(walk(job)), 'points')[1] = [5.4, 8]),
    'pavements[1].outline.points: points 1 and 2 are the same point (the first point is point 1). Remove one of them',
  ],
  [
    'a hole outside, counted from 1',
    (job) => {
      const [a, b, c] = [
        [20, 1],
        [21, 1],
        [21, 2],
      ];
      outlineOf(drive(job))['holes'] = [[a, b, c]];
      Reflect.deleteProperty(drive(job), 'edges');
      Reflect.deleteProperty(drive(job), 'border');
    },
    'pavements[0].outline.holes[0]: hole 1 is outside the outline (the first hole is hole 1). Check its points',
  ],
  [
    'one place with two heights and a point of a marked line twice, with the other faults',
    (job) => {
      job['name'] = '';
      (part(job, 'existingLevels', 'points') as unknown as unknown[]).push([-3, -2, 52.3]);
      const path = part(job, 'utilities', 0, 'path');
      path[1] = path[0];
    },
    'name: the text is empty. Fill it in',
    'existingLevels.points[18]: points 1 and 19 are at one place and have two heights (the first point is point 1). Remove one of them',
    'utilities[0].path[1]: this point is the same as the one before it. Remove one of them',
  ],
  [
    'one place with two heights in a list of lengths',
    (job) => {
      const spots = [
        [0, 0, 52],
        [9, 0, 52],
        [0, 9, 52],
        [0, 0, 53],
      ];
      job['existingLevels'] = spots.map(([x, y, z]) => ({ x: `${x} m`, y: `${y} m`, z: `${z} m` }));
    },
    'existingLevels[3]: points 1 and 4 are at one place and have two heights (the first point is point 1). Remove one of them',
  ],
  [
    'a spot height with a wrong digit',
    (job) => (part(job, 'existingLevels', 'points', 9)[2] = 522.9),
    'existingLevels.points[9][2]: 522.9 m is more than 50 m (164 ft) above or below the other levels. Check the digits and the unit',
  ],
  [
    'levels far from the others, of every kind',
    (job) => {
      const { points } = part(job, 'existingLevels') as { points: number[][] };
      job['existingLevels'] = points.map(([x, y, z], k) => ({
        x: `${x} m`,
        y: `${y} m`,
        z: `${k === 4 ? 2 : z} m`,
      }));
      drive(job)['edges'] = null;
      Reflect.deleteProperty(drive(job), 'edges');
      job['levelling'] = { benchmark: { elevation: '152.4 m' }, backsight: '1.2 m' };
      job['levelBook'] = {
        start: '1.2 m',
        known: '524 m',
        rows: [
          { point: 'a', back: '1 m' },
          { point: 'b', fore: '1 m' },
        ],
      };
      part(walk(job), 'edges', 1)['level'] = '525.2 m';
      part(walk(job), 'grade', 'levels', 1)['elevation'] = '523.55 m';
    },
    ...[
      'existingLevels[4].z: 2 m',
      'levelling.benchmark.elevation: 152.4 m',
      'levelBook.start: 1.2 m',
      'levelBook.known: 524 m',
      'pavements[1].grade.levels[1].elevation: 523.55 m',
      'pavements[1].edges[1].level: 525.2 m',
    ].map(
      (level) =>
        `${level} is more than 50 m (164 ft) above or below the other levels. Check the digits and the unit`,
    ),
  ],
  [
    'a fixed level in feet among metres',
    (job) => (part(drive(job), 'grade', 'levels', 0)['elevation'] = '52.4 ft'),
    'pavements[0].grade.levels[0].elevation: 52.4 ft makes a slope of 675% to "slab right". Check the digits and the unit',
  ],
  [
    'a fixed level in feet to one without a name',
    (job) => {
      Reflect.deleteProperty(part(drive(job), 'grade', 'levels', 0), 'name');
      part(drive(job), 'grade', 'levels', 2)['elevation'] = '52.05 ft';
    },
    'pavements[0].grade.levels[2].elevation: 52.05 ft makes a slope of 261% to level 1. Check the digits and the unit',
  ],
];

test.each(CASES.map(([name, change, ...says]) => ({ name, change, says })))(
  '$name',
  ({ change, says }) => {
    expect(said(change)).toEqual(says);
  },
);

test('among more ids than a crew writes the first are listed', () => {
  const says = said((job) => {
    const more = Array.from({ length: 200 }, (_, k) => ({ id: `M${k}`, x: `${k} m`, y: '50 m' }));
    job.stakes = [...job.stakes, ...more];
    part(job, 'stringLines', 2, 'stakes')[2] = 'M200';
  });
  expect(says).toEqual([
    'stringLines[2].stakes[2]: no stake has the id "M200". Use W1, W2, W3, E1, E2, T, S2, or one of 201 more',
  ]);
});
