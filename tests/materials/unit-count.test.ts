import { describe, expect, test } from 'vitest';
import { LAYING_PATTERNS, outlineEdges, unitCount, type LayingPattern } from 'settline/materials';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

const block = { area: '60 m2', unit: { length: '198 mm', width: '98 mm' }, joint: '2 mm' } as const;

describe('units that fill an area', () => {
  test('by the module, joints counted in', () => {
    const count = unitCount(block);
    expect(count).toMatchObject({ perArea: 50, whole: 3000, cut: 0, extra: 0, order: 3000 });
    expect(count.module.to('cm2').toString()).toBe('200');
    expect(count.cautions).toEqual([]);
    expect(unitCount({ ...block, joint: '0 mm' }).whole).toBeGreaterThan(3000);
  });

  test('exactly full is full, slightly more is one more; 0 for no area', () => {
    const whole = (area: string) => unitCount({ ...block, area }).whole;
    expect(whole('0.02 m2')).toBe(1);
    expect(whole('0.0200000000000000000001 m2')).toBe(2);
    expect(unitCount({ ...block, area: '0 m2' })).toMatchObject({
      whole: 0,
      order: 0,
      extraShare: 0,
    });
  });

  test('breakage is added to the exact need and rounded up once', () => {
    // 3000 x 1.02 = 3060 exactly; 2999.5 x 1.02 = 3059.49
    expect(unitCount({ ...block, breakage: 0.02 }).order).toBe(3060);
    expect(unitCount({ ...block, area: '59.99 m2', breakage: 0.02 })).toMatchObject({
      whole: 3000,
      order: 3060,
    });
    expect(unitCount({ ...block, area: '59.98 m2', breakage: 0.02 }).order).toBe(3059);
  });
});

