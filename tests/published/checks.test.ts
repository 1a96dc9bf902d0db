import { describe, expect, test } from 'vitest';
import {
  checkBondLine,
  checkCompaction,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLevels,
  checkLippage,
  checkThickness,
  relativeCompaction,
  scanStraightedge,
  straightedge,
  trialStrip,
  type LippagePlace,
  type SetWith,
} from 'settline/checks';
import { length, type Length } from 'settline/units';
import { expectPrinted } from '../printed.js';

/** Each limit as printed: a reading on it passes, and one a hair beyond it fails. */
const HAIR = length('1 mm').dividedBy(1_000_000);
const inner = (limit: string, beyond: 1 | -1) =>
  [length(limit), length(limit).plus(HAIR.times(beyond))] as const;

function expectLimit(
  limit: string,
  beyond: 1 | -1,
  verdictOf: (value: Length) => 'pass' | 'unclear' | 'fail',
): void {
  const [on, over] = inner(limit, beyond);
  expect(verdictOf(on), `${limit} itself`).toBe('pass');
  expect(verdictOf(over), `a hair beyond ${limit}`).toBe('fail');
}

const flatness = (layer: string, tolerance: SetWith<'flatness'>, over: string) => (gap: Length) => {
  const span = length(over);
  const at = (share: number, height: Length) => ({ station: span.times(share), height });
  const none = length('0 mm');
  const profile = [at(0, none), at(0.5, gap.negated()), at(1, none)];
  const check = checkFlatness({ layer, profile, tolerance });
  expect(check.edgeLength.equals(span)).toBe(true);
  return check.verdict;
};
const lippage = (place: LippagePlace, tolerance: SetWith<'lippage'>) => (value: Length) =>
  checkLippage({ place, readings: [{ id: 'a', lippage: value }], tolerance }).verdict;
const joint = (tolerance: SetWith<'joint'>) => (width: Length) =>
  checkJointWidth({ readings: [{ id: 'a', width }], tolerance }).verdict;
const bond = (tolerance: SetWith<'bondLine'>) => (offset: Length) =>
  checkBondLine({
    readings: [
      { station: '0 ft', offset: '0 in' },
      { station: '25 ft', offset },
      { station: '50 ft', offset: '0 in' },
    ],
    tolerance,
  }).verdict;
const level = (layer: string, tolerance: SetWith<'level'>) => (difference: Length) =>
  checkLevels({
    layer,
    readings: [{ id: 'a', plan: '10 m', measured: length('10 m').plus(difference) }],
    tolerance,
  }).verdict;
const thickness =
  (layer: string, design: string, tolerance: SetWith<'thickness'>) => (difference: Length) =>
    checkThickness({
      layer,
      design,
      readings: [{ id: 'a', thickness: length(design).plus(difference) }],
      tolerance,
    }).verdict;
const fall = (tolerance: SetWith<'slope'>) => (drop: Length) =>
  checkFall({ layer: 'pavers', readings: [{ id: 'a', fall: drop, run: '10 ft' }], tolerance })
    .verdict;

