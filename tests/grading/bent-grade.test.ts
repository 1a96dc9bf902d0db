import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bentGrade, gradeLine } from 'settline/grading';
import { expectFault } from '../faults.js';
import { testRefusals } from '../refusals.js';
import { runs } from '../runs.js';

type Level = readonly [x: number, y: number, elevation: number];

const line = (levels: readonly Level[], more: object = {}) =>
  bentGrade({ levels: levels.map(([x, y, z]) => metric(x, y, z)), ...more });
const metric = (x: number, y: number, z: number) => ({
  ...place(x, y),
  elevation: { value: z, unit: 'm' } as const,
});
const place = (x: number, y: number) => ({
  x: { value: x, unit: 'm' } as const,
  y: { value: y, unit: 'm' } as const,
});
const metres = (one: { to(unit: 'm'): { toString(): string } } | null | undefined) =>
  one?.to('m').toString() ?? null;

/** 2% down, a right angle to the left, 2% down. */
const ell: readonly Level[] = [
  [0, 0, 30],
  [10, 0, 29.8],
  [10, 8, 29.64],
];

describe('a line of levels round a right angle', () => {
  const walk = line(ell, { crossSlope: '1%', halfWidth: '1.5 m' });
  const z = (x: number, y: number) => metres(walk.elevationAt(place(x, y)));

  test('runs through its levels, and rises by the cross slope to the left', () => {
    expect(ell.map(([x, y]) => z(x, y))).toEqual(['30', '29.8', '29.64']);
    expect(z(0, 1)).toBe('30.01');
    expect(z(5, 0)).toBe('29.9');
    expect(z(9, 8)).toBe('29.65');
    expect(z(11, 8)).toBe('29.63');
  });

  test('level along the mitre but for the cross slope, on both sides', () => {
    // on the mitre the offset from both legs is the same
    expect(z(8.5, 1.5)).toBe('29.815');
    expect(z(11.5, -1.5)).toBe('29.785');
    // beside it: half of the 8.5 m along the left edge is half of the rise
    expect(z(4.25, 1.5)).toBe('29.915');
    // the right edge of the second leg is 8 + 1.5 m long
    expect(z(11.5, 3.25)).toBe('29.705'); // 29.8 - 0.08 - 0.015
  });

  test('the step that planes would have, and the grades of the edges', () => {
    expect(metres(walk.step)).toBe('0.06'); // (2% + 2%) x tan 45 x 1.5 m
    expect(walk.bends).toHaveLength(1);
    expect(walk.bends[0]).toMatchObject({ level: 1, name: null });
    expect(walk.bends[0]?.turn.to('deg').toFixed(12)).toBe('90.000000000000');
    const [first, second] = walk.legs;
    expect(first?.leftGrade?.toNumber('ratio')).toBeCloseTo(-0.2 / 8.5, 15);
    expect(first?.rightGrade?.toNumber('ratio')).toBeCloseTo(-0.2 / 11.5, 15);
    expect(second?.leftGrade?.toNumber('ratio')).toBeCloseTo(-0.16 / 6.5, 15);
    expect(walk.steepest.toNumber('ratio')).toBeCloseTo(0.16 / 6.5, 15);
    expect(walk.flattest.toNumber('ratio')).toBeCloseTo(0.16 / 9.5, 15);
    expect(walk.notes[0]).toContain('Set a stake on each mitre line');
  });

  test('how far it reaches, and what is beyond', () => {
    expect([metres(walk.reach.left), walk.reach.right]).toEqual(['8', null]);
    expect(walk.at(place(2.1, 7.9)).isBeyondReach).toBe(false);
    expect(walk.at(place(1.5, 8.5))).toMatchObject({ isBeyondReach: false, leg: 0 });
    // of the second leg nothing is left 8 m inside the bend
    expect(walk.at(place(1.9, 8.4)).isBeyondReach).toBe(true);
    // the nearest leg carried on: 0.4 m at 2% beyond its end, 8.1 m to the left
    expect(z(1.9, 8.4)).toBe('29.713'); // 29.64 - 0.008 + 0.081
  });

  test('carried on beyond its ends at the end grade', () => {
    expect(walk.at(place(-2, 1))).toMatchObject({ leg: 0, extrapolated: true });
    expect(z(-2, 1)).toBe('30.05');
    expect(walk.at(place(9, 9))).toMatchObject({ leg: 1, extrapolated: true });
    expect(z(9, 9)).toBe('29.63');
    expect(walk.at(place(5, 1))).toMatchObject({ leg: 0, extrapolated: false });
    expect(metres(walk.at(place(11, 4)).offset)).toBe('-1');
  });

  test('working', () => {
    expect(walk.working.map(({ result }) => result.symbol)).toEqual(['g', 'g', 'e']);
    expect(walk.working[2]?.result.value).toBe(walk.bends[0]?.step);
  });
});

