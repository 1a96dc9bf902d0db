import { expect, test } from 'vitest';
import {
  baseTaper,
  closableArea,
  excavationGates,
  handDig,
  locateWindow,
  oldPaving,
  rootZone,
  softSpot,
  utilityCover,
  waterInDig,
} from 'settline/site';
import { formulaFaults } from '../formulas/evaluate-step.js';

const zone = { trunkDiameter: '18 in', rule: { radiusPerDiameter: '12' } } as const;
const past = (near: string, far?: string) =>
  rootZone({ ...zone, dig: { near, ...(far === undefined ? {} : { far }) } });

test.each([
  ['a root zone', rootZone(zone)],
  [
    'a least root zone',
    rootZone({ ...zone, rule: { radiusPerDiameter: '12', minimumRadius: '20 ft' } }),
  ],
  ['a dig past a tree', past('2 m')],
  ['a trench past a tree', past('2 m', '3 m')],
  ['a trench under a tree', past('-1 m', '3 ft')],
  ['a dig outside the zone', past('30 m')],
  ['a trench wider than the zone', past('-30 m', '30 m')],
  [
    'hand digging across a dig',
    handDig({
      digWidth: '3 ft',
      crossingAngle: '70 deg',
      depth: '400 mm',
      lines: [
        { id: 'gas', width: '2 in', tolerance: '18 in', offset: '0 m' },
        { id: 'water', width: '100 mm', tolerance: '18 in', offset: '1 m' },
        { id: 'power', width: '1 in', tolerance: '24 in', offset: '9 m' },
      ],
    }),
  ],
  [
    'hand digging in a drawn dig',
    handDig({
      outline: {
        unit: 'ft',
        points: [
          [0, 0],
          [30, 0],
          [30, 12],
          [0, 12],
        ],
      },
      depth: '1 ft',
      lines: [
        {
          id: 'gas',
          width: '0 in',
          tolerance: '18 in',
          path: [
            { x: '10 ft', y: '-5 ft' },
            { x: '14 ft', y: '20 ft' },
          ],
        },
      ],
    }),
  ],
  ['cover', utilityCover({ found: '30 in', dig: '435 mm', minimumCover: '12 in' })],
  [
    'area to close',
    closableArea({
      stone: '40 t',
      moisture: '0.04',
      thickness: '4 in',
      compactedDryDensity: '2.1 t/m3',
    }),
  ],
  ['a sloped side', excavationGates({ depth: '6 ft', soil: 'C' })],
  ['a taper', baseTaper({ first: '8 in', second: '300 mm', slope: '1:12', width: '10 ft' })],
  [
    'water in a dig',
    waterInDig({
      area: '900 ft2',
      rain: '1 in',
      drainsIn: [{ area: '40 m2', coefficient: '0.9' }],
    }),
  ],
  [
    'a soft spot',
    softSpot({
      area: '40 ft2',
      depth: '300 mm',
      compactedPerLoose: '0.8',
      compactedDryDensity: '2.1 t/m3',
      moisture: '0.04',
      perimeter: '8 m',
      lap: '1 ft',
    }),
  ],
  [
    'old paving',
    oldPaving({
      layers: [
        { material: 'asphalt', area: '50 m2', thickness: '3 in' },
        {
          material: 'brick',
          area: '50 m2',
          thickness: '2 1/4 in',
          inPlaceDensity: '2 t/m3',
          looseDensity: '1.3 t/m3',
        },
      ],
      sawCuts: {
        runs: ['4 m', '12 ft'],
        grid: { along: '6 m', across: '4 m', maximumPiece: '1 m' },
      },
    }),
  ],
] as const)('the formulas of %s hold', (_, { working }) => {
  expect(working.length).toBeGreaterThan(0);
  expect(working.every(({ kind }) => kind === 'formula')).toBe(true);
  expect(formulaFaults(working)).toEqual([]);
});

test('a calendar is a procedure', () => {
  const { working } = locateWindow({
    request: '2030-05-06',
    rule: {
      workingDays: 2,
      requestDayCounts: false,
      start: 'working-day-after',
      weekend: ['Saturday', 'Sunday'],
      holidays: [],
      validity: { days: 14, count: 'calendar', from: 'request' },
    },
  });
  expect(working).toMatchObject([{ kind: 'procedure', procedure: 'locateWindow' }]);
});
