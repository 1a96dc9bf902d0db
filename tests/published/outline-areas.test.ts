import { describe, expect, test } from 'vitest';
import {
  areaByBearings,
  areaByOffsets,
  outlineArea,
  ringArea,
  ringMeasures,
  widenOutline,
} from 'settline/outline';
import type { LengthUnit } from 'settline/units';
import { expectMisprint, expectPrinted } from '../printed.js';

type Rows = readonly (readonly number[])[];

/** Corners from latitudes and departures as printed. */
function walked(latitudes: readonly string[], departures: readonly string[], unit: LengthUnit) {
  let [x, y] = [0, 0];
  const points = latitudes.map((latitude, index): [string, string] => {
    const corner: [string, string] = [x.toFixed(3), y.toFixed(3)];
    x += Number(departures[index]);
    y += Number(latitude);
    return corner;
  });
  return { outline: { unit, points } };
}

const lengths = (values: readonly number[], unit: LengthUnit) =>
  values.map((value) => ({ value, unit }));

describe('area by coordinates', () => {
  test('a field by cross staff', () => {
    // Surveying and Levelling, textbook 1994 (open textbook-companion notebooks), p. 207 problem 1.
    // Read: 6975 m2, in the parts 420 + 2250 + 1305 + 600 + 2000 + 400.
    const points: [number, number][] = [
      [0, 0],
      [20, 42],
      [65, 58],
      [110, 0],
      [90, -60],
      [40, -20],
    ];
    const { area } = outlineArea({ outline: { unit: 'm', points } });
    expect(area.to('m2').toString()).toBe('6975');
    expect(ringArea(Float64Array.from(points.flat()))).toBe(6975);
    const parts: Rows = [
      [0, 0, 20, 0, 20, 42],
      [20, 0, 65, 0, 65, 58, 20, 42],
      [65, 0, 110, 0, 65, 58],
      [0, 0, 40, 0, 40, -20],
      [40, 0, 90, 0, 90, -60, 40, -20],
      [90, 0, 110, 0, 90, -60],
    ];
    expect(parts.map((part) => ringArea(Float64Array.from(part)))).toEqual([
      420, 2250, 1305, 400, 2000, 600,
    ]);
  });

  test('two cross sections by offset and height', () => {
    // Surveying and Levelling, textbook 1994 (notebooks), p. 251 problem 10. Read: 21.1375, 25.9875.
    const first: [number, number][] = [
      [-3, 0],
      [-5.5, 2.2],
      [-3, 1.75],
      [0, 1.5],
      [5.25, 4.75],
      [7.3, 6.4],
      [3, 0],
    ];
    const second: [number, number][] = [
      [-3, 0],
      [-5.25, 3.1],
      [-3, 2.2],
      [0, 2],
      [6, 5.25],
      [8.5, 7.4],
      [3, 0],
    ];
    const areaOf = (points: [number, number][]) =>
      outlineArea({ outline: { unit: 'm', points } })
        .area.to('m2')
        .toString();
    expect([areaOf(first), areaOf(second)]).toEqual(['21.1375', '25.9875']);
  });

  test('a small quadrilateral', () => {
    // Quadrilateral shoelace, small worked figure. Read: 33350, perimeter 751.7.
    const { area, perimeter } = ringMeasures(Float64Array.of(60, 60, 280, 70, 290, 220, 50, 200));
    expect(area).toBe(33350);
    expectPrinted(perimeter, '751.7');
  });

  test('six courses by latitude and departure', () => {
    // Area computation example (six courses, DMD and DPD agree), example problem 1. Read.
    // The printed double areas by the two methods differ by 0.02: rounding.
    const { outline } = walked(
      ['490.71', '587.12', '-327.41', '-1002.76', '-122.67', '375.01'],
      ['47.27', '608.89', '786.78', '218.32', '-1116.62', '-544.64'],
      'm',
    );
    const area = outlineArea({ outline }).area.toNumber('m2');
    expectPrinted(area, '1715096.27');
    expectMisprint(2 * area, '3430192.54', '3430192.55');
    expectMisprint(2 * area, '3430192.56', '3430192.55');
  });
});

