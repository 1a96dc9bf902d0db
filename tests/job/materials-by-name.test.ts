// Materials are described once and named by layers and borders: each is ordered by itself.
import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { materialList, tryPlanJob } from 'settline/job';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import type { LooseJob } from '../loose-job.js';
import { planFile } from '../plan-file.js';

const STONES = [
  {
    id: 'crushed',
    name: 'crushed stone 0/32',
    maxLift: '100 mm',
    compactedDryDensity: '2.2 t/m3',
    compactedPerLoose: 0.8,
    moisture: 0.05,
  },
  {
    id: 'gravel',
    maxLift: '150 mm',
    compactedDryDensity: '2 t/m3',
    compactedPerLoose: 0.75,
    waste: 0.1,
  },
  { id: 'unused', maxLift: '1 m', compactedDryDensity: '2 t/m3', compactedPerLoose: 0.8 },
];
const SANDS = [
  { id: 'coarse', compactedDryDensity: '1.7 t/m3', compactedPerLoose: 0.85, settlement: '4 mm' },
  { id: 'fine', compactedDryDensity: '1.6 t/m3', compactedPerLoose: 0.8 },
];
const PAVERS = [
  { id: 'block', name: 'block 200 x 100', length: '200 mm', width: '100 mm', joint: '0 mm' },
  { id: 'slab', length: '400 mm', width: '400 mm', joint: '0 mm', breakage: 0.05 },
  { id: 'sett', length: '100 mm', width: '100 mm', joint: '0 mm' },
];

/** A drive of 10 by 4 m and a path of 6 by 2 m, with kerbs that stay: base and dig are the paving. */
const site = (change: (job: LooseJob) => unknown = () => undefined): LooseJob => {
  const edges = ['restraint', 'restraint', 'restraint', 'restraint'];
  const drive = pavementOn(rectangle(0, 0, 10, 4), {
    id: 'drive',
    edges,
    layers: [
      { kind: 'paver', thickness: '80 mm', material: 'block' },
      { kind: 'bedding', thickness: '30 mm', material: 'coarse' },
      { kind: 'base', thickness: '200 mm', material: 'crushed' },
      { kind: 'sub-base', thickness: '300 mm', material: 'gravel' },
    ],
  });
  const path = pavementOn(rectangle(0, 10, 6, 12), {
    id: 'path',
    edges,
    layers: [
      { kind: 'paver', thickness: '60 mm', material: 'slab' },
      { kind: 'bedding', thickness: '40 mm', material: 'fine' },
      { kind: 'base', thickness: '150 mm', material: 'crushed' },
    ],
  });
  const job = levelSite([drive, path], {
    materials: structuredClone({ stones: STONES, sands: SANDS, pavers: PAVERS }),
  });
  change(job);
  return job;
};
const plan = planFile(site());
const [drive, path] = plan.pavements;
const m3 = (volume: { to: (unit: 'm3') => { toString: () => string } }) =>
  volume.to('m3').toString();

