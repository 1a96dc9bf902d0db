import { describe, expect } from 'vitest';
import { chordOffsets, deflectionTable, fillet, tangentOffsets } from 'settline/stakes';
import type { Angle } from 'settline/units';
import {
  expectDerived,
  expectExact,
  expectMisprint,
  expectPrinted,
  expectWithin,
} from '../printed.js';
import { published, publishedEach } from './published.js';

/** Degrees, minutes and seconds as seconds. */
const seconds = (degrees: number, minutes: number, rest: number): number =>
  degrees * 3600 + minutes * 60 + rest;

/** An angle as it is printed in degrees, minutes and whole seconds. */
function expectPrintedAngle(angle: Angle | undefined, printed: readonly [number, number, number]) {
  expectPrinted((angle?.toNumber('deg') ?? Number.NaN) * 3600, `${seconds(...printed)}`);
}

describe('a curve by deflection angles', () => {
  const table = deflectionTable({
    radius: '200 m',
    turn: '30 deg',
    spacing: '20 m',
    intersection: '2259.59 m',
    wholeStations: true,
  });

  published(
    { source: 'deflection-lecture', section: 'R = 200 m, 30 degrees', kind: 'printed' },
    'tangent, arc and stations',
    () => {
      expectPrinted(table.tangent.toNumber('m'), '53.59');
      expectPrinted(table.start.toNumber('m'), '2206.00');
      expectPrinted(table.arcLength.toNumber('m'), '104.72');
      expectPrinted(table.end.toNumber('m'), '2310.72');
    },
  );

  published(
    { source: 'deflection-lecture', section: 'R = 200 m, 30 degrees', kind: 'printed' },
    'sub-chords and deflections',
    () => {
      const steps = table.rows.slice(1).map(({ fromPrevious }) => fromPrevious);
      expect(steps).toHaveLength(6);
      expectPrinted(steps[0]?.arc.toNumber('m') ?? Number.NaN, '14.00');
      expectExact(
        steps.slice(1, 5).map(({ arc }) => arc.to('m').toString()),
        ['20', '20', '20', '20'],
      );
      expectPrinted(steps[5]?.arc.toNumber('m') ?? Number.NaN, '10.72');
      expectPrintedAngle(steps[0]?.deflection, [2, 0, 19]);
      expectPrintedAngle(steps[1]?.deflection, [2, 51, 53]);
      expectPrintedAngle(steps[5]?.deflection, [1, 32, 8]);
    },
  );

  published(
    { source: 'deflection-lecture', section: 'R = 200 m, 30 degrees', kind: 'printed' },
    'the deflections add up to half the turn',
    () => {
      const sum = (table.rows.at(-1)?.deflection.toNumber('deg') ?? Number.NaN) * 3600;
      // printed 14-59-59: the sum of angles that were rounded one by one
      expectMisprint(sum, `${seconds(14, 59, 59)}`, `${seconds(15, 0, 0)}`);
    },
  );

  published(
    {
      source: 'deflection-lecture',
      section: 'R = 200 m, 30 degrees, closed form',
      kind: 'derived',
    },
    'long chord, middle ordinate and external (derived)',
    () => {
      expectPrinted(table.chord.toNumber('m'), '103.5276');
      expectPrinted(table.middleOrdinate.toNumber('m'), '6.8148');
      expectPrinted(table.external.toNumber('m'), '7.0552');
    },
  );
});

