import { describe, expect, test } from 'vitest';
import { baseExtension, buildUp, excavationDepth, lifts, minimumBuildUp } from 'settline/build-up';
import { length, mass } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

const drive = buildUp({
  layers: [
    { name: 'paver', thickness: '3 1/4 in' },
    { name: 'bedding', thickness: length('1 in') },
    { name: 'base', thickness: { value: '8', unit: 'in' }, material: 'crushed stone' },
  ],
});

describe('buildUp', () => {
  test('stacks from finished grade down, exactly', () => {
    expect(drive.total.to('in').toString()).toBe('12.25');
    expect(
      drive.layers.map(({ top, bottom }) => [top.to('in').toString(), bottom.to('in').toString()]),
    ).toEqual([
      ['0', '3.25'],
      ['3.25', '4.25'],
      ['4.25', '12.25'],
    ]);
    expect(drive.layers[2]?.material).toBe('crushed stone');
    expect(drive.layers[0]?.material).toBeNull();
  });

  test('is frozen and shows its working', () => {
    expect(Object.isFrozen(drive)).toBe(true);
    expect(Object.isFrozen(drive.layers[0])).toBe(true);
    expect(drive.working[0]).toMatchObject({ formula: 'D = sum(t)', source: 'derived' });
    expect(drive.working).toBe(drive.working);
    expect(JSON.stringify(drive)).not.toContain('working');
  });

  test('gathers all faults', () => {
    const issues = faultsOf(() =>
      buildUp({
        layers: [
          { name: 'a', thickness: 5 as never },
          { name: 'a', thickness: '-1 in' },
          { thickness: '6 m' } as never,
          'base' as never,
        ],
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['layers.1.name', 'DUPLICATE_ID'],
      ['layers.0.thickness', 'UNIT_MISSING'],
      ['layers.1.thickness', 'NOT_POSITIVE'],
      ['layers.2.name', 'REQUIRED'],
      ['layers.2.thickness', 'OUT_OF_RANGE'],
      ['layers.3', 'WRONG_TYPE'],
    ]);
  });

  test('needs a layer', () => {
    expectFault(() => buildUp({ layers: [] }), 'EMPTY_LIST');
    expectFault(() => buildUp(null as never), 'WRONG_TYPE');
  });
});

describe('as many layers as may be', () => {
  const sheets = (count: number) =>
    buildUp({
      layers: Array.from({ length: count }, (_, k) => ({ name: `sheet ${k}`, thickness: '1 mm' })),
    });

  test('a hundred, which a dig takes too', () => {
    expect(
      excavationDepth({ buildUp: sheets(100) })
        .total.to('mm')
        .toString(),
    ).toBe('100');
  });

  test('one more is refused, in a stack that was put together by hand too', () => {
    expectFault(() => sheets(101), 'TOO_MANY');
    const stack = sheets(100);
    const [first] = stack.layers;
    const higher = { ...stack, layers: [...stack.layers, first] } as never;
    expectFault(() => excavationDepth({ buildUp: higher }), 'WRONG_TYPE');
  });
});

describe('excavationDepth', () => {
  test('12 1/4 in, less 3 in of asphalt, is 9 1/4 in of soil', () => {
    const dig = excavationDepth({ buildUp: drive, removedSurface: '3 in' });
    expect(dig.total.to('in').toString()).toBe('12.25');
    expect(dig.soil.to('in').toString()).toBe('9.25');
  });

  test('an existing surface above or below finish', () => {
    expect(
      excavationDepth({ buildUp: drive, existingAboveFinish: '3 in' }).total.to('in').toString(),
    ).toBe('15.25');
    const low = excavationDepth({
      buildUp: drive,
      existingAboveFinish: '-11 in',
      removedSurface: '2 in',
    });
    expect(low.total.to('in').toString()).toBe('1.25');
    expect(low.soil.to('in').toString()).toBe('-0.75');
  });

  test('carries its cautions', () => {
    const { cautions } = excavationDepth({ buildUp: drive });
    expect(cautions.map(({ id }) => id)).toEqual(['utilities', 'excavation', 'trees']);
    expect(cautions[0]?.text).toContain('utility owner');
    expect(cautions[1]?.text).toContain('competent person');
  });

  test('shows its working', () => {
    const { working } = excavationDepth({ buildUp: drive, removedSurface: '3 in' });
    expect(working.map(formulaOf)).toEqual(['E = D + a', 'S = E - o']);
    expect(working[1]?.result.value).toEqual(length('9.25 in'));
  });

  test.each([
    [() => excavationDepth({} as never), 'REQUIRED'],
    [() => excavationDepth({ buildUp: { layers: [], total: 5 } as never }), 'WRONG_TYPE'],
    [
      () =>
        excavationDepth({
          buildUp: { ...drive, layers: [drive.layers[0], { name: 'base' }] } as never,
        }),
      'WRONG_TYPE',
    ],
    [() => excavationDepth({ buildUp: { ...drive, total: mass('12 lb') } as never }), 'WRONG_TYPE'],
    [() => excavationDepth({ buildUp: drive, removedSurface: '-2 in' }), 'NEGATIVE'],
    [() => excavationDepth({ buildUp: drive, existingAboveFinish: '50 m' }), 'OUT_OF_RANGE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('baseExtension', () => {
  test('shows its working and refuses what is no thickness', () => {
    const { working } = baseExtension({ baseThickness: '4 in' });
    expect(working[0]).toMatchObject({ formula: 'x = max(t, x0)', source: 'paver-tolerances' });
    expect(baseExtension({ baseThickness: '8 in' }).working[0]?.source).toBe('edge-restraints');
    expectFault(() => baseExtension({ baseThickness: '0 in' }), 'NOT_POSITIVE');
    expectFault(() => baseExtension({} as never), 'REQUIRED');
  });
});

describe('lifts', () => {
  const ten = (maxLift: string, compactedPerLoose: number | string = '0.8') =>
    lifts({ thickness: '10 in', maxLift, compactedPerLoose });

  test('as few equal lifts as the machine can compact', () => {
    expect(ten('4 in').count).toBe(3);
    expect(ten('5 in').count).toBe(2);
    expect(ten('10 in').count).toBe(1);
    expect(ten('3.3333333333333333333 in').count).toBe(4);
    expect(ten('3 1/3 in').count).toBe(3);
    expect(ten('1 m').count).toBe(1);
    // as many as a layer may have
    expect(ten('0.02 in').count).toBe(500);
  });

  test('thirds stay exact', () => {
    const { compacted, loose, tops } = ten('4 in');
    expect(compacted.times(3).equals(length('10 in'))).toBe(true);
    expect(loose.times('2.4').equals(length('10 in'))).toBe(true);
    expect(tops.at(-1)?.equals(length('10 in'))).toBe(true);
    expect(tops).toHaveLength(3);
  });

  test('a slip of the unit that makes a thousand lifts is refused with their number', () => {
    const issue = expectFault(() => ten('0.01 in'), 'OUT_OF_RANGE');
    expect(issue.path).toEqual(['maxLift']);
    expect(issue.params['got']).toBe(1000);
    expect(issue.message).toContain('makes 1000 lifts');
    expectFault(() => ten('0.01999 in'), 'OUT_OF_RANGE');
  });

  test('working', () => {
    expect(ten('4 in').working.map(formulaOf)).toEqual(['n = ceil(T / L)', 's = T / n / r']);
  });

  test.each([
    [() => ten('4 in', 1.25), 'OUT_OF_RANGE'],
    [() => ten('4 in', 0.4), 'OUT_OF_RANGE'],
    [() => ten('4 in', 0), 'OUT_OF_RANGE'],
    [() => ten('4 in', -1), 'OUT_OF_RANGE'],
    [() => ten('4 in', Number.NaN), 'NOT_FINITE'],
    [() => ten('0 in'), 'NOT_POSITIVE'],
    [() => ten('0.01 in'), 'OUT_OF_RANGE'],
    [() => lifts({ thickness: '10 in', maxLift: '4 in' } as never), 'REQUIRED'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('minimumBuildUp', () => {
  test.each([
    [() => minimumBuildUp({ use: 'runway' as never, subgrade: 'clay' }), 'UNKNOWN_CHOICE'],
    [() => minimumBuildUp({ use: 'pedestrian' } as never), 'REQUIRED'],
    [
      () => minimumBuildUp({ use: 'pedestrian', subgrade: 'clay', frost: 1 as never }),
      'WRONG_TYPE',
    ],
    [
      () => minimumBuildUp({ use: 'pedestrian', subgrade: 'clay', edition: 'cm' as never }),
      'UNKNOWN_CHOICE',
    ],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });

  test('working names the published minimum and each addition', () => {
    const { working } = minimumBuildUp({ use: 'pedestrian', subgrade: 'clay', frost: true });
    expect(formulaOf(working[0])).toBe('b = p + a1 + a2');
    expect(working[0]?.given.map(({ name }) => name)).toEqual([
      'published minimum base',
      'added for clay subgrade',
      'added for frost',
    ]);
  });
});