describe('cuts', () => {
  const along = (
    edge: Parameters<typeof unitCount>[0]['edge'],
    pattern: LayingPattern = 'running-bond',
  ) => unitCount({ ...block, pattern, ...(edge === undefined ? {} : { edge }) });

  test('an edge along the units meets their length, one across their width', () => {
    expect(along({ length: '10 m' }).cut).toBe(50);
    expect(along({ length: '10 m', angle: '90 deg' }).cut).toBe(100);
    expect(along({ length: '10 m', angle: '100 gon' }).cut).toBe(100);
    expect(along({ length: '10 m', angle: '-270 deg' }).cut).toBe(100);
    expect(along({ length: '10 m', angle: '180 deg' }).cut).toBe(50);
    expect(along({ length: '10 m', angle: '360 deg' }).cut).toBe(50);
  });

  test('a slanted edge meets both', () => {
    // 10 (cos 30 / 0.2 + 1/2 / 0.1) = 93.30; at 60 degrees 25 + 86.60
    expect(along({ length: '10 m', angle: '30 deg' }).cut).toBe(94);
    expect(along({ length: '10 m', angle: '60 deg' }).cut).toBe(112);
    expect(along({ length: '10 m', angle: '150 deg' }).cut).toBe(94);
    // 3-4-5: cos 0.8, sin 0.6: 10 (4 + 6) = 100 but for the float
    const slanted = along({ length: '10 m', angle: { value: Math.atan2(3, 4), unit: 'rad' } });
    expect(slanted.extra).toBeCloseTo(50, 9);
  });

  test('by pattern', () => {
    const edge = { length: '10 m' };
    expect(LAYING_PATTERNS.map((pattern) => along(edge, pattern).extra)).toEqual([
      25,
      25,
      37.5, // (50 + 100) / 2, halved
      37.5,
      expect.closeTo((10 * 15 * Math.SQRT1_2) / 2, 9) as number,
    ]);
    // a herringbone looks alike along and across
    const across = { length: '10 m', angle: '90 deg' };
    for (const pattern of ['herringbone-45', 'herringbone-90', 'basket-weave'] as const) {
      expect(along(across, pattern).extra).toBeCloseTo(along(edge, pattern).extra, 12);
    }
    // turned by 45 degrees each herringbone is the other
    const turned = { length: '10 m', angle: '45 deg' };
    expect(along(turned, 'herringbone-45').extra).toBeCloseTo(
      along(edge, 'herringbone-90').extra,
      9,
    );
    expect(along(turned, 'herringbone-90').extra).toBeCloseTo(
      along(edge, 'herringbone-45').extra,
      9,
    );
  });

  test('a curve meets the mean of all directions, whatever the pattern', () => {
    const round = 31.4159265;
    const edge = { length: `${round} m`, isCurved: true };
    for (const pattern of LAYING_PATTERNS) {
      expect(along(edge, pattern).extra).toBeCloseTo((round * (2 / Math.PI) * 15) / 2, 6);
    }
  });

  test('an arc meets the mean of the directions that it runs through', () => {
    // brute force: many short straight pieces
    const pieces = 2000;
    for (const pattern of LAYING_PATTERNS) {
      for (const [from, turn] of [
        [0, 90],
        [10, 35],
        [170, -200],
        [-80, 360],
      ] as const) {
        let met = 0;
        for (let k = 0; k < pieces; k += 1) {
          const at = ((from + (turn * (k + 0.5)) / pieces) * Math.PI) / 180;
          const [c, s] = [Math.abs(Math.cos(at)), Math.abs(Math.sin(at))];
          if (pattern === 'herringbone-45') met += 15 * Math.max(c, s) * Math.SQRT1_2;
          else if (pattern.endsWith('bond')) met += 5 * c + 10 * s;
          else met += 7.5 * (c + s);
        }
        const edge = { length: '10 m', angle: `${from} deg`, turn: `${turn} deg` };
        expect(along(edge, pattern).extra).toBeCloseTo((5 * met) / pieces, 4);
      }
    }
    const straight = along({ length: '10 m', angle: '30 deg', turn: '0 deg' });
    expect(straight.extra).toBe(along({ length: '10 m', angle: '30 deg' }).extra);
    const { working } = along({ length: '10 m', turn: '90 deg' });
    expect(working[1]).toMatchObject({
      kind: 'procedure',
      title: 'Pavers cut along an arc, running-bond',
      procedure: 'unitCount',
    });
  });

  test('half a unit for each cut, less what finds a place; each edge may differ', () => {
    const edges = [{ length: '24 m' }, { length: '10 m', angle: '90 deg' }];
    const order = (more: object) => unitCount({ ...block, edge: edges, ...more });
    expect(order({})).toMatchObject({ cut: 220, extra: 110, order: 3110 });
    expect(order({}).extraShare).toBeCloseTo(110 / 3000, 15);
    expect(order({ reuse: 0.5 })).toMatchObject({ cut: 220, extra: 55, order: 3055 });
    expect(order({ reuse: 1 })).toMatchObject({ cut: 220, extra: 0, order: 3000 });
    expect(order({ breakage: 0.1 }).order).toBe(3421);
    const own = [
      { length: '24 m', reuse: 1 },
      { length: '10 m', angle: '90 deg' },
    ];
    expect(unitCount({ ...block, edge: own }).extra).toBe(50);
  });

  test('cutting carries its caution, and shows each edge', () => {
    const { cautions, working } = along([{ length: '24 m' }, { length: '5 m', isCurved: true }]);
    expect(cautions.map(({ id }) => id)).toEqual(['cutting']);
    expect(working.map(({ result }) => result.symbol)).toEqual(['N', 'c', 'c', 'n']);
    expect(formulaOf(working[1])).toBe('c = E * (abs(cos(a)) / L + abs(sin(a)) / W)');
    expect(formulaOf(working[2])).toBe('c = E * 2 / pi * (1 / L + 1 / W)');
  });
});