describe('a curve table of eight rows', () => {
  // the radius of 800 ft follows from the degree of curve of 7-09-43.1
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

  publishedEach(
    {
      source: 'open-surveying-library',
      section: 'horizontal curves, self-study set 2, problem (1), curve table',
      kind: 'printed',
    },
    printed,
  )('station %s', ([station, arc, deflection, chord]) => {
    const row = table.rows.find(
      (one) => Math.abs(one.station.toNumber('ft') - Number(station)) < 0.01,
    );
    expectPrinted(row?.arc.toNumber('ft') ?? Number.NaN, arc);
    // the page carries the degree of curve rounded to 0.1 second
    const because = 'worked out on the page from a rounded degree of curve';
    const angle = (row?.deflection.toNumber('deg') ?? Number.NaN) * 3600;
    const printed = `${seconds(deflection[0], deflection[1], deflection[2])}`;
    expectWithin(angle, printed, { within: 1, because });
    const total = row?.chord.toNumber('ft') ?? Number.NaN;
    expectWithin(total, chord, { within: 0.01, because });
  });

  published(
    {
      source: 'open-surveying-library',
      section: 'horizontal curves, self-study set 2, problem (1)',
      kind: 'printed',
    },
    'elements, and three misprints',
    () => {
      expectPrinted(table.tangent.toNumber('ft'), '338.17');
      expectPrinted(table.chord.toNumber('ft'), '622.97');
      expectDerived(table.middleOrdinate.toNumber('ft'), '63.131');
      expectDerived(table.external.toNumber('ft'), '68.54');
      // the header prints 693.90: digits swapped, the table and the geometry say 639.90
      expectMisprint(table.arcLength.toNumber('ft'), '693.90', '639.90');
      // the last deflection prints 24-54-52: half of 45-49-45 is 22-54-52
      const last = (table.rows.at(-1)?.deflection.toNumber('deg') ?? Number.NaN) * 3600;
      expectMisprint(last, `${seconds(24, 54, 52)}`, `${seconds(22, 54, 52)}`);
      // the arc at 57+00 prints 615.20: the stations give 615.02, which its angle and chord match
      expectMisprint(table.rows.at(-2)?.arc.toNumber('ft') ?? Number.NaN, '615.20', '615.02');
    },
  );
});

published(
  { source: 'horizontal-curve-slides', section: 'slide 4', kind: 'printed' },
  'deflection to a plus station',
  () => {
    const { rows } = deflectionTable({
      radius: '1432.39 ft',
      turn: { value: '76.62/1432.39', unit: 'rad' },
      spacing: '100 ft',
    });
    expect(rows).toHaveLength(2);
    expectPrintedAngle(rows[1]?.deflection, [1, 31, 57]);
    expectPrinted(rows[1]?.chord.toNumber('ft') ?? Number.NaN, '76.61');
  },
);

published(
  { source: 'tangent-offset-note', section: 'verification line', kind: 'printed' },
  'offset from the tangent',
  () => {
    const { rows } = tangentOffsets({ radius: '300 m', length: '10 m', spacing: '10 m' });
    const exact = rows[1]?.offset.toNumber('m') ?? Number.NaN;
    expectPrinted(exact, '0.166713');
    // x^2 / (2 R), the approximate form, is printed as 0.1667
    expectPrinted(exact, '0.1667');
  },
);

published(
  { source: 'curve-elements', section: 'whole page', kind: 'printed' },
  'curve elements for R = 280 m, 60 deg',
  () => {
    // chord, arc and tangent are printed; the page's table of offsets mixes tangent offsets in and
    // has slips of arithmetic, so it is not used
    const curve = fillet({ turn: '60 deg', radius: '280 m' });
    expectPrinted(curve.chord.toNumber('m'), '280.00');
    // 293.2153 is printed cut off, not rounded
    expectMisprint(curve.arcLength.toNumber('m'), '293.21', '293.22');
    expectPrinted(curve.tangent.toNumber('m'), '161.66');
    expectDerived(curve.middleOrdinate.toNumber('m'), '37.5129');
    const { rows } = chordOffsets({
      chord: '280 m',
      middleOrdinate: curve.middleOrdinate,
      spacing: '20 m',
    });
    const ordinates = [
      '37.513',
      '36.798',
      '34.641',
      '31.009',
      '25.841',
      '19.047',
      '10.495',
      '0.000',
    ];
    const half = rows.filter(({ fromMiddle }) => !fromMiddle.isNegative());
    expect(half).toHaveLength(ordinates.length);
    ordinates.forEach((printed, k) => {
      expectDerived(half[k]?.offset.toNumber('m') ?? Number.NaN, printed);
    });
  },
);

published(
  { source: 'civil-formulas', section: 'chapter 11, equations 11.1 to 11.4', kind: 'derived' },
  'radius and degree of curve',
  () => {
    // R = 5729.578 / D for an arc of 100 ft, R = 50 / sin(D / 2) for a chord of 100 ft
    const arc = (radius: string, turn: string) => fillet({ radius, turn }).arcLength.toNumber('ft');
    expectPrinted(arc('5729.578 ft', '1 deg'), '100.00000');
    expectPrinted(arc('1432.3945 ft', '4 deg'), '100.00000');
    expectPrinted(
      fillet({ radius: '1432.6854 ft', turn: '4 deg' }).chord.toNumber('ft'),
      '100.00000',
    );
  },
);
