import { describe, expect, test } from 'vitest';
import { borderCourse, unitCount } from 'settline/materials';
import { outlineArea } from 'settline/outline';
import { expectFault } from '../faults.js';
import { formulaFaults } from '../formulas/evaluate-step.js';

const drive = {
  unit: 'm',
  points: [
    [0, 0],
    [12, 0],
    [12, 5],
    [0, 5],
  ],
} as const;
const unit = { length: '200 mm', width: '100 mm' } as const;
const base = { outline: drive, unit, joint: '3 mm', course: 'soldier' } as const;
const metres = (one: { to(unit: 'm'): { toString(): string } }) => one.to('m').toString();

describe('a border all round', () => {
  test('soldier and header stand square to the edge, a sailor lies along it', () => {
    const soldier = borderCourse(base);
    expect([metres(soldier.depth), metres(soldier.pitch)]).toEqual(['0.2', '0.103']);
    expect(borderCourse({ ...base, course: 'header' }).units).toBe(soldier.units);
    const sailor = borderCourse({ ...base, course: 'sailor' });
    expect([metres(sailor.depth), metres(sailor.pitch)]).toEqual(['0.1', '0.203']);
    // 11.9 / 0.203 = 58.6 and 4.9 / 0.203 = 24.1
    expect(metres(sailor.centreLine)).toBe('33.6');
    expect(sailor.units).toBe(2 * 59 + 2 * 25);
  });

  test('butt corners: whole units for each run along its centre line', () => {
    const { centreLine, units, sides, runs, area, field } = borderCourse(base);
    expect(sides.map((side) => metres(side.centreLine))).toEqual(['11.8', '4.8', '11.8', '4.8']);
    // each course through at one end and stopped at the other: 12 - 0.2 and 5 - 0.2
    expect(metres(centreLine)).toBe('33.2');
    expect(runs.map((run) => [run.edges, metres(run.length), run.units])).toEqual([
      [[0], '11.8', 115],
      [[1], '4.8', 47],
      [[2], '11.8', 115],
      [[3], '4.8', 47],
    ]);
    expect(units).toBe(324); // 33.2 / 0.103 = 322.3 would leave two runs short
    expect(area.to('m2').toString()).toBe('6.64');
    expect(field.area.to('m2').toString()).toBe('53.36');
    expect(field.edges.map((edge) => metres(edge.length))).toEqual(['11.6', '4.6', '11.6', '4.6']);
  });

  test('the working names the edges as the result does, and says from what it counts', () => {
    const names = borderCourse(base).working.map(({ given }) => given[0]?.name);
    expect([names[0], names[2]]).toEqual([
      'centre line of side 0, 1, 2, 3 (counted from 0), half the depth of the course in',
      'run of side 0, 1, 2, 3 (counted from 0)',
    ]);
  });

  test('mitred corners: whole units along the longer side of each course', () => {
    const { sides, runs, units, corner } = borderCourse({ ...base, corner: 'mitre' });
    expect(runs.map((run) => metres(run.length))).toEqual(['12', '5', '12', '5']);
    expect(sides.map((side) => metres(side.longSide))).toEqual(['12', '5', '12', '5']);
    expect(corner).toBe('mitre');
    expect(units).toBe(117 + 49 + 117 + 49);
  });

  test('exactly full sides take no unit more', () => {
    const even = { ...base, unit: { length: '200 mm', width: '98 mm' }, joint: '2 mm' };
    expect(borderCourse(even).units).toBe(332);
    expect(borderCourse({ ...even, corner: 'mitre' }).units).toBe(340);
  });

  test('the field feeds the count', () => {
    const { field } = borderCourse(base);
    const count = unitCount({ area: field.area, unit, joint: '3 mm', edge: field.edges });
    expect(count.whole).toBe(2553);
    // 23.2 / 0.203 + 9.2 / 0.103
    expect(count.cut).toBe(204);
  });

  test('does not care which way round the points run', () => {
    const back = { unit: 'm', points: [...drive.points].reverse() } as const;
    const other = borderCourse({ ...base, outline: back });
    expect(other.units).toBe(324);
    expect(other.field.area.to('m2').toString()).toBe('53.36');
  });

  test('working adds up', () => {
    const { working, units } = borderCourse({ ...base, corner: 'mitre' });
    expect(working.map(({ result }) => result.symbol)).toEqual(['C', 'Af', 'n']);
    expect(working[2]?.result.value).toBe(units);
    expect(formulaFaults(working)).toEqual([]);
  });
});

