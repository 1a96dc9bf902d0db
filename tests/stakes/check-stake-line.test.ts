import { describe, expect, test } from 'vitest';
import { checkStakeLine } from 'settline/stakes';
import { length, type LengthInput } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';

type Row = readonly [id: string, x: LengthInput, y: LengthInput];
const stakes = (rows: readonly Row[]) => rows.map(([id, x, y]) => ({ id, x, y }));
const check = (
  rows: readonly Row[],
  tolerance: LengthInput = '10 mm',
  reference: 'ends' | 'best-fit' = 'ends',
) => checkStakeLine({ stakes: stakes(rows), tolerance, reference });

describe('which stakes could be off', () => {
  const ids = (mm: readonly number[], reference: 'ends' | 'best-fit') => {
    const rows = mm.map((y, k): Row => [`S${k + 1}`, `${3 * k} m`, { value: y, unit: 'mm' }]);
    return check(rows, '20 mm', reference).suspects.map(({ id }) => id);
  };

  test('a stake that was moved onto held ends is one of them, onto the best line it is not', () => {
    expect(ids([0, 40, 0, 0], 'ends')).toEqual(['S1', 'S2']);
    expect(ids([0, 0, 40, 0, 0, 40], 'best-fit')).toEqual(['S3']);
    expect(ids([0, 0, 40, 0, 0, 40], 'ends')).toEqual([]);
    // the second is 30 mm off the line of the ends; without it the third is off too
    expect(ids([0, 30, 15, 15, 0], 'ends')).toContain('S2');
  });
});

describe('ends held', () => {
  test('a stake left of travel is moved right, and the other way round', () => {
    const east = check([
      ['A', '0 m', '0 m'],
      ['B', '5 m', '30 mm'],
      ['C', '7 m', '-20 mm'],
      ['D', '10 m', '0 m'],
    ]);
    expect(east.ok).toBe(false);
    expect(east.code).toBe('out-of-line');
    expect(east.offsets.map(({ offset }) => offset.to('mm').toString())).toEqual([
      '0',
      '30',
      '-20',
      '0',
    ]);
    expect(east.offsets.map(({ station }) => station.to('m').toString())).toEqual([
      '0',
      '5',
      '7',
      '10',
    ]);
    expect(
      east.moves.map(({ id, distance, direction }) => [
        id,
        distance.to('mm').toString(),
        direction,
      ]),
    ).toEqual([
      ['B', '30', 'right'],
      ['C', '20', 'left'],
    ]);
    expect(east.worst.id).toBe('B');
    expect(east.ambiguous).toBe(false);
    expect(east.line.length.to('m').toString()).toBe('10');
  });

  test('a stake on the tolerance passes, a hair over fails', () => {
    const rows = (y: string): Row[] => [
      ['A', '0 ft', '0 ft'],
      ['B', '5 ft', y],
      ['C', '12 ft', '0 ft'],
    ];
    expect(check(rows('1/4 in'), '1/4 in').ok).toBe(true);
    expect(check(rows('0.2500000000000000000001 in'), '1/4 in').ok).toBe(false);
  });

  test('a tie on a slanted line is exact too', () => {
    // along (5, 12) of length 13; cross product 13 x 10 mm
    const rows: Row[] = [
      ['A', '0 m', '0 m'],
      ['B', { value: '2.5', unit: 'm' }, { value: '6.026', unit: 'm' }],
      ['C', '5 m', '12 m'],
    ];
    expect(check(rows, '10 mm').offsets[1]?.offset.to('mm').toString()).toBe('10');
    expect(check(rows, '10 mm').ok).toBe(true);
    expect(check(rows, '9.9999999999999999999 mm').ok).toBe(false);
  });

  test('due north works like due east', () => {
    const north = check([
      ['A', '3 m', '0 m'],
      ['B', '2.97 m', '5 m'],
      ['C', '3 m', '10 m'],
    ]);
    expect(north.offsets[1]?.offset.to('mm').toString()).toBe('30');
    expect(north.moves[0]?.direction).toBe('right');
  });

  test('ends that coincide are refused', () => {
    const issue = expectFault(
      () =>
        check([
          ['A', '0 m', '0 m'],
          ['B', '5 m', '0 m'],
          ['C', '0 ft', '0 ft'],
        ]),
      'POINTS_COINCIDE',
    );
    expect(issue.path).toEqual(['stakes']);
  });

  test('site coordinates of 500 000 / 4 500 000 m lose nothing', () => {
    const [east, north] = ['500000.1234567', '4500000.7654321'];
    const shifted = (x: string, y: string): readonly [LengthInput, LengthInput] => [
      length(east, 'm').plus(length(x)),
      length(north, 'm').plus(length(y)),
    ];
    const rows: Row[] = [
      ['A', ...shifted('0 m', '0 m')],
      ['B', ...shifted('4 m', '3.001 m')],
      ['C', ...shifted('8 m', '6 m')],
    ];
    const line = check(rows, '0.8 mm');
    // cross((8, 6), (4, 3.001)) / 10 = 0.0008 m
    expect(line.offsets[1]?.offset.to('mm').toString()).toBe('0.8');
    expect(line.ok).toBe(true);
  });
});

