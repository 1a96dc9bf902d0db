import { expect, test } from 'vitest';
import { planFromJSON, planJob, tryPlanJob } from 'settline/job';
import { pathText } from 'settline';
import { levelSite, pavementOn, rectangle } from '../level-site.js';
import type { LooseJob } from '../loose-job.js';
import { plainCourtFile } from '../plain-court.js';
import { planFile } from '../plan-file.js';

const withOutline = (outline: unknown, edges?: unknown): LooseJob => {
  const job = plainCourtFile();
  const [court] = job.pavements;
  if (court === undefined) expect.unreachable();
  court['outline'] = outline;
  if (edges === undefined) delete court['edges'];
  else court['edges'] = edges;
  return job;
};

const POINTS = [
  [0, 0],
  [36, 0],
  [36, 14],
  [0, 14],
];
const ISLAND = [
  [10, 5],
  [14, 5],
  [14, 9],
  [10, 9],
];

test('an island stays paved round and is dug into from its edges', () => {
  const plan = planFile(withOutline({ unit: 'ft', points: POINTS, holes: [ISLAND] }));
  const [court] = plan.pavements;
  expect(court?.areas.paving.to('ft2').toString()).toBe('488'); // 504 - 16
  // 12 in out all round, and 12 in into the island: 38 x 16 - 2 x 2
  expect(court?.areas.dig.to('ft2').toString()).toBe('604');
  expect(court?.edges).toHaveLength(8);
  expect(court?.digHoles).toHaveLength(1);
  expect(court?.digClosesUp).toBe(false);
  const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
  expect(JSON.stringify(planJob(again.job))).toBe(JSON.stringify(plan));
});

test('an edge round an island may be a kerb that stays', () => {
  const kerbs = [
    'open',
    'open',
    'open',
    'open',
    'restraint',
    'restraint',
    'restraint',
    'restraint',
  ];
  const plan = planFile(withOutline({ unit: 'ft', points: POINTS, holes: [ISLAND] }, kerbs));
  expect(plan.pavements[0]?.areas.dig.to('ft2').toString()).toBe('592'); // 608 - 16
  const few = tryPlanJob(
    withOutline({ unit: 'ft', points: POINTS, holes: [ISLAND] }, kerbs.slice(4)),
  );
  if (few.ok) expect.unreachable();
  expect(few.errors.map(({ path, code }) => `${pathText(path)} ${code}`)).toEqual([
    'pavements[0].edges COUNT_MISMATCH',
  ]);
});

test('a stake in an island is not in the dig, one beside it is', () => {
  const job = withOutline({ unit: 'ft', points: POINTS, holes: [ISLAND] });
  const { stakes } = job;
  Object.assign(stakes[1] ?? {}, { x: '12 ft', y: '7 ft' });
  const inDig = () =>
    planFile(job)
      .warnings.filter(({ code }) => code === 'STAKE_IN_DIG')
      .map(({ subject }) => subject);
  expect(inDig()).toEqual([]);
  Object.assign(stakes[1] ?? {}, { x: '10 ft 6 in' });
  expect(inDig()).toEqual(['stake K2']);
});

test('an island or a notch that the dig swallows is warned of', () => {
  const small = [
    [10, 5],
    [11, 5],
    [11, 6],
    [10, 6],
  ];
  const island = planFile(withOutline({ unit: 'ft', points: POINTS, holes: [small] }));
  expect(island.pavements[0]?.areas.dig.to('ft2').toString()).toBe('608');
  const notch = planFile(
    withOutline({
      unit: 'ft',
      points: [
        [0, 0],
        [36, 0],
        [36, 14],
        [20, 14],
        [20, 13.5],
        [19, 13.5],
        [19, 14],
        [0, 14],
      ],
    }),
  );
  expect(notch.pavements[0]?.areas.dig.to('ft2').toString()).toBe('608');
  for (const plan of [island, notch]) {
    expect(plan.warnings.filter(({ code }) => code === 'DIG_CLOSES_UP')).toHaveLength(1);
  }
});

test('a sharp corner, where the dig runs out to a long point', () => {
  const sharp = {
    unit: 'ft',
    points: [
      [0, 0],
      [100, 0],
      [0, 5],
    ],
  };
  const plan = planFile(withOutline(sharp));
  const [court] = plan.pavements;
  // alike about the same incentre: inradius 2 x 250 / (105 + sqrt(10025)), and 1 ft more
  const inradius = 500 / (105 + Math.sqrt(10_025));
  expect(court?.areas.dig.toNumber('ft2')).toBeCloseTo(250 * (1 + 1 / inradius) ** 2, 9);
  expect(court?.digLongMitres).toEqual([2]);
  const warnings = plan.warnings.filter(({ code }) => code === 'DIG_RUNS_OUT');
  expect(warnings).toEqual([
    { code: 'DIG_RUNS_OUT', subject: 'Parking court', values: { edge: 2 } },
  ]);
  const square = planFile(withOutline({ unit: 'ft', points: POINTS }));
  expect(square.pavements[0]?.digLongMitres).toEqual([]);
  expect(square.warnings.map(({ code }) => code)).not.toContain('DIG_RUNS_OUT');
});

test('an arc edge: area by the segment, dig by the ring, edge length along the arc', () => {
  // half a circle of 7 ft radius over the east end
  const round = {
    unit: 'ft',
    points: POINTS,
    arcs: [{ edge: 2, bulgeMiddleOrdinate: 7 }],
  };
  const plan = planFile(withOutline(round));
  const [court] = plan.pavements;
  expect(court?.areas.paving.toNumber('ft2')).toBeCloseTo(504 + (Math.PI * 49) / 2, 9);
  expect(court?.edges[1]?.length.toNumber('ft')).toBeCloseTo(7 * Math.PI, 9);
  // dig: 37 x 16 left of the east end, and half a circle of 8 ft
  expect(court?.areas.dig.toNumber('ft2')).toBeCloseTo(37 * 16 + (Math.PI * 64) / 2, 6);
  expect(court?.digArcs).toHaveLength(1);
  const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
  expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
  // the outline goes back into the job whole
  expect(planJob(again.job).pavements[0]?.areas.paving.toNumber('ft2')).toBeCloseTo(
    504 + (Math.PI * 49) / 2,
    9,
  );
});

test.each([
  [{ unit: 'ft', points: POINTS, colour: 'red' }, 'pavements[0].outline.colour'],
  [
    { unit: 'ft', points: POINTS, holes: [{ points: ISLAND, depth: 1 }] },
    'pavements[0].outline.holes[0].depth',
  ],
  [
    { unit: 'ft', points: POINTS, arcs: [{ edge: 2, bulgeMiddleOrdinate: 1, radius: 5 }] },
    'pavements[0].outline.arcs[0].radius',
  ],
])('refuses a field that outlines do not have: %#', (outline, path) => {
  const outcome = tryPlanJob(withOutline(outline));
  if (outcome.ok) expect.unreachable();
  expect(outcome.errors.map((issue) => `${pathText(issue.path)} ${issue.code}`)).toEqual([
    `${path} UNKNOWN_FIELD`,
  ]);
});

test('paving of a twentieth of a square metre is planned, anything smaller refused', () => {
  const planned = (width: number) =>
    tryPlanJob(levelSite([pavementOn(rectangle(0, 0, 0.25, width), { id: 'step' })])).ok;
  expect([planned(0.2), planned(0.1999)]).toEqual([true, false]);
});
