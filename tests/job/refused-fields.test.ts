// Every field about materials, edges, old paving, strings and steps, with what it refuses.
import { describe, expect, test } from 'vitest';
import { pathText, type ErrorCode } from 'settline';
import { tryPlanJob } from 'settline/job';
import { edit } from '../job-edits.js';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import type { LooseJob } from '../loose-job.js';

/** A site that has a value in each of those fields. */
const site = (): LooseJob => {
  const edges = [{ along: 'open', batter: 1 }, 'open', null, { along: 'building' }];
  const job = levelSite(
    [
      pavementOn(rectangle(0, 0, 10, 4), {
        id: 'drive',
        edges,
        batter: 0.5,
        border: { course: 'soldier', paver: 'block', edges: [1, 2] },
        betweenStrings: { from: 'south', to: 'north', spacing: '1 m' },
      }),
    ],
    {
      setOutStep: '5 mm',
      string: { tension: '60 N', weightPerLength: '1 g/m' },
      stakes: [
        { id: 'S1', x: '-2 m', y: '-2 m', ground: '300 mm', groundOn: 'soil' },
        { id: 'S2', x: '12 m', y: '-2 m', ground: '300 mm', groundFrom: 'south' },
        { id: 'N1', x: '-2 m', y: '7 m', finish: '20 m', finishAt: 'edge' },
        { id: 'N2', x: '12 m', y: '7 m' },
      ],
      stringLines: [
        { id: 'south', pavement: 'drive', stakes: ['S1', 'S2'] },
        { id: 'north', pavement: 'drive', stakes: ['N1', 'N2'] },
      ],
      oldPaving: [
        {
          material: 'asphalt',
          thickness: '80 mm',
          density: '2.2 t/m3',
          outline: { unit: 'm', points: rectangle(0, 0, 2, 2) },
        },
        { material: 'concrete', thickness: '90 mm', pavement: 'drive', share: 0.5 },
      ],
    },
  );
  Object.assign(job.materials, { fill: 'stone' });
  Object.assign(job.materials.sands[0] ?? {}, { settlement: '4 mm' });
  Object.assign(job.pavements[0]?.layers[0] ?? {}, { material: 'block' });
  return job;
};

type Path = readonly (string | number)[];
const GONE = Symbol('gone');
const faultsWith = (path: Path, value: unknown) => {
  const job = site();
  edit(job, path, (holder, step) => {
    if (value === GONE) Reflect.deleteProperty(holder, step);
    else holder[step] = value;
  });
  const outcome = tryPlanJob(job);
  return outcome.ok ? [] : outcome.errors.map((one) => `${pathText(one.path)} ${one.code}`);
};

test('the site itself is planned', () => {
  const outcome = tryPlanJob(site());
  expect(outcome.ok ? [] : outcome.errors).toEqual([]);
});

type Case = readonly [path: Path, value: unknown, code: ErrorCode];

const DRIVE = ['pavements', 0] as const;
const OLD = ['oldPaving', 0] as const;
const SHARE = ['oldPaving', 1] as const;
const STONE = ['materials', 'stones', 0] as const;
const SAND = ['materials', 'sands', 0] as const;
const EDGE = [...DRIVE, 'edges', 0] as const;