describe('two stakes', () => {
  test.each(['ends', 'best-fit'] as const)('are always in line: no verdict (%s)', (reference) => {
    const line = check(
      [
        ['A', '0 m', '0 m'],
        ['B', '3 m', '4 m'],
      ],
      '0 mm',
      reference,
    );
    expect(line.ok).toBeNull();
    expect(line.code).toBe('always-in-line');
    expect(line.note).toContain('always in line');
    expect(line.moves).toEqual([]);
    expect(line.ambiguous).toBe(false);
    expect(line.line.length.to('m').toString()).toBe('5');
  });
});

describe('no stake held', () => {
  const three: Row[] = [
    ['A', '0 m', '0 m'],
    ['B', '5 m', '60 mm'],
    ['C', '10 m', '0 m'],
  ];

  test('with three stakes, which is off cannot be known: each move is given', () => {
    const line = check(three, '10 mm', 'best-fit');
    expect(line.ok).toBe(false);
    expect(line.ambiguous).toBe(true);
    expect(line.code).toBe('ambiguous');
    expect(line.note).toContain('not all');
    expect(line.moves.map(({ id, direction }) => [id, direction])).toEqual([
      ['A', 'left'],
      ['B', 'right'],
      ['C', 'left'],
    ]);
    expect(line.moves[1]?.distance.to('mm').toString()).toBe('60');
    // A onto the line through B and C: 0.3 / sqrt(25.0036) x 2 x ... = |cross| / |BC|
    const cross = 0.6 / Math.hypot(5, 0.06);
    expect(line.moves[0]?.distance.toNumber('m')).toBeCloseTo(cross, 12);
  });

  test('each of the moves by itself brings the three into line', () => {
    const { moves } = check(three, '10 mm', 'best-fit');
    const sideways = { left: 1, right: -1 } as const;
    for (const move of moves) {
      const others = three.filter(([id]) => id !== move.id);
      const [from, to] = [others[0], others[1]];
      if (from === undefined || to === undefined) expect.unreachable();
      const across = length(to[2] as string)
        .minus(length(from[2] as string))
        .toNumber('m');
      const along = length(to[1] as string)
        .minus(length(from[1] as string))
        .toNumber('m');
      const size = Math.hypot(across, along);
      const step = sideways[move.direction] * move.distance.toNumber('m');
      const moved = three.map(([id, x, y]): Row => {
        if (id !== move.id) return [id, x, y];
        const newX = length(x as string).toNumber('m') - (across / size) * step;
        const newY = length(y as string).toNumber('m') + (along / size) * step;
        return [id, { value: newX, unit: 'm' }, { value: newY, unit: 'm' }];
      });
      expect(check(moved, '0.001 mm', 'best-fit').ok).toBe(true);
    }
  });

  test('three stakes in line are in line', () => {
    expect(check(three, '60 mm', 'best-fit')).toMatchObject({
      ok: true,
      ambiguous: false,
      moves: [],
    });
  });

  test('with one of five off, that one is found and moved onto the line of the others', () => {
    const line = check(
      [
        ['A', '0 m', '0 m'],
        ['B', '2 m', '0 m'],
        ['C', '4 m', '50 mm'],
        ['D', '6 m', '0 m'],
        ['E', '8 m', '0 m'],
      ],
      '5 mm',
      'best-fit',
    );
    expect(line.ambiguous).toBe(false);
    expect(
      line.moves.map(({ id, distance, direction }) => [
        id,
        distance.to('mm').toString(),
        direction,
      ]),
    ).toEqual([['C', '50', 'right']]);
    expect(line.worst.id).toBe('C');
  });

  test('with an end of five off, the end is found', () => {
    const line = check(
      [
        ['A', '0 m', '0 m'],
        ['B', '2 m', '0 m'],
        ['C', '4 m', '0 m'],
        ['D', '6 m', '0 m'],
        ['E', '8 m', '-80 mm'],
      ],
      '5 mm',
      'best-fit',
    );
    expect(line.moves.map(({ id, direction }) => [id, direction])).toEqual([['E', 'left']]);
  });

  test('with two of six off, the moves go to the fitted line', () => {
    const line = check(
      [
        ['A', '0 m', '0 m'],
        ['B', '2 m', '100 mm'],
        ['C', '4 m', '0 m'],
        ['D', '6 m', '0 m'],
        ['E', '8 m', '-100 mm'],
        ['F', '10 m', '0 m'],
      ],
      '20 mm',
      'best-fit',
    );
    expect(line.ambiguous).toBe(false);
    const out = line.offsets.filter(({ inTolerance }) => !inTolerance);
    expect(line.moves.map(({ id }) => id)).toEqual(out.map(({ id }) => id));
    expect(line.moves.length).toBeGreaterThan(1);
  });

  test('stakes on one spot, or in a square, have no line', () => {
    const spot = (id: string): Row => [id, '1 m', '2 m'];
    expectFault(
      () => check([spot('A'), spot('B'), spot('C')], '1 mm', 'best-fit'),
      'POINTS_COINCIDE',
    );
    expectFault(
      () =>
        check(
          [
            ['A', '0 m', '0 m'],
            ['B', '1 m', '0 m'],
            ['C', '1 m', '1 m'],
            ['D', '0 m', '1 m'],
          ],
          '1 mm',
          'best-fit',
        ),
      'DIRECTION_UNDEFINED',
    );
  });
});

