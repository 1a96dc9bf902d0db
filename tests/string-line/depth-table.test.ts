import { expect, test } from 'vitest';
import { buildUp, lifts } from 'settline/build-up';
import { depthTable, stringDepths } from 'settline/string-line';
import { testRefusals } from '../refusals.js';

const drive = buildUp({
  layers: [
    { name: 'paver', thickness: '60 mm' },
    { name: 'bedding', thickness: '30 mm' },
    { name: 'base', thickness: '240 mm' },
  ],
});
const plain = {
  buildUp: drive,
  stringHeight: '100 mm',
  stakes: [
    { id: 'A', station: '0 m' },
    { id: 'B', station: '10 m' },
    { id: 'C', station: '14 m' },
  ],
} as const;
const inLifts = { layer: 'base', maxLift: '100 mm', compactedPerLoose: '0.8' } as const;
const string = { tension: '50 N', weightPerLength: '0.02 N/m' } as const;

test('surfaces from the top down, each lift as spread and as compacted', () => {
  const { surfaces } = depthTable({ ...plain, lifts: [inLifts] });
  expect(
    surfaces.map(
      ({ surface, state, below }) => `${surface}: ${below.to('mm').toString()} ${state}`,
    ),
  ).toEqual([
    'finished grade: 100 compacted',
    'bedding top: 160 compacted',
    // three lifts of 80 mm compacted, 100 mm loose, up from 430
    'base lift 3 loose: 170 loose',
    'base top: 190 compacted',
    'base lift 2 loose: 250 loose',
    'base lift 2 top: 270 compacted',
    'base lift 1 loose: 330 loose',
    'base lift 1 top: 350 compacted',
    'subgrade: 430 ground',
  ]);
});

test('lift tops are those of lifts()', () => {
  const { surfaces } = depthTable({ ...plain, lifts: [inLifts] });
  const { tops } = lifts({ thickness: '240 mm', maxLift: '100 mm', compactedPerLoose: '0.8' });
  const subgrade = surfaces.at(-1)?.below;
  const found = ['base lift 1 top', 'base lift 2 top', 'base top'].map((name) => {
    const below = surfaces.find(({ surface }) => surface === name)?.below;
    return below && subgrade?.minus(below).to('mm').toString();
  });
  expect(found).toEqual(tops.map((top) => top.to('mm').toString()));
});

test('without lifts and sag, the depths of stringDepths at every stake', () => {
  const table = depthTable(plain);
  const depths = stringDepths(plain);
  expect(table.rows.map(({ stake }) => stake)).toEqual(['A', 'B', 'C']);
  for (const row of table.rows) {
    expect(row.sag.isZero()).toBe(true);
    expect(row.depths.map((one) => one.to('mm').toString())).toEqual(['100', '160', '190', '430']);
  }
  expect(depths.subgrade.equals(table.surfaces.at(-1)?.below ?? depths.finish)).toBe(true);
  expect(table.maximumSag.isZero()).toBe(true);
});

test('between stakes the sag comes off', () => {
  const { rows, maximumSag } = depthTable({ ...plain, spacing: '2.5 m', string });
  expect(rows.map(({ station, stake }) => `${station.to('m').toString()} ${stake ?? '-'}`)).toEqual(
    ['0 A', '2.5 -', '5 -', '7.5 -', '10 B', '12 -', '14 C'],
  );
  // 5 mm in the middle of 10 m, three quarters of it at the quarters; 0.8 mm in the middle of 4 m
  expect(rows.map(({ sag }) => sag.to('mm').toString())).toEqual([
    '0',
    '3.75',
    '5',
    '3.75',
    '0',
    '0.8',
    '0',
  ]);
  expect(rows[2]?.depths.map((one) => one.to('mm').toString())).toEqual([
    '95',
    '155',
    '185',
    '425',
  ]);
  expect(maximumSag.to('mm').toString()).toBe('5');
});

test('the largest sag is told even where no row shows it', () => {
  expect(
    depthTable({ ...plain, string })
      .maximumSag.to('mm')
      .toString(),
  ).toBe('5');
});

test('rows stand at even steps no longer than the spacing', () => {
  const { rows } = depthTable({ ...plain, spacing: '3 m' });
  expect(rows.slice(0, 5).map(({ station }) => station.to('m').toString())).toEqual([
    '0',
    '2.5',
    '5',
    '7.5',
    '10',
  ]);
  expect(depthTable({ ...plain, spacing: '10 m' }).rows).toHaveLength(3);
});

test('it warns of what is in the ground', () => {
  const ids = depthTable(plain).cautions.map(({ id }) => id);
  expect(ids).toEqual(['utilities', 'excavation', 'trees']);
});

test('the working gives each surface', () => {
  const { working } = depthTable({ ...plain, lifts: [inLifts] });
  expect(working).toHaveLength(9);
  expect(working[8]?.title).toContain('subgrade');
});

testRefusals(depthTable, { ...plain, spacing: '1 m', lifts: [inLifts], string }, [
  ['buildUp', {}, 'WRONG_TYPE'],
  ['stringHeight', '-1 mm', 'NEGATIVE'],
  ['stakes', plain.stakes.slice(0, 1), 'TOO_FEW'],
  ['stakes', [], 'EMPTY_LIST'],
  ['stakes.1.station', '0 m', 'NOT_INCREASING'],
  ['stakes.2.id', 'B', 'DUPLICATE_ID'],
  ['spacing', '1 mm', 'OUT_OF_RANGE'],
  ['spacing', '0 m', 'NOT_POSITIVE'],
  ['lifts', [inLifts, inLifts], 'DUPLICATE_ID', 'lifts[1].layer'],
  ['lifts.0.layer', 'sub-base', 'UNKNOWN_ID'],
  ['lifts.0.maxLift', '0 mm', 'NOT_POSITIVE'],
  ['lifts.0.maxLift', '0.1 mm', 'OUT_OF_RANGE'],
  ['lifts.0.compactedPerLoose', '1.2', 'OUT_OF_RANGE'],
  ['lifts', {}, 'WRONG_TYPE'],
  ['string.weightPerLength', undefined, 'REQUIRED'],
  ['string.tension', '0.04 N', 'OUT_OF_RANGE'],
]);
