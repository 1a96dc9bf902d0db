import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { geotextile, type GeotextileOver } from 'settline/materials';
import { expectFault } from '../faults.js';
import { formulaFaults } from '../formulas/evaluate-step.js';
import { testRefusals } from '../refusals.js';
import { runs } from '../runs.js';

type Point = readonly [x: number, y: number];

const metres = (one: { to(unit: 'm'): { toString(): string } } | null | undefined) =>
  one?.to('m').toString();
const over = (points: readonly Point[], more: object = {}) =>
  geotextile({ outline: { unit: 'm', points }, rollWidth: '4 m', overlap: '0 m', ...more });
const lengths = ({ laid }: Pick<GeotextileOver, 'laid'>) =>
  laid.map(({ strip, length }) => `${strip}: ${metres(length)}`);

const ell: readonly Point[] = [
  [0, 0],
  [12, 0],
  [12, 2],
  [4, 2],
  [4, 9],
  [0, 9],
];

const degrees = ({ direction }: Pick<GeotextileOver, 'direction'>) =>
  direction.azimuth.to('deg').toString();

describe('strips over an outline', () => {
  test('an L: each strip as long as the outline is there, along the better way', () => {
    const fabric = over(ell, { rollWidth: '2 m' });
    // along the long edge: one of 12 m and four of 4 m, the last half off the dig
    expect(lengths(fabric.across)).toEqual(['1: 12', '2: 4', '3: 4', '4: 4', '5: 4']);
    expect(metres(fabric.across.totalLength)).toBe('28');
    expect(fabric.across.direction).toMatchObject({ edge: 1, isSquare: false });
    expect(degrees(fabric.across)).toBe('90');
    // square to it: four of 2 m over the arm, two of 9 m, nothing off the dig
    expect(lengths(fabric)).toEqual(['1: 2', '2: 2', '3: 2', '4: 2', '5: 9', '6: 9']);
    expect(fabric.direction).toMatchObject({ edge: 1, isSquare: true, firstOn: 'right' });
    expect(degrees(fabric)).toBe('0');
    expect(fabric.strips).toBe(6);
    expect(metres(fabric.stripLength)).toBe('9');
    expect(fabric.fabricArea.to('m2').toString()).toBe('52');
    expect(fabric.coveredArea.to('m2').toString()).toBe('52');
    expect(fabric.wasteShare).toBe(0);
    // the box round it would take 12 x 9 m
    const box = geotextile({ length: '12 m', width: '9 m', rollWidth: '2 m', overlap: '0 m' });
    expect(box.across.fabricArea.to('m2').toString()).toBe('108');
  });

  test('upturns at the ends, the sides and the inner corner', () => {
    const fabric = over(ell, { upturn: '300 mm' });
    // bands of 4 m from 0.3 m outside the long edge: the second begins at 3.7 m, clear of the arm
    expect(lengths(fabric)).toEqual(['1: 12.6', '2: 4.6', '3: 4.6']);
    expect(fabric.coveredArea.to('m2').toString()).toBe('64.96'); // 52 + 42 x 0.3 + 4 x 0.09
    // a roll of 2.2 m ends at 1.9 m: the second strip still has the upturn of the arm, up to 2.3 m
    const narrow = over(ell, { upturn: '300 mm', rollWidth: '2.2 m' });
    const along = [narrow, narrow.across].find(({ direction }) => !direction.isSquare);
    expect(along?.laid.slice(0, 3).map(({ length }) => metres(length))).toEqual([
      '12.6',
      '12.6',
      '4.6',
    ]);
  });

  test('a gap in the way of a strip: two pieces', () => {
    const horseshoe: readonly Point[] = [
      [0, 0],
      [10, 0],
      [10, 6],
      [7, 6],
      [7, 3],
      [3, 3],
      [3, 6],
      [0, 6],
    ];
    const fabric = over(horseshoe, { rollWidth: '3 m' });
    expect(lengths(fabric)).toEqual(['1: 10', '2: 3', '2: 3']);
    expect(fabric.strips).toBe(2);
    // upturns that meet in the gap make it one again
    expect(lengths(over(horseshoe, { rollWidth: '3.6 m', upturn: '1.9 m' }).across)).toHaveLength(
      4,
    );
    const wide = over(horseshoe, { rollWidth: '5 m', upturn: '2 m' });
    expect(lengths(wide)).toEqual(['1: 14', '2: 14']);
  });

  test('a triangle of 6, 8 and 10 m: along a short side, not the longest', () => {
    const fabric = over([
      [0, 0],
      [8, 0],
      [0, 6],
    ]);
    expect(lengths(fabric)).toEqual(['1: 3', '2: 6']); // 4 m bands from the point, along 6 m
    expect(fabric.across.laid.map(({ length }) => length.toNumber('m'))).toEqual([8, 8 / 3]);
    expect(fabric.direction).toMatchObject({ edge: 1, isSquare: true });
    expect(fabric.wasteShare).toBeCloseTo(0.5, 15);
  });

  test('holes are covered', () => {
    const outline = {
      unit: 'm',
      points: ell,
      holes: [
        [
          [1, 4],
          [2, 4],
          [2, 5],
          [1, 5],
        ],
      ],
    } as const;
    const holed = geotextile({ outline, rollWidth: '2 m', overlap: '0 m' });
    expect(lengths(holed)).toEqual(lengths(over(ell, { rollWidth: '2 m' })));
    expect(holed.coveredArea.to('m2').toString()).toBe('52');
  });

  test('strips of unlike length share rolls; longer ones are pieced', () => {
    const rolls = (rollLength: string, more = {}) => {
      const fabric = over(ell, { rollWidth: '2 m', rollLength, ...more });
      return [fabric.direction.isSquare, fabric.rolls, metres(fabric.surplus)];
    };
    // 9 + 2 + 2, 9 + 2 + 2
    expect(rolls('13 m')).toEqual([true, 2, '0']);
    // 9 + 2, 9 + 2, 2 + 2: as many rolls as 12, 4 + 4 + 4, 4 along the long edge, and less fabric
    expect(rolls('12 m')).toEqual([true, 3, '10']);
    // each of 9 m takes a roll and 3 m more: 6, 6, 3 + 2, 3 + 2, 2 + 2
    expect(rolls('6 m')).toEqual([true, 5, '4']);
    // with an end lap of 1 m each takes a roll and 4 m more
    const lapped = over(ell, { rollWidth: '2 m', rollLength: '6 m', endLap: '1 m' });
    expect([lapped.rolls, lapped.piecesPerStrip, metres(lapped.totalLength)]).toEqual([5, 2, '28']);
    expect(lapped.laid[4]).toMatchObject({ strip: 5, pieces: 2 });
    expect(metres(lapped.laid[4]?.cutLength)).toBe('10');
  });

  test('working adds up', () => {
    const { working, totalLength, laid } = over(ell, { rollWidth: '2 m' });
    expect(working).toHaveLength(1);
    expect(working[0]?.title).toBe('Fabric to cut, 6 strips square to edge 1');
    expect(working[0]?.given[0]?.value).toHaveLength(laid.length);
    expect(formulaFaults(working)).toEqual([]);
    expect(working[0]?.result.value).toBe(totalLength);
  });
});

