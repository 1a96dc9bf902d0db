import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { gridVolumes, siteVolumes } from 'settline/volumes';
import { faultsOf } from '../faults.js';

const square = (z: string) =>
  [
    ['0 m', '0 m'],
    ['2 m', '0 m'],
    ['2 m', '2 m'],
    ['0 m', '2 m'],
  ].map(([x, y]) => ({ x, y, z }));
const existing = square('1 m');

describe('designs of a site, 2 m by 2 m, 0.25 m down: 1 m3', () => {
  test.each<[string, unknown]>([
    ['spot heights as a list', square('0.75 m')],
    ['corners as a list', { corners: square('0.75 m') }],
    [
      'corners with their unit',
      {
        unit: 'm',
        corners: [
          [0, 0, 0.75],
          [2, 0, 0.75],
          [2, 2, 0.75],
          [0, 2, 0.75],
        ],
      },
    ],
    ['a level plane', { z0: '0.75 m', gradeX: '0%', gradeY: '0%' }],
    [
      'a plane through a point: 0.5 m at x = 0, 1 m at x = 2 m',
      { point: { x: '2 m', y: '1 m', z: '1 m' }, gradeX: '25%', gradeY: '0%' },
    ],
  ])('%s', (_name, design) => {
    const { cut, fill } = siteVolumes({ existing, design } as never);
    expect(cut.volume.toNumber('m3')).toBeCloseTo(1, 12);
    expect(fill.volume.toNumber('m3')).toBe(0);
  });
});

describe('designs that are refused', () => {
  test.each<[string, unknown, string, string, string]>([
    [
      'one corner',
      { corners: square('1 m').slice(3) },
      'COUNT_MISMATCH',
      'design.corners',
      '1 corner',
    ],
    [
      'three corners',
      { corners: square('1 m').slice(1) },
      'COUNT_MISMATCH',
      'design.corners',
      '3 corners',
    ],
    [
      'a point without its height',
      { point: { x: '0 m', y: '0 m' }, gradeX: '1%', gradeY: '0%' },
      'REQUIRED',
      'design.point.z',
      'missing',
    ],
    [
      'a point and a height at zero',
      { point: { x: '0 m', y: '0 m', z: '1 m' }, z0: '1 m', gradeX: '1%', gradeY: '0%' },
      'CONFLICTING_FIELDS',
      'design',
      'give only one of z0, point',
    ],
    [
      'two kinds at once',
      { corners: square('1 m'), gradeX: '1%' },
      'CONFLICTING_FIELDS',
      'design',
      'Give only one of gradeX, corners',
    ],
  ])('%s', (_name, design, code, path, words) => {
    const [first] = faultsOf(() => siteVolumes({ existing, design } as never));
    expect([first?.code, pathText(first?.path ?? [])]).toEqual([code, path]);
    expect(first?.message).toContain(words);
  });
});

describe('heights of a grid over a plane', () => {
  const level = { z0: '1 m', gradeX: '0%', gradeY: '0%' };
  const gridOf = (rows: readonly (readonly (number | null)[])[], design: unknown = level) =>
    gridVolumes({ heights: { unit: 'm', rows }, design, spacing: '1 m' } as never);

  test('a node that was not read leaves out its cells', () => {
    // one cell of 1 m2, 0.5 m above the plane
    const grid = gridOf([
      [1.5, 1.5, null],
      [1.5, 1.5, 1.5],
    ]);
    expect(grid.cut.toNumber('m3')).toBe(0.5);
    expect(grid.cells.whole).toBe(1);
    expect(grid.unusedPlaces).toBe(1);
  });

  test('no whole cell', () => {
    const [first] = faultsOf(() =>
      gridOf([
        [1, null],
        [1, 1],
      ]),
    );
    expect([first?.code, first?.path]).toEqual(['TOO_FEW', ['heights']]);
  });

  test('a plane that is no object', () => {
    const faults = faultsOf(() =>
      gridOf(
        [
          [1, 1],
          [1, 1],
        ],
        5,
      ),
    );
    expect(faults.map(({ code, path }) => [code, path])).toEqual([['WRONG_TYPE', ['design']]]);
  });
});
