import { describe, expect, test } from 'vitest';
import {
  materialList,
  planFromJSON,
  planJob,
  renderJobSheet,
  tryPlanJob,
  workSteps,
  type JobPlan,
  type MaterialKind,
} from 'settline/job';
import { pathText, type ErrorCode } from 'settline';
import { edgeRestraint, jointSand, unitCount } from 'settline/materials';
import type { Area, Length, Mass, Volume } from 'settline/units';
import { formulaFaults } from '../formulas/evaluate-step.js';
import { heronYardFile } from '../heron-yard.js';
import { inMetric } from '../in-metric.js';
import type { Loose as Fields, LooseJob } from '../loose-job.js';
import { plainCourtFile, plainCourtJob } from '../plain-court.js';
import { planFile } from '../plan-file.js';
import { slateWharfFile, slateWharfJob } from '../slate-wharf.js';
import { withoutTexts } from './without-texts.js';

/** The site with the plain court and more fields; its dig is 37 ft by 16 ft, y from -1 to 15. */
const withFields = (fields: Fields, court: Fields = {}): LooseJob => {
  const job = plainCourtFile();
  Object.assign(job, fields);
  Object.assign(job.pavements[0] ?? {}, court);
  return job;
};
/** The same with more about its materials: of the job, of its stone, sand and paver. */
const withMaterials = (
  { stone, sand, paver, ...supplies }: Readonly<Record<string, object | undefined>>,
  court: Fields = {},
): LooseJob => {
  const job = withFields({}, court);
  const { materials } = job;
  Object.assign(materials.stones[0] ?? {}, stone);
  Object.assign(materials.sands[0] ?? {}, sand);
  Object.assign(materials.pavers[0] ?? {}, paver);
  Object.assign(materials, supplies);
  return job;
};
const courtOf = (plan: JobPlan) => {
  const [court] = plan.pavements;
  if (court === undefined) expect.unreachable();
  return court;
};
const feet2 = (area: Area | undefined) => area?.toNumber('ft2');
const warned = (plan: JobPlan, code: string) => plan.warnings.filter((one) => one.code === code);

const line = (fields: Fields = {}) => ({
  id: 'water',
  path: [
    { x: '10 ft', y: '-20 ft' },
    { x: '10 ft', y: '30 ft' },
  ],
  width: '0 in',
  tolerance: '2 ft',
  ...fields,
});

describe('marked lines', () => {
  test('square across the dig: 4 ft by 16 ft by hand, at the deepest dig', () => {
    const plan = planFile(withFields({ utilities: [line()] }));
    const { nearby, dig } = courtOf(plan);
    expect(feet2(nearby.utilities[0]?.handDigArea)).toBe(64);
    expect(feet2(nearby.handDig?.area)).toBe(64);
    // the deepest of the measured digs is 12 3/4 in, the mean over the ground 12 1/6 in
    expect(dig.depth.toNumber('in')).toBeCloseTo(73 / 6, 9);
    expect(nearby.handDig?.volume.toNumber('ft3')).toBeCloseTo((64 * 12.75) / 12, 9);
    expect(nearby.utilities[0]?.cover).toBeNull();
    expect(nearby.handDig?.cautions.map(({ id }) => id)).toContain('utilities');
    expect(plan.cautions.map(({ id }) => id)).toContain('utilities');
    expect(warned(plan, 'UTILITY_IN_DIG').map(({ subject }) => subject)).toEqual(['Parking court']);
    // the terrace lies elsewhere
    expect(plan.pavements[1]?.nearby.utilities[0]?.handDigArea.isZero()).toBe(true);
    const sheet = renderJobSheet(plan, { system: 'us' });
    expect(sheet).toMatch(/water +64\.0 sq ft +cover not known/);
    expect(sheet).toMatch(/water +clear of the dig/);
  });

  test.each([
    // at x = 10 ft the dig is 12.31 to 12.32 in deep at y = -1 ft, its deepest there
    ['25.4 in', '13 in', 'minimum-kept', null],
    ['25.3 in', '13 in', 'less-than-minimum', 'UTILITY_COVER'],
    ['12.3 in', '0 in', 'line-in-dig', 'UTILITY_ABOVE_BOTTOM'],
  ])('found at %s with %s asked for: %s', (found, minimumCover, code, warning) => {
    const plan = planFile(withFields({ utilities: [line({ found, minimumCover })] }));
    expect(courtOf(plan).nearby.utilities[0]?.cover?.code).toBe(code);
    const codes = plan.warnings.map((one) => one.code).filter((one) => one.startsWith('UTILITY_'));
    expect(codes).toEqual(['UTILITY_IN_DIG', ...(warning === null ? [] : [warning])]);
  });

  test('beside the dig they are clear of it, and their cover is not warned of', () => {
    const path = [
      { x: '-20 ft', y: '19 ft' },
      { x: '60 ft', y: '19 ft' },
    ];
    const beside = planFile(
      withFields({ utilities: [line({ path, found: '10 in', minimumCover: '30 in' })] }),
    );
    expect(courtOf(beside).nearby.utilities[0]?.handDigArea.isZero()).toBe(true);
    expect(warned(beside, 'UTILITY_IN_DIG')).toEqual([]);
    expect(warned(beside, 'UTILITY_COVER')).toEqual([]);
  });
});

