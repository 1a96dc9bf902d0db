import { describe, expect, test } from 'vitest';
import {
  averageEndArea,
  batteredDig,
  endAreaVolumes,
  prismoidal,
  soilBalance,
  stateVolume,
  taperedLayer,
} from 'settline/volumes';
import { widenOutline } from 'settline/outline';
import { testRefusals } from '../refusals.js';
import { formulaOf } from '../formula-of.js';

describe('average end area and prismoidal rule', () => {
  test('one spacing or several', () => {
    const areas = ['1 m2', '2 m2', '4 m2'];
    expect(averageEndArea({ areas, spacing: '10 m' }).to('m3').toString()).toBe('45');
    expect(
      averageEndArea({ areas, spacing: ['10 m', '2 m'] })
        .to('m3')
        .toString(),
    ).toBe('21');
  });

  test('exact where a float is not: two sections of 81 ft2, 4 in apart', () => {
    const volume = averageEndArea({ areas: ['81 ft2', '81 ft2'], spacing: '4 in' });
    expect(volume.to('yd3').toString()).toBe('1');
  });

  test('a pyramid: the prismoidal rule is right, the end areas are half too large', () => {
    const whole = { first: '0 m2', middle: '3 m2', last: '12 m2', length: '5 m' };
    expect(prismoidal(whole).to('m3').toString()).toBe('20');
    expect(
      averageEndArea({ areas: ['0 m2', '12 m2'], spacing: '5 m' })
        .to('m3')
        .toNumber(),
    ).toBe(30);
  });

  testRefusals(averageEndArea, { areas: ['1 m2', '2 m2'], spacing: '1 m' }, [
    ['areas', undefined, 'REQUIRED'],
    ['areas', [], 'EMPTY_LIST'],
    ['areas', ['1 m2'], 'TOO_FEW'],
    ['areas', ['1 m2', '-2 m2'], 'NEGATIVE', 'areas[1]'],
    ['areas', ['1 m2', '2 m'], 'UNIT_UNKNOWN', 'areas[1]'],
    ['areas', ['1 m2', 2], 'UNIT_MISSING', 'areas[1]'],
    ['spacing', undefined, 'REQUIRED'],
    ['spacing', '0 m', 'NOT_POSITIVE'],
    ['spacing', ['1 m', '2 m'], 'COUNT_MISMATCH'],
    ['spacing', ['-1 m'], 'NOT_POSITIVE', 'spacing[0]'],
  ]);
  testRefusals(prismoidal, { first: '1 m2', middle: '1 m2', last: '1 m2', length: '1 m' }, [
    ['first', '-1 m2', 'NEGATIVE'],
    ['middle', undefined, 'REQUIRED'],
    ['last', '1 m3', 'UNIT_UNKNOWN'],
    ['length', '0 m', 'NOT_POSITIVE'],
  ]);
});

describe('cut and fill along a strip', () => {
  const sections = [
    { station: '0 m', cut: '1.2 m2' },
    { station: '10 m', cut: '0.6 m2' },
    { station: '15 m', fill: '0.3 m2' },
    { station: '25 m', fill: '0.3 m2' },
  ];

  test('a run-out is a pyramid, or a wedge', () => {
    const walk = endAreaVolumes({ sections });
    expect(walk.cut.to('m3').toString()).toBe('10');
    expect(walk.fill.to('m3').toString()).toBe('3.5');
    expect(walk.net.to('m3').toString()).toBe('6.5');
    expect([walk.cut.state, walk.fill.state]).toEqual(['bank', 'compacted']);
    expect(walk.intervals.map(({ cutRule, fillRule }) => `${cutRule} ${fillRule}`)).toEqual([
      'end-area none',
      'pyramid pyramid',
      'none end-area',
    ]);
    expect(walk.intervals.map(({ netToHere }) => netToHere.to('m3').toString())).toEqual([
      '9',
      '9.5',
      '6.5',
    ]);
    expect(walk.working.map(formulaOf)).toEqual([
      'V = (s[2] - s[1]) * (A[1] + A[2]) / 2',
      'V = (s[2] - s[1]) * (A[1] + A[2]) / 3',
      'V = (s[2] - s[1]) * (A[1] + A[2]) / 3',
      'V = (s[2] - s[1]) * (A[1] + A[2]) / 2',
      'N = C - F',
    ]);
    const wedges = endAreaVolumes({ sections, runOut: 'wedge' });
    expect(wedges.cut.to('m3').toString()).toBe('10.5');
    expect(wedges.fill.to('m3').toString()).toBe('3.75');
  });

  testRefusals(endAreaVolumes, { sections }, [
    ['sections', [sections[0]], 'TOO_FEW'],
    ['sections', [sections[1], sections[0]], 'NOT_INCREASING', 'sections[1].station'],
    ['sections', [sections[0], sections[0]], 'NOT_INCREASING', 'sections[1].station'],
    ['sections', [sections[0], { cut: '1 m2' }], 'REQUIRED', 'sections[1].station'],
    ['sections', [{ station: '0 m', cut: '-1 m2' }, sections[1]], 'NEGATIVE', 'sections[0].cut'],
    ['runOut', 'cone', 'UNKNOWN_CHOICE'],
  ]);
});

