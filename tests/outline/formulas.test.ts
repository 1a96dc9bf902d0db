import { expect, test } from 'vitest';
import {
  areaByBearings,
  areaByOffsets,
  intersectOutlines,
  outlineArea,
  uniteOutlines,
  widenOutline,
} from 'settline/outline';
import { formulaFaults } from '../formulas/evaluate-step.js';

const square = (half: number) => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];
const plain = { unit: 'ft', points: square(12.3) } as never;
const clockwise = { unit: 'ft', points: square(12.3).reverse() } as never;
const bay = (points: number[][]) =>
  ({
    unit: 'm',
    points,
    arcs: [
      { edge: 1, bulgeMiddleOrdinate: 0.7 },
      { edge: 2, bulgeMiddleOrdinate: -1.1 },
    ],
    holes: [square(0.5), { points: square(0.2).map(([x = 0, y = 0]) => [x + 2, y + 2]) }],
  }) as never;
const courses = [
  { bearing: 'N 12-30-00 E', distance: '120.3 ft' },
  { bearing: 'S 80 E', distance: '90 ft' },
  { bearing: 'S 20 W', distance: '150 ft' },
  { bearing: 'N 60-20-30 W', distance: '80 ft' },
];
const offsets = ['1 m', '2 m', '2.5 m', '7 ft'];

test.each([
  ['a square', outlineArea({ outline: plain })],
  ['a square, clockwise', outlineArea({ outline: clockwise })],
  ['arcs and holes', outlineArea({ outline: bay(square(5)) })],
  ['arcs and holes, clockwise', outlineArea({ outline: bay(square(5).reverse()) })],
  ['courses', areaByBearings({ courses })],
  ['offsets of an even count', areaByOffsets({ offsets, spacing: '5 ft' })],
  ['offsets of an odd count', areaByOffsets({ offsets: offsets.slice(1), spacing: '5 ft' })],
  [
    'offsets at uneven spacings',
    areaByOffsets({ offsets: offsets.slice(1), spacing: ['5 ft', '2 m'] }),
  ],
  ['united outlines', uniteOutlines({ outlines: [plain, bay(square(5))] })],
] as const)('the formulas of %s hold', (_, { working }) => {
  expect(working.length).toBeGreaterThan(0);
  expect(working.every(({ kind }) => kind === 'formula')).toBe(true);
  expect(formulaFaults(working)).toEqual([]);
});

test('moved edges and common ground are procedures, named with what they do', () => {
  const { working } = widenOutline({ outline: plain, by: '1 ft' });
  expect(working).toMatchObject([{ kind: 'procedure', procedure: 'widenOutline' }]);
  const common = intersectOutlines({ outline: plain, other: bay(square(5)) });
  expect(common.working).toMatchObject([{ kind: 'procedure', procedure: 'intersectOutlines' }]);
});
