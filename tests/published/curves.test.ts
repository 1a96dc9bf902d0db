import { describe, expect, test } from 'vitest';
import {
  arcFromChord,
  chordOffsets,
  circleThrough,
  deflectionTable,
  fillet,
  stakeSpacing,
  tangentOffsets,
} from 'settline/stakes';
import type { Angle } from 'settline/units';
import { expectMisprint, expectPrinted } from '../printed.js';

/** Degrees, minutes and seconds as seconds. */
const seconds = (degrees: number, minutes: number, rest: number): number =>
  degrees * 3600 + minutes * 60 + rest;

/** An angle as it is printed in degrees, minutes and whole seconds. */
function expectPrintedAngle(angle: Angle | undefined, printed: readonly [number, number, number]) {
  expectPrinted((angle?.toNumber('deg') ?? Number.NaN) * 3600, `${seconds(...printed)}`);
}

describe('a curve by deflection angles', () => {
  // Surveying lecture, deflection-angle method (worked textbook example), R = 200 m, 30 deg. Read.
  const table = deflectionTable({
    radius: '200 m',
    turn: '30 deg',
    spacing: '20 m',
    intersection: '2259.59 m',
    wholeStations: true,
  });

  test('tangent, arc and stations', () => {
    expectPrinted(table.tangent.toNumber('m'), '53.59');
    expectPrinted(table.start.toNumber('m'), '2206.00');
    expectPrinted(table.arcLength.toNumber('m'), '104.72');
    expectPrinted(table.end.toNumber('m'), '2310.72');
  });

  test('sub-chords and deflections', () => {
    const steps = table.rows.slice(1).map(({ fromPrevious }) => fromPrevious);
    expect(steps).toHaveLength(6);
    expectPrinted(steps[0]?.arc.toNumber('m') ?? Number.NaN, '14.00');
    expect(steps.slice(1, 5).map(({ arc }) => arc.to('m').toString())).toEqual([
      '20',
      '20',
      '20',
      '20',
    ]);
    expectPrinted(steps[5]?.arc.toNumber('m') ?? Number.NaN, '10.72');
    expectPrintedAngle(steps[0]?.deflection, [2, 0, 19]);
    expectPrintedAngle(steps[1]?.deflection, [2, 51, 53]);
    expectPrintedAngle(steps[5]?.deflection, [1, 32, 8]);
  });

  test('the deflections add up to half the turn', () => {
    const sum = (table.rows.at(-1)?.deflection.toNumber('deg') ?? Number.NaN) * 3600;
    // printed 14-59-59: the sum of angles that were rounded one by one
    expectMisprint(sum, `${seconds(14, 59, 59)}`, `${seconds(15, 0, 0)}`);
  });

  test('long chord, middle ordinate and external (derived)', () => {
    expectPrinted(table.chord.toNumber('m'), '103.5276');
    expectPrinted(table.middleOrdinate.toNumber('m'), '6.8148');
    expectPrinted(table.external.toNumber('m'), '7.0552');
  });
});

