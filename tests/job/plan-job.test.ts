import { describe, expect, test } from 'vitest';
import { planFromJSON, planJob, tryPlanJob, type JobInput, type JobPlan } from 'settline/job';
import { length, type Length } from 'settline/units';
import { expectFault } from '../faults.js';
import { heronBendJob } from '../heron-bend.js';
import { inMetric } from '../in-metric.js';

const inches = (one: Length) => one.to('in').toString();

function part<T>(list: readonly T[], index: number): T {
  const found = list[index];
  if (found === undefined) expect.unreachable(`nothing at ${index}`);
  return found;
}

const plan = planJob(heronBendJob());
const drive = part(plan.pavements, 0);
const walk = part(plan.pavements, 1);

describe('the built-in site, by pencil', () => {
  test('build-ups', () => {
    expect(inches(drive.buildUp.total)).toBe('13.375');
    expect(inches(walk.buildUp.total)).toBe('9.375');
    expect(drive.buildUp.layers.map(({ name, top }) => `${name} ${inches(top)}`)).toEqual([
      'paver 0',
      'bedding 2.375',
      'base 3.375',
    ]);
  });

  test('dig: mean of eight stakes is 13 3/8 in, 11 3/8 in of it soil', () => {
    expect(drive.dig.basis).toBe('measured');
    expect(drive.dig.measuredStakes).toBe(8);
    // digs 13 7/8, 13 3/8, 13 1/8, 13 5/8 and 13 5/8, 12 7/8, 13 1/8, 13 3/8: 107 in over 8
    expect(inches(drive.dig.depth)).toBe('13.375');
    expect(inches(drive.dig.soil)).toBe('11.375');
    expect(inches(drive.dig.belowString)).toBe('25.375');
    // 9 3/8, 9 5/8 and 8 7/8: 27 7/8 over 3
    expect(walk.dig.depth.times(3).to('in').toString()).toBe('27.875');
  });

  test('dig outline: restraint 2 in and extension, open edges only', () => {
    expect(inches(drive.extension)).toBe('10');
    expect(inches(walk.extension)).toBe('6');
    expect(drive.edges.map(({ kind, base, dig }) => [kind, inches(base), inches(dig)])).toEqual([
      ['open', '12', '12'],
      ['open', '12', '12'],
      ['open', '12', '12'],
      ['building', '0', '0'],
    ]);
    expect(drive.areas.paving.to('ft2').toString()).toBe('504');
    expect(drive.areas.base.to('ft2').toString()).toBe('592'); // 37 x 16
    expect(drive.areas.dig.equals(drive.areas.base)).toBe(true);
    expect(
      drive.digOutline.map(({ x, y }) => [x, y].map((one) => one.to('ft').toString()).join(' ')),
    ).toEqual(['0 -1', '37 -1', '37 15', '0 15']);
  });

  test('lifts: three of 3 1/3 in on the drive', () => {
    expect(drive.lifts.map(({ lift }) => lift)).toEqual([1, 2, 3]);
    const [first, , third] = drive.lifts;
    expect(first?.compacted.equals(length('10/3 in'))).toBe(true);
    expect(first?.loose.equals(length('25/6 in'))).toBe(true);
    expect(
      first?.belowString.equals(length('12 in').plus(length('20/3 in')).plus(length('3.375 in'))),
    ).toBe(true);
    expect(third?.belowString.to('in').toString()).toBe('15.375');
    expect(third?.belowFinish.to('in').toString()).toBe('3.375');
    expect(
      first?.looseBelowString.equals(part(drive.lifts, 0).belowString.minus(length('5/6 in'))),
    ).toBe(true);
    expect(walk.lifts.map((lift) => inches(lift.compacted))).toEqual(['3', '3']);
  });

  test('base, bedding and pavers', () => {
    // 592 x 10 / 12 / 27 yd3
    expect(
      drive.base.compacted.volume
        .times(27 * 12)
        .to('yd3')
        .toString(),
    ).toBe('5920');
    expect(drive.base.loose.to('yd3').times(0.8).div(1.05).toFixed(20)).toBe(
      drive.base.compacted.to('yd3').toFixed(20),
    );
    expect(drive.base.deliveredMass.to('lb').toFixed(3)).toBe('74534.444'); // 5920/324 x 3700 x 1.05 x 1.05
    expect(
      drive.bedding.compacted.volume
        .times(27 * 12)
        .to('yd3')
        .toString(),
    ).toBe('504');
    // module 9 1/8 x 4 5/8 in: 504 x 144 / 42.203125 = 1719.7
    expect(drive.pavers?.whole).toBe(1720);
    expect(drive.pavers?.order).toBe(1806);
    expect(plan.totals.pavers).toBe(2236);
  });

  test('old paving and soil', () => {
    expect(drive.oldSurface?.inPlace.times(27).to('yd3').toString()).toBe('84'); // 504 x 2/12
    expect(drive.oldSurface?.mass.to('lb').toString()).toBe('12880'); // 84/27 x 4140
    expect(walk.oldSurface?.mass.to('lb').toString()).toBe('6000'); // 40/27 x 4050
    // 592 x 13.375/12 - 84 ft3
    expect(drive.spoil.bank.volume.times(12).to('ft3').toString()).toBe('6910');
    expect(drive.spoil.loose.volume.times(120).to('ft3').toString()).toBe('89830');
    expect(drive.spoil.bank.state).toBe('bank');
    expect(drive.spoil.loose.state).toBe('loose');
  });

  test('loads', () => {
    const { base, bedding, spoil, asphalt, concrete } = plan.totals;
    expect([base.loads.count, base.loads.limitedBy]).toEqual([4, 'mass']);
    expect([bedding.loads.count, bedding.loads.limitedBy]).toEqual([1, 'volume']);
    expect([spoil?.loads.count, spoil?.loads.limitedBy]).toEqual([4, 'mass']);
    expect([asphalt?.loads.count, concrete?.loads.count]).toEqual([1, 1]);
    expect(spoil?.bank.to('yd3').toFixed(2)).toBe('24.04');
  });

  test('stakes below the string', () => {
    const south = part(plan.stringLines, 0);
    expect(
      south.stakes.map(({ id, dig, soil }) => [id, dig && inches(dig), soil && inches(soil)]),
    ).toEqual([
      ['S1', '13.875', '11.875'],
      ['S2', '13.375', '11.375'],
      ['S3', '13.125', '11.125'],
      ['S4', '13.625', '11.625'],
    ]);
    expect(south.stakes.every(({ subgrade }) => inches(subgrade) === '25.375')).toBe(true);
    expect(south.stakes.map(({ station }) => station.to('ft').toString())).toEqual([
      '0',
      '12',
      '24',
      '36',
    ]);
    expect(part(south.stakes, 0).stringElevation?.to('ft').toString()).toBe('100.95');
  });

  test('one stake is out of line, and the move is given', () => {
    const north = part(plan.stringLines, 1);
    expect(north.ok).toBe(false);
    expect(
      north.moves.map(({ id, distance, direction }) => [id, inches(distance), direction]),
    ).toEqual([['N3', '1.5', 'right']]);
    expect(plan.warnings.map(({ code, subject }) => [code, subject])).toEqual([
      ['STAKE_OUT_OF_LINE', 'stake N3'],
    ]);
  });

  test('falls', () => {
    const south = part(plan.stringLines, 0);
    expect(
      south.slopes.map(({ slope, verdict }) => [slope.to('percent').toString(), verdict]),
    ).toEqual([
      ['-2.5', 'pass'],
      ['-2.5', 'pass'],
      ['-2.5', 'pass'],
    ]);
    const side = part(part(plan.stringLines, 2).slopes, 0);
    expect(side.slope.to('percent').toFixed(2)).toBe('-1.67');
    expect(side.fall.to('percent').toFixed(2)).toBe('2.24');
    expect(side.verdict).toBe('pass');
  });

  test('cautions and sources', () => {
    expect(plan.cautions.map(({ id }) => id)).toEqual([
      'utilities',
      'excavation',
      'structure',
      'drainage',
      'trees',
      'dust',
      'loads',
    ]);
    expect(plan.sources.map(({ id }) => id)).toContain('paver-tolerances');
    expect(plan.sources.every(({ title, section }) => title.length > 5 && section.length > 3)).toBe(
      true,
    );
  });
});

