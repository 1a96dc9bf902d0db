import { expect, test } from 'vitest';
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
import { formulaFaults } from '../formulas/evaluate-step.js';

const string = { tension: '50 N', weightPerLength: '0.0025 lb/ft' } as const;
const layers = [
  { name: 'paver', thickness: '60 mm' },
  { name: 'base', thickness: '10 in' },
];
const stakes = [
  { id: 'A', station: '0 m', ground: '300 mm' },
  { id: 'B', station: '10 m' },
  { id: 'C', station: '15 m', ground: '600 mm', removedSurface: '75 mm' },
];
const ties = stakes.map(({ id, station }) => ({ id, station }));
const over = { buildUp: buildUp({ layers }), stringHeight: '6 in' } as const;
const offset = { stringHeight: '150 mm', offset: '14 1/8 in', crossSlope: '-2%' } as const;
const across = {
  left: '30.15 m',
  right: '30.046 m',
  width: '5 m',
  fromLeft: '6 ft',
  surface: 'subgrade',
  below: '435 mm',
  sag: '1.5 mm',
} as const;
const edge = gradeLine({
  points: [
    { station: '0 m', elevation: '10 m' },
    { station: '15 m', elevation: '9.8 m' },
  ],
});

test.each([
  ['a level string', stringSag({ ...string, span: '50 ft' })],
  ['a steep string', stringSag({ ...string, span: '15 m', slope: '35%' })],
  ['a slack string', stringSag({ ...string, tension: '0.1 N', span: '10 m', slope: '-10%' })],
  ['a table', depthTable({ ...over, stakes: ties })],
  ['a table with sag', depthTable({ ...over, stakes: ties, spacing: '2 m', string })],
  [
    'a string that carries the cross slope',
    stringAtStake({ ...offset, finishedGrade: '10 m', carriesCrossSlope: true }),
  ],
  [
    'a string level with the edge',
    stringAtStake({ ...offset, finishedGrade: '10 m', carriesCrossSlope: false }),
  ],
  [
    'strings along an edge',
    stringsAlongEdge({ grade: edge, ...offset, carriesCrossSlope: true, stakes: ties }),
  ],
  ['a line across two strings', depthBetweenStrings(across)],
  ['the same, measured', depthBetweenStrings({ ...across, measured: '17 in' })],
  ['depths below a string', stringDepths({ ...over, stakes, removedSurface: '2 in' })],
  [
    'a mean along strings',
    meanDepthAlong({
      strings: [
        {
          id: 'left',
          stakes: stakes.map(({ id, station, ground }) => ({ id, station, depth: ground })),
        },
        { id: 'right', stakes: ties.map((tie, k) => ({ ...tie, depth: `${k + 7} in` })) },
        { id: 'unread', stakes: ties },
      ],
    }),
  ],
] as const)('the formulas of %s hold', (_, { working }) => {
  expect(working.length).toBeGreaterThan(0);
  expect(formulaFaults(working)).toEqual([]);
});