// Construction Tolerances and Recommendations for Interlocking Concrete Pavements (trade association
// guide), tolerance tables. Read.
describe('paver guide', () => {
  test('inch edition', () => {
    expectLimit('3/8 in', 1, flatness('base', 'paver-guide-in', '10 ft'));
    expectLimit('3/8 in', 1, flatness('pavers', 'paver-guide-in', '10 ft'));
    expectLimit('3/4 in', 1, thickness('base', '8 in', 'paver-guide-in'));
    expectLimit('-1/2 in', -1, thickness('base', '8 in', 'paver-guide-in'));
    expectLimit('1/8 in', 1, lippage('pavers', 'paver-guide-in'));
    expectLimit('1/8 in', -1, lippage('drain', 'paver-guide-in'));
    expectLimit('3/8 in', 1, lippage('drain', 'paver-guide-in'));
    expectLimit('1/16 in', -1, joint('paver-guide-in'));
    expectLimit('3/16 in', 1, joint('paver-guide-in'));
    expectLimit('1/2 in', 1, bond('paver-guide-in'));
    // 2 % of 10 ft is 2.4 in
    expectLimit('2.4 in', -1, fall('paver-guide-in'));
  });

  test('millimetre edition', () => {
    expectLimit('10 mm', 1, flatness('base', 'paver-guide-mm', '3 m'));
    expectLimit('10 mm', 1, flatness('pavers', 'paver-guide-mm', '3 m'));
    expectLimit('20 mm', 1, thickness('base', '200 mm', 'paver-guide-mm'));
    expectLimit('-13 mm', -1, thickness('base', '200 mm', 'paver-guide-mm'));
    expectLimit('3 mm', 1, lippage('pavers', 'paver-guide-mm'));
    expectLimit('2 mm', -1, joint('paver-guide-mm'));
    expectLimit('5 mm', 1, joint('paver-guide-mm'));
    expectLimit('13 mm', 1, bond('paver-guide-mm'));
  });

  test('compaction of at least 98 % of the standard test', () => {
    const verdict = (wetDensity: string) =>
      checkCompaction({
        layer: 'base',
        readings: [{ id: 'a', wetDensity, moisture: 0 }],
        maximumDryDensity: '2000 kg/m3',
        test: 'standard',
        tolerance: 'paver-guide-in',
      }).verdict;
    expect([verdict('1960 kg/m3'), verdict('1959.999999 kg/m3')]).toEqual(['pass', 'fail']);
  });
});

test('Recommended Construction Tolerances for Permeable Interlocking Concrete Pavements, 2020', () => {
  // tables. Read
  const set = 'permeable-guide';
  expectLimit('3/8 in', 1, flatness('pavers', set, '10 ft'));
  expectLimit('3/8 in', 1, flatness('bedding', set, '10 ft'));
  expectLimit('1/4 in', -1, joint(set));
  expectLimit('1/2 in', 1, joint(set));
  expectLimit('1/8 in', 1, lippage('pavers', set));
  expectLimit('3/8 in', 1, lippage('drain', set));
  expectLimit('1/8 in', -1, lippage('accessible-drain', set));
  expectLimit('1/4 in', 1, lippage('accessible-drain', set));
  expectLimit('1/2 in', 1, bond(set));
  expectLimit('0 in', -1, fall(set));
  // 5 % of 10 ft
  expectLimit('6 in', 1, fall(set));
});

test('UFGS 02780 Concrete Block Pavements, block placement', () => {
  // Read: joints 2 to 6 mm (1/16 to 1/4 in)
  expectLimit('2 mm', -1, joint('ufgs-02780-mm'));
  expectLimit('6 mm', 1, joint('ufgs-02780-mm'));
  expectLimit('1/16 in', -1, joint('ufgs-02780-in'));
  expectLimit('1/4 in', 1, joint('ufgs-02780-in'));
});

test('Specification 526 Architectural Pavers, paragraph G', () => {
  // Read: 3/8 in (10 mm) under a 10 ft straightedge, 1/8 in (3 mm) from paver to paver
  expectLimit('3/8 in', 1, flatness('pavers', 'city-526-in', '10 ft'));
  expectLimit('10 mm', 1, flatness('pavers', 'city-526-mm', '10 ft'));
  expectLimit('1/8 in', 1, lippage('pavers', 'city-526-in'));
  expectLimit('3 mm', 1, lippage('pavers', 'city-526-mm'));
});

test('IRC:SP:63-2004, Annexure 1.3 and 1.4', () => {
  // Read: surface -10 to 10 mm, base 0 to 10, sub-base -20 to 0; base 10 mm under 3 m; joints to 4 mm
  const set = 'irc-sp-63-2004';
  expectLimit('10 mm', 1, level('pavers', set));
  expectLimit('-10 mm', -1, level('pavers', set));
  expectLimit('10 mm', 1, level('base', set));
  expectLimit('0 mm', -1, level('base', set));
  expectLimit('0 mm', 1, level('sub-base', set));
  expectLimit('-20 mm', -1, level('sub-base', set));
  expectLimit('10 mm', 1, flatness('base', set, '3 m'));
  expectLimit('4 mm', 1, joint(set));
});