describe('working', () => {
  test('is made on demand, once, and stays out of the JSON', () => {
    const fresh = planJob(heronBendJob());
    expect(Object.keys(fresh)).not.toContain('working');
    expect(fresh.working).toBe(fresh.working);
    expect(JSON.stringify(fresh)).not.toContain('formula');
  });

  test('each step has title, formula, values, result and source', () => {
    expect(plan.working.length).toBeGreaterThan(80);
    for (const step of plan.working) {
      expect(step.subject.length).toBeGreaterThan(1);
      expect(step.title.length).toBeGreaterThan(3);
      expect(step.formula).toMatch(/=/);
      expect(step.given.length).toBeGreaterThan(0);
      expect(step.result.symbol).toBe(step.formula.split(' ')[0]);
      expect(step.source.length).toBeGreaterThan(3);
    }
    const bank = plan.working.find(
      ({ title, subject }) => subject === 'Drive' && title.startsWith('Soil to dig'),
    );
    expect(bank?.given.map(({ symbol }) => symbol)).toEqual(['A', 'E', 'O']);
    expect(bank?.result.value).toEqual(drive.spoil.bank.volume);
  });
});

describe('JSON', () => {
  const json = JSON.stringify(plan);
  const again = planFromJSON(JSON.parse(json));

  test('loses nothing', () => {
    expect(JSON.stringify(again)).toBe(json);
    expect(again).toEqual(plan);
    expect(part(again.pavements, 0).spoil.loose.to('yd3').toString()).toBe(
      drive.spoil.loose.to('yd3').toString(),
    );
    expect(again.working).toEqual(plan.working);
  });

  test('the job inside plans to the same plan', () => {
    expect(JSON.stringify(planJob(again.job))).toBe(json);
    expect(JSON.stringify(planJob(JSON.parse(JSON.stringify(plan.job)) as JobInput))).toBe(json);
  });

  test.each([
    [undefined],
    [null],
    [5],
    ['text'],
    [[]],
    [{}],
    [{ kind: 'plan' }],
    [{ kind: 'settline-plan' }],
    [{ kind: 'settline-plan', version: 2 }],
    [{ kind: 'settline-plan', version: 1, name: 'x' }],
  ])('%j is no plan', (value) => {
    expectFault(() => planFromJSON(value), 'PLAN_INVALID');
  });

  test('a damaged plan says where', () => {
    const damaged = JSON.parse(json) as {
      pavements: { extension: { value: string; unit: string } }[];
    };
    part(damaged.pavements, 0).extension.value = 'ten';
    expect(expectFault(() => planFromJSON(damaged), 'PLAN_INVALID').path).toEqual([
      'pavements',
      0,
      'extension',
      'value',
    ]);
    part(damaged.pavements, 0).extension = { value: '1', unit: 'furlong' };
    expect(expectFault(() => planFromJSON(damaged), 'PLAN_INVALID').path.at(-1)).toBe('unit');
  });
});

