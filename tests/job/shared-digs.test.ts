// What several digs or bases cover is dug and filled with stone once.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { materialList, renderJobSheet, tryPlanJob, type JobPlan } from 'settline/job';
import { layersOn, levelSite, pavementOn, rectangle } from '../level-site.js';
import type { Loose } from '../loose-job.js';
import { planFile } from '../plan-file.js';
import { runs } from '../runs.js';

// A drive of 12 by 4 m, and a walk 1.5 m wide that meets it in the north. Base 0.3 m out, dig 0.5 m.
const drive = (joint: string) =>
  pavementOn(
    [
      [0, 0],
      [12, 0],
      [12, 4],
      [6.5, 4],
      [5, 4],
      [0, 4],
    ],
    { id: 'drive', edges: ['open', 'open', 'open', joint, 'open', 'open'] },
  );
const walk = (joint: string, fields: Loose = {}) =>
  pavementOn(rectangle(5, 4, 6.5, 12), {
    id: 'walk',
    edges: [joint, 'open', 'open', 'open'],
    ...fields,
  });
const restraint = {
  edgeRestraint: { piece: '2 m', spikeSpacing: '0.5 m' },
};
const withRestraint = (job: ReturnType<typeof levelSite>) => {
  Object.assign(job.materials, restraint);
  return job;
};
const site = (joint = 'adjoining') =>
  planFile(withRestraint(levelSite([drive(joint), walk(joint)])));
const of = (plan: JobPlan, id: string) =>
  plan.pavements.find((one) => one.id === id) ?? expect.unreachable(id);

