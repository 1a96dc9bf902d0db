import { expect, test } from 'vitest';
import { gridVolumes, siteVolumes } from 'settline/volumes';
import { length } from 'settline/units';
import { unitMeasured } from '../../src/volumes/site-frame.js';
import { faultsOf } from '../faults.js';

const points = [
  [0, 0, 1],
  [2, 0, 1],
  [0, 2, 1],
];
const design = { z0: '0 m', gradeX: '0%', gradeY: '0%' };
const rows = [
  [1, 1],
  [1, 1],
];

test.each([
  [undefined, 'UNIT_MISSING'],
  [5, 'WRONG_TYPE'],
])('a unit of spot levels that is %s', (unit, code) => {
  const existing = { unit, points } as never;
  expect(faultsOf(() => siteVolumes({ existing, design }))[0]).toMatchObject({
    code,
    path: ['existing', 'unit'],
    message: 'write the unit of the points, such as "ft" or "m"',
  });
});

test.each([
  [undefined, 'UNIT_MISSING'],
  [5, 'WRONG_TYPE'],
])('a unit of a grid that is %s', (unit, code) => {
  const depths = { unit, rows } as never;
  expect(faultsOf(() => gridVolumes({ depths, spacing: '1 m' }))[0]).toMatchObject({
    code,
    path: ['depths', 'unit'],
    message: 'write the unit of the rows, such as "ft" or "m"',
  });
});

test('heights are in feet only if all of the first are inches, else in metres', () => {
  const spot = (x: string, y: string, z: string) => ({
    x: length(x),
    y: length(y),
    z: length(z),
  });
  const inches = [spot('0 ft', '3 ft', '12 1/8 in'), spot('9 ft', '3 ft', '1.05 ft')];
  expect(unitMeasured(inches)).toBe('ft');
  // a metre has no end in inches
  expect(unitMeasured([...inches, spot('9 ft', '1 m', '12 in')])).toBe('m');
  expect(unitMeasured([spot('1 m', '2 m', '3 m')])).toBe('m');
});