describe('the plan as data', () => {
  const visit = (value: unknown, seen: (value: object) => void) => {
    if (typeof value !== 'object' || value === null) return;
    seen(value);
    for (const one of Object.values(value)) visit(one, seen);
  };

  test('is frozen through and through', () => {
    visit(plan.pavements, (value) => {
      const isDigits = Array.isArray(value) && value.every((one) => typeof one === 'number');
      if (!isDigits && !('constructor' in value && Object.hasOwn(value, 'constructor'))) {
        expect(Object.isFrozen(value)).toBe(true);
      }
    });
    expect(Object.isFrozen(plan)).toBe(true);
    expect(Object.isFrozen(plan.warnings)).toBe(true);
  });

  test('holds no NaN, no infinity, no undefined', () => {
    const text = JSON.stringify(plan, (_key, value: unknown) => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      expect(value).not.toBeUndefined();
      return value;
    });
    expect(text).not.toMatch(/NaN|Infinity/);
  });

  test('inputs are not changed', () => {
    const freeze = <T>(value: T): T => {
      visit(value, Object.freeze);
      return value;
    };
    const job = freeze(heronBendJob());
    expect(JSON.stringify(planJob(job))).toBe(JSON.stringify(plan));
  });
});

test('the same site in metric units gives the same plan, to the last digit', () => {
  const metric = inMetric(heronBendJob());
  expect(JSON.stringify(metric)).not.toMatch(/\d (?:in|ft)"/);
  const planned: JobPlan = planJob(metric);
  expect(JSON.stringify(planned)).toBe(JSON.stringify(plan));
});

describe('variants of the site', () => {
  const planned = (change: (job: Record<string, never> & JobInput) => void): JobPlan => {
    const job = heronBendJob() as never;
    change(job);
    return planJob(job);
  };
  const warned = (one: JobPlan) => one.warnings.map(({ code }) => code);
  type Mutable = { -readonly [K in keyof JobInput]: JobInput[K] } & {
    pavements: Record<string, unknown>[];
    stringLines: { stakes: Record<string, unknown>[]; [key: string]: unknown }[];
  };
  const changed = (change: (job: Mutable) => void) =>
    planned((job) => {
      change(job);
    });

  test('without measured ground the dig is uniform', () => {
    const uniform = changed((job) => {
      for (const { stakes } of job.stringLines) for (const one of stakes) delete one['ground'];
      part(job.pavements, 0)['existingAboveFinish'] = '2 in';
    });
    const { dig } = part(uniform.pavements, 0);
    expect([dig.basis, dig.measuredStakes, inches(dig.depth), inches(dig.soil)]).toEqual([
      'uniform',
      0,
      '15.375',
      '13.375',
    ]);
    expect(inches(part(uniform.pavements, 1).dig.depth)).toBe('9.375');
    expect(uniform.working.some(({ title }) => title === 'Depth of dig')).toBe(true);
  });

  test('a string of its own height moves every depth below it', () => {
    const higher = changed((job) => {
      part(job.stringLines, 0)['height'] = '18 in';
    });
    const south = part(higher.stringLines, 0);
    expect(inches(part(south.stakes, 0).subgrade)).toBe('31.375');
    expect(part(south.liftTops, 2).belowString.to('in').toString()).toBe('21.375');
    // six inches more at four stakes of eight
    expect(inches(part(higher.pavements, 0).dig.depth)).toBe('16.375');
  });

  test('working room widens the dig and not the base', () => {
    const roomy = changed((job) => {
      job.workingRoom = '6 in';
    });
    const { areas } = part(roomy.pavements, 0);
    expect(areas.base.to('ft2').toString()).toBe('592');
    expect(areas.dig.to('ft2').toString()).toBe('637.5'); // 37.5 x 17
  });

  test('a restrained edge is not widened', () => {
    const kerbed = changed((job) => {
      part(job.pavements, 0)['edges'] = ['open', 'restrained', 'open', 'building'];
    });
    expect(part(kerbed.pavements, 0).areas.base.to('ft2').toString()).toBe('576'); // 36 x 16
  });

  test('base and sub-base are placed from the bottom up', () => {
    const deep = changed((job) => {
      part(job.pavements, 0)['layers'] = [
        { kind: 'paver', thickness: '80 mm' },
        { kind: 'bedding', thickness: '25 mm' },
        { kind: 'base', thickness: '100 mm' },
        { kind: 'sub-base', thickness: '200 mm' },
      ];
    });
    const { lifts, extension, base } = part(deep.pavements, 0);
    expect(
      lifts.map(({ layer, aboveSubgrade }) => `${layer} ${aboveSubgrade.to('mm').toString()}`),
    ).toEqual(['sub-base 100', 'sub-base 200', 'base 300']);
    expect(extension.to('mm').toString()).toBe('300');
    expect(
      base.compacted.volume.dividedBy(part(deep.pavements, 0).areas.base).to('mm').toString(),
    ).toBe('300');
  });

  test('thin layers, flat falls, fills and stakes in the way are pointed out', () => {
    const poor = changed((job) => {
      part(job.pavements, 0)['layers'] = [
        { kind: 'paver', thickness: '50 mm' },
        { kind: 'bedding', thickness: '2 in' },
        { kind: 'base', thickness: '5 in' },
      ];
      part(job.pavements, 1)['layers'] = [
        { kind: 'paver', thickness: '60 mm' },
        { kind: 'bedding', thickness: '25 mm' },
        { kind: 'base', thickness: '100 mm' },
      ];
      const stakes = part(job.stringLines, 0).stakes;
      Object.assign(part(stakes, 1), { finish: '99.90 ft', ground: '30 in' });
      Object.assign(part(stakes, 0), { y: '-0.5 ft' });
      Object.assign(part(stakes, 3), { y: '-0.5 ft' });
      part(job.stringLines, 2).stakes.splice(2);
      part(job.pavements, 1)['oldSurface'] = {
        material: 'concrete',
        thickness: '8 in',
        area: '200 ft2',
      };
    });
    expect(new Set(warned(poor))).toEqual(
      new Set([
        'PAVER_BELOW_MINIMUM',
        'BEDDING_OFF_NOMINAL',
        'BASE_BELOW_MINIMUM',
        'BASE_BELOW_PRACTICE',
        'OLD_SURFACE_DEEPER_THAN_DIG',
        'OLD_SURFACE_WIDER_THAN_DIG',
        'STAKE_OUT_OF_LINE',
        'UNIT_SHAPE',
        'FALL_TOO_SMALL',
        'FILL_NEEDED',
        'LINE_NOT_CHECKED',
        'STAKE_IN_DIG',
      ]),
    );
  });

  test('metric minimums pass though the inch figures stand a little higher', () => {
    const metric = changed((job) => {
      part(job.pavements, 1)['subgrade'] = 'well-drained';
      part(job.pavements, 1)['layers'] = [
        { kind: 'paver', thickness: '60 mm' },
        { kind: 'bedding', thickness: '25 mm' },
        { kind: 'base', thickness: '100 mm' },
      ];
    });
    expect(metric.warnings.filter(({ subject }) => subject === 'Side walk')).toEqual([]);
  });

  test('three stakes that nobody holds are ambiguous', () => {
    const unsure = changed((job) => {
      Object.assign(part(part(job.stringLines, 2).stakes, 1), { x: '6 ft 2 in' });
    });
    const line = part(unsure.stringLines, 2);
    expect(line.ambiguous).toBe(true);
    expect(line.moves.map(({ id }) => id)).toEqual(['W1', 'W2', 'W3']);
    expect(warned(unsure).filter((code) => code === 'LINE_AMBIGUOUS')).toHaveLength(3);
  });

  test('nothing to cart away is no load, not a fault', () => {
    const filled = changed((job) => {
      for (const { stakes } of job.stringLines) {
        for (const one of stakes) one['ground'] = '30 in';
      }
      for (const pavement of job.pavements) delete pavement['oldSurface'];
    });
    expect(filled.totals.spoil).toBeNull();
    expect(filled.totals.asphalt).toBeNull();
    expect(part(filled.pavements, 0).spoil.bank.volume.isZero()).toBe(true);
    expect(filled.cautions.map(({ id }) => id)).not.toContain('dust');
  });

  test('a job without a paver size orders no pavers', () => {
    const bare = changed((job) => {
      delete (job as Record<string, unknown>)['paver'];
    });
    expect(bare.totals.pavers).toBeNull();
    expect(part(bare.pavements, 0).pavers).toBeNull();
  });
});

test('tryPlanJob returns the plan or the faults', () => {
  const good = tryPlanJob(heronBendJob());
  expect(good.ok && good.value.name).toBe('Heron Bend 14 (an invented site)');
  const bad = tryPlanJob({ version: 1 } as JobInput);
  expect(bad.ok ? [] : bad.errors.length).toBeGreaterThan(5);
});