describe('arcs', () => {
  const arc = (edge: number, bulgeMiddleOrdinate: number) => ({ edge, bulgeMiddleOrdinate });

  test('a circle: chords at the edge of each strip nearest the middle', () => {
    const outline = {
      unit: 'm',
      points: [
        [-3, 0],
        [3, 0],
      ],
      arcs: [arc(0, 3), arc(1, 3)],
    } as const;
    const fabric = geotextile({ outline, rollWidth: '2 m', overlap: '0 m' });
    const chord = 2 * Math.sqrt(8);
    expect(fabric.laid.map(({ length }) => length.toNumber('m'))).toEqual(
      [chord, 6, chord].map((one) => expect.closeTo(one, 12) as number),
    );
    expect(fabric.coveredArea.toNumber('m2')).toBeCloseTo(9 * Math.PI, 12);
    const turned = geotextile({
      outline: {
        unit: 'm',
        points: [
          [1, 1],
          [4, 5],
        ],
        arcs: [arc(0, 2.5), arc(1, 2.5)],
      },
      rollWidth: '2.5 m',
      overlap: '0 m',
    });
    expect(turned.laid.map(({ length }) => length.toNumber('m'))).toEqual(
      [5, 5].map((one) => expect.closeTo(one, 9) as number),
    );
  });

  test('ends that bulge: the arc counts, not its chord', () => {
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [10, 0],
        [10, 4],
        [0, 4],
      ],
      arcs: [arc(1, 2), arc(3, 2)],
    } as const;
    const fabric = geotextile({ outline, rollWidth: '4 m', overlap: '0 m' });
    expect(lengths(fabric)).toEqual(['1: 14']);
    expect(fabric.coveredArea.toNumber('m2')).toBeCloseTo(40 + 4 * Math.PI, 12);
  });

  test('one side bulges, one is hollow', () => {
    const outline = {
      unit: 'm',
      points: [
        [0, 0],
        [10, 0],
        [10, 4],
        [0, 4],
      ],
      arcs: [arc(0, 1), arc(2, -1)],
    } as const;
    const fabric = geotextile({ outline, rollWidth: '4 m', overlap: '0 m' });
    // radius 13: so deep at d from the middle
    const deep = (d: number) => Math.sqrt(169 - d * d) - 12;
    expect(fabric.direction).toMatchObject({ edge: 2, isSquare: false });
    expect(fabric.laid.map(({ length }) => length.toNumber('m'))).toEqual(
      [4 + deep(1), 5 - deep(3), 4 + deep(3) - deep(5)].map(
        (one) => expect.closeTo(one, 9) as number,
      ),
    );
  });

  test('more than half a circle, along and square to its chord', () => {
    // radius 5, chord of 6 m: the arc is 9 m high
    const outline = {
      unit: 'm',
      points: [
        [-3, 0],
        [3, 0],
      ],
      arcs: [arc(1, 9), arc(0, 1)],
    } as const;
    const fabric = geotextile({ outline, rollWidth: '5 m', overlap: '0 m' });
    expect(fabric.laid.map(({ length }) => length.toNumber('m'))).toEqual([
      expect.closeTo(10, 9) as number,
      expect.closeTo(10, 9) as number,
    ]);
    const flat = {
      unit: 'm',
      points: [
        [-3, 0],
        [3, 0],
      ],
      arcs: [arc(1, 9)],
    } as const;
    const { laid, direction } = geotextile({ outline: flat, rollWidth: '9 m', overlap: '0 m' });
    expect(direction.isSquare).toBe(false);
    expect(laid.map(({ length }) => length.toNumber('m'))).toEqual([
      expect.closeTo(10, 9) as number,
    ]);
  });
});

