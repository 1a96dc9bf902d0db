import { describe, expect, test } from 'vitest';
import { rootZone } from 'settline/site';
import type { OutlineInput } from 'settline/outline';
import { testRefusals } from '../refusals.js';

describe('root zone', () => {
  const tree = { trunkDiameter: '12 in', rule: { radiusPerDiameter: 12 } } as const;
  const cut = (near: string, far?: string) =>
    rootZone({ ...tree, dig: far === undefined ? { near } : { near, far } }).cut;

  test('radius by the rule, and no less than the least', () => {
    expect(rootZone(tree).radius.to('ft').toString()).toBe('12');
    expect(rootZone(tree).closestTrench.to('ft').toString()).toBe('3');
    expect(rootZone(tree).area.toNumber('ft2')).toBeCloseTo(144 * Math.PI, 10);
    const least = rootZone({ ...tree, rule: { radiusPerDiameter: 1, minimumRadius: '6 ft' } });
    expect(least.radius.to('ft').toString()).toBe('6');
    expect(least.cut).toBeNull();
  });

  test('a line through the trunk cuts a half, one past the zone nothing, one behind it all', () => {
    expect(cut('0 ft')?.share).toBe(0.5);
    expect(cut('12 ft')?.share).toBe(0);
    expect(cut('13 ft')?.area.isZero()).toBe(true);
    expect(cut('-12 ft')?.share).toBe(1);
    expect(cut('-30 ft')?.share).toBe(1);
  });

  test('a strip is the difference of its edges', () => {
    expect(cut('-1 ft', '1 ft')?.share).toBeCloseTo(
      (cut('-1 ft')?.share ?? 0) - (cut('1 ft')?.share ?? 0),
      15,
    );
    expect(cut('-30 ft', '30 ft')?.share).toBe(1);
    expect(cut('20 ft', '30 ft')?.share).toBe(0);
  });

  test('distance to the trunk, and three diameters', () => {
    expect(cut('4 ft')?.distance.to('ft').toString()).toBe('4');
    expect(cut('4 ft')?.diameters).toBe(4);
    expect(cut('-2 ft', '1 ft')?.distance.isZero()).toBe(true);
    expect(cut('-9 ft', '-5 ft')?.distance.to('ft').toString()).toBe('5');
    expect(cut('-9 ft')?.distance.isZero()).toBe(true);
    const reached = (near: string) => cut(near)?.marks.map((mark) => mark.isReached);
    expect(reached('3 ft')).toEqual([true, false]);
    expect(reached('2.9999 ft')).toEqual([true, true]);
    expect(reached('6 ft')).toEqual([false, false]);
  });

  test('the mark at a quarter: just past it, and just before', () => {
    // a line at 0.40397 R cuts a quarter
    expect(cut('4.8477 ft')?.share).toBeLessThan(0.25);
    expect(cut('4.8477 ft')?.marks[0]?.isReached).toBe(false);
    expect(cut('4.8476 ft')?.share).toBeGreaterThan(0.25);
    expect(cut('4.8476 ft')?.marks[0]?.isReached).toBe(true);
  });

  test('what to do', () => {
    const note = (near?: string) =>
      rootZone({ ...tree, ...(near === undefined ? {} : { dig: { near } }) }).note;
    expect(note()).toMatch(/^Fence off the root zone/);
    expect(note('1 ft')).toMatch(/^Stop\. .* arborist/);
    expect(note('8 ft')).toMatch(/Ask an arborist/);
    expect(note('12 ft')).toMatch(/stays out of the zone/);
  });

  testRefusals(rootZone, { ...tree, dig: { near: '5 ft', far: '9 ft' } }, [
    ['trunkDiameter', 12, 'UNIT_MISSING'],
    ['trunkDiameter', '0 in', 'NOT_POSITIVE'],
    ['trunkDiameter', '21 m', 'OUT_OF_RANGE'],
    ['rule', undefined, 'REQUIRED'],
    ['rule.radiusPerDiameter', undefined, 'REQUIRED'],
    ['rule.radiusPerDiameter', 0.5, 'OUT_OF_RANGE'],
    ['rule.radiusPerDiameter', 50, 'OUT_OF_RANGE'],
    ['rule.minimumRadius', '0 ft', 'NOT_POSITIVE'],
    ['dig.near', undefined, 'REQUIRED'],
    ['dig.far', '5 ft', 'NOT_INCREASING'],
    ['dig.trunk', { x: '1 m', y: '1 m' }, 'CONFLICTING_FIELDS'],
  ]);
});