describe('tapered layers', () => {
  const taper = { length: '6 m', width: '2 m', thickness: '0.3 m', lastThickness: '0.1 m' };

  test.each([
    [{}, '2.4', 'taper'],
    [{ lastThickness: '0.3 m' }, '3.6', 'even'],
    [{ lastThickness: '0 m' }, '1.8', 'wedge'],
    [{ lastThickness: '0 m', lastWidth: '0 m' }, '1.2', 'pyramid'],
    [
      { thickness: '0 m', width: '0 m', lastThickness: '0.3 m', lastWidth: '2 m' },
      '1.2',
      'pyramid',
    ],
    // L / 6 (2 w1 t1 + w1 t2 + w2 t1 + 2 w2 t2) = 1.2 + 0.2 + 0.3 + 0.2
    [{ lastWidth: '1 m' }, '1.9', 'taper'],
  ] as const)('%j: %s m3, %s', (changes, volume, shape) => {
    const layer = taperedLayer({ ...taper, ...changes });
    expect(layer.volume.to('m3').toString()).toBe(volume);
    expect(layer.volume.state).toBe('compacted');
    expect(layer.shape).toBe(shape);
    expect(layer.working[0]?.result.value).toBe(layer.volume.volume);
  });

  testRefusals(taperedLayer, taper, [
    ['length', '0 m', 'NOT_POSITIVE'],
    ['width', '-1 m', 'NEGATIVE'],
    ['lastWidth', '20 km', 'OUT_OF_RANGE'],
    ['thickness', undefined, 'REQUIRED'],
    ['lastThickness', '21 m', 'OUT_OF_RANGE'],
  ]);
});

