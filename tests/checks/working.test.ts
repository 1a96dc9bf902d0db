import { expect, test } from 'vitest';
import {
  checkBondLine,
  checkCompaction,
  checkFall,
  checkFlatness,
  checkJointWidth,
  checkLippage,
  checkThickness,
  type AnyLayerCheck,
} from 'settline/checks';
import { isQuantity } from 'settline/units';

/** The symbols that go into each step, and what comes out. */
const shape = ({ working }: AnyLayerCheck) =>
  working.map(
    ({ given, result }) => `${given.map(({ symbol }) => symbol).join(' ')} -> ${result.symbol}`,
  );
const results = ({ working }: AnyLayerCheck) =>
  working.map(({ result }) => (isQuantity(result.value) ? result.value.toString() : result.value));

test('thickness: each reading and the average', () => {
  const check = checkThickness({
    layer: 'base',
    design: '200 mm',
    readings: [
      { id: 'a', thickness: '210 mm' },
      { id: 'b', thickness: '180 mm' },
    ],
    tolerance: 'paver-guide-mm',
  });
  expect(shape(check)).toEqual(
    Array.from({ length: 3 }, () => ['t t0 -> d', 'd over under -> m']).flat(),
  );
  expect(results(check)).toEqual(['10 mm', '10 mm', '-20 mm', '-7 mm', '-5 mm', '8 mm']);
  expect(check.working[4]).toMatchObject({
    title: 'Thickness of the base, average',
    source: 'paver-tolerances',
  });
});

test('flatness: the greatest gap', () => {
  const check = checkFlatness({
    layer: 'base',
    profile: [
      { station: '0 m', height: '0 mm' },
      { station: '1 m', height: '-4 mm' },
      { station: '2 m', height: '2 mm' },
    ],
    tolerance: 'paver-guide-mm',
  });
  expect(shape(check)).toEqual(['s1 z1 s2 z2 s z -> g']);
  expect(results(check)).toEqual(['0.005 m']);
});

test('lippage and joints: the limits that there are', () => {
  const lips = (minimum?: string) =>
    checkLippage({
      place: 'drain',
      readings: [{ id: 'a', lippage: '4 mm' }],
      tolerance: { maximum: '10 mm', ...(minimum === undefined ? {} : { minimum }) },
    });
  expect(shape(lips())).toEqual(['a a1 -> m']);
  expect(shape(lips('3 mm'))).toEqual(['a a0 a1 -> m']);
  expect(results(lips())).toEqual(['6 mm']);
  expect(results(lips('3 mm'))).toEqual(['1 mm']);
  const joints = (tolerance: { minimum: string } | { maximum: string }) =>
    checkJointWidth({ readings: [{ id: 'a', width: '3 mm' }], tolerance });
  expect(shape(joints({ minimum: '2 mm' }))).toEqual(['j j0 u -> p']);
  expect(shape(joints({ maximum: '5 mm' }))).toEqual(['j j1 u -> p']);
  expect(results(joints({ maximum: '5 mm' }))).toEqual([1]);
});

test('bond line: the readings between the ends', () => {
  const check = checkBondLine({
    readings: [
      { station: '0 m', offset: '0 mm' },
      { station: '5 m', offset: '3 mm' },
      { station: '10 m', offset: '0 mm' },
    ],
    tolerance: 'paver-guide-mm',
  });
  expect(shape(check)).toEqual(['s y s1 y1 s2 y2 -> d', 'd d0 d1 -> m']);
  expect(results(check)).toEqual(['0.003 m', '10 mm']);
});

test('fall: slope, uncertainty and margin', () => {
  const check = checkFall({
    layer: 'pavers',
    readings: [{ id: 'a', fall: '75 mm', run: '3 m' }],
    tolerance: 'paver-guide-mm',
  });
  expect(shape(check)).toEqual(['d L -> g', 'k s L -> u', 'g g0 -> m']);
  expect(results(check)).toEqual(['2.5%', '0%', '0.5%']);
});

test('compaction: dry density and percent of each spot, and the least', () => {
  const check = checkCompaction({
    layer: 'base',
    readings: [{ id: 'a', wetDensity: '2200 kg/m3', moisture: 0.1 }],
    maximumDryDensity: '2000 kg/m3',
    test: 'modified',
    tolerance: { minimumPercent: 95 },
  });
  expect(shape(check)).toEqual(['m w -> d', 'd D -> R', 'R0 D -> d0']);
  expect(results(check)).toEqual(['2000 kg/m3', 100, '1900 kg/m3']);
  expect(check.working[0]?.title).toBe('Dry density at a');
});
