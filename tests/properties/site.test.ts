import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axleGroupLimit,
  checkAxleGroups,
  cuttingEdge,
  haulBalance,
  spoilLoads,
  spoilPile,
} from 'settline/haul';
import { excavationGates, handDig, locateWindow, oldPaving, rootZone } from 'settline/site';
import type { OutlineInput } from 'settline/outline';
import { area, length, max, sum, volume } from 'settline/units';
import { stateVolume } from 'settline/volumes';
import { positiveLength, SOME } from './arbitrary.js';
import { runs } from '../runs.js';

const FEW = runs(100);
const hundredths = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((k) => `${k}/100`);

describe('spoil loads', () => {
  test('cover the soil and exceed neither limit; one load fewer would not do', () => {
    fc.assert(
      fc.property(
        hundredths(1, 500),
        hundredths(1, 2),
        fc.integer({ min: 800, max: 2400 }),
        hundredths(0, 0.6),
        hundredths(1, 20),
        hundredths(1, 30),
        (bank, swell, dry, moisture, box, payload) => {
          const boxVolume = volume(box, 'm3');
          const spoil = spoilLoads({
            bank: stateVolume(volume(bank, 'm3'), 'bank'),
            loosePerBank: swell,
            bankDryDensity: { value: dry, unit: 'kg/m3' },
            moisture,
            boxVolume,
            payload: { value: payload, unit: 't' },
          });
          const { perLoad, lastLoad, loads } = spoil;
          expect(perLoad.volume.compare(boxVolume)).toBeLessThanOrEqual(0);
          expect(perLoad.mass.toNumber('t')).toBeLessThanOrEqual(
            Number(payload.split('/')[0]) / 100 + 1e-12,
          );
          const hauled = perLoad.volume.times(loads - 1).plus(lastLoad.volume);
          expect(hauled.toNumber('m3')).toBeCloseTo(spoil.loose.toNumber('m3'), 9);
          expect(lastLoad.volume.isNegative() || lastLoad.volume.isZero()).toBe(false);
          expect(loads).toBeGreaterThanOrEqual(Math.max(spoil.loadsByVolume, spoil.loadsByMass));
          expect(loads).toBe(Math.max(spoil.loadsByVolume, spoil.loadsByMass));
        },
      ),
      SOME,
    );
  });
});

