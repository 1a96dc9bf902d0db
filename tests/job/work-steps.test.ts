import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attempt } from 'settline';
import { machineTime, plateTime } from 'settline/haul';
import {
  checkJob,
  describeWorkStep,
  materialList,
  planFromJSON,
  planJob,
  readJob,
  renderJobSheet,
  renderWorkSteps,
  workSteps,
  type JobPlan,
  type MaterialLine,
  type WorkAmount,
  type WorkStep,
} from 'settline/job';
import { isQuantity, type AnyQuantity, type Length, type Volume } from 'settline/units';
import millGarth from '../../examples/mill-garth.json' with { type: 'json' };
import { cedarCourtFile } from '../cedar-court.js';
import type { LooseJob } from '../loose-job.js';
import { plainCourtAlone } from '../plain-court.js';
import { runs } from '../runs.js';
import { slateWharfFile } from '../slate-wharf.js';

const millGarthFile = (): LooseJob => structuredClone(millGarth);
const planOf = (file: unknown): JobPlan => planJob(readJob(file));
const stepsOf = (file: unknown) => workSteps(planOf(file));

function stepWith(steps: readonly WorkStep[], id: string): WorkStep {
  const found = steps.find((one) => one.id === id);
  if (found === undefined) expect.unreachable(`no step ${id}`);
  return found;
}

/** The court of 36 ft by 14 ft, its dig and base 37 ft by 16 ft, with the rates of a crew. */
const RATES = {
  machine: { bucket: '6 ft3', fillFactor: 0.9, cycle: '24 s', efficiency: 0.75 },
  byHand: '14 ft3/h',
  plate: {
    width: '20 in',
    overlap: 0.1,
    speed: '60 ft/min',
    efficiency: 0.8,
    passes: 4,
    paverPasses: 2,
  },
  haul: { loadTime: '18 min', haulTime: '14 min', dumpTime: '6 min', returnTime: '12 min' },
  delivery: '45 min',
};

const ratedCourt = (rates: object = RATES): LooseJob => ({ ...plainCourtAlone(), rates });