describe('trees', () => {
  const tree = (y: string, fields: Fields = {}) => ({
    id: 'oak',
    x: '18 ft',
    y,
    trunkDiameter: '10 in',
    radiusPerDiameter: 12,
    ...fields,
  });

  test('a zone that touches the dig line is clear, a foot nearer is cut', () => {
    // 10 in of trunk: 10 ft of radius; the dig ends at y = 15
    const clear = planFile(withFields({ trees: [tree('25 ft')] }));
    expect(courtOf(clear).nearby.trees[0]?.zone.radius.to('ft').toString()).toBe('10');
    expect(warned(clear, 'ROOTS_CUT')).toEqual([]);
    const cut = planFile(withFields({ trees: [tree('24 ft')] }));
    const zone = courtOf(cut).nearby.trees[0]?.zone;
    expect(zone?.cut?.distance.to('ft').toString()).toBe('9');
    // a segment 1 ft high of a circle of 10 ft, over the circle
    const segment = 100 * Math.acos(0.9) - 9 * Math.sqrt(100 - 81);
    expect(zone?.cut?.share).toBeCloseTo(segment / (Math.PI * 100), 9);
    expect(zone?.cautions.map(({ id }) => id)).toContain('trees');
    const [warning] = warned(cut, 'ROOTS_CUT');
    expect(warning?.values['share']).toBe('1.9%');
    expect(renderJobSheet(cut, { system: 'metric' })).toMatch(/oak +zone 3\.048 m +cut 1\.9%/);
    const touched = planFile(withFields({ trees: [tree('24.99 ft')] }));
    expect(renderJobSheet(touched, { system: 'metric' })).toMatch(
      /oak +zone 3\.048 m +cut under 0\.1%/,
    );
  });

  test('the authority may set a least radius', () => {
    const plan = planFile(withFields({ trees: [tree('24 ft', { minimumRadius: '12 ft' })] }));
    expect(courtOf(plan).nearby.trees[0]?.zone.radius.to('ft').toString()).toBe('12');
  });
});

test('an open dig comes under rules, and a competent person decides', () => {
  const plan = planFile(withFields({ excavation: { soil: 'C', spoilDistance: '1 ft' } }));
  const gates = courtOf(plan).nearby.gates;
  expect(gates?.gates.map(({ id }) => id)).toContain('competent-person');
  expect(gates?.gates.map(({ id }) => id)).toContain('spoil-set-back');
  expect(gates?.cautions.map(({ id }) => id)).toContain('excavation');
  // C: 1 1/2 to 1 on the deepest dig
  expect(gates?.daylightOffset?.to('in').toString()).toBe('19.125');
  const sheet = renderJobSheet(plan, { system: 'us' });
  expect(sheet).toContain('A competent person on the site');
  expect(sheet).not.toMatch(/\bis safe\b/);
  expect(courtOf(planJob(plainCourtJob())).nearby).toEqual({
    utilities: [],
    handDig: null,
    trees: [],
    gates: null,
  });
});