describe('root zone beside a drawn dig', () => {
  const strip = {
    unit: 'ft',
    points: [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ],
  } as const;
  const tree = { trunkDiameter: '12 in', rule: { radiusPerDiameter: 12 } } as const;
  const cut = (x: string, y: string, outline: OutlineInput = strip) =>
    rootZone({ ...tree, dig: { outline, trunk: { x, y } } }).cut;

  test('a long edge cuts what a straight line cuts', () => {
    const straight = rootZone({ ...tree, dig: { near: '5 ft' } }).cut;
    const drawn = cut('50 ft', '-5 ft');
    expect(drawn?.share).toBeCloseTo(straight?.share ?? 0, 11);
    expect(drawn?.distance.to('ft').toString()).toBe('5');
    expect(drawn?.diameters).toBe(5);
    expect(drawn?.area.toNumber('ft2')).toBeCloseTo(straight?.area.toNumber('ft2') ?? 0, 8);
  });

  test('at a corner a quarter, and only outside of it near', () => {
    expect(cut('0 ft', '0 ft')?.share).toBe(0.25);
    expect(cut('0 ft', '0 ft')?.marks[0]?.isReached).toBe(false);
    expect(cut('0 ft', '0 ft')?.distance.isZero()).toBe(true);
    // 3-4-5 beside the corner
    const near = cut('-3 ft', '-4 ft');
    expect(near?.distance.to('ft').toString()).toBe('5');
    // of the circle of 12 ft: the corner region x > 3, y > 4, by integrating sqrt(144 - x^2) - 4
    const [a, b] = [3, Math.sqrt(128)];
    const under = (x: number) => (x * Math.sqrt(144 - x * x) + 144 * Math.asin(x / 12)) / 2;
    expect(near?.share).toBeCloseTo((under(b) - under(a) - 4 * (b - a)) / (144 * Math.PI), 11);
  });

  test('a trunk in the dig, and past its zone', () => {
    expect(cut('50 ft', '50 ft')?.share).toBe(1);
    expect(cut('50 ft', '50 ft')?.distance.isZero()).toBe(true);
    expect(cut('50 ft', '-12 ft')?.share).toBe(0);
    expect(cut('50 ft', '-12 ft')?.area.isZero()).toBe(true);
    expect(cut('50 ft', '-99 ft')?.share).toBe(0);
    expect(cut('-9 ft', '-9 ft')?.share).toBe(0);
    const beside = rootZone({
      ...tree,
      dig: { outline: strip, trunk: { x: '0 ft', y: '-12 ft' } },
    });
    expect(beside.note).toMatch(/stays out of the zone/);
  });

  test('a tree in an island: only what lies round the island is cut', () => {
    const island = [
      [40, 40],
      [60, 40],
      [60, 60],
      [40, 60],
    ] as const;
    const drawn = cut('50 ft', '50 ft', { ...strip, holes: [island] });
    expect(drawn?.distance.to('ft').toString()).toBe('10');
    // four segments of the circle beyond lines at 10 ft
    const segment = rootZone({ ...tree, dig: { near: '10 ft' } }).cut?.share ?? 0;
    expect(drawn?.share).toBeCloseTo(4 * segment, 11);
  });

  test('an edge that is an arc about the trunk', () => {
    const outline = {
      unit: 'ft',
      points: [
        [-6, 0],
        [6, 0],
        [50, 0],
        [50, 50],
        [-50, 50],
        [-50, 0],
      ],
      arcs: [{ edge: 0, bulgeMiddleOrdinate: -6 }],
    } as const;
    const drawn = cut('0 ft', '0 ft', outline);
    // half the zone less a half circle of 6 ft
    expect(drawn?.share).toBeCloseTo(0.5 - 0.125, 5);
    expect(drawn?.distance.toNumber('ft')).toBeCloseTo(6, 4);
  });

  test('three diameters exactly are kept, by a slanted edge too', () => {
    const slanted = {
      unit: 'ft',
      points: [
        [0, 5],
        [4, 2],
        [40, 40],
      ],
    } as const;
    // the foot of the trunk lies 4 ft from the line 3 x + 4 y = 20
    expect(cut('0 ft', '0 ft', slanted)?.distance.to('ft').toString()).toBe('4');
    const tight = (diameter: string) =>
      rootZone({
        trunkDiameter: diameter,
        rule: { radiusPerDiameter: 12 },
        dig: { outline: slanted, trunk: { x: '0 ft', y: '0 ft' } },
      }).cut?.marks[1]?.isReached;
    expect(tight('16 in')).toBe(false);
    expect(tight('16.001 in')).toBe(true);
  });

  testRefusals(rootZone, { ...tree, dig: { outline: strip, trunk: { x: '0 ft', y: '-5 ft' } } }, [
    [
      'dig.outline',
      {
        unit: 'ft',
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      'TOO_FEW',
      'dig.outline.points',
    ],
    ['dig.outline', undefined, 'REQUIRED', 'dig.near'],
    ['dig.near', '5 ft', 'CONFLICTING_FIELDS'],
    ['dig.far', '5 ft', 'CONFLICTING_FIELDS'],
    ['dig.trunk', undefined, 'REQUIRED'],
    ['dig.trunk.x', 4, 'UNIT_MISSING'],
    ['dig.trunk.y', '11 km', 'OUT_OF_RANGE', 'dig.trunk'],
  ]);
});