const REFUSED: Readonly<Record<string, readonly Case[]>> = {
  job: [
    [['setOutStep'], 5, 'UNIT_MISSING'],
    [['setOutStep'], '0 mm', 'NOT_POSITIVE'],
    [['setOutStep'], '-5 mm', 'NOT_POSITIVE'],
    [['setOutStep'], '100 m', 'OUT_OF_RANGE'],
    [['string', 'tension'], '60', 'UNIT_MISSING'],
    [['string', 'tension'], '0 N', 'NOT_POSITIVE'],
    [['string', 'tension'], '60 kg', 'UNIT_UNKNOWN'],
    [['string', 'tension'], GONE, 'REQUIRED'],
    [['string', 'weightPerLength'], '1 g', 'UNIT_UNKNOWN'],
    [['string', 'weightPerLength'], '-1 g/m', 'NOT_POSITIVE'],
    [['string', 'weightPerLength'], GONE, 'REQUIRED'],
    [['string', 'colour'], 'red', 'UNKNOWN_FIELD'],
    [['stakes'], GONE, 'REQUIRED'],
    [['stakes'], {}, 'WRONG_TYPE'],
    [['stakes'], [], 'EMPTY_LIST'],
    [['materials'], GONE, 'REQUIRED'],
  ],
  materials: [
    [['materials', 'stones'], GONE, 'REQUIRED'],
    [['materials', 'stones'], {}, 'WRONG_TYPE'],
    [['materials', 'sands'], GONE, 'REQUIRED'],
    [['materials', 'pavers'], 5, 'WRONG_TYPE'],
    [['materials', 'gravels'], [], 'UNKNOWN_FIELD'],
    [['materials', 'fill'], 5, 'WRONG_TYPE'],
    [['materials', 'fill'], 'sand', 'UNKNOWN_ID'],
    [[...STONE, 'id'], GONE, 'REQUIRED'],
    [[...STONE, 'id'], '', 'EMPTY'],
    [[...STONE, 'name'], 5, 'WRONG_TYPE'],
    [[...STONE, 'maxLift'], GONE, 'REQUIRED'],
    [[...STONE, 'maxLift'], '0 mm', 'NOT_POSITIVE'],
    [[...STONE, 'compactedDryDensity'], '2 t', 'UNIT_UNKNOWN'],
    [[...STONE, 'compactedPerLoose'], 1.3, 'OUT_OF_RANGE'],
    [[...STONE, 'settlement'], '4 mm', 'UNKNOWN_FIELD'],
    [[...SAND, 'settlement'], 4, 'UNIT_MISSING'],
    [[...SAND, 'settlement'], '-4 mm', 'NEGATIVE'],
    [[...SAND, 'settlement'], '4 m', 'OUT_OF_RANGE'],
    [[...SAND, 'maxLift'], '100 mm', 'UNKNOWN_FIELD'],
    [['materials', 'pavers', 0, 'id'], GONE, 'REQUIRED'],
    [['materials', 'pavers', 0, 'length'], '0 mm', 'NOT_POSITIVE'],
    [[...DRIVE, 'layers', 2, 'material'], GONE, 'REQUIRED'],
    [[...DRIVE, 'layers', 2, 'material'], 5, 'WRONG_TYPE'],
    [[...DRIVE, 'layers', 2, 'material'], 'sand', 'UNKNOWN_ID'],
  ],
  stakes: [
    [['stakes', 0, 'groundOn'], 'lawn', 'UNKNOWN_CHOICE'],
    [['stakes', 1, 'groundFrom'], 'north', 'UNKNOWN_ID'],
    [['stakes', 1, 'groundFrom'], 5, 'WRONG_TYPE'],
    [['stakes', 2, 'finishAt'], 'kerb', 'UNKNOWN_CHOICE'],
    [['stakes', 0, 'pavement'], 'drive', 'UNKNOWN_FIELD'],
    [['stringLines', 0, 'stakes', 0], 'Q', 'UNKNOWN_ID'],
    [['stringLines', 0, 'stakes', 0], { id: 'S1' }, 'WRONG_TYPE'],
    [['stringLines', 0, 'stakes'], 'S1', 'WRONG_TYPE'],
  ],
  edges: [
    [[...DRIVE, 'edges', 1], 'wall', 'UNKNOWN_CHOICE'],
    [[...DRIVE, 'edges', 1], 5, 'UNKNOWN_CHOICE'],
    [[...EDGE, 'along'], GONE, 'REQUIRED'],
    [[...EDGE, 'along'], 'wall', 'UNKNOWN_CHOICE'],
    [[...EDGE, 'height'], '1 m', 'UNKNOWN_FIELD'],
    [[...EDGE, 'batter'], -1, 'NEGATIVE'],
    [[...EDGE, 'batter'], 11, 'OUT_OF_RANGE'],
    [[...EDGE, 'batter'], 'steep', 'NOT_A_NUMBER'],
    [[...EDGE, 'level'], '20 m', 'CONFLICTING_FIELDS'],
    [[...EDGE, 'footing'], '1 m', 'CONFLICTING_FIELDS'],
    [[...DRIVE, 'edges', 3, 'batter'], 1, 'CONFLICTING_FIELDS'],
    [[...DRIVE, 'edges', 3, 'level'], 20, 'UNIT_MISSING'],
    [[...DRIVE, 'edges', 3, 'footing'], '0 m', 'NOT_POSITIVE'],
    [[...DRIVE, 'edges'], ['open'], 'COUNT_MISMATCH'],
    [[...DRIVE, 'edges'], 'open', 'WRONG_TYPE'],
    [[...DRIVE, 'batter'], '1:1', 'NOT_A_NUMBER'],
    [[...DRIVE, 'batter'], -0.5, 'NEGATIVE'],
    [[...DRIVE, 'batter'], 10.5, 'OUT_OF_RANGE'],
    [[...DRIVE, 'border', 'edges', 0], 0, 'NOT_POSITIVE'],
    [[...DRIVE, 'border', 'edges', 0], 5, 'OUT_OF_RANGE'],
    [[...DRIVE, 'border', 'edges', 0], 1.5, 'NOT_WHOLE'],
    [[...DRIVE, 'border', 'edges', 0], true, 'WRONG_TYPE'],
    [[...DRIVE, 'border', 'paver'], 'stone', 'UNKNOWN_ID'],
  ],
  'tables between strings': [
    [[...DRIVE, 'betweenStrings', 'from'], 'west', 'UNKNOWN_ID'],
    [[...DRIVE, 'betweenStrings', 'to'], 'south', 'DUPLICATE_ID'],
    [[...DRIVE, 'betweenStrings', 'to'], GONE, 'REQUIRED'],
    [[...DRIVE, 'betweenStrings', 'spacing'], '0 m', 'NOT_POSITIVE'],
    [[...DRIVE, 'betweenStrings', 'spacing'], '1 mm', 'OUT_OF_RANGE'],
    [[...DRIVE, 'betweenStrings', 'spacing'], 1, 'UNIT_MISSING'],
    [[...DRIVE, 'betweenStrings', 'step'], '1 m', 'UNKNOWN_FIELD'],
  ],
  'old paving': [
    [[...OLD, 'material'], 'brick', 'UNKNOWN_CHOICE'],
    [[...OLD, 'thickness'], GONE, 'REQUIRED'],
    [[...OLD, 'thickness'], '0 mm', 'NOT_POSITIVE'],
    [[...OLD, 'density'], '2.2 t', 'UNIT_UNKNOWN'],
    [[...OLD, 'density'], '-2.2 t/m3', 'NOT_POSITIVE'],
    [[...OLD, 'area'], '5 m2', 'UNKNOWN_FIELD'],
    [[...OLD, 'outline', 'points'], [[0, 0]], 'TOO_FEW'],
    [[...OLD, 'outline', 'unit'], GONE, 'UNIT_MISSING'],
    [[...OLD, 'share'], 0.5, 'CONFLICTING_FIELDS'],
    [[...SHARE, 'pavement'], 'yard', 'UNKNOWN_ID'],
    [[...SHARE, 'share'], 0, 'NOT_POSITIVE'],
    [[...SHARE, 'share'], 50, 'OUT_OF_RANGE'],
    [[...SHARE, 'share'], 'half', 'NOT_A_NUMBER'],
    [['oldPaving'], {}, 'WRONG_TYPE'],
  ],
  'fields that a job does not have': [
    [['base'], {}, 'UNKNOWN_FIELD'],
    [['bedding'], {}, 'UNKNOWN_FIELD'],
    [['paver'], {}, 'UNKNOWN_FIELD'],
    [['materials', 'packs'], {}, 'UNKNOWN_FIELD'],
    [[...DRIVE, 'oldSurface'], {}, 'UNKNOWN_FIELD'],
    [[...DRIVE, 'edges', 1], 'restrained', 'UNKNOWN_CHOICE'],
  ],
};

