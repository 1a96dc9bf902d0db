import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFromJSON, planJob, renderJobSheet } from 'settline/job';
import { length, max, min, sum } from 'settline/units';
import { runs } from '../runs.js';
import { jobOf, site } from './site-jobs.js';

test('the same site in metric and in US units gives the same plan, digit for digit', () => {
  fc.assert(
    fc.property(site, (of) => {
      const [us, metric] = [planJob(jobOf(of, 'us')), planJob(jobOf(of, 'metric'))];
      expect(JSON.stringify(metric)).toBe(JSON.stringify(us));
    }),
    runs(50),
  );
});

test('JSON and back loses nothing, and sheets hold no holes', () => {
  fc.assert(
    fc.property(site, (of) => {
      const plan = planJob(jobOf(of, 'us'));
      const json = JSON.stringify(plan);
      const again = planFromJSON(JSON.parse(json));
      expect(JSON.stringify(again)).toBe(json);
      for (const system of ['us', 'metric'] as const) {
        const sheet = renderJobSheet(plan, { system });
        expect(sheet).toBe(renderJobSheet(again, { system }));
        expect(sheet).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
      }
    }),
    runs(50),
  );
});

test('the plan holds together', () => {
  fc.assert(
    fc.property(site, (of) => {
      const plan = planJob(jobOf(of, 'us'));
      const [pavement] = plan.pavements;
      const [line] = plan.stringLines;
      if (pavement === undefined || line === undefined) expect.unreachable();
      expect(pavement.areas.base.compare(pavement.areas.paving)).toBe(1);
      expect(pavement.dig.soil.plus(length(of.old.us)).equals(pavement.dig.depth)).toBe(true);
      const digs = line.stakes.map(({ dig }) => dig ?? expect.unreachable());
      if (pavement.dig.basis === 'along-strings') {
        // from stake to stake, each stretch by the mean of its ends
        const offsets = of.offsets.map(({ us }) => length(us).toNumber('m'));
        const stretches = [1, 2, 3].map((k) => {
          const long = Math.hypot(3.048, (offsets[k] ?? 0) - (offsets[k - 1] ?? 0));
          const ends = [digs[k - 1], digs[k]].map((dig) => dig?.toNumber('m') ?? 0);
          return { long, volume: (long * ((ends[0] ?? 0) + (ends[1] ?? 0))) / 2 };
        });
        const added = (value: (stretch: (typeof stretches)[number]) => number) =>
          stretches.reduce((total, stretch) => total + value(stretch), 0);
        const mean = added(({ volume }) => volume) / added(({ long }) => long);
        expect(pavement.dig.depth.toNumber('m')).toBeCloseTo(mean, 9);
      } else {
        // stakes out of line make a narrow surface; past it the dig counts like its mean
        expect(pavement.dig.basis).toBe('stake-levels');
        expect(of.isLevelled).toBe(true);
        expect(pavement.dig.depth.compare(min(digs))).not.toBe(-1);
        expect(pavement.dig.depth.compare(max(digs))).not.toBe(1);
      }
      expect(
        pavement.lifts.at(-1)?.belowFinish.equals(length(of.paver.us).plus(length(of.bedding.us))),
      ).toBe(true);
      const [stone] = plan.totals.stones;
      const { earth } = pavement;
      const ordered = pavement.stones.map(({ order }) => order.deliveredMass);
      expect(stone?.mass.equals(sum(ordered))).toBe(true);
      expect(pavement.spoil.bank).toEqual(earth.cut);
      // what is cut, stripped and not filled is the dig
      expect(
        earth.cut.volume.plus(earth.stripped).minus(earth.fill.volume).toNumber('m3'),
      ).toBeCloseTo(pavement.areas.dig.times(pavement.dig.depth).toNumber('m3'), 8);
      const fill = pavement.stones.find(({ layer }) => layer === 'fill');
      expect(fill?.order.compacted.volume ?? earth.fill.volume.times(0)).toEqual(earth.fill.volume);
    }),
    runs(50),
  );
});
