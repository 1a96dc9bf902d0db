import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  berggrenDepth,
  compactionMethod,
  drainTime,
  freezingIndex,
  frostBase,
  inletArea,
  liftWater,
  peakRunoff,
  relativeDensity,
  reservoirDepth,
  soilPhases,
  stefanDepth,
  stefanIndex,
  type FrostLayerInput,
} from 'settline/ground';
import { density, length } from 'settline/units';
import { runs } from '../runs.js';

/** Floats of a measure: none so small that it is refused as a slip. */
const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-9 ? 0 : x));
/** Within 1e-12 of itself. */
const expectSame = (value: number, other: number) => {
  expect(Math.abs(value - other)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(other), 1e-3));
};

test('all figures of a soil follow from any three that are enough', () => {
  const soil = fc.record({
    specificGravity: between(2, 3.5),
    voidRatio: between(0.05, 3),
    saturation: between(0.01, 1),
  });
  fc.assert(
    fc.property(soil, (given) => {
      const all = soilPhases(given);
      const { wetDensity, dryDensity, moisture, porosity } = all;
      for (const part of [
        { wetDensity, moisture, specificGravity: given.specificGravity },
        { dryDensity, porosity, saturation: given.saturation },
        { wetDensity, specificGravity: given.specificGravity, voidRatio: given.voidRatio },
        { dryDensity, moisture, porosity },
      ]) {
        const back = soilPhases(part);
        expect(Math.abs(back.voidRatio / given.voidRatio - 1)).toBeLessThan(1e-12);
        expect(Math.abs(back.saturation / given.saturation - 1)).toBeLessThan(1e-12);
        expect(Math.abs(back.specificGravity / given.specificGravity - 1)).toBeLessThan(1e-12);
      }
    }),
    runs(100),
  );
});

test('relative density and its state turn each other round', () => {
  fc.assert(
    fc.property(between(1.2, 1.6), between(0.1, 0.6), between(0, 100), (loose, range, percent) => {
      const limits = { loosest: density(loose, 't/m3'), densest: density(loose + range, 't/m3') };
      const { dryDensity } = relativeDensity({ ...limits, percent });
      if (dryDensity === null) throw new Error('no density');
      expectSame(relativeDensity({ ...limits, dryDensity }).percent, percent);
    }),
    runs(100),
  );
});

test('water brings a lift to its target moisture', () => {
  fc.assert(
    fc.property(between(0.01, 0.3), between(0.01, 0.3), (moisture, targetMoisture) => {
      const options = { area: '10 m2', thickness: '0.1 m', dryDensity: '1900 kg/m3' } as const;
      const lift = liftWater({ ...options, moisture, targetMoisture });
      const water = lift.dryMass.toNumber('kg') * moisture + lift.waterMass.toNumber('kg');
      expectSame(water / lift.dryMass.toNumber('kg'), targetMoisture);
    }),
    runs(100),
  );
});

const layer = fc.record({
  k: between(0.3, 5),
  latent: between(5000, 200_000),
  capacity: between(500, 4000),
});
interface Layer {
  readonly k: number;
  readonly latent: number;
  readonly capacity: number;
}
const heat = ({ k, latent, capacity }: Layer) =>
  ({
    conductivity: { value: k, unit: 'W/(m K)' },
    latentHeat: { value: latent, unit: 'kJ/m3' },
    heatCapacity: { value: capacity, unit: 'kJ/(m3 K)' },
  }) as const;
const winter = (value: number) =>
  ({ airIndex: { value, unit: 'C-days' }, surfaceFactor: 1 }) as const;
const year = { seasonDays: 120, meanAnnual: { value: 5, unit: 'C' } } as const;

test('depth and index by Stefan turn each other round, through layers too', () => {
  fc.assert(
    fc.property(layer, layer, between(0.05, 0.5), between(1, 2000), (top, low, thick, index) => {
      const layers: readonly FrostLayerInput[] = [
        { name: 'top', thickness: length(thick, 'm'), ...heat(top) },
        { name: 'low', ...heat(low) },
      ];
      const { depth } = stefanDepth({ ...winter(index), layers });
      fc.pre(depth.toNumber('m') <= 50);
      const back = stefanIndex({ layers, depth });
      expect(Math.abs(back.index.value / index - 1)).toBeLessThan(1e-12);
    }),
    runs(100),
  );
});

test('a profile of one material is that material', () => {
  fc.assert(
    fc.property(
      layer,
      between(0.02, 0.4),
      between(0.02, 0.4),
      between(0, 2000),
      (one, a, b, index) => {
        const whole: readonly FrostLayerInput[] = [{ name: 'all', ...heat(one) }];
        const parts: readonly FrostLayerInput[] = [
          { name: 'first', thickness: length(a, 'm'), ...heat(one) },
          { name: 'second', thickness: length(b, 'm'), ...heat(one) },
          { name: 'third', ...heat(one) },
        ];
        const depthOf = (layers: readonly FrostLayerInput[]) =>
          stefanDepth({ ...winter(index), layers }).depth.toNumber('m');
        expectSame(depthOf(parts), depthOf(whole));
        // closed form
        expectSame(depthOf(whole), Math.sqrt((172.8 * one.k * index) / one.latent));
        const berggren = (layers: readonly FrostLayerInput[]) =>
          berggrenDepth({ ...winter(index), ...year, layers });
        expectSame(berggren(parts).depth.toNumber('m'), berggren(whole).depth.toNumber('m'));
        const { depth, coefficient } = berggren(whole);
        expectSame(depth.toNumber('m'), coefficient * depthOf(whole));
      },
    ),
    runs(60),
  );
});

