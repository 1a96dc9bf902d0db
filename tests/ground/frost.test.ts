import { describe, expect, test } from 'vitest';
import {
  berggrenDepth,
  designFreezingIndex,
  foundationThickness,
  freezingIndex,
  frostBase,
  frostSupport,
  frostSusceptibility,
  soilHeat,
  stefanDepth,
  stefanIndex,
  type FrostLayerInput,
} from 'settline/ground';
import { expectFault, faultsOf } from '../faults.js';
import { testRefusals } from '../refusals.js';

describe('freezing index', () => {
  const temperatures = [4, 1, -3, -6, 2, -8, -1, 3, 5];

  test('by its definitions', () => {
    // the curve: 4 5 2 -4 -2 -10 -11 -8 -3; from 5 down to -11
    const seasonal = freezingIndex({ temperatures, unit: 'C' });
    expect([seasonal.index.value, seasonal.seasonDays]).toEqual([16, 5]);
    const total = freezingIndex({ temperatures, unit: 'C', definition: 'total' });
    expect([total.index.value, total.seasonDays]).toEqual([18, 4]);
    const months = freezingIndex({
      temperatures: [-2, -5, 1],
      unit: 'C',
      definition: 'monthly',
      days: [31, 28, 31],
    });
    expect([months.index.value, months.seasonDays]).toEqual([202, 59]);
  });

  test('temperatures in F that are given in C are refused, each at its place', () => {
    const faults = faultsOf(() => freezingIndex({ temperatures: [20, 68, -81], unit: 'C' }));
    expect(faults.map(({ code, path }) => [code, path])).toEqual([
      ['OUT_OF_RANGE', ['temperatures', 1]],
      ['OUT_OF_RANGE', ['temperatures', 2]],
    ]);
    expect(faults[0]?.message).toBe(
      '68 C is not a temperature of the air, -80 to 60 C. Check the digits and the unit',
    );
    const ends = [60, -80];
    expect(freezingIndex({ temperatures: ends, unit: 'C' }).index.value).toBe(80);
    expect(freezingIndex({ temperatures: [140, -112], unit: 'F' }).index.value).toBe(80);
  });

  test('the season begins after the last day at the top of the curve', () => {
    const { index, seasonDays } = freezingIndex({ temperatures: [2, 0, -3], unit: 'C' });
    expect([index.value, seasonDays]).toEqual([3, 1]);
  });

  test('in Fahrenheit, and no frost', () => {
    const cold = freezingIndex({ temperatures: [23, 14, 50], unit: 'F', definition: 'total' });
    expect(cold.index.value).toBeCloseTo(15, 12);
    expect(freezingIndex({ temperatures: [3, 0, 2], unit: 'C' }).index.value).toBe(0);
    expect(freezingIndex({ temperatures: [-1], unit: 'C' }).index.value).toBe(1);
  });

  testRefusals(freezingIndex, { temperatures, unit: 'C' }, [
    ['temperatures', [], 'EMPTY_LIST'],
    ['temperatures.2', 150, 'OUT_OF_RANGE'],
    ['unit', 'K', 'UNKNOWN_CHOICE'],
    ['days', [31], 'CONFLICTING_FIELDS'],
    ['definition', 'monthly', 'COUNT_MISMATCH', 'days'],
  ]);

  test('to design for: three of thirty winters, or one of ten', () => {
    const winter = (value: number) => ({ value, unit: 'C-days' }) as const;
    const thirty = Array.from({ length: 31 }, (_, k) => winter(k === 0 ? 900 : 100 + k));
    // the first of the 31 is too old to count
    const long = designFreezingIndex({ winters: thirty });
    expect([long.index.value, long.winters, long.averaged]).toEqual([129, 30, 3]);
    expect(designFreezingIndex({ winters: thirty, coldest: 1 }).index.value).toBe(130);
    const ten = designFreezingIndex({ winters: thirty.slice(0, 12) });
    expect([ten.index.value, ten.winters, ten.extrapolated]).toEqual([111, 10, false]);
    const given = (name: string) => [{ formula: 'I = mean(F)', given: [{ name }] }];
    expect(long.working).toMatchObject(given('freezing index of the coldest winters, in C-days'));
    expect(ten.working).toMatchObject(given('freezing index of the coldest winter, in C-days'));
    const few = designFreezingIndex({ winters: [winter(100), { value: 360, unit: 'F-days' }] });
    expect(few.index.value).toBeCloseTo(200, 12);
    expect(few.extrapolated).toBe(true);
    const some = { winters: thirty.slice(0, 12) };
    expect(designFreezingIndex({ ...some, coldest: 1 }).index.value).toBe(111);
    const { path, message } = expectFault(
      () => designFreezingIndex({ ...some, coldest: 3 }),
      'TOO_FEW',
    );
    expect(path).toEqual(['winters']);
    expect(message).toContain('a mean of 3 winters needs 30, got 12. Leave out coldest');
  });
});