describe('the plain court by pencil', () => {
  const plan = planOf(ratedCourt());
  const steps = workSteps(plan);

  test('runs from locating lines to hand-over', () => {
    expect(steps.map(({ id }) => id)).toEqual([
      'locate-lines',
      'set-strings',
      'mark-dig/court',
      'dig/court',
      'subgrade/court',
      'lift-1/court',
      'lift-2/court',
      'base-check/court',
      'edge-restraint/court',
      'bedding/court',
      'pavers/court',
      'cuts/court',
      'compact-pavers/court',
      'joint-sand/court',
      'hand-over/court',
    ]);
  });

  test('two lifts of 4 in, each spread 4 / 0.78 = 5.128 in: heights below the strings at 18 in', () => {
    const inches = (id: string) =>
      stepWith(steps, id).heights.map(({ string, surface, placed, finished }) => [
        string,
        surface,
        placed?.toNumber('in').toFixed(3) ?? null,
        finished.toNumber('in'),
      ]);
    expect(inches('subgrade/court')).toEqual([
      ['kerb', 'subgrade', null, 30.25],
      ['fence', 'subgrade', null, 30.25],
    ]);
    expect(inches('lift-1/court')[0]).toEqual(['kerb', 'lift 1 top', '25.122', 26.25]);
    expect(inches('lift-2/court')[0]).toEqual(['kerb', 'base top', '21.122', 22.25]);
    expect(inches('base-check/court')[0]).toEqual(['kerb', 'base top', null, 22.25]);
    expect(inches('bedding/court')[0]).toEqual(['kerb', 'bedding top', null, 21.25]);
    expect(inches('hand-over/court')[0]).toEqual(['kerb', 'finished grade', null, 18]);
  });

  test('592 ft2 of base: 14.617 yd3 compacted, 19.490 yd3 loose, 28.58 tons, half of it a lift', () => {
    const [first, second] = ['lift-1/court', 'lift-2/court'].map(
      (id) => stepWith(steps, id).amounts[0],
    );
    expect(first?.inPlace?.toNumber('yd3').toFixed(3)).toBe((14.61728 / 2).toFixed(3));
    expect(first?.loose?.toNumber('yd3').toFixed(3)).toBe((19.48971 / 2).toFixed(3));
    expect(first?.mass?.toNumber('ton-us').toFixed(2)).toBe((28.5766 / 2).toFixed(2));
    // 15 tons a load: 1.905 loads in all, so lift 2 begins with what is left of load 1
    expect(first?.loads).toEqual({ first: 1, last: 1, count: 1, of: 2 });
    expect(second?.loads).toEqual({ first: 1, last: 2, count: 1, of: 2 });
    expect(first?.orderLine).toBe(1);
    expect(stepWith(steps, 'bedding/court').amounts[0]?.orderLine).toBe(2);
    expect(stepWith(steps, 'pavers/court').amounts[0]?.orderLine).toBe(3);
  });

  test('hours by the rates: machine, plate, deliveries and haul', () => {
    const { machine, trucks, trucksNeeded, byHand } = stepWith(steps, 'dig/court').hours;
    // 6 x 0.9 ft3 in 24 s, three quarters of the hour: 607.5 ft3 of loose soil an hour
    const bank = plan.totals.spoil?.bank.toNumber('ft3') ?? 0;
    expect(machine?.toNumber('h')).toBeCloseTo((bank * 1.12) / 607.5, 9);
    expect(trucks?.toNumber('min')).toBe(50 * (plan.totals.spoil?.loads.count ?? 0));
    expect([trucksNeeded, byHand]).toEqual([3, null]);
    // a lane of 18 in at 60 ft/min: 90 ft2/min, four fifths of the time
    const lift = stepWith(steps, 'lift-1/court').hours;
    expect(lift.plate?.toNumber('min')).toBeCloseTo((592 * 4) / 72, 9);
    expect(lift.trucks?.toNumber('min')).toBe(45);
    expect(stepWith(steps, 'compact-pavers/court').hours.plate?.toNumber('min')).toBeCloseTo(
      (504 * 2) / 72,
      9,
    );
    expect(stepWith(steps, 'subgrade/court').hours.plate).toBeNull();
    expect(stepWith(steps, 'joint-sand/court').hours.plate).toBeNull();
  });

  test('the functions for hours say the same', () => {
    const bank = plan.totals.spoil?.bank;
    if (bank === undefined) expect.unreachable();
    const { machine, plate } = RATES;
    const dug = machineTime({ bank, loosePerBank: 1.12, ...machine });
    expect(stepWith(steps, 'dig/court').hours.machine?.equals(dug.time)).toBe(true);
    const { width, overlap, speed, efficiency, passes } = plate;
    const plated = plateTime({
      area: '592 ft2',
      plateWidth: width,
      overlap,
      speed,
      efficiency,
      passes,
      lifts: 1,
    });
    expect(stepWith(steps, 'lift-2/court').hours.plate?.toNumber('s')).toBeCloseTo(
      plated.time.toNumber('s'),
      6,
    );
  });

  test('a step that takes the rest of a load has no truck of its own', () => {
    const delivered = stepsOf(slateWharfFile()).flatMap(({ kind, amounts, hours }) =>
      kind === 'lift'
        ? [[amounts[0]?.loads?.count ?? 0, hours.trucks?.toNumber('min') ?? null]]
        : [],
    );
    expect(delivered.map(([count]) => count)).toContain(0);
    for (const [count = 0, minutes] of delivered) {
      expect(minutes).toBe(count === 0 ? null : (count ?? 0) * 50);
    }
  });

  test('without rates there are no hours', () => {
    for (const { hours } of stepsOf(plainCourtAlone())) {
      expect(Object.values(hours)).toEqual([null, null, null, null, null]);
    }
  });

  test('known settlement: the screed stands higher, and so do the pavers before the plate', () => {
    const job = ratedCourt();
    Object.assign(job.materials.sands[0] ?? {}, { settlement: '3/8 in' });
    const settled = stepsOf(job);
    const bedding = stepWith(settled, 'bedding/court');
    expect(bedding.heights[0]?.placed?.toNumber('in')).toBe(20.875);
    const rails = bedding.figures.find(({ code }) => code === 'rails')?.value;
    expect((rails as Length).toNumber('in')).toBe(1.375);
    expect(stepWith(settled, 'pavers/court').heights[0]?.placed?.toNumber('in')).toBe(17.625);
    expect(stepWith(settled, 'hand-over/court').heights[0]?.placed).toBeNull();
  });
});

