// Stakes are listed once; strings name them, and a stake may serve several strings.
import { describe, expect, test } from 'vitest';
import { pathText } from 'settline';
import { tryPlanJob, type JobPlan } from 'settline/job';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import type { Loose, LooseJob } from '../loose-job.js';
import { planFile } from '../plan-file.js';
import { meanOverStakes } from './mean-over-stakes.js';

// A drive of 8 by 6 m with a string along its south and one along its east, which meet at stake C.
// All finished at 20 m; layers 0.4 m; the dig reaches from -0.5 to 8.5 and from -0.5 to 6.5.
const GROUNDS: Readonly<Record<string, number>> = { A: 330, B: 300, C: 280, D: 310, E: 340 };
const PLACES = { A: [-1, -1], B: [4, -1], C: [9, -1], D: [9, 3], E: [9, 7] } as const;

const corner = (change: (job: LooseJob) => unknown = () => undefined): LooseJob => {
  const job = levelSite([pavementOn(rectangle(0, 0, 8, 6), { id: 'drive' })], {
    stakes: Object.entries(PLACES).map(([id, [x, y]]) => ({
      id,
      x: `${x} m`,
      y: `${y} m`,
      finish: '20 m',
      ground: `${GROUNDS[id] ?? 0} mm`,
    })),
    stringLines: [
      { id: 'south', pavement: 'drive', stakes: ['A', 'B', 'C'] },
      { id: 'east', pavement: 'drive', stakes: ['C', 'D', 'E'] },
    ],
  });
  change(job);
  return job;
};
const stakeOf = (job: LooseJob, id: string) =>
  job.stakes.find((stake) => stake['id'] === id) ?? expect.unreachable(id);
const lineOf = (job: LooseJob, index: number) => job.stringLines[index] ?? expect.unreachable();
const faultsOf = (change: (job: LooseJob) => unknown) => {
  const outcome = tryPlanJob(corner(change));
  return outcome.ok
    ? []
    : outcome.errors.map(({ path, code, message }) => `${pathText(path)} ${code}: ${message}`);
};
const digsOf = (plan: JobPlan) =>
  plan.stringLines.map(({ stakes }) =>
    stakes.map(({ id, dig }) => `${id} ${dig?.to('mm').toString() ?? '-'}`),
  );
const driveOf = (plan: JobPlan) => plan.pavements[0] ?? expect.unreachable();

describe('a stake at a turn', () => {
  test('serves both strings', () => {
    const plan = planFile(corner());
    // 300 mm of string and 400 mm of layers, less the ground below the string
    expect(digsOf(plan)).toEqual([
      ['A 370', 'B 400', 'C 420'],
      ['C 420', 'D 390', 'E 360'],
    ]);
    expect(plan.stringLines.map(({ code }) => code)).toEqual(['in-line', 'in-line']);
    const stations = plan.stringLines.map(({ stakes }) =>
      stakes.map(({ station }) => station.to('m').toString()),
    );
    expect(stations).toEqual([
      ['0', '5', '10'],
      ['0', '4', '8'],
    ]);
  });

  test('counts once in the depth of dig', () => {
    const { dig, earth } = driveOf(planFile(corner()));
    expect(dig.basis).toBe('stake-levels');
    expect(dig.measured).toEqual(['A', 'B', 'C', 'D', 'E']);
    const soundings = Object.entries(PLACES).map(([id, [x, y]]) => ({
      x,
      y,
      dig: 700 - (GROUNDS[id] ?? 0),
    }));
    const by = meanOverStakes(soundings, [[-0.5, -0.5, 8.5, 6.5]]);
    expect(dig.depth.toNumber('m')).toBeCloseTo(by.mean / 1000, 9);
    // the stakes stand on two sides of the dig: the far corner lies beyond them
    expect(earth.uncovered.toNumber('m2')).toBeCloseTo(by.uncovered, 9);
    expect(by.uncovered).toBeGreaterThan(5);
  });

  test('whatever the order of stakes and strings', () => {
    const plan = planFile(corner());
    const turned = planFile(
      corner((job) => {
        job.stakes.reverse();
        job.stringLines.reverse();
        for (const line of job.stringLines) line.stakes.reverse();
      }),
    );
    expect(driveOf(turned).dig.depth).toEqual(driveOf(plan).dig.depth);
    expect(driveOf(turned).earth).toEqual(driveOf(plan).earth);
  });

  test('of strings at two heights says which one its ground was measured from', () => {
    const higher = (from?: string) => (job: LooseJob) => {
      lineOf(job, 1)['height'] = '500 mm';
      Object.assign(stakeOf(job, 'D'), { ground: '510 mm' });
      Object.assign(stakeOf(job, 'E'), { ground: '540 mm' });
      if (from !== undefined) stakeOf(job, 'C')['groundFrom'] = from;
    };
    expect(faultsOf(higher())).toEqual([
      'stakes[2].groundFrom REQUIRED: missing. The stake serves strings of different heights. Name the one that ground was measured from: south, east',
    ]);
    // from the lower string nothing changes; its reading does not count on the higher one
    const plan = planFile(corner(higher('south')));
    expect(digsOf(plan)).toEqual([
      ['A 370', 'B 400', 'C 420'],
      ['C -', 'D 390', 'E 360'],
    ]);
    expect(driveOf(plan).dig.depth).toEqual(driveOf(planFile(corner())).dig.depth);
    expect(driveOf(plan).dig.unmeasured).toEqual([]);
    // 280 mm below the higher string the ground lies 200 mm higher
    expect(digsOf(planFile(corner(higher('east'))))).toEqual([
      ['A 370', 'B 400', 'C -'],
      ['C 620', 'D 390', 'E 360'],
    ]);
  });
});