describe('hand digging', () => {
  const lines = fc.array(
    fc.record({
      width: positiveLength(0.6),
      tolerance: positiveLength(1),
      offset: fc.integer({ min: -300, max: 300 }).map((cm) => length(cm, 'cm')),
    }),
    { minLength: 1, maxLength: 8 },
  );
  const dig = (list: typeof lines extends fc.Arbitrary<infer T> ? T : never, shift = '0 m') =>
    handDig({
      digWidth: '4 m',
      depth: '0.5 m',
      crossingAngle: '90 deg',
      lines: list.map((line, k) => ({
        ...line,
        id: `${k}`,
        offset: line.offset.plus(length(shift)),
      })),
    });

  test('the union is no more than the sum and no less than the largest zone', () => {
    fc.assert(
      fc.property(lines, (list) => {
        const union = dig(list).volume;
        const alone = list.map((line) => dig([line]).volume);
        expect(union.compare(sum(alone))).toBeLessThanOrEqual(0);
        expect(union.compare(max(alone))).toBeGreaterThanOrEqual(0);
      }),
      FEW,
    );
  });

  test('zones stand apart, in order, and hold every line once', () => {
    fc.assert(
      fc.property(lines, (list) => {
        const { zones } = dig(list);
        zones.forEach(({ from }, k) => {
          const before = zones[k - 1];
          if (before !== undefined) expect(from.compare(before.to)).toBe(1);
        });
        expect(zones.flatMap((zone) => zone.lines).sort()).toEqual(
          list.map((_, k) => `${k}`).sort(),
        );
      }),
      FEW,
    );
  });

  test('does not depend on where offsets are measured from, nor on the order of lines', () => {
    fc.assert(
      fc.property(lines, (list) => {
        const { volume: here } = dig(list);
        expect(dig(list, '123.456 m').volume.equals(here)).toBe(true);
        expect(dig([...list].reverse()).volume.equals(here)).toBe(true);
      }),
      FEW,
    );
  });

  const outline = {
    unit: 'm',
    points: [
      [0, 0],
      [9, 0],
      [9, 2],
      [4, 3],
      [8, 7],
      [0, 6],
    ],
  } as const;
  const drawn = fc.array(
    fc.record({
      path: fc.array(fc.tuple(fc.integer({ min: -3, max: 12 }), fc.integer({ min: -3, max: 10 })), {
        minLength: 2,
        maxLength: 4,
      }),
      reach: fc.integer({ min: 10, max: 150 }),
    }),
    { minLength: 1, maxLength: 4 },
  );
  type Drawn = readonly {
    readonly path: readonly (readonly [number, number])[];
    readonly reach: number;
  }[];
  const isDrawable = (list: Drawn) =>
    list.every(({ path }) =>
      path.every(([x, y], k) => {
        const before = path[k - 1];
        return before?.[0] !== x || before[1] !== y;
      }),
    );
  const inOutline = (list: Drawn, turn: (x: number, y: number) => readonly [number, number]) => {
    const metres = ([x, y]: readonly [number, number]) => {
      const [u, v] = turn(x, y);
      return { x: { value: u, unit: 'm' }, y: { value: v, unit: 'm' } } as const;
    };
    return handDig({
      outline: outline.points.map(([x, y]) => metres([x, y])),
      depth: '1 m',
      lines: list.map(({ path, reach }, k) => ({
        id: `${k}`,
        path: path.map(metres),
        width: '0 m',
        tolerance: { value: reach, unit: 'cm' },
      })),
    });
  };
  const same = (x: number, y: number) => [x, y] as const;

  test('in an outline: union between the largest zone and the sum, and within the dig', () => {
    fc.assert(
      fc.property(drawn.filter(isDrawable), (list) => {
        const { area: union, zones, digArea } = inOutline(list, same);
        const alone = zones.map((zone) => zone.area.toNumber('m2'));
        const all = union.toNumber('m2');
        expect(all).toBeLessThanOrEqual(alone.reduce((a, b) => a + b) + 1e-9);
        expect(all).toBeGreaterThanOrEqual(Math.max(...alone) - 1e-9);
        expect(all).toBeLessThanOrEqual(digArea.toNumber('m2') + 1e-9);
      }),
      FEW,
    );
  });

  test('in an outline: the same when the site is turned, shifted, or the lines are listed anew', () => {
    fc.assert(
      fc.property(drawn.filter(isDrawable), (list) => {
        const here = inOutline(list, same).area.toNumber('m2');
        const turned = inOutline(list, (x, y) => [3 - y, x + 500_000]).area.toNumber('m2');
        const anew = inOutline([...list].reverse(), same).area.toNumber('m2');
        expect(turned).toBeCloseTo(here, 9);
        expect(anew).toBeCloseTo(here, 9);
      }),
      runs(100),
    );
  });

  test('in an outline: a hole and its island make the whole', () => {
    const hole = [
      [1, 2],
      [3, 1],
      [4, 2],
      [3, 5],
      [2, 4],
    ] as const;
    const within = (list: Drawn, figure: OutlineInput) => {
      const lines = list.map(({ path, reach }, k) => ({
        id: `${k}`,
        path: path.map(([x, y]) => ({ x: length(x, 'm'), y: length(y, 'm') })),
        width: '0 m',
        tolerance: length(reach, 'cm'),
      }));
      return handDig({ outline: figure, depth: '1 m', lines }).area.toNumber('m2');
    };
    fc.assert(
      fc.property(drawn.filter(isDrawable), (list) => {
        const whole = within(list, outline);
        const island = within(list, { unit: 'm', points: hole });
        expect(within(list, { ...outline, holes: [hole] })).toBeCloseTo(whole - island, 9);
      }),
      FEW,
    );
  });

  test('in an outline: agrees with counting a fine grid of points', () => {
    fc.assert(
      fc.property(drawn.filter(isDrawable), (list) => {
        const exact = inOutline(list, same).area.toNumber('m2');
        expect(Math.abs(exact - countedArea(list))).toBeLessThan(1.2);
      }),
      runs(30),
    );
  });

  /** Area by points 0.1 m apart that lie in the outline and in any zone, by float arithmetic. */
  function countedArea(list: Drawn): number {
    const step = 0.1;
    let count = 0;
    for (let x = step / 2; x < 9; x += step) {
      for (let y = step / 2; y < 7; y += step) {
        if (isInside(x, y) && list.some((line) => isInZone(line, x, y))) count += 1;
      }
    }
    return count * step * step;
  }

  function isInside(x: number, y: number): boolean {
    let inside = false;
    outline.points.forEach(([ax, ay], k) => {
      const [bx, by] = outline.points[(k + 1) % outline.points.length] ?? [ax, ay];
      if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
    });
    return inside;
  }

  function isInZone({ path, reach }: Drawn[number], x: number, y: number): boolean {
    return path.slice(1).some(([bx, by], k) => {
      const [ax, ay] = path[k] ?? [bx, by];
      const [dx, dy] = [bx - ax, by - ay];
      const size = Math.hypot(dx, dy);
      const along = (dx * (x - ax) + dy * (y - ay)) / size;
      const off = Math.abs(dx * (y - ay) - dy * (x - ax)) / size;
      const r = reach / 100;
      return off <= r && along >= -r && along <= size + r;
    });
  }
});