describe('other outlines', () => {
  test('a concave corner: the inner side is the longer one', () => {
    const ell = {
      unit: 'm',
      points: [
        [0, 0],
        [9, 0],
        [9, 4],
        [5, 4],
        [5, 7],
        [0, 7],
      ],
    } as const;
    const { sides, area, field } = borderCourse({ ...base, outline: ell });
    // edges 2 and 3 meet at the concave corner
    expect(sides.map((side) => metres(side.centreLine))).toEqual([
      '8.8',
      '3.8',
      '4',
      '3',
      '4.8',
      '6.8',
    ]);
    expect(sides.map((side) => metres(side.longSide))).toEqual(['9', '4', '4.2', '3.2', '5', '7']);
    // d P - d^2 (5 - 1)
    expect(area.to('m2').toString()).toBe('6.24');
    expect(area.plus(field.area).equals(outlineArea({ outline: ell }).area)).toBe(true);
  });

  test('a triangle of 3-4-5', () => {
    const triangle = {
      unit: 'm',
      points: [
        [0, 0],
        [4, 0],
        [0, 3],
      ],
    } as const;
    const { field, centreLine } = borderCourse({ ...base, outline: triangle });
    // inradius 1 m: the field is the triangle at 0.8, the centre line at 0.9 of its size
    expect(field.area.to('m2').toString()).toBe('3.84');
    expect(metres(centreLine)).toBe('10.8');
  });

  test('only some edges: the course runs through to the edge without a border', () => {
    const three = borderCourse({ ...base, edges: [true, true, false, true] });
    expect(three.sides.map(({ edge }) => edge)).toEqual([0, 1, 3]);
    expect(three.sides.map((side) => metres(side.centreLine))).toEqual(['11.8', '4.9', '4.9']);
    expect(three.field.area.to('m2').toString()).toBe('55.68');
    const one = borderCourse({ ...base, edges: [true, false, false, false], corner: 'mitre' });
    expect(metres(one.centreLine)).toBe('12');
    expect(one.units).toBe(117);
  });

  test('a straight edge of which half has a border', () => {
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [6, 0],
        [12, 0],
        [12, 5],
        [0, 5],
      ],
    } as const;
    const { sides, field, area } = borderCourse({
      ...base,
      outline,
      edges: [true, false, false, false, false],
    });
    expect(sides.map((side) => metres(side.centreLine))).toEqual(['6']);
    expect(area.to('m2').toString()).toBe('1.2');
    // the step at the end of the border is an edge of the field too
    expect(field.edges.map((edge) => metres(edge.length))).toEqual([
      '6',
      '0.2',
      '6',
      '5',
      '12',
      '4.8',
    ]);
    const rest = borderCourse({ ...base, outline, edges: [false, true, true, true, true] });
    expect(rest.sides.map((side) => metres(side.centreLine))).toEqual([
      '5.9',
      '4.8',
      '11.8',
      '4.9',
    ]);
  });

  test('a side in two pieces is one run, wherever the points start', () => {
    const points = [
      [0, 0],
      [6.05, 0],
      [12, 0],
      [12, 5],
      [0, 5],
    ] as const;
    const runsFrom = (start: number) => {
      const turned = [...points.slice(start), ...points.slice(0, start)];
      return borderCourse({ ...base, outline: { unit: 'm', points: turned } }).runs;
    };
    expect(runsFrom(0).map(({ edges, units }) => [edges, units])).toEqual([
      [[0, 1], 115],
      [[2], 47],
      [[3], 115],
      [[4], 47],
    ]);
    // the first point lies inside a side
    expect(runsFrom(1).map(({ edges, units }) => [edges, units])).toEqual([
      [[4, 0], 115],
      [[1], 47],
      [[2], 115],
      [[3], 47],
    ]);
    // a gap in the border ends the run
    const edges = [true, false, true, true, true];
    const gap = borderCourse({ ...base, outline: { unit: 'm', points }, edges });
    expect(gap.runs.map((run) => run.edges)).toEqual([[0], [2], [3], [4]]);
    const bend = [
      [0, 0],
      [6, 0],
      [12, 0.1],
      [12, 5],
      [0, 5],
    ] as const;
    const bent = borderCourse({ ...base, outline: { unit: 'm', points: bend } });
    expect(bent.runs).toHaveLength(5);
  });

  test('the axis of the field turns its angles', () => {
    const { field } = borderCourse({ ...base, axis: '90 deg' });
    expect(field.edges.map((edge) => edge.angle.to('deg').toString())).toEqual([
      '90',
      '0',
      '90',
      '0',
    ]);
  });
});

