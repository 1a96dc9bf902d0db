import { describe, expect, test } from 'vitest';
import { gridVolumes } from 'settline/volumes';
import { testRefusals } from '../refusals.js';

const grid = (rows: readonly (readonly (number | null)[])[], more = {}) =>
  gridVolumes({ depths: { unit: 'm', rows }, spacing: '10 m', ...more });

describe('whole cells', () => {
  test('three cells of 4 m by 5 m', () => {
    const strip = gridVolumes({
      depths: {
        unit: 'm',
        rows: [
          [0.345, 0.315, 0.305, 0.265],
          [0.375, 0.365, 0.335, 0.325],
        ],
      },
      spacing: { x: '4 m', y: '5 m' },
    });
    expect(strip.cut.to('m3').toString()).toBe('19.75');
    expect(strip.cut.state).toBe('bank');
    expect(strip.fill.state).toBe('compacted');
    expect(strip.area.to('m2').toString()).toBe('60');
    expect(strip.deepestCut).toMatchObject({ row: 1, column: 0 });
    expect(strip.deepestCut?.depth.to('m').toString()).toBe('0.375');
    expect(strip.deepestFill).toBeNull();
    expect(strip.working.map(({ result }) => result.symbol)).toEqual(['V', 'V', 'N']);
    expect(strip.cautions.length).toBe(2);
  });

  test('nine by nine feet by four inches is one yard exactly', () => {
    const yard = gridVolumes({
      depths: [
        ['4 in', '4 in'],
        ['4 in', '4 in'],
      ],
      spacing: '9 ft',
    });
    expect(yard.cut.to('yd3').toString()).toBe('1');
  });

  test('fill all over is fill, and no cell of it is a mixed one', () => {
    const low = grid([
      [-1, -1, -1],
      [-1, 0, -3],
    ]);
    expect(low.cells).toEqual({ whole: 2, partial: 0, mixed: 0 });
    // 100 m2 a cell: means of 0.75 m and 1.25 m
    expect(low.fill.to('m3').toString()).toBe('200');
    expect(low.cut.to('m3').toString()).toBe('0');
    expect(low.deepestFill?.depth.to('m').toString()).toBe('3');
  });

  test('a cell that lacks a corner counts for nothing, and places without a cell are told', () => {
    const pit = grid([
      [1, 1, null, 3],
      [1, 1, 1, null],
      [null, 1, 1, 2],
    ]);
    expect(pit.cells).toEqual({ whole: 2, partial: 0, mixed: 0 });
    expect(pit.cut.to('m3').toString()).toBe('200');
    expect(pit.unusedPlaces).toBe(2);
  });

  test('heights over a plane', () => {
    const pit = gridVolumes({
      heights: {
        unit: 'm',
        rows: [
          [10, 10.1],
          [10.2, 10.4],
        ],
      },
      design: { z0: '9.8 m', gradeX: '1%', gradeY: '2%' },
      spacing: '10 m',
    });
    // depths 0.2, 0.2, 0.2 and 0.3
    expect(pit.cut.to('m3').toString()).toBe('22.5');
    const moved = gridVolumes({
      heights: {
        unit: 'm',
        rows: [
          [10, 10.1],
          [10.2, 10.4],
        ],
      },
      design: { z0: '-95.2 m', gradeX: '1%', gradeY: '2%' },
      spacing: '10 m',
      origin: { x: '500 m', y: '5000 m' },
    });
    expect(moved.cut.to('m3').toString()).toBe('22.5');
  });
});

describe('cells with cut and fill', () => {
  test('split along a straight zero line', () => {
    const cell = grid([
      [-0.1, 0.3],
      [-0.1, 0.3],
    ]);
    // zero at a quarter: fill 2.5 m x 10 m x 0.1 m / 2, cut 7.5 m x 10 m x 0.3 m / 2
    expect(cell.fill.to('m3').toString()).toBe('1.25');
    expect(cell.cut.to('m3').toString()).toBe('11.25');
    expect(cell.fillArea.to('m2').toString()).toBe('25');
    expect(cell.cutArea.to('m2').toString()).toBe('75');
    expect(cell.cells.mixed).toBe(1);
  });

  test('split along a curved one, against the closed integral', () => {
    const cell = gridVolumes({
      depths: {
        unit: 'm',
        rows: [
          [-0.05, 0.2],
          [0.1, 0.35],
        ],
      },
      spacing: { x: '4 m', y: '5 m' },
    });
    // here the cell is a plane: the corner cut off is 0.2 by 1/3 of the sides, 0.05 deep
    expect(cell.fill.toNumber('m3')).toBeCloseTo((20 * 0.2 * (1 / 3) * 0.05) / 6, 12);
    const saddle = grid([
      [1, -1],
      [-1, 1],
    ]);
    // d = (1 - 2u)(1 - 2v): half cut, half fill, each a quarter of an eighth twice
    expect(saddle.cut.to('m3').toString()).toBe('12.5');
    expect(saddle.fill.to('m3').toString()).toBe('12.5');
    expect(saddle.cutArea.to('m2').toString()).toBe('50');
    const curved = grid([
      [2, -1],
      [1, 1],
    ]);
    // near edge p = 2 - 3 u, far edge q = 1: fill p^2 / (2 (q - p)) where p < 0; with w = q - p it is
    // the integral of (w - 1)^2 / (6 w) from 1 to 2
    const closed = (100 * (2 - 4 + Math.log(2) - (0.5 - 2))) / 6;
    expect(curved.fill.toNumber('m3')).toBeCloseTo(closed, 10);
    expect(curved.net.to('m3').toString()).toBe('75');
  });
});