describe('what must be true first', () => {
  const plan = planOf(slateWharfFile());
  const steps = workSteps(plan);

  test('each step waits for the one before it on its pavement, and no step for a later one', () => {
    const place = new Map(steps.map(({ id }, index) => [id, index]));
    expect(place.size).toBe(steps.length);
    steps.slice(1).forEach(({ before, pavement }, index) => {
      const waits = before.flatMap(({ step }) => (step === null ? [] : [step]));
      expect(waits).toHaveLength(1);
      for (const id of waits) {
        expect(place.get(id)).toBeLessThan(index + 1);
        expect([pavement, null]).toContain(steps.find((one) => one.id === id)?.pavement);
      }
    });
  });

  test('a step that was signed is named as signed', () => {
    for (const { before } of steps) {
      for (const { code, step } of before) {
        if (step === null) continue;
        const isHeld = stepWith(steps, step).holdPoints.length > 0;
        expect(code).toBe(isHeld ? 'SIGNED' : 'STEP_DONE');
      }
    }
  });

  test('the surface below has the name that checkJob takes', () => {
    const surfaces = steps.flatMap((step) =>
      [...step.before, ...step.holdPoints].flatMap(({ surface }) =>
        surface === null ? [] : [{ surface, pavement: step.pavement }],
      ),
    );
    expect([...new Set(surfaces.map(({ surface }) => surface))].sort()).toEqual([
      'base top',
      'bedding top',
      'finished grade',
      'lift 1 top',
      'lift 2 top',
      'subgrade',
    ]);
    const tolerance = { over: '1 in', under: '1 in' };
    const tolerances = {
      subgrade: tolerance,
      lift: tolerance,
      base: tolerance,
      bedding: tolerance,
      pavers: tolerance,
    };
    for (const { surface, pavement } of surfaces) {
      const line = plan.stringLines.find((one) => one.pavement === pavement);
      const readings = [{ stake: line?.stakes[0]?.id ?? '', surface, belowString: '20 in' }];
      const outcome = attempt(() => checkJob(plan, { readings, tolerances }));
      expect(outcome.ok ? [] : outcome.errors).toEqual([]);
    }
  });

  test('lift by lift up to the bedding, each on the surface below', () => {
    const below = (id: string) =>
      stepWith(steps, id).before.flatMap(({ surface }) => surface ?? []);
    expect(below('geotextile/apron')).toEqual(['subgrade']);
    expect(below('lift-1/apron')).toEqual(['subgrade']);
    expect(below('lift-2/apron')).toEqual(['lift 1 top']);
    expect(below('lift-3/apron')).toEqual(['lift 2 top']);
    expect(below('bedding/apron')).toEqual(['base top']);
    expect(below('pavers/apron')).toEqual(['bedding top']);
  });

  test('lines, trees and a competent person before the dig', () => {
    const codes = (id: string) => stepWith(steps, id).before.map(({ code }) => code);
    expect(codes('mark-dig/apron')).toContain('TREES_AGREED');
    expect(codes('mark-dig/path')).not.toContain('TREES_AGREED');
    expect(codes('dig/apron')).toEqual([
      'STEP_DONE',
      'LINES_OPENED',
      'LINE_OWNER_AGREES',
      'DIG_IS_SAFE',
    ]);
    // the line that lies too high is not in this dig
    expect(codes('dig/path')).toEqual(['STEP_DONE', 'LINES_OPENED', 'DIG_IS_SAFE']);
  });

  test('a line that was found no deeper than the dig goes stops the dig, cover asked for or not', () => {
    const withLine = (found: string) =>
      stepWith(
        stepsOf({
          ...plainCourtAlone(),
          utilities: [
            {
              id: 'water',
              path: [
                { x: '10 ft', y: '-20 ft' },
                { x: '10 ft', y: '30 ft' },
              ],
              width: '1 in',
              tolerance: '2 ft',
              found,
            },
          ],
        }),
        'dig/court',
      ).before.map(({ code }) => code);
    // the deepest dig at a stake: ground 17 1/2 in below a string 30 1/4 in over the subgrade
    expect(withLine('12 3/4 in')).toContain('LINE_OWNER_AGREES');
    expect(withLine('13 in')).not.toContain('LINE_OWNER_AGREES');
    expect(withLine('13 in')).toContain('LINES_OPENED');
  });

  test('machine and hands share the soil of the dig', () => {
    const { hours, figures, amounts } = stepWith(steps, 'dig/apron');
    const byHand = figures.find(({ code }) => code === 'hand-dig-volume')?.value;
    const feet = (byHand as Volume).toNumber('ft3');
    expect(hours.byHand?.toNumber('h')).toBeCloseTo(feet / 14, 9);
    const rest = (amounts[0]?.inPlace?.toNumber('ft3') ?? 0) - feet;
    const swell = Number(plan.job.soil.loosePerBank);
    expect(hours.machine?.toNumber('h')).toBeCloseTo((rest * swell) / 607.5, 9);
  });
});

