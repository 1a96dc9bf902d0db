import { expect, test } from 'vitest';
import { baseExtension, buildUp, excavationDepth, lifts, minimumBuildUp } from 'settline/build-up';
import { formulaFaults } from '../formulas/evaluate-step.js';

const layers = [
  { name: 'paver', thickness: '3 1/4 in' },
  { name: 'bedding', thickness: '25 mm' },
  { name: 'base', thickness: '0.7 ft' },
];
const drive = buildUp({ layers });

test.each([
  ['one layer', buildUp({ layers: layers.slice(0, 1) })],
  ['three layers', drive],
  ['a dig', excavationDepth({ buildUp: drive })],
  [
    'a dig under old paving',
    excavationDepth({ buildUp: drive, removedSurface: '3 in', existingAboveFinish: '-2 in' }),
  ],
  ['an extension by the base', baseExtension({ baseThickness: '8 in' })],
  ['the least extension', baseExtension({ baseThickness: '4 in' })],
  ['even lifts', lifts({ thickness: '12 in', maxLift: '4 in', compactedPerLoose: '4/5' })],
  ['uneven lifts', lifts({ thickness: '1/3 m', maxLift: '4 in', compactedPerLoose: '2/3' })],
  [
    'a published minimum',
    minimumBuildUp({ use: 'residential-driveway', subgrade: 'well-drained' }),
  ],
  [
    'a minimum with additions',
    minimumBuildUp({ use: 'residential-driveway', subgrade: 'clay', frost: true, edition: 'mm' }),
  ],
] as const)('the formulas of %s hold', (_, { working }) => {
  expect(working.length).toBeGreaterThan(0);
  expect(formulaFaults(working)).toEqual([]);
});