describe('root zones', () => {
  const trunk = positiveLength(1.5);
  const factor = fc.integer({ min: 6, max: 24 });
  const offset = fc.integer({ min: -1500, max: 1500 }).map((k) => k / 1000);
  const share = (diameter: ReturnType<typeof length>, k: number, near: number, far?: number) => {
    const radius = diameter.times(k);
    const edge = (of: number) => radius.times(of);
    const dig = far === undefined ? { near: edge(near) } : { near: edge(near), far: edge(far) };
    const cut = rootZone({ trunkDiameter: diameter, rule: { radiusPerDiameter: k }, dig }).cut;
    return cut?.share ?? Number.NaN;
  };

  test('shares lie between 0 and 1 and shrink with the distance', () => {
    fc.assert(
      fc.property(trunk, factor, offset, offset, (diameter, k, a, b) => {
        const [near, further] = a < b ? [a, b] : [b, a];
        const [first, second] = [share(diameter, k, near), share(diameter, k, further)];
        expect(first).toBeGreaterThanOrEqual(second);
        expect(first).toBeLessThanOrEqual(1);
        expect(second).toBeGreaterThanOrEqual(0);
      }),
      FEW,
    );
  });

  test('both sides of a line make the whole zone, and its parts make a strip', () => {
    fc.assert(
      fc.property(trunk, factor, offset, offset, (diameter, k, a, b) => {
        expect(share(diameter, k, a) + share(diameter, k, -a)).toBeCloseTo(1, 14);
        fc.pre(a < b);
        const strip = share(diameter, k, a, b);
        expect(strip).toBeCloseTo(share(diameter, k, a) - share(diameter, k, b), 14);
      }),
      FEW,
    );
  });

  test('agrees with the closed form in floats, at any size', () => {
    fc.assert(
      fc.property(trunk, factor, offset, (diameter, k, x) => {
        const closed =
          x >= 1 ? 0 : x <= -1 ? 1 : (Math.acos(x) - x * Math.sqrt(1 - x * x)) / Math.PI;
        expect(share(diameter, k, x)).toBeCloseTo(closed, 12);
      }),
      FEW,
    );
  });
});

describe('root zones beside a drawn dig', () => {
  const corner = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }));
  // a star-shaped ring about (0, 0): one point in each direction, at any distance
  const star = fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 3, maxLength: 12 });
  const ringOf = (reaches: readonly number[]): [number, number][] =>
    reaches.map((reach, k) => {
      const turn = (2 * Math.PI * k) / reaches.length;
      return [Math.round(reach * 25 * Math.cos(turn)), Math.round(reach * 25 * Math.sin(turn))];
    });
  const cutOf = (
    points: readonly (readonly [number, number])[],
    [x, y]: [number, number],
    k = 12,
  ) =>
    rootZone({
      trunkDiameter: '100 cm',
      rule: { radiusPerDiameter: k },
      dig: {
        outline: { unit: 'cm', points },
        trunk: { x: { value: 25 * x, unit: 'cm' }, y: { value: 25 * y, unit: 'cm' } },
      },
    }).cut;

  test('two digs side by side cut what one cuts', () => {
    fc.assert(
      fc.property(corner, fc.integer({ min: -30, max: 30 }), (trunk, split) => {
        const box = (west: number, east: number) =>
          [
            [west, -1000],
            [east, -1000],
            [east, 1000],
            [west, 1000],
          ] as const;
        const share = (west: number, east: number) => cutOf(box(west, east), trunk)?.share ?? -1;
        const both = share(-1000, 25 * split) + share(25 * split, 1000);
        expect(both).toBeCloseTo(share(-1000, 1000), 10);
      }),
      FEW,
    );
  });

  test('lies between 0 and 1, agrees with counting points, and is nothing beyond the zone', () => {
    fc.assert(
      fc.property(star, corner, (reaches, trunk) => {
        const ring = ringOf(reaches);
        const cut = cutOf(ring, trunk);
        const share = cut?.share ?? -1;
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        const distance = cut?.distance.toNumber('m') ?? 0;
        if (distance >= 12) expect(share).toBe(0);
        if (distance < 11.99) expect(share).toBeGreaterThan(0);
        expect(Math.abs(share - countedShare(ring, trunk))).toBeLessThan(0.02);
      }),
      runs(100),
    );
  });

  /** Share of points 0.3 m apart in the circle of 12 m that lie in the ring. */
  function countedShare(ring: readonly (readonly [number, number])[], [x, y]: [number, number]) {
    let [inside, all] = [0, 0];
    for (let u = -1195; u < 1200; u += 30) {
      for (let v = -1195; v < 1200; v += 30) {
        if (u * u + v * v > 1_440_000) continue;
        all += 1;
        if (isInRing(ring, 25 * x + u + 0.3, 25 * y + v + 0.4)) inside += 1;
      }
    }
    return inside / all;
  }

  function isInRing(ring: readonly (readonly [number, number])[], x: number, y: number): boolean {
    let inside = false;
    ring.forEach(([ax, ay], k) => {
      const [bx, by] = ring[(k + 1) % ring.length] ?? [ax, ay];
      if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
    });
    return inside;
  }
});