describe('what someone signs', () => {
  test('lines, dig, subgrade, each layer and final levels', () => {
    const held = stepsOf(cedarCourtFile())
      .filter(({ pavement }) => pavement === null || pavement === 'court')
      .flatMap(({ id, holdPoints }) => holdPoints.map(({ code, surface }) => [id, code, surface]));
    expect(held).toEqual([
      ['locate-lines', 'lines-located', null],
      ['dig/court', 'dig-checked', null],
      ['subgrade/court', 'subgrade-accepted', 'subgrade'],
      ['lift-2/court', 'layer-accepted', 'sub-base top'],
      ['base-check/court', 'layer-accepted', 'base top'],
      ['hand-over/court', 'final-levels', 'finished grade'],
    ]);
  });

  test('a competent person signs the open dig', () => {
    expect(stepWith(stepsOf(plainCourtAlone()), 'dig/court').holdPoints[0]?.who).toBe(
      'competent person',
    );
  });

  test('cautions where work can hurt', () => {
    const steps = stepsOf(slateWharfFile());
    const ids = (id: string) => stepWith(steps, id).cautions.map((one) => one.id);
    expect(ids('locate-lines')).toEqual(['utilities']);
    expect(ids('mark-dig/apron')).toEqual(['trees']);
    expect(ids('strip/apron')).toEqual(['dust', 'utilities']);
    expect(ids('dig/apron')).toEqual(['utilities', 'excavation', 'structure']);
    expect(ids('pavers/apron')).toEqual(['handling']);
    expect(ids('cuts/apron')).toEqual(['cutting']);
    expect(ids('hand-over/apron')).toEqual(['drainage']);
  });
});