describe('a walk that meets a drive', () => {
  const plan = site();
  const [theDrive, theWalk] = [of(plan, 'drive'), of(plan, 'walk')];

  test('each by itself', () => {
    // drive: 13 x 5 less 1.5 x 0.5 at the joint; walk: 2.5 x 8.5
    expect(theDrive.areas.dig.to('m2').toString()).toBe('64.25');
    expect(theWalk.areas.dig.to('m2').toString()).toBe('21.25');
    // 12.6 x 4.6 less 1.5 x 0.3; 2.1 x 8.3
    expect(theDrive.areas.base.to('m2').toString()).toBe('57.51');
    expect(theWalk.areas.base.to('m2').toString()).toBe('17.43');
  });

  test('both: what lies in two digs is dug once', () => {
    // in two digs lie 2 x 0.5 x 0.5 m beside the joint, in two bases 2 x 0.3 x 0.3 m
    expect(plan.totals.digArea.to('m2').toString()).toBe('85');
    expect(plan.totals.baseArea.to('m2').toString()).toBe('74.76');
    // 85 x 0.4 and 74.76 x 0.3
    expect(plan.totals.spoil?.bank.to('m3').toString()).toBe('34');
    expect(plan.totals.stones[0]?.compacted.to('m3').toString()).toBe('22.428');
    // of digs of one depth the first by id keeps it
    expect([theDrive, theWalk].map(({ areas }) => areas.ownDig.to('m2').toString())).toEqual([
      '64.25',
      '20.75',
    ]);
    expect([theDrive, theWalk].map(({ areas }) => areas.ownBase.to('m2').toString())).toEqual([
      '57.51',
      '17.25',
    ]);
  });

  test('the sheet tells the area that has the geotextile of both', () => {
    const job = levelSite([drive('adjoining'), walk('adjoining')]);
    Object.assign(job.materials, { geotextile: { rollWidth: '4.5 m', overlap: '300 mm' } });
    const sheet = renderJobSheet(planFile(job), { system: 'metric', width: 96 });
    expect(sheet.replace(/\s+/g, ' ')).toContain(
      'digs overlap, 0.50 m2 of ground is covered twice',
    );
    expect(renderJobSheet(plan, { system: 'metric' })).not.toContain('covered twice');
  });

  test('it counts with the deeper dig', () => {
    const deep = planFile(
      levelSite([drive('adjoining'), walk('adjoining', { layers: layersOn('400 mm') })]),
    );
    // the walk 0.5 m deep, base 0.4 m and dig 0.6 m out: 2.7 x 8.6; shared 2 x 0.6 x 0.5
    expect(of(deep, 'walk').areas.ownDig.to('m2').toString()).toBe('23.22');
    expect(of(deep, 'drive').areas.ownDig.to('m2').toString()).toBe('63.65');
    // 2.3 x 8.4; shared 2 x 0.4 x 0.3
    expect(of(deep, 'walk').areas.ownBase.to('m2').toString()).toBe('19.32');
    expect(of(deep, 'drive').areas.ownBase.to('m2').toString()).toBe('57.27');
    // 63.65 x 0.4 + 23.22 x 0.5; 57.27 x 0.3 + 19.32 x 0.4
    expect(deep.totals.spoil?.bank.to('m3').toString()).toBe('37.07');
    expect(deep.totals.stones[0]?.compacted.to('m3').toString()).toBe('24.909');
  });

  test('an adjoining edge has neither extension nor restraint', () => {
    const joint = [theDrive.edges[3], theWalk.edges[0]];
    for (const edge of joint) {
      expect(edge?.kind).toBe('adjoining');
      expect([edge?.base, edge?.dig, edge?.top].map((out) => out?.isZero())).toEqual([
        true,
        true,
        true,
      ]);
    }
    const long = (one: JobPlan) =>
      ['drive', 'walk'].map((id) =>
        of(one, id)
          .supplies.edgeRestraint?.runs.map((run) => run.length.to('m').toString())
          .join(' + '),
      );
    // round the drive without the joint; up the walk, across its end and back
    expect(long(plan)).toEqual(['30.5', '17.5']);
    // called open, the joint has restraint twice; dig and base stay what they are, counted once
    const open = site('open');
    expect(long(open)).toEqual(['32', '19']);
    expect(open.totals.digArea.equals(plan.totals.digArea)).toBe(true);
    expect(open.totals.baseArea.equals(plan.totals.baseArea)).toBe(true);
  });

  test('the order of the pavements makes no difference', () => {
    const job = withRestraint(levelSite([drive('adjoining'), walk('adjoining')]));
    job.pavements.reverse();
    const turned = planFile(job);
    expect(JSON.stringify(turned.totals)).toBe(JSON.stringify(plan.totals));
    for (const id of ['drive', 'walk']) {
      expect(JSON.stringify(of(turned, id))).toBe(JSON.stringify(of(plan, id)));
    }
  });

  test('which way round an outline runs, and from where, makes no difference', () => {
    const back = pavementOn([...rectangle(5, 4, 6.5, 12)].reverse(), {
      id: 'walk',
      // north, east, south, west
      edges: ['open', 'open', 'adjoining', 'open'],
    });
    const turned = planFile(levelSite([drive('adjoining'), back]));
    expect(turned.totals.digArea.to('m2').toString()).toBe('85');
    expect(turned.totals.spoil?.bank.to('m3').toString()).toBe('34');
  });
});

describe('pavings that lie on each other', () => {
  const faults = (...pavements: ReturnType<typeof pavementOn>[]) => {
    const outcome = tryPlanJob(levelSite(pavements));
    return outcome.ok ? [] : outcome.errors;
  };

  test('the same drive twice is refused, with its area', () => {
    const [fault, ...more] = faults(drive('open'), { ...drive('open'), id: 'again' });
    expect(more).toEqual([]);
    expect(fault?.code).toBe('OUTLINES_OVERLAP');
    expect(pathText(fault?.path ?? [])).toBe('pavements[1].outline');
    expect(fault?.params).toEqual({ pavement: 'drive', area: '48.00 m2' });
    expect(fault?.message).toContain('overlaps 48.00 m2 of the paving of drive');
  });

  test('a part of it too, and each pavement that it lies on is named', () => {
    const found = faults(
      pavementOn(rectangle(0, 0, 4, 4), { id: 'a' }),
      pavementOn(rectangle(3, 0, 8, 4), { id: 'b' }),
      pavementOn(rectangle(3.5, 3, 5, 9), { id: 'c' }),
    );
    expect(found.map(({ path, params }) => [path[1], params['pavement'], params['area']])).toEqual([
      [1, 'a', '4.00 m2'], // 1 x 4
      [2, 'a, b', '0.50 m2, 1.50 m2'], // 0.5 x 1 and 1.5 x 1
    ]);
  });

  test('pavings that touch, at an edge, a corner or an arc, are not refused', () => {
    const bay = pavementOn(rectangle(4, 0, 8, 4), { id: 'bay' });
    Object.assign(bay.outline, { arcs: [{ edge: 4, bulgeMiddleOrdinate: -0.5 }] });
    const bowed = pavementOn(rectangle(0, 0, 4, 4), { id: 'bowed' });
    Object.assign(bowed.outline, { arcs: [{ edge: 2, bulgeMiddleOrdinate: 0.5 }] });
    expect(faults(bowed, bay, pavementOn(rectangle(8, 4, 9, 5), { id: 'corner' }))).toEqual([]);
  });
});

