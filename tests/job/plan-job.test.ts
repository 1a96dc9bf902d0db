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
import { meanOverStakes } from './mean-over-stakes.js';
import { withoutTexts } from './without-texts.js';

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

  test('dig: mean over the ground at eight stakes, and 5 1/2 in of concrete off it', () => {
    expect(court.dig.basis).toBe('stake-levels');
    expect(court.dig.measured).toEqual(['K1', 'K2', 'K3', 'K4', 'K5', 'F1', 'F2', 'F3']);
    expect(court.dig.unmeasured).toEqual([]);
    expect(court.earth.finish).toBe('stakes'); // K2 is out of line and so out of the plane
    // ground 17, 16 3/8, 17 1/2 ... below a string 18 in up over 18 3/4 in of layers: 36 3/4 - 17 ...
    const digs = [
      { x: -1, y: -3, dig: 19.75 },
      { x: 14, y: -3 - 1.125 / 12, dig: 20.375 },
      { x: 29, y: -3, dig: 19.25 },
      { x: 37, y: -3, dig: 18.5 },
      { x: 45, y: -3, dig: 18.75 },
      { x: 0, y: 36, dig: 19.5 },
      { x: 15, y: 36 + 0.125 / 12, dig: 20.25 },
      { x: 30, y: 36, dig: 18.625 },
    ];
    // the dig is 137/3 x 65/3 ft, and above it 95/3 ft wide to y = 104/3
    const by = meanOverStakes(digs, [
      [0, 0, 137 / 3, 65 / 3],
      [0, 65 / 3, 95 / 3, 104 / 3],
    ]);
    expect(court.dig.depth.toNumber('in')).toBeCloseTo(by.mean, 9);
    expect(court.earth.uncovered.toNumber('ft2')).toBeCloseTo(by.uncovered, 8);
    // concrete over the paving: 1270 of 12610 / 9 ft2, 5 1/2 in thick
    expect(court.dig.soil.toNumber('in')).toBeCloseTo(by.mean - (5.5 * 1270 * 9) / 12610, 9);
    // nothing measured: 9 1/4 in and 1 1/2 in above finish
    expect(terrace.dig.basis).toBe('uniform');
    expect(inches(terrace.dig.depth)).toBe('10.75');
    expect([terrace.dig.measured, terrace.dig.unmeasured]).toEqual([[], ['G1', 'G2', 'G3']]);
  });

  test('every surface below each string: as finished, and as placed', () => {
    const below = (index: number) =>
      part(plan.stringLines, index).surfaces.map(({ surface, belowString }) => [
        surface,
        inches(belowString),
      ]);
    // 18 in up: 3 1/4, 1, 8 1/2 in two lifts, 6 in two lifts
    expect(below(0)).toEqual([
      ['finished grade', '18'],
      ['bedding top', '21.25'],
      ['base top', '22.25'],
      ['lift 3 top', '26.5'],
      ['sub-base top', '30.75'],
      ['lift 1 top', '33.75'],
      ['subgrade', '36.75'],
    ]);
    // six inches higher, six inches more
    expect(below(1)).toEqual(
      below(0).map(([surface, depth]) => [surface, String(Number(depth) + 6)]),
    );
    expect(below(2).map(([, depth]) => depth)).toEqual(['9', '12.25', '13.25', '18.25']);
    const first = part(plan.stringLines, 0).surfaces.at(-2);
    // 3 in loose by 0.78 is 50/13 in, 11/13 in more
    expect(first?.placedBelowString?.equals(length('33.75 in').minus(length('11/13 in')))).toBe(
      true,
    );
    // nobody said how far the bed goes down, so nobody knows how high to screed
    expect(part(part(plan.stringLines, 0).surfaces, 1).placedBelowString).toBeNull();
  });

  test('dig outline: restraint 2 1/2 in and extension, 3 in to work in, open edges only', () => {
    expect(inches(court.extension)).toBe('14.5');
    expect(inches(terrace.extension)).toBe('6'); // no less, for a base of 5 in
    expect(court.edges.map(({ kind, base, dig }) => [kind, inches(base), inches(dig)])).toEqual([
      ['restraint', '0', '0'],
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
    expect(first && inches(first.belowFinish)).toBe('15.75');
    expect(fourth && inches(fourth.compacted)).toBe('4.25');
    expect(fourth && inches(fourth.belowFinish)).toBe('4.25');
    expect(terrace.lifts.map((lift) => inches(lift.compacted))).toEqual(['5']);
  });

  test('stone layer by layer, bedding and pavers', () => {
    // 198877 / 144 ft2 x 8 1/2 / 12 / 27 yd3, so 198877 x 17 over 144 x 24 x 27; sub-base x 12
    const [base, subBase, ...more] = court.stones;
    if (base === undefined || subBase === undefined) expect.unreachable();
    expect(more).toEqual([]);
    expect([base, subBase].map(({ layer, material }) => [layer, material])).toEqual([
      ['base', 'stone'],
      ['sub-base', 'stone'],
    ]);
    const shares = [base, subBase].map(({ order }) =>
      order.compacted.volume
        .times(144 * 24 * 27)
        .to('yd3')
        .toString(),
    );
    expect(shares).toEqual([String(198877 * 17), String(198877 * 12)]);
    expect(base.order.loose.to('yd3').times(0.78).div(1.04).toFixed(20)).toBe(
      base.order.compacted.to('yd3').toFixed(20),
    );
    // 198877 x 29 / 93312 x 3650 x 1.03 x 1.04 for both
    const mass = base.order.deliveredMass.plus(subBase.order.deliveredMass);
    expect(mass.to('lb').toFixed(3)).toBe('241662.069');
    expect(court.bedding.material).toBe('sand');
    expect(
      court.bedding.order.compacted.volume
        .times(27 * 12)
        .to('yd3')
        .toString(),
    ).toBe('1270');
    // module 8 3/32 x 4 3/32 in: 1270 x 144 / 33.1338 = 5519.4
    expect(court.pavers?.whole).toBe(5520);
    expect(court.pavers?.orders).toEqual([{ paver: 'paver', order: 5741 }]); // x 1.04 = 5740.2
    // and 1034.4 x 1.04 = 1075.7
    expect(plan.totals.pavers).toEqual([{ paver: 'paver', name: 'concrete pavers', order: 6817 }]);
  });

  test('old paving and soil', () => {
    // the paving alone has concrete, 1270 ft2 x 5 1/2 / 12 ft, at 4050 lb/yd3 or 150 lb/ft3
    const [concrete, ...more] = court.oldPaving;
    expect(more).toEqual([]);
    expect(concrete?.material).toBe('concrete');
    expect(concrete?.area.to('ft2').toString()).toBe('1270');
    expect(concrete?.inPlace.times(12).to('ft3').toString()).toBe('6985');
    expect(concrete?.mass.times(12).to('lb').toString()).toBe('1047750');
    expect(terrace.oldPaving).toEqual([]);
    // dig less concrete; loose by 1.12
    const dug = court.areas.dig.times(court.dig.depth).toNumber('ft3');
    expect(court.earth.cut.volume.toNumber('ft3')).toBeCloseTo(dug - 6985 / 12, 6);
    expect(court.spoil.bank).toEqual(court.earth.cut);
    expect(court.spoil.loose.volume.equals(court.earth.cut.volume.times('1.12'))).toBe(true);
    expect(court.spoil.bank.state).toBe('bank');
    expect(court.spoil.loose.state).toBe('loose');
    expect(court.earth.fill.volume.isZero()).toBe(true);
  });

  test('loads', () => {
    const { stones, sands, spoil, oldPaving } = plan.totals;
    const base = part(stones, 0);
    const bedding = part(sands, 0);
    const concrete = part(oldPaving, 0);
    expect([stones.length, sands.length, oldPaving.length]).toEqual([1, 1, 1]);
    expect([base.loads.count, base.loads.limitedBy]).toEqual([9, 'mass']); // 129.1 t by 15 t
    expect([bedding.loads.count, bedding.loads.limitedBy]).toEqual([1, 'mass']);
    // 12610 / 9 ft2, 19.5965 in deep, less 582.08 ft3: 63.18 yd3, and 9.48 of the terrace (17.9583 x
    // 15.9167 ft, 10 3/4 in deep): 72.67 yd3 by 2900 lb are 105.4 short tons
    // by 15
    expect(spoil?.bank.to('yd3').toFixed(2)).toBe('72.67');
    expect([spoil?.loads.count, spoil?.loads.limitedBy]).toEqual([8, 'mass']);
    // 582.08 ft3 by 150 lb are 43.7 t by 15 t
    expect([concrete.material, concrete.loads.count]).toEqual(['concrete', 3]);
    expect(base.fill).toBeNull();
  });

  test('stakes below the string', () => {
    const kerb = part(plan.stringLines, 0);
    // they stand beside the concrete, on soil
    expect(
      kerb.stakes.map(({ id, dig, soil }) => [id, dig && inches(dig), soil && inches(soil)]),
    ).toEqual([
      ['K1', '19.75', '19.75'],
      ['K2', '20.375', '20.375'],
      ['K3', '19.25', '19.25'],
      ['K4', '18.5', '18.5'],
      ['K5', '18.75', '18.75'],
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
    const line = plan.warnings.filter(({ code }) => code.includes('LINE'));
    expect(line.map(({ code, subject }) => [code, subject])).toEqual([
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
    // sqrt((0.12 / 7)^2 + 0.018^2) = 87 / 3500, which has no end as a decimal
    expect(side.fall.toJSON()).toEqual({ value: '87/3500', unit: 'ratio' });
    expect(side.verdict).toBe('pass');
  });

  test.each([
    ['100.15 ft', 'pass'],
    ['100.1499 ft', 'fail'],
  ])('a slanted rise to %s against a minimum that 100.15 ft meets exactly', (finish, verdict) => {
    const job = mutable(cedarCourtJob());
    job.minimumFall = '3.5%';
    part(job.pavements, 1).crossSlope = '1%';
    // the run is sqrt(20) ft: 0.15^2 / 20 + 0.01^2 = 0.035^2
    part(job.stringLines, 2).stakes = ['G1', 'G2'];
    Object.assign(part(job.stakes, 8), { finish: '100 ft' });
    Object.assign(part(job.stakes, 9), { x: '23 ft', y: '42 ft', finish });
    expect(part(part(planJob(job).stringLines, 2).slopes, 0).verdict).toBe(verdict);
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
    const below = (index: number) =>
      part(metres.stringLines, index)
        .surfaces.filter(({ kind }) => kind === 'lift' || kind === 'base')
        .map(({ belowString }) => mm(belowString));
    expect(below(0)).toEqual(['355', '435', '515', '595']);
    expect(below(1)).toEqual(['505', '585', '665', '745']);
    expect(below(2)).toEqual(['255', '325', '395']);
    expect(forecourt.lifts.map(({ belowFinish }) => mm(belowFinish))).toEqual([
      '345',
      '265',
      '185',
      '105',
    ]);
  });

  test('dig and earth', () => {
    // of digs of 410, 435, 420, 405, 390 and 445, 439, 433 mm
    expect(forecourt.dig.basis).toBe('stake-levels');
    expect(forecourt.dig.depth.toNumber('mm')).toBeGreaterThan(415);
    expect(forecourt.dig.depth.toNumber('mm')).toBeLessThan(435);
    const { areas, dig, earth } = forecourt;
    // what is dug is soil or asphalt
    expect(earth.cut.volume.plus(earth.stripped).toNumber('m3')).toBeCloseTo(
      areas.dig.times(dig.depth).toNumber('m3'),
      9,
    );
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
    const line = metres.warnings.filter(({ code }) => code.includes('LINE'));
    expect(line.map(({ code, subject }) => [code, subject])).toEqual([
      ['STAKE_OUT_OF_LINE', 'stake L2'],
    ]);
    const [move] = part(metres.stringLines, 0).moves;
    expect([move?.distance.to('mm').toFixed(0), move?.direction]).toEqual(['36', 'right']);
    const [fall] = part(metres.stringLines, 2).slopes;
    expect(fall?.fall.to('percent').toString()).toBe('2.5'); // 2 % along, 1.5 % across
    expect(metres.minimumFall.to('percent').toString()).toBe('1.25');
    const { stones, oldPaving, spoil } = metres.totals;
    const stone = part(stones, 0);
    expect([stone.loads.count, stone.loads.limitedBy]).toEqual([8, 'mass']); // 67.4 t by 9.5 t
    const asphalt = part(oldPaving, 0);
    expect([asphalt.loads.count, asphalt.loads.limitedBy]).toEqual([2, 'volume']);
    // 76.1 m2 dug 428.4 mm deep less 0.9 of them of asphalt 75 mm thick, and 7.03 m3 of the path: 34.5 m3
    // in the bank, by 1.35 46.6 m3 loose, by 6.5
    expect(spoil?.loose.toNumber('m3')).toBeCloseTo(
      1.35 *
        (forecourt.areas.dig.times(forecourt.dig.depth).toNumber('m3') -
          0.9 * 76.1084 * 0.075 +
          7.03472),
      2,
    );
    expect([spoil?.loads.count, spoil?.loads.limitedBy]).toEqual([8, 'volume']);
  });

  test('what is added for wet ground and frost has its sources, and the plan says so', () => {
    const sourcesOf = (one: JobPlan) => one.sources.map(({ id }) => id);
    const added = ['wet-base-clause', 'frost-base-page', 'common-practice'] as const;
    expect(sourcesOf(metres)).toEqual(expect.arrayContaining([...added]));
    for (const source of added) expect(sourcesOf(plan)).not.toContain(source);
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
      expect(step.given.length).toBeGreaterThan(0);
      if (step.kind === 'formula') {
        expect(step.formula.split(' = ')[0]).toBe(step.result.symbol);
      }
      expect(step.source.length).toBeGreaterThan(3);
    }
    const cut = plan.working.find(
      ({ title, subject }) => subject === 'Parking court' && title.startsWith('Soil between'),
    );
    expect(cut?.given.map(({ symbol }) => symbol)).toEqual(['A', 'O', 'D', 'g', 'f']);
    expect(cut?.result.value).toEqual(court.earth.cut.volume);
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
    expect(withoutTexts(again.working)).toEqual(withoutTexts(plan.working));
  });

  test('a clone is as good, and so is the JSON of a clone', () => {
    const clone: unknown = structuredClone(plan);
    for (const read of [planFromJSON(clone), planFromJSON(JSON.parse(JSON.stringify(clone)))]) {
      expect(read).toEqual(plan);
      expect(JSON.stringify(read)).toBe(json);
      expect(withoutTexts(read.working)).toEqual(withoutTexts(plan.working));
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
      'warnings[0].code PLAN_INVALID',
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
      'job.name PLAN_INVALID',
    ],
  ])('a plan altered by hand is refused: %s', (_name, alter, fault) => {
    const saved = JSON.parse(json) as Altered;
    alter(saved);
    const faults = faultsOf(() => planFromJSON(saved));
    expect(faults.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([fault]);
  });

  test('other words in its cautions and sources are no other plan', () => {
    const saved = JSON.parse(json) as { cautions: { text: string }[]; sources: unknown };
    for (const caution of saved.cautions) caution.text = 'in other words';
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
      for (const one of job.stakes) delete one.ground;
      part(job.pavements, 0).existingAboveFinish = '2 in';
      job.oldPaving = [{ material: 'asphalt', thickness: '3 in', pavement: 'court' }];
    });
    const { dig } = part(uniform.pavements, 0);
    expect([dig.basis, dig.measured.length, inches(dig.depth), inches(dig.soil)]).toEqual([
      'uniform',
      0,
      '14.25',
      '11.25',
    ]);
    expect(inches(part(uniform.pavements, 1).dig.depth)).toBe('10.75');
    expect(
      uniform.working.some(({ title }) => title === 'Depth of dig below the existing surface'),
    ).toBe(true);
  });

  test('a string of its own height moves every depth below it', () => {
    const higher = changed((job) => {
      part(job.stringLines, 0).height = '24 in';
    });
    const kerb = part(higher.stringLines, 0);
    expect(inches(part(kerb.stakes, 0).subgrade)).toBe('36.25');
    expect(inches(part(kerb.surfaces, 2).belowString)).toBe('28.25');
    // the other string of the court stays as it was
    expect(inches(part(part(higher.stringLines, 1).stakes, 0).subgrade)).toBe('30.25');
    // along the kerb the ground lies 6 in higher under the string, and 3 in higher in the mean
    const by = (one: JobPlan) => part(one.pavements, 0).dig.depth;
    expect(
      by(higher)
        .minus(by(changed(() => undefined)))
        .toNumber('in'),
    ).toBeCloseTo(3, 9);
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
      part(job.pavements, 0).edges = ['open', 'restraint', 'open', 'building'];
    });
    expect(part(kerbed.pavements, 0).areas.base.to('ft2').toString()).toBe('576'); // 36 x 16
  });

  test('base and sub-base are placed from the bottom up', () => {
    const deep = changed((job) => {
      part(job.pavements, 0).layers = [
        { kind: 'paver', thickness: '80 mm' },
        { kind: 'bedding', thickness: '25 mm', material: 'sand' },
        { kind: 'base', thickness: '100 mm', material: 'stone' },
        { kind: 'sub-base', thickness: '200 mm', material: 'stone' },
      ];
    });
    const { lifts, extension, stones, areas } = part(deep.pavements, 0);
    expect(
      lifts.map(({ layer, aboveSubgrade }) => `${layer} ${aboveSubgrade.to('mm').toString()}`),
    ).toEqual(['sub-base 100', 'sub-base 200', 'base 300']);
    expect(extension.to('mm').toString()).toBe('300');
    expect(
      stones.map(({ order }) => order.compacted.volume.dividedBy(areas.base).to('mm').toString()),
    ).toEqual(['100', '200']);
  });

  test('thin layers, flat falls, fills and stakes in the way are pointed out', () => {
    const poor = changed((job) => {
      part(job.pavements, 0).layers = [
        { kind: 'paver', thickness: '50 mm', material: 'paver' },
        { kind: 'bedding', thickness: '2 in', material: 'sand' },
        { kind: 'base', thickness: '5 in', material: 'stone' },
      ];
      part(job.pavements, 1).layers = [
        { kind: 'paver', thickness: '60 mm', material: 'paver' },
        { kind: 'bedding', thickness: '25 mm', material: 'sand' },
        { kind: 'base', thickness: '100 mm', material: 'stone' },
      ];
      part(job.pavements, 0).subgrade = 'clay';
      part(job.pavements, 1).subgrade = 'clay';
      Object.assign(part(job.stakes, 1), { finish: '99.90 ft', ground: '30 in' });
      Object.assign(part(job.stakes, 0), { y: '-0.5 ft' });
      Object.assign(part(job.stakes, 3), { y: '-0.5 ft' });
      part(job.stringLines, 2).stakes.splice(2);
      // 185 mm of layers and 1 1/2 in make 8.78 in of dig
      job.oldPaving = [{ material: 'concrete', thickness: '10 in', pavement: 'terrace' }];
    });
    expect(warned(poor)).toEqual(
      expect.arrayContaining([
        'PAVER_BELOW_MINIMUM',
        'BEDDING_OFF_NOMINAL',
        'BASE_BELOW_MINIMUM',
        'BASE_BELOW_PRACTICE',
        'OLD_PAVING_DEEPER_THAN_DIG',
        'STAKE_OUT_OF_LINE',
        'UNIT_SHAPE',
        'FALL_TOO_SMALL',
        'FILL_NEEDED',
        'LINE_NOT_CHECKED',
        'STAKE_IN_DIG',
      ]),
    );
    const dug = warned(changed(() => undefined));
    expect(dug.filter((code) => /PAVER|BED|BASE|OLD|FALL|FILL|UNIT|STAKE/.test(code))).toEqual([]);
  });

  test('metric minimums pass though the inch figures stand a little higher', () => {
    const metric = changed((job) => {
      part(job.pavements, 1).subgrade = 'well-drained';
      part(job.pavements, 1).layers = [
        { kind: 'paver', thickness: '60 mm', material: 'paver' },
        { kind: 'bedding', thickness: '25 mm', material: 'sand' },
        { kind: 'base', thickness: '100 mm', material: 'stone' },
      ];
    });
    expect(metric.warnings.filter(({ subject }) => subject === 'Terrace')).toEqual([]);
  });

  test('three stakes that nobody holds are ambiguous', () => {
    const unsure = changed((job) => {
      part(job.stringLines, 2).reference = 'best-fit';
      Object.assign(part(job.stakes, 9), { x: '19 ft 2 in' });
    });
    const line = part(unsure.stringLines, 2);
    expect(line.ambiguous).toBe(true);
    expect(line.moves.map(({ id }) => id)).toEqual(['G1', 'G2', 'G3']);
    expect(warned(unsure).filter((code) => code === 'LINE_AMBIGUOUS')).toHaveLength(3);
  });

  test('nothing to cart away is no load, not a fault', () => {
    const filled = changed((job) => {
      for (const one of job.stakes) one.ground = '36 in';
    });
    expect(filled.totals.spoil).toBeNull();
    expect(filled.totals.oldPaving).toEqual([]);
    expect(part(filled.pavements, 0).spoil.bank.volume.isZero()).toBe(true);
    expect(filled.cautions.map(({ id }) => id)).not.toContain('dust');
    // 36 in below the strings, which hang 30 1/4 in above the subgrade: 5 3/4 in to fill
    expect(part(filled.pavements, 0).earth.fill.volume.toNumber('ft3')).toBeCloseTo(
      (592 * 5.75) / 12,
      6,
    );
  });

  test('a job without a paver size orders no pavers', () => {
    const bare = changed((job) => {
      delete job.materials.pavers;
      for (const { layers } of job.pavements) delete part(layers, 0).material;
    });
    expect(bare.totals.pavers).toEqual([]);
    expect(part(bare.pavements, 0).pavers).toBeNull();
  });
});

test('tryPlanJob returns the plan or the faults', () => {
  const good = tryPlanJob(cedarCourtFile());
  expect(good.ok && good.value.name).toBe('Cedar Court 27 (an invented site)');
  const bad = tryPlanJob({ version: 1 });
  expect(bad.ok ? [] : bad.errors.length).toBeGreaterThan(5);
});