describe('which bends would step', () => {
  const step = (levels: readonly Level[], more = {}) =>
    metres(line(levels, { halfWidth: '2 m', ...more }).step);

  test('not a level line with a cross slope, nor a rise that turns into the same fall', () => {
    const level = ell.map(([x, y]): Level => [x, y, 30]);
    expect(step(level, { crossSlope: '2%' })).toBe('0');
    expect(line(level, { crossSlope: '2%' }).reach).toEqual({ left: null, right: null });
    const crest: readonly Level[] = [
      [0, 0, 29.8],
      [10, 0, 30],
      [10, 10, 29.8],
    ];
    expect(step(crest)).toBe('0');
    expect(step(ell)).toBe('0.08');
    expect(line(ell).step).toBeNull();
  });

  test('a straight line has no bend, and is the grade line', () => {
    const levels: readonly Level[] = [
      [0, 0, 30],
      [6, 8, 29.8],
      [9, 12, 29.9],
    ];
    const straight = line(levels, { crossSlope: '-2%', halfWidth: '3 m' });
    expect([straight.bends, straight.notes, metres(straight.step)]).toEqual([[], [], '0']);
    const along = gradeLine({
      points: [0, 10, 15].map((station, k) => ({
        station: { value: station, unit: 'm' } as const,
        elevation: { value: levels[k]?.[2] ?? 0, unit: 'm' } as const,
      })),
    });
    for (const station of [-5, 0, 2.5, 10, 12.5, 20]) {
      const at = straight.elevationAt(place(station * 0.6 - 0.8, station * 0.8 + 0.6));
      const expected = along.elevationAt({ value: station, unit: 'm' }).toNumber('m') - 0.02;
      expect(at.toNumber('m')).toBeCloseTo(expected, 12);
    }
  });
});

