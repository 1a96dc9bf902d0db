import { describe, expect, test } from 'vitest';
import { baseOrder, yieldCheck } from 'settline/materials';
import { baseOrder as orderOfVolumes, layerVolume, stateVolume } from 'settline/volumes';
import { expectFault, faultsOf } from '../faults.js';

const stone = { compactedDryDensity: '3700 lb/yd3', compactedPerLoose: 0.8 } as const;

describe('stone for a base', () => {
  test('is the same function in both rooms', () => {
    expect(baseOrder).toBe(orderOfVolumes);
  });

  test('one part is the order of one layer, to the last digit', () => {
    const part = { area: '324 ft2', thickness: '1 ft' };
    const allowances = { moisture: '0.05', waste: '0.1' };
    const ours = baseOrder({ parts: [part], ...stone, ...allowances });
    const order = baseOrder({ ...part, ...stone, ...allowances });
    expect(ours.compacted.volume.equals(order.compacted.volume)).toBe(true);
    expect(ours.loose.volume.equals(order.loose.volume)).toBe(true);
    expect(ours.dryMass.equals(order.dryMass)).toBe(true);
    expect(ours.deliveredMass.equals(order.deliveredMass)).toBe(true);
    expect(ours.water.equals(order.deliveredMass.minus(order.dryMass))).toBe(true);
    expect(ours.parts.map(({ name }) => name)).toEqual(['part 1']);
    expect(order.parts).toEqual(ours.parts);
    expect(order.working).toEqual(ours.working);
  });

  test('parts of several thicknesses add up', () => {
    const { compacted, loose, deliveredMass, parts } = baseOrder({
      parts: [
        { name: 'drive', area: '81 ft2', thickness: '8 in' },
        { name: 'walk', area: '81 ft2', thickness: '4 in' },
        { name: 'nothing', area: '0 ft2', thickness: '4 in' },
      ],
      ...stone,
      moisture: 0.05,
      waste: 0.2,
    });
    expect(compacted.state).toBe('compacted');
    expect(loose.state).toBe('loose');
    expect(compacted.to('yd3').toString()).toBe('3');
    expect(loose.to('yd3').toString()).toBe('4.5');
    expect(deliveredMass.to('lb').toString()).toBe('13986');
    expect(parts.map((part) => part.compacted.to('yd3').toString())).toEqual(['2', '1', '0']);
    expect(parts.map((part) => part.loose.to('yd3').toString())).toEqual(['3', '1.5', '0']);
    expect(parts.map((part) => part.deliveredMass.to('lb').toString())).toEqual([
      '9324',
      '4662',
      '0',
    ]);
  });

  test('two of the three densities say the third, exactly', () => {
    const parts = [{ area: '60 m2', thickness: '25 mm' }];
    const both = baseOrder({
      parts,
      compactedDryDensity: '1700 kg/m3',
      looseDryDensity: '1500 kg/m3',
    });
    // 1.5 x 1700 / 1500: exactly 1.7, though 1500 / 1700 has no end
    expect(both.loose.to('m3').toString()).toBe('1.7');
    expect(both.loose.volume.equals(stateVolume('1.7 m3', 'loose').volume)).toBe(true);
    const fromLoose = baseOrder({ parts, looseDryDensity: '1500 kg/m3', compactedPerLoose: '0.8' });
    expect(fromLoose.compactedDryDensity.to('kg/m3').toString()).toBe('1875');
    expect(fromLoose.dryMass.to('kg').toString()).toBe('2812.5');
    expect(fromLoose.loose.to('m3').toString()).toBe('1.875');
  });

  test('the working names each part and the sums', () => {
    const { working } = baseOrder({
      parts: [{ name: 'drive', area: '1 m2', thickness: '1 m' }],
      ...stone,
    });
    expect(working.map(({ title }) => title)).toEqual([
      'Compacted volume, drive',
      'Loose volume',
      'Delivered mass',
    ]);
    expect(working[0]?.result.value).toEqual(working[1]?.given[0]?.value);
    const two = baseOrder({
      parts: [
        { area: '1 m2', thickness: '1 m' },
        { area: '1 m2', thickness: '1 m' },
      ],
      ...stone,
    });
    expect(two.working.map(({ title }) => title).slice(0, 2)).toEqual([
      'Compacted volume, part 1',
      'Compacted volume, part 2',
    ]);
    const one = baseOrder({ area: '1 m2', thickness: '1 m', ...stone });
    expect(one.working[0]?.title).toBe('Compacted volume');
  });

  test('without a density there are volumes and no masses', () => {
    const layer = { area: '81 ft2', thickness: '4 in' } as const;
    const bare = baseOrder({ ...layer, compactedPerLoose: '0.8', moisture: 0.05, waste: 0.1 });
    expect(bare.compacted.to('yd3').toString()).toBe('1');
    expect(bare.loose.to('yd3').toString()).toBe('1.375');
    expect(bare).toMatchObject({
      dryMass: null,
      deliveredMass: null,
      water: null,
      compactedDryDensity: null,
    });
    expect(bare.parts[0]?.deliveredMass).toBeNull();
    expect(bare.working.map(({ title }) => title)).toEqual(['Compacted volume', 'Loose volume']);
  });

  test('a third of moisture and waste stays a third', () => {
    const order = baseOrder({
      area: '3 m2',
      thickness: '1 m',
      compactedDryDensity: '3 t/m3',
      compactedPerLoose: '2/3',
      moisture: '1/3',
      waste: '1/3',
    });
    expect(order.loose.to('m3').toString()).toBe('6');
    expect(order.deliveredMass.to('t').toString()).toBe('16');
    expect(order.water.to('t').toString()).toBe('4');
  });

  test('all faults at once', () => {
    const issues = faultsOf(() =>
      baseOrder({
        parts: [
          { area: '-1 m2', thickness: '30 m' },
          { name: '', area: '1 m2', thickness: '1 m' },
        ],
        compactedDryDensity: '0 kg/m3',
        looseDryDensity: '1 kg/m3',
        compactedPerLoose: 2,
        moisture: 5,
        waste: -1,
      }),
    );
    expect(issues.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['parts.0.area', 'NEGATIVE'],
      ['parts.0.thickness', 'OUT_OF_RANGE'],
      ['parts.1.name', 'EMPTY'],
      ['compactedDryDensity', 'NOT_POSITIVE'],
      ['compactedPerLoose', 'OUT_OF_RANGE'],
      ['moisture', 'OUT_OF_RANGE'],
      ['waste', 'NEGATIVE'],
      ['compactedPerLoose', 'CONFLICTING_FIELDS'],
    ]);
  });

  const parts = [{ area: '1 m2', thickness: '1 m' }];
  test.each([
    [() => baseOrder({ parts: [], ...stone }), 'EMPTY_LIST'],
    [() => baseOrder({ parts }), 'REQUIRED'],
    [() => baseOrder({ parts, looseDryDensity: '1 t/m3' }), 'REQUIRED'],
    [
      () => baseOrder({ parts, looseDryDensity: '2 t/m3', compactedDryDensity: '1.5 t/m3' }),
      'OUT_OF_RANGE',
    ],
    [() => baseOrder({ area: '1 m2', ...stone }), 'REQUIRED'],
    [() => baseOrder(stone), 'REQUIRED'],
    [() => baseOrder({ parts, area: '1 m2', ...stone }), 'CONFLICTING_FIELDS'],
    [() => baseOrder({ parts, thickness: '1 m', ...stone }), 'CONFLICTING_FIELDS'],
    [() => baseOrder(null as never), 'WRONG_TYPE'],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});

describe('tickets against the hole', () => {
  const hole = { compactedVolume: '10 m3', expectedDryDensity: '2 t/m3' } as const;

  test('exactly as expected, on the limits, slightly over', () => {
    const check = (mass: string) => yieldCheck({ tickets: [mass], ...hole });
    expect(check('20 t')).toMatchObject({ verdict: 'pass', code: null });
    expect(check('20 t').ratio).toBe(1);
    expect(check('22 t').verdict).toBe('pass');
    expect(check('18 t').verdict).toBe('pass');
    expect(check('22.000000000000000001 t')).toMatchObject({ verdict: 'fail', code: 'too-much' });
    expect(check('17.999999999999999999 t')).toMatchObject({ verdict: 'fail', code: 'too-little' });
  });

  test('water is not stone, and stone used elsewhere is not in the hole', () => {
    const { deliveredMass, dryMass, impliedDryDensity, ratio } = yieldCheck({
      tickets: ['10.5 t', { mass: '11 t', moisture: 0.1 }],
      moisture: 0.05,
      usedElsewhere: '1 t',
      ...hole,
    });
    expect(deliveredMass.to('t').toString()).toBe('21.5');
    expect(dryMass.to('t').toString()).toBe('19');
    expect(impliedDryDensity.to('t/m3').toString()).toBe('1.9');
    expect(ratio.toString()).toBe('0.95');
  });

  test('a ticket without its own moisture has that of all', () => {
    const check = yieldCheck({ tickets: [{ mass: '21 t' }], moisture: 0.05, ...hole });
    expect(check.dryMass.to('t').toString()).toBe('20');
    const asJSON = [{ value: 21, unit: 't' }] as const;
    expect(yieldCheck({ tickets: asJSON, moisture: 0.05, ...hole }).verdict).toBe('pass');
  });

  test('an uncertainty leaves what is near a limit open', () => {
    const check = (mass: string, uncertainty: number) =>
      yieldCheck({ tickets: [mass], ...hole, uncertainty }).verdict;
    expect(check('21 t', 0.05)).toBe('unclear'); // 1.05 (1 + 0.05) is more than 1.1
    expect(check('20.9 t', 0.05)).toBe('pass');
    expect(check('23 t', 0.05)).toBe('unclear');
    expect(check('23.2 t', 0.05)).toBe('fail');
    const even = yieldCheck({ tickets: ['20 t'], ...hole, uncertainty: 0.5 });
    expect(even).toMatchObject({ verdict: 'unclear', code: null });
  });

  test('limits of the job, and a volume with its state', () => {
    const check = yieldCheck({
      tickets: ['21 t'],
      compactedVolume: layerVolume({ area: '50 m2', thickness: '200 mm' }),
      expectedDryDensity: '2 t/m3',
      limits: { minimum: 0.98, maximum: 1.02 },
    });
    expect(check.verdict).toBe('fail');
    expect(check.note).toBe(
      '5.0% more stone than the measured hole holds. The cause may be over-dig, a soft spot that was not booked separately, a spill, or wetter stone than booked. Find it before you order more.',
    );
  });

  test('says what it means', () => {
    const note = (mass: string, uncertainty = 0) =>
      yieldCheck({ tickets: [mass], ...hole, uncertainty }).note;
    expect(note('20 t')).toBe('The tickets agree with the measured hole.');
    expect(note('15 t')).toContain('25.0% less stone');
    expect(note('15 t')).toContain('before you cover it');
    expect(note('21.5 t', 0.1)).toContain('Take more readings of the hole');
    const { working } = yieldCheck({ tickets: ['20 t'], ...hole });
    expect(working.map(({ source }) => source)).toEqual(['derived', 'common-practice']);
  });

  test.each([
    [() => yieldCheck({ tickets: [], ...hole }), 'EMPTY_LIST'],
    [() => yieldCheck({ tickets: ['0 t'], ...hole }), 'NOT_POSITIVE'],
    [() => yieldCheck({ tickets: [20 as never], ...hole }), 'UNIT_MISSING'],
    [() => yieldCheck({ tickets: ['20 ton'], ...hole }), 'UNIT_AMBIGUOUS'],
    [() => yieldCheck({ tickets: [{ moisture: 0.1 } as never], ...hole }), 'REQUIRED'],
    [() => yieldCheck({ tickets: ['1 t'], ...hole, usedElsewhere: '2 t' }), 'OUT_OF_RANGE'],
    [() => yieldCheck({ tickets: ['1 t'], ...hole, uncertainty: 2 }), 'OUT_OF_RANGE'],
    [
      () => yieldCheck({ tickets: ['1 t'], ...hole, limits: { minimum: 1.2, maximum: 1.3 } }),
      'OUT_OF_RANGE',
    ],
    [
      () => yieldCheck({ tickets: ['1 t'], ...hole, limits: { minimum: 0.9, maximum: 0.95 } }),
      'OUT_OF_RANGE',
    ],
    [
      () =>
        yieldCheck({
          tickets: ['1 t'],
          compactedVolume: stateVolume('1 m3', 'loose') as never,
          expectedDryDensity: '2 t/m3',
        }),
      'WRONG_STATE',
    ],
    [
      () => yieldCheck({ tickets: ['1 t'], compactedVolume: '0 m3', expectedDryDensity: '2 t/m3' }),
      'NOT_POSITIVE',
    ],
  ] as const)('refuses %s', (run, code) => {
    expectFault(run, code);
  });
});