describe('heat of soil', () => {
  // worked out by another program
  test('silt of 1600 kg/m3 at 20 %', () => {
    const silt = soilHeat({ soil: 'silt-clay', dryDensity: '1600 kg/m3', moisture: '0.2' });
    expect(silt.frozen.value).toBeCloseTo(1.771001781, 8);
    expect(silt.unfrozen.value).toBeCloseTo(1.396635872, 8);
    expect(silt.conductivity.value).toBeCloseTo(1.583818826, 8);
    expect(silt.latentHeat.value).toBeCloseTo(107182.08, 6);
    expect(silt.heatCapacity.value).toBeCloseTo(2143.6416, 8);
    expect(silt.extrapolated).toBe(false);
    expect(silt.working).toHaveLength(5);
  });

  test('beyond the equations, and too dry for them', () => {
    const dense = { soil: 'sandy', dryDensity: '2200 kg/m3', moisture: '0.05' } as const;
    expect(soilHeat(dense).extrapolated).toBe(true);
    const silt = (dryDensity: string) =>
      soilHeat({ soil: 'silt-clay', dryDensity, moisture: '0.2' }).extrapolated;
    expect(['89.9 lb/ft3', '90 lb/ft3', '120 lb/ft3', '120.1 lb/ft3'].map(silt)).toEqual([
      true,
      false,
      false,
      true,
    ]);
    const dry = { soil: 'silt-clay', dryDensity: '1600 kg/m3' } as const;
    expect(soilHeat({ ...dry, moisture: '0.05' }).extrapolated).toBe(true);
    expectFault(() => soilHeat({ ...dry, moisture: '0.016' }), 'OUT_OF_RANGE');
    expectFault(() => soilHeat({ ...dry, moisture: 0 }), 'OUT_OF_RANGE');
  });
});

const clay = {
  name: 'clay',
  conductivity: { value: 2, unit: 'W/(m K)' },
  latentHeat: { value: 86_400, unit: 'kJ/m3' },
  heatCapacity: { value: 2000, unit: 'kJ/(m3 K)' },
} as const;
const slab = {
  name: 'slab',
  thickness: '0.2 m',
  conductivity: { value: 1, unit: 'W/(m K)' },
  latentHeat: { value: 0, unit: 'kJ/m3' },
  heatCapacity: { value: 2000, unit: 'kJ/(m3 K)' },
} as const;
const winter = (value: number) =>
  ({ airIndex: { value, unit: 'C-days' }, surfaceFactor: 1 }) as const;