const MATERIALS = {
  jointSand: { density: '95 lb/ft3', recess: '1/8 in', waste: 0.1, bag: '50 lb' },
  edgeRestraint: { piece: '8 ft', spikeSpacing: '12 in' },
  geotextile: { rollWidth: '12.5 ft', rollLength: '100 ft', overlap: '18 in', upturn: '12 in' },
  stone: { pack: { name: 'short ton', mass: '1 ton-us' } },
  sand: { pack: { name: 'yard', volume: '1 yd3', minimum: 5 } },
  paver: {
    packs: [
      { name: 'band', holds: 44 },
      { name: 'pallet', holds: 10 },
    ],
  },
};

describe('the order list', () => {
  const plan = planFile(withMaterials(MATERIALS));
  const list = materialList(plan);
  const lineOf = (kind: MaterialKind) => {
    const found = list.lines.find((one) => one.kind === kind);
    if (found === undefined) expect.unreachable(kind);
    return found;
  };

  test('holds every material once', () => {
    expect(list.lines.map(({ kind, material, name }) => [kind, material, name])).toEqual([
      ['stone', 'stone', 'crushed stone'],
      ['sand', 'sand', 'washed concrete sand'],
      ['pavers', 'paver', 'concrete pavers'],
      ['joint-sand', null, 'joint sand'],
      ['edge-restraint', null, 'edge restraint, pieces'],
      ['spikes', null, 'spikes'],
      ['geotextile', null, 'geotextile'],
    ]);
  });

  test('stone by weight in whole tons: never short, less than a ton over', () => {
    const base = lineOf('stone');
    const [stone] = plan.totals.stones;
    if (stone === undefined) expect.unreachable();
    expect(base.measure).toBe('delivered-mass');
    expect((base.need as Mass).equals(stone.mass)).toBe(true);
    const surplus = (base.surplus as Mass).toNumber('ton-us');
    expect(surplus).toBeGreaterThanOrEqual(0);
    expect(surplus).toBeLessThan(1);
    expect((base.ordered as Mass).to('ton-us').isInteger()).toBe(true);
    expect(base.loads).toBe(stone.loads.count);
    expect(base.parts.map(({ pavement, layer }) => `${pavement}: ${layer ?? ''}`)).toEqual([
      'Parking court: base',
      'Terrace: base',
    ]);
  });

  test('bedding in yards, at least the smallest order', () => {
    const bedding = lineOf('sand');
    const [sand] = plan.totals.sands;
    expect(bedding.need).toEqual(sand?.loose.volume);
    expect((bedding.need as Volume).toNumber('yd3')).toBeLessThan(5);
    expect((bedding.ordered as Volume).to('yd3').toString()).toBe('5');
    expect(bedding.packs).toEqual([{ name: 'yard', count: 5 }]);
  });

  test('pavers in bands and pallets', () => {
    // 504 ft2 and 238 ft2 over 8 3/32 x 4 3/32 in, 4 % on top: 2279 and 1076 units;
    // 3355 of them are 76.25 bands of 44, so 77 bands: 7 pallets of 10 and 7 bands
    const pavers = lineOf('pavers');
    expect([pavers.need, pavers.ordered, pavers.surplus]).toEqual([3355, 3388, 33]);
    expect(pavers.packs).toEqual([
      { name: 'pallet', count: 7 },
      { name: 'band', count: 7 },
    ]);
  });

  test('joint sand by the depth of the joint less its recess', () => {
    const of = (area: string) =>
      jointSand({
        area,
        unit: { length: '8 in', width: '4 in' },
        joint: '3/32 in',
        depth: '3 1/4 in',
        recess: '1/8 in',
        density: '95 lb/ft3',
        waste: 0.1,
      }).mass;
    const sand = lineOf('joint-sand');
    const need = of('504 ft2').plus(of('238 ft2'));
    expect((sand.need as Mass).equals(need)).toBe(true);
    expect((sand.ordered as Mass).equals(need)).toBe(false);
    expect(sand.packs[0]?.count).toBe(Math.ceil(need.toNumber('lb') / 50));
  });

  test('edge restraint along each run of open edges', () => {
    // court: 36 + 14 + 36 = 86 ft round two corners; terrace: 17 + 14 + 17 = 48 ft
    const restraint = courtOf(plan).supplies.edgeRestraint;
    expect(restraint?.runs.map((run) => run.length.to('ft').toString())).toEqual(['86']);
    const both = edgeRestraint({ runs: ['86 ft', '48 ft'], piece: '8 ft', spikeSpacing: '12 in' });
    expect(lineOf('edge-restraint').need).toBe(both.pieces);
    expect(lineOf('spikes').need).toBe(both.spikes);
    expect(lineOf('edge-restraint').parts).toEqual([
      { pavement: 'Parking court', layer: null, need: 11 },
      { pavement: 'Terrace', layer: null, need: 6 },
    ]);
  });

  test('a ring of open edges is one closed run, arcs are runs of their own', () => {
    const runsOf = (court: Fields) =>
      courtOf(planFile(withMaterials(MATERIALS, court))).supplies.edgeRestraint?.runs.map((run) =>
        run.length.toNumber('ft'),
      );
    expect(runsOf({ edges: ['open', 'open', 'open', 'open'] })).toEqual([100]);
    expect(runsOf({ edges: ['building', 'open', 'building', 'open'] })).toEqual([14, 14]);
    expect(runsOf({ edges: ['building', 'building', 'building', 'building'] })).toBeUndefined();
    const outline = {
      unit: 'ft',
      points: [
        [0, 0],
        [36, 0],
        [36, 14],
        [0, 14],
      ],
      arcs: [{ edge: 2, bulgeMiddleOrdinate: 7 }],
    };
    const bent = runsOf({ outline });
    expect(bent?.map((length) => length.toFixed(6))).toEqual([
      '36.000000',
      (7 * Math.PI).toFixed(6),
      '36.000000',
    ]);
  });

  test('fabric over the dig, the better way, whichever way it lies', () => {
    // with 12 in turned up 39 by 18 ft; a strip of 12.5 ft less its overlap of 18 in goes 11 ft on:
    // 4 strips of 18 ft across are 900 ft2, 2 strips of 39 ft along would be 975 ft2
    const fabric = courtOf(plan).supplies.geotextile;
    expect(fabric?.strips).toBe(4);
    expect(fabric?.fabricArea.to('ft2').toString()).toBe('900');
    expect(fabric?.rolls).toBe(1); // 72 of 100 ft
    expect(lineOf('geotextile').measure).toBe('area');
    expect(
      lineOf('geotextile').parts.map(({ pavement, need }) => [pavement, feet2(need as Area)]),
    ).toContainEqual(['Parking court', 900]);
    // the same court turned by a 3-4-5 angle
    const turned = planFile(
      withMaterials(MATERIALS, {
        outline: {
          unit: 'ft',
          points: [
            [0, 0],
            [28.8, 21.6],
            [20.4, 32.8],
            [-8.4, 11.2],
          ],
        },
      }),
    );
    const other = courtOf(turned).supplies.geotextile;
    expect(other?.strips).toBe(4);
    expect(other?.fabricArea.toNumber('ft2')).toBeCloseTo(900, 8);
  });

  // strips of the drive: 4 of 6.52 m, of the walk: 2 of 2.24 m; all 4.5 m wide, 30.56 m in total
  test.each([
    // rolls of, of each pavement by itself, of both, m2 left over
    ['50 m', [1, 1], 1, '87.48'], // 50 - 30.56 is 19.44 m
    ['30.56 m', [1, 1], 1, '0'],
    ['30.55 m', [1, 1], 2, '137.43'], // the last strip is not pieced
    ['16 m', [2, 1], 2, '6.48'], // 2 strips of each from a roll
    ['8.76 m', [4, 1], 4, '20.16'], // 2.24 m from what 6.52 m leaves of two rolls
    ['8.75 m', [4, 1], 5, '59.355'], // 30.56 m is less than 4 rolls, but strips are whole
  ])('fabric of all pavements is cut from the same rolls: %s', (rollLength, alone, count, left) => {
    const job = heronYardFile();
    Object.assign(job.materials, {
      geotextile: { rollWidth: '4.5 m', overlap: '300 mm', rollLength },
    });
    const yard = planFile(job);
    expect(yard.pavements.map(({ supplies }) => supplies.geotextile?.rolls)).toEqual(alone);
    const made = materialList(yard);
    const fabric = made.lines.find(({ kind }) => kind === 'geotextile');
    expect(fabric?.packs).toEqual([{ name: 'roll', count }]);
    expect((fabric?.need as Area).to('m2').toString()).toBe('137.52');
    expect((fabric?.surplus as Area).to('m2').toString()).toBe(left);
    const both = (fabric?.need as Area).plus(fabric?.surplus as Area);
    expect((fabric?.ordered as Area).equals(both)).toBe(true);
    const steps = made.working.filter(({ title }) => title.includes('eotextile'));
    expect(steps.map(({ result }) => result.symbol)).toEqual(['n', 'K', 'A', 'c']);
    expect(formulaFaults(made.working)).toEqual([]);
    const isShared = alone.reduce((a, b) => a + b, 0) > count;
    const note = `Keep what is left of each roll: ${count === 1 ? '1 roll' : `${count} rolls`} must do for all pavements.`;
    const notes = workSteps(yard)
      .filter(({ kind }) => kind === 'geotextile')
      .map((step) => step.notes);
    expect(notes.map((all) => all.includes(note))).toEqual([isShared, isShared]);
  });

  test('without packs or supplies the needs stand as they are', () => {
    const bare = materialList(planJob(plainCourtJob()));
    expect(bare.lines.map(({ kind, packs }) => `${kind} ${packs.length}`)).toEqual([
      'stone 0',
      'sand 0',
      'pavers 0',
    ]);
    for (const { need, ordered, surplus } of bare.lines) {
      expect(JSON.stringify(ordered)).toBe(JSON.stringify(need));
      expect(typeof surplus === 'number' ? surplus : surplus.isZero() ? 0 : 1).toBe(0);
    }
  });

  test('a plan from JSON gives the same list, and the sheet prints it', () => {
    const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
    expect(JSON.stringify(materialList(again))).toBe(JSON.stringify(list));
    const sheet = renderJobSheet(plan, { system: 'us' });
    expect(sheet).toMatch(/pavers to order.*\n.*\n +7 pallets, 7 bands/);
    expect(sheet).toMatch(/spikes +\d+/);
    for (const text of sheet.split('\n')) expect(text.length).toBeLessThanOrEqual(48);
    expect(list.working.map(({ title }) => title)).toContain('Rounded up to short ton');
  });
});

