import { describe, expect, test } from 'vitest';
import { outlineArea, widenOutline, type OutlineInput } from 'settline/outline';
import { expectFault, faultsOf } from '../faults.js';

type Pairs = readonly (readonly [number, number])[];
const feet = (points: Pairs, more: object = {}): OutlineInput => ({ unit: 'ft', points, ...more });
const metres = (points: Pairs, more: object = {}): OutlineInput => ({ unit: 'm', points, ...more });
const SQUARE: Pairs = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
/** A slot 1 wide and 5 deep in the top of a square. */
const SLOT: Pairs = [
  [0, 0],
  [10, 0],
  [10, 10],
  [6, 10],
  [6, 5],
  [5, 5],
  [5, 10],
  [0, 10],
];
const in_m2 = (options: Parameters<typeof widenOutline>[0]) =>
  widenOutline(options).area.toNumber('m2');

describe('where parts run together', () => {
  test('a slot narrower than twice the distance closes, exactly', () => {
    const wide = widenOutline({ outline: feet(SLOT), by: '2 ft' });
    expect(wide.area.to('ft2').toString()).toBe('196');
    expect(wide.closesUp).toBe(true);
    expect(wide.outline).toHaveLength(4);
    expect(wide.holes).toEqual([]);
    const open = widenOutline({ outline: feet(SLOT), by: '0.4 ft' });
    expect(open.closesUp).toBe(false);
    // 10.8 squared less what is left of the slot, 0.2 by 5
    expect(open.area.to('ft2').toString()).toBe('115.64');
  });

  test('where the sides of a notch meet is worked out exactly, off every grid', () => {
    // sides of slope 4 in 3, a bottom of 0.5 that vanishes: they meet a third above y = 7
    const outline = metres([
      [0, 0],
      [20, 0],
      [20, 10],
      [13, 10],
      [10, 6],
      [9.5, 6],
      [6.5, 10],
      [0, 10],
    ]);
    const wide = widenOutline({ outline, by: '1 m' });
    // 22 by 12 less 5.5 by 11/3 over two
    expect(wide.area.times(12).to('m2').toString()).toBe('3047');
    expect(wide.closesUp).toBe(true);
    expect(wide.outline).toHaveLength(7);
  });

  test.each([
    [50, 'm', '100 m', 700 * 700],
    [0.01, 'mm', '0.02 mm', 0.14 * 0.14],
  ] as const)('a slot of %d %s closes like any other', (size, unit, by, area) => {
    const points = SLOT.map(([x, y]): [number, number] => [x * size, y * size]);
    const wide = widenOutline({ outline: { unit, points }, by });
    expect(wide.area.to(`${unit}2`).toNumber()).toBeCloseTo(area, 12);
    expect([wide.closesUp, wide.outline.length]).toEqual([true, 4]);
  });

  test('a pocket behind a mouth that closes stays as a hole', () => {
    const pocket: Pairs = [
      [0, 0],
      [20, 0],
      [20, 10],
      [10.5, 10],
      [10.5, 9],
      [18, 9],
      [18, 2],
      [2, 2],
      [2, 9],
      [9.5, 9],
      [9.5, 10],
      [0, 10],
    ];
    const wide = widenOutline({ outline: feet(pocket), by: '0.6 ft' });
    // 21.2 x 11.2 less 14.8 x 5.8
    expect(wide.area.to('ft2').toString()).toBe('151.6');
    expect(wide.holes).toHaveLength(1);
    expect(outlineArea({ outline: wide.outline }).area.to('ft2').toString()).toBe('237.44');
  });

  test('a needle of a notch that points at another arm takes nothing away there', () => {
    const outline = metres([
      [0, -3],
      [20, -3],
      [20, 10],
      [16, 10],
      [16, 0],
      [10, 0],
      [10, 4.956],
      [9, 5],
      [10, 5.044],
      [10, 10],
      [0, 10],
    ]);
    const wide = widenOutline({ outline, by: '1 m' });
    // 22 by 15 less the gap that stays, 4 by 10
    expect(wide.area.to('m2').toString()).toBe('290');
  });

  test('islands shrink, and vanish where the distance is half their width', () => {
    const hole: Pairs = [
      [4, 4],
      [4, 6],
      [6, 6],
      [6, 4],
    ];
    const outline = metres(SQUARE, { holes: [hole] });
    const some = widenOutline({ outline, by: '0.5 m' });
    expect(some.area.to('m2').toString()).toBe('120');
    expect(some.holes).toHaveLength(1);
    expect(some.closesUp).toBe(false);
    const all = widenOutline({ outline, by: '1.5 m' });
    expect(all.area.to('m2').toString()).toBe('169');
    expect([all.holes.length, all.closesUp]).toEqual([0, true]);
    // the edges of the hole follow those of the outline
    const perEdge = ['0 m', '0 m', '0 m', '0 m', '1 m', '0 m', '0 m', '0 m'];
    expect(widenOutline({ outline, perEdge }).area.to('m2').toString()).toBe('98');
    expectFault(() => widenOutline({ outline, perEdge: perEdge.slice(1) }), 'COUNT_MISMATCH');
  });
});

