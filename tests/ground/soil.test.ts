import { describe, expect, test } from 'vitest';
import { liftWater, relativeDensity, sandBulkingAt, soilPhases } from 'settline/ground';
import { expectFault } from '../faults.js';
import { formulaOf } from '../formula-of.js';
import { formulaFaults } from '../formulas/evaluate-step.js';
import { testRefusals } from '../refusals.js';

describe('soil phases', () => {
  // by pencil: 1 m3 of solids of 2.6 and 0.3 m3 of voids, of which 0.2 m3 are water
  const whole = {
    wetDensity: { value: '2800/1.3', unit: 'kg/m3' },
    dryDensity: '2000 kg/m3',
    moisture: '2/26',
    specificGravity: '2.6',
    voidRatio: '0.3',
    porosity: '3/13',
    saturation: '2/3',
  } as const;
  type Name = keyof typeof whole;
  const only = (...names: readonly Name[]) =>
    Object.fromEntries(names.map((name) => [name, whole[name]])) as Partial<typeof whole>;
  const some: readonly (readonly Name[])[] = [
    ['wetDensity', 'moisture', 'specificGravity'],
    ['wetDensity', 'dryDensity', 'saturation'],
    ['wetDensity', 'voidRatio', 'saturation'],
    ['wetDensity', 'specificGravity', 'saturation'],
    ['wetDensity', 'porosity', 'moisture'],
    ['wetDensity', 'moisture', 'saturation'],
    ['dryDensity', 'saturation', 'porosity'],
    ['dryDensity', 'moisture', 'saturation'],
    ['dryDensity', 'specificGravity', 'saturation'],
    ['moisture', 'specificGravity', 'saturation'],
    ['moisture', 'voidRatio', 'saturation'],
    ['saturation', 'voidRatio', 'specificGravity'],
    ['moisture', 'specificGravity', 'porosity'],
  ];

  test.each(some.map((names) => [names]))('from %s', (names) => {
    const soil = soilPhases(only(...names));
    expect(soil.wetDensity.toNumber('kg/m3')).toBeCloseTo(2800 / 1.3, 9);
    expect(soil.dryDensity.toNumber('kg/m3')).toBeCloseTo(2000, 9);
    expect(soil.moisture).toBeCloseTo(2 / 26, 13);
    expect(soil.specificGravity).toBeCloseTo(2.6, 13);
    expect(soil.voidRatio).toBeCloseTo(0.3, 13);
    expect(soil.porosity).toBeCloseTo(3 / 13, 13);
    expect(soil.saturation).toBeCloseTo(2 / 3, 13);
    expect(soil.airVoids).toBeCloseTo(1 / 13, 13);
    expect(soil.saturatedDensity.toNumber('kg/m3')).toBeCloseTo(2900 / 1.3, 9);
    expect(soil.saturatedMoisture).toBeCloseTo(3 / 26, 13);
    expect(soil.waterToSaturate.toNumber('kg/m3')).toBeCloseTo(100 / 1.3, 9);
    expect(soil.working.length).toBeGreaterThan(2);
  });

  test('figures that follow from each other are not enough', () => {
    const twice = { wetDensity: '2200 kg/m3', dryDensity: '2000 kg/m3', moisture: '0.1' };
    expect(expectFault(() => soilPhases(twice), 'REQUIRED').path).toEqual(['specificGravity']);
    expectFault(() => soilPhases({}), 'REQUIRED');
    expectFault(() => soilPhases({ voidRatio: '0.3', porosity: '3/13' }), 'REQUIRED');
  });

  test('figures that agree within 1 % are taken, others refused by their path', () => {
    const rounded = soilPhases({ ...whole, wetDensity: '2154 kg/m3', moisture: '0.0769' });
    expect(rounded.voidRatio).toBeCloseTo(0.3, 3);
    const issue = expectFault(
      () => soilPhases({ ...whole, porosity: '0.24' }),
      'CONFLICTING_FIELDS',
    );
    expect(['voidRatio', 'porosity']).toContain(issue.path[0]);
  });

  test('more water than voids, and soil denser than its solids', () => {
    const wet = { dryDensity: '2000 kg/m3', specificGravity: '2.6', moisture: '0.12' };
    const issue = expectFault(() => soilPhases(wet), 'OUT_OF_RANGE');
    expect(issue.path).toEqual(['moisture']);
    expect(issue.params['percent']).toBe('104.0');
    const dense = { dryDensity: '2700 kg/m3', specificGravity: '2.6', moisture: 0 };
    expect(expectFault(() => soilPhases(dense), 'OUT_OF_RANGE').path).toEqual(['dryDensity']);
    const turned = { wetDensity: '1900 kg/m3', dryDensity: '2000 kg/m3', specificGravity: '2.6' };
    expect(expectFault(() => soilPhases(turned), 'OUT_OF_RANGE').path).toEqual(['wetDensity']);
  });

  test('nearly full is not full, and a little more water than voids is refused', () => {
    const at = (saturation: number) =>
      soilPhases({
        dryDensity: '2000 kg/m3',
        specificGravity: '2.6',
        moisture: (saturation * 0.3) / 2.6,
      });
    expect(at(0.9995).saturation).toBeCloseTo(0.9995, 9);
    expect(expectFault(() => at(1.0005), 'OUT_OF_RANGE').path).toEqual(['moisture']);
  });

  test('dry and saturated soil are exact', () => {
    const dry = soilPhases({ dryDensity: '1800 kg/m3', specificGravity: '2.7', moisture: 0 });
    expect([dry.saturation, dry.moisture, dry.voidRatio]).toEqual([0, 0, 0.5]);
    expect(dry.wetDensity.equals(dry.dryDensity)).toBe(true);
    const full = soilPhases({ voidRatio: '0.5', specificGravity: '2.5', saturation: 1 });
    expect([full.moisture, full.saturation, full.airVoids]).toEqual([0.2, 1, 0]);
    expect(full.waterToSaturate.toNumber('kg/m3')).toBe(0);
  });

  testRefusals(soilPhases, { ...only('dryDensity', 'moisture', 'specificGravity') }, [
    ['dryDensity', '0 kg/m3', 'NOT_POSITIVE'],
    ['dryDensity', 2000, 'UNIT_MISSING'],
    ['moisture', -0.1, 'NEGATIVE'],
    ['moisture', 11, 'OUT_OF_RANGE'],
    ['specificGravity', 0.9, 'OUT_OF_RANGE'],
    ['waterDensity', '2 t/m3', 'OUT_OF_RANGE'],
    ['density', '2 t/m3', 'UNKNOWN_FIELD'],
  ]);
});

