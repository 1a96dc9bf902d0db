import { describe, expect, test } from 'vitest';
import {
  planFromJSON,
  planJob,
  readJob,
  tryPlanJob,
  type JobInput,
  type JobPlan,
} from 'settline/job';
import { pathText } from 'settline';
import { length, type Length } from 'settline/units';
import { expectFault, faultsOf } from '../faults.js';
import { cedarCourtFile, cedarCourtJob } from '../cedar-court.js';
import { inMetric } from '../in-metric.js';
import { millGarthJob } from '../mill-garth.js';
import { mutable, type Mutable } from '../mutable.js';
import { plainCourtJob } from '../plain-court.js';
import { planFile } from '../plan-file.js';

const inches = (one: Length) => one.to('in').toString();

function part<T>(list: readonly T[], index: number): T {
  const found = list[index];
  if (found === undefined) expect.unreachable(`nothing at ${index}`);
  return found;
}

const plan = planJob(cedarCourtJob());
const court = part(plan.pavements, 0);
const terrace = part(plan.pavements, 1);

describe('the built-in site, by pencil', () => {
  test('build-ups', () => {
    expect(inches(court.buildUp.total)).toBe('18.75');
    expect(inches(terrace.buildUp.total)).toBe('9.25');
    expect(court.buildUp.layers.map(({ name, top }) => `${name} ${inches(top)}`)).toEqual([
      'paver 0',
      'bedding 3.25',
      'base 4.25',
      'sub-base 12.75',
    ]);
  });

  test('dig: mean of eight stakes is 19 3/8 in, 13 7/8 in of it soil', () => {
    expect(court.dig.basis).toBe('measured');
    expect(court.dig.measuredStakes).toBe(8);
    // digs 19 3/4, 20 3/8, 19 1/4, 18 1/2, 18 3/4 and 19 1/2, 20 1/4, 18 5/8: 155 in over 8
    expect(inches(court.dig.depth)).toBe('19.375');
    expect(inches(court.dig.soil)).toBe('13.875');
    expect(inches(court.dig.belowString)).toBe('36.75');
    // nothing measured: 9 1/4 in and 1 1/2 in above finish
    expect(terrace.dig.basis).toBe('uniform');
    expect(inches(terrace.dig.depth)).toBe('10.75');
  });

  test('depths below the string count from the first string of the pavement', () => {
    expect(inches(court.stringHeight)).toBe('18'); // kerb: that of the job
    expect(inches(terrace.stringHeight)).toBe('9'); // garden: its own
    expect(inches(terrace.dig.belowString)).toBe('18.25');
    expect(terrace.lifts.map(({ belowString }) => inches(belowString))).toEqual(['13.25']);
    expect(inches(plan.stringHeight)).toBe('18');
  });

  test('dig outline: restraint 2 1/2 in and extension, 3 in to work in, open edges only', () => {
    expect(inches(court.extension)).toBe('14.5');
    expect(inches(terrace.extension)).toBe('6'); // no less, for a base of 5 in
    expect(court.edges.map(({ kind, base, dig }) => [kind, inches(base), inches(dig)])).toEqual([
      ['restrained', '0', '0'],
      ['open', '17', '20'],
      ['open', '17', '20'],
      ['open', '17', '20'],
      ['open', '17', '20'],
      ['building', '0', '0'],
    ]);
    expect(court.areas.paving.to('ft2').toString()).toBe('1270'); // 44 x 20 + 30 x 13
    // in square inches, over 144: 545 x 257 + 377 x 156
    expect(court.areas.base.times(144).to('ft2').toString()).toBe('198877');
    expect(court.areas.dig.times(9).to('ft2').toString()).toBe('12610'); // 137 x 65 + 95 x 39
    expect(court.digOutline.map(({ x, y }) => [x, y].map((one) => inches(one)).join(' '))).toEqual([
      '0 0',
      '548 0',
      '548 260',
      '380 260',
      '380 416',
      '0 416',
    ]);
  });

  test('lifts: two of 3 in, then two of 4 1/4 in', () => {
    expect(court.lifts.map(({ lift, layer }) => `${lift} ${layer}`)).toEqual([
      '1 sub-base',
      '2 sub-base',
      '3 base',
      '4 base',
    ]);
    const [first, , , fourth] = court.lifts;
    expect(first?.compacted.equals(length('3 in'))).toBe(true);
    expect(first?.loose.times('0.78').to('in').toString()).toBe('3');
    expect(first && inches(first.belowString)).toBe('33.75');
    expect(fourth && inches(fourth.compacted)).toBe('4.25');
    expect(fourth && inches(fourth.belowString)).toBe('22.25');
    expect(fourth && inches(fourth.belowFinish)).toBe('4.25');
    // 3 / 0.78 = 50/13 in, 11/13 in more than 3 in
    expect(first?.looseBelowString.equals(length('33.75 in').minus(length('11/13 in')))).toBe(true);
    expect(terrace.lifts.map((lift) => inches(lift.compacted))).toEqual(['5']);
  });

  test('base, bedding and pavers', () => {
    // 198877 / 144 x 14 1/2 / 12 / 27 yd3, so 198877 x 29 over 144 x 24 x 27
    expect(
      court.base.compacted.volume
        .times(144 * 24 * 27)
        .to('yd3')
        .toString(),
    ).toBe('5767433');
    expect(court.base.loose.to('yd3').times(0.78).div(1.04).toFixed(20)).toBe(
      court.base.compacted.to('yd3').toFixed(20),
    );
    // 5767433 / 93312 x 3650 x 1.03 x 1.04
    expect(court.base.deliveredMass.to('lb').toFixed(3)).toBe('241662.069');
    expect(
      court.bedding.compacted.volume
        .times(27 * 12)
        .to('yd3')
        .toString(),
    ).toBe('1270');
    // module 8 3/32 x 4 3/32 in: 1270 x 144 / 33.1338 = 5519.4
    expect(court.pavers?.whole).toBe(5520);
    expect(court.pavers?.order).toBe(5741); // 5519.4 x 1.04 = 5740.2
    expect(plan.totals.pavers).toBe(6817); // and 1034.4 x 1.04 = 1075.7
  });

  test('old paving and soil', () => {
    // 1380 ft2 x 5 1/2 / 12 = 632.5 ft3, at 4050 lb/yd3 or 150 lb/ft3
    expect(court.oldSurface?.inPlace.to('ft3').toString()).toBe('632.5');
    expect(court.oldSurface?.mass.to('lb').toString()).toBe('94875');
    expect(terrace.oldSurface).toBeNull();
    // 12610/9 x 19.375/12 - 632.5 ft3: over 864, 12610 x 155 - 546480
    expect(court.spoil.bank.volume.times(864).to('ft3').toString()).toBe('1408070');
    expect(court.spoil.loose.volume.times(86400).to('ft3').toString()).toBe('157703840');
    expect(court.spoil.bank.state).toBe('bank');
    expect(court.spoil.loose.state).toBe('loose');
  });

  test('loads', () => {
    const { base, bedding, spoil, asphalt, concrete } = plan.totals;
    expect([base.loads.count, base.loads.limitedBy]).toEqual([9, 'mass']); // 129.1 t by 15 t
    expect([bedding.loads.count, bedding.loads.limitedBy]).toEqual([1, 'mass']);
    expect([spoil?.loads.count, spoil?.loads.limitedBy]).toEqual([7, 'mass']); // 101.3 t
    expect([asphalt, concrete?.loads.count]).toEqual([null, 4]); // 47.4 t
    // 60.36 yd3 and 17.9583 x 15.9167 ft of terrace, 10 3/4 in deep: 9.48 yd3
    expect(spoil?.bank.to('yd3').toFixed(2)).toBe('69.84');
  });

  test('stakes below the string', () => {
    const kerb = part(plan.stringLines, 0);
    expect(
      kerb.stakes.map(({ id, dig, soil }) => [id, dig && inches(dig), soil && inches(soil)]),
    ).toEqual([
      ['K1', '19.75', '14.25'],
      ['K2', '20.375', '14.875'],
      ['K3', '19.25', '13.75'],
      ['K4', '18.5', '13'],
      ['K5', '18.75', '13.25'],
    ]);
    expect(kerb.stakes.every(({ subgrade }) => inches(subgrade) === '36.75')).toBe(true);
    expect(kerb.stakes.map(({ station }) => station.to('ft').toString())).toEqual([
      '0',
      '15',
      '30',
      '38',
      '46',
    ]);
    expect(part(kerb.stakes, 0).stringElevation?.to('ft').toString()).toBe('213.89');
    const fence = part(plan.stringLines, 1);
    expect(
      fence.stakes.map(({ subgrade, dig }) => [subgrade, dig].map((one) => one && inches(one))),
    ).toEqual([
      ['42.75', '19.5'],
      ['42.75', '20.25'],
      ['42.75', '18.625'],
    ]);
  });

  test('one stake is out of line, and the move is given', () => {
    const kerb = part(plan.stringLines, 0);
    expect(kerb.ok).toBe(false);
    expect(
      kerb.moves.map(({ id, distance, direction }) => [id, inches(distance), direction]),
    ).toEqual([['K2', '1.125', 'left']]);
    expect(plan.warnings.map(({ code, subject }) => [code, subject])).toEqual([
      ['STAKE_OUT_OF_LINE', 'stake K2'],
    ]);
  });

  test('falls', () => {
    const fence = part(plan.stringLines, 1);
    // 0.3 ft in 15 ft, less what 1/8 in of offset adds to the length; 1 % across
    expect(
      fence.slopes.map(({ slope, fall, verdict }) => [
        slope.to('percent').toFixed(4),
        fall.to('percent').toFixed(2),
        verdict,
      ]),
    ).toEqual([
      ['-2.0000', '2.24', 'pass'],
      ['-2.0000', '2.24', 'pass'],
    ]);
    const side = part(part(plan.stringLines, 2).slopes, 0);
    expect(side.slope.to('percent').toFixed(2)).toBe('1.71'); // 0.12 ft in 7 ft, up
    expect(side.fall.to('percent').toFixed(2)).toBe('2.49'); // and 1.8 % across
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

describe('the built-in site in metres, by pencil', () => {
  const metres = planJob(millGarthJob());
  const forecourt = part(metres.pavements, 0);
  const path = part(metres.pavements, 1);
  const mm = (one: Length) => one.to('mm').toString();

  test('depths below strings of three heights', () => {
    expect(metres.pavements.map(({ buildUp }) => mm(buildUp.total))).toEqual(['425', '315']);
    expect(metres.stringLines.map(({ stakes }) => mm(part(stakes, 0).subgrade))).toEqual([
      '675',
      '825',
      '465',
    ]);
    expect(forecourt.lifts.map(({ belowString }) => mm(belowString))).toEqual([
      '595',
      '515',
      '435',
      '355',
    ]);
    expect(path.lifts.map(({ belowString }) => mm(belowString))).toEqual(['395', '325', '255']);
    // 410, 435, 420, 405, 390 and 445, 439, 433: 3377 mm over 8
    expect(mm(forecourt.dig.depth)).toBe('422.125');
    expect(mm(path.dig.depth)).toBe('275'); // 40 mm below finish
  });

  test('areas with an arc', () => {
    // 9.6 x 7.5 less the corner 3.2 x 3.3 / 2, and the segment of 0.35 m over its chord
    const chord = Math.hypot(3.2, 3.3);
    const radius = (chord / 2) ** 2 / 0.7 + 0.175;
    const angle = 2 * Math.asin(chord / 2 / radius);
    const segment = (radius ** 2 * (angle - Math.sin(angle))) / 2;
    expect(forecourt.areas.paving.toNumber('m2')).toBeCloseTo(72 - 5.28 + segment, 9);
    expect(part(forecourt.edges, 2).length.toNumber('m')).toBeCloseTo(radius * angle, 9);
    expect(path.areas.base.to('m2').toString()).toBe('21.8638'); // 1.94 x 11.27
    expect(path.areas.dig.to('m2').toString()).toBe('25.5808'); // 2.24 x 11.42
    expect(path.spoil.bank.volume.to('m3').toString()).toBe('7.03472');
  });

  test('the stake to move, the falls and the loads', () => {
    expect(metres.warnings.map(({ code, subject }) => [code, subject])).toEqual([
      ['STAKE_OUT_OF_LINE', 'stake L2'],
    ]);
    const [move] = part(metres.stringLines, 0).moves;
    expect([move?.distance.to('mm').toFixed(0), move?.direction]).toEqual(['36', 'right']);
    const [fall] = part(metres.stringLines, 2).slopes;
    expect(fall?.fall.to('percent').toString()).toBe('2.5'); // 2 % along, 1.5 % across
    expect(metres.minimumFall.to('percent').toString()).toBe('1.25');
    const { base, asphalt, spoil } = metres.totals;
    expect([base.loads.count, base.loads.limitedBy]).toEqual([8, 'mass']); // 67.4 t by 9.5 t
    expect([asphalt?.loads.count, asphalt?.loads.limitedBy]).toEqual([2, 'volume']);
    expect([spoil?.loads.count, spoil?.loads.limitedBy]).toEqual([7, 'volume']); // 45.4 m3 by 6.5
  });

  test('what is added for wet ground and frost is common practice, and is said', () => {
    expect(metres.sources.map(({ id }) => id)).toContain('common-practice');
    expect(plan.sources.map(({ id }) => id)).not.toContain('common-practice');
  });
});

describe('working', () => {
  test('is made on demand, once, and stays out of the JSON', () => {
    const fresh = planJob(cedarCourtJob());
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
      ({ title, subject }) => subject === 'Parking court' && title.startsWith('Soil to dig'),
    );
    expect(bank?.given.map(({ symbol }) => symbol)).toEqual(['A', 'E', 'O']);
    expect(bank?.result.value).toEqual(court.spoil.bank.volume);
  });
});

describe('JSON', () => {
  const json = JSON.stringify(plan);
  const again = planFromJSON(JSON.parse(json));

  test('loses nothing', () => {
    expect(JSON.stringify(again)).toBe(json);
    expect(again).toEqual(plan);
    expect(part(again.pavements, 0).spoil.loose.to('yd3').toString()).toBe(
      court.spoil.loose.to('yd3').toString(),
    );
    expect(again.working).toEqual(plan.working);
  });

  test('a clone is as good, and so is the JSON of a clone', () => {
    const clone: unknown = structuredClone(plan);
    for (const read of [planFromJSON(clone), planFromJSON(JSON.parse(JSON.stringify(clone)))]) {
      expect(read).toEqual(plan);
      expect(JSON.stringify(read)).toBe(json);
      expect(read.working).toEqual(plan.working);
    }
  });

  test('the job inside plans to the same plan', () => {
    expect(JSON.stringify(planJob(again.job))).toBe(json);
    expect(JSON.stringify(planFile(JSON.parse(JSON.stringify(plan.job))))).toBe(json);
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

  interface Altered {
    pavements: Record<string, unknown>[];
    warnings: { code: string }[];
  }
  test.each<[string, (saved: Altered) => unknown, string]>([
    [
      'another figure',
      (saved) => (part(saved.pavements, 0)['extension'] = { value: '1', unit: 'm' }),
      'pavements[0].extension PLAN_ALTERED',
    ],
    [
      'another name',
      (saved) => (part(saved.pavements, 1)['name'] = 'Patio'),
      'pavements[1].name PLAN_ALTERED',
    ],
    ['a warning less', (saved) => saved.warnings.pop(), 'warnings.length PLAN_ALTERED'],
    [
      'another warning',
      (saved) => (part(saved.warnings, 0).code = 'ALL_WELL'),
      'warnings[0].code PLAN_ALTERED',
    ],
    [
      'a field too many',
      (saved) => (part(saved.pavements, 0)['colour'] = 'red'),
      'pavements[0].colour PLAN_INVALID',
    ],
    [
      'a field too few',
      (saved) => delete part(saved.pavements, 0)['dig'],
      'pavements[0].dig PLAN_INVALID',
    ],
    [
      'a list that is none',
      (saved) => ((saved as { pavements: unknown }).pavements = 5),
      'pavements PLAN_INVALID',
    ],
    [
      'a job with a fault',
      (saved) => ((saved as unknown as { job: { name: unknown } }).job.name = 5),
      'job.name WRONG_TYPE',
    ],
  ])('a plan altered by hand is refused: %s', (_name, alter, fault) => {
    const saved = JSON.parse(json) as Altered;
    alter(saved);
    const faults = faultsOf(() => planFromJSON(saved));
    expect(faults.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([fault]);
  });

  test('other words in its cautions are no other plan', () => {
    const saved = JSON.parse(json) as { cautions: unknown; sources: unknown };
    saved.cautions = [];
    saved.sources = [];
    expect(planFromJSON(saved)).toEqual(plan);
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
    const job = freeze(cedarCourtFile());
    expect(JSON.stringify(planFile(job))).toBe(JSON.stringify(plan));
    expect(JSON.stringify(planJob(readJob(job)))).toBe(JSON.stringify(plan));
  });
});

test('the same site in metric units gives the same plan, to the last digit', () => {
  const metric = inMetric(cedarCourtFile());
  expect(JSON.stringify(metric)).not.toMatch(/\d (?:in|ft)"/);
  const planned = planFile(metric);
  expect(JSON.stringify(planned)).toBe(JSON.stringify(plan));
});

describe('variants of the site with a plain court', () => {
  const changed = (change: (job: Mutable<JobInput>) => void): JobPlan => {
    const job = mutable(plainCourtJob());
    change(job);
    return planJob(job);
  };
  const warned = (one: JobPlan) => one.warnings.map(({ code }) => code);

  test('without measured ground the dig is uniform', () => {
    const uniform = changed((job) => {
      for (const { stakes } of job.stringLines) for (const one of stakes) delete one.ground;
      part(job.pavements, 0).existingAboveFinish = '2 in';
      part(job.pavements, 0).oldSurface = { material: 'asphalt', thickness: '3 in' };
    });
    const { dig } = part(uniform.pavements, 0);
    expect([dig.basis, dig.measuredStakes, inches(dig.depth), inches(dig.soil)]).toEqual([
      'uniform',
      0,
      '14.25',
      '11.25',
    ]);
    expect(inches(part(uniform.pavements, 1).dig.depth)).toBe('10.75');
    expect(uniform.working.some(({ title }) => title === 'Depth of dig')).toBe(true);
  });

  test('a string of its own height moves every depth below it', () => {
    const higher = changed((job) => {
      part(job.stringLines, 0).height = '24 in';
    });
    const kerb = part(higher.stringLines, 0);
    expect(inches(part(kerb.stakes, 0).subgrade)).toBe('36.25');
    expect(inches(part(kerb.liftTops, 1).belowString)).toBe('28.25');
    // the first string of the court: its depths count from there too
    expect(inches(part(higher.pavements, 0).dig.belowString)).toBe('36.25');
    expect(inches(part(part(higher.pavements, 0).lifts, 1).belowString)).toBe('28.25');
    // six inches more at four stakes of eight
    expect(inches(part(higher.pavements, 0).dig.depth)).toBe('15.25');
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
      part(job.pavements, 0).edges = ['open', 'restrained', 'open', 'building'];
    });
    expect(part(kerbed.pavements, 0).areas.base.to('ft2').toString()).toBe('576'); // 36 x 16
  });

  test('base and sub-base are placed from the bottom up', () => {
    const deep = changed((job) => {
      part(job.pavements, 0).layers = [
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
      part(job.pavements, 0).layers = [
        { kind: 'paver', thickness: '50 mm' },
        { kind: 'bedding', thickness: '2 in' },
        { kind: 'base', thickness: '5 in' },
      ];
      part(job.pavements, 1).layers = [
        { kind: 'paver', thickness: '60 mm' },
        { kind: 'bedding', thickness: '25 mm' },
        { kind: 'base', thickness: '100 mm' },
      ];
      part(job.pavements, 0).subgrade = 'clay';
      part(job.pavements, 1).subgrade = 'clay';
      const stakes = part(job.stringLines, 0).stakes;
      Object.assign(part(stakes, 1), { finish: '99.90 ft', ground: '30 in' });
      Object.assign(part(stakes, 0), { y: '-0.5 ft' });
      Object.assign(part(stakes, 3), { y: '-0.5 ft' });
      part(job.stringLines, 2).stakes.splice(2);
      part(job.pavements, 1).oldSurface = {
        material: 'concrete',
        thickness: '10 in',
        area: '300 ft2',
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
      part(job.pavements, 1).subgrade = 'well-drained';
      part(job.pavements, 1).layers = [
        { kind: 'paver', thickness: '60 mm' },
        { kind: 'bedding', thickness: '25 mm' },
        { kind: 'base', thickness: '100 mm' },
      ];
    });
    expect(metric.warnings.filter(({ subject }) => subject === 'Terrace')).toEqual([]);
  });

  test('three stakes that nobody holds are ambiguous', () => {
    const unsure = changed((job) => {
      part(job.stringLines, 2).reference = 'best-fit';
      Object.assign(part(part(job.stringLines, 2).stakes, 1), { x: '19 ft 2 in' });
    });
    const line = part(unsure.stringLines, 2);
    expect(line.ambiguous).toBe(true);
    expect(line.moves.map(({ id }) => id)).toEqual(['G1', 'G2', 'G3']);
    expect(warned(unsure).filter((code) => code === 'LINE_AMBIGUOUS')).toHaveLength(3);
  });

  test('nothing to cart away is no load, not a fault', () => {
    const filled = changed((job) => {
      for (const { stakes } of job.stringLines) {
        for (const one of stakes) one.ground = '36 in';
      }
      for (const pavement of job.pavements) delete pavement.oldSurface;
    });
    expect(filled.totals.spoil).toBeNull();
    expect(filled.totals.asphalt).toBeNull();
    expect(filled.totals.concrete).toBeNull();
    expect(part(filled.pavements, 0).spoil.bank.volume.isZero()).toBe(true);
    expect(filled.cautions.map(({ id }) => id)).not.toContain('dust');
  });

  test('a job without a paver size orders no pavers', () => {
    const bare = changed((job) => {
      delete job.paver;
    });
    expect(bare.totals.pavers).toBeNull();
    expect(part(bare.pavements, 0).pavers).toBeNull();
  });
});

test('tryPlanJob returns the plan or the faults', () => {
  const good = tryPlanJob(cedarCourtFile());
  expect(good.ok && good.value.name).toBe('Cedar Court 27 (an invented site)');
  const bad = tryPlanJob({ version: 1 });
  expect(bad.ok ? [] : bad.errors.length).toBeGreaterThan(5);
});