describe('a rectangle', () => {
  test('is laid as by its length and width, the better way, however it lies', () => {
    const size = fc.integer({ min: 20, max: 400 });
    fc.assert(
      fc.property(
        fc.tuple(size, size, fc.integer({ min: 10, max: 60 }), fc.integer({ min: 0, max: 9 })),
        fc.tuple(fc.integer({ min: 0, max: 5 }), fc.option(fc.integer({ min: 30, max: 500 }))),
        fc.boolean(),
        ([length, width, rollWidth, overlap], [upturn, rollLength], isTurned) => {
          const tenth = (value: number) => ({ value: value * 100, unit: 'mm' }) as const;
          const roll = {
            rollWidth: tenth(rollWidth),
            overlap: tenth(overlap),
            upturn: tenth(upturn),
            ...(rollLength === null ? {} : { rollLength: tenth(rollLength) }),
          };
          const box = geotextile({ length: tenth(length), width: tenth(width), ...roll });
          // a 3-4-5 angle keeps the corners exact, in fiftieths of a metre
          const turn = ([x, y]: Point): Point =>
            isTurned ? [4 * x - 3 * y, 3 * x + 4 * y] : [5 * x, 5 * y];
          const corners: readonly Point[] = [
            [0, 0],
            [length, 0],
            [length, width],
            [0, width],
          ];
          const points = corners.map(turn).map(([x, y]): Point => [x * 20, y * 20]);
          const fabric = geotextile({ outline: { unit: 'mm', points }, ...roll });
          // where both ways take as much, either is the better one
          const isAcross =
            box.better === 'same'
              ? fabric.strips === box.across.strips
              : box.better === 'along-width';
          const best = isAcross ? box.across : box;
          expect(fabric.strips).toBe(best.strips);
          expect(fabric.piecesPerStrip).toBe(best.piecesPerStrip);
          expect(fabric.rolls).toBe(best.rolls);
          expect(fabric.stripLength.equals(best.stripLength)).toBe(true);
          expect(fabric.totalLength.equals(best.totalLength)).toBe(true);
          expect(fabric.fabricArea.equals(best.fabricArea)).toBe(true);
          expect(fabric.coveredArea.equals(box.coveredArea)).toBe(true);
          expect(fabric.surplus?.toString()).toBe(best.surplus?.toString());
          expect(fabric.laid.every((one) => one.length.equals(best.stripLength))).toBe(true);
        },
      ),
      runs(40),
    );
  });
});