describe('edges of an outline', () => {
  test('with the axis of the pattern', () => {
    const house = {
      unit: 'm',
      points: [
        [0, 0],
        [4, 0],
        [4, 3],
        [0, 6],
      ],
    } as const;
    const angles = (axis?: string) =>
      outlineEdges({ outline: house, ...(axis === undefined ? {} : { axis }) }).edges.map((edge) =>
        Number(edge.angle.to('deg').toFixed(6)),
      );
    expect(angles()).toEqual([0, 90, 36.869898, 90]);
    expect(angles('90 deg')).toEqual([90, 0, 53.130102, 0]);
    expect(angles('-45 deg')).toEqual([45, 45, 8.130102, 45]);
    const { edges } = outlineEdges({ outline: house });
    expect(edges.map(({ length }) => length.to('m').toString())).toEqual(['4', '3', '5', '6']);
    expect(edges[1]?.angle.to('deg').toString()).toBe('90');
    expect(Object.isFrozen(edges)).toBe(true);
  });

  test('arcs and holes', () => {
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [6, 0],
        [6, 4],
        [0, 4],
      ],
      arcs: [{ edge: 1, bulgeMiddleOrdinate: 2 }],
      holes: [
        [
          [1, 1],
          [2, 1],
          [2, 2],
        ],
      ],
    } as const;
    const { edges } = outlineEdges({ outline });
    expect(edges).toHaveLength(7);
    expect(edges[1]?.length.toNumber('m')).toBeCloseTo(2 * Math.PI, 12);
    expect(edges[1]?.turn.toNumber('deg')).toBeCloseTo(180, 12);
    expect(edges[1]?.angle.toNumber('deg')).toBeCloseTo(0, 12);
    expect(edges[6]?.length.toNumber('m')).toBeCloseTo(Math.SQRT2, 12);
    expect(edges[6]?.angle.toNumber('deg')).toBeCloseTo(45, 12);
    expect(edges[0]?.turn.isZero()).toBe(true);
    // the other way round the arc turns to the right, and starts where it ended
    const back = {
      unit: 'm',
      points: [...outline.points].reverse(),
      arcs: [{ edge: 1, bulgeMiddleOrdinate: 1 }],
    };
    const [, arc] = outlineEdges({ outline: back as never }).edges;
    expect(arc?.turn.isNegative()).toBe(true);
    // with t = 2 M / C = 1/2 the arc starts 2 atan(1/2) to the left of its chord, which runs down
    expect(((arc?.angle.toNumber('deg') ?? 0) + 180) % 180).toBeCloseTo(
      (270 + (2 * Math.atan(0.5) * 180) / Math.PI) % 180,
      9,
    );
  });

  test('feed the count', () => {
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [12, 0],
        [12, 5],
        [0, 5],
      ],
    } as const;
    const { edges } = outlineEdges({ outline });
    expect(unitCount({ ...block, edge: edges })).toMatchObject({ cut: 220, order: 3110 });
  });

  test('diagonals are exactly at 45 degrees', () => {
    const diamond = {
      unit: 'm',
      points: [
        [1, 0],
        [2, 1],
        [1, 2],
        [0, 1],
      ],
    } as const;
    const angles = (axis: string) =>
      outlineEdges({ outline: diamond, axis }).edges.map((edge) => edge.angle.to('deg').toString());
    expect(angles('0 deg')).toEqual(['45', '45', '45', '45']);
    expect(angles('45 deg')).toEqual(['0', '90', '0', '90']);
  });

  test('refuses what is no outline', () => {
    expectFault(() => outlineEdges({ outline: { unit: 'm', points: [[0, 0]] } }), 'TOO_FEW');
    const line = {
      unit: 'm',
      points: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
    } as const;
    expectFault(() => outlineEdges({ outline: line, axis: '3601 deg' }), 'OUT_OF_RANGE');
  });
});

describe('refusals', () => {
  test('all at once', () => {
    const issues = faultsOf(() =>
      unitCount({
        area: '-1 m2',
        unit: { length: '0 mm' } as never,
        joint: '1 m',
        pattern: 'random' as never,
        edge: [
          { length: '-1 m' },
          { length: '1 m', isCurved: true, angle: '45 deg', turn: '1 deg' },
          5 as never,
        ],
        reuse: 2,
        breakage: -1,
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['area', 'NEGATIVE'],
      ['unit.length', 'NOT_POSITIVE'],
      ['unit.width', 'REQUIRED'],
      ['joint', 'OUT_OF_RANGE'],
      ['pattern', 'UNKNOWN_CHOICE'],
      ['edge.0.length', 'NEGATIVE'],
      ['edge.1.angle', 'CONFLICTING_FIELDS'],
      ['edge.1.turn', 'CONFLICTING_FIELDS'],
      ['edge.2', 'WRONG_TYPE'],
      ['reuse', 'OUT_OF_RANGE'],
      ['breakage', 'NEGATIVE'],
    ]);
  });

  test('bare numbers', () => {
    expectFault(() => unitCount({ ...block, area: 60 as never }), 'UNIT_MISSING');
    expectFault(
      () => unitCount({ ...block, edge: { length: '1 m', angle: 45 as never } }),
      'UNIT_MISSING',
    );
    expectFault(() => unitCount({ ...block, edge: { length: '1 m', reuse: 'x' } }), 'NOT_A_NUMBER');
    expectFault(
      () => unitCount({ ...block, edge: { length: '1 m', isCurved: 1 as never } }),
      'WRONG_TYPE',
    );
  });
});