describe('laws', () => {
  const level = fc.tuple(fc.integer({ min: 6, max: 20 }), fc.integer({ min: -100, max: 100 }));
  const turns = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 4 });

  test('both sides of a mitre are at one elevation; turned round, the surface is the same', () => {
    fc.assert(
      fc.property(
        turns,
        fc.array(level, { minLength: 5, maxLength: 5 }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.integer({ min: -4, max: 4 }),
        (angles, sizes, offset, percent) => {
          let [x, y, way] = [0, 0, 0];
          const levels: Level[] = [[0, 0, 30]];
          const ways: number[] = [];
          for (const [k, turn] of [0, ...angles].entries()) {
            way += (turn * Math.PI) / 180;
            ways.push(way);
            x += (sizes[k]?.[0] ?? 6) * Math.cos(way);
            y += (sizes[k]?.[0] ?? 6) * Math.sin(way);
            levels.push([x, y, 30 + (sizes[k]?.[1] ?? 0) / 100]);
          }
          const more = { crossSlope: `${percent}%` };
          const bent = line(levels, more);
          const back = line([...levels].reverse(), { crossSlope: `${-percent}%` });
          angles.forEach((turn, k) => {
            const [px, py, pz] = levels[k + 1] ?? [0, 0, 0];
            const across = (ways[k] ?? 0) + (turn * Math.PI) / 360 + Math.PI / 2;
            const far = offset / Math.cos((turn * Math.PI) / 360);
            const [mx, my] = [px + far * Math.cos(across), py + far * Math.sin(across)];
            const tiny = 1e-7;
            const both = [-tiny, tiny].map((by) => {
              const at = place(mx + by * Math.sin(across), my - by * Math.cos(across));
              return [bent.at(at), back.at(at)] as const;
            });
            // the line may come near itself: then the place is another leg's
            const own = both.map(([one]) => one.leg);
            if (own[0] !== k || own[1] !== k + 1) return;
            for (const [one, other] of both) {
              expect(one.isBeyondReach).toBe(false);
              expect(one.elevation.toNumber('m')).toBeCloseTo(pz + (percent / 100) * offset, 6);
              expect(other.elevation.minus(one.elevation).abs().toNumber('m')).toBeLessThan(1e-20);
            }
          });
        },
      ),
      runs(60),
    );
  });

  test('inside its reach the surface never steps', () => {
    // a walk with three bends, crossed by rows of close places
    const levels: readonly Level[] = [
      [0, 0, 30],
      [9, 0, 29.7],
      [9, 7, 29.8],
      [16, 9, 29.5],
    ];
    const bent = line(levels, { crossSlope: '2%' });
    let places = 0;
    for (let x = 0; x <= 16; x += 0.5) {
      for (let y = -2; y <= 10; y += 0.5) {
        const one = bent.at(place(x + 0.013, y + 0.017));
        if (Math.abs(one.offset.toNumber('m')) > 2.5) continue;
        const other = bent.at(place(x + 0.014, y + 0.017));
        places += 1;
        // 1 mm on: no grade here is steeper than 1 in 5
        const rise = other.elevation.minus(one.elevation).abs().toNumber('mm');
        expect([one.isBeyondReach, rise < 0.2]).toEqual([false, true]);
      }
    }
    expect(places).toBeGreaterThan(200);
  });
});

describe('refusals', () => {
  const levels = ell.map(([x, y, z]) => metric(x, y, z));

  testRefusals(bentGrade, { levels, crossSlope: '1%', halfWidth: '2 m' }, [
    ['levels', levels.slice(0, 1), 'TOO_FEW'],
    ['levels.1', levels[0], 'POINTS_COINCIDE'],
    ['levels.2', metric(4, 0, 29), 'SELF_INTERSECTION', 'levels[1]'],
    ['levels.0.elevation', '11 km', 'OUT_OF_RANGE'],
    ['crossSlope', '101%', 'OUT_OF_RANGE'],
    ['halfWidth', '8 m', 'BEND_TOO_TIGHT'],
    ['halfWidth', '0 m', 'NOT_POSITIVE'],
  ]);

  test('a level twice is told without a number', () => {
    const twice = levels.map((level, k) => (k === 2 ? (levels[1] ?? level) : level));
    const { message, params } = expectFault(() => bentGrade({ levels: twice }), 'POINTS_COINCIDE');
    expect(message).toBe('is the same point as the one before it. Remove one of them');
    expect(params['earlier']).toBe(1);
  });

  test('names the leg that has nothing left', () => {
    const { message, params } = expectFault(
      () => bentGrade({ levels, halfWidth: '9 m' }),
      'BEND_TOO_TIGHT',
    );
    expect(message).toContain(
      'nothing is left of the leg from level 1 to level 2 on the inside of its bend (the first level is level 0)',
    );
    expect(params['leg']).toBe(1);
    expect(() => bentGrade({ levels, halfWidth: '7.99 m' })).not.toThrow();
  });
});