/** The same in floats: trapezoids between the levels where sides begin, end or meet the strip. */
function lengthsByTrapezoids(points: readonly Point[], azimuth: number, strip: Strip): number[] {
  const [c, d] = [Math.sin(azimuth), Math.cos(azimuth)];
  const side = strip.firstOn === 'right' ? 1 : -1;
  const seen = points.map(([x, y]): Point => [x * c + y * d, side * (c * y - d * x)]);
  const low = Math.min(...seen.map(([, y]) => y));
  const from = low - strip.upturn + strip.index * (strip.width - strip.overlap) - strip.upturn;
  const to = from + strip.width + 2 * strip.upturn;
  const levels = [from, to, ...seen.map(([, y]) => y).filter((y) => y > from && y < to)];
  levels.sort((a, b) => a - b);
  const tiny = 1e-9;
  const at = (level: number) =>
    seen
      .flatMap(([x1, y1], k) => {
        const [x2, y2] = seen[(k + 1) % seen.length] ?? [x1, y1];
        if (y1 > level === y2 > level) return [];
        return [x1 + ((x2 - x1) * (level - y1)) / (y2 - y1)];
      })
      .sort((a, b) => a - b);
  const stretches = levels.slice(1).flatMap((high, k) => {
    const below = levels[k] ?? high;
    if (high - below < 3 * tiny) return [];
    const [one, other] = [at(below + tiny), at(high - tiny)];
    return one.flatMap((x, n): Point[] => {
      if (n % 2 === 1) return [];
      const [x2, x3, x4] = [one[n + 1] ?? x, other[n] ?? x, other[n + 1] ?? x];
      return [[Math.min(x, x3) - strip.upturn, Math.max(x2, x4) + strip.upturn]];
    });
  });
  stretches.sort(([a], [b]) => a - b);
  const joined: [number, number][] = [];
  for (const [a, b] of stretches) {
    const last = joined.at(-1);
    if (last === undefined || a > last[1] + 1e-6) joined.push([a, b]);
    else last[1] = Math.max(last[1], b);
  }
  return joined.map(([a, b]) => b - a);
}

interface Strip {
  readonly index: number;
  readonly width: number;
  readonly overlap: number;
  readonly upturn: number;
  readonly firstOn: 'left' | 'right';
}