describe('a depth of dig from stakes', () => {
  const bare = (change: (job: LooseJob) => unknown = () => undefined) =>
    driveOf(
      planFile(
        corner((job) => {
          for (const stake of job.stakes) delete stake['finish'];
          change(job);
        }),
      ),
    ).dig;

  test('without finished grade is weighted along the strings', () => {
    // 5 m by 385 and 5 m by 410 mm, 4 m by 405 and 4 m by 375 mm: 7095 over 18 m
    const dig = bare();
    expect(dig.basis).toBe('along-strings');
    expect(dig.depth.times(18).to('mm').toString()).toBe('7095');
  });

  test('names the stakes without a reading, and bridges them', () => {
    // south: 10 m by (370 + 420) / 2; east: 4 m by 405 and 4 m by 375
    const dig = bare((job) => delete stakeOf(job, 'B')['ground']);
    expect(dig.unmeasured).toEqual(['B']);
    expect(dig.measured).toEqual(['A', 'C', 'D', 'E']);
    expect(dig.depth.times(18).to('mm').toString()).toBe('7070');
  });

  test('from stakes in one line goes by that line', () => {
    const dig = driveOf(
      planFile(
        corner((job) => {
          job.stringLines.splice(1);
          job.stakes.splice(3);
        }),
      ),
    ).dig;
    expect(dig.basis).toBe('along-strings');
    // 5 m by 385 and 5 m by 410 mm
    expect(dig.depth.times(10).to('mm').toString()).toBe('3975');
  });

  test('where no three stakes stand round it goes along the strings', () => {
    // the strings run away from the drive: their triangle does not reach its dig
    const { dig, earth } = driveOf(
      planFile(
        corner((job) => {
          for (const stake of job.stakes) {
            stake['y'] = `${Number.parseFloat(String(stake['y'])) - 20} m`;
          }
        }),
      ),
    );
    expect(dig.basis).toBe('along-strings');
    expect(dig.depth.times(18).to('mm').toString()).toBe('7095');
    expect(earth.uncovered.isZero()).toBe(true);
    // 9 x 7 m by 7095 / 18 mm
    expect(earth.cut.volume.times(2).to('m3').toString()).toBe('49.665');
  });
});

describe('what the ground at a stake was measured to', () => {
  const outline = { unit: 'm', points: rectangle(3, -2, 20, 2) };
  const old = { material: 'asphalt', thickness: '90 mm', outline };
  const soils = (change: (job: LooseJob) => unknown = () => undefined) => {
    const plan = planFile(
      corner((job) => {
        job['oldPaving'] = [old];
        change(job);
      }),
    );
    return Object.fromEntries(
      plan.stringLines.flatMap(({ stakes }) =>
        stakes.map(({ id, soil }) => [id, soil?.to('mm').toString()]),
      ),
    );
  };

  test('is old paving where it lies', () => {
    // B and C stand on asphalt: 400 and 420 less 90 mm
    expect(soils()).toEqual({ A: '370', B: '310', C: '330', D: '390', E: '360' });
  });

  test('or soil, where the stake says so', () => {
    const said = soils((job) => (stakeOf(job, 'B')['groundOn'] = 'soil'));
    expect(said).toEqual({ A: '370', B: '400', C: '330', D: '390', E: '360' });
  });

  test('or old paving beside its outline', () => {
    const said = soils((job) => (stakeOf(job, 'D')['groundOn'] = 'old-paving'));
    expect(said).toEqual({ A: '370', B: '310', C: '330', D: '300', E: '360' });
  });

  test('of old paving by its share of the dig only all of it is known to lie at a stake', () => {
    const shared = (share: number) =>
      soils((job) => {
        job['oldPaving'] = [{ material: 'asphalt', thickness: '90 mm', pavement: 'drive', share }];
      });
    expect(shared(1)).toEqual({ A: '280', B: '310', C: '330', D: '300', E: '270' });
    expect(shared(0.5)).toEqual({ A: '370', B: '400', C: '420', D: '390', E: '360' });
  });
});

