import { expect, test } from 'vitest';
import {
  baseOrder,
  batteredDig,
  endAreaVolumes,
  gridVolumes,
  loads,
  siteVolumes,
  soilBalance,
  stateVolume,
  taperedLayer,
} from 'settline/volumes';
import { formulaFaults } from '../formulas/evaluate-step.js';

const square = (half: number) => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];
const pit = { unit: 'm', points: square(5) } as never;
const island = { unit: 'm', points: square(5), holes: [square(0.5)] } as never;
const sections = [
  { station: '0 m', cut: '1.2 m2' },
  { station: '10 m', cut: '0.6 m2' },
  { station: '15 m', fill: '0.3 m2' },
  { station: '25 m', fill: '4 ft2' },
];
const stone = { compactedPerLoose: '2/3', waste: 0.05, moisture: '1/30' } as const;
const soil = { loosePerBank: 1.25, compactedPerBank: '0.9' };
const balance = (cut: string, usable: string) =>
  soilBalance({
    cut: stateVolume(cut, 'bank'),
    fill: stateVolume('45 yd3', 'compacted'),
    factors: soil,
    usable,
  });
const depths = {
  unit: 'm' as const,
  rows: [
    [0.4, 0.3, -0.2],
    [0.4, -0.3, -0.2],
    [0.1, 0.5, 0.4],
  ],
};
const yard = {
  unit: 'ft',
  points: [
    [0, 0, 10],
    [27, 0, 10.7],
    [27, 27, 9.4],
    [0, 27, 10],
  ],
} as never;

test.each([
  ['a volume', baseOrder({ volume: '3 yd3', ...stone })],
  [
    'an area with a density',
    baseOrder({ area: '40 m2', thickness: '7 in', compactedDryDensity: '2.1 t/m3', ...stone }),
  ],
  [
    'parts',
    baseOrder({
      parts: [
        { name: 'drive', area: '40 m2', thickness: '200 mm' },
        { area: '90 ft2', thickness: '4 in' },
      ],
      ...stone,
    }),
  ],
  [
    'an exact dig with sloped sides',
    batteredDig({ outline: pit, depth: '1/3 m', horizontalPerVertical: 0.5 }),
  ],
  ['a dig in slices', batteredDig({ outline: island, depth: '1 m', horizontalPerVertical: 1 })],
  ['sections that run out to a point', endAreaVolumes({ sections })],
  ['sections that run out to an edge', endAreaVolumes({ sections, runOut: 'wedge' })],
  ['a grid', gridVolumes({ depths, spacing: '5 m' })],
  [
    'a grid in an outline',
    gridVolumes({ depths, spacing: '5 m', outline: pit, origin: { x: '-7 m', y: '-6 m' } }),
  ],
  [
    'loads by mass',
    loads({
      volume: stateVolume('31 yd3', 'loose'),
      looseDensity: '1.6 t/m3',
      boxVolume: '12 yd3',
      payload: '10 t',
    }),
  ],
  [
    'loads by volume',
    loads({
      volume: stateVolume('36 yd3', 'loose'),
      looseDensity: '1 t/m3',
      boxVolume: '12 yd3',
      payload: '15 t',
    }),
  ],
  ['a site', siteVolumes({ existing: yard, design: { z0: '9.7 ft', gradeX: '1%', gradeY: '0%' } })],
  ['a balance with spoil', balance('100 yd3', '0.8')],
  ['a balance with borrow', balance('20 yd3', '1/3')],
  [
    'a tapered layer',
    taperedLayer({
      length: '6 m',
      width: '2 m',
      lastWidth: '5 ft',
      thickness: '0.3 m',
      lastThickness: '4 in',
    }),
  ],
] as const)('the formulas of %s hold', (_, { working }) => {
  expect(working.length).toBeGreaterThan(0);
  expect(formulaFaults(working)).toEqual([]);
});
