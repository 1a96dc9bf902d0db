import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  checkBondLine,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLevels,
  checkThickness,
  layerReport,
  relativeCompaction,
  trialStrip,
  type AnyLayerCheck,
} from 'settline/checks';
import { isSettlineError } from 'settline';
import { TOLERANCE_SETS } from 'settline/sources';
import { length, max, min, type Length } from 'settline/units';
import { anyLength, positiveLength, SOME } from './arbitrary.js';
import { runs } from '../runs.js';

const NOTHING = length('0 m');
const HAIR = length('1e-9', 'mm');
const mm = (value: number): Length => length(value, 'mm');
const tolerance = positiveLength(0.5);
/** An elevation within what a check takes. */
const place = anyLength.filter((one) => Math.abs(one.toNumber('km')) < 9);
const levels = fc.array(place, { minLength: 1, maxLength: 8 });

describe('limits', () => {
  test('a level on the limit passes, a hair beyond fails, at any elevation in any unit', () => {
    fc.assert(
      fc.property(place, tolerance, tolerance, (plan, over, under) => {
        const verdict = (difference: Length) =>
          checkLevels({
            layer: 'base',
            readings: [{ id: 'a', plan, measured: plan.plus(difference) }],
            tolerance: { over, under },
          }).verdict;
        expect(verdict(over)).toBe('pass');
        expect(verdict(over.plus(HAIR))).toBe('fail');
        expect(verdict(under.negated())).toBe('pass');
        expect(verdict(under.plus(HAIR).negated())).toBe('fail');
      }),
      SOME,
    );
  });

  test('the move brings the level to the plan', () => {
    fc.assert(
      fc.property(levels, place, tolerance, (measured, plan, limit) => {
        const check = checkLevels({
          layer: 'base',
          readings: measured.map((one, k) => ({ id: `${k}`, plan, measured: one })),
          tolerance: { over: limit, under: limit },
        });
        for (const { move, measured: was } of check.readings) {
          const by = move?.by ?? null;
          if (by === null) continue;
          const now = move?.action === 'cut' ? was.minus(by) : was.plus(by);
          expect(now.equals(plan)).toBe(true);
        }
      }),
      SOME,
    );
  });

  test('more uncertainty only ever turns a verdict to unclear; a wider tolerance never to fail', () => {
    const size = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(size, size, size, size, size, (gap, most, wider, doubt, more) => {
        const verdict = (limit: number, uncertainty: number) =>
          checkFlatness({
            layer: 'yard',
            profile: [0, -gap, 0].map((height, k) => ({
              station: mm(k * 1000),
              height: mm(height),
            })),
            tolerance: { maximum: mm(limit), over: '2 m' },
            uncertainty: mm(uncertainty),
          }).verdict;
        const [first, second] = [verdict(most, doubt), verdict(most, doubt + more)];
        if (first !== second) expect(second).toBe('unclear');
        const order = ['fail', 'unclear', 'pass'];
        const loose = verdict(most + wider, doubt);
        expect(order.indexOf(loose)).toBeGreaterThanOrEqual(order.indexOf(first));
      }),
      SOME,
    );
  });
});

describe('thickness', () => {
  test('the average lies between the thinnest and the thickest, and elevations give the same', () => {
    const spots = fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(spots, place, (values, bottom) => {
        const options = { layer: 'base', design: '200 mm', tolerance: 'paver-guide-mm' } as const;
        const direct = checkThickness({
          ...options,
          readings: values.map((value, k) => ({ id: `${k}`, thickness: mm(value) })),
        });
        const shot = checkThickness({
          ...options,
          readings: values.map((value, k) => ({ id: `${k}`, top: bottom.plus(mm(value)), bottom })),
        });
        expect(direct.average.value.compare(direct.thinnest)).toBeGreaterThanOrEqual(0);
        expect(direct.average.value.compare(direct.thickest)).toBeLessThanOrEqual(0);
        expect(shot.average.value.equals(direct.average.value)).toBe(true);
        expect(JSON.stringify(shot.readings)).toBe(JSON.stringify(direct.readings));
      }),
      runs(100),
    );
  });
});