describe.each(Object.entries(REFUSED))('%s', (_name, cases) => {
  test.each(cases.map(([path, value, code]) => [pathText(path), value, code, path] as const))(
    '%s: %j is refused once, there: %s',
    (at, value, code, path) => {
      expect(faultsWith(path, value)).toEqual([`${at} ${code}`]);
    },
  );
});

test('old paving lies in one place', () => {
  expect(faultsWith([...OLD, 'outline'], GONE)).toEqual(['oldPaving[0] REQUIRED']);
  expect(faultsWith([...OLD, 'pavement'], 'drive')).toEqual(['oldPaving[0] CONFLICTING_FIELDS']);
});

test('arcs count from 1', () => {
  const outline = (edge: number) => ({
    unit: 'm',
    points: rectangle(0, 0, 2, 2),
    arcs: [{ edge, bulgeMiddleOrdinate: 0.2 }],
  });
  expect(faultsWith([...OLD, 'outline'], outline(0))).toEqual([
    'oldPaving[0].outline.arcs[0].edge OUT_OF_RANGE',
  ]);
  expect(faultsWith([...OLD, 'outline'], outline(4))).toEqual([]);
  expect(faultsWith([...OLD, 'outline'], outline(5))).toEqual([
    'oldPaving[0].outline.arcs[0].edge OUT_OF_RANGE',
  ]);
});

test('two strings that meet have no width between them', () => {
  const job = site();
  Object.assign(job.stakes[2] ?? {}, { x: '-4 m', y: '-2 m' });
  const outcome = tryPlanJob(job);
  expect(
    outcome.ok ? [] : outcome.errors.map((one) => `${pathText(one.path)} ${one.code}`),
  ).toEqual(['pavements[0].betweenStrings.to POINTS_COINCIDE']);
});
