// What the functions of settline/stakes say to fields that are misspelt, missing or nonsense.
import { describe, expect, test } from 'vitest';
import {
  arcFromChord,
  checkCorner,
  checkSquare,
  checkStakeLine,
  checkStakeProfile,
  chordOffsets,
  circleThrough,
  deflectionTable,
  fillet,
  planDistance,
  pointByTapes,
  stakeOutliers,
  stakeSpacing,
  tangentOffsets,
  threeFourFive,
} from 'settline/stakes';
import { faultsOf } from '../faults.js';
import { testGarbage, type GarbageCase } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const inPlan = [0, 1, -1, 1].map((mm, k) => ({ id: `S${k}`, x: `${3 * k} m`, y: `${mm} mm` }));
const inProfile = inPlan.map(({ id, x, y }) => ({ id, station: x, elevation: y }));
const spot = { x: '0 m', y: '0 m' };
const curve = [
  { id: 'a', x: '5 m', y: '0 m' },
  { id: 'b', x: '3 m', y: '4 m' },
  { id: 'c', x: '-4 m', y: '3 m' },
];

const cases: Readonly<Record<string, MisspeltCase>> = {
  checkStakeLine: [
    checkStakeLine,
    { stakes: inPlan, tolerance: '2 mm', reference: 'ends' },
    [
      ['stake', 'stakes'],
      ['tolrance', 'tolerance'],
      ['refrence', 'reference'],
      ['stakes[1].X', 'x'],
      ['stakes[3].Id', 'id'],
    ],
  ],
  checkStakeProfile: [
    checkStakeProfile,
    { stakes: inProfile, tolerance: '2 mm', reference: 'first' },
    [
      ['tolerence', 'tolerance'],
      ['stakes[0].statoin', 'station'],
      ['stakes[2].elevaton', 'elevation'],
    ],
  ],
  'stakeOutliers in plan': [
    stakeOutliers,
    { stakes: inPlan, tolerance: '1 mm', significance: '0.01' },
    [
      ['significanse', 'significance'],
      ['stakes[1].Y', 'y'],
    ],
  ],
  'stakeOutliers in profile': [
    stakeOutliers,
    { stakes: inProfile },
    [
      ['tolerances', 'tolerance'],
      ['stakes[0].sation', 'station'],
      ['stakes[3].elevations', 'elevation'],
    ],
  ],
  circleThrough: [
    circleThrough,
    { points: curve, tolerance: '1 mm' },
    [
      ['point', 'points'],
      ['points[1].ID', 'id'],
    ],
  ],
  arcFromChord: [
    arcFromChord,
    { chord: '4 m', middleOrdinate: '0.5 m', uncertainty: '1 mm' },
    [
      ['cord', 'chord'],
      ['middleOrdnate', 'middleOrdinate'],
      ['uncertanty', 'uncertainty'],
    ],
  ],
  chordOffsets: [
    chordOffsets,
    { chord: '4 m', middleOrdinate: '0.5 m', spacing: '1 m' },
    [['spaceing', 'spacing']],
  ],
  tangentOffsets: [
    tangentOffsets,
    { radius: '4 m', length: '2 m', spacing: '1 m' },
    [
      ['raduis', 'radius'],
      ['lenght', 'length'],
    ],
  ],
  deflectionTable: [
    deflectionTable,
    { radius: '10 m', turn: '90 deg', spacing: '5 m', start: '3 m', wholeStations: true },
    [
      ['wholeStation', 'wholeStations'],
      ['strat', 'start'],
      ['tern', 'turn'],
    ],
  ],
  fillet: [
    fillet,
    { turn: '90 deg', radius: '1 m', sides: ['3 m', '2 m'] },
    [
      ['raduis', 'radius'],
      ['side', 'sides'],
    ],
  ],
  stakeSpacing: [
    stakeSpacing,
    { radius: '5 m', deviation: '10 mm', length: '6 m' },
    [['deviaton', 'deviation']],
  ],
  checkSquare: [
    checkSquare,
    {
      length: '12 m',
      width: '5 m',
      diagonals: ['13 m', '13 m'],
      sides: { near: '12 m', far: '12 m', left: '5 m', right: '5 m' },
      tolerance: '1 mm',
    },
    [
      ['diagonal', 'diagonals'],
      ['sides.rigth', 'right'],
      ['sides.Near', 'near'],
    ],
  ],
  checkCorner: [
    checkCorner,
    { base: '4 m', side: '3 m', diagonal: '5 m' },
    [
      ['sides', 'side'],
      ['diagnal', 'diagonal'],
    ],
  ],
  threeFourFive: [
    threeFourFive,
    {
      longest: '25 ft',
      step: '1 ft',
      baseLine: { corner: spot, along: { x: '1 m', y: '0 m' }, side: 'left' },
    },
    [
      ['baseline', 'baseLine'],
      ['baseLine.conrer', 'corner'],
      ['baseLine.along.X', 'x'],
    ],
  ],
  pointByTapes: [
    pointByTapes,
    {
      from: [
        { ...spot, distance: '3 m', uncertainty: '1 mm' },
        { x: '5 m', y: '0 m', distance: '4 m', uncertainty: '1 mm' },
      ],
      side: 'left',
    },
    [
      ['form', 'from'],
      ['from[0].distanse', 'distance'],
      ['from[1].uncertanty', 'uncertainty'],
    ],
  ],
  planDistance: [
    planDistance,
    {
      taped: '18 m',
      rise: '1 m',
      hanging: { weightPerLength: '0.2 N/m', tension: '50 N', bays: 2 },
    },
    [
      ['tapped', 'taped'],
      ['hanging.bay', 'bays'],
      ['hanging.weigthPerLength', 'weightPerLength'],
    ],
  ],
};

