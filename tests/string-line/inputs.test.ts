// What the functions of settline/string-line say to fields that are misspelt, missing or nonsense.
import { describe, expect, test } from 'vitest';
import { buildUp } from 'settline/build-up';
import { gradeLine } from 'settline/grading';
import {
  depthBetweenStrings,
  depthTable,
  meanDepthAlong,
  stringAtStake,
  stringDepths,
  stringSag,
  stringsAlongEdge,
} from 'settline/string-line';
import { faultsOf } from '../faults.js';
import { testGarbage, type GarbageCase } from '../garbage.js';
import { testMisspelt, type MisspeltCase } from '../misspelt.js';

const drive = buildUp({
  layers: [
    { name: 'paver', thickness: '60 mm' },
    { name: 'base', thickness: '200 mm' },
  ],
});
const edge = gradeLine({
  points: [
    { station: '0 m', elevation: '10 m' },
    { station: '20 m', elevation: '9.8 m' },
  ],
});
const string = { tension: '50 N', weightPerLength: '0.02 N/m' };
const offsetString = {
  stringHeight: '150 mm',
  offset: '500 mm',
  crossSlope: '-2%',
  carriesCrossSlope: true,
  clearance: '100 mm',
};

const cases: Readonly<Record<string, MisspeltCase>> = {
  stringDepths: [
    (options: object) => stringDepths({ ...options, buildUp: drive } as never),
    {
      stringHeight: '100 mm',
      removedSurface: '50 mm',
      stakes: [
        { id: 'A', station: '0 m', ground: '120 mm' },
        { id: 'B', station: '5 m' },
      ],
    },
    [
      ['stringHieght', 'stringHeight'],
      ['stringheight', 'stringHeight'],
      ['removedSurfaces', 'removedSurface'],
      ['stakes[0].grounds', 'ground'],
      ['stakes[1].staton', 'station'],
    ],
  ],
  meanDepthAlong: [
    meanDepthAlong,
    { strings: [{ id: 'A', stakes: [{ id: 'A1', station: '0 m', depth: '300 mm' }] }] },
    [
      ['strins', 'strings'],
      ['strings[0].stake', 'stakes'],
      ['strings[0].stakes[0].depths', 'depth'],
    ],
  ],
  depthTable: [
    (options: object) => depthTable({ ...options, buildUp: drive } as never),
    {
      stringHeight: '100 mm',
      stakes: [
        { id: 'A', station: '0 m' },
        { id: 'B', station: '10 m' },
      ],
      spacing: '5 m',
      lifts: [{ layer: 'base', maxLift: '100 mm', compactedPerLoose: '0.8' }],
      string,
    },
    [
      ['lift', 'lifts'],
      ['lifts[0].maxlift', 'maxLift'],
      ['lifts[0].compactedPerLose', 'compactedPerLoose'],
      ['string.tensoin', 'tension'],
      ['stakes[1].ID', 'id'],
    ],
  ],
  stringSag: [
    stringSag,
    { ...string, span: '10 m', slope: '2%', from: '3 m', tolerance: '5 mm' },
    [
      ['spam', 'span'],
      ['weightPerLenght', 'weightPerLength'],
      ['slop', 'slope'],
    ],
  ],
  stringAtStake: [
    stringAtStake,
    {
      ...offsetString,
      finishedGrade: '10 m',
      ground: '9.8 m',
      inGround: '0.3 m',
      aboveString: '50 mm',
    },
    [
      ['finishGrade', 'finishedGrade'],
      ['carryCrossSlope', 'carriesCrossSlope'],
      ['clearence', 'clearance'],
      ['grond', 'ground'],
    ],
  ],
  stringsAlongEdge: [
    (options: object) => stringsAlongEdge({ ...options, grade: edge } as never),
    {
      ...offsetString,
      stakes: [
        { id: 'A', station: '0 m', ground: '9.9 m' },
        { id: 'B', station: '9 m' },
      ],
      string,
    },
    [
      ['offsets', 'offset'],
      ['crossSlop', 'crossSlope'],
      ['stakes[0].Ground', 'ground'],
      ['string.weigthPerLength', 'weightPerLength'],
    ],
  ],
  depthBetweenStrings: [
    depthBetweenStrings,
    {
      left: '10.2 m',
      right: '10.1 m',
      width: '5 m',
      fromLeft: '1 m',
      surface: 'base top',
      below: '250 mm',
      sag: '1 mm',
      measured: '240 mm',
      tolerance: '5 mm',
      uncertainty: '1 mm',
    },
    [
      ['fromleft', 'fromLeft'],
      ['measure', 'measured'],
      ['belows', 'below'],
    ],
  ],
};

describe('a misspelt field is refused, with the name that was meant', () => {
  testMisspelt(cases);

  test('a name that is like none is refused with the names there are', () => {
    const faults = faultsOf(() =>
      stringSag({ ...string, span: '10 m', crossSlope: '2%' } as never),
    );
    expect(faults.map(({ code, message }) => `${code} ${message}`)).toEqual([
      'UNKNOWN_FIELD unknown field. This object takes span, tension, weightPerLength, slope, from, tolerance',
    ]);
  });
});