describe('bond line', () => {
  const offsets = fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 3, maxLength: 14 });
  const check = (values: readonly number[], turn = 0, shift = 0) =>
    checkBondLine({
      readings: values.map((offset, k) => ({
        station: mm(k * 1000 + shift),
        offset: mm(offset + turn * k + shift),
      })),
      tolerance: { maximum: '10 mm', over: '4 m' },
    });

  test('is the largest distance from any string held as far apart as it reaches', () => {
    fc.assert(
      fc.property(offsets, (values) => {
        const last = values.length - 1;
        const span = Math.min(4, last);
        let most = NOTHING;
        for (let i = 0; i + span <= last; i += 1) {
          const [a, b] = [values[i] ?? 0, values[i + span] ?? 0];
          for (let k = 1; k < span; k += 1) {
            const off = mm(a)
              .plus(mm((b - a) * k).dividedBy(span))
              .minus(mm(values[i + k] ?? 0));
            most = max([most, off.abs()]);
          }
        }
        expect(check(values).greatest.equals(most)).toBe(true);
      }),
      SOME,
    );
  });

  test('does not change with the base line; mirrored, left is right', () => {
    const slope = fc.integer({ min: -300, max: 300 });
    fc.assert(
      fc.property(offsets, slope, slope, (values, turn, shift) => {
        const plain = check(values).readings.map(({ value }) => value);
        const turned = check(values, turn, shift).readings.map(({ value }) => value);
        const mirrored = check(values.map((one) => -one)).readings.map(({ value }) => value);
        plain.forEach((value, k) => {
          expect(turned[k]?.equals(value)).toBe(true);
          expect(mirrored[k]?.abs().equals(value.abs())).toBe(true);
        });
      }),
      SOME,
    );
  });
});

describe('flatness', () => {
  test('every reading gets its own gap, and none is more than the greatest', () => {
    const heights = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 3, maxLength: 20 });
    fc.assert(
      fc.property(heights, fc.integer({ min: 2, max: 9 }), (values, bays) => {
        const check = checkFlatness({
          layer: 'yard',
          profile: values.map((height, k) => ({ station: mm(k * 500), height: mm(height) })),
          tolerance: { maximum: '10 mm', over: mm(bays * 500) },
        });
        const gaps = check.readings.map(({ value }) => value);
        expect(max(gaps).equals(check.greatestGap)).toBe(true);
        expect(min(gaps).equals(NOTHING)).toBe(true);
        check.readings.forEach(({ value, between, station }) => {
          expect(value.isNegative()).toBe(false);
          if (between === null) return;
          expect(between[0].compare(station)).toBe(-1);
          expect(between[1].compare(station)).toBe(1);
        });
        expect(check.verdict).toBe(check.greatestGap.compare(mm(10)) > 0 ? 'fail' : 'pass');
      }),
      SOME,
    );
  });
});

test('compaction: dry density times one and the moisture is the wet density; percent by unit', () => {
  const density = fc.integer({ min: 500, max: 3000 });
  fc.assert(
    fc.property(density, density, fc.integer({ min: 0, max: 999 }), (wet, largest, thousandths) => {
      const moisture = `${thousandths}/1000`;
      const metric = relativeCompaction({
        wetDensity: `${wet} kg/m3`,
        moisture,
        maximumDryDensity: `${largest} kg/m3`,
      });
      const back = metric.dryDensity.times(1000 + thousandths).dividedBy(1000);
      expect(back.to('kg/m3').toString()).toBe(`${wet}`);
      const imperial = relativeCompaction({
        wetDensity: `${wet} lb/yd3`,
        moisture,
        maximumDryDensity: `${largest} lb/yd3`,
      });
      expect(imperial.percent).toBe(metric.percent);
      expect(metric.percent).toBeGreaterThan(0);
    }),
    SOME,
  );
});

