// Invented worked examples: figures of our own, worked out by hand, by a closed form or by a second
// program. No publication stands behind them.
import { expect, test } from 'vitest';
import { buildUp, excavationDepth, lifts } from 'settline/build-up';
import { stringDepths } from 'settline/string-line';
import { loads, stateVolume, toState } from 'settline/volumes';
import { outlineArea, widenOutline } from 'settline/outline';
import { expectPrinted } from '../printed.js';

test('depths below a string at a constant height', () => {
  // Closed form, a constant height of the string: 60 + 30 + 200 mm, string
  // 100 mm above finish: bedding top 160, base top 190, subgrade 390 mm at every chainage
  const stack = buildUp({
    layers: [
      { name: 'surfacing', thickness: '60 mm' },
      { name: 'bedding', thickness: '30 mm' },
      { name: 'base', thickness: '200 mm' },
    ],
  });
  const depths = stringDepths({
    buildUp: stack,
    stringHeight: '100 mm',
    stakes: ['0 m', '3 m', '4.5 m', '9 m'].map((station, i) => ({ id: `S${i}`, station })),
  });
  for (const stake of depths.stakes) {
    expect(stake.layers.map(({ top }) => top.to('mm').toString())).toEqual(['100', '160', '190']);
    expect(stake.subgrade.to('mm').toString()).toBe('390');
  }
});

test('subgrade lies below finish by all layers together', () => {
  // a definition, as Moving the Earth: The Workbook of Excavation gives it (p. 8.10 and p. 2.42)
  const { total, layers } = buildUp({
    layers: [
      { name: 'paver', thickness: '3 1/4 in' },
      { name: 'bedding', thickness: '1 in' },
      { name: 'base', thickness: '8 in' },
    ],
  });
  expect(total.equals(layers.at(-1)?.bottom ?? total)).toBe(true);
  expect(total.to('in').toString()).toBe('12.25');
});

test('dig below the string and below the old surface', () => {
  const stack = buildUp({
    layers: [
      { name: 'paver', thickness: '60 mm' },
      { name: 'bedding', thickness: '25 mm' },
      { name: 'base', thickness: '200 mm' },
    ],
  });
  const depths = stringDepths({
    buildUp: stack,
    stringHeight: '150 mm',
    stakes: [{ id: 'S', station: '0 m', ground: '130 mm' }],
    removedSurface: '100 mm',
  });
  expect(depths.subgrade.to('m').toString()).toBe('0.435');
  expect(depths.stakes[0]?.dig?.to('m').toString()).toBe('0.305');
  expect(depths.stakes[0]?.soil?.to('m').toString()).toBe('0.205');
  const dig = excavationDepth({
    buildUp: stack,
    removedSurface: '100 mm',
    existingAboveFinish: '20 mm',
  });
  expect(dig.total.to('m').toString()).toBe('0.305');
  expect(dig.soil.to('m').toString()).toBe('0.205');
});

test('lifts of a 250 mm base', () => {
  const result = lifts({ thickness: '250 mm', maxLift: '100 mm', compactedPerLoose: '0.8' });
  expect(result.count).toBe(3);
  expectPrinted(result.compacted.toNumber('mm'), '83.33');
  expectPrinted(result.loose.toNumber('mm'), '104.17');
  expectPrinted(result.tops[1]?.toNumber('mm') ?? Number.NaN, '166.7');
});

test('spoil loads by volume and by weight', () => {
  const bank = stateVolume('42 m3', 'bank');
  const loose = toState(bank, 'loose', { loosePerBank: '1.3', compactedPerBank: '0.9' });
  expect(loose.to('m3').toString()).toBe('54.6');
  const trucks = loads({
    volume: loose,
    looseDensity: { value: '1900/1.3', unit: 'kg/m3' },
    boxVolume: '11 m3',
    payload: '13000 kg',
  });
  expect(trucks.total.mass.to('t').toString()).toBe('79.8');
  expect(trucks.count).toBe(7);
  expect(trucks.limitedBy).toBe('mass');
  expectPrinted(trucks.perLoad.volume.toNumber('m3'), '8.89');
});

test('a 3-4-5 triangle moved out by 1 is 24', () => {
  // Parallel-set area of a convex polygon (mitred form derived): offset 1 about the inradius 1
  // doubles the triangle
  const triangle = {
    unit: 'm',
    points: [
      [0, 0],
      [3, 0],
      [0, 4],
    ],
  } as const;
  expect(outlineArea({ outline: triangle }).area.to('m2').toString()).toBe('6');
  expect(widenOutline({ outline: triangle, by: '1 m' }).area.to('m2').toString()).toBe('24');
});

test('an L-shaped drive moved out by 0.35 m', () => {
  // area checked by construction
  const points = [
    [0, 0],
    [9, 0],
    [9, 4],
    [5, 4],
    [5, 7],
    [0, 7],
  ] as const;
  const outline = { unit: 'm', points } as const;
  const { area, perimeter } = outlineArea({ outline });
  expect(area.to('m2').toString()).toBe('51');
  expect(perimeter.to('m').toString()).toBe('32');
  expectPrinted(widenOutline({ outline, by: '0.35 m' }).area.toNumber('m2'), '62.69');
});
