import { describe, expect, test } from 'vitest';
import { length, type FieldPath } from 'settline';
import {
  planJob,
  planUncertainty,
  readJob,
  renderUncertainty,
  type JobInput,
  type PlanUncertainty,
} from 'settline/job';
import { cedarCourtJob } from '../cedar-court.js';
import { expectFault } from '../faults.js';
import { edit, valueAt } from '../job-edits.js';
import { plainCourtAlone } from '../plain-court.js';
import { DEPTH } from '../runs.js';
import { slateWharfJob } from '../slate-wharf.js';
import { readingsIn } from '../../src/job/uncertainty/readings-in.js';

const cedar = planJob(cedarCourtJob());
const court = planJob(readJob(plainCourtAlone()));

const sigmaOf = ({ figures }: PlanUncertainty, subject: string, what: string): number =>
  figures
    .find((figure) => figure.subject === subject && figure.what === what)
    ?.standard.si.toNumber() ?? 0;

const inches = (value: number) => length(value, 'in').si.toNumber();

describe('planUncertainty', () => {
  const byString = planUncertainty(cedar, { string: '1/8 in' });

  test('the dig at a stake has the errors of the string and of the reading', () => {
    expect(sigmaOf(byString, 'stake K1', 'dig depth')).toBeCloseTo(inches(Math.SQRT2 / 8), 12);
    expect(byString.figures.every(({ what }) => what !== 'out of line')).toBe(true);
  });

  test('a middle stake is out of line by its own error and half of those of the ends', () => {
    const byTape = planUncertainty(cedar, { tape: '1/4 in' });
    // K3 stands half way between K1 and K5 and a little more: 30 ft of 46
    const share = 30 / 46;
    const factor = Math.hypot(1, share, 1 - share);
    expect(sigmaOf(byTape, 'stake K3', 'out of line')).toBeCloseTo(inches(factor / 4), 9);
    expect(sigmaOf(byTape, 'stake K1', 'out of line')).toBe(0);
    expect(byTape.readings).toBe(2 * cedar.job.stakes.length);
  });

  test('a slope has the errors of the two levels over the run', () => {
    const byRod = planUncertainty(cedar, { rod: '2 mm' });
    const run = cedar.stringLines[0]?.slopes[2]?.run.si.toNumber() ?? Number.NaN;
    const expected = (Math.SQRT2 * 0.002) / run;
    expect(sigmaOf(byRod, 'K3 to K4', 'slope along the string')).toBeCloseTo(expected, 9);
  });

  test('errors add up as squares, twice the error is twice the uncertainty', () => {
    const all = planUncertainty(court, { string: '1/8 in', rod: '2 mm', tape: '1/4 in' });
    const strings = planUncertainty(court, { string: '1/8 in' });
    const others = planUncertainty(court, { rod: '2 mm', tape: '1/4 in' });
    for (const { subject, what, standard } of all.figures) {
      const parts = [strings, others].map((one) => sigmaOf(one, subject, what));
      expect(standard.si.toNumber()).toBeCloseTo(Math.hypot(...parts), 12);
    }
    const twice = planUncertainty(court, { string: '1/4 in' });
    for (const { subject, what, standard } of strings.figures) {
      const ratio = sigmaOf(twice, subject, what) / standard.si.toNumber();
      expect(ratio).toBeCloseTo(2, 4);
    }
  });

  test('paths lead to the figures; the range is the coverage factor times the deviation', () => {
    const wide = planUncertainty(court, { string: '1/8 in', coverage: 3 });
    expect(wide.coverage).toBe(3);
    expect(wide.figures.length).toBeGreaterThan(10);
    for (const { path, value, standard, expanded } of wide.figures) {
      expect(valueAt(court, path)).toBe(value);
      expect(expanded.si.toNumber()).toBeCloseTo(3 * standard.si.toNumber(), 12);
    }
  });

  test('spot heights and rows of a level book are readings of the rod', () => {
    const wharf = slateWharfJob();
    const kinds = readingsIn(planJob(wharf).job).filter(({ kind }) => kind === 'rod');
    const first = new Set(kinds.map(({ path }) => path[0]));
    expect([...first]).toEqual(expect.arrayContaining(['existingLevels', 'levelBook']));
  });

  test('a Monte Carlo run of the planner finds the same deviations', () => {
    const plan = court;
    const known = { string: 0.003, rod: 0.002, tape: 0.004 };
    const first = planUncertainty(plan, {
      string: { value: known.string, unit: 'm' },
      rod: { value: known.rod, unit: 'm' },
      tape: { value: known.tape, unit: 'm' },
    });
    const runs = 300 * DEPTH;
    const random = gaussian(7);
    const sums = first.figures.map(() => 0);
    for (let run = 0; run < runs; run += 1) {
      const drawn = planJob(withErrors(plan.job, known, random));
      first.figures.forEach(({ path, value }, index) => {
        const got = valueAt(drawn, path) as typeof value;
        sums[index] = (sums[index] ?? 0) + (got.si.toNumber() - value.si.toNumber()) ** 2;
      });
    }
    first.figures.forEach(({ standard, subject, what }, index) => {
      const found = Math.sqrt((sums[index] ?? Number.NaN) / runs);
      const ratio = found / standard.si.toNumber();
      // a deviation of n draws is good to 1 / sqrt(2 n)
      expect(Math.abs(ratio - 1), `${subject}: ${what}`).toBeLessThan(4.5 / Math.sqrt(2 * runs));
    });
    expect(first.figures.length).toBeGreaterThan(15);
  });

  test('refusals', () => {
    expectFault(() => planUncertainty(cedar, {}), 'REQUIRED');
    expectFault(() => planUncertainty(cedar, { rod: '0 mm' }), 'REQUIRED');
    expectFault(() => planUncertainty(cedar, { rod: '-1 mm' }), 'NEGATIVE');
    expectFault(() => planUncertainty(cedar, { rod: '2 mm', coverage: 6 }), 'OUT_OF_RANGE');
    expectFault(() => planUncertainty({} as typeof cedar, { rod: '2 mm' }), 'PLAN_INVALID');
    expectFault(() => renderUncertainty({ ...byString }, { system: 'us' }), 'WRONG_TYPE');
  });
});

