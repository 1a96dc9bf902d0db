import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLine } from 'settline/geometry';
import { checkStakeLine, type StakeLine } from 'settline/stakes';
import { length, type Length } from 'settline/units';
import { SOME } from './arbitrary.js';
import { runs } from '../runs.js';

type Point = readonly [x: number, y: number];

/** Stakes along a line, in whole millimetres: exact in decimals, distinct at the ends. */
const points = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: -300, max: 300 })), {
    minLength: 2,
    maxLength: 9,
  })
  .filter((list) => {
    const [first, last] = [list[0], list.at(-1)];
    return first?.[0] !== last?.[0] || first?.[1] !== last?.[1];
  });

const reference = fc.constantFrom('ends' as const, 'best-fit' as const);
const tolerance = length('10 mm');

/** Milliseconds for a long law on a busy machine. */
const ROOMY = 30_000;

const check = (
  list: readonly Point[],
  how: 'ends' | 'best-fit',
  shift?: readonly [Length, Length],
) =>
  checkStakeLine({
    stakes: list.map(([x, y], index) => ({
      id: `S${index}`,
      x: shift === undefined ? length(x, 'mm') : length(x, 'mm').plus(shift[0]),
      y: shift === undefined ? length(y, 'mm') : length(y, 'mm').plus(shift[1]),
    })),
    tolerance,
    reference: how,
  });

/** A check of points that may have no main direction. */
function attemptCheck(run: () => StakeLine): StakeLine | undefined {
  try {
    return run();
  } catch {
    return undefined;
  }
}

/** Twenty places, without the sign of a rounded nothing. */
const plain = (one: Length, scale = 1) =>
  one
    .to('mm')
    .div(scale)
    .toFixed(20)
    .replace(/^-(?=[0.]+$)/, '');

const summary = (line: StakeLine | undefined) =>
  line === undefined
    ? undefined
    : {
        ok: line.ok,
        ambiguous: line.ambiguous,
        offsets: line.offsets.map(({ id, offset, station }) => [id, plain(offset), plain(station)]),
        moves: line.moves.map(({ id, distance, direction }) => [id, plain(distance), direction]),
      };

describe('colinearity does not depend on where the site lies', () => {
  test(
    'shift, to the last digit',
    () => {
      fc.assert(
        fc.property(
          points,
          reference,
          fc.integer({ min: -1e9, max: 1e9 }),
          fc.integer({ min: -1e9, max: 1e9 }),
          (list, how, east, north) => {
            const here = attemptCheck(() => check(list, how));
            const there = attemptCheck(() =>
              check(list, how, [
                length(east, 'mm').plus(length('1/3 in')),
                length(north, 'mm').plus(length('4500000 m').dividedBy(7)),
              ]),
            );
            expect(summary(there)).toEqual(summary(here));
          },
        ),
        SOME,
      );
    },
    ROOMY,
  );

  test(
    'rotation by exact angles: quarter turns and 3-4-5',
    () => {
      fc.assert(
        fc.property(points, reference, (list, how) => {
          const here = summary(attemptCheck(() => check(list, how)));
          const quarter = list.map(([x, y]): Point => [-y, x]);
          expect(summary(attemptCheck(() => check(quarter, how)))).toEqual(here);
          // coordinates times 5, turned by (3, 4) / 5, tolerance times 5
          const turned = list.map(([x, y]): Point => [3 * x - 4 * y, 4 * x + 3 * y]);
          const big = attemptCheck(() =>
            checkStakeLine({
              stakes: turned.map(([x, y], i) => ({
                id: `S${i}`,
                x: { value: x, unit: 'mm' } as const,
                y: { value: y, unit: 'mm' } as const,
              })),
              tolerance: '50 mm',
              reference: how,
            }),
          );
          expect(big?.ok).toEqual(here?.ok);
          expect(big?.ambiguous).toEqual(here?.ambiguous);
          expect(big?.offsets.map(({ offset }) => plain(offset, 5))).toEqual(
            here?.offsets.map(([, offset]) => offset),
          );
        }),
        SOME,
      );
    },
    ROOMY,
  );

  test('unit: the same stakes in inches', () => {
    fc.assert(
      fc.property(points, reference, (list, how) => {
        const inches = attemptCheck(() =>
          checkStakeLine({
            stakes: list.map(([x, y], i) => ({
              id: `S${i}`,
              x:
                length(x, 'mm').dividedBy(length('1 in')).toFixed(0) === ''
                  ? '0 in'
                  : length(x, 'mm'),
              y: `${y} mm`,
            })),
            tolerance: { value: '10/25.4', unit: 'in' },
            reference: how,
          }),
        );
        expect(summary(inches)).toEqual(summary(attemptCheck(() => check(list, how))));
      }),
      runs(100),
    );
  });

  test('walking the other way turns left into right', () => {
    fc.assert(
      fc.property(points, (list) => {
        const there = check(list, 'ends');
        const back = check([...list].reverse(), 'ends');
        const flipped = [...back.offsets].reverse().map(({ offset }) => offset.negated());
        there.offsets.forEach(({ offset }, i) => {
          expect(flipped[i]?.equals(offset)).toBe(true);
        });
        expect(back.ok).toBe(there.ok);
      }),
      SOME,
    );
  });
});