describe('stones and sands', () => {
  test('are ordered layer by layer', () => {
    expect(
      drive?.stones.map(({ layer, material, order }) => [
        layer,
        material,
        m3(order.compacted.volume),
      ]),
    ).toEqual([
      ['base', 'crushed', '8'], // 40 x 0.2
      ['sub-base', 'gravel', '12'], // 40 x 0.3
    ]);
    expect(drive?.bedding.material).toBe('coarse');
    expect(drive && m3(drive.bedding.order.compacted.volume)).toBe('1.2'); // 40 x 0.03
    expect(path?.bedding.material).toBe('fine');
  });

  test('and added up each by itself, in the order of the materials', () => {
    const { stones, sands } = plan.totals;
    expect(
      stones.map(({ material, name, compacted, loose }) => [
        material,
        name,
        m3(compacted),
        m3(loose),
      ]),
    ).toEqual([
      // 8 and 12 x 0.15, by 0.8
      ['crushed', 'crushed stone 0/32', '9.8', '12.25'],
      // 12 with a tenth more, by 0.75
      ['gravel', 'gravel', '12', '17.6'],
    ]);
    // 9.8 x 2.2 x 1.05, and 12 x 1.1 x 2
    expect(stones.map(({ mass }) => mass.to('t').toString())).toEqual(['22.638', '26.4']);
    // by 12 t and 8 m3
    expect(stones.map(({ loads }) => loads.count)).toEqual([2, 3]);
    // 40 x 0.03 by 0.85, and 12 x 0.04 by 0.8
    expect(sands.map(({ material, loose }) => [material, loose.toNumber('m3')])).toEqual([
      ['coarse', 1.2 / 0.85],
      ['fine', 0.6],
    ]);
  });

  test('are placed in lifts that suit them', () => {
    // 300 mm of gravel in lifts of 150, then 200 mm of crushed stone in lifts of 100
    expect(
      drive?.lifts.map(({ layer, compacted, aboveSubgrade }) => [
        layer,
        compacted.to('mm').toString(),
        aboveSubgrade.to('mm').toString(),
      ]),
    ).toEqual([
      ['sub-base', '150', '150'],
      ['sub-base', '150', '300'],
      ['base', '100', '400'],
      ['base', '100', '500'],
    ]);
    // 150 mm by 0.75, 100 mm by 0.8
    expect(drive?.lifts.map(({ loose }) => loose.to('mm').toString())).toEqual([
      '200',
      '200',
      '125',
      '125',
    ]);
    expect(path?.lifts.map(({ compacted }) => compacted.to('mm').toString())).toEqual(['75', '75']);
  });

  test('screed and units are set high by what the bed goes down', () => {
    const job = site((one) =>
      one.stringLines.push({ id: 'north', pavement: 'path', stakes: ['S1', 'S2'] }),
    );
    const placed = planFile(job).stringLines.map(({ surfaces }) =>
      surfaces
        .filter(({ kind }) => kind === 'pavers' || kind === 'bedding')
        .map(({ belowString, placedBelowString }) => [
          belowString.to('mm').toString(),
          placedBelowString?.to('mm').toString() ?? null,
        ]),
    );
    // a string 300 mm up: 4 mm high on the coarse sand; of the fine sand nobody knows
    expect(placed).toEqual([
      [
        ['300', '296'],
        ['380', '376'],
      ],
      [
        ['300', null],
        ['360', null],
      ],
    ]);
    expect([drive?.settlement?.to('mm').toString(), path?.settlement]).toEqual(['4', null]);
  });
});

describe('pavers', () => {
  test('are ordered each by itself', () => {
    expect(plan.totals.pavers).toEqual([
      { paver: 'block', name: 'block 200 x 100', order: 2000 }, // 40 / 0.02
      { paver: 'slab', name: 'slab', order: 79 }, // 12 / 0.16 x 1.05 = 78.75
    ]);
  });

  test('of a border by themselves, where it has its own', () => {
    const bordered = planFile(
      site((job) =>
        Object.assign(job.pavements[0] ?? {}, { border: { course: 'soldier', paver: 'sett' } }),
      ),
    );
    const [court] = bordered.pavements;
    // setts 0.1 m all round; the field of 9.8 by 3.8 m
    expect(court?.pavers?.area.to('m2').toString()).toBe('37.24');
    expect(court?.pavers?.orders).toEqual([
      { paver: 'block', order: 1862 },
      { paver: 'sett', order: court?.pavers?.border },
    ]);
    // 40 m2 less the field, by 0.01 m2 each: 276 if no corner were cut
    expect(court?.pavers?.border).toBe(276);
    expect(bordered.totals.pavers.map(({ paver, order }) => `${paver} ${order}`)).toEqual([
      'block 1862',
      'slab 79',
      'sett 276',
    ]);
  });

  test('of a border along some edges, counted from 1', () => {
    const bordered = (edges?: readonly number[]) =>
      planFile(
        site((job) =>
          Object.assign(job.pavements[0] ?? {}, {
            border: { course: 'soldier', paver: 'sett', edges },
          }),
        ),
      ).pavements[0]?.pavers;
    // edge 1 runs along the south, 10 m; edge 2 along the east, 4 m
    expect(bordered([1])?.border).toBe(100);
    expect(bordered([1])?.area.to('m2').toString()).toBe('39');
    expect(bordered([2])?.border).toBe(40);
    expect(bordered([1, 2, 3, 4])).toEqual(bordered());
  });
});

test('the order list has a line for each, with its parts', () => {
  const list = materialList(plan);
  expect(
    list.lines.map(({ kind, material, parts }) => [
      kind,
      material,
      parts.map(({ pavement, layer }) => `${pavement} ${layer ?? '-'}`),
    ]),
  ).toEqual([
    ['stone', 'crushed', ['drive base', 'path base']],
    ['stone', 'gravel', ['drive sub-base']],
    ['sand', 'coarse', ['drive bedding']],
    ['sand', 'fine', ['path bedding']],
    ['pavers', 'block', ['drive -']],
    ['pavers', 'slab', ['path -']],
  ]);
});

