// Sloped sides of a dig, against frustums and wedges by pencil.
import { describe, expect, test } from 'vitest';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import type { Loose } from '../loose-job.js';
import { planFile } from '../plan-file.js';

// Layers of 1.2 m with a base of 1.1 m, which is also how far it goes past open edges; with 0.2 m to
// work in the bottom of the dig of a paving of 6 by 4 m is 8.6 by 6.6 m.
const planOf = (fields: Loose = {}, more: Loose = {}) =>
  planFile(
    levelSite(
      [
        pavementOn(rectangle(0, 0, 6, 4), {
          id: 'court',
          layers: layersOn('1.1 m'),
          ...fields,
        }),
      ],
      more,
    ),
  );
const courtOf = (...given: Parameters<typeof planOf>) =>
  planOf(...given).pavements[0] ?? expect.unreachable();
/** Volume of a frustum by its areas at the bottom, half way up and at the top. */
const prismoid = (bottom: number, middle: number, top: number, high: number) =>
  ((bottom + 4 * middle + top) * high) / 6;

describe('sloped all round', () => {
  const court = courtOf({ batter: 0.5 });

  test('the dig is a frustum', () => {
    expect(court.dig.depth.to('m').toString()).toBe('1.2');
    expect(court.areas.dig.to('m2').toString()).toBe('56.76'); // 8.6 x 6.6
    // 0.6 m out on each side at the top, 0.3 m half way up: 9.8 x 7.8 and 9.2 x 7.2
    const volume = prismoid(56.76, 9.2 * 7.2, 9.8 * 7.8, 1.2);
    expect(court.top?.area.to('m2').toString()).toBe('76.44');
    expect(court.earth.cut.volume.toNumber('m3')).toBeCloseTo(volume, 12);
    expect(court.earth.sides.toNumber('m3')).toBeCloseTo(volume - 56.76 * 1.2, 12);
  });

  test('the soil is hauled away, the stone stays that of the base', () => {
    const plan = planOf({ batter: 0.5 });
    expect(plan.totals.spoil?.bank.volume).toEqual(court.earth.cut.volume);
    expect(plan.totals.stones[0]?.compacted).toEqual(planOf().totals.stones[0]?.compacted);
    expect(plan.totals.digArea.to('m2').toString()).toBe('56.76');
  });

  test('the top of the dig can be painted', () => {
    expect(court.top?.points.map(({ x, y }) => [x.toNumber('m'), y.toNumber('m')])).toEqual([
      [-1.9, -1.9],
      [7.9, -1.9],
      [7.9, 5.9],
      [-1.9, 5.9],
    ]);
    expect(court.edges.map(({ top }) => top.to('m').toString())).toEqual([
      '1.9',
      '1.9',
      '1.9',
      '1.9',
    ]);
  });

  test('upright sides have no top of their own', () => {
    for (const batter of [0, '0']) {
      const upright = courtOf({ batter });
      expect(upright.top).toBeNull();
      expect(upright.earth.sides.isZero()).toBe(true);
      expect(upright.earth.cut.volume.to('m3').toString()).toBe('68.112'); // 56.76 x 1.2
    }
  });
});