describe('a curve table of eight rows', () => {
  // Open-access surveying library, horizontal curves self-study set 2, problem (1). Read; the radius
  // of 800 ft follows from the degree of curve of 7-09-43.1
  const table = deflectionTable({
    radius: '800 ft',
    turn: { value: '164985/3600', unit: 'deg' }, // 45-49-45
    spacing: '100 ft',
    start: '5084.98 ft',
    wholeStations: true,
  });
  // station, arc, deflection, total chord, from the end back as printed
  const printed = [
    ['5724.88', '639.90', [22, 54, 52], '622.97'],
    ['5700', '615.02', [22, 1, 26], '599.99'],
    ['5600', '515.02', [18, 26, 34], '506.18'],
    ['5500', '415.02', [14, 51, 43], '410.38'],
    ['5400', '315.02', [11, 16, 51], '312.99'],
    ['5300', '215.02', [7, 42, 0], '214.38'],
    ['5200', '115.02', [4, 7, 8], '114.92'],
    ['5100', '15.02', [0, 32, 17], '15.02'],
  ] as const;

  test.each(printed)('station %s', (station, arc, deflection, chord) => {
    const row = table.rows.find(
      (one) => Math.abs(one.station.toNumber('ft') - Number(station)) < 0.01,
    );
    expectPrinted(row?.arc.toNumber('ft') ?? Number.NaN, arc);
    // the page carries the degree of curve, rounded to 0.1 second: its angles are good to a second,
    // its chords to 0.01 ft
    const off =
      (row?.deflection.toNumber('deg') ?? Number.NaN) * 3600 -
      seconds(deflection[0], deflection[1], deflection[2]);
    expect(Math.abs(off)).toBeLessThan(1);
    expect(Math.abs((row?.chord.toNumber('ft') ?? Number.NaN) - Number(chord))).toBeLessThan(0.01);
  });

  test('elements, and three misprints', () => {
    expectPrinted(table.tangent.toNumber('ft'), '338.17');
    expectPrinted(table.chord.toNumber('ft'), '622.97');
    expectPrinted(table.middleOrdinate.toNumber('ft'), '63.131'); // derived
    expectPrinted(table.external.toNumber('ft'), '68.54'); // derived
    // the header prints 693.90: digits swapped, the table and the geometry say 639.90
    expectMisprint(table.arcLength.toNumber('ft'), '693.90', '639.90');
    // the last deflection prints 24-54-52: half of 45-49-45 is 22-54-52
    const last = (table.rows.at(-1)?.deflection.toNumber('deg') ?? Number.NaN) * 3600;
    expect(Math.abs(last - seconds(22, 54, 52))).toBeLessThanOrEqual(0.5);
    expect(Math.abs(last - seconds(24, 54, 52))).toBeGreaterThan(7000);
    // the arc at 57+00 prints 615.20: the stations give 615.02, which its angle and chord match
    expectMisprint(table.rows.at(-2)?.arc.toNumber('ft') ?? Number.NaN, '615.20', '615.02');
  });
});

test('deflection to a plus station', () => {
  // University horizontal-curve slides (deflection to a plus station), slide 4. Read.
  const { rows } = deflectionTable({
    radius: '1432.39 ft',
    turn: { value: '76.62/1432.39', unit: 'rad' },
    spacing: '100 ft',
  });
  expect(rows).toHaveLength(2);
  expectPrintedAngle(rows[1]?.deflection, [1, 31, 57]);
  expectPrinted(rows[1]?.chord.toNumber('ft') ?? Number.NaN, '76.61');
});

test('offset from the tangent', () => {
  // Offset from tangent, approximate and exact, verification line. Read.
  const { rows } = tangentOffsets({ radius: '300 m', length: '10 m', spacing: '10 m' });
  const exact = rows[1]?.offset.toNumber('m') ?? Number.NaN;
  expectPrinted(exact, '0.166713');
  // x^2 / (2 R), the approximate form, is printed as 0.1667
  expectPrinted(exact, '0.1667');
});

test('curve elements for R = 280 m, 60 deg', () => {
  // Curve elements for R = 280 m, 60 deg, worked page. Read: chord, arc and tangent. The page's table
  // of offsets mixes tangent offsets in and has slips of arithmetic, so it is not used; the ordinates
  // here are derived.
  const curve = fillet({ turn: '60 deg', radius: '280 m' });
  expectPrinted(curve.chord.toNumber('m'), '280.00');
  // 293.2153 is printed cut off, not rounded
  expectMisprint(curve.arcLength.toNumber('m'), '293.21', '293.22');
  expectPrinted(curve.tangent.toNumber('m'), '161.66');
  expectPrinted(curve.middleOrdinate.toNumber('m'), '37.5129');
  const { rows } = chordOffsets({
    chord: '280 m',
    middleOrdinate: curve.middleOrdinate,
    spacing: '20 m',
  });
  const ordinates = ['37.513', '36.798', '34.641', '31.009', '25.841', '19.047', '10.495', '0.000'];
  const half = rows.filter(({ fromMiddle }) => !fromMiddle.isNegative());
  expect(half).toHaveLength(ordinates.length);
  ordinates.forEach((printed, k) => {
    expectPrinted(half[k]?.offset.toNumber('m') ?? Number.NaN, printed);
  });
});

