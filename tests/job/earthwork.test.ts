import { describe, expect, test } from 'vitest';
import { planFromJSON, planJob, renderJobSheet, tryPlanJob } from 'settline/job';
import { pathText } from 'settline';
import type { Area, Volume } from 'settline/units';
import { inMetric } from '../in-metric.js';
import type { Loose as Fields, LooseJob } from '../loose-job.js';
import { plainCourtAlone, plainFinish as finish } from '../plain-court.js';
import { planFile } from '../plan-file.js';

/** The plain court alone; dig 37 ft by 16 ft from the building at x = 0. */
const courtJob = (change: (job: LooseJob, court: Fields) => unknown): LooseJob => {
  const job = plainCourtAlone();
  const [court] = job.pavements;
  if (court === undefined) expect.unreachable();
  change(job, court);
  return job;
};

const spots = (...points: [number, number, number][]) => ({ unit: 'ft', points });
const yards = (volume: Volume | undefined) => volume?.toNumber('yd3');
const earthOf = (file: unknown) => planFile(file).pavements[0]?.earth;

const BUILD_UP = 12.25 / 12;
// the dig: x from 0 to 37, y from -1 to 15
const [LONG, WIDE] = [37, 16];

describe('earth between spot heights and the subgrade', () => {
  test('existing parallel to finished grade and 2 in above: one depth all over', () => {
    const above = 2 / 12;
    const job = courtJob((one) => {
      one['existingLevels'] = spots(
        [-5, -5, finish(-5) + above],
        [45, -5, finish(45) + above],
        [45, 20, finish(45) + above],
        [-5, 20, finish(-5) + above],
      );
    });
    const [court] = planFile(job).pavements;
    const earth = court?.earth;
    expect(earth?.finish).toBe('plane');
    expect(yards(earth?.cut.volume)).toBeCloseTo((LONG * WIDE * (BUILD_UP + above)) / 27, 9);
    expect(earth?.fill.volume.isZero()).toBe(true);
    expect(earth?.uncovered.isZero()).toBe(true);
    expect(court?.dig.basis).toBe('spot-heights');
    expect(court?.dig.depth.toNumber('in')).toBeCloseTo(14.25, 9);
    expect(yards(court?.spoil.bank.volume)).toBeCloseTo((LONG * WIDE * (BUILD_UP + above)) / 27, 9);
    // the ground at the stakes makes it 12 1/6 in: (12 7/24 along the kerb + 12 1/24 at the fence) / 2
    const byStakes = planFile(courtJob(() => undefined)).pavements[0];
    expect(byStakes?.dig.basis).toBe('stake-levels');
    expect(byStakes?.dig.depth.toNumber('in')).toBeCloseTo(73 / 6, 9);
    expect(yards(byStakes?.earth.cut.volume)).toBeCloseTo((LONG * WIDE * 73) / 72 / 27, 9);
  });

  test('a wedge: cut and fill split where existing and subgrade meet', () => {
    // existing runs from 1 ft above the subgrade at x = 0 to 1 ft below it at x = 37
    const job = courtJob((one) => {
      const level = (x: number) => finish(x) - BUILD_UP + 1 - (2 * x) / LONG;
      one['existingLevels'] = spots(
        [-5, -5, level(-5)],
        [45, -5, level(45)],
        [45, 20, level(45)],
        [-5, 20, level(-5)],
      );
    });
    const plan = planFile(job);
    const [court] = plan.pavements;
    const earth = court?.earth;
    // triangles 18.5 ft long and 1 ft high
    const half = (WIDE * (LONG / 2) * 1) / 2 / 27;
    expect(yards(earth?.cut.volume)).toBeCloseTo(half, 8);
    expect(yards(earth?.fill.volume)).toBeCloseTo(half, 8);
    expect(earth?.cutArea?.toNumber('ft2')).toBeCloseTo((WIDE * LONG) / 2, 7);
    expect(earth?.deepestFill?.depth.toNumber('ft')).toBeCloseTo(1, 9);
    expect(earth?.deepestFill?.x.toNumber('ft')).toBeCloseTo(37, 9);
    expect(earth?.deepestCut?.x.toNumber('ft')).toBeCloseTo(0, 9);
    expect(court?.dig.depth.toNumber('ft')).toBeCloseTo(0, 9);
    expect(plan.warnings.map(({ code }) => code)).toContain('LOW_GROUND');
    const sheet = renderJobSheet(plan, { system: 'us' });
    expect(sheet).toMatch(/fill, compacted +5\.48 cu yd/);
    expect(sheet).toMatch(/below\s+subgrade,\s+by\s+up\s+to\s+12\s+in/);
  });

  test('old paving in the dig is taken off the cut', () => {
    const withAsphalt = (oldPaving: readonly Fields[]) =>
      planFile(
        courtJob((one) => {
          one['oldPaving'] = oldPaving;
          one['existingLevels'] = spots([-5, -5, 101], [45, -5, 101], [45, 20, 101], [-5, 20, 101]);
        }),
      ).pavements[0];
    const bare = withAsphalt([]);
    const court = withAsphalt([{ material: 'asphalt', thickness: '3 in', pavement: 'court' }]);
    // a quarter of a foot all over the dig
    expect(yards(court?.earth.cut.volume)).toBeCloseTo(
      (yards(bare?.earth.cut.volume) ?? 0) - (LONG * WIDE * 0.25) / 27,
      9,
    );
    expect(court?.spoil.bank).toEqual(court?.earth.cut);
    expect(court?.dig.depth).toEqual(bare?.dig.depth);
    expect(court?.dig.soil.toNumber('in')).toBeCloseTo(
      (court?.dig.depth.toNumber('in') ?? 0) - 3,
      9,
    );
  });

  test('finished levels as spot heights, a warped grade and a bent line', () => {
    const flat = spots([-5, -5, 101], [45, -5, 101], [45, 20, 101], [-5, 20, 101]);
    const withFinish = (change: (drive: Fields) => unknown) =>
      earthOf(
        courtJob((job, court) => {
          job['existingLevels'] = flat;
          for (const stake of job.stakes) delete stake['finish'];
          change(court);
        }),
      );
    const depth = (level: number) => (LONG * WIDE * (101 - level + BUILD_UP)) / 27;
    const spotted = withFinish((court) => {
      court['finishedLevels'] = spots([-5, -5, 99], [45, -5, 99], [45, 20, 99], [-5, 20, 99]);
    });
    expect(spotted?.finish).toBe('spot-heights');
    expect(yards(spotted?.cut.volume)).toBeCloseTo(depth(99), 8);
    const corner = (x: number, y: number, elevation: string) => ({
      x: `${x} ft`,
      y: `${y} ft`,
      elevation,
    });
    const warped = withFinish((court) => {
      court['grade'] = {
        kind: 'warped',
        levels: [
          corner(0, -1, '100 ft'),
          corner(37, -1, '99 ft'),
          corner(37, 15, '99.4 ft'),
          corner(0, 15, '100 ft'),
        ],
      };
    });
    expect(warped?.finish).toBe('sampled');
    // the mean of the corners, off by less than twist / 6900 over the area
    expect(Math.abs((yards(warped?.cut.volume) ?? 0) - depth(99.6))).toBeLessThan(
      ((0.4 / 6900) * LONG * WIDE) / 27,
    );
    const line = withFinish((court) => {
      court['grade'] = {
        kind: 'line',
        levels: [corner(0, 7, '100 ft'), corner(18.5, 7, '99.6 ft'), corner(37, 7, '99 ft')],
      };
    });
    // 18.5 ft is a corner of the grid: exact
    const mean = ((100 + 99.6) / 2 + (99.6 + 99) / 2) / 2;
    expect(yards(line?.cut.volume)).toBeCloseTo(depth(mean), 8);
    const plane = withFinish((court) => {
      court['grade'] = {
        kind: 'plane',
        levels: [corner(0, 0, '100 ft'), corner(37, 0, '99 ft'), corner(0, 15, '100 ft')],
      };
    });
    expect(plane?.finish).toBe('plane');
    expect(yards(plane?.cut.volume)).toBeCloseTo(depth(99.5), 8);
  });

  test('stakes that make no plane are put in triangles; what they do not reach is said', () => {
    const plan = planFile(
      courtJob((job) => {
        job['existingLevels'] = spots([-5, -5, 101], [45, -5, 101], [45, 20, 101], [-5, 20, 101]);
        Object.assign(job.stakes[1] ?? {}, { finish: '99.60 ft' });
      }),
    );
    const earth = plan.pavements[0]?.earth;
    expect(earth?.finish).toBe('stakes');
    // the stakes end at x = 36, the dig a foot beyond
    expect(earth?.uncovered.toNumber('ft2')).toBeCloseTo(16, 6);
    const gap = plan.warnings.find(({ code }) => code === 'SURFACE_GAP');
    expect((gap?.values['area'] as Area).toNumber('ft2')).toBeCloseTo(16, 6);
    // counted at the mean depth: cut / dig area is the mean depth of what was reached
    expect(plan.pavements[0]?.dig.depth.toNumber('ft')).toBeCloseTo(
      ((yards(earth?.cut.volume) ?? 0) * 27) / (LONG * WIDE),
      9,
    );
  });

  test('without a finished surface the spot heights wait, and that is said', () => {
    const plan = planFile(
      courtJob((job) => {
        job['existingLevels'] = spots([-5, -5, 101], [45, -5, 101], [45, 20, 101]);
        for (const stake of job.stakes) delete stake['finish'];
      }),
    );
    expect(plan.pavements[0]?.earth.finish).toBeNull();
    expect(plan.pavements[0]?.dig.basis).toBe('along-strings');
    // K: 12 ft by (12 3/4 + 12 1/4) / 2, (12 1/4 + 12) / 2, (12 + 12 1/2) / 2 in: 12 7/24 in over 36 ft;
    // F: 12 1/2, 11 3/4, 12, 12 1/4 in: 12 1/24 in
    expect(plan.pavements[0]?.dig.depth.times(6).to('in').toString()).toBe('73');
    expect(plan.warnings.map(({ code }) => code)).toContain('NO_FINISHED_SURFACE');
  });

  test('islands are left out', () => {
    const job = (holes: unknown) =>
      courtJob((one, court) => {
        one['existingLevels'] = spots([-5, -5, 101], [45, -5, 101], [45, 20, 101], [-5, 20, 101]);
        court['outline'] = { ...(court['outline'] as object), holes };
        delete court['edges'];
      });
    const island = [
      [10, 5],
      [14, 5],
      [14, 9],
      [10, 9],
    ];
    const [whole, pierced] = [earthOf(job([])), earthOf(job([island]))];
    expect(
      (whole?.cutArea?.toNumber('ft2') ?? 0) - (pierced?.cutArea?.toNumber('ft2') ?? 0),
    ).toBeCloseTo(4, 7);
  });

  test('is the same in metric units, and comes back from JSON', () => {
    const job = courtJob((one) => {
      one['existingLevels'] = spots(
        [-5, -5, 101],
        [45, -5, 100.2],
        [45, 20, 100.4],
        [-5, 20, 101.1],
      );
    });
    const plan = planFile(job);
    expect(JSON.stringify(planFile(inMetric(job)))).toBe(JSON.stringify(plan));
    const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
    expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
    expect(JSON.stringify(planJob(again.job))).toBe(JSON.stringify(plan));
    expect(plan.working.map(({ title }) => title)).toContain(
      'Soil between the stripped ground and the subgrade',
    );
  });
});