describe('depth of frost by Stefan', () => {
  const depthOf = (value: number, layers: readonly FrostLayerInput[]) =>
    stefanDepth({ ...winter(value), layers }).depth.toNumber('m');

  test('one layer, in both systems of units', () => {
    expect(depthOf(250, [clay])).toBeCloseTo(1, 14);
    const us = {
      name: 'clay',
      conductivity: { value: 2 / 1.730734666, unit: 'Btu/(h ft F)' },
      latentHeat: { value: 86_400 / 37.2589458, unit: 'Btu/ft3' },
    } as const;
    const airIndex = { value: 450, unit: 'F-days' } as const;
    const { depth } = stefanDepth({ airIndex, surfaceFactor: 1, layers: [us] });
    expect(depth.toNumber('m')).toBeCloseTo(1, 7);
  });

  test('through a slab: F = L d (R + d / (2 k)) / 86.4', () => {
    // 0.6 m of clay under R = 0.2: 1000 x 0.6 x (0.2 + 0.15) = 210
    const found = stefanDepth({ ...winter(210), layers: [slab, clay] });
    expect(found.depth.toNumber('m')).toBeCloseTo(0.8, 14);
    expect(found.layers.map(({ name, frozen }) => [name, frozen.toNumber('m').toFixed(9)])).toEqual(
      [
        ['slab', '0.200000000'],
        ['clay', '0.600000000'],
      ],
    );
    expect(found.cautions.map(({ id }) => id)).toEqual(['ground']);
    expect(found.working.map(({ kind }) => kind)).toEqual(['formula', 'procedure', 'formula']);
    expect(stefanIndex({ layers: [slab, clay], depth: '0.8 m' }).index.value).toBeCloseTo(210, 10);
  });

  test('no frost is exact; the last layer goes on, and says so', () => {
    const none = stefanDepth({ ...winter(0), layers: [slab, clay] });
    expect(none.depth.isZero()).toBe(true);
    expect(none.layers.every(({ frozen }) => frozen.isZero())).toBe(true);
    const thin = { ...clay, thickness: '0.5 m' } as const;
    const deep = stefanDepth({ ...winter(250), layers: [thin] });
    expect(deep.depth.toNumber('m')).toBeCloseTo(1, 14);
    expect(deep.extrapolated).toBe(true);
    expect(stefanDepth({ ...winter(250), layers: [clay] }).extrapolated).toBe(false);
  });

  test('a layer beyond the equations is extrapolated; each layer says what it is', () => {
    const soil = { name: 'silt', soil: 'silt-clay', moisture: '0.2' } as const;
    const of = (dryDensity: string) =>
      stefanDepth({ ...winter(50), layers: [slab, { ...soil, dryDensity }] });
    expect(of('1600 kg/m3').extrapolated).toBe(false);
    expect(of('2000 kg/m3').extrapolated).toBe(true);
    expect(
      of('1600 kg/m3').layers.map(({ name, soil: kind, thickness }) => [
        name,
        kind,
        thickness?.to('m').toString() ?? null,
      ]),
    ).toEqual([
      ['slab', null, '0.2'],
      ['silt', 'silt-clay', null],
    ]);
  });

  test('a surface has its factor', () => {
    const airIndex = { value: 400, unit: 'C-days' } as const;
    const turf = stefanDepth({ airIndex, surface: 'turf', layers: [clay] });
    expect(turf.surfaceIndex.value).toBe(200);
    const own = stefanDepth({ airIndex, surfaceFactor: 0.5, layers: [clay] });
    const sources = [turf, own].map(({ working: [step] }) => [
      step?.source,
      step?.given[0]?.source,
    ]);
    expect(sources).toEqual([
      ['surface-factors', 'surface-factors'],
      ['derived', null],
    ]);
  });

  test('dry ground has no depth', () => {
    const dry = { ...slab, thickness: '1 m' } as const;
    const issue = expectFault(() => depthOf(100, [clay, dry] as never), 'REQUIRED');
    expect(issue.path).toEqual(['layers', 0, 'thickness']);
    const found = expectFault(() => depthOf(100, [dry]), 'OUT_OF_RANGE');
    expect(found.path).toEqual(['layers', 0]);
  });

  testRefusals(stefanDepth, { ...winter(250), layers: [clay] }, [
    ['airIndex', 250, 'WRONG_TYPE'],
    ['airIndex.unit', 'days', 'UNKNOWN_CHOICE'],
    ['airIndex.value', -1, 'NEGATIVE'],
    ['airIndex.value', 20_000, 'OUT_OF_RANGE'],
    ['surface', 'turf', 'CONFLICTING_FIELDS'],
    ['surfaceFactor', undefined, 'REQUIRED', 'surface'],
    ['layers', [], 'EMPTY_LIST'],
    ['layers.0.conductivity.value', 0, 'NOT_POSITIVE'],
    ['layers.0.conductivity.value', 21, 'OUT_OF_RANGE'],
    ['layers.0.conductivity', undefined, 'REQUIRED'],
    ['layers.0.moisture', 0.1, 'CONFLICTING_FIELDS'],
    ['layers.0.soil', 'sandy', 'CONFLICTING_FIELDS', 'layers[0].conductivity'],
  ]);
});

