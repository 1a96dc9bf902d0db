import { describe, expect, test } from 'vitest';
import { buildUp } from 'settline/build-up';
import { stringDepths } from 'settline/string-line';
import { length } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';

const drive = buildUp({
  layers: [
    { name: 'paver', thickness: '3 1/4 in' },
    { name: 'bedding', thickness: '1 in' },
    { name: 'base', thickness: '8 in' },
  ],
});

const depths = stringDepths({
  buildUp: drive,
  stringHeight: '15 in',
  removedSurface: '3 in',
  stakes: [
    { id: 'S1', station: '0 ft', ground: '17 1/2 in' },
    { id: 'S2', station: '10 ft', ground: '29 in' },
    { id: 'S3', station: '20 ft', ground: '27 1/4 in' },
    { id: 'S4', station: '30 ft', ground: '-1 in' },
    { id: 'S5', station: '-5 ft' },
  ],
});

test('15 in of string height puts the subgrade 27 1/4 in below the string', () => {
  expect(depths.subgrade.to('in').toString()).toBe('27.25');
  expect(depths.finish.to('in').toString()).toBe('15');
  expect(
    depths.layers.map(({ name, top, bottom }) => [
      name,
      top.to('in').toString(),
      bottom.to('in').toString(),
    ]),
  ).toEqual([
    ['paver', '15', '18.25'],
    ['bedding', '18.25', '19.25'],
    ['base', '19.25', '27.25'],
  ]);
});

test('dig left to do: cut positive, fill negative; soil once the old surface is stripped', () => {
  expect(
    depths.stakes.map(({ id, dig, soil, action }) => [
      id,
      dig?.to('in').toString(),
      soil?.to('in').toString(),
      action,
    ]),
  ).toEqual([
    ['S1', '9.75', '6.75', 'dig'],
    ['S2', '-1.75', '-4.75', 'fill'],
    ['S3', '0', '-3', 'none'],
    ['S4', '28.25', '25.25', 'dig'],
    ['S5', undefined, undefined, null],
  ]);
});

test('a string at finished grade is allowed, one below it is not', () => {
  const at = stringDepths({
    buildUp: drive,
    stringHeight: '0 in',
    stakes: [{ id: 'A', station: '0 m' }],
  });
  expect(at.subgrade.equals(drive.total)).toBe(true);
  expectFault(
    () =>
      stringDepths({
        buildUp: drive,
        stringHeight: '-1 in',
        stakes: [{ id: 'A', station: '0 m' }],
      }),
    'NEGATIVE',
  );
});

test('carries cautions and working', () => {
  expect(depths.cautions.map(({ id }) => id)).toEqual(['utilities', 'excavation', 'trees']);
  expect(depths.working).toHaveLength(1 + 2 * 4);
  expect(depths.working[0]?.result.value).toEqual(length('27.25 in'));
});

describe('bad input', () => {
  test('all faults at once', () => {
    const issues = faultsOf(() =>
      stringDepths({
        buildUp: {} as never,
        stringHeight: 12 as never,
        removedSurface: '-1 in',
        stakes: [
          { id: 'A', station: 'there' },
          { id: 'A', station: '0 m', ground: '100 m' },
        ],
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['buildUp', 'WRONG_TYPE'],
      ['stringHeight', 'UNIT_MISSING'],
      ['removedSurface', 'NEGATIVE'],
      ['stakes.1.id', 'DUPLICATE_ID'],
      ['stakes.0.station', 'UNIT_UNKNOWN'],
      ['stakes.1.ground', 'OUT_OF_RANGE'],
    ]);
  });

  test('more stakes than a string has room for', () => {
    const stakes = Array.from({ length: 10_001 }, (_, k) => ({
      id: `S${k}`,
      station: `${k} mm`,
    }));
    const depths = () => stringDepths({ buildUp: drive, stringHeight: '1 ft', stakes });
    expect(expectFault(depths, 'TOO_MANY').message).toContain('10001 stakes are more than');
  });

  test('no stakes', () => {
    expectFault(
      () => stringDepths({ buildUp: drive, stringHeight: '1 ft', stakes: [] }),
      'EMPTY_LIST',
    );
  });
});