describe('a misspelt field is refused, with the name that was meant', () => {
  testMisspelt(cases);
});

describe('whatever a field holds, it answers or refuses', () => {
  const garbage = Object.entries(cases).map(
    ([name, [run, valid]]): readonly [string, GarbageCase] => [name, [run, valid]],
  );
  testGarbage(Object.fromEntries(garbage));
});

describe('one bad field is one fault, and hides no other', () => {
  const codes = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${code} ${path.join('.')}`);

  test('faults of form and faults between fields come together', () => {
    expect(
      codes(() =>
        pointByTapes({
          from: [
            { ...spot, distance: '0 m', uncertainty: '1 mm' },
            { x: '5 m', y: '0 m', distance: '4 m' },
          ],
          side: 'up' as never,
        }),
      ),
    ).toEqual([
      'NOT_POSITIVE from.0.distance',
      'REQUIRED from.1.uncertainty',
      'UNKNOWN_CHOICE side',
    ]);
    expect(
      codes(() =>
        deflectionTable({
          radius: '0 m',
          turn: '90 deg',
          spacing: '5 m',
          start: '0 m',
          intersection: '9 m',
        }),
      ),
    ).toEqual(['NOT_POSITIVE radius', 'CONFLICTING_FIELDS intersection']);
    expect(
      codes(() =>
        checkSquare({
          length: '12 m',
          width: 5 as never,
          diagonals: ['13 m', '13 m'],
          sides: { near: '40 m', far: '12 m', left: '5 m', right: '5 m' },
        }),
      ),
    ).toEqual([
      'UNIT_MISSING width',
      'TRIANGLE_IMPOSSIBLE diagonals.0',
      'TRIANGLE_IMPOSSIBLE diagonals.1',
    ]);
  });

  test('what could not be read is not judged against the rest', () => {
    expect(
      codes(() => fillet({ turn: 90 as never, radius: '2 m', sides: ['1 m', '1 m'] })),
    ).toEqual(['UNIT_MISSING turn']);
    expect(codes(() => fillet({ turn: '90 deg', radius: null as never }))).toEqual([
      'WRONG_TYPE radius',
    ]);
    expect(codes(() => checkCorner({ base: '4 m', side: '3 m', diagonal: 'far' }))).toEqual([
      'UNIT_UNKNOWN diagonal',
    ]);
    expect(codes(() => stakeOutliers({ stakes: [...inProfile, { id: 'Z' }] as never }))).toEqual([
      'REQUIRED stakes.4.station',
      'REQUIRED stakes.4.elevation',
    ]);
  });

  test('null is not left out', () => {
    expect(
      codes(() => arcFromChord({ chord: '4 m', middleOrdinate: 0, uncertainty: null as never })),
    ).toEqual(['WRONG_TYPE uncertainty']);
  });
});

describe('what has a default needs not be given', () => {
  test('the ends are held', () => {
    const line = { stakes: inPlan, tolerance: '2 mm' };
    expect(checkStakeLine(line)).toEqual(checkStakeLine({ ...line, reference: 'ends' }));
    const profile = { stakes: inProfile, tolerance: '2 mm' };
    expect(checkStakeProfile(profile)).toEqual(
      checkStakeProfile({ ...profile, reference: 'ends' }),
    );
  });

  test('zero needs no unit', () => {
    expect(checkStakeLine({ stakes: inPlan, tolerance: 0 }).ok).toBe(false);
    expect(arcFromChord({ chord: '4 m', middleOrdinate: '0' }).isStraight).toBe(true);
  });
});

describe('messages speak in the unit of whoever wrote the field', () => {
  const said = (run: () => unknown) => faultsOf(run).map(({ message }) => message);
  const tapes = (a: string, b: string) => () =>
    pointByTapes({
      from: [
        { x: '0 ft', y: '0 ft', distance: a },
        { x: '25 ft', y: '0 ft', distance: b },
      ],
      side: 'left',
    });

  test.each([
    [
      tapes('3 ft', '4 ft'),
      'the tapes are 18 ft short of meeting: 3 ft and 4 ft, with the fixed points 25 ft apart. Tape them again',
    ],
    [
      tapes(`7' 3 5/8"`, '4 ft'),
      `the tapes are 13.6979 ft short of meeting: 7' 3 5/8" and 4 ft, with the fixed points 25 ft apart. Tape them again`,
    ],
    [
      tapes('400 in', '4 ft'),
      'the longer tape is 52 in too long to meet the other: 400 in and 4 ft, with the fixed points 300 in apart. Tape them again',
    ],
    [
      () => planDistance({ taped: '3 yd', rise: '9 ft' }),
      'a rise of 9 ft is not less than the tape, 3 yd. Measure again',
    ],
    [
      () =>
        planDistance({
          taped: { value: 3000, unit: 'cm' },
          rise: '30 m',
          hanging: { weightPerLength: '0.2 N/m', tension: '50 N' },
        }),
      'a rise of 30 m is not less than the tape, 2998.2 cm. Measure again',
    ],
    [
      () => checkCorner({ base: '8 ft', side: '6 ft', diagonal: '15 ft' }),
      'no triangle has sides of 8 ft and 6 ft and a diagonal of 15 ft. Measure again',
    ],
    [
      () => checkSquare({ length: '24 ft', width: '10 ft', diagonals: ['26 ft', '35 ft'] }),
      'no triangle has sides of 24 ft and 10 ft and a diagonal of 35 ft. Measure again',
    ],
    [
      () => fillet({ turn: '90 deg', radius: '6 ft', sides: ['7 ft', '5 ft'] }),
      'the arc would begin 6 ft from the corner, and a side has only 5 ft. Round it off by less',
    ],
    [
      () => chordOffsets({ chord: '16 ft', middleOrdinate: '9 ft', spacing: '1 ft' }),
      '9 ft is more than half the chord of 16 ft, so the arc is more than half a circle. Set it out in two parts',
    ],
    [
      () => tangentOffsets({ radius: '12 ft', length: '13 ft', spacing: '1 ft' }),
      '13 ft is past the end of the arc. Write no more than the radius, 12 ft',
    ],
    [
      () => stakeSpacing({ radius: '12 ft', deviation: '13 ft' }),
      '13 ft is more than the radius, 12 ft. Write how far the string may be off the curve',
    ],
    [
      () => threeFourFive({ longest: '28 ft', step: '6 ft' }),
      'five steps of 6 ft are longer than 28 ft. Write a shorter step',
    ],
    [
      () => arcFromChord({ chord: '16 ft', middleOrdinate: { value: '1e-25', unit: 'm' } }),
      '1e-25 m is too small to measure. Write 0 for a straight edge',
    ],
    [
      () => stakeSpacing({ radius: '12 ft', deviation: '1/8 in', length: '3 km' }),
      'makes more than 2000 stakes. Check the digits and the unit',
    ],
    [
      () => checkStakeLine({ stakes: inPlan.slice(0, 1), tolerance: 0 }),
      '1 stake given, at least 2 needed',
    ],
  ])('%#', (run, message) => {
    expect(said(run)).toEqual([message]);
  });

  test('of the sides as measured, where they were', () => {
    const sides = { near: '40 ft', far: '24 ft', left: '10 ft', right: '10 ft' };
    expect(
      said(() =>
        checkSquare({ length: '24 ft', width: '10 ft', diagonals: ['26 ft', '27 ft'], sides }),
      ),
    ).toEqual([
      'no triangle has sides of 40 ft and 10 ft and a diagonal of 26 ft. Measure again',
      'no triangle has sides of 40 ft and 10 ft and a diagonal of 27 ft. Measure again',
    ]);
  });
});