test.each([
  ['two points', spots([0, 0, 1], [1, 0, 1]), 'existingLevels.points', 'TOO_FEW'],
  ['points in line', spots([0, 0, 1], [1, 0, 1], [2, 0, 1]), 'existingLevels', 'POINTS_COLLINEAR'],
  [
    'points elsewhere',
    spots([900, 0, 1], [901, 0, 1], [900, 9, 1]),
    'pavements[0].outline',
    'SURFACES_APART',
  ],
  [
    'no unit',
    {
      points: [
        [0, 0, 1],
        [1, 0, 1],
        [0, 1, 1],
      ],
    },
    'existingLevels.unit',
    'UNIT_MISSING',
  ],
  [
    'a pair',
    {
      unit: 'ft',
      points: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
    },
    'existingLevels.points[0]',
    'WRONG_TYPE',
  ],
  [
    'NaN',
    spots([0, 0, Number.NaN], [1, 0, 1], [0, 1, 1]),
    'existingLevels.points[0][2]',
    'NOT_FINITE',
  ],
  [
    'two heights in one place',
    spots([0, 0, 1], [0, 0, 2], [40, 0, 1], [0, 40, 1]),
    'existingLevels.points[1]',
    'TWO_HEIGHTS',
  ],
  [
    'a strange field',
    { ...spots([0, 0, 1], [1, 0, 1], [0, 1, 1]), datum: 'x' },
    'existingLevels.datum',
    'UNKNOWN_FIELD',
  ],
  [
    'lengths with a strange field',
    [{ x: '1 ft', y: '1 ft', z: '1 ft', name: 'a' }],
    'existingLevels[0].name',
    'UNKNOWN_FIELD',
  ],
  [
    'too many',
    { unit: 'ft', points: Array.from({ length: 100_001 }, (_, k) => [k, k * k, 1]) },
    'existingLevels.points',
    'TOO_MANY',
  ],
])('refuses %s', (_name, levels, path, code) => {
  const outcome = tryPlanJob(
    courtJob((job) => {
      job['existingLevels'] = levels;
    }),
  );
  if (outcome.ok) expect.unreachable();
  expect(outcome.errors.map((issue) => `${pathText(issue.path)} ${issue.code}`)).toContain(
    `${path} ${code}`,
  );
});

test('finished levels need existing ones, and stand for a grade, not beside it', () => {
  const alone = tryPlanJob(
    courtJob((_job, court) => {
      court['finishedLevels'] = spots([0, 0, 1], [1, 0, 1], [0, 1, 1]);
    }),
  );
  if (alone.ok) expect.unreachable();
  expect(alone.errors.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([
    'existingLevels REQUIRED',
  ]);
});