describe('sloped along some edges', () => {
  test('one edge alone', () => {
    const one = courtOf({ edges: [{ along: 'open', batter: 1 }, 'open', 'open', 'open'] });
    // a wedge of 1.2 m by 1.2 m along the south side of the bottom, 8.6 m long
    expect(one.earth.sides.toNumber('m3')).toBeCloseTo((8.6 * 1.2 * 1.2) / 2, 12);
    expect(one.edges.map(({ top, dig }) => top.minus(dig).to('m').toString())).toEqual([
      '1.2',
      '0',
      '0',
      '0',
    ]);
  });

  test('an edge of its own slope beside those of the pavement', () => {
    const two = courtOf({
      batter: 0.5,
      edges: ['open', { along: 'open', batter: 1 }, 'open', 'open'],
    });
    // north to south 0.6 m on both sides, the east side 1.2 m out, the west side 0.6 m
    const at = (high: number) => (8.6 + 1.5 * high) * (6.6 + high);
    expect(two.earth.cut.volume.toNumber('m3')).toBeCloseTo(
      prismoid(at(0), at(0.6), at(1.2), 1.2),
      12,
    );
    expect(two.top?.area.toNumber('m2')).toBeCloseTo(at(1.2), 12);
  });

  test('an edge that is upright for itself', () => {
    const three = courtOf({
      batter: 1,
      edges: ['open', 'open', { along: 'open', batter: 0 }, 'open'],
    });
    const at = (high: number) => (8.6 + 2 * high) * (6.6 + high);
    expect(three.earth.cut.volume.toNumber('m3')).toBeCloseTo(
      prismoid(at(0), at(0.6), at(1.2), 1.2),
      12,
    );
  });

  test('what stays is never dug into, edges with nothing said are sloped like open ones', () => {
    const held = courtOf({ batter: 1, edges: ['building', 'restraint', null, 'adjoining'] });
    // the paving alone, 1.3 m out to the north: 6 by 5.3 m, and a wedge along 6 m
    expect(held.areas.dig.to('m2').toString()).toBe('31.8');
    expect(held.earth.sides.toNumber('m3')).toBeCloseTo((6 * 1.2 * 1.2) / 2, 12);
    expect(held.edges.map(({ top }) => top.to('m').toString())).toEqual(['0', '0', '2.5', '0']);
  });

  test('an edge that arcs', () => {
    // half a disc of 2 m on the east side of the paving, its dig 3.3 m and its top 4.5 m in radius
    const outline = {
      unit: 'm',
      points: rectangle(0, 0, 6, 4),
      arcs: [{ edge: 2, bulgeMiddleOrdinate: 2 }],
    };
    const bowed = courtOf({
      outline,
      edges: ['restraint', { along: 'open', batter: 1 }, 'restraint', 'restraint'],
    });
    // the arc leaves the edges north and south of it straight on, so they step out where it begins
    const halfDisc = (radius: number) => (Math.PI * radius ** 2) / 2;
    expect(bowed.areas.dig.toNumber('m2')).toBeCloseTo(24 + halfDisc(3.3), 9);
    expect(bowed.top?.area.toNumber('m2')).toBeCloseTo(24 + halfDisc(4.5), 9);
    // the half of a frustum of a cone beside 24 m2 by 1.2 m
    const cone = (Math.PI * 1.2 * (3.3 ** 2 + 3.3 * 4.5 + 4.5 ** 2)) / 3;
    expect(bowed.earth.cut.volume.toNumber('m3')).toBeCloseTo(28.8 + cone / 2, 9);
  });
});