describe('arcs and holes', () => {
  test('a round: centre line and field are circles', () => {
    const circle = {
      unit: 'm',
      points: [
        [-2, 0],
        [2, 0],
      ],
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: 2 },
        { edge: 1, bulgeMiddleOrdinate: 2 },
      ],
    } as const;
    const { centreLine, units, area, field, sides, runs } = borderCourse({
      ...base,
      outline: circle,
    });
    expect(runs.map(({ edges }) => edges)).toEqual([[0, 1]]);
    expect(centreLine.toNumber('m')).toBeCloseTo(2 * Math.PI * 1.9, 12);
    expect(units).toBe(Math.ceil((2 * Math.PI * 1.9) / 0.103));
    expect(field.area.toNumber('m2')).toBeCloseTo(Math.PI * 1.8 ** 2, 12);
    expect(area.toNumber('m2')).toBeCloseTo(Math.PI * (4 - 1.8 ** 2), 12);
    expect(sides.map((side) => side.longSide.toNumber('m'))).toEqual([
      expect.closeTo(2 * Math.PI, 12) as number,
      expect.closeTo(2 * Math.PI, 12) as number,
    ]);
    // the field as it comes can be measured again
    const { outline: points, arcs, holes } = field;
    expect(
      outlineArea({ outline: { points, arcs, holes } }).area.minus(field.area).abs().toNumber('m2'),
    ).toBeLessThan(1e-30);
    // half the circle each: a full quarter turn either way makes the mean of all directions
    const cut = unitCount({ area: field.area, unit, joint: '3 mm', edge: field.edges }).extra;
    const round = 2 * Math.PI * 1.8;
    const mean = unitCount({
      area: field.area,
      unit,
      joint: '3 mm',
      edge: { length: { value: round, unit: 'm' }, isCurved: true },
    }).extra;
    expect(cut).toBeCloseTo(mean, 9);
  });

  test('a rounded corner between straight edges', () => {
    const quarter = 2 - Math.SQRT2;
    const fillet = {
      unit: 'm',
      points: [
        [0, 0],
        [4, 0],
        [6, 2],
        [6, 5],
        [0, 5],
      ],
      arcs: [{ edge: 1, bulgeMiddleOrdinate: quarter }],
    } as const;
    const { sides, runs, units, field } = borderCourse({ ...base, outline: fillet });
    // straight, rounded corner, straight: one run of 3.9 + 2.985 + 2.9 m, and two straight sides
    expect(runs.map(({ edges }) => edges)).toEqual([[0, 1, 2], [3], [4]]);
    expect(runs.map((run) => run.units)).toEqual([95, 57, 47]);
    expect(units).toBe(95 + 57 + 47);
    expect(sides[1]?.centreLine.toNumber('m')).toBeCloseTo((Math.PI / 2) * 1.9, 9);
    expect(sides[1]?.longSide.toNumber('m')).toBeCloseTo(Math.PI, 9);
    expect(sides[0]?.centreLine.toNumber('m')).toBeCloseTo(3.9, 9);
    expect(field.area.toNumber('m2')).toBeCloseTo(5.6 * 4.6 - (1 - Math.PI / 4) * 1.8 ** 2, 9);
    expect(field.edges[1]?.turn?.toNumber('deg')).toBeCloseTo(90, 9);
    expect(field.edges[1]?.angle.toNumber('deg')).toBeCloseTo(0, 9);
    // an arc that curves inward gets longer on its way into the paving
    const bay = { ...fillet, arcs: [{ edge: 1, bulgeMiddleOrdinate: -quarter }] };
    expectFault(() => borderCourse({ ...base, outline: bay }), 'ARC_MEETS_CORNER');
  });

  test('a hollow arc gets longer on its way into the paving', () => {
    // an L whose inner corner is rounded with a radius of 1 m
    const ell = {
      unit: 'm',
      points: [
        [0, 0],
        [9, 0],
        [9, 4],
        [6, 4],
        [5, 5],
        [5, 7],
        [0, 7],
      ],
      arcs: [{ edge: 3, bulgeMiddleOrdinate: Math.SQRT1_2 - 1 }],
    } as const;
    const { sides, field } = borderCourse({ ...base, outline: ell });
    expect(sides[3]?.centreLine.toNumber('m')).toBeCloseTo((Math.PI / 2) * 1.1, 9);
    expect(sides[3]?.longSide.toNumber('m')).toBeCloseTo((Math.PI / 2) * 1.2, 9);
    const corner = (1 - Math.PI / 4) * 1.2 ** 2;
    const straight = 8.6 * 3.6 + 4.6 * 3 + corner;
    expect(field.area.toNumber('m2')).toBeCloseTo(straight, 9);
  });

  test('names the arc that meets its neighbour at a corner', () => {
    const ell = {
      unit: 'm',
      points: [
        [0, 0],
        [9, 0],
        [9, 4],
        [5, 4],
        [5, 7],
        [0, 7],
      ],
      arcs: [{ edge: 3, bulgeMiddleOrdinate: 0.5 }],
    } as const;
    const { params, path, message } = expectFault(
      () => borderCourse({ ...base, outline: ell }),
      'ARC_MEETS_CORNER',
    );
    expect([params['edge'], path]).toEqual([3, ['outline']]);
    expect(message).toBe(
      'an arc meets the next edge at a corner where edge 3 (counted from 0) starts. A border needs a smooth join, so draw this arc as short straight edges',
    );
  });

  test("an arc with corners that has no border, nor its neighbours, is in nobody's way", () => {
    const bow = {
      unit: 'm',
      points: [
        [0, 0],
        [9, 0],
        [9, 4],
        [0, 4],
      ],
      arcs: [{ edge: 3, bulgeMiddleOrdinate: 0.5 }],
    } as const;
    const { sides, units, field } = borderCourse({
      ...base,
      outline: bow,
      edges: [false, true, false, false],
    });
    const paving = outlineArea({ outline: bow }).area;
    expect(sides.map((side) => [side.edge, metres(side.centreLine)])).toEqual([[1, '4']]);
    expect(paving.minus(field.area).toNumber('m2')).toBeCloseTo(4 * 0.2, 9);
    expect(units).toBe(Math.ceil(4 / 0.103));
    for (const edges of [
      [true, false, false, false],
      [false, false, true, false],
      [false, false, false, true],
    ]) {
      expectFault(() => borderCourse({ ...base, outline: bow, edges }), 'ARC_MEETS_CORNER');
    }
  });

  test('a border stops where a straight edge runs on into an arc', () => {
    const half = {
      unit: 'm',
      points: [
        [0, 0],
        [6, 0],
        [6, 4],
        [0, 4],
      ],
      arcs: [{ edge: 1, bulgeMiddleOrdinate: 2 }],
    } as const;
    const { sides, field } = borderCourse({
      ...base,
      outline: half,
      edges: [true, false, true, false],
    });
    expect(sides.map((side) => metres(side.centreLine))).toEqual(['6', '6']);
    expect(field.area.toNumber('m2')).toBeCloseTo(6 * 3.6 + 2 * Math.PI, 9);
  });

  test('round a manhole the courses stand outside the hole', () => {
    const hole = [
      [5, 2],
      [6, 2],
      [6, 3],
      [5, 3],
    ] as const;
    const outline = { ...drive, holes: [hole] };
    const all = borderCourse({ ...base, outline });
    expect(all.sides).toHaveLength(8);
    expect(all.sides.slice(4).map((side) => metres(side.centreLine))).toEqual(
      Array.from({ length: 4 }, () => '1.2'),
    );
    expect(metres(all.sides[4]?.longSide ?? all.depth)).toBe('1.4');
    expect(all.field.area.to('m2').toString()).toBe('51.4'); // 53.36 - 1.4^2
    expect(all.area.to('m2').toString()).toBe('7.6'); // 6.64 + 1.96 - 1
    const outer = [true, true, true, true, false, false, false, false];
    const bare = borderCourse({ ...base, outline, edges: outer });
    expect(bare.units).toBe(324);
    expect(bare.field.area.to('m2').toString()).toBe('52.36');
    expect(bare.field.holes).toHaveLength(1);
    expect(bare.field.edges).toHaveLength(8);
  });

  test('refuses a hole that its border or that of the edge would swallow', () => {
    const holed = (x: number) => ({
      ...drive,
      holes: [
        [
          [x, 2],
          [x + 0.05, 2],
          [x + 0.05, 2.05],
          [x, 2.05],
        ] as const,
      ],
    });
    expectFault(() => borderCourse({ ...base, outline: holed(0.01) }), 'BORDER_TOO_DEEP');
    const outer = [true, true, true, true, false, false, false, false];
    expectFault(
      () => borderCourse({ ...base, outline: holed(0.01), edges: outer }),
      'BORDER_TOO_DEEP',
    );
    const ring = (radius: number) => ({
      points: [
        [-radius, 0],
        [radius, 0],
      ] as const,
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: radius },
        { edge: 1, bulgeMiddleOrdinate: radius },
      ],
    });
    const hole = ring(0.7);
    const narrow = {
      unit: 'm',
      ...ring(1),
      holes: [
        {
          ...hole,
          arcs: hole.arcs.map((arc) => ({ ...arc, bulgeMiddleOrdinate: -0.7 })),
        },
      ],
    } as const;
    expectFault(() => borderCourse({ ...base, outline: narrow }), 'BORDER_TOO_DEEP');
    // the border of one hole would run over another without a border
    const square = (x: number, size: number) =>
      [
        [x, 2],
        [x + size, 2],
        [x + size, 2 + size],
        [x, 2 + size],
      ] as const;
    const two = { ...drive, holes: [square(5, 0.5), square(5.52, 0.02)] };
    const first = Array.from({ length: 12 }, (_, edge) => edge < 8);
    expectFault(() => borderCourse({ ...base, outline: two, edges: first }), 'BORDER_TOO_DEEP');
    const apart = { ...drive, holes: [square(5, 0.5), square(5.8, 0.05)] };
    expect(borderCourse({ ...base, outline: apart, edges: first }).sides).toHaveLength(8);
    const small = { unit: 'm', ...ring(0.1) } as const;
    expectFault(() => borderCourse({ ...base, outline: small }), 'BORDER_TOO_DEEP');
  });
});

