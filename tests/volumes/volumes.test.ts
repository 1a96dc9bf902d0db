import { describe, expect, test } from 'vitest';
import { baseOrder, layerVolume, loads, soilFactors, stateVolume, toState } from 'settline/volumes';
import { volume } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { formulaOf } from '../formula-of.js';

const clay = { loosePerBank: '1.3', compactedPerBank: '0.9' };

describe('states', () => {
  test('turn exactly, and back', () => {
    const bank = stateVolume('10 yd3', 'bank');
    const loose = toState(bank, 'loose', clay);
    expect(loose.state).toBe('loose');
    expect(loose.to('yd3').toString()).toBe('13');
    expect(toState(loose, 'compacted', clay).to('yd3').toString()).toBe('9');
    expect(
      toState(toState(loose, 'compacted', clay), 'bank', clay).volume.equals(bank.volume),
    ).toBe(true);
    expect(toState(bank, 'bank', clay).volume.equals(bank.volume)).toBe(true);
  });

  test('are plain in JSON and frozen', () => {
    const bank = stateVolume('1 m3', 'bank');
    expect(JSON.stringify(bank)).toBe('{"state":"bank","volume":{"value":"1","unit":"m3"}}');
    expect(Object.isFrozen(bank)).toBe(true);
    expect(bank.toNumber('l')).toBe(1000);
  });

  test.each([
    [() => stateVolume('1 m3', 'wet' as never), 'UNKNOWN_CHOICE'],
    [() => stateVolume('-1 m3', 'bank'), 'NEGATIVE'],
    [() => stateVolume(5 as never, 'bank'), 'UNIT_MISSING'],
    [() => toState({ volume: 5 } as never, 'bank', clay), 'WRONG_TYPE'],
    [() => toState(null as never, 'bank', clay), 'WRONG_TYPE'],
    [() => toState(stateVolume('1 m3', 'bank'), 'wet' as never, clay), 'UNKNOWN_CHOICE'],
    [
      () => toState(stateVolume('1 m3', 'bank'), 'loose', { ...clay, loosePerBank: 30 }),
      'OUT_OF_RANGE',
    ],
    [
      () => toState(stateVolume('1 m3', 'bank'), 'loose', { ...clay, compactedPerBank: 0 }),
      'NOT_POSITIVE',
    ],
    [() => toState(stateVolume('1 m3', 'bank'), 'loose', {} as never), 'REQUIRED'],
    [() => soilFactors('peat' as never), 'UNKNOWN_CHOICE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('orders', () => {
  test('9 ft x 9 ft x 4 in is exactly one yard', () => {
    const layer = layerVolume({ area: '81 ft2', thickness: '4 in' });
    expect(layer.state).toBe('compacted');
    expect(layer.to('yd3').toString()).toBe('1');
  });

  test('moisture weighs on the bridge, waste on everything, neither on the hole', () => {
    const order = baseOrder({
      area: '324 ft2',
      thickness: '1 ft',
      compactedDryDensity: '3700 lb/yd3',
      compactedPerLoose: '0.8',
      moisture: '0.05',
      waste: '0.1',
    });
    expect(order.compacted.to('yd3').toString()).toBe('12');
    expect(order.loose.to('yd3').toString()).toBe('16.5');
    expect(order.dryMass.to('lb').toString()).toBe('48840');
    expect(order.deliveredMass.to('lb').toString()).toBe('51282');
    expect(order.working.map(({ result }) => result.symbol)).toEqual(['Vc', 'Vl', 'M']);
  });

  test('bad orders, all faults at once', () => {
    const issues = faultsOf(() =>
      baseOrder({
        area: '-1 ft2',
        thickness: '30 m',
        compactedDryDensity: '0 lb/yd3',
        compactedPerLoose: 2,
        moisture: 5,
        waste: -1,
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['area', 'NEGATIVE'],
      ['thickness', 'OUT_OF_RANGE'],
      ['compactedDryDensity', 'NOT_POSITIVE'],
      ['compactedPerLoose', 'OUT_OF_RANGE'],
      ['moisture', 'OUT_OF_RANGE'],
      ['waste', 'NEGATIVE'],
    ]);
  });

  test.each([
    [() => layerVolume({ area: '1 m2' } as never), 'REQUIRED'],
    [() => layerVolume({ area: '1 m', thickness: '1 m' }), 'UNIT_UNKNOWN'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('loads', () => {
  const carry = (volume: string, payload = '12 ton-us') =>
    loads({
      volume: stateVolume(volume, 'loose'),
      looseDensity: '2400 lb/yd3',
      boxVolume: '10 yd3',
      payload,
    });

  test('the box or the payload decides', () => {
    expect(carry('20 yd3')).toMatchObject({ count: 2, limitedBy: 'volume' });
    expect(carry('20 yd3', '11.99 ton-us')).toMatchObject({ count: 3, limitedBy: 'mass' });
    expect(carry('20.000000000000000001 yd3').count).toBe(3);
    expect(carry('0 yd3').count).toBe(0);
  });

  test('full load, last load and total', () => {
    const { perLoad, lastLoad, total } = carry('25 yd3');
    expect(perLoad.volume.to('yd3').toString()).toBe('10');
    expect(perLoad.mass.to('ton-us').toString()).toBe('12');
    expect(lastLoad.volume.to('yd3').toString()).toBe('5');
    expect(total.mass.to('lb').toString()).toBe('60000');
  });

  test('cautions and working', () => {
    const spoil = carry('25 yd3');
    expect(spoil.cautions.map(({ id }) => id)).toEqual(['loads']);
    expect(spoil.working.map(formulaOf)).toEqual(['v = min(B, P / d)', 'n = ceil(V / v)']);
  });

  test('less than nothing is no soil', () => {
    const less = { state: 'loose', volume: volume('-5 m3') } as never;
    const truck = { looseDensity: '1 t/m3', boxVolume: '2 m3', payload: '10 t' };
    expect(expectFault(() => loads({ volume: less, ...truck }), 'NEGATIVE').path).toEqual([
      'volume',
    ]);
    expectFault(() => toState(less, 'bank', clay), 'NEGATIVE');
  });

  test('bank soil does not ride in trucks', () => {
    expectFault(
      () =>
        loads({
          volume: stateVolume('1 m3', 'bank') as never,
          looseDensity: '1 t/m3',
          boxVolume: '1 m3',
          payload: '1 t',
        }),
      'WRONG_STATE',
    );
    expectFault(() => loads({} as never), 'REQUIRED');
  });
});
