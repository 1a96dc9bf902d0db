import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFromJSON, planJob, renderJobSheet } from 'settline/job';
import { length } from 'settline/units';
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
      const mean = line.stakes
        .reduce((sum, { dig }) => sum.plus(dig ?? sum), length('0 m'))
        .dividedBy(4);
      expect(pavement.dig.depth.equals(mean)).toBe(true);
      expect(
        pavement.lifts.at(-1)?.belowFinish.equals(length(of.paver.us).plus(length(of.bedding.us))),
      ).toBe(true);
      expect(plan.totals.base.mass.equals(pavement.base.deliveredMass)).toBe(true);
      const spoil = pavement.spoil.bank.volume;
      const whole = pavement.areas.dig
        .times(pavement.dig.depth)
        .minus(pavement.oldSurface?.inPlace ?? spoil);
      expect(spoil.equals(whole.isNegative() ? spoil.minus(spoil) : whole)).toBe(true);
    }),
    runs(50),
  );
});