describe('a dig with sloped sides', () => {
  const outline = {
    unit: 'm',
    points: [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ],
  } as const;
  const pit = { outline, depth: '0.435 m', horizontalPerVertical: 0.5 };

  test('a rectangular pit, by its polynomial', () => {
    const dig = batteredDig(pit);
    const [a, b, d, s] = [6, 4, 0.435, 0.5];
    const volume = a * b * d + (a + b) * s * d ** 2 + (4 / 3) * s ** 2 * d ** 3;
    expect(dig.volume.toNumber('m3')).toBeCloseTo(volume, 13);
    expect(dig.upright.to('m3').toString()).toBe('10.44');
    expect(dig.extra.volume.plus(dig.upright.volume).equals(dig.volume.volume)).toBe(true);
    expect(dig.isExact).toBe(true);
    expect(dig.cautions.map(({ id }) => id)).toEqual(['excavation', 'utilities']);
    expect(formulaOf(dig.working[0])).toBe('V = d / 6 * (A[1] + 4 * A[2] + A[3])');
  });

  test('upright sides, and a side against a building', () => {
    const upright = batteredDig({ ...pit, horizontalPerVertical: 0 });
    expect(upright.extra.volume.isZero()).toBe(true);
    const against = batteredDig({ ...pit, depth: '1 m', horizontalPerVertical: [0, 1, 0, 1] });
    // two wedges of 4 m x 1 m x 1 m / 2
    expect(against.extra.to('m3').toString()).toBe('4');
    expect(against.top.area.to('m2').toString()).toBe('32');
  });

  test('round corners are quarter cones', () => {
    const dig = batteredDig({ ...pit, depth: '1 m', horizontalPerVertical: 1, corners: 'round' });
    expect(dig.volume.toNumber('m3')).toBeCloseTo(24 + 10 + Math.PI / 3, 12);
  });

  test('a round end is exact; arcs cut where they meet are summed in slices', () => {
    const end = { ...outline, arcs: [{ edge: 1, bulgeMiddleOrdinate: 2 }] };
    const round = batteredDig({ outline: end, depth: '1 m', horizontalPerVertical: 1 });
    expect(round.isExact).toBe(true);
    // 6 + h by 4 + 2 h, and half a disc of 2 + h
    const half = (Math.PI / 2) * ((27 - 8) / 3);
    expect(round.volume.toNumber('m3')).toBeCloseTo(24 + 16 / 2 + 2 / 3 + half, 9);
    const points = [
      [0, 0],
      [8, 0],
      [8, 4],
      [4, 4],
      [0, 4],
    ];
    const lobes = {
      unit: 'm',
      points,
      arcs: [2, 3].map((edge) => ({ edge, bulgeMiddleOrdinate: 1.9 })),
    } as never;
    const dig = batteredDig({ outline: lobes, depth: '2 m', horizontalPerVertical: 1 });
    expect(dig.isExact).toBe(false);
    // areas at 1/40 m: the trapezoid rule is off by some 1e-5 of what the sides add
    const areas = Array.from({ length: 81 }, (_, k) =>
      widenOutline({ outline: lobes, by: `${k / 40} m` }).area.toNumber('m2'),
    );
    const sum = areas.reduce((total, one, k) => total + (k % 80 === 0 ? one / 2 : one), 0) / 40;
    expect(dig.volume.toNumber('m3')).toBeCloseTo(sum, 2);
    expect(Math.abs(dig.volume.toNumber('m3') - 150.6194)).toBeLessThan(0.0001);
  });

  test('an island that the sides close up is summed in slices', () => {
    const island = {
      unit: 'm',
      points: [
        [-5, -5],
        [5, -5],
        [5, 5],
        [-5, 5],
      ],
      holes: [
        [
          [-0.5, -0.5],
          [0.5, -0.5],
          [0.5, 0.5],
          [-0.5, 0.5],
        ],
      ],
    } as const;
    const dig = batteredDig({ outline: island, depth: '1 m', horizontalPerVertical: 1 });
    expect(dig.isExact).toBe(false);
    // a frustum from 10 m to 12 m, less a pyramid of 1 m by 1 m and half a metre high
    expect(dig.volume.toNumber('m3')).toBeCloseTo((100 + 4 * 121 + 144) / 6 - 1 / 6, 4);
  });

  testRefusals(batteredDig, pit, [
    [
      'outline',
      {
        unit: 'm',
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      'TOO_FEW',
      'outline.points',
    ],
    ['depth', '0 m', 'NOT_POSITIVE'],
    ['horizontalPerVertical', undefined, 'REQUIRED'],
    ['horizontalPerVertical', -1, 'NEGATIVE'],
    ['horizontalPerVertical', 11, 'OUT_OF_RANGE'],
    ['horizontalPerVertical', [1, 1, 1], 'COUNT_MISMATCH'],
    ['corners', 'sharp', 'UNKNOWN_CHOICE'],
  ]);
});

describe('the balance of soil', () => {
  const factors = { loosePerBank: 1.25, compactedPerBank: 0.9 };
  const [cut, fill] = [stateVolume('100 m3', 'bank'), stateVolume('45 m3', 'compacted')];
  const yards = (balance: ReturnType<typeof soilBalance>) =>
    [balance.reused, balance.spoil, balance.spoilLoose, balance.borrow, balance.borrowLoose].map(
      (volume) => volume.to('m3').toString(),
    );

  test('more cut than the fill takes', () => {
    const balance = soilBalance({ cut, fill, factors });
    expect(balance.neededBank.to('m3').toString()).toBe('50');
    expect(yards(balance)).toEqual(['50', '50', '62.5', '0', '0']);
  });

  test('less, or not all fit for fill', () => {
    expect(yards(soilBalance({ cut, fill: stateVolume('108 m3', 'compacted'), factors }))).toEqual([
      '100',
      '0',
      '0',
      '20',
      '25',
    ]);
    const poor = soilBalance({ cut, fill, factors, usable: '0.2' });
    expect(yards(poor)).toEqual(['20', '80', '100', '30', '37.5']);
    expect(poor.conservation.into.to('m3').toString()).toBe('130');
    expect(poor.conservation.difference.isZero()).toBe(true);
    expect(poor.working.map(({ result }) => result.symbol)).toEqual(['B', 'S', 'W']);
  });

  testRefusals(soilBalance, { cut, fill, factors }, [
    ['cut', stateVolume('1 m3', 'loose'), 'WRONG_STATE'],
    ['fill', stateVolume('1 m3', 'bank'), 'WRONG_STATE'],
    ['fill', '1 m3', 'WRONG_TYPE'],
    ['factors', undefined, 'REQUIRED'],
    ['factors', { loosePerBank: 4, compactedPerBank: 1 }, 'OUT_OF_RANGE', 'factors.loosePerBank'],
    ['usable', 80, 'OUT_OF_RANGE'],
  ]);
});