describe('sloped sides beside another dig', () => {
  // layers of 0.4 m: base 0.3 m and dig 0.5 m beyond open edges; sides as far out as they are deep
  const site = (...pavements: ReturnType<typeof pavementOn>[]) => planFile(levelSite(pavements));
  const soil = (plan: ReturnType<typeof site>) => plan.totals.spoil?.bank.toNumber('m3');
  const bay = (box: Parameters<typeof rectangle>, id: string, fields: Loose = {}) =>
    pavementOn(rectangle(...box), { id, batter: 1, ...fields });

  test('two halves of a paving are dug like the whole', () => {
    const west = bay([0, 0, 6, 4], 'west', { edges: ['open', 'adjoining', 'open', 'open'] });
    const east = bay([6, 0, 12, 4], 'east', { edges: ['open', 'open', 'open', 'adjoining'] });
    // 13 by 5 m at the bottom, 13.8 by 5.8 m at the top
    const whole = prismoid(13 * 5, 13.4 * 5.4, 13.8 * 5.8, 0.4);
    expect(soil(site(west, east))).toBeCloseTo(whole, 9);
    expect(soil(site(bay([0, 0, 12, 4], 'both')))).toBeCloseTo(whole, 9);
  });

  test('digs that touch share the sides between them', () => {
    // the same bottoms, from -0.5 to 6.5 and on to 12.5 m
    const both = site(bay([0, 0, 6, 4], 'west'), bay([7, 0, 12, 4], 'east'));
    expect(soil(both)).toBeCloseTo(prismoid(13 * 5, 13.4 * 5.4, 13.8 * 5.8, 0.4), 9);
  });

  test('what two sides share is dug once', () => {
    // bottoms 0.4 m apart: each side goes 0.4 m out, so they cross from half way up
    const both = site(bay([0, 0, 6, 4], 'west'), bay([7.4, 0, 12.4, 4], 'east'));
    const alone = [7, 6].map((long) =>
      prismoid(long * 5, (long + 0.4) * 5.4, (long + 0.8) * 5.8, 0.4),
    );
    // shared at a height h: 2 h - 0.4 wide, 5 + 2 h long, from 0.2 to 0.4 m
    const shared = (high: number) => (2 * high - 0.4) * (5 + 2 * high);
    const twice = prismoid(shared(0.2), shared(0.3), shared(0.4), 0.2);
    expect(soil(both)).toBeCloseTo((alone[0] ?? 0) + (alone[1] ?? 0) - twice, 9);
  });

  test('a deep dig beside a shallow one', () => {
    // deep: 1.2 m, bottom from -1.3 m; its sides cut the shallow dig, whose bottom ends 0.2 m away
    const deep = bay([0, 0, 6, 4], 'deep', { layers: layersOn('1.1 m') });
    const shallow = pavementOn(rectangle(8, -6, 12, 10), { id: 'shallow' });
    const plan = site(deep, shallow);
    const [one, other] = plan.pavements;
    // at a height h above its bottom the deep dig reaches x = 7.3 + h, y from -1.3 - h to 5.3 + h
    const at = (high: number) => (8.6 + 2 * high) * (6.6 + 2 * high);
    // the shallow dig begins at x = 7.5 and goes 0.4 m down: h from 0.8 to 1.2 m
    const cutThere = (high: number) => (high - 0.2) * (6.6 + 2 * high);
    const alone = prismoid(at(0), at(0.6), at(1.2), 1.2);
    const there = prismoid(cutThere(0.8), cutThere(1), cutThere(1.2), 0.4);
    expect(one?.earth.cut.volume.toNumber('m3')).toBeCloseTo(alone - there, 9);
    expect(other?.earth.cut.volume.toNumber('m3')).toBeCloseTo(5 * 17 * 0.4, 9);
  });

  test('whatever the order of the pavements', () => {
    const parts = [bay([0, 0, 6, 4], 'west'), bay([7.4, 1, 12.4, 6], 'east')] as const;
    expect(site(parts[1], parts[0]).totals.spoil).toEqual(site(...parts).totals.spoil);
  });
});

test('sides are those of the mean depth where the ground is uneven', () => {
  // the ground rises from 0.4 m below finished grade to 0.4 m above it along the dig
  const level = (x: number) => (0.8 * (x - 3)) / 8.6;
  const corner = (x: number, y: number) => ({ x: `${x} m`, y: `${y} m`, elevation: '0 m' });
  const points = rectangle(-9, -9, 15, 13).map(([x, y]) => [x, y, level(x)]);
  const sloped = courtOf(
    { batter: 0.5, grade: { kind: 'plane', levels: [corner(0, 0), corner(6, 0), corner(0, 4)] } },
    { existingLevels: { unit: 'm', points } },
  );
  expect(sloped.dig.depth.toNumber('m')).toBeCloseTo(1.2, 9);
  const volume = prismoid(56.76, 9.2 * 7.2, 9.8 * 7.8, 1.2);
  expect(sloped.earth.sides.toNumber('m3')).toBeCloseTo(volume - 56.76 * 1.2, 8);
  expect(sloped.earth.cut.volume.toNumber('m3')).toBeCloseTo(volume, 8);
});

test('old paving is taken off soil, and sides stay whole', () => {
  const old = { material: 'concrete', thickness: '0.2 m', pavement: 'court' };
  const stripped = courtOf({ batter: 0.5 }, { oldPaving: [old] });
  const bare = courtOf({ batter: 0.5 });
  expect(stripped.earth.sides).toEqual(bare.earth.sides);
  expect(bare.earth.cut.volume.minus(stripped.earth.cut.volume).to('m3').toString()).toBe('11.352'); // 56.76 x 0.2
});

test('a dig that is filled has no sloped sides', () => {
  const filled = courtOf({ batter: 0.5, existingAboveFinish: '-1.5 m' });
  expect(filled.top).toBeNull();
  expect(filled.edges.map(({ top, dig }) => top.equals(dig))).not.toContain(false);
  expect(filled.earth.sides.isZero()).toBe(true);
  expect(filled.earth.fill.volume.to('m3').toString()).toBe('17.028'); // 56.76 x 0.3
});