test('IRC:SP:63-2018, 5.2, and municipal paver contract clauses', () => {
  // Read: bed 30 mm, 5 mm either way; joints 2 to 4 mm; lippage to 3 mm
  expectLimit('5 mm', 1, thickness('bedding', '30 mm', 'irc-sp-63-2018'));
  expectLimit('-5 mm', -1, thickness('bedding', '30 mm', 'irc-sp-63-2018'));
  expectLimit('5 mm', 1, thickness('bedding', '30 mm', 'municipal-clause'));
  expectLimit('2 mm', -1, joint('municipal-clause'));
  expectLimit('4 mm', 1, joint('municipal-clause'));
  expectLimit('3 mm', 1, lippage('pavers', 'municipal-clause'));
});

describe('straightedge', () => {
  const profile = (heights: readonly number[]) =>
    heights.map((height, k) => ({
      station: { value: k / 2, unit: 'm' as const },
      height: { value: height, unit: 'mm' as const },
    }));

  // Closed form on a sampled profile, derived from the rule of UFGS 02749, 3.11.8 (the edge rests on the
  // two highest spots)
  test('a dip and a centre hump', () => {
    const dip = straightedge({ profile: profile([2, 0, -1, -3, -1, 0, 2]), length: '3 m' });
    expectPrinted(dip.greatestGap.toNumber('mm'), '5');
    expect(dip.at.toNumber('m')).toBe(1.5);
    const hump = straightedge({ profile: profile([0, 0, -2, 4, -1, -2, 0]), length: '3 m' });
    expectPrinted(hump.greatestGap.toNumber('mm'), '4.666667');
    expect(hump.at.toNumber('m')).toBe(1);
    const right = straightedge({ profile: profile([4, -1, -2, 0]), length: '3 m' });
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
    const exact = straightedge({
      profile: readings.map(([s, z]) => ({ station: length(s, 'm'), height: length(z, 'm') })),
      length: '3 m',
    });
    expectPrinted(exact.greatestGap.toNumber('mm'), printed);
  });
});

describe('relative compaction', () => {
  test('board-exam review page: 1660 kg/m3 at 17.46 % against 1486 kg/m3', () => {
    // inputs read, the answer of 95.1 derived
    const { percent } = relativeCompaction({
      wetDensity: '1660 kg/m3',
      moisture: '0.1746',
      maximumDryDensity: '1486 kg/m3',
    });
    expectPrinted(percent, '95.1');
    expectPrinted(percent, '95.104');
  });

  test('soil-laboratory article: sand cone, 8.11 lb of wet soil in 0.065 ft3 at 11.11 %', () => {
    // Read: 112.293 lb/ft3, from the hole rounded to 0.065; 111.69 from 6.47 / 99 ft3 unrounded
    const dry = (hole: string) =>
      relativeCompaction({
        wetDensity: { value: `8.11/${hole}`, unit: 'lb/ft3' },
        moisture: '0.1111',
        maximumDryDensity: '120 lb/ft3',
      }).dryDensity.toNumber('lb/ft3');
    expectPrinted(dry('0.065'), '112.293');
    const unrounded = dry('0.0653535353535353535');
    expect(Math.abs(unrounded - 111.69)).toBeLessThan(0.005);
    expect(Math.abs(unrounded - 112.293)).toBeGreaterThan(0.5);
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
});

// Invented examples of the methods, worked by hand: no publication
describe('invented examples', () => {
  test('three heights, 1.5 m apart: gap 6 mm', () => {
    const edge = straightedge({
      profile: [
        { station: '0 m', height: '29.940 m' },
        { station: '1.5 m', height: '29.916 m' },
        { station: '3 m', height: '29.880 m' },
      ],
      length: '3 m',
    });
    // here the middle reading stands 6 mm above its ends: no gap below it
    expect(edge.greatestGap.isZero()).toBe(true);
    const turned = straightedge({
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
    const check = (least: string) =>
      checkFall({
        layer: 'pavers',
        readings: [{ id: 'a', fall: '60 mm', run: '3 m' }],
        tolerance: { least },
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