describe('steps that a site may need or not', () => {
  const lowPath = (): LooseJob => {
    const job = millGarthFile();
    Object.assign(job.pavements[1] ?? {}, { existingAboveFinish: '-500 mm' });
    return job;
  };

  test('ground that is low all over is filled, not dug', () => {
    const steps = stepsOf(lowPath());
    expect(steps.some(({ id }) => id === 'dig/path')).toBe(false);
    const fill = stepWith(steps, 'fill/path');
    expect(fill.amounts[0]?.layer).toBe('fill');
    expect(fill.figures.find(({ code }) => code === 'maximum-lift')?.value).toMatchObject({
      value: 0.1,
    });
    expect(stepWith(steps, 'subgrade/path').before[0]?.step).toBe('fill/path');
  });

  test('sloped sides are set back at the top', () => {
    const job = plainCourtAlone();
    Object.assign(job.pavements[0] ?? {}, { batter: 1 });
    const { figures } = stepWith(stepsOf(job), 'dig/court');
    expect(figures.filter(({ code }) => code === 'slope-run').map(({ name }) => name)).toEqual([
      'edge 1: top of slope set back',
      'edge 2: top of slope set back',
      'edge 3: top of slope set back',
    ]);
    const plan = planOf(job);
    const dig = plan.pavements[0]?.dig.depth.toNumber('in') ?? 0;
    expect((figures[0]?.value as Length).toNumber('in')).toBeCloseTo(dig, 9);
  });

  test('no restraint where every edge is held already', () => {
    const job = plainCourtAlone();
    Object.assign(job.pavements[0] ?? {}, {
      edges: ['restraint', 'restraint', 'restraint', 'building'],
    });
    expect(stepsOf(job).some(({ kind }) => kind === 'edge-restraint')).toBe(false);
  });

  test('a border of its own paver takes its order out of the field', () => {
    const job = slateWharfFile();
    const [paver] = job.materials.pavers;
    job.materials.pavers.push({ ...paver, id: 'edge-unit', name: 'edge unit' });
    const [apron] = job.pavements;
    if (apron === undefined) expect.unreachable();
    Object.assign(apron, { border: { ...(apron['border'] as object), paver: 'edge-unit' } });
    const steps = stepsOf(job);
    const named = (id: string) => stepWith(steps, id).amounts.map(({ material }) => material);
    expect(named('border/apron')).toEqual(['edge-unit']);
    expect(named('pavers/apron')).not.toContain('edge-unit');
  });
});

// ---- every order, once

const amountsOf = (steps: readonly WorkStep[]): WorkAmount[] =>
  steps.flatMap(({ amounts }) => amounts);

/** Adds up what is there; `like` says of which kind. */
const added = (values: readonly (AnyQuantity | null | undefined)[], like: AnyQuantity): Volume =>
  values.reduce<Volume>(
    (sum, one) => (one === null || one === undefined ? sum : sum.plus(one as Volume)),
    (like as Volume).times(0),
  );

/** What steps place of a line of the order list, in its own measure. */
function placed(line: MaterialLine, amounts: readonly WorkAmount[]): AnyQuantity | number {
  const { measure, need } = line;
  if (!isQuantity(need)) return amounts.reduce((sum, { pieces }) => sum + (pieces ?? 0), 0);
  if (measure === 'loose-volume')
    return added(
      amounts.map(({ loose }) => loose?.volume),
      need,
    );
  if (measure === 'area')
    return added(
      amounts.map(({ area }) => area),
      need,
    );
  return added(
    amounts.map(({ mass }) => mass),
    need,
  );
}

const same = (a: AnyQuantity | number, b: AnyQuantity | number): boolean =>
  isQuantity(a) && isQuantity(b) ? (a as Volume).equals(b as Volume) : a === b;

/** Orders, spoil, old paving and loads of the steps against the totals of the plan. */
function expectWhole(plan: JobPlan): void {
  const amounts = amountsOf(workSteps(plan));
  materialList(plan).lines.forEach((line, index) => {
    const own = amounts.filter(({ orderLine }) => orderLine === index + 1);
    expect(
      own.every(({ kind, material }) => kind === line.kind && material === line.material),
    ).toBe(true);
    expect(same(placed(line, own), line.need), line.name).toBe(true);
    if (line.loads === null) return;
    expect(own.reduce((sum, { loads }) => sum + (loads?.count ?? 0), 0)).toBe(line.loads);
  });
  expect(
    amounts.every(({ action, orderLine }) => (action === 'place') === (orderLine !== null)),
  ).toBe(true);
  const { spoil, oldPaving } = plan.totals;
  const streams = [
    ...(spoil === null ? [] : [{ ...spoil, of: amounts.filter(({ kind }) => kind === 'soil') }]),
    ...oldPaving.map((old) => ({
      ...old,
      of: amounts.filter((one) => one.kind === 'old-paving' && one.material === old.material),
    })),
  ];
  for (const { loose, mass, loads, of } of streams) {
    expect(
      added(
        of.map((one) => one.loose?.volume),
        loose.volume,
      ).equals(loose.volume),
    ).toBe(true);
    expect(
      same(
        added(
          of.map((one) => one.mass),
          mass,
        ),
        mass,
      ),
    ).toBe(true);
    expect(of.reduce((sum, one) => sum + (one.loads?.count ?? 0), 0)).toBe(loads.count);
    expect(of.map((one) => one.loads?.last).at(-1)).toBe(loads.count);
  }
  expect(amounts.filter(({ kind }) => kind === 'soil').length > 0).toBe(spoil !== null);
}