describe('laws on outlines of any shape', () => {
  /** A star round the origin, in hundredths of a metre. */
  const star = fc
    .array(fc.integer({ min: 150, max: 1500 }), { minLength: 3, maxLength: 9 })
    .map((radii) =>
      radii.map((radius, k): Point => {
        const angle = (2 * Math.PI * k) / radii.length;
        return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
      }),
    );
  const roll = fc.record({
    width: fc.integer({ min: 150, max: 500 }),
    overlap: fc.integer({ min: 0, max: 60 }),
    upturn: fc.integer({ min: 0, max: 50 }),
  });
  const laidOver = (
    points: readonly Point[],
    { width, overlap, upturn }: Record<'width' | 'overlap' | 'upturn', number>,
  ) =>
    geotextile({
      outline: { unit: 'cm', points },
      rollWidth: { value: width, unit: 'cm' },
      overlap: { value: overlap, unit: 'cm' },
      upturn: { value: upturn, unit: 'cm' },
    });

  test('every strip is as long as the outline in it, and no longer', () => {
    fc.assert(
      fc.property(star, roll, (points, one) => {
        const fabric = laidOver(points, one);
        for (const way of [fabric, fabric.across]) {
          const { azimuth, firstOn } = way.direction;
          for (let index = 0; index < way.strips; index += 1) {
            const own = way.laid.filter(({ strip }) => strip === index + 1);
            const expected = lengthsByTrapezoids(points, azimuth.toNumber('rad'), {
              index,
              firstOn,
              ...one,
            });
            const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
            expect(own.length).toBe(expected.length);
            expect(sum(own.map(({ length }) => length.toNumber('cm')))).toBeCloseTo(
              sum(expected),
              4,
            );
          }
        }
      }),
      runs(25),
    );
  });

  test('it covers the dig; no way that was tried takes less; the order of points does not matter', () => {
    fc.assert(
      fc.property(star, roll, (points, one) => {
        const fabric = laidOver(points, one);
        expect(fabric.totalLength.compare(fabric.across.totalLength)).toBeLessThanOrEqual(0);
        const bare = laidOver(points, { ...one, upturn: 0, overlap: 0 });
        expect(bare.wasteShare).toBeGreaterThanOrEqual(0);
        const back = laidOver([...points.slice(2), ...points.slice(0, 2)].reverse(), one);
        expect(back.totalLength.minus(fabric.totalLength).abs().toNumber('m')).toBeLessThan(1e-20);
        // every straight edge and its square, from either side, in floats
        const least = Math.min(
          ...points.flatMap(([x, y], k) => {
            const [x2, y2] = points[(k + 1) % points.length] ?? [x, y];
            return [Math.atan2(x2 - x, y2 - y), Math.atan2(x2 - x, y2 - y) + Math.PI / 2].flatMap(
              (azimuth) =>
                (['left', 'right'] as const).map((firstOn) =>
                  total(points, azimuth, { ...one, firstOn }),
                ),
            );
          }),
        );
        // of more edges the shortest are not tried
        if (points.length < 7) expect(fabric.totalLength.toNumber('cm')).toBeCloseTo(least, 3);
      }),
      runs(20),
    );
  });

  function total(points: readonly Point[], azimuth: number, strip: Omit<Strip, 'index'>): number {
    const across = points.map(([x, y]) => Math.sin(azimuth) * y - Math.cos(azimuth) * x);
    const width = Math.max(...across) - Math.min(...across) + 2 * strip.upturn;
    const strips =
      1 + Math.max(0, Math.ceil((width - strip.width - 1e-9) / (strip.width - strip.overlap)));
    return Array.from({ length: strips }, (_, index) =>
      lengthsByTrapezoids(points, azimuth, { ...strip, index }).reduce((a, b) => a + b, 0),
    ).reduce((a, b) => a + b, 0);
  }
});

describe('refusals', () => {
  const valid = {
    outline: { unit: 'm', points: ell },
    rollWidth: '4 m',
    overlap: '300 mm',
    rollLength: '50 m',
  };
  testRefusals(geotextile, valid, [
    ['length', '12 m', 'CONFLICTING_FIELDS', 'outline'],
    ['width', '9 m', 'CONFLICTING_FIELDS', 'outline'],
    ['outline', undefined, 'REQUIRED', ''],
    ['outline.points', ell.slice(0, 2), 'TOO_FEW'],
    ['overlap', '4 m', 'ROLL_NARROWER_THAN_OVERLAP'],
    ['endLap', '50 m', 'ROLL_NARROWER_THAN_OVERLAP'],
    ['rollWidth', '301 mm', 'CAPACITY_EXCEEDED', 'rollWidth'],
  ]);

  test('says what is missing', () => {
    const roll = { rollWidth: '4 m', overlap: '0 m' };
    const { message } = expectFault(() => geotextile(roll as never), 'REQUIRED');
    expect(message).toContain('Give the outline of the dig, or its length and width');
  });
});