describe('a strip whose base lies in that of a deeper drive', () => {
  const strip = (fields: Loose, job: Loose = {}) => {
    const site = levelSite(
      [
        pavementOn(rectangle(0, 0, 4, 4), { id: 'drive', layers: layersOn('400 mm') }),
        pavementOn(rectangle(4, 0, 4.2, 4), {
          id: 'strip',
          layers: layersOn('300 mm', 'other'),
          ...fields,
        }),
      ],
      job,
    );
    const [stone = expect.unreachable('stone')] = site.materials['stones'];
    Object.assign(site.materials, { stones: [stone, { ...stone, id: 'other' }] });
    return planFile(site);
  };
  const volumes = (plan: JobPlan, id: string) =>
    of(plan, id).stones.map(({ order }) => order.compacted.volume);

  test('a stone that is placed nowhere is not ordered', () => {
    // the drive takes 0.4 m beyond its edge, the strip is 0.2 m wide and has nothing beyond its own
    const plan = strip({ edges: ['slab', 'slab', 'slab', 'adjoining'] });
    expect(of(plan, 'strip').areas.ownBase.isZero()).toBe(true);
    expect(volumes(plan, 'strip').map((volume) => volume.isZero())).toEqual([true]);
    expect(plan.totals.stones.map(({ material }) => material)).toEqual(['stone']);
    // 4.8 x 4.8 x 0.4
    expect(plan.totals.stones[0]?.compacted.to('m3').toString()).toBe('9.216');
    expect(materialList(plan).lines.map(({ material }) => material)).not.toContain('other');
    expect(renderJobSheet(plan, { system: 'metric' })).toContain('strip');
  });

  test('nothing is left of a strip with a bowed end that two drives cover together', () => {
    const half = (south: number, id: string) =>
      pavementOn(rectangle(0, south, 4, south + 2), { id, layers: layersOn('400 mm') });
    for (const bow of [0.1, 0.07, 0.033, -0.05]) {
      for (const slant of [0, 0.013]) {
        const bowed = pavementOn(rectangle(4, 0, 4.2, 4), {
          id: 'strip',
          edges: ['slab', 'slab', 'slab', 'adjoining'],
        });
        const [sw, se, ne, nw] = rectangle(4, 0, 4.2, 4);
        Object.assign(bowed.outline, {
          points: [sw, se, [ne?.[0], 4 - slant], nw],
          arcs: [{ edge: 2, bulgeMiddleOrdinate: bow }],
        });
        const plan = planFile(levelSite([half(0, 'a'), half(2, 'b'), bowed]));
        const found = of(plan, 'strip');
        const { ownDig, ownBase } = found.areas;
        expect([ownDig, ownBase].map((own) => own.isZero())).toEqual([true, true]);
        expect(found.spoil.mass.isZero()).toBe(true);
        // all three are of one stone: 4.8 x 4.8 x 0.4
        expect(plan.totals.stones[0]?.compacted.to('m3').toString()).toBe('9.216');
      }
    }
  });

  test('a tapered strip with a bow has stone beyond the drives only at its foot', () => {
    const half = (south: number, id: string) =>
      pavementOn(rectangle(0, south, 4, south + 2), { id, layers: layersOn('400 mm') });
    const [pavers, bedding] = layersOn();
    const stone = { thickness: '150 mm', material: 'stone' };
    const strip = pavementOn(rectangle(4, 0, 4.15, 4), {
      id: 'strip',
      edges: ['slab', 'open', 'slab', 'adjoining'],
      layers: [pavers, bedding, { kind: 'base', ...stone }, { kind: 'sub-base', ...stone }],
      taperedBase: true,
    });
    const [sw, se, , nw] = rectangle(4, 0, 4.15, 4);
    Object.assign(strip.outline, {
      points: [sw, se, [4.13, 4], nw],
      arcs: [{ edge: 2, bulgeMiddleOrdinate: 0.01 }],
    });
    const plan = planFile(
      levelSite([half(0, 'a'), half(2, 'b'), strip], { edgeRestraintWidth: '50 mm' }),
    );
    // the drives reach to 4.45 m, the strip to 4.5 m, and 150 mm up to 4.35 m
    const [base, subBase] = volumes(plan, 'strip').map((volume) => volume.toNumber('m3'));
    expect(base).toBe(0);
    expect(subBase).toBeGreaterThan(0);
  });

  test('of a tapered base what the strip has for itself', () => {
    const narrow = { edgeRestraintWidth: '50 mm' };
    const fields = { edges: ['open', 'open', 'open', 'adjoining'] };
    const tapered = { ...fields, taperedBase: true };
    // the base of the drive ends at x = 4.45, that of the strip at 4.55, 4.7 m long: at full thickness
    expect(volumes(strip(fields, narrow), 'strip')[0]?.to('m3').toString()).toBe('0.141');
    // at a height h it is 0.1 - h wide and 4.7 - 2 h long, so from 0 to 0.1 m
    // 0.47 h - 4.9 h^2 / 2 + 2 h^3 / 3 = 0.047 - 0.0245 + 0.000667
    const own = volumes(strip(tapered, narrow), 'strip')[0];
    expect(own?.toNumber('m3')).toBeCloseTo(0.0231667, 6);
    const none = strip({ edges: ['slab', 'slab', 'slab', 'adjoining'], taperedBase: true }, narrow);
    expect(volumes(none, 'strip')[0]?.isZero()).toBe(true);
  });
});