describe('area by bearings and distances', () => {
  test('four courses, compass rule, double meridian distances', () => {
    // Open-access surveying library, traverse computations, Figure I-5 bearing traverse and chapter G
    // example 5a. Read; the stored table had lost the minus signs of its double meridian distances.
    const { courses, closure, perimeter, area } = areaByBearings({
      courses: [
        { bearing: 'S 68-05-35 W', distance: '472.68 ft' },
        { bearing: 'N 19-46-00 W', distance: '216.13 ft' },
        { bearing: 'N 45-55-20 E', distance: '276.52 ft' },
        { bearing: 'S 54-59-15 E', distance: '382.24 ft' },
      ],
    });
    const column = (name: 'latitude' | 'departure' | 'adjustedLatitude' | 'adjustedDeparture') =>
      courses.map((course) => course[name].toNumber('ft'));
    const expectColumn = (name: Parameters<typeof column>[0], printed: readonly string[]) =>
      column(name).forEach((value, row) => expectPrinted(value, printed[row] ?? ''));
    expectColumn('latitude', ['-176.357', '203.395', '192.357', '-219.312']);
    expectColumn('departure', ['-438.548', '-73.093', '198.651', '313.065']);
    expectPrinted(perimeter.toNumber('ft'), '1347.57');
    expectPrinted(closure.latitude.toNumber('ft'), '0.083');
    // printed as the sum of rounded departures
    expectMisprint(closure.departure.toNumber('ft'), '0.075', '0.074');
    expectColumn('adjustedLatitude', ['-176.386', '203.382', '192.340', '-219.336']);
    // the third is printed 198.635, worked from rounded departures
    expectColumn('adjustedDeparture', ['-438.574', '-73.105', '198.636', '313.044']);
    expectMisprint(column('adjustedDeparture')[2] ?? 0, '198.635', '198.636');
    // the printed area comes from latitudes rounded to 0.001: 0.04 ft2 more
    expectMisprint(area.toNumber('ft2'), '102935.75', '102935.71');
    const asPrinted = walked(
      ['-176.386', '203.382', '192.340', '-219.336'],
      ['-438.574', '-73.105', '198.635', '313.044'],
      'ft',
    );
    // and from products rounded to 0.1, whose half sum it is
    expectPrinted(outlineArea(asPrinted).area.toNumber('ft2'), '102935.7');
    expect((77358.3 - 193264.4 - 158627.2 + 68661.8) / 2).toBeCloseTo(-102935.75, 6);
    // worked out here from the printed columns: 1 in 12 100
    expect(closure.oneIn?.toNumber()).toBeGreaterThan(12_050);
    expect(closure.oneIn?.toNumber()).toBeLessThan(12_150);
    const printed = ['-438.574', '-950.253', '-824.723', '-313.044'];
    courses.forEach(({ doubleMeridianDistance }, row) => {
      // chained from departures rounded to 0.001
      const off = Math.abs(doubleMeridianDistance.toNumber('ft') - Number(printed[row]));
      expect(off).toBeLessThan(0.0015);
    });
  });

  test('another four courses, with the misclosure', () => {
    // Closed polygon traverse exercise with printed latitudes and departures, answer text. Read.
    const { courses, closure } = areaByBearings({
      courses: [
        { bearing: 'N 22-36-40 W', distance: '314.02 ft' },
        { bearing: 'S 60-39-24 W', distance: '264.49 ft' },
        { bearing: 'S 38-46-10 E', distance: '213.5 ft' },
        { bearing: 'N 88-22-58 E', distance: '217.69 ft' },
      ],
    });
    const departures = ['-120.733', '-230.556', '133.691', '217.603'];
    const latitudes = ['289.883', '-129.611', '-166.460', '6.144'];
    courses.forEach(({ latitude, departure }, row) => {
      expectPrinted(latitude.toNumber('ft'), latitudes[row] ?? '');
      expectPrinted(departure.toNumber('ft'), departures[row] ?? '');
    });
    expectPrinted(closure.distance.toNumber('ft'), '0.045');
    // printed 1 in 22 500, to three figures
    expectPrinted((closure.oneIn?.toNumber() ?? 0) / 100, '225');
  });

  test('degrees in decimals', () => {
    // Review problem, area by DMD, situation 1. Read: double area 24932.34556, area 12466.1728 from
    // latitudes and departures rounded to 0.001.
    const { courses, area } = areaByBearings({
      courses: [
        { bearing: 'N 30 E', distance: '120.2 m' },
        { bearing: 'N 78 E', distance: '90.2 m' },
        { bearing: 'S 32 E', distance: '88.4 m' },
        { bearing: 'S 76.215 W', distance: '200.96 m' },
      ],
    });
    const latitudes = ['104.096', '18.754', '-74.967', '-47.885'];
    const departures = ['60.100', '88.229', '46.845', '-195.172'];
    courses.forEach(({ latitude, departure }, row) => {
      expectPrinted(latitude.toNumber('m'), latitudes[row] ?? '');
      expectPrinted(departure.toNumber('m'), departures[row] ?? '');
    });
    expect(Math.abs(area.toNumber('m2') - 12466.1728)).toBeLessThan(0.3);
    // double meridian distances times latitudes, as printed
    const distances = [60.1, 208.429, 343.503, 195.176];
    const double = distances.reduce((sum, dmd, k) => sum + dmd * Number(latitudes[k]), 0);
    expectPrinted(Math.abs(double), '24932.345');
  });
});