test('a sliver of cut beside much fill, and the other way round, keeps its sign and its digits', () => {
  // the corner stands up by e = 3e-6: zero at about e / (1 + e) along both edges, cut e^3 / 6
  const corner = 3e-6;
  const rows = [
    [-1, -1],
    [-1, corner],
  ];
  const fill = grid(rows);
  const sliver = (100 * corner ** 3) / 6;
  expect(fill.cut.toNumber('m3') / sliver).toBeCloseTo(1, 4);
  expect(fill.net.to('m3').toString()).toBe('-74.999925');
  const cut = grid(rows.map((row) => row.map((depth) => -depth)));
  expect(cut.fill.toNumber('m3') / sliver).toBeCloseTo(1, 4);
});

describe('cells at an outline', () => {
  const tilted = [
    [1, 2, 3],
    [1, 2, 3],
    [1, 2, 3],
  ];
  const outline = (points: readonly (readonly [number, number])[]) => ({
    outline: { unit: 'm', points },
  });

  test('along grid lines all cells are whole', () => {
    const part = grid(
      tilted,
      outline([
        [0, 0],
        [10, 0],
        [10, 20],
        [0, 20],
      ]),
    );
    expect(part.cells).toEqual({ whole: 2, partial: 0, mixed: 0 });
    expect(part.cut.to('m3').toString()).toBe('300');
    expect(part.isCovered).toBe(true);
    expect(part.deepestCut?.depth.to('m').toString()).toBe('2');
  });

  test('in between they are cut exactly', () => {
    const part = grid(
      tilted,
      outline([
        [5, 5],
        [15, 5],
        [15, 15],
        [5, 15],
      ]),
    );
    expect(part.cells).toEqual({ whole: 0, partial: 4, mixed: 0 });
    // mean depth 2 over 100 m2
    expect(part.cut.to('m3').toString()).toBe('200');
    const triangle = grid(
      tilted,
      outline([
        [0, 0],
        [20, 0],
        [0, 20],
      ]),
    );
    // 1 + x / 10 over the triangle: 200 (1 + 20 / 30)
    expect(triangle.cut.toNumber('m3')).toBeCloseTo(1000 / 3, 9);
    expect(triangle.cells).toEqual({ whole: 1, partial: 2, mixed: 0 });
  });

  test('a warped cell cut by the outline, with cut and fill', () => {
    const saddle = grid(
      [
        [1, -1],
        [-1, 1],
      ],
      outline([
        [0, 0],
        [10, 0],
        [10, 10],
      ]),
    );
    // the half under the diagonal: by symmetry of x and y half of everything
    expect(saddle.cut.toNumber('m3')).toBeCloseTo(6.25, 11);
    expect(saddle.fill.toNumber('m3')).toBeCloseTo(6.25, 11);
    expect(saddle.cutArea.toNumber('m2')).toBeCloseTo(25, 11);
    expect(saddle.net.toNumber('m3')).toBeCloseTo(0, 11);
    expect(saddle.area.to('m2').toString()).toBe('50');
  });

  test('a plane over a piece of a cell: by pencil', () => {
    // depth (x - 4) / 10 over x from 1 to 9, and over the triangle of half of it
    const rows = [
      [-0.4, 0.6],
      [-0.4, 0.6],
    ];
    const square = grid(
      rows,
      outline([
        [1, 2],
        [9, 2],
        [9, 8],
        [1, 8],
      ]),
    );
    expect(square.cut.toNumber('m3')).toBeCloseTo((6 * 25) / 20, 11);
    expect(square.fill.toNumber('m3')).toBeCloseTo((6 * 9) / 20, 11);
    expect(square.cutArea.toNumber('m2')).toBeCloseTo(30, 11);
    const half = grid(
      rows,
      outline([
        [1, 2],
        [9, 2],
        [9, 8],
      ]),
    );
    // width 3 (x - 1) / 4: fill from 1 to 4 is the integral of 3 (x - 1) (4 - x) / 40
    expect(half.fill.toNumber('m3')).toBeCloseTo((3 * 27) / 6 / 40, 11);
    expect(half.fillArea.toNumber('m2')).toBeCloseTo((3 * 9) / 8, 11);
    expect(half.net.toNumber('m3')).toBeCloseTo((3 * 512) / 12 / 10 - (24 * 3) / 10, 11);
  });

  test('pieces of a twisted cell make up the whole, wherever the cut runs', () => {
    const rows = [
      [0.31, -0.42],
      [-0.17, 0.23],
    ];
    const whole = grid(rows);
    for (const [a, b] of [
      [2, 7.5],
      [0.5, 10 - 2 ** -20],
      [5, 5],
      [9.75, 0.125],
    ] as const) {
      const lower = grid(
        rows,
        outline([
          [0, 0],
          [10, 0],
          [10, b],
          [0, a],
        ]),
      );
      const upper = grid(
        rows,
        outline([
          [0, a],
          [10, b],
          [10, 10],
          [0, 10],
        ]),
      );
      for (const part of ['cut', 'fill'] as const) {
        const sum = lower[part].toNumber('m3') + upper[part].toNumber('m3');
        expect(sum).toBeCloseTo(whole[part].toNumber('m3'), 10);
      }
      const areas = lower.cutArea.toNumber('m2') + upper.cutArea.toNumber('m2');
      expect(areas).toBeCloseTo(whole.cutArea.toNumber('m2'), 9);
    }
  });

  test('beyond the grid the outline is uncovered', () => {
    const part = grid(
      tilted,
      outline([
        [15, 0],
        [30, 0],
        [30, 20],
        [15, 20],
      ]),
    );
    expect(part.area.to('m2').toString()).toBe('100');
    expect(part.uncoveredArea.to('m2').toString()).toBe('200');
    expect(part.isCovered).toBe(false);
  });

  test('four millimetres beyond the grid are told', () => {
    const part = grid(
      tilted,
      outline([
        [10, 0],
        [20.004, 0],
        [20.004, 20],
        [10, 20],
      ]),
    );
    expect(part.area.to('m2').toString()).toBe('200');
    expect(part.uncoveredArea.toNumber('m2')).toBeCloseTo(0.08, 9);
    expect(part.isCovered).toBe(false);
  });
});