describe('depth of frost by the modified Berggren equation', () => {
  const silt = {
    name: 'silt',
    soil: 'silt-clay',
    dryDensity: '1600 kg/m3',
    moisture: '0.2',
  } as const;
  const year = {
    airIndex: { value: 600, unit: 'C-days' },
    surface: 'concrete',
    seasonDays: 110,
    meanAnnual: { value: 6, unit: 'C' },
  } as const;

  test('worked out by another program', () => {
    const frost = berggrenDepth({ ...year, layers: [silt] });
    expect(frost.thermalRatio).toBeCloseTo(1.466666667, 8);
    expect(frost.fusionParameter).toBeCloseTo(0.081818182, 8);
    expect(frost.coefficient).toBeCloseTo(0.928113081, 8);
    expect(frost.depth.toNumber('m')).toBeCloseTo(0.994879953, 8);
    expect(frost.twoZoneCoefficient).toBeCloseTo(0.811394784, 8);
    expect(frost.twoZoneDepth.toNumber('m')).toBeCloseTo(0.869765141, 8);
    expect(frost.extrapolated).toBe(true); // more than a tenth deeper than with two zones
    expect(frost.cautions.map(({ id }) => id)).toEqual(['ground']);
    expect(frost.working.map(({ result }) => result.symbol)).toEqual(['F', 'a', 'u', 'l', 'X']);
  });

  test('a cold place is within the closed form', () => {
    const cold = { ...year, meanAnnual: { value: 34, unit: 'F' } } as const;
    const frost = berggrenDepth({ ...cold, layers: [silt] });
    expect(frost.extrapolated).toBe(false);
    expect(frost.twoZoneDepth.lessThan(frost.depth)).toBe(true);
  });

  test('the two depths are compared by their share, and layers that end above the frost say so', () => {
    const airIndex = { value: 20, unit: 'C-days' } as const;
    const mild = berggrenDepth({ ...year, airIndex, layers: [silt] });
    const off = mild.depth.toNumber('m') - mild.twoZoneDepth.toNumber('m');
    expect(off).toBeLessThan(0.1);
    expect(off / mild.twoZoneDepth.toNumber('m')).toBeGreaterThan(0.1);
    expect(mild.extrapolated).toBe(true);
    const cold = { ...year, meanAnnual: { value: 34, unit: 'F' } } as const;
    const thick = (thickness: string) =>
      berggrenDepth({ ...cold, layers: [{ ...silt, thickness }] }).extrapolated;
    expect([thick('0.5 m'), thick('4 m')]).toEqual([true, false]);
  });

  test('a base over the silt: deeper frost, less of it in the silt; a wet base lets it deeper', () => {
    const base = {
      name: 'base',
      soil: 'sandy',
      dryDensity: '2000 kg/m3',
      moisture: '0.04',
    } as const;
    const bare = berggrenDepth({ ...year, layers: [silt] });
    const built = berggrenDepth({ ...year, layers: [{ ...base, thickness: '300 mm' }, silt] });
    expect(built.depth.greaterThan(bare.depth)).toBe(true);
    const [, below] = built.layers;
    expect(below?.frozen.lessThan(bare.depth)).toBe(true);
    const wetter = { ...base, thickness: '300 mm', moisture: '0.08' } as const;
    const wet = berggrenDepth({ ...year, layers: [wetter, silt] });
    // its water conducts more than its latent heat holds back
    expect(wet.depth.greaterThan(built.depth)).toBe(true);
  });

  test('no frost', () => {
    const airIndex = { value: 0, unit: 'C-days' } as const;
    const none = berggrenDepth({ ...year, airIndex, layers: [silt] });
    expect([none.depth.isZero(), none.coefficient, none.fusionParameter]).toEqual([true, 1, 0]);
    expect(none.working).toHaveLength(1);
  });

  testRefusals(berggrenDepth, { ...year, layers: [clay] }, [
    ['meanAnnual.value', -0.1, 'OUT_OF_RANGE'],
    ['meanAnnual', 6, 'WRONG_TYPE'],
    ['seasonDays', 0, 'NOT_POSITIVE'],
    ['layers.0.heatCapacity', undefined, 'REQUIRED'],
    ['airIndex', undefined, 'REQUIRED'],
  ]);
});

