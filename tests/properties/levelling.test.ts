import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildUp } from 'settline/build-up';
import {
  closeBenchmark,
  curvatureRefraction,
  cutFill,
  errorBudget,
  laserReversal,
  reduceLevels,
  rodTargets,
  rodTilt,
  spreadMisclosure,
  twoPegTest,
  type LevelBook,
  type LevelRowInput,
} from 'settline/levelling';
import { isQuantity, length, type Length } from 'settline/units';
import { runs } from '../runs.js';

/** Whole books and days: a few hundred of each. */
const FEW = runs(100);

/** A rod reading: whole tenths of a millimetre, or 64ths of an inch, or thirds. */
const reading: fc.Arbitrary<Length> = fc.oneof(
  fc.integer({ min: 0, max: 50_000 }).map((tenths) => length(`${tenths}/10`, 'mm')),
  fc.integer({ min: 0, max: 12_000 }).map((parts) => length(`${parts}/64`, 'in')),
  fc.integer({ min: 0, max: 1_500 }).map((thirds) => length(`${thirds}/3`, 'in')),
);
const elevation: fc.Arbitrary<Length> = fc
  .integer({ min: -500_000, max: 9_000_000 })
  .map((mm) => length(mm, 'mm'));

/** A book of one to six set-ups, closed with a foresight; distances grow by whole metres. */
const book: fc.Arbitrary<LevelRowInput[]> = fc
  .array(
    fc.record({
      back: reading,
      between: fc.array(reading, { maxLength: 3 }),
      fore: reading,
      step: fc.integer({ min: 1, max: 90 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((setUps) => {
    const rows: LevelRowInput[] = [];
    let along = 0;
    setUps.forEach(({ back, between, fore, step }, k) => {
      const start = rows.at(-1);
      if (start === undefined) rows.push({ point: 'BM', back, distance: '0 m' });
      else rows[rows.length - 1] = { ...start, back };
      between.forEach((intermediate, i) => {
        rows.push({ point: `P${k}.${i}`, intermediate, distance: `${along} m` });
      });
      along += step;
      rows.push({ point: `T${k}`, fore, distance: `${along} m` });
    });
    return rows;
  });

const levels = (one: LevelBook, name: 'elevation' | 'adjusted') => one.rows.map((row) => row[name]);

describe('a level book', () => {
  test('both ways of reducing it agree, and the adjusted closing level is the known one, exactly', () => {
    fc.assert(
      fc.property(
        book,
        elevation,
        reading,
        fc.constantFrom('set-ups' as const, 'distance' as const),
        (rows, start, miss, adjustBy) => {
          const open = reduceLevels({ start, rows });
          expect(open.check.agrees).toBe(true);
          const last = open.rows.at(-1)?.elevation ?? start;
          expect(open.check.riseLessFall.equals(last.minus(start))).toBe(true);
          const known = last.minus(miss);
          const closed = reduceLevels({ start, rows, known, adjustBy });
          expect(closed.misclosure?.equals(miss)).toBe(true);
          expect(closed.rows.at(-1)?.adjusted.equals(known)).toBe(true);
          expect(closed.rows[0]?.adjusted.equals(start)).toBe(true);
          // corrections never run back
          closed.rows.slice(1).forEach(({ correction }, k) => {
            const before = closed.rows[k]?.correction.abs() ?? correction;
            expect(correction.abs().compare(before)).toBeGreaterThanOrEqual(0);
          });
        },
      ),
      FEW,
    );
  });

  test('a shift of the datum shifts every level and no correction', () => {
    fc.assert(
      fc.property(book, elevation, reading, reading, (rows, start, miss, shift) => {
        const last = reduceLevels({ start, rows }).rows.at(-1)?.elevation ?? start;
        const known = last.minus(miss);
        const here = reduceLevels({ start, rows, known });
        const there = reduceLevels({ start: start.plus(shift), rows, known: known.plus(shift) });
        for (const name of ['elevation', 'adjusted'] as const) {
          levels(there, name).forEach((level, k) => {
            expect(level.minus(shift).equals(levels(here, name)[k] ?? shift)).toBe(true);
          });
        }
        expect(there.rows.map(({ correction }) => correction.si.toString())).toEqual(
          here.rows.map(({ correction }) => correction.si.toString()),
        );
      }),
      FEW,
    );
  });

  test('what is added to all readings of a set-up falls out', () => {
    fc.assert(
      fc.property(book, elevation, reading, (rows, start, error) => {
        const added = error.dividedBy(4);
        const more = rows.map((row) => {
          const read = Object.entries(row).filter((entry): entry is [string, Length] =>
            isQuantity(entry[1]),
          );
          return {
            ...row,
            ...Object.fromEntries(read.map(([key, one]) => [key, one.plus(added)])),
          };
        });
        const [here, there] = [reduceLevels({ start, rows }), reduceLevels({ start, rows: more })];
        levels(there, 'elevation').forEach((level, k) => {
          expect(level.equals(levels(here, 'elevation')[k] ?? error)).toBe(true);
        });
      }),
      FEW,
    );
  });

  test('unit: the same readings in another unit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 4, maxLength: 4 }),
        (mm) => {
          const rows = (write: (value: number) => Length | { value: string; unit: 'ft' }) => [
            { point: 'BM', back: write(mm[0] ?? 0) },
            { point: 'T', fore: write(mm[1] ?? 0), back: write(mm[2] ?? 0) },
            { point: 'A', fore: write(mm[3] ?? 0) },
          ];
          const metric = reduceLevels({
            start: '10 m',
            rows: rows((value) => length(value, 'mm')),
          });
          const feet = reduceLevels({
            start: { value: '10000/304.8', unit: 'ft' },
            rows: rows((value) => ({ value: `${value}/304.8`, unit: 'ft' })),
          });
          levels(feet, 'elevation').forEach((level, k) => {
            expect(level.equals(levels(metric, 'elevation')[k] ?? length('0 m'))).toBe(true);
          });
        },
      ),
      FEW,
    );
  });

  test('spreadMisclosure does what the book does', () => {
    fc.assert(
      fc.property(book, elevation, reading, (rows, start, miss) => {
        const open = reduceLevels({ start, rows });
        const known = (open.rows.at(-1)?.elevation ?? start).minus(miss);
        const closed = reduceLevels({ start, rows, known });
        const { points } = spreadMisclosure({
          known,
          points: open.rows.map(({ point, elevation: level, setUp }) => ({
            point,
            elevation: level,
            along: setUp,
          })),
        });
        points.forEach(({ adjusted }, k) => {
          expect(adjusted.equals(closed.rows[k]?.adjusted ?? start)).toBe(true);
        });
      }),
      FEW,
    );
  });
});

describe('instruments', () => {
  const sight = fc.integer({ min: 0, max: 120 });

  test('the two-peg test finds the error that was put in, from any sights', () => {
    fc.assert(
      fc.property(
        fc.tuple(sight, sight, sight, sight).filter(([a, b, c, d]) => a - b !== c - d),
        fc.integer({ min: -500, max: 500 }),
        fc.integer({ min: -900, max: 900 }),
        ([nearA, nearB, farA, farB], error, rise) => {
          // a reading on A of 3 m and on B of rise less, each out by error x sight in hundredths of a mm
          const read = (true_: number, distance: number) =>
            length(`${(true_ + 3000) * 100 + error * distance}/100`, 'mm');
          const metres = (a: number, b: number) => ({ a: `${a} m`, b: `${b} m` });
          const level = twoPegTest({
            midway: { a: read(0, nearA), b: read(-rise, nearB) },
            offset: { a: read(0, farA), b: read(-rise, farB) },
            distances: { midway: metres(nearA, nearB), offset: metres(farA, farB) },
          });
          expect(level.collimation).toBe(error / 100_000);
          expect(level.corrected.a.equals(length('3 m'))).toBe(true);
          expect(level.trueDifference.equals(length(rise, 'mm'))).toBe(true);
        },
      ),
      FEW,
    );
  });

  test('a laser: the marks in the other order change the sign alone', () => {
    fc.assert(
      fc.property(reading, reading, (first, second) => {
        const run = (marks: { first: Length; second: Length }) =>
          laserReversal({ distance: '40 m', x: marks, accuracy: { error: '1 mm', over: '10 m' } });
        const [one, other] = [run({ first, second }), run({ first: second, second: first })];
        expect(one.x.error.equals(other.x.error.negated())).toBe(true);
        expect(one.verdict).toBe(other.verdict);
        expect(one.verdict).toBe(
          one.x.difference.abs().compare(length('8 mm')) <= 0 ? 'pass' : 'fail',
        );
      }),
      FEW,
    );
  });

  test('a rod reads the more too big the more it leans', () => {
    fc.assert(
      fc.property(reading, fc.integer({ min: 0, max: 449 }), (read, tenths) => {
        const [less, more] = [tenths, tenths + 1].map((tilt) =>
          rodTilt({ reading: read, tilt: { value: tilt / 10, unit: 'deg' } }),
        );
        expect(less?.error.isNegative()).toBe(false);
        expect((more?.error ?? read).compare(less?.error ?? read)).toBe(read.isZero() ? 0 : 1);
      }),
      FEW,
    );
  });

  test('curvature grows with the square of the sight', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30_000 }), (metres) => {
        const near = curvatureRefraction({ sight: `${metres} m`, limit: '3 mm' });
        const far = curvatureRefraction({ sight: `${3 * metres} m`, limit: '3 mm' });
        expect(near.curvature.times(9).equals(far.curvature)).toBe(true);
        expect(near.error.plus(near.refraction).equals(near.curvature)).toBe(true);
        expect(far.maximumSight?.equals(near.maximumSight ?? far.error)).toBe(true);
      }),
      FEW,
    );
  });
});

