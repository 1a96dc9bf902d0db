import { describe, expect } from 'vitest';
import { ringArea, ringMeasures } from 'settline/geometry';
import { areaByBearings, areaByOffsets, outlineArea, widenOutline } from 'settline/outline';
import type { LengthUnit } from 'settline/units';
import {
  expectDerived,
  expectExact,
  expectMisprint,
  expectPrinted,
  expectWithin,
} from '../printed.js';
import { published } from './published.js';

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
  published(
    { source: 'surveying-and-levelling', section: 'p. 207, problem 1', kind: 'printed' },
    'a field by cross staff',
    () => {
      // in the parts 420 + 2250 + 1305 + 600 + 2000 + 400
      const points: [number, number][] = [
        [0, 0],
        [20, 42],
        [65, 58],
        [110, 0],
        [90, -60],
        [40, -20],
      ];
      const { area } = outlineArea({ outline: { unit: 'm', points } });
      expectExact(area.to('m2').toString(), '6975');
      expectExact(ringArea(Float64Array.from(points.flat())), 6975);
      const parts: Rows = [
        [0, 0, 20, 0, 20, 42],
        [20, 0, 65, 0, 65, 58, 20, 42],
        [65, 0, 110, 0, 65, 58],
        [0, 0, 40, 0, 40, -20],
        [40, 0, 90, 0, 90, -60, 40, -20],
        [90, 0, 110, 0, 90, -60],
      ];
      expectExact(
        parts.map((part) => ringArea(Float64Array.from(part))),
        [420, 2250, 1305, 400, 2000, 600],
      );
    },
  );

  published(
    { source: 'surveying-and-levelling', section: 'p. 251, problem 10', kind: 'printed' },
    'two cross sections by offset and height',
    () => {
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
      expectExact([areaOf(first), areaOf(second)], ['21.1375', '25.9875']);
    },
  );

  published(
    { source: 'quadrilateral-figure', section: 'worked figure', kind: 'printed' },
    'a small quadrilateral',
    () => {
      const { area, perimeter } = ringMeasures(Float64Array.of(60, 60, 280, 70, 290, 220, 50, 200));
      expectExact(area, 33350);
      expectPrinted(perimeter, '751.7');
      const points: [number, number][] = [
        [60, 60],
        [280, 70],
        [290, 220],
        [50, 200],
      ];
      const exact = outlineArea({ outline: { unit: 'm', points } });
      expectExact(exact.area.to('m2').toString(), '33350');
      expectPrinted(exact.perimeter.toNumber('m'), '751.7');
      expect(exact.orientation).toBe('counter-clockwise');
    },
  );

  published(
    { source: 'six-course-example', section: 'example problem 1', kind: 'printed' },
    'six courses by latitude and departure',
    () => {
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
    },
  );
});

describe('area by bearings and distances', () => {
  published(
    {
      source: 'open-surveying-library',
      section: 'traverse computations, Figure I-5; chapter G, example 5a',
      kind: 'printed',
    },
    'four courses, compass rule, double meridian distances',
    () => {
      // The stored table had lost the minus signs of its double meridian distances.
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
      expectDerived((77358.3 - 193264.4 - 158627.2 + 68661.8) / 2, '-102935.75');
      // worked out here from the printed columns: 1 in 12 100, in hundreds
      expectDerived((closure.oneIn ?? 0) / 100, '121');
      const printed = ['-438.574', '-950.253', '-824.723', '-313.044'];
      courses.forEach(({ doubleMeridianDistance }, row) => {
        expectWithin(doubleMeridianDistance.toNumber('ft'), printed[row] ?? '', {
          within: 0.0015,
          because: 'chained on the page from departures rounded to 0.001',
        });
      });
    },
  );

  published(
    { source: 'closed-traverse-exercise', section: 'answer text', kind: 'printed' },
    'another four courses, with the misclosure',
    () => {
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
      expectPrinted((closure.oneIn ?? 0) / 100, '225');
    },
  );

  published(
    { source: 'dmd-review-problem', section: 'situation 1', kind: 'printed' },
    'degrees in decimals',
    () => {
      // double area 24932.34556, area 12466.1728 from latitudes and departures rounded to 0.001
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
      expectWithin(area.toNumber('m2'), '12466.1728', {
        within: 0.3,
        because: 'worked out on the page from courses rounded to 0.001',
      });
      // double meridian distances times latitudes, as printed
      const distances = [60.1, 208.429, 343.503, 195.176];
      const double = distances.reduce((sum, dmd, k) => sum + dmd * Number(latitudes[k]), 0);
      expectPrinted(Math.abs(double), '24932.345');
    },
  );
});

describe('area by offsets', () => {
  published(
    { source: 'surveying-and-levelling', section: 'p. 216, problem 2', kind: 'printed' },
    'ten offsets: Simpson over eight strips, a trapezoid for the ninth',
    () => {
      const { trapezoid, simpson, lastStrip } = areaByOffsets({
        offsets: lengths([3.5, 4.3, 6.75, 5.25, 7.5, 8.8, 7.9, 6.4, 4.4, 3.25], 'm'),
        spacing: '15 m',
      });
      expectExact(trapezoid.to('m2').toString(), '820.125');
      expectExact(simpson?.to('m2').toString(), '813.375');
      expectExact(lastStrip?.to('m2').toString(), '57.375');
      expectExact(lastStrip && simpson?.minus(lastStrip).to('m2').toString(), '756');
    },
  );

  published(
    { source: 'offset-slides', section: 'area by offsets', kind: 'printed' },
    'regular and irregular spacing',
    () => {
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
    },
  );
});

describe('arcs and widening', () => {
  published(
    { source: 'parallel-set-question', section: 'answer text', kind: 'printed' },
    'a 3-4-5 triangle moved out by 1',
    () => {
      // A + P d + pi d^2 with round corners is printed; the mitred form is worked out
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
      expectDerived(mitred.area.toNumber('m2'), '24');
    },
  );
});