describe('arcs', () => {
  test('a round island and a round paving keep their centres', () => {
    const circle = (radius: number) => ({
      unit: 'm' as const,
      points: [
        [-radius, 0],
        [radius, 0],
      ] as const,
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: radius },
        { edge: 1, bulgeMiddleOrdinate: radius },
      ],
    });
    // on a hole, outward from the paving is into the hole: a hole bulges with a minus
    const inner = circle(1);
    const holes = [
      { ...inner, arcs: inner.arcs.map((arc) => ({ ...arc, bulgeMiddleOrdinate: -1 })) },
    ];
    const ring = { ...circle(5), holes };
    expect(outlineArea({ outline: ring }).area.toNumber('m2')).toBeCloseTo(24 * Math.PI, 12);
    const wide = widenOutline({ outline: ring, by: '0.4 m' });
    expect(wide.area.toNumber('m2')).toBeCloseTo(Math.PI * (5.4 ** 2 - 0.6 ** 2), 12);
    expect(wide.arcs.map(({ bulgeMiddleOrdinate }) => bulgeMiddleOrdinate.toNumber('m'))).toEqual([
      5.4, 5.4,
    ]);
    const full = widenOutline({ outline: ring, by: '1.2 m' });
    expect(full.holes).toEqual([]);
    // the outer circle is in chords once something closes up
    expect(full.area.toNumber('m2') / (Math.PI * 6.2 ** 2)).toBeCloseTo(1, 4);
  });

  test('a ring sector: A + P d + 4 d^2, the arcs give and take alike', () => {
    const half = 0.7;
    const at = (radius: number, sign: number): [number, number] => [
      sign * radius * Math.sin(half),
      radius * Math.cos(half),
    ];
    const outline = metres([at(3, -1), at(3, 1), at(4.2, 1), at(4.2, -1)], {
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: -3 * (1 - Math.cos(half)) },
        { edge: 2, bulgeMiddleOrdinate: 4.2 * (1 - Math.cos(half)) },
      ],
    });
    const { area, perimeter } = outlineArea({ outline });
    const d = 0.3;
    const expected = area.toNumber('m2') + perimeter.toNumber('m') * d + 4 * d * d;
    const wide = widenOutline({ outline, by: '0.3 m' });
    expect(wide.area.toNumber('m2')).toBeCloseTo(expected, 9);
    expect(wide.arcs).toHaveLength(2);
  });

  test('an arc is cut where it meets the edge along a building', () => {
    // half a disc of radius 3, its straight edge along the building
    const outline = metres(
      [
        [-3, 0],
        [3, 0],
      ],
      { arcs: [{ edge: 1, bulgeMiddleOrdinate: 3 }] },
    );
    const half = widenOutline({ outline, perEdge: ['0 m', '0.4 m'] });
    expect(half.area.toNumber('m2')).toBeCloseTo((Math.PI * 3.4 ** 2) / 2, 12);
    // a flat arc of radius 4.25 over a chord of 4 that leans out over the building
    const flat = metres(
      [
        [0, 0],
        [10, 0],
        [10, 4],
        [0, 4],
      ],
      { arcs: [{ edge: 1, bulgeMiddleOrdinate: 0.5 }] },
    );
    const cut = widenOutline({ outline: flat, perEdge: ['0 m', '0.4 m', '0 m', '0 m'] });
    // circle of radius 4.65 about (6.25, 2), from y = 0 to y = 4
    const leg = Math.sqrt(4.65 ** 2 - 4);
    const segment = 4.65 ** 2 * Math.asin(2 / 4.65) - 2 * leg;
    expect(cut.area.toNumber('m2')).toBeCloseTo((6.25 + leg) * 4 + segment, 12);
    expect(cut.closesUp).toBe(false);
    expect(cut.outline[1]?.x.toNumber('m')).toBeCloseTo(6.25 + leg, 12);
    expect(cut.outline).toHaveLength(4);
  });

  test('an arc of more than half a circle stays one', () => {
    // a keyhole: three quarters of a disc of radius 2 with a square corner at its centre cut off
    const outline = metres(
      [
        [2, 0],
        [0, 2],
      ],
      { arcs: [{ edge: 1, bulgeMiddleOrdinate: 2 + Math.SQRT2 }] },
    );
    const area = (radius: number) => {
      const half = Math.PI - Math.asin(Math.SQRT2 / 2);
      return radius * radius * half + radius * radius * Math.sin(half) * Math.abs(Math.cos(half));
    };
    expect(in_m2({ outline, by: '0 m' })).toBeCloseTo(area(2), 12);
    const wide = widenOutline({ outline, perEdge: ['0 m', '0.5 m'] });
    // the chord stays where it is: 2.5 about the same centre, cut by a line sqrt(2) away
    const half = Math.PI - Math.acos(Math.SQRT2 / 2.5);
    const leg = Math.sqrt(2.5 ** 2 - 2);
    expect(wide.area.toNumber('m2')).toBeCloseTo(2.5 ** 2 * half + leg * Math.SQRT2, 9);
    expect(wide.arcs[0]?.bulgeMiddleOrdinate.toNumber('m')).toBeCloseTo(2.5 + Math.SQRT2, 9);
  });

  test('an arc runs on as its tangent to an outer corner', () => {
    // a quarter of a disc of radius 4 cut out of the corner of a square
    const rise = 4 * (1 - Math.SQRT1_2);
    const outline = metres(
      [
        [0, 0],
        [10, 0],
        [10, 6],
        [6, 10],
        [0, 10],
      ],
      { arcs: [{ edge: 2, bulgeMiddleOrdinate: -rise }] },
    );
    expect(in_m2({ outline, by: '0 m' })).toBeCloseTo(100 - 4 * Math.PI, 9);
    // 12 by 12 less a quarter disc of radius 3, two strips of 1 by 3 and a square of 1
    expect(in_m2({ outline, by: '1 m' })).toBeCloseTo(144 - (9 * Math.PI) / 4 - 7, 9);
  });

  test('an arc and a straight edge in an inner corner meet where both have moved', () => {
    // half a disc of radius 2 on the middle of a rectangle 12 by 3
    const outline = metres(
      [
        [0, 0],
        [12, 0],
        [12, 3],
        [8, 3],
        [4, 3],
        [0, 3],
      ],
      { arcs: [{ edge: 3, bulgeMiddleOrdinate: 2 }] },
    );
    const wide = widenOutline({ outline, by: '1 m' });
    // circle of radius 3 above a line 1 over its centre
    const segment = 9 * Math.acos(1 / 3) - Math.sqrt(8);
    expect(wide.area.toNumber('m2')).toBeCloseTo(14 * 5 + segment, 12);
    expect(wide.closesUp).toBe(false);
    expect(wide.arcs[0]?.bulgeMiddleOrdinate.toNumber('m')).toBeCloseTo(2, 12);
    expect(wide.outline[3]?.x.toNumber('m')).toBeCloseTo(6 + Math.sqrt(8), 12);
  });

  /** Two arcs side by side on a strip 8 by 3. */
  const scallops = (rise: number) =>
    metres(
      [
        [0, 0],
        [8, 0],
        [8, 3],
        [4, 3],
        [0, 3],
      ],
      {
        arcs: [
          { edge: 2, bulgeMiddleOrdinate: rise },
          { edge: 3, bulgeMiddleOrdinate: rise },
        ],
      },
    );

  test('two arcs in an inner corner meet where their circles do', () => {
    const wide = widenOutline({ outline: scallops(1.5), by: '0.5 m' });
    const radius = 4 / 3 + 0.75;
    const centre = 3 + 1.5 - radius;
    expect(wide.closesUp).toBe(false);
    expect(wide.arcs).toHaveLength(2);
    const middle = wide.outline.find(({ x }) => Math.abs(x.toNumber('m') - 4) < 1e-9);
    expect(middle?.y.toNumber('m')).toBeCloseTo(centre + Math.sqrt((radius + 0.5) ** 2 - 4), 12);
  });

  test('two half discs that touch are united in chords', () => {
    const wide = widenOutline({ outline: scallops(2), by: '0.5 m' });
    // below the centres 9 by 3.5; above them two half discs of 2.5 less half of their lens
    const lens = 2 * 2.5 ** 2 * Math.acos(0.8) - 6;
    expect(wide.closesUp).toBe(true);
    expect(wide.area.toNumber('m2')).toBeCloseTo(31.5 + Math.PI * 2.5 ** 2 - lens / 2, 3);
    expect(wide.longMitres).toEqual([3]);
  });

  test('an arc bent inward whose radius is used up closes', () => {
    const outline = metres(
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [6, 5],
        [4, 5],
        [0, 5],
      ],
      { arcs: [{ edge: 3, bulgeMiddleOrdinate: -1 }] },
    );
    expect(outlineArea({ outline }).area.toNumber('m2')).toBeCloseTo(50 - Math.PI / 2, 12);
    const wide = widenOutline({ outline, by: '1.5 m' });
    expect(wide.closesUp).toBe(true);
    expect(wide.area.toNumber('m2')).toBeCloseTo(13 * 8, 9);
  });
});