describe('bad input', () => {
  test('all faults at once', () => {
    const issues = faultsOf(() =>
      checkStakeLine({
        stakes: [
          { id: 'A', x: 5 as never, y: '0 m' },
          { id: 'A', x: '1 m', y: '0 m' },
          { id: '', x: '2 m' } as never,
        ],
        tolerance: '-1 mm',
        reference: 'sideways' as never,
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['stakes.1.id', 'DUPLICATE_ID'],
      ['stakes.0.x', 'UNIT_MISSING'],
      ['stakes.2.id', 'EMPTY'],
      ['stakes.2.y', 'REQUIRED'],
      ['tolerance', 'NEGATIVE'],
      ['reference', 'UNKNOWN_CHOICE'],
    ]);
  });

  test.each([
    [() => check([]), 'EMPTY_LIST'],
    [() => check([['A', '0 m', '0 m']]), 'TOO_FEW'],
    [() => checkStakeLine(undefined as never), 'REQUIRED'],
    [() => checkStakeLine({ stakes: 'A B C' } as never), 'WRONG_TYPE'],
  ] as const)('%s', (run, code) => {
    expectFault(run, code);
  });
});

test('the working gives each offset', () => {
  const { working } = check([
    ['A', '0 m', '0 m'],
    ['B', '5 m', '30 mm'],
    ['C', '10 m', '0 m'],
  ]);
  expect(working).toHaveLength(3);
  expect(working[1]?.result.value).toEqual(length('30 mm'));
});