describe('relative density', () => {
  test('by densities, and back', () => {
    // (1.65 - 1.5) / 0.3 x 1.8 / 1.65
    const limits = { loosest: '1.5 t/m3', densest: '1.8 t/m3' } as const;
    const state = relativeDensity({ ...limits, dryDensity: '1.65 t/m3' });
    expect(state.percent).toBeCloseTo(54.5454545454, 9);
    expect(state.voidRatio).toBeNull();
    const back = relativeDensity({ ...limits, percent: '600/11' });
    expect(back.dryDensity?.toNumber('t/m3')).toBeCloseTo(1.65, 12);
    expect(
      relativeDensity({ ...limits, percent: 0 })
        .dryDensity?.to('t/m3')
        .toString(),
    ).toBe('1.5');
    expect(relativeDensity({ ...limits, dryDensity: '1.9 t/m3' }).extrapolated).toBe(true);
    expect(state.extrapolated).toBe(false);
    expect(back.working.map(formulaOf)).toEqual(['d = d1 * d2 / (d2 - (d2 - d1) * D / 100)']);
    expect(state.working.map(formulaOf)).toEqual(['D = 100 * (d - d1) / (d2 - d1) * d2 / d']);
    expect(formulaFaults([...back.working, ...state.working])).toEqual([]);
  });

  test('by void ratios', () => {
    const state = relativeDensity({ maximumVoids: '0.8', minimumVoids: '0.4', percent: 25 });
    expect(state.voidRatio).toBe(0.7);
    expect(state.dryDensity).toBeNull();
    expect(state.working[0]?.result.value).toBe(0.7);
    expect(state.working.map(formulaOf)).toEqual(['e = e1 - (e1 - e2) * D / 100']);
    expect(formulaFaults(state.working)).toEqual([]);
    const found = relativeDensity({ maximumVoids: '0.8', minimumVoids: '0.4', voidRatio: '0.7' });
    expect(found.working.map(formulaOf)).toEqual(['D = 100 * (e1 - e) / (e1 - e2)']);
    expect(formulaFaults(found.working)).toEqual([]);
  });

  testRefusals(relativeDensity, { maximumVoids: '0.8', minimumVoids: '0.4', voidRatio: '0.5' }, [
    ['minimumVoids', '0.8', 'LIMITS_CONTRADICT'],
    ['minimumVoids', undefined, 'REQUIRED'],
    ['voidRatio', undefined, 'REQUIRED'],
    ['percent', 50, 'CONFLICTING_FIELDS'],
    ['loosest', '1.5 t/m3', 'CONFLICTING_FIELDS'],
  ]);
  testRefusals(relativeDensity, { loosest: '1.5 t/m3', densest: '1.8 t/m3', percent: 50 }, [
    ['densest', '1.5 t/m3', 'LIMITS_CONTRADICT'],
    ['percent', 131, 'OUT_OF_RANGE'],
    ['percent', undefined, 'REQUIRED', 'dryDensity'],
  ]);
});