describe('moves', () => {
  test('with ends held, the moves bring every stake into line', () => {
    fc.assert(
      fc.property(points, (list) => {
        const line = check(list, 'ends');
        const out = line.offsets.filter(({ inTolerance }) => !inTolerance);
        if (line.ok === null) {
          expect(line.moves).toEqual([]);
          return;
        }
        expect(line.moves.map(({ id }) => id)).toEqual(out.map(({ id }) => id));
        line.moves.forEach(({ distance, direction }, i) => {
          const offset = out[i]?.offset;
          const sign = direction === 'right' ? 1 : -1;
          expect(offset?.minus(distance.times(sign)).isZero()).toBe(true);
        });
      }),
      SOME,
    );
  });

  test('ambiguous only where several single moves would each do', () => {
    fc.assert(
      fc.property(points, (list) => {
        const line = attemptCheck(() => check(list, 'best-fit'));
        if (line === undefined) return;
        expect(line.ambiguous).toBe(line.code === 'ambiguous');
        if (line.ambiguous) expect(line.moves.length).toBeGreaterThan(1);
        if (list.length === 3 && line.ok === false) expect(line.ambiguous).toBe(true);
        if (line.ok === true) expect(line.moves).toEqual([]);
      }),
      SOME,
    );
  });
});

describe('fitLine', () => {
  const cloud = fc
    .array(
      fc.tuple(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      ),
      {
        minLength: 3,
        maxLength: 60,
      },
    )
    .filter((list) => {
      const xs = list.map(([x]) => x);
      return (
        Math.max(...xs) - Math.min(...xs) > 1 &&
        Math.abs((list[0]?.[0] ?? 0) - (list.at(-1)?.[0] ?? 0)) > 0.1
      );
    });

  test('agrees with the ledger to a nanometre, wherever the site lies', () => {
    fc.assert(
      fc.property(
        cloud,
        fc.constantFrom(0, 500_000),
        fc.constantFrom(0, 4_500_000),
        (list, east, north) => {
          const moved = list.map(([x, y]): Point => [x + east, y + north]);
          const fit = fitLine(moved);
          const line = attemptCheck(() =>
            checkStakeLine({
              stakes: moved.map(([x, y], i) => ({
                id: `S${i}`,
                x: { value: x, unit: 'm' } as const,
                y: { value: y, unit: 'm' } as const,
              })),
              tolerance: '1 mm',
              reference: 'best-fit',
            }),
          );
          line?.offsets.forEach(({ offset }, i) => {
            expect(Math.abs(offset.toNumber('m') - (fit.residuals[i] ?? Number.NaN))).toBeLessThan(
              3e-9,
            );
          });
        },
      ),
      runs(100),
    );
  });

  test('the residuals sum to nothing and no turn of the line does better', () => {
    fc.assert(
      fc.property(cloud, fc.double({ min: -0.1, max: 0.1, noNaN: true }), (list, turn) => {
        const { residuals, rms, direction, centroid } = fitLine(list);
        const sum = residuals.reduce((total, one) => total + one, 0);
        expect(Math.abs(sum)).toBeLessThan(1e-10);
        const [dx, dy] = [
          direction[0] * Math.cos(turn) - direction[1] * Math.sin(turn),
          direction[0] * Math.sin(turn) + direction[1] * Math.cos(turn),
        ];
        const squares = list.reduce((total, [x, y]) => {
          const off = dx * (y - centroid[1]) - dy * (x - centroid[0]);
          return total + off * off;
        }, 0);
        expect(Math.sqrt(squares / list.length)).toBeGreaterThanOrEqual(rms - 1e-12);
        expect(Math.hypot(...direction)).toBeCloseTo(1, 14);
      }),
      SOME,
    );
  });
});