describe('corners', () => {
  test('round corners bring their arcs', () => {
    const wide = widenOutline({ outline: metres(SQUARE), by: '2 m', corners: 'round' });
    expect(wide.area.toNumber('m2')).toBeCloseTo(100 + 80 + 4 * Math.PI, 12);
    expect([wide.outline.length, wide.arcs.length]).toEqual([8, 4]);
    expect(wide.arcs[0]?.bulgeMiddleOrdinate.toNumber('m')).toBeCloseTo(2 - Math.SQRT2, 12);
    const again = outlineArea({
      outline: { points: wide.outline, arcs: wide.arcs },
    });
    expect(again.area.minus(wide.area).abs().toNumber('m2')).toBeLessThan(1e-30);
  });

  test('round, with different distances: the larger one is the radius', () => {
    const obtuse = metres([
      [0, 0],
      [10, 0],
      [16, 8],
      [0, 8],
    ]);
    const wide = widenOutline({
      outline: obtuse,
      perEdge: ['1 m', '0.5 m', '0 m', '0 m'],
      corners: 'round',
    });
    const mitred = widenOutline({ outline: obtuse, perEdge: ['1 m', '0.5 m', '0 m', '0 m'] });
    expect(wide.arcs.length).toBeGreaterThan(0);
    expect(wide.area.compare(mitred.area)).toBe(-1);
  });

  test('a needle of a corner is named, and its mitre runs out all the way', () => {
    const needle = metres([
      [0, 0],
      [100, 0],
      [0, 5],
    ]);
    const wide = widenOutline({ outline: needle, by: '0.5 m' });
    expect(wide.longMitres).toEqual([1]);
    const { area, perimeter } = outlineArea({ outline: needle });
    // A + P d + d^2 P^2 / (4 A): the sum of the tangents of a triangle is P^2 / (4 A)
    const [a, p] = [area.toNumber('m2'), perimeter.toNumber('m')];
    expect(wide.area.toNumber('m2')).toBeCloseTo(a + p / 2 + (0.25 * p * p) / (4 * a), 9);
    expect(widenOutline({ outline: metres(SQUARE), by: '1 m' }).longMitres).toEqual([]);
  });

  // the mitre reaches 1 / sin(half the corner): 8.91 and 10.57 widths
  test.each([
    [11.3, []],
    [9.5, [0]],
  ])('a corner 100 m long and %f m wide to each side', (half, long) => {
    const corner = metres([
      [100, 0],
      [0, half],
      [0, -half],
    ]);
    expect(widenOutline({ outline: corner, by: '0.5 m' }).longMitres).toEqual(long);
  });

  test('at a blunt corner the edge is cut back along the line of the one that stays', () => {
    const outline = metres([
      [0, 0],
      [2, 0],
      [6, 0.7],
      [6, 4],
      [0, 4],
    ]);
    const perEdge = ['0.3 m', '0 m', '0 m', '0 m', '0 m'];
    // 24 - 1.4, and a strip from 2 m down to 2 - 0.3 / 0.175 m
    for (const corners of ['mitred', 'round'] as const) {
      const { area, arcs } = widenOutline({ outline, perEdge, corners });
      expect(area.toNumber('m2')).toBeCloseTo(22.6 + (0.3 * (2 + 2 / 7)) / 2, 12);
      expect(arcs).toEqual([]);
    }
  });

  test('almost straight on with different distances: a step, no wedge of a mile', () => {
    const bent = metres([
      [0, 0],
      [10, 0],
      [20, 0.5],
      [20, 10],
      [0, 10],
    ]);
    const perEdge = ['0 m', '0.4 m', '0 m', '0 m', '0 m'];
    const wide = widenOutline({ outline: bent, perEdge });
    expect(wide.outline).toHaveLength(6);
    expect(in_m2({ outline: bent, perEdge }) - in_m2({ outline: bent, by: '0 m' })).toBeCloseTo(
      // the strip, cut square at the step, and at the far end along the edge that stays
      0.4 * Math.hypot(10, 0.5) - (0.4 * 0.4 * 0.05) / 2,
      9,
    );
  });
});

