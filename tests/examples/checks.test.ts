// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { describe, expect, test } from 'vitest';
import { scanStraightedge } from 'settline/geometry';
import {
  checkFall,
  checkFlatness,
  checkThickness,
  relativeCompaction,
  trialStrip,
} from 'settline/checks';
import { length } from 'settline/units';
import { expectPrinted } from '../printed.js';

const profile = (heights: readonly number[]) =>
  heights.map((height, k) => ({
    station: { value: k / 2, unit: 'm' as const },
    height: { value: height, unit: 'mm' as const },
  }));

// Closed form on a sampled profile, derived from the rule of UFGS 02749, 3.11.8 (the edge rests on the
// two highest spots)
test('a dip and a centre hump', () => {
  const dip = checkFlatness({ profile: profile([2, 0, -1, -3, -1, 0, 2]), length: '3 m' });
  expectPrinted(dip.greatestGap.toNumber('mm'), '5');
  expect(dip.at.toNumber('m')).toBe(1.5);
  const hump = checkFlatness({ profile: profile([0, 0, -2, 4, -1, -2, 0]), length: '3 m' });
  expectPrinted(hump.greatestGap.toNumber('mm'), '4.666667');
  expect(hump.at.toNumber('m')).toBe(1);
  const right = checkFlatness({ profile: profile([4, -1, -2, 0]), length: '3 m' });
  expectPrinted(right.greatestGap.toNumber('mm'), '3.666667');
  expect(right.at.toNumber('m')).toBe(0.5);
});

// Closed form of the sagitta, derived: R - sqrt(R^2 - c^2/4) under a chord c of 3 m
test.each([
  [5, '230.303993'],
  [10, '113.140033'],
  [25, '45.040573'],
  [50, '22.505065'],
  [100, '11.250633'],
  [300, '3.750023'],
])('a hollow of radius %d m', (radius, printed) => {
  // a reading every 0.1 m on the arc; the middle one lies at 0
  const arc = (x: number) => radius - Math.sqrt(radius * radius - x * x);
  const stations = Array.from({ length: 101 }, (_, k) => (k - 50) / 10);
  const inside = stations.filter((s) => Math.abs(s) <= Math.min(radius, 1.5));
  const readings = inside.map((s) => [s, arc(s)] as const);
  const scanned = scanStraightedge(readings, { length: 3 });
  expectPrinted(scanned.greatestGap * 1000, printed);
  const exact = checkFlatness({
    profile: readings.map(([s, z]) => ({ station: length(s, 'm'), height: length(z, 'm') })),
    length: '3 m',
  });
  expectPrinted(exact.greatestGap.toNumber('mm'), printed);
});

test('an invented example of the method: 2.05 t/m3 at 11 % against 1.92 at 12.5 %', () => {
  const spot = relativeCompaction({
    wetDensity: '2.05 t/m3',
    moisture: 0.11,
    maximumDryDensity: '1.92 t/m3',
    optimumMoisture: 0.125,
  });
  expectPrinted(spot.dryDensity.toNumber('t/m3'), '1.8468');
  expectPrinted(spot.percent, '96.19');
  expectPrinted(spot.waterToAdd?.toNumber('kg/m3') ?? 0, '27.7');
});

// Invented examples of the methods, worked by hand: no publication
describe('invented examples', () => {
  test('three heights, 1.5 m apart: gap 6 mm', () => {
    const edge = checkFlatness({
      profile: [
        { station: '0 m', height: '29.940 m' },
        { station: '1.5 m', height: '29.916 m' },
        { station: '3 m', height: '29.880 m' },
      ],
      length: '3 m',
    });
    // here the middle reading stands 6 mm above its ends: no gap below it
    expect(edge.greatestGap.isZero()).toBe(true);
    const turned = checkFlatness({
      profile: [
        { station: '0 m', height: '-29.940 m' },
        { station: '1.5 m', height: '-29.916 m' },
        { station: '3 m', height: '-29.880 m' },
      ],
      length: '3 m',
    });
    expectPrinted(turned.greatestGap.toNumber('mm'), '6');
  });

  test('2 % over 3 m with 2 mm a height: unclear against 2 %, passes 1.8 %', () => {
    const check = (minimum: string) =>
      checkFall({
        layer: 'pavers',
        readings: [{ id: 'a', fall: '60 mm', run: '3 m' }],
        tolerance: { minimum },
        standardUncertainty: '2 mm',
      });
    expectPrinted((check('2%').readings[0]?.uncertainty.toNumber('percent') ?? 0) / 2, '0.094');
    expect([check('2%').verdict, check('1.8%').verdict]).toEqual(['unclear', 'pass']);
  });

  test('thickness from rod readings: mean 198.8 mm, the fourth 3 mm too thin', () => {
    const check = checkThickness({
      layer: 'base',
      design: '0.2 m',
      readings: ['0.206', '0.191', '0.214', '0.184', '0.199'].map((value, k) => ({
        id: `${k + 1}`,
        thickness: `${value} m`,
      })),
      tolerance: 'paver-guide-mm',
    });
    expectPrinted(check.average.value.toNumber('mm'), '198.8');
    expect([check.thinnest, check.thickest].map((one) => one.toNumber('mm'))).toEqual([184, 214]);
    expect(check.outOfTolerance.map(({ id, margin }) => [id, margin.toNumber('mm')])).toEqual([
      ['4', -3],
    ]);
  });

  test('trial strip of three readings: 304 over 378', () => {
    const strip = trialStrip({
      readings: [
        { loose: '128 mm', compacted: '103 mm' },
        { loose: '124 mm', compacted: '100 mm' },
        { loose: '126 mm', compacted: '101 mm' },
      ],
      compactedThickness: '100 mm',
    });
    expectPrinted(strip.compactedPerLoose, '0.8042');
    expectPrinted(strip.spread?.toNumber('mm') ?? 0, '124.3');
  });
});