describe('axle groups', () => {
  const gaps = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 8 });
  const vehicle = (inches: readonly number[], unit: 'in' | 'mm') => {
    let at = 0;
    const positions = [0, ...inches.map((gap) => (at += gap))];
    return positions.map((value, k) => ({
      id: `${k}`,
      position: { value: unit === 'in' ? `${value}` : `${value * 254}/10`, unit },
      load: { value: 5000 + 100 * k, unit: 'lb' },
    })) as Parameters<typeof checkAxleGroups>[0]['axles'];
  };

  test('every run of axles is there once; limits are in steps of 500 lb and near the formula', () => {
    fc.assert(
      fc.property(gaps, (inches) => {
        const axles = vehicle(inches, 'in');
        const { groups } = checkAxleGroups({ axles, caps: {} });
        expect(groups).toHaveLength((axles.length * (axles.length + 1)) / 2);
        for (const { axles: ids, formula, spread } of groups) {
          if (formula === null) continue;
          const pounds = formula.toNumber('lb');
          const [n, feet] = [ids.length, spread.toNumber('ft')];
          const exact = 500 * ((feet * n) / (n - 1) + 12 * n + 36);
          expect(pounds % 500).toBe(0);
          expect(Math.abs(pounds - exact)).toBeLessThanOrEqual(250 + 1e-9);
        }
      }),
      FEW,
    );
  });

  test('the same in millimetres; a longer spread never allows less', () => {
    fc.assert(
      fc.property(gaps, fc.integer({ min: 2, max: 9 }), positiveLength(30), (inches, n, more) => {
        const limits = (unit: 'in' | 'mm') =>
          checkAxleGroups({ axles: vehicle(inches, unit), caps: 'us-interstate' }).groups.map(
            ({ limit, limitedBy }) => `${limit?.to('lb').toString() ?? ''} ${limitedBy ?? ''}`,
          );
        expect(limits('mm')).toEqual(limits('in'));
        const spread = length('4 ft');
        const short = axleGroupLimit({ axles: n, spread }).limit;
        const long = axleGroupLimit({ axles: n, spread: spread.plus(more) }).limit;
        expect(long.compare(short)).toBeGreaterThanOrEqual(0);
      }),
      FEW,
    );
  });
});