describe('refusals', () => {
  test('an outline with holes that are wrong', () => {
    const hole = (points: Pairs) => () =>
      outlineArea({ outline: metres(SQUARE, { holes: [points] }) });
    const small: Pairs = [
      [1, 1],
      [2, 1],
      [2, 2],
    ];
    const away: Pairs = small.map(([x, y]) => [x + 20, y]);
    expect(expectFault(hole(away), 'HOLE_OUTSIDE').params).toEqual({ hole: 0 });
    const across: Pairs = small.map(([x, y]) => [x + 8.5, y]);
    expect(expectFault(hole(across), 'SELF_INTERSECTION').path).toEqual(['outline', 'points']);
    const nested = () =>
      outlineArea({
        outline: metres(SQUARE, {
          holes: [
            SQUARE.map(([x, y]) => [1 + x / 2, 1 + y / 2]),
            small.map(([x, y]) => [x + 1, y + 1]),
          ],
        }),
      });
    expect(expectFault(nested, 'HOLE_OUTSIDE').params).toEqual({ hole: 1, round: 0 });
    expectFault(hole(small.slice(1)), 'TOO_FEW');
    expectFault(
      hole([
        [1, 1],
        [2, 2],
        [3, 3],
      ]),
      'ZERO_AREA',
    );
  });

  test('what stands in for a bad point is not judged', () => {
    const points = [
      [Number.NaN, 0],
      [0, 0],
      [4, 0],
      [4, 4],
    ] as never;
    const faults = faultsOf(() => outlineArea({ outline: metres(points) }));
    expect(faults.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
      'NOT_FINITE outline.points.0.0',
    ]);
  });

  test('one distance and one for each edge', () => {
    const both = { outline: metres(SQUARE), by: '1 m', perEdge: ['0 m', '0 m', '0 m', '0 m'] };
    expect(expectFault(() => widenOutline(both), 'CONFLICTING_FIELDS').params).toEqual({
      choices: 'by, perEdge',
    });
  });

  test('arcs that cross right at their corner', () => {
    // the corner is 11.42 degrees wide; each arc takes 2 atan(2 M / C) of it
    const points: Pairs = [
      [0, 0],
      [10, -1],
      [10, 1],
    ];
    const wedge = (bulgeMiddleOrdinate: number, turned = false) => {
      const arcs = [0, 2].map((edge) => ({ edge, bulgeMiddleOrdinate }));
      const back = [2, 1].map((edge) => ({ edge, bulgeMiddleOrdinate }));
      const reversed: Pairs = [points[2] ?? [0, 0], points[1] ?? [0, 0], points[0] ?? [0, 0]];
      return () =>
        outlineArea({
          outline: turned ? metres(reversed, { arcs: back }) : metres(points, { arcs }),
        }).area.toNumber('m2');
    };
    for (const turned of [false, true]) {
      // 10 less twice two thirds of chord and ordinate, nearly
      expect(wedge(-0.245, turned)()).toBeCloseTo(10 - (4 / 3) * Math.sqrt(101) * 0.245, 1);
      expectFault(wedge(-0.26, turned), 'SELF_INTERSECTION');
    }
    expect(expectFault(wedge(-0.27), 'SELF_INTERSECTION').params).toEqual({ first: 2, second: 0 });
    const hole = (bulgeMiddleOrdinate: number) => () =>
      outlineArea({
        outline: metres(
          [
            [-5, -5],
            [15, -5],
            [15, 5],
            [-5, 5],
          ],
          { holes: [{ points, arcs: [0, 2].map((edge) => ({ edge, bulgeMiddleOrdinate })) }] },
        ),
      }).area.toNumber('m2');
    expect(hole(0.245)()).toBeCloseTo(200 - wedge(-0.245)(), 9);
    expectFault(hole(0.26), 'SELF_INTERSECTION');
  });

  test('arcs that are wrong', () => {
    const arcs = (list: readonly object[], points = SQUARE) =>
      faultsOf(() => outlineArea({ outline: metres(points, { arcs: list }) })).map(
        ({ code, path }) => `${code} ${path.join('.')}`,
      );
    expect(arcs([{ edge: 4, bulgeMiddleOrdinate: 1 }])).toEqual([
      'OUT_OF_RANGE outline.arcs.0.edge',
    ]);
    expect(arcs([{ edge: 'top', bulgeMiddleOrdinate: 1 }])).toEqual([
      'WRONG_TYPE outline.arcs.0.edge',
    ]);
    expect(arcs([{ bulgeMiddleOrdinate: 1 }])).toEqual(['REQUIRED outline.arcs.0.edge']);
    expect(arcs([{ edge: 0 }])).toEqual(['REQUIRED outline.arcs.0.bulgeMiddleOrdinate']);
    const twice = { edge: 0, bulgeMiddleOrdinate: 1 };
    expect(arcs([twice, twice])).toEqual(['DUPLICATE_ID outline.arcs.1.edge']);
    // an arc that bends in through the far edge
    expect(arcs([{ edge: 0, bulgeMiddleOrdinate: -11 }])).toEqual([
      'SELF_INTERSECTION outline.points',
    ]);
    const two: Pairs = [
      [0, 0],
      [4, 0],
    ];
    expect(arcs([{ edge: 0, bulgeMiddleOrdinate: 0 }], two)).toEqual(['TOO_FEW outline.points']);
    expect(
      arcs(
        [
          { edge: 0, bulgeMiddleOrdinate: 1 },
          { edge: 1, bulgeMiddleOrdinate: -1 },
        ],
        two,
      ),
    ).toEqual(['SELF_INTERSECTION outline.points']);
  });

  test('a bulge may carry its own unit, or that of the points', () => {
    const arcs = (bulgeMiddleOrdinate: unknown) =>
      outlineArea({ outline: feet(SQUARE, { arcs: [{ edge: 0, bulgeMiddleOrdinate }] }) }).area;
    expect(arcs(1).equals(arcs('12 in'))).toBe(true);
    expect(arcs('1').equals(arcs({ value: 304.8, unit: 'mm' }))).toBe(true);
    expect(arcs(0).to('ft2').toString()).toBe('100');
  });

  test('an infinite number of points, or distance', () => {
    const far = feet([
      [0, 0],
      [Number.POSITIVE_INFINITY, 0],
      [0, 1],
    ]);
    expectFault(() => outlineArea({ outline: far }), 'NOT_FINITE');
    const by = { value: Number.NaN, unit: 'm' } as const;
    expectFault(() => widenOutline({ outline: feet(SQUARE), by }), 'NOT_FINITE');
    expectFault(
      () => widenOutline({ outline: feet(SQUARE), by: '1 m', corners: 'sharp' as never }),
      'UNKNOWN_CHOICE',
    );
    const many = Array.from({ length: 1_000_000 }, (_, i): [number, number] => [i, i]);
    expectFault(() => outlineArea({ outline: feet(many) }), 'TOO_MANY');
    const holes = Array.from({ length: 5000 }, () => SQUARE);
    expectFault(() => outlineArea({ outline: feet(SQUARE, { holes }) }), 'TOO_MANY');
  });
});

test('the working names every distance', () => {
  const { working, area } = widenOutline({ outline: metres(SQUARE), by: '1 m' });
  expect(working[0]?.given.map(({ symbol }) => symbol)).toEqual(['A', 'd']);
  expect(working[0]?.given[1]?.value).toHaveLength(4);
  expect(working[0]?.result.value).toEqual(area);
});