test('packs belong to their material', () => {
  const packed = planFile(
    site((job) => {
      const [crushed, gravel] = job.materials.stones;
      Object.assign(crushed ?? {}, { pack: { name: 'tonne', mass: '1 t' } });
      Object.assign(gravel ?? {}, { pack: { name: 'big bag', volume: '0.5 m3' } });
    }),
  );
  expect(materialList(packed).lines.map(({ material, packs }) => [material, packs])).toEqual([
    ['crushed', [{ name: 'tonne', count: 23 }]], // 22.638 t
    ['gravel', [{ name: 'big bag', count: 36 }]], // 17.6 m3
    ['coarse', []],
    ['fine', []],
    ['block', []],
    ['slab', []],
  ]);
});

test.each<[string, (job: LooseJob) => unknown, string]>([
  [
    'a stone that is not there',
    (job) => Object.assign(job.pavements[0]?.layers[2] ?? {}, { material: 'rubble' }),
    'pavements[0].layers[2].material UNKNOWN_ID: no stone has the id "rubble". Use crushed, gravel, unused',
  ],
  [
    'a sand as a base',
    (job) => Object.assign(job.pavements[0]?.layers[2] ?? {}, { material: 'coarse' }),
    'pavements[0].layers[2].material UNKNOWN_ID: no stone has the id "coarse". Use crushed, gravel, unused',
  ],
  [
    'a paver that is not there',
    (job) => Object.assign(job.pavements[1]?.layers[0] ?? {}, { material: 'flag' }),
    'pavements[1].layers[0].material UNKNOWN_ID: no paver has the id "flag". Use block, slab, sett',
  ],
  [
    'a base of no stone',
    (job) => delete job.pavements[0]?.layers[2]?.['material'],
    'pavements[0].layers[2].material REQUIRED: missing. Name one of materials.stones by its id',
  ],
  [
    'a bed of no sand',
    (job) => delete job.pavements[0]?.layers[1]?.['material'],
    'pavements[0].layers[1].material REQUIRED: missing. Name one of materials.sands by its id',
  ],
  [
    'a fill that is no stone',
    (job) => Object.assign(job.materials, { fill: 'fine' }),
    'materials.fill UNKNOWN_ID: no stone has the id "fine". Use crushed, gravel, unused',
  ],
  [
    'a border of a paver that is not there',
    (job) =>
      Object.assign(job.pavements[0] ?? {}, { border: { course: 'soldier', paver: 'brick' } }),
    'pavements[0].border.paver UNKNOWN_ID: no paver has the id "brick". Use block, slab, sett',
  ],
  [
    'a border round units of no size',
    (job) => {
      delete job.pavements[0]?.layers[0]?.['material'];
      Object.assign(job.pavements[0] ?? {}, { border: { course: 'soldier', paver: 'sett' } });
    },
    'pavements[0].layers[0].material REQUIRED: missing. Name one of materials.pavers by its id: a border needs the size of the pavers beside it',
  ],
  [
    'joint sand between units of no size',
    (job) => {
      delete job.pavements[1]?.layers[0]?.['material'];
      Object.assign(job.materials, { jointSand: { density: '1.6 t/m3' } });
    },
    'pavements[1].layers[0].material REQUIRED: missing. Name one of materials.pavers by its id: joint sand is worked out from their size',
  ],
  [
    'one id for a stone and a sand',
    (job) => job.materials.sands.push({ ...SANDS[0], id: 'gravel' }),
    'materials.sands[2].id DUPLICATE_ID: "gravel" is already used by stones[1]. Give each material its own id',
  ],
  [
    'one id for two stones',
    (job) => job.materials.stones.push({ ...STONES[2], id: 'gravel' }),
    'materials.stones[3].id DUPLICATE_ID: "gravel" is already used by entry 2',
  ],
])('refuses %s', (_name, change, fault) => {
  const outcome = tryPlanJob(site(change));
  if (outcome.ok) expect.unreachable();
  expect(
    outcome.errors.map(({ path: at, code, message }) => `${pathText(at)} ${code}: ${message}`),
  ).toEqual([expect.stringContaining(fault)]);
});