describe('every order of the plan is in the steps once', () => {
  test.each([
    ['Cedar Court', cedarCourtFile()],
    ['Mill Garth', millGarthFile()],
    ['Slate Wharf', slateWharfFile()],
    ['the plain court', plainCourtAlone()],
  ])('%s', (_name, file) => {
    expectWhole(planOf(file));
  });

  test('whatever the truck, the lift and the ground', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(cedarCourtFile, millGarthFile, slateWharfFile),
        fc.integer({ min: 5, max: 200 }),
        fc.integer({ min: 5, max: 250 }),
        fc.integer({ min: 45, max: 400 }),
        fc.constantFrom('0 mm', '-150 mm', '-420 mm', '90 mm'),
        (file, box, payload, lift, above) => {
          const job = file();
          job.truck = { boxVolume: `${box / 10} m3`, payload: `${payload / 10} t` };
          for (const stone of job.materials.stones) Object.assign(stone, { maxLift: `${lift} mm` });
          Object.assign(job.pavements[1] ?? {}, { existingAboveFinish: above });
          expectWhole(planOf(job));
        },
      ),
      runs(20),
    );
  });

  test('loads follow each other without a gap', () => {
    const job = slateWharfFile();
    job.truck = { boxVolume: '2 m3', payload: '3 t' };
    const stone = amountsOf(stepsOf(job)).filter(({ kind }) => kind === 'stone');
    stone.slice(1).forEach(({ loads }, index) => {
      const before = stone[index]?.loads?.last ?? 0;
      expect([before, before + 1]).toContain(loads?.first);
      expect((loads?.last ?? 0) - before).toBe(loads?.count);
    });
    expect(stone.length).toBeGreaterThan(3);
  });
});