describe('units by pattern and border', () => {
  const paver = { length: '9 in', width: '4 1/2 in', joint: '1/8 in', breakage: 0.02 };

  test('cuts are counted along the edges', () => {
    const plan = planFile(
      withMaterials({ paver: { ...paver, pattern: 'running-bond', reuse: 0.5 } }),
    );
    const counted = unitCount({
      area: '504 ft2',
      unit: { length: '9 in', width: '4 1/2 in' },
      joint: '1/8 in',
      edge: [
        { length: '36 ft', angle: '0 deg' },
        { length: '14 ft', angle: '90 deg' },
        { length: '36 ft', angle: '0 deg' },
        { length: '14 ft', angle: '90 deg' },
      ],
      reuse: 0.5,
      breakage: 0.02,
    });
    const pavers = courtOf(plan).pavers;
    expect([pavers?.whole, pavers?.cut, pavers?.orders[0]?.order, pavers?.border]).toEqual([
      counted.whole,
      counted.cut,
      counted.order,
      0,
    ]);
  });

  test('a direction or off-cuts used again without a pattern are refused', () => {
    for (const needs of [{ axis: '30 deg' }, { reuse: 0.5 }]) {
      const outcome = tryPlanJob(withMaterials({ paver: { ...paver, ...needs } }));
      if (outcome.ok) expect.unreachable();
      expect(
        outcome.errors.map(({ code, path, message }) => `${code} ${pathText(path)}: ${message}`),
      ).toEqual([
        `REQUIRED materials.pavers[0].pattern: missing. ${Object.keys(needs)[0] ?? ''} needs it`,
      ]);
      const pattern = { pattern: 'stack-bond' };
      expect(tryPlanJob(withMaterials({ paver: { ...paver, ...needs, ...pattern } })).ok).toBe(
        true,
      );
      const wrong = tryPlanJob(withMaterials({ paver: { ...paver, ...needs, pattern: 'round' } }));
      expect(wrong.ok ? [] : wrong.errors.map(({ code }) => code)).toEqual(['UNKNOWN_CHOICE']);
    }
  });

  test('inside a border of another paver the cuts are counted in the direction of the field', () => {
    const cutOf = (axis: string) => {
      const job = withMaterials(
        { paver: { ...paver, pattern: 'stack-bond', axis } },
        { border: { course: 'soldier', corner: 'butt', paver: 'edge' } },
      );
      const { pavers } = job.materials;
      pavers.push({ ...pavers[0], id: 'edge', pattern: 'stack-bond', axis: '0 deg' });
      return courtOf(planFile(job)).pavers?.cut;
    };
    // 34.5 by 12.5 ft: 69 ft along 9 1/8 in, 25 ft along 4 5/8 in; turned, the other way round
    expect(cutOf('0 deg')).toBe(Math.ceil((69 * 12) / 9.125 + (25 * 12) / 4.625));
    expect(cutOf('90 deg')).toBe(Math.ceil((69 * 12) / 4.625 + (25 * 12) / 9.125));
  });

  test('a border takes its area off the field and its units on top', () => {
    const plan = planFile(
      withMaterials({ paver }, { border: { course: 'soldier', corner: 'butt' } }),
    );
    const pavers = courtOf(plan).pavers;
    const plain = courtOf(planFile(withMaterials({ paver }))).pavers;
    expect(pavers?.border).toBeGreaterThan(200);
    expect(pavers?.area.compare(plain?.area ?? pavers.area)).toBe(-1);
    // soldiers stand 9 in deep all round: (36 - 1.5) x (14 - 1.5) ft
    expect(feet2(pavers?.area)).toBeCloseTo((36 - 1.5) * (14 - 1.5), 6);
    // 431.25 ft2 over 9 1/8 by 4 5/8 in: 1471.46 units, 1500.88 with 2 % more; so for the border
    expect(pavers?.whole).toBe(1472);
    expect(pavers?.orders).toEqual([
      { paver: 'paver', order: 1501 + Math.ceil((pavers?.border ?? 0) * 1.02) },
    ]);
    expect(renderJobSheet(plan, { system: 'us' })).toMatch(/plus for the border +\d+/);
  });

  test('a unit too long for its thickness is pointed out', () => {
    const long = { ...paver, length: '12 in' };
    const plan = planFile(withMaterials({ paver: long }));
    expect(warned(plan, 'UNIT_SHAPE').length).toBeGreaterThan(0);
    expect(warned(planJob(plainCourtJob()), 'UNIT_SHAPE')).toEqual([]);
  });
});