describe('whatever a field holds, it answers or refuses', () => {
  const garbage = Object.entries(cases).map(
    ([name, [run, valid]]): readonly [string, GarbageCase] => [name, [run, valid]],
  );
  testGarbage({
    ...Object.fromEntries(garbage),
    'a forged build-up': [
      stringDepths,
      { buildUp: drive, stringHeight: '100 mm', stakes: [{ id: 'A', station: '0 m' }] },
    ],
  });
});

describe('one bad field is one fault, and hides no other', () => {
  const codes = (run: () => unknown) =>
    faultsOf(run).map(({ code, path }) => `${code} ${path.join('.')}`);

  test('faults of form and faults between fields come together', () => {
    expect(
      codes(() =>
        depthTable({
          buildUp: drive,
          stringHeight: '-1 in',
          stakes: [
            { id: 'A', station: '5 m' },
            { id: 'B', station: '0 m' },
          ],
          lifts: [{ layer: 'bedding', maxLift: '4 in', compactedPerLoose: 0.8 }],
        }),
      ),
    ).toEqual([
      'NEGATIVE stringHeight',
      'UNKNOWN_ID lifts.0.layer',
      'NOT_INCREASING stakes.1.station',
    ]);
    expect(
      codes(() => stringSag({ ...string, span: '10 m', from: '11 m', tolerance: '6 m' })),
    ).toEqual(['OUT_OF_RANGE from', 'OUT_OF_RANGE tolerance']);
  });

  test('what could not be read is not judged against the rest', () => {
    const stake = { ...offsetString, crossSlope: '-2%', finishedGrade: '10 m' } as const;
    expect(codes(() => stringAtStake({ ...stake, inGround: '1 ft', ground: 9 as never }))).toEqual([
      'UNIT_MISSING ground',
    ]);
    expect(codes(() => stringAtStake({ ...stake, inGround: '1 ft' }))).toEqual(['REQUIRED ground']);
    expect(
      codes(() =>
        depthTable({
          buildUp: {} as never,
          stringHeight: '1 ft',
          stakes: [{ id: 'A', station: '5 m' }],
          lifts: [{ layer: 'bedding', maxLift: '4 in', compactedPerLoose: 0.8 }],
        }),
      ),
    ).toEqual(['WRONG_TYPE buildUp', 'TOO_FEW stakes']);
  });

  test('null is not left out', () => {
    expect(codes(() => stringSag({ ...string, span: '10 m', slope: null as never }))).toEqual([
      'WRONG_TYPE slope',
    ]);
  });
});

describe('messages name the value as it was written, and what to write', () => {
  const said = (run: () => unknown) => faultsOf(run).map(({ message }) => message);
  const table = {
    buildUp: drive,
    stringHeight: '6 in',
    stakes: [] as { id: string; station: string }[],
  };
  const stakes = [
    { id: 'E1', station: '0 ft' },
    { id: 'E2', station: '40 ft' },
  ];

  test.each([
    [
      () => stringDepths({ buildUp: drive, stringHeight: '-1 in', stakes }),
      '-1 in is negative. Write 0 or more',
    ],
    [
      () => stringDepths({ buildUp: { total: 5 } as never, stringHeight: '6 in', stakes }),
      'pass the result of buildUp()',
    ],
    [
      () =>
        depthTable({
          ...table,
          stakes,
          lifts: [{ layer: 'sub-base', maxLift: '4 in', compactedPerLoose: '0.8' }],
        }),
      'no layer has this name. Use paver or base',
    ],
    [
      () =>
        depthTable({
          ...table,
          stakes,
          lifts: [{ layer: 'base', maxLift: '0.01 in', compactedPerLoose: '0.8' }],
        }),
      'makes more than 500 lifts. Check the digits and the unit',
    ],
    [
      () => depthTable({ ...table, stakes, spacing: '0.1 in' }),
      'makes more than 2000 rows. Check the digits and the unit',
    ],
    [
      () => depthTable({ ...table, stakes: [...stakes].reverse() }),
      'is not beyond the stake before. List the stakes in order along the string',
    ],
    [
      () => stringSag({ ...string, span: '50 ft', from: '51 ft' }),
      '51 ft is beyond the far tie. Write no more than the span, 50 ft',
    ],
    [
      () => stringSag({ ...string, span: '50 ft', tolerance: '26 ft' }),
      '26 ft is more than half the span, 50 ft. Check the digits and the unit',
    ],
    [
      () => stringSag({ ...string, span: '50 ft', tension: '0.01 lbf' }),
      'the string would sag by half its span. Pull it tighter, or check the units of tension and weight',
    ],
  ])('%#', (run, message) => {
    expect(said(run)).toEqual([message]);
  });
});

test('the string may be at finished grade', () => {
  const found = stringDepths({
    buildUp: drive,
    stringHeight: 0,
    stakes: [{ id: 'A', station: '0' }],
  });
  expect(found.subgrade.equals(drive.total)).toBe(true);
});