describe('closing the day', () => {
  test('a steady drift is taken off to the last digit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: -900, max: 900 })), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.integer({ min: -7, max: 7 }),
        fc.nat(7),
        (steps, drift, checkAt) => {
          // the line of sight sinks by `drift` hundredths of a millimetre a minute, from 31.5 m
          let minutes = 0;
          const rises = [...steps.map(([, rise], k) => (k === checkAt ? 0 : rise)), 0];
          const shots = rises.map((rise, k) => {
            minutes += steps[k]?.[0] ?? 1;
            const isCheck = k === checkAt || k === steps.length;
            return {
              point: `P${k}`,
              reading: length(`${(1500 - rise) * 100 - drift * minutes}/100`, 'mm'),
              after: `${minutes} min`,
              ...(isCheck ? { known: '30 m' } : {}),
            };
          });
          const day = closeBenchmark({
            benchmark: '30 m',
            back: '1.5 m',
            shots,
            allowable: '60 mm',
          });
          expect(day.isAccepted).toBe(true);
          day.shots.forEach(({ adjusted }, k) => {
            expect(adjusted?.equals(length(30_000 + (rises[k] ?? Number.NaN), 'mm'))).toBe(true);
          });
        },
      ),
      FEW,
    );
  });
});

describe('rods and budgets', () => {
  test('rods differ by the thickness of the layers, whatever the height of the instrument', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 1, maxLength: 5 }),
        elevation,
        reading,
        (tenths, finishedGrade, above) => {
          const layers = tenths.map((thickness, k) => ({
            name: `layer ${k}`,
            thickness: length(`${thickness}/10`, 'mm'),
          }));
          const targets = rodTargets({
            instrumentHeight: finishedGrade.plus(above),
            finishedGrade,
            buildUp: buildUp({ layers }),
          });
          expect(targets[0]?.rod.equals(above)).toBe(true);
          layers.forEach(({ thickness }, k) => {
            const [upper, lower] = [targets[k], targets[k + 1]];
            expect(lower?.rod.minus(upper?.rod ?? thickness).equals(thickness)).toBe(true);
            expect(upper?.elevation.minus(lower?.elevation ?? thickness).equals(thickness)).toBe(
              true,
            );
          });
        },
      ),
      FEW,
    );
  });

  test('ground less target is the cut, and a rod on the target has none', () => {
    fc.assert(
      fc.property(elevation, reading, reading, (target, above, read) => {
        const instrumentHeight = target.plus(above);
        const shot = cutFill({ instrumentHeight, reading: read, surface: 'subgrade', target });
        expect(shot.ground.minus(target).equals(shot.cut)).toBe(true);
        const on = cutFill({ instrumentHeight, reading: above, surface: 'subgrade', target });
        expect(on.action).toBe('none');
      }),
      FEW,
    );
  });

  test('a budget: no order, shares make one, each error below the total below their sum', () => {
    const sigmas = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(sigmas, (tenths) => {
        const budget = (list: readonly number[]) =>
          errorBudget({
            random: list.map((value, k) => ({ name: `e${k}`, sigma: `${value / 10} mm` })),
            tolerance: '1 m',
          });
        const [here, turned] = [budget(tenths), budget([...tenths].reverse())];
        expect(turned.total.equals(here.total)).toBe(true);
        const sum = here.shares.reduce((total, { share }) => total + share, 0);
        expect(sum).toBeCloseTo(here.total.isZero() ? 0 : 1, 12);
        const plain = tenths.reduce((total, value) => total + value, 0) / 10;
        expect(here.total.toNumber('mm')).toBeLessThanOrEqual(plain + 1e-12);
        expect(here.total.toNumber('mm')).toBeGreaterThanOrEqual(Math.max(...tenths) / 10 - 1e-12);
      }),
      FEW,
    );
  });
});