test('the site with everything is the same in metric units and after JSON', () => {
  const plan = planJob(slateWharfJob());
  expect(JSON.stringify(planFile(inMetric(slateWharfFile())))).toBe(JSON.stringify(plan));
  const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
  expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
  expect(JSON.stringify(planJob(again.job))).toBe(JSON.stringify(plan));
  expect(withoutTexts(again.working)).toEqual(withoutTexts(plan.working));
  const lengths = plan.pavements.map(({ dig }): Length => dig.depth);
  expect(lengths.every((depth) => !depth.isNegative())).toBe(true);
});

test.each<[string, Fields, string, ErrorCode]>([
  [
    'a line without its tolerance',
    { utilities: [line({ tolerance: undefined })] },
    'utilities[0].tolerance',
    'REQUIRED',
  ],
  [
    'a line of one point',
    { utilities: [line({ path: [{ x: '1 ft', y: '1 ft' }] })] },
    'utilities[0].path',
    'TOO_FEW',
  ],
  ['two lines of one id', { utilities: [line(), line()] }, 'utilities[1].id', 'DUPLICATE_ID'],
  [
    'a line with two points in one place',
    {
      utilities: [
        line({
          path: [
            { x: '1 ft', y: '1 ft' },
            { x: '1 ft', y: '1 ft' },
          ],
        }),
      ],
    },
    'utilities[0].path[1]',
    'POINTS_COINCIDE',
  ],
  [
    'a tree without a rule',
    { trees: [{ id: 'a', x: '0 ft', y: '0 ft', trunkDiameter: '9 in' }] },
    'trees[0].radiusPerDiameter',
    'REQUIRED',
  ],
  [
    'a tree with a rule of 0.5',
    { trees: [{ id: 'a', x: '0 ft', y: '0 ft', trunkDiameter: '9 in', radiusPerDiameter: 0.5 }] },
    'trees[0].radiusPerDiameter',
    'OUT_OF_RANGE',
  ],
  ['an unknown soil', { excavation: { soil: 'D' } }, 'excavation.soil', 'UNKNOWN_CHOICE'],
])('refuses %s', (_name, fields, path, code) => {
  expect(faultsIn(withFields(fields))).toContain(`${path} ${code}`);
});