describe('frost-susceptible soil', () => {
  test.each([
    ['gravel', 1.5, 'NFS'],
    ['gravel', 3, 'PFS'],
    ['gravel', 6, 'S1'],
    ['gravel', 10, 'F1'],
    ['gravel', 20, 'F2'],
    ['gravel', 21, 'F3'],
    ['sand', 3, 'NFS'],
    ['sand', 6, 'S2'],
    ['sand', 15, 'F2'],
    ['sand', 16, 'F3'],
    ['very-fine-silty-sand', 16, 'F4'],
    ['silt', 50, 'F4'],
    ['varved-clay', 50, 'F4'],
    ['clay', 50, null],
  ] as const)('%s with %s percent: %s', (soil, finer, group) => {
    expect(frostSusceptibility({ soil, finer }).group).toBe(group);
  });

  test('clay by its plasticity', () => {
    const clayOf = (plasticityIndex: number) =>
      frostSusceptibility({ soil: 'clay', finer: 50, plasticityIndex }).group;
    expect([clayOf(12), clayOf(13)]).toEqual(['F4', 'F3']);
  });

  testRefusals(frostSusceptibility, { soil: 'gravel', finer: 4 }, [
    ['isUniform', true, 'CONFLICTING_FIELDS'],
    ['finer', undefined, 'REQUIRED'],
    ['fines', 8, 'CONFLICTING_FIELDS', 'finer'],
    ['finer', 101, 'OUT_OF_RANGE'],
    ['plasticityIndex', 10, 'CONFLICTING_FIELDS'],
    ['soil', 'peat', 'UNKNOWN_CHOICE'],
  ]);

  test('fines are for gravel alone', () => {
    const sand = { soil: 'sand', fines: 8 } as const;
    expect(expectFault(() => frostSusceptibility(sand), 'CONFLICTING_FIELDS').path).toEqual([
      'fines',
    ]);
  });

  test('the weaker of bearing ratio and support index governs', () => {
    expect(frostSupport({ group: 'S1', cbr: 12 })).toMatchObject({ strength: 9, governs: 'frost' });
    expect(frostSupport({ group: 'S1', cbr: 9 })).toMatchObject({ strength: 9, governs: 'cbr' });
    expect(frostSupport({ group: 'NFS', cbr: 12 })).toMatchObject({ index: null, strength: 12 });
    expectFault(() => frostSupport({ group: 'F5' as never, cbr: 5 }), 'UNKNOWN_CHOICE');
    const { cautions } = frostSupport({ group: 'F3', cbr: 5 });
    expect(cautions.map(({ id }) => id)).toEqual(['ground', 'pavement-design']);
  });
});

describe('base against frost', () => {
  const base = {
    frostDepth: '1 m',
    pavement: '100 mm',
    subgradeMoisture: '0.1',
    baseMoisture: '0.1',
  } as const;

  test('900 mm for none, 720 mm for a quarter of it', () => {
    const found = frostBase(base);
    expect(found.complete.to('mm').toString()).toBe('900');
    expect(found.limited.to('mm').toString()).toBe('720');
    expect(found.intoSubgrade.to('mm').toString()).toBe('180');
    expect([found.ratio, found.isRatioLimited]).toEqual([1, false]);
    expect(found.cautions.map(({ id }) => id)).toEqual(['ground', 'structure']);
  });

  test('the maximum ratio is a published figure, unless the caller sets one', () => {
    const options = {
      frostDepth: '1 m',
      pavement: '0.1 m',
      subgradeMoisture: '0.2',
      baseMoisture: '0.05',
    } as const;
    const sourceOf = (maximumRatio?: number) =>
      frostBase(maximumRatio === undefined ? options : { ...options, maximumRatio })
        .working.flatMap(({ given }) => given)
        .find(({ symbol }) => symbol === 'm')?.source;
    expect([sourceOf(), sourceOf(3)]).toEqual(['frost-penetration-limit', null]);
  });

  test('the ratio has a maximum, and says so', () => {
    const wet = frostBase({ ...base, subgradeMoisture: '0.4' });
    expect([wet.ratio, wet.usedRatio, wet.isRatioLimited]).toEqual([4, 2, true]);
    expect(wet.limited.to('mm').toString()).toBe('600');
  });

  test('none where frost stops in the pavers', () => {
    const mild = frostBase({ ...base, frostDepth: '80 mm' });
    expect([mild.complete.isZero(), mild.limited.isZero()]).toEqual([true, true]);
  });

  testRefusals(frostBase, base, [
    ['baseMoisture', 0, 'NOT_POSITIVE'],
    ['frostDepth', '-1 m', 'NEGATIVE'],
    ['maximumRatio', 0.5, 'OUT_OF_RANGE'],
    ['pavement', undefined, 'REQUIRED'],
  ]);
});

test('foundations: a design below 2 percent, no capping above 15', () => {
  const of = (cbr: number) => foundationThickness({ cbr, road: 'residential-access' });
  expect([of(1.9).needsDesign, of(2).needsDesign]).toEqual([true, false]);
  expect(of(20).total.to('mm').toString()).toBe('200');
  expect(of(4).total.to('mm').toString()).toBe('450');
  expect(of(4).note).toContain('one county');
  expectFault(() => of(0), 'NOT_POSITIVE');
});