describe('water for a lift', () => {
  const lift = {
    area: '60 m2',
    thickness: '100 mm',
    dryDensity: '2000 kg/m3',
    moisture: '0.03',
    targetMoisture: '0.06',
  } as const;

  test('12 t of stone, 3 % more: 360 litres', () => {
    const water = liftWater(lift);
    expect(water.dryMass.to('t').toString()).toBe('12');
    expect(water.water.to('l').toString()).toBe('360');
    expect(water.litresPerSquareMetre).toBe(6);
    expect(water.volume.to('m3').toString()).toBe('6');
    expect(water.action).toBe('add-water');
    expect(water.note).toContain('Sprinkle');
  });

  test('a tenth dries off: more to add', () => {
    expect(
      liftWater({ ...lift, evaporation: '0.1' })
        .water.to('l')
        .toString(),
    ).toBe('400');
  });

  test('too wet: what dries off does not count twice', () => {
    const wet = liftWater({ ...lift, moisture: '0.09', evaporation: '0.1' });
    expect(wet.water.to('l').toString()).toBe('-360');
    expect(wet.action).toBe('let-dry');
    const waterOf = ({ working }: typeof wet) =>
      working.find(({ title }) => title === 'Water to add');
    expect(waterOf(wet)).toMatchObject({ formula: 'W = M * (w2 - w1)' });
    expect(waterOf(liftWater(lift))).toMatchObject({ formula: 'W = M * (w2 - w1) / (1 - x)' });
  });

  test('within 2 percent of the target it compacts as it is', () => {
    expect(liftWater({ ...lift, moisture: '0.04' })).toMatchObject({
      action: 'compact-now',
      note: 'The moisture is within 2 percent of the target. Compact before it dries.',
    });
    expect(liftWater({ ...lift, moisture: '0.08' }).isWithinWindow).toBe(true);
    expect(liftWater({ ...lift, moisture: '0.0399' }).action).toBe('add-water');
    expect(liftWater({ ...lift, moisture: '0.06' }).water.isZero()).toBe(true);
  });

  testRefusals(liftWater, lift, [
    ['area', '0 m2', 'NOT_POSITIVE'],
    ['thickness', 100, 'UNIT_MISSING'],
    ['moisture', 3, 'OUT_OF_RANGE'],
    ['targetMoisture', undefined, 'REQUIRED'],
    ['evaporation', 1, 'OUT_OF_RANGE'],
  ]);
});

describe('bulking of damp sand at a moisture', () => {
  test('on the line between the rows, and past the last', () => {
    const of = (moisture: string) => sandBulkingAt({ moisture });
    expect([of('0').minimum, of('0').maximum]).toEqual([0, 0]);
    expect([of('0.025').minimum, of('0.025').maximum]).toEqual([0.125, 0.15]);
    expect([of('0.05').minimum, of('0.05').maximum]).toEqual([0.25, 0.3]);
    expect([of('0.075').minimum, of('0.075').maximum]).toEqual([0.175, 0.2]);
    expect([of('0.10').maximum, of('0.10').extrapolated]).toEqual([0.1, false]);
    expect([of('0.11').maximum, of('0.11').extrapolated]).toEqual([0.1, true]);
    expect(of('0.05').note).toContain('jar');
  });
});