describe('refusals', () => {
  const narrow = {
    unit: 'm',
    points: [
      [0, 0],
      [12, 0],
      [12, 0.4],
      [0, 0.4],
    ],
  } as const;
  const notch = {
    unit: 'm',
    points: [
      [0, 0],
      [9, 0],
      [9, 4],
      [5.1, 4],
      [5.1, 0.3],
      [4.9, 0.3],
      [4.9, 4],
      [0, 4],
    ],
  } as const;
  test.each([
    ['no room', () => borderCourse({ ...base, outline: narrow }), 'BORDER_TOO_DEEP'],
    ['courses that meet', () => borderCourse({ ...base, outline: notch }), 'BORDER_TOO_DEEP'],
    ['edges', () => borderCourse({ ...base, edges: [true] }), 'COUNT_MISMATCH'],
    ['no edge', () => borderCourse({ ...base, edges: [false, false, false, false] }), 'TOO_FEW'],
    ['no list', () => borderCourse({ ...base, edges: [] }), 'EMPTY_LIST'],
    ['flag', () => borderCourse({ ...base, edges: [1, true, true, true] as never }), 'WRONG_TYPE'],
    ['course', () => borderCourse({ ...base, course: 'rowlock' as never }), 'UNKNOWN_CHOICE'],
    ['corner', () => borderCourse({ ...base, corner: 'round' as never }), 'UNKNOWN_CHOICE'],
    [
      'crossing',
      () =>
        borderCourse({
          ...base,
          outline: {
            unit: 'm',
            points: [
              [0, 0],
              [1, 1],
              [1, 0],
              [0, 1],
            ],
          },
        }),
      'SELF_INTERSECTION',
    ],
  ] as const)('%s', (_, run, code) => {
    expectFault(run, code);
  });

  test('names the edge in the words of the crew', () => {
    const { message, params, path } = expectFault(
      () => borderCourse({ ...base, outline: narrow }),
      'BORDER_TOO_DEEP',
    );
    expect([path, params]).toEqual([['outline'], { edge: 1 }]);
    expect(message).toBe(
      'at edge 1 (counted from 0) the paving has no room for a border this deep. Leave the border out there, or choose a shallower course',
    );
  });

  test('names no edge where no single one is to blame', () => {
    const { message, params } = expectFault(
      () => borderCourse({ ...base, outline: notch }),
      'BORDER_TOO_DEEP',
    );
    expect(params).toEqual({});
    expect(message).toBe(
      'the paving has no room for a border this deep. Leave the border out there, or choose a shallower course',
    );
  });
});