describe('where the finish of a stake holds', () => {
  test('at the edge of the paving beside it, or at the stake', () => {
    // finished grade 1 % down to the north; stakes 1 m outside say the level of the edge beside them
    const levels = (finishAt?: 'edge') =>
      driveOf(
        planFile(
          corner((job) => {
            for (const stake of job.stakes) {
              const y = Number.parseFloat(String(stake['y']));
              const edge = Math.min(6, Math.max(0, y));
              const at = finishAt === 'edge' ? edge : y;
              stake['finish'] = `${(20 - at / 100).toFixed(4)} m`;
              if (finishAt !== undefined) stake['finishAt'] = finishAt;
            }
            // flat ground, at 20 m
            job['existingLevels'] = {
              unit: 'm',
              points: rectangle(-2, -2, 10, 9).map(([x, y]) => [x, y, 20]),
            };
          }),
        ),
      );
    // the same plane either way: 0.4 m of layers and 1 % by 3 m in the middle of the dig
    for (const one of [levels(), levels('edge')]) {
      expect(one.earth.finish).toBe('plane');
      expect(one.dig.depth.toNumber('m')).toBeCloseTo(0.43, 9);
      // at y = 6.5 m
      expect(one.earth.deepestCut?.depth.toNumber('m')).toBeCloseTo(0.465, 9);
    }
  });

  test('stakes beside one corner say one level', () => {
    // C and a stake of the east string south of it are both nearest to the corner (8, 0)
    const with2 = (finish: string) => (job: LooseJob) => {
      job.stakes.push({ id: 'C2', x: '9 m', y: '-0.5 m', finish, finishAt: 'edge' });
      lineOf(job, 1).stakes.splice(1, 0, 'C2');
      stakeOf(job, 'C')['finishAt'] = 'edge';
      Object.assign(stakeOf(job, 'E'), { finish: '19.9 m', finishAt: 'edge' });
    };
    expect(driveOf(planFile(corner(with2('20 m')))).dig.basis).toBe('stake-levels');
    expect(faultsOf(with2('20.1 m'))).toEqual([expect.stringMatching(/TWO_HEIGHTS/)]);
  });
});

test.each<[string, (job: LooseJob) => unknown, string]>([
  [
    'a stake that the job does not have',
    (job) => lineOf(job, 0).stakes.push('Q'),
    'stringLines[0].stakes[3] UNKNOWN_ID: no stake has the id "Q". Use A, B, C, D, E',
  ],
  [
    'a stake named twice by one string',
    (job) => lineOf(job, 0).stakes.push('A'),
    'stringLines[0].stakes[3] DUPLICATE_ID: "A" is already stake 1 of this string',
  ],
  [
    'a stake listed twice',
    (job) => job.stakes.push({ id: 'A', x: '0 m', y: '20 m' }),
    'stakes[5].id DUPLICATE_ID: "A" is already used by entry 1',
  ],
  [
    'a stake written out in its string',
    (job) => lineOf(job, 0).stakes.splice(0, 1, { id: 'A' }),
    'stringLines[0].stakes[0] WRONG_TYPE: expected text, got an object',
  ],
  [
    'ground measured from a string of another stake',
    (job) => (stakeOf(job, 'A')['groundFrom'] = 'east'),
    'stakes[0].groundFrom UNKNOWN_ID: no string of this stake has the id "east". Use south',
  ],
  [
    'a string for ground that was not measured',
    (job) => {
      const stake: Loose = stakeOf(job, 'A');
      delete stake['ground'];
      stake['groundFrom'] = 'south';
    },
    'stakes[0].ground REQUIRED: missing. Give the reading, or leave out groundFrom',
  ],
  [
    'what ground stands on that was not measured',
    (job) => {
      const stake: Loose = stakeOf(job, 'A');
      delete stake['ground'];
      stake['groundOn'] = 'soil';
    },
    'stakes[0].ground REQUIRED: missing. Give the reading, or leave out groundOn',
  ],
  [
    'a place for a finish that is not given',
    (job) => {
      const stake: Loose = stakeOf(job, 'A');
      delete stake['finish'];
      stake['finishAt'] = 'edge';
    },
    'stakes[0].finish REQUIRED: missing. Give the level, or leave out finishAt',
  ],
  [
    'a string of one stake',
    (job) => lineOf(job, 0).stakes.splice(1),
    'stringLines[0].stakes TOO_FEW: 1 stake',
  ],
])('refuses %s', (_name, change, fault) => {
  expect(faultsOf(change)).toEqual([expect.stringContaining(fault)]);
});