describe('area by offsets', () => {
  test('ten offsets: Simpson over eight strips, a trapezoid for the ninth', () => {
    // Surveying and Levelling, textbook 1994 (notebooks), p. 216 problem 2, and slides that agree.
    // Read: 820.125, 756, 57.375, 813.375.
    const { trapezoid, simpson, lastStrip } = areaByOffsets({
      offsets: lengths([3.5, 4.3, 6.75, 5.25, 7.5, 8.8, 7.9, 6.4, 4.4, 3.25], 'm'),
      spacing: '15 m',
    });
    expect(trapezoid.to('m2').toString()).toBe('820.125');
    expect(simpson?.to('m2').toString()).toBe('813.375');
    expect(lastStrip?.to('m2').toString()).toBe('57.375');
    expect(lastStrip && simpson?.minus(lastStrip).to('m2').toString()).toBe('756');
  });

  test('regular and irregular spacing', () => {
    // Offset-area examples (regular and irregular spacing), slides. Read: 2860 and 4492 ft2.
    const regular = areaByOffsets({
      offsets: lengths([0, 5.2, 8.7, 9.2, 4.9, 10.4, 5.2, 12.2, 2.8], 'ft'),
      spacing: '50 ft',
    });
    expectPrinted(regular.trapezoid.toNumber('ft2'), '2860');
    const irregular = areaByOffsets({
      offsets: lengths([7.2, 11.9, 14.4, 6, 6.1, 11.8, 12.4], 'ft'),
      spacing: lengths([60, 80, 100, 30, 105, 60], 'ft'),
    });
    expectPrinted(irregular.trapezoid.toNumber('ft2'), '4492');
    expect(irregular.simpson).toBeNull();
  });

  test('seven offsets of an invented walk', () => {
    // formula map, area-offsets: invented example. Simpson 18.1, trapezoid 17.55.
    const { trapezoid, simpson, difference } = areaByOffsets({
      offsets: lengths([0, 1.9, 2.6, 2.8, 2.4, 1.7, 0.6], 'm'),
      spacing: '1.5 m',
    });
    expectPrinted(trapezoid.toNumber('m2'), '17.55');
    expectPrinted(simpson?.toNumber('m2') ?? 0, '18.1');
    expectPrinted(
      (100 * (difference?.toNumber('m2') ?? 0)) / (simpson?.toNumber('m2') ?? 1),
      '3.04',
    );
  });
});

describe('arcs and widening', () => {
  test('a bulge over a chord', () => {
    // formula map, area-arc-segment: invented example. C = 4, M = 0.5: area 1.3499, arc 4.1646.
    const arcs = [{ edge: 0, bulgeMiddleOrdinate: 0.5 }];
    const points: [number, number][] = [
      [0, 0],
      [4, 0],
      [2, 3],
    ];
    const straight = outlineArea({ outline: { unit: 'm', points } });
    const bulged = outlineArea({ outline: { unit: 'm', points, arcs } });
    expectPrinted(bulged.area.minus(straight.area).toNumber('m2'), '1.3499');
    expectPrinted(bulged.perimeter.minus(straight.perimeter).toNumber('m') + 4, '4.1646');
  });

  test('a curved walk of constant width', () => {
    // formula map, annular-walk: invented example. 3 m inside, 1.2 m wide, 80 degrees: 6.0319 m2,
    // edges 4.1888 and 5.8643 m. Width times centre line.
    const half = (40 * Math.PI) / 180;
    const at = (radius: number, sign: number): [number, number] => [
      sign * radius * Math.sin(half),
      radius * Math.cos(half),
    ];
    const outline = {
      unit: 'm',
      points: [at(3, -1), at(3, 1), at(4.2, 1), at(4.2, -1)],
      arcs: [
        { edge: 0, bulgeMiddleOrdinate: -3 * (1 - Math.cos(half)) },
        { edge: 2, bulgeMiddleOrdinate: 4.2 * (1 - Math.cos(half)) },
      ],
    } as const;
    const { area, perimeter } = outlineArea({ outline });
    expectPrinted(area.toNumber('m2'), '6.0319');
    expectPrinted(perimeter.toNumber('m') - 2.4, (4.1888 + 5.8643).toFixed(4));
  });

  test('a 3-4-5 triangle moved out by 1', () => {
    // Parallel-set area formula for a convex polygon, question and answer text. Read (round corners):
    // A + P d + pi d^2 = 21.141592653589793; the mitred form is derived: 24.
    const triangle = {
      unit: 'm',
      points: [
        [0, 0],
        [3, 0],
        [0, 4],
      ],
    } as const;
    const round = widenOutline({ outline: triangle, by: '1 m', corners: 'round' });
    expectPrinted(round.area.toNumber('m2'), '21.141592653589793');
    const mitred = widenOutline({ outline: triangle, by: '1 m', corners: 'mitred' });
    expect(mitred.area.to('m2').toString()).toBe('24');
  });
});