test.each<[string, Parameters<typeof withMaterials>[0], string, ErrorCode]>([
  [
    'a pack of nothing',
    { stone: { pack: { name: 'ton' } } },
    'materials.stones[0].pack',
    'REQUIRED',
  ],
  [
    'a pack by volume and by mass',
    { sand: { pack: { name: 'ton', mass: '1 t', volume: '1 m3' } } },
    'materials.sands[0].pack.mass',
    'CONFLICTING_FIELDS',
  ],
  [
    'a roll narrower than its overlap',
    { geotextile: { rollWidth: '1 ft', overlap: '18 in' } },
    'materials.geotextile.overlap',
    'ROLL_NARROWER_THAN_OVERLAP',
  ],
  [
    'joint sand without a joint',
    { jointSand: { density: '95 lb/ft3' }, paver: { joint: '0 in' } },
    'materials.pavers[0].joint',
    'NOT_POSITIVE',
  ],
  [
    'joint sand without a paver',
    { jointSand: { density: '95 lb/ft3' }, pavers: undefined },
    'materials.pavers',
    'REQUIRED',
  ],
  [
    'a recess deeper than the paver',
    { jointSand: { density: '95 lb/ft3', recess: '3 1/2 in' } },
    'materials.jointSand.recess',
    'OUT_OF_RANGE',
  ],
  [
    'an unknown pattern',
    { paver: { pattern: 'fan' } },
    'materials.pavers[0].pattern',
    'UNKNOWN_CHOICE',
  ],
])('refuses %s', (_name, materials, path, code) => {
  expect(faultsIn(withMaterials(materials))).toContain(`${path} ${code}`);
});

function faultsIn(job: LooseJob): readonly string[] {
  const outcome = tryPlanJob(job);
  if (outcome.ok) expect.unreachable();
  return outcome.errors.map((issue) => `${pathText(issue.path)} ${issue.code}`);
}