describe('locate windows', () => {
  const WEEKEND = ['Saturday', 'Sunday'] as const;
  const dates = fc
    .date({ min: new Date('2020-01-01'), max: new Date('2060-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10));

  test('count so many working days, none of them off, and start on one', () => {
    fc.assert(
      fc.property(
        dates,
        fc.integer({ min: 1, max: 12 }),
        fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 5 }),
        fc.boolean(),
        (request, workingDays, off, requestDayCounts) => {
          const dayAfter = (days: number) =>
            new Date(Date.parse(request) + days * 86_400_000).toISOString().slice(0, 10);
          const holidays = off.map(dayAfter);
          const { notice, earliest, expires } = locateWindow({
            request,
            rule: {
              workingDays,
              requestDayCounts,
              start: 'working-day-after',
              weekend: WEEKEND,
              holidays,
              validity: { days: 14, count: 'calendar', from: 'start' },
            },
          });
          expect(notice).toHaveLength(workingDays);
          for (const day of [...notice, earliest]) {
            const weekday = new Date(day).getUTCDay();
            expect([1, 2, 3, 4, 5]).toContain(weekday);
            expect(holidays).not.toContain(day);
          }
          expect([...notice, earliest]).toEqual([...new Set([...notice, earliest])].sort());
          expect((notice[0] ?? '') >= request).toBe(true);
          expect(Date.parse(expires) - Date.parse(earliest)).toBe(14 * 86_400_000);
        },
      ),
      SOME,
    );
  });
});

describe('other laws', () => {
  test('a deeper dig leaves no gate behind but the one for shallow digs', () => {
    fc.assert(
      fc.property(positiveLength(8), positiveLength(4), (depth, more) => {
        const ids = (deep: typeof depth) =>
          excavationGates({ depth: deep, soil: 'B' }).gates.map(({ id }) => id);
        const deeper = ids(depth.plus(more));
        for (const id of ids(depth)) if (id !== 'no-system') expect(deeper).toContain(id);
      }),
      FEW,
    );
  });

  test('one truck more never moves less, and no fleet more than the machine loads', () => {
    fc.assert(
      fc.property(
        fc.tuple(hundredths(1, 10), hundredths(0, 30), hundredths(0, 9), hundredths(0, 30)),
        hundredths(1, 20),
        ([load, out, dump, back], truckLoad) => {
          const minutes = (value: string) => ({ value, unit: 'min' }) as const;
          const { fleets, machineMaximum, trucksNeeded } = haulBalance({
            loadTime: minutes(load),
            haulTime: minutes(out),
            dumpTime: minutes(dump),
            returnTime: minutes(back),
            truckLoad: { value: truckLoad, unit: 'm3' },
            trucks: Array.from({ length: 100 }, (_, k) => k + 1),
          });
          fleets.forEach(({ output, limitedBy }, k) => {
            expect(output.compare(machineMaximum)).toBeLessThanOrEqual(0);
            const before = fleets[k - 1];
            if (before !== undefined)
              expect(output.compare(before.output)).toBeGreaterThanOrEqual(0);
            expect(limitedBy === 'trucks').toBe(k + 1 < trucksNeeded);
          });
        },
      ),
      runs(60),
    );
  });

  test('a heap holds what was put on it', () => {
    fc.assert(
      fc.property(
        hundredths(1, 60),
        fc.integer({ min: 15, max: 60 }),
        hundredths(1, 8),
        fc.boolean(),
        (cubic, degrees, width, asRidge) => {
          const {
            shape,
            height,
            width: w,
            length: l,
          } = spoilPile({
            volume: stateVolume(volume(cubic, 'm3'), 'loose'),
            reposeAngle: { value: degrees, unit: 'deg' },
            setBack: '2 ft',
            ...(asRidge ? { ridgeWidth: { value: width, unit: 'm' } as const } : {}),
          });
          const [h, b, whole] = [height.toNumber('m'), w.toNumber('m'), l.toNumber('m')];
          const held = (Math.PI * (b / 2) ** 2 * h) / 3 + ((whole - b) * b * h) / 2;
          expect(held / (Number(cubic.split('/')[0]) / 100)).toBeCloseTo(1, 10);
          expect(h / (b / 2)).toBeCloseTo(Math.tan((degrees * Math.PI) / 180), 10);
          if (shape === 'cone') expect(whole).toBe(b);
        },
      ),
      FEW,
    );
  });

  test('the masses of layers add up, in any unit', () => {
    fc.assert(
      fc.property(positiveLength(0.4), positiveLength(0.4), (top, bottom) => {
        const layer = (material: string, thickness: typeof top) =>
          ({ material, area: area('12 m2'), thickness }) as const;
        const both = oldPaving({ layers: [layer('asphalt', top), layer('concrete', bottom)] });
        const apart = [layer('asphalt', top), layer('concrete', bottom)].map(
          (one) => oldPaving({ layers: [one] }).mass,
        );
        expect(both.mass.equals(sum(apart))).toBe(true);
        const inFeet = oldPaving({
          layers: [
            { ...layer('asphalt', top), area: { value: area('12 m2').to('ft2'), unit: 'ft2' } },
          ],
        });
        expect(inFeet.mass.toNumber('kg')).toBeCloseTo(apart[0]?.toNumber('kg') ?? 0, 9);
      }),
      FEW,
    );
  });

  test('tyres that all stand lower by one amount lower the whole edge by it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 90 }), positiveLength(3), (lower, reach) => {
        const wheel = { value: 400 - lower, unit: 'mm' } as const;
        const edge = cuttingEdge({
          loadedRadius: { frontLeft: wheel, frontRight: wheel, rearLeft: wheel, rearRight: wheel },
          fullRadius: '400 mm',
          wheelbase: '1.1 m',
          track: '1.3 m',
          reach,
          edgeWidth: '1.7 m',
        });
        for (const end of [edge.left, edge.middle, edge.right]) {
          expect(end.to('mm').toString()).toBe(`${-lower}`);
        }
      }),
      FEW,
    );
  });
});