describe('refusals', () => {
  const valid = {
    depths: {
      unit: 'm',
      rows: [
        [1, 1],
        [1, 1],
      ],
    },
    spacing: '1 m',
  };
  testRefusals(gridVolumes, valid, [
    ['depths', undefined, 'REQUIRED', ''],
    ['heights', valid.depths, 'CONFLICTING_FIELDS', ''],
    ['design', { z0: '0 m', gradeX: '0%', gradeY: '0%' }, 'CONFLICTING_FIELDS'],
    ['depths.unit', undefined, 'UNIT_MISSING'],
    ['depths.rows', [], 'EMPTY_LIST'],
    ['depths.rows', [[1, 1], [1]], 'COUNT_MISMATCH', 'depths.rows[1]'],
    [
      'depths.rows',
      [
        [1, 1],
        [1, null],
      ],
      'TOO_FEW',
      'depths',
    ],
    [
      'depths.rows',
      [
        [1, 1],
        [1, 'x'],
      ],
      'NOT_A_NUMBER',
      'depths.rows[1][1]',
    ],
    [
      'depths.rows',
      [
        [1, 1],
        [1, Infinity],
      ],
      'NOT_FINITE',
      'depths.rows[1][1]',
    ],
    [
      'depths',
      [
        ['1 m', '1 m'],
        ['1 m', 1],
      ],
      'UNIT_MISSING',
      'depths[1][1]',
    ],
    ['spacing', undefined, 'REQUIRED'],
    ['spacing', '0 m', 'NOT_POSITIVE'],
    ['spacing', { x: '1 m', y: '-1 m' }, 'NOT_POSITIVE', 'spacing.y'],
    ['origin', { x: '1 m' }, 'REQUIRED', 'origin.y'],
    [
      'outline',
      {
        unit: 'm',
        points: [
          [5, 5],
          [6, 5],
          [6, 6],
        ],
      },
      'SURFACES_APART',
    ],
  ]);
  test('heights need a design', () => {
    expect(() => gridVolumes({ heights: valid.depths as never, spacing: '1 m' })).toThrow(/design/);
  });
});

describe('a nearly plane cell whose zero line lies across it', () => {
  const cells = (rows: readonly (readonly number[])[]) =>
    gridVolumes({ depths: { unit: 'm', rows }, spacing: '1 m' });

  test.each([
    [0.2, -0.099999999, 0.2, -0.1],
    [0.3, -0.400000001, 0.3, -0.4],
    [0.3, 0.100000001, -0.1, -0.3],
  ])('%s, %s, %s, %s: the same along and across', (a, b, c, d) => {
    const along = cells([
      [a, b],
      [c, d],
    ]);
    const across = cells([
      [a, c],
      [b, d],
    ]);
    expect(along.cut.toNumber('m3')).toBeCloseTo(across.cut.toNumber('m3'), 14);
    expect(along.cutArea.toNumber('m2')).toBeCloseTo(across.cutArea.toNumber('m2'), 12);
    expect(along.net.toNumber('m3')).toBeCloseTo((a + b + c + d) / 4, 15);
  });
});