test('radius and degree of curve', () => {
  // Civil Engineering Formulas, chapter 11, equations 11.1 to 11.4: R = 5729.578 / D for an arc of
  // 100 ft, R = 50 / sin(D / 2) for a chord of 100 ft. Formulas read, 4 degree values derived.
  const arc = (radius: string, turn: string) => fillet({ radius, turn }).arcLength.toNumber('ft');
  expectPrinted(arc('5729.578 ft', '1 deg'), '100.00000');
  expectPrinted(arc('1432.3945 ft', '4 deg'), '100.00000');
  expectPrinted(
    fillet({ radius: '1432.6854 ft', turn: '4 deg' }).chord.toNumber('ft'),
    '100.00000',
  );
});

test('middle ordinate under a straightedge of 3 m', () => {
  // Closed form, derived: M = R - sqrt(R^2 - c^2 / 4)
  const printed = {
    5: '230.303993',
    10: '113.140033',
    25: '45.040573',
    50: '22.505065',
    100: '11.250633',
    300: '3.750023',
  };
  for (const [radius, ordinate] of Object.entries(printed)) {
    const { rows } = tangentOffsets({ radius: `${radius} m`, length: '1.5 m', spacing: '1.5 m' });
    expectPrinted(rows[1]?.offset.toNumber('mm') ?? Number.NaN, ordinate);
    const back = arcFromChord({ chord: '3 m', middleOrdinate: rows[1]?.offset ?? '0 m' });
    expect(back.radius?.toNumber('m')).toBeCloseTo(Number(radius), 12);
  }
});

describe('formula map: invented examples, computed by an independent script', () => {
  test('arc from chord', () => {
    const arc = arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m', uncertainty: '5 mm' });
    expect(arc.radius?.to('m').toString()).toBe('4.25');
    expectPrinted(arc.radiusUncertainty?.toNumber('mm') ?? Number.NaN, '37.5');
  });

  test('offsets from the chord and the tangent', () => {
    const { rows } = chordOffsets({ chord: '4 m', middleOrdinate: '0.5 m', spacing: '0.5 m' });
    const fromMiddle = rows.slice(4).map(({ offset }) => offset.toNumber('m'));
    ['0.5000', '0.4705', '0.3807', '0.2265', '0.0000'].forEach((printed, k) => {
      expectPrinted(fromMiddle[k] ?? Number.NaN, printed);
    });
    const tangent = tangentOffsets({ radius: '4.25 m', length: '1 m', spacing: '1 m' });
    expectPrinted(tangent.rows[1]?.offset.toNumber('m') ?? Number.NaN, '0.1193');
  });

  test('stake spacing on a curve', () => {
    const { chord } = stakeSpacing({ radius: '6 m', deviation: '3 mm' });
    expectPrinted(chord.toNumber('m'), '0.3794');
    // the approximate form sqrt(8 R d) is printed as 0.3795
    expect(Math.sqrt(8 * 6 * 0.003) - chord.toNumber('m')).toBeCloseTo(0.00005, 5);
  });

  test('rounded corner', () => {
    const corner = fillet({ turn: '72 deg', radius: '3 m' });
    expectPrinted(corner.tangent.toNumber('m'), '2.1796');
    expectPrinted(corner.arcLength.toNumber('m'), '3.7699');
    expectPrinted(corner.external.toNumber('m'), '0.7082');
    expectPrinted(corner.cornerArea.toNumber('m2'), '0.884');
  });

  test('circle through three stakes', () => {
    const { centre, radius, residuals } = circleThrough({
      points: [
        { x: '0 m', y: '0 m' },
        { x: '2 m', y: '0.42 m' },
        { x: '4 m', y: '0.1 m' },
      ],
    });
    expectPrinted(centre.x.toNumber('m'), '2.1306');
    expectPrinted(centre.y.toNumber('m'), '-5.1738');
    expectPrinted(radius.toNumber('m'), '5.5953');
    expect(residuals.every((one) => one.isZero())).toBe(true);
  });
});
