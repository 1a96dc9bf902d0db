import { describe, expect, test } from 'vitest';
import { scanStraightedge } from 'settline/geometry';
import { expectFault } from '../../faults.js';

describe('scanStraightedge', () => {
  const pairs = [
    [0, 0],
    [1, -0.004],
    [2, -0.006],
    [3, 0],
    [4, 0.001],
  ] as const;

  test('takes pairs and flat arrays alike, and leaves them as they were', () => {
    const flat = Float64Array.from(pairs.flat());
    const found = scanStraightedge(flat, { length: 3 });
    expect(found).toEqual({
      greatestGap: 0.006,
      at: 2,
      contacts: [
        [0, 0],
        [3, 0],
      ],
    });
    expect(scanStraightedge(pairs, { length: 3 })).toEqual(found);
    expect([...flat]).toEqual(pairs.flat());
    expect(Object.isFrozen(found.contacts[0])).toBe(true);
  });

  test('low ground before the straightedge is not under it', () => {
    const step = [
      [0, -1],
      [1, 0],
      [2, -0.01],
      [3, 0],
    ] as const;
    expect(scanStraightedge(step, { length: 2 })).toEqual({
      greatestGap: 0.01,
      at: 2,
      contacts: [
        [1, 0],
        [3, 0],
      ],
    });
  });

  test('lies without a gap: the contacts of the first position', () => {
    const crown = [
      [0, 0],
      [5, 0],
      [6, 1],
      [7, 1.5],
    ] as const;
    expect(scanStraightedge(crown, { length: 2 })).toEqual({
      greatestGap: 0,
      at: 5,
      contacts: [
        [5, 0],
        [6, 1],
      ],
    });
  });

  const PAIR = [
    [0, 0],
    [1, 0],
  ] as const;

  test('refuses options that are none, and one that does not exist', () => {
    expectFault(() => scanStraightedge(PAIR, null as never), 'WRONG_TYPE');
    expectFault(() => scanStraightedge(PAIR, { lenght: 3 } as never), 'UNKNOWN_FIELD');
  });

  test.each([
    ['TOO_FEW', [[0, 0]], 3],
    ['TOO_FEW', new Float64Array(2), 3],
    ['WRONG_TYPE', new Float64Array(5), 3],
    ['WRONG_TYPE', [[0, 0], , [1, 1]], 3],
    ['WRONG_TYPE', PAIR, '3'],
    [
      'OUT_OF_RANGE',
      [
        [0, 0],
        [1, 1e101],
      ],
      3,
    ],
    [
      'OUT_OF_RANGE',
      [
        [0, 0],
        [1e-101, 0],
      ],
      3,
    ],
    ['WRONG_TYPE', 'flat', 3],
    ['WRONG_TYPE', [[0, 0], [1]], 3],
    ['WRONG_TYPE', [[0, 0], { s: 1 }], 3],
    [
      'WRONG_TYPE',
      [
        [0, 0],
        [1, '0'],
      ],
      3,
    ],
    [
      'NOT_FINITE',
      [
        [0, 0],
        [1, Number.NaN],
      ],
      3,
    ],
    [
      'NOT_FINITE',
      [
        [0, 0],
        [Infinity, 0],
      ],
      3,
    ],
    [
      'STATION_ORDER',
      [
        [0, 0],
        [0, 1],
      ],
      3,
    ],
    [
      'STATION_ORDER',
      [
        [0, 0],
        [2, 1],
        [1, 1],
      ],
      3,
    ],
    [
      'READINGS_TOO_SPARSE',
      [
        [0, 0],
        [4, 0],
      ],
      3,
    ],
    [
      'NOT_POSITIVE',
      [
        [0, 0],
        [1, 0],
      ],
      0,
    ],
    [
      'NOT_POSITIVE',
      [
        [0, 0],
        [1, 0],
      ],
      -1,
    ],
    [
      'NOT_FINITE',
      [
        [0, 0],
        [1, 0],
      ],
      Number.NaN,
    ],
    [
      'NOT_FINITE',
      [
        [0, 0],
        [1, 0],
      ],
      Infinity,
    ],
    [
      'REQUIRED',
      [
        [0, 0],
        [1, 0],
      ],
      undefined,
    ],
  ] as const)('refuses: %s', (code, profile, length) => {
    expectFault(() => scanStraightedge(profile as never, { length } as never), code);
  });
});