test('Berggren is less deep than Stefan and tends to Stefan, with either coefficient', () => {
  fc.assert(
    fc.property(layer, between(10, 2000), (one, index) => {
      const layers = (capacity: number): readonly FrostLayerInput[] => [
        { name: 'soil', ...heat({ ...one, capacity }) },
      ];
      const stefan = stefanDepth({ ...winter(index), layers: layers(one.capacity) }).depth;
      const berggren = berggrenDepth({ ...winter(index), ...year, layers: layers(one.capacity) });
      expect(berggren.depth.lessThan(stefan)).toBe(true);
      expect(berggren.twoZoneDepth.lessThan(stefan)).toBe(true);
      const light = berggrenDepth({ ...winter(index), ...year, layers: layers(1e-9) });
      expect(light.depth.toNumber('m') / stefan.toNumber('m')).toBeCloseTo(1, 9);
      expect(light.twoZoneDepth.toNumber('m') / stefan.toNumber('m')).toBeCloseTo(1, 4);
    }),
    runs(60),
  );
});

test('colder goes deeper, warmer years and wetter ground less deep', () => {
  fc.assert(
    fc.property(layer, between(10, 1000), between(0, 8), (one, index, mean) => {
      const depthOf = (value: number, warm: number, latent: number) =>
        berggrenDepth({
          ...winter(value),
          seasonDays: 120,
          meanAnnual: { value: warm, unit: 'C' },
          layers: [{ name: 'soil', ...heat({ ...one, latent }) }],
        }).depth;
      const depth = depthOf(index, mean, one.latent);
      expect(depthOf(1.1 * index, mean, one.latent).greaterThan(depth)).toBe(true);
      expect(depthOf(index, mean + 1, one.latent).lessThan(depth)).toBe(true);
      expect(depthOf(index, mean, 1.1 * one.latent).lessThan(depth)).toBe(true);
    }),
    runs(60),
  );
});

test('the seasonal index is no more than the total, and neither is negative', () => {
  fc.assert(
    fc.property(fc.array(between(-30, 20), { minLength: 1, maxLength: 60 }), (temperatures) => {
      const seasonal = freezingIndex({ temperatures, unit: 'C' }).index.value;
      const total = freezingIndex({ temperatures, unit: 'C', definition: 'total' }).index.value;
      expect(seasonal).toBeGreaterThanOrEqual(0);
      expect(seasonal).toBeLessThanOrEqual(total + 1e-9);
    }),
    runs(100),
  );
});

test('limited penetration takes less base, the less the wetter the subgrade', () => {
  fc.assert(
    fc.property(between(0.1, 3), between(0.05, 0.4), between(0.02, 0.1), (depth, wet, base) => {
      const of = (subgradeMoisture: number) =>
        frostBase({
          frostDepth: length(depth, 'm'),
          pavement: '90 mm',
          subgradeMoisture,
          baseMoisture: base,
        });
      const one = of(wet);
      expect(one.limited.lessThan(one.complete)).toBe(true);
      expect(of(Math.min(1, 1.5 * wet)).limited.atMost(one.limited)).toBe(true);
    }),
    runs(100),
  );
});

test('reservoir and drain time, runoff and inlet turn each other round', () => {
  fc.assert(
    fc.property(between(1, 500), between(0.5, 50), between(0.2, 0.5), (rain, rate, voids) => {
      const infiltration = { depth: length(rate, 'mm'), time: '1 h' } as const;
      const stone = reservoirDepth({ rain: length(rain, 'mm'), infiltration, voids });
      const drain = drainTime({ depth: stone.depth, infiltration, voids });
      expectSame(drain.time.toNumber('h'), stone.drainHours ?? -1);
      const back = drainTime({ depth: '1 m', infiltration, voids }).time;
      expectSame(drainTime({ time: back, infiltration, voids }).depth.toNumber('m'), 1);
      const storm = { depth: length(rain, 'mm'), time: '1 h' } as const;
      const { flow } = peakRunoff({ areas: [{ area: '50 m2', coefficient: voids }], rain: storm });
      const inlet = inletArea({ capacity: flow, rain: storm, coefficient: voids });
      expectSame(inlet.area.toNumber('m2'), 50);
    }),
    runs(100),
  );
});

test('a heavier plate may compact no less', () => {
  fc.assert(
    fc.property(between(100, 900), between(1, 2), (mass, more) => {
      const of = (kilograms: number) =>
        compactionMethod({
          plant: 'plate',
          mass: { value: kilograms, unit: 'kg' },
          plateArea: '0.25 m2',
          fill: 'granular',
        }).thickestLift?.toNumber('mm') ?? 0;
      expect(of(mass * more)).toBeGreaterThanOrEqual(of(mass));
    }),
    runs(100),
  );
});