test('trial strip: the ratio lies within its range, and a common scale changes nothing', () => {
  const spot = fc.record({
    loose: fc.integer({ min: 50, max: 400 }),
    percent: fc.integer({ min: 50, max: 100 }),
  });
  fc.assert(
    fc.property(fc.array(spot, { minLength: 1, maxLength: 8 }), (spots) => {
      const strip = (unit: 'mm' | 'in') =>
        trialStrip({
          readings: spots.map(({ loose, percent }) => ({
            loose: { value: `${loose}/100`, unit },
            compacted: { value: `${loose * percent}/10000`, unit },
          })),
        });
      const { compactedPerLoose, range, standardUncertainty } = strip('mm');
      expect(compactedPerLoose).toBeGreaterThanOrEqual(range.minimum);
      expect(compactedPerLoose).toBeLessThanOrEqual(range.maximum);
      expect(strip('in').compactedPerLoose).toBe(compactedPerLoose);
      if (range.minimum === range.maximum && spots.length > 2) expect(standardUncertainty).toBe(0);
    }),
    SOME,
  );
});

test('joints: the share is that of the joints within, and never grows with a narrower tolerance', () => {
  const widths = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 12 });
  const limit = fc.integer({ min: 0, max: 12 });
  fc.assert(
    fc.property(widths, limit, limit, (values, a, b) => {
      const [least, most] = [Math.min(a, b), Math.max(a, b)];
      const share = (from: number, to: number) =>
        checkJointWidth({
          readings: values.map((value, k) => ({ id: `${k}`, width: mm(value) })),
          tolerance: { minimum: mm(from), maximum: mm(to) },
        }).share;
      const within = values.filter((value) => value >= least && value <= most).length;
      expect(share(least, most)).toBe(within / values.length);
      expect(share(least, most + 1)).toBeGreaterThanOrEqual(share(least, most));
    }),
    SOME,
  );
});

test('a report reads back from JSON as it was, whatever was measured', () => {
  const drops = fc.array(fc.integer({ min: -90, max: 90 }), { minLength: 1, maxLength: 6 });
  const system = fc.constantFrom('us', 'metric');
  fc.assert(
    fc.property(levels, drops, tolerance, system, (measured, falls, limit, as) => {
      const checks: readonly AnyLayerCheck[] = [
        checkLevels({
          layer: 'base',
          readings: measured.map((one, k) => ({ id: `${k}`, plan: '1 m', measured: one })),
          tolerance: { over: limit, under: limit },
        }),
        checkFall({
          layer: 'base',
          readings: falls.map((fall, k) => ({ id: `${k}`, fall: mm(fall), run: '3 m' })),
          tolerance: 'paver-guide-in',
          standardUncertainty: '1 mm',
        }),
      ];
      const report = layerReport({ layer: 'x', checks, system: as });
      expect(JSON.parse(JSON.stringify(report))).toEqual(report);
      expect(report.lines.join('\n')).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
      const failing = checks.flatMap(({ readings }) =>
        readings.filter(({ verdict }) => verdict === 'fail'),
      );
      const listed = report.checks.flatMap(({ outOfTolerance }) =>
        outOfTolerance.filter(({ verdict }) => verdict === 'fail'),
      );
      expect(listed.map(({ id }) => id)).toEqual(failing.map(({ id }) => id));
    }),
    runs(100),
  );
});

test('whatever is not a measurement is refused with a code', () => {
  fc.assert(
    fc.property(
      fc.anything(),
      fc.constantFrom('layer', 'readings', 'tolerance'),
      (value, field) => {
        const options = {
          layer: 'base',
          readings: [{ id: 'a', plan: '1 m', measured: '1 m' }],
          tolerance: { over: '1 mm', under: '1 mm' },
          [field]: value,
        };
        try {
          expect(checkLevels(options as never).verdict).toBe('pass');
        } catch (error) {
          expect(isSettlineError(error), String(error)).toBe(true);
        }
      },
    ),
    SOME,
  );
});

test('every part of every published set is one that a check can be made against', () => {
  const known = ['source', 'note', 'flatness', 'level', 'thickness', 'lippage', 'lippageAtDrain'];
  const more = ['lippageAtAccessibleDrain', 'joint', 'bondLine', 'slope', 'compaction'];
  for (const set of Object.values(TOLERANCE_SETS)) {
    for (const part of Object.keys(set)) expect([...known, ...more]).toContain(part);
  }
});
