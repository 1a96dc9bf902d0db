// A number given as a fraction counts as all of itself: no load and no verdict hangs on its 41st digit.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildUp, lifts } from 'settline/build-up';
import { checkCompaction, relativeCompaction } from 'settline/checks';
import { drainTime, liftWater, relativeDensity, reservoirDepth, stormInDig } from 'settline/ground';
import { machineTime, spoilLoads } from 'settline/haul';
import { closableArea, softSpot } from 'settline/site';
import { depthTable } from 'settline/string-line';
import { area, density, length, mass, volume, type AnyQuantity } from 'settline/units';
import { stateVolume, toState } from 'settline/volumes';
import { SOME } from './arbitrary.js';

const counts = fc.integer({ min: 1, max: 60 });
/** A share from a half to 1, over a number that has other factors than 2 and 5. */
const shares = fc
  .tuple(fc.integer({ min: 1, max: 40 }), fc.nat(1000))
  .map(([k, more]) => [3 * k, Math.ceil(1.5 * k) + (more % (k + 1))] as const)
  .map(([d, n]) => ({ n: Math.min(n, d), d, text: `${Math.min(n, d)}/${d}` }));
const same = (a: AnyQuantity | null | undefined, b: AnyQuantity) =>
  expect(a?.toJSON()).toEqual(b.toJSON());

test('soil: full loads and full buckets are counted as full', () => {
  fc.assert(
    fc.property(counts, counts, shares, (count, size, { n, d, text }) => {
      const swell = `${d}/${n}`;
      const bank = stateVolume(volume(size * count, 'm3'), 'bank');
      const soil = { bank, loosePerBank: swell };
      const box = volume(size, 'm3').times(swell);
      const truck = { boxVolume: box, payload: '9000 t' };
      const byVolume = spoilLoads({ ...soil, bankMoistDensity: '1 t/m3', ...truck });
      expect([byVolume.loads, byVolume.loadsByVolume]).toEqual([count, count]);
      same(byVolume.lastLoad.volume, box);
      const back = toState(byVolume.loose, 'bank', { loosePerBank: swell, compactedPerBank: text });
      same(back.volume, bank.volume);
      const byMass = spoilLoads({
        ...{ ...soil, bankDryDensity: '1 t/m3', moisture: text, boxVolume: '1000 m3' },
        payload: mass(size, 't').times(`${n + d}/${d}`),
      });
      expect([byMass.loads, byMass.loadsByMass]).toEqual([count, count]);
      const digger = { bucket: box.dividedBy(text), fillFactor: text, cycle: '20 s' };
      expect(machineTime({ ...soil, ...digger, efficiency: text }).cycles).toBe(count);
    }),
    SOME,
  );
});

test('stone: lifts as spread, soft spots, stone on site', () => {
  fc.assert(
    fc.property(counts, shares, (count, { n, d, text }) => {
      const thickness = length(count, 'in').times(text);
      const how = { maxLift: length(text, 'in'), compactedPerLoose: text };
      const split = lifts({ thickness, ...how });
      expect(split.count).toBe(count);
      same(split.loose, length('1 in'));
      const { surfaces } = depthTable({
        buildUp: buildUp({ layers: [{ name: 'base', thickness }] }),
        stringHeight: '6 in',
        stakes: ['0 m', '1 m'].map((station) => ({ id: station, station })),
        lifts: [{ layer: 'base', ...how }],
      });
      const first = surfaces.find(({ surface }) => surface === 'base lift 1 loose');
      same(first?.below, thickness.plus(length('5 in')));
      const stone = { compactedDryDensity: '2 t/m3', moisture: text };
      const spot = softSpot({ ...stone, area: '3 m2', depth: '1 m', compactedPerLoose: text });
      same(spot.stoneLoose.volume, volume(`${3 * d}/${n}`, 'm3'));
      same(spot.deliveredMass, mass(`${6 * (n + d)}/${d}`, 't'));
      const closable = closableArea({
        ...{ ...stone, stone: spot.deliveredMass, thickness: '1 m' },
        crew: { area: '9 m2', time: `${d} s`, timeLeft: `${n} s` },
      });
      same(closable.byStone, area('3 m2'));
      same(closable.byCrew, area(`${9 * n}/${d}`, 'm2'));
    }),
    SOME,
  );
});

test('density and moisture at their limits', () => {
  fc.assert(
    fc.property(shares, ({ n, d, text }) => {
      const spot = {
        wetDensity: density(1960, 'kg/m3').times(`${n + d}/${d}`),
        moisture: text,
      };
      const maximumDryDensity = '2000 kg/m3';
      const tolerance = { minimumPercent: 98 };
      const check = checkCompaction({
        ...{ layer: 'base', test: 'modified', tolerance },
        ...{ readings: [{ id: 'A', ...spot }], maximumDryDensity },
      });
      expect(check.verdict).toBe('pass');
      const compaction = relativeCompaction({ ...spot, maximumDryDensity, optimumMoisture: 1 });
      same(compaction.waterToAdd, density(`${1960 * (d - n)}/${d}`, 'kg/m3'));
      const lift = { area: '1 m2', thickness: '1 m', dryDensity: '1000 kg/m3', moisture: text };
      const targetMoisture = `${50 * n - d}/${50 * d}`;
      const water = liftWater({ ...lift, targetMoisture });
      expect(water.action).toBe('compact-now');
      same(water.waterMass, mass('-20 kg'));
      const dried = liftWater({ ...lift, targetMoisture: 1, evaporation: '1/3' });
      same(dried.waterMass, mass(`${1500 * (d - n)}/${d}`, 'kg'));
      const percent = `${100 * n}/${d}`;
      const at = relativeDensity({ loosest: '1500 kg/m3', densest: '1600 kg/m3', percent });
      same(at.dryDensity, density(`${24_000 * d}/${16 * d - n}`, 'kg/m3'));
    }),
    SOME,
  );
});

test('water: rain and soak of a part of the time', () => {
  fc.assert(
    fc.property(shares, ({ n, d, text }) => {
      const infiltration = { depth: `${d} mm`, time: `${d} h` };
      const reservoir = { rain: '200 mm', infiltration, fillTime: `${n} h`, voids: '1/3' };
      same(reservoirDepth(reservoir).depth, length(3 * (200 - n), 'mm'));
      const soil = { infiltration: { depth: '7 mm', time: `${d} min` }, voids: '1/3' };
      const { time } = drainTime({ ...soil, depth: `${21 * n} mm` });
      expect(time.to('min').eq(n * d)).toBe(true);
      same(drainTime({ ...soil, time }).depth, length(21 * n, 'mm'));
      const rain = { depth: '9 mm', time: `${d} min` };
      const storm = stormInDig({ area: '1 m2', rain, duration: `${n} min` });
      same(storm.volume, volume('9 l').times(text));
    }),
    SOME,
  );
});