describe('in words', () => {
  const plan = planOf(slateWharfFile());

  test('a step says what is first, heights, amounts, hours, who signs, cautions', () => {
    const lift = stepWith(stepsOf(ratedCourt()), 'lift-2/court');
    expect(describeWorkStep(lift, { system: 'us' })).toEqual([
      'First: "Lift 1, base (Parking court)" is done.',
      'First: The check of the surface below passes at every stake: lift 1 top.',
      'Below string kerb, fence: spread loose to 21 1/8 in, base top 22 1/4 in.',
      'Passes: 4.',
      'Place crushed stone for base: 7.31 cu yd compacted, 9.74 cu yd loose, 14.3 short tons, loads 1 to 2 of 2 (load 1 is already there).',
      'Plate 33 min, trucks 45 min.',
      'Spread to the loose height, compact, then measure.',
      'Caution: Legal loads depend on the truck, its axles and the road. The truck operator and local law decide.',
    ]);
  });

  test('set-outs are rounded up to the step of the crew', () => {
    const job = plainCourtAlone();
    const line = (file: LooseJob, system: 'us' | 'metric') =>
      describeWorkStep(stepWith(stepsOf(file), 'mark-dig/court'), { system }).find((text) =>
        text.startsWith('Edge 1'),
      );
    expect(line(job, 'us')).toBe('Edge 1: dig line outside the paving: 12 in.');
    // 304.8 mm
    expect(line(job, 'metric')).toBe('Edge 1: dig line outside the paving: 305 mm.');
    expect(line({ ...job, setOutStep: '50 mm' }, 'metric')).toBe(
      'Edge 1: dig line outside the paving: 350 mm.',
    );
  });

  test('every step of every site has a sentence for each thing it says', () => {
    for (const step of workSteps(plan)) {
      const words = describeWorkStep(step, { system: 'metric' });
      for (const { note } of [...step.before, ...step.holdPoints]) {
        expect(words.some((text) => text.includes(note))).toBe(true);
      }
      for (const { text } of step.cautions) expect(words).toContain(`Caution: ${text}`);
      expect(words.join(' ')).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  test('the sheet numbers the steps, and the job sheet holds the same lines', () => {
    const sheet = renderWorkSteps(plan, { system: 'metric' });
    const steps = workSteps(plan);
    steps.forEach(({ title }, index) => {
      expect(sheet.replace(/\n +/g, ' ')).toContain(`${index + 1}. ${title}`);
    });
    expect(Math.max(...sheet.split('\n').map((line) => line.length))).toBeLessThanOrEqual(48);
    expect(renderJobSheet(plan, { system: 'metric' })).toContain(
      sheet.slice(sheet.indexOf('STEPS OF WORK')),
    );
  });

  test('a caution stands in full once, then by the number of its step', () => {
    const sheet = renderWorkSteps(plan, { system: 'metric', width: 120 });
    expect(sheet.split('Have buried lines located').length).toBe(2);
    expect(sheet).toContain('! utilities, see step 1.');
  });

  test('a step that is done is named by its number', () => {
    expect(renderWorkSteps(plan, { system: 'us' })).toContain('[ ] step 1 is done and signed');
  });
});

test('steps are frozen plain data, the same for a plan read back', () => {
  const steps = stepsOf(slateWharfFile());
  expect(Object.isFrozen(steps)).toBe(true);
  expect(Object.isFrozen(steps[5]?.amounts[0])).toBe(true);
  const saved: unknown = JSON.parse(JSON.stringify(planOf(slateWharfFile())));
  expect(workSteps(planFromJSON(saved))).toEqual(steps);
  expect(JSON.parse(JSON.stringify(steps))).toMatchObject(
    steps.map(({ id, before }) => ({ id, before })),
  );
});

test('what is no plan and no step is refused', () => {
  const plan = planOf(plainCourtAlone());
  expect(attempt(() => workSteps({ ...plan }))).toMatchObject({
    errors: [{ code: 'PLAN_INVALID' }],
  });
  const [step] = workSteps(plan);
  if (step === undefined) expect.unreachable();
  expect(attempt(() => describeWorkStep({ ...step }, { system: 'us' }))).toMatchObject({
    errors: [{ code: 'WRONG_TYPE' }],
  });
  expect(attempt(() => describeWorkStep(step, { system: 'us', wide: 1 } as never))).toMatchObject({
    errors: [{ code: 'UNKNOWN_FIELD' }],
  });
  expect(attempt(() => renderWorkSteps(plan, { system: 'us', width: 8 }))).toMatchObject({
    errors: [{ code: 'OUT_OF_RANGE' }],
  });
});

test.each([
  ['a rate with an unknown key', { plough: 3 }, 'UNKNOWN_FIELD', ['rates', 'plough']],
  ['a bare number for a flow', { byHand: 14 }, 'UNIT_MISSING', ['rates', 'byHand']],
  [
    'half a pass',
    { plate: { ...RATES.plate, passes: 2.5 } },
    'NOT_WHOLE',
    ['rates', 'plate', 'passes'],
  ],
  [
    'an efficiency over 1',
    { machine: { ...RATES.machine, efficiency: 50 } },
    'OUT_OF_RANGE',
    ['rates', 'machine', 'efficiency'],
  ],
  [
    'a haul without its loading',
    { haul: { haulTime: '5 min' } },
    'REQUIRED',
    ['rates', 'haul', 'loadTime'],
  ],
])('%s is refused', (_name, rates, code, path) => {
  const outcome = attempt(() => readJob(ratedCourt(rates)));
  expect(outcome.ok ? [] : outcome.errors).toEqual(
    expect.arrayContaining([expect.objectContaining({ code, path })]),
  );
});