/** Counts cells of 0.1 m that lie in one of several rectangles. */
const cellsIn = (rectangles: readonly (readonly number[])[]): number => {
  const cells = new Set<string>();
  for (const [west = 0, south = 0, east = 0, north = 0] of rectangles) {
    for (let x = west; x < east; x += 1) {
      for (let y = south; y < north; y += 1) cells.add(`${x} ${y}`);
    }
  }
  return cells.size;
};

test('digs and bases of up to five pavements, against a count of cells', () => {
  const size = fc.tuple(fc.integer({ min: 5, max: 25 }), fc.integer({ min: 5, max: 25 }));
  const gap = fc.integer({ min: 0, max: 12 });
  fc.assert(
    fc.property(fc.array(fc.tuple(size, gap, gap), { minLength: 2, maxLength: 5 }), (parts) => {
      let west = 0;
      const rectangles = parts.map(([[long, wide], before, south]) => {
        west += before;
        const found = [west, south, west + long, south + wide] as const;
        west += long;
        return found;
      });
      const plan = planFile(
        levelSite(
          rectangles.map(([w, s, e, n], k) =>
            pavementOn(rectangle(w / 10, s / 10, e / 10, n / 10), { id: `p${k}` }),
          ),
        ),
      );
      const out = (by: number) =>
        cellsIn(rectangles.map(([w, s, e, n]) => [w - by, s - by, e + by, n + by])) / 100;
      expect(plan.totals.digArea.toNumber('m2')).toBeCloseTo(out(5), 9);
      expect(plan.totals.baseArea.toNumber('m2')).toBeCloseTo(out(3), 9);
      expect(plan.totals.spoil?.bank.toNumber('m3')).toBeCloseTo(out(5) * 0.4, 9);
      expect(plan.totals.stones[0]?.compacted.toNumber('m3')).toBeCloseTo(out(3) * 0.3, 9);
    }),
    runs(40),
  );
});