describe('renderUncertainty', () => {
  test('names each subject once and gives each figure its range', () => {
    const uncertainty = planUncertainty(cedar, { string: '1/8 in' });
    const text = renderUncertainty(uncertainty, { system: 'us', width: 60 });
    expect(text.split('\n').filter((line) => line === 'stake K1')).toHaveLength(1);
    expect(text).toMatch(/dig depth +19 3\/4 in +\+- 0\.35 in/);
    const metric = renderUncertainty(uncertainty, { system: 'metric', width: 60 });
    expect(metric).toMatch(/dig depth +502 mm +\+- 9\.0 mm/);
    expect(metric).toMatch(/cut +\d+\.\d+ m3 +\+- \d+\.\d{3} m3/);
  });
});

type Known = Readonly<Record<'string' | 'rod' | 'tape', number>>;

/** The job with an error in each reading. */
function withErrors(job: JobInput, known: Known, random: () => number): JobInput {
  const file = {
    ...job,
    stakes: job.stakes.map((stake) => ({ ...stake })),
    stringLines: job.stringLines.map((line) => ({ ...line })),
  };
  const read = (path: FieldPath, sigma: number) =>
    edit(file, path, (holder, key) => {
      const was = holder[key] as ReturnType<typeof length> | undefined;
      if (was !== undefined) holder[key] = was.plus(length(sigma * random(), 'm'));
    });
  read(['stringHeight'], known.string);
  file.stringLines.forEach((_, line) => read(['stringLines', line, 'height'], known.string));
  file.stakes.forEach((_, stake) => {
    read(['stakes', stake, 'ground'], known.string);
    read(['stakes', stake, 'finish'], known.rod);
    read(['stakes', stake, 'x'], known.tape);
    read(['stakes', stake, 'y'], known.tape);
  });
  return file;
}

/** Normal random numbers from a seed. */
function gaussian(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 1) / 4_294_967_297;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
