// Jobs that are one figure away from each other: with the first figure the plan warns, with the second
// it does not. Figures of the warnings are by pencil; the site is in danger-site.ts.
import { describe, expect, test } from 'vitest';
import type { JobPlan, PlanWarning, WarningCode } from 'settline/job';
import { describeWarning } from 'settline/job';
import { isQuantity } from 'settline/units';
import type { LooseJob } from '../loose-job.js';
import { planFile } from '../plan-file.js';
import {
  clearStakes,
  driveOf,
  harmlessSite,
  layGrade,
  setStakes,
  spotsAt,
  walkFrom,
} from './danger-site.js';

type Figure = string | number | null;

interface Twins<F> {
  /** What the figure is. */
  readonly figure: string;
  readonly code: WarningCode;
  readonly subject: string;
  /** Figures of the warning: lengths in mm, slopes in percent, areas in m2. */
  readonly says: Readonly<Record<string, Figure>>;
  /** Warnings that both twins have. */
  readonly also?: readonly WarningCode[];
  readonly set: (job: LooseJob, figure: F) => void;
  readonly danger: F;
  readonly harmless: F;
}

const twins = <F>(given: Twins<F>) => ({
  ...given,
  also: given.also ?? [],
  dangerous: planOf(given, given.danger),
  harmless: planOf(given, given.harmless),
});

const planOf =
  <F>({ set }: Twins<F>, figure: F) =>
  (): JobPlan => {
    const job = harmlessSite();
    set(job, figure);
    return planFile(job);
  };

const UNITS = { length: 'mm', slope: 'percent', area: 'm2', density: 'kg/m3' } as const;

function figuresOf({ values }: PlanWarning): Record<string, Figure> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      if (!isQuantity(value)) return [name, value];
      const unit = UNITS[value.dimension as keyof typeof UNITS];
      return [
        name,
        Number((value as unknown as { toNumber(unit: string): number }).toNumber(unit).toFixed(3)),
      ];
    }),
  );
}

const edge2 = (said: unknown) => ['restraint', said, 'restraint', 'building'];
const edge4 = (said: unknown) => ['restraint', 'restraint', 'restraint', said];

const line = (fields: object) => ({
  id: 'gas',
  path: [
    { x: '4 m', y: '-3 m' },
    { x: '4 m', y: '7 m' },
  ],
  width: '50 mm',
  tolerance: '300 mm',
  ...fields,
});
const IN_DIG = ['UTILITY_IN_DIG'] as const;

/** Layers of 105 mm over so much base. */
const setBase = (job: LooseJob, thickness: string): void => {
  Object.assign(driveOf(job).layers[2] ?? {}, { thickness });
};
const setStone = (job: LooseJob, fields: object): void => {
  Object.assign(job.materials.stones[0] ?? {}, fields);
};
const setSand = (job: LooseJob, fields: object): void => {
  Object.assign(job.materials.sands[0] ?? {}, fields);
};
/** Keeps string a alone. */
const dropStringB = (job: LooseJob): void => {
  job.stringLines.splice(1);
  job.stakes = job.stakes.filter(({ id }) => String(id).startsWith('A'));
};
/** Ground and finished levels round the drive in one plane, of so much at x = 9 m. */
const finishedTo = (job: LooseJob, z: number): void => {
  clearStakes(job, 'finish');
  const points = [-1, 9].flatMap((x) => [-1, 5].map((y) => [x, y, x < 0 ? 50 : z]));
  job['existingLevels'] = { unit: 'm', points };
  driveOf(job)['finishedLevels'] = { unit: 'm', points };
};

const LINES = [
  twins({
    figure: 'depth of a line above the bottom of the dig',
    code: 'UTILITY_ABOVE_BOTTOM',
    subject: 'Drive',
    // 305 - 250
    says: { line: 'gas', above: 55 },
    also: IN_DIG,
    set: (job, found: string) => (job['utilities'] = [line({ found })]),
    danger: '250 mm',
    harmless: '500 mm',
  }),
  twins({
    figure: 'depth of a line just below the dig',
    code: 'UTILITY_COVER',
    subject: 'Drive',
    // 400 - 305
    says: { line: 'gas', cover: 95, least: 150 },
    also: IN_DIG,
    set: (job, found: string) => (job['utilities'] = [line({ found })]),
    danger: '400 mm',
    harmless: '455 mm',
  }),
  twins({
    figure: 'depth of a line of an owner',
    code: 'UTILITY_COVER',
    subject: 'Drive',
    says: { line: 'gas', cover: 295, least: 300 },
    also: IN_DIG,
    set: (job, found: string) => (job['utilities'] = [line({ found, minimumCover: '300 mm' })]),
    danger: '600 mm',
    harmless: '605 mm',
  }),
  twins({
    figure: 'place of a line under a ridge of 200 mm at x = 6 m',
    code: 'UTILITY_ABOVE_BOTTOM',
    subject: 'Drive',
    // 305 + 200 - 500; at x = 2 m there is no ridge
    says: { line: 'gas', above: 5 },
    also: IN_DIG,
    set: (job, x: string) => {
      job['existingLevels'] = spotsAt([-1, 4, 6, 8, 9], (at) => (at === 6 ? 0.2 : 0));
      const path = ['-3 m', '7 m'].map((y) => ({ x, y }));
      job['utilities'] = [line({ path, found: '500 mm' })];
    },
    danger: '6 m',
    harmless: '2 m',
  }),
  twins({
    figure: 'ground at the stakes beside a line',
    code: 'UTILITY_ABOVE_BOTTOM',
    subject: 'Drive',
    // the ground rises by 150 mm to A2 and B2: 305 + 150 - 400
    says: { line: 'gas', above: 55 },
    also: IN_DIG,
    set: (job, ground: string) => {
      setStakes(job, ['A2', 'B2'], { ground });
      job['utilities'] = [line({ found: '400 mm', minimumCover: '0 mm' })];
    },
    danger: '150 mm',
    harmless: '300 mm',
  }),
];

const WATER = [
  twins({
    figure: 'finished grade at the stakes by the wall',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    // 49.80 to 49.90 in 4 m
    says: { edge: 4, along: 'building', fall: 2.5, x: 0, y: 4000 },
    set: (job, finish: string) => setStakes(job, ['A1', 'B1'], { finish }),
    danger: '49.80 m',
    harmless: '50.00 m',
  }),
  twins({
    figure: 'finished grade at one end of the wall',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    says: { edge: 4, along: 'building', fall: 2.5 },
    set: (job, finish: string) => setStakes(job, ['B1'], { finish }),
    danger: '49.80 m',
    harmless: '50.00 m',
  }),
  twins({
    figure: 'finished grade at the stakes 4 m from the wall, 3 % along it',
    code: 'FALL_AWAY_TOO_SMALL',
    subject: 'Drive',
    says: { edge: 4, along: 'building', fall: 0.1, least: 2 },
    set: (job, away: number) => {
      driveOf(job)['crossSlope'] = '3%';
      [0, 4, 8].forEach((x, k) => {
        setStakes(job, [`A${k + 1}`], { finish: `${(50 - away * x).toFixed(4)} m` });
        setStakes(job, [`B${k + 1}`], { finish: `${(50 - away * x - 0.156).toFixed(4)} m` });
      });
    },
    danger: 0.001,
    harmless: 0.02,
  }),
  twins({
    figure: 'level of a plane at the far end',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    // 0.08 in 8 m
    says: { edge: 4, along: 'building', fall: 1 },
    set: (job, z: number) =>
      layGrade(job, 'plane', [
        [0, 0, 50.16],
        [0, 4, 50],
        [8, 0, z],
      ]),
    danger: 50.24,
    harmless: 50,
  }),
  twins({
    figure: 'level of a plane at the far end, flat away from the wall',
    code: 'FALL_AWAY_TOO_SMALL',
    subject: 'Drive',
    // 0.1592 in 8 m is 1.99 %
    says: { edge: 4, along: 'building', fall: 1.99, least: 2 },
    set: (job, z: number) =>
      layGrade(job, 'plane', [
        [0, 0, 50.16],
        [0, 4, 50],
        [8, 0, z],
      ]),
    danger: 50.0008,
    harmless: 50,
  }),
  twins({
    figure: 'one corner of a warped surface',
    code: 'FALL_AWAY_TOO_SMALL',
    subject: 'Drive',
    // 50 to 49.88 in 8 m at y = 4 m; 2.5 % at y = 0
    says: { edge: 4, along: 'building', fall: 1.5, least: 2, x: 0, y: 4000 },
    set: (job, z: number) =>
      layGrade(job, 'warped', [
        [0, 0, 50.16],
        [8, 0, 49.96],
        [8, 4, z],
        [0, 4, 50],
      ]),
    danger: 49.88,
    harmless: 49.8,
  }),
  twins({
    figure: 'second level of a line',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    says: { edge: 4, along: 'building', fall: 2.5 },
    set: (job, z: number) =>
      layGrade(job, 'line', [
        [0, 2, 50],
        [8, 2, z],
      ]),
    danger: 50.2,
    harmless: 49.8,
  }),
  twins({
    figure: 'finished levels at x = 9 m',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    says: { edge: 4, along: 'building', fall: 3 },
    set: finishedTo,
    danger: 50.3,
    harmless: 49.7,
  }),
  twins({
    figure: 'side of an island that is a building',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    // the side at x = 3 m has the drive above it, that at x = 4 m below
    says: { edge: 8, along: 'building', fall: 2.5, x: 3000 },
    set: (job, side: number) => {
      const drive = driveOf(job);
      drive['outline'] = {
        ...(drive['outline'] as object),
        holes: [
          [
            [3, 1.5],
            [4, 1.5],
            [4, 2.5],
            [3, 2.5],
          ],
        ],
      };
      const island = [5, 6, 7, 8].map((edge) => (edge === side ? 'building' : 'restraint'));
      drive['edges'] = [...edge4('building'), ...island];
    },
    danger: 8,
    harmless: 6,
  }),
  twins({
    figure: 'what stays at the low end',
    code: 'FALLS_TO_BUILDING',
    subject: 'Drive',
    says: { edge: 2, along: 'slab', fall: 2.5, x: 8000 },
    set: (job, said: string) => (driveOf(job)['edges'] = edge2(said)),
    danger: 'slab',
    harmless: 'restraint',
  }),
  twins({
    figure: 'level of the floor of the building',
    code: 'PAVING_ABOVE_FLOOR',
    subject: 'Drive',
    says: { edge: 4, along: 'building', above: 50, level: 49950 },
    set: (job, level: string) => (driveOf(job)['edges'] = edge4({ along: 'building', level })),
    danger: '49.95 m',
    harmless: '50.15 m',
  }),
  twins({
    figure: 'level of a slab',
    code: 'PAVING_ABOVE_FLOOR',
    subject: 'Drive',
    says: { edge: 4, along: 'slab', above: 10, level: 49990 },
    set: (job, level: string) => (driveOf(job)['edges'] = edge4({ along: 'slab', level })),
    danger: '49.990 m',
    harmless: '50.000 m',
  }),
];

const CONTRADICTIONS = [
  twins({
    figure: 'cross slope, stakes level across',
    code: 'CROSS_SLOPE_DIFFERS',
    subject: 'Drive',
    says: { declared: 2, shown: 0, stake: 'A1' },
    set: (job, crossSlope: string) => (driveOf(job)['crossSlope'] = crossSlope),
    danger: '2%',
    harmless: '0.2%',
  }),
  twins({
    figure: 'cross slope, string b 52 mm lower over 5.2 m',
    code: 'CROSS_SLOPE_DIFFERS',
    subject: 'Drive',
    says: { declared: 2, shown: 1, stake: 'A1', from: 'B1', to: 'B2' },
    set: (job, crossSlope: string) => {
      driveOf(job)['crossSlope'] = crossSlope;
      setStakes(job, ['B1'], { finish: '49.948 m' });
      setStakes(job, ['B2'], { finish: '49.848 m' });
      setStakes(job, ['B3'], { finish: '49.748 m' });
    },
    danger: '2%',
    harmless: '1%',
  }),
  twins({
    figure: 'ground at a stake above the spot heights',
    code: 'GROUND_DIFFERS',
    subject: 'stake A2',
    says: { off: 100, side: 'above', ground: 50000, shown: 49900 },
    set: (job, ground: string) => {
      job['existingLevels'] = spotsAt([-1, 4, 9]);
      setStakes(job, ['A2'], { ground });
    },
    danger: '200 mm',
    harmless: '250 mm',
  }),
  twins({
    figure: 'ground at a stake below the spot heights',
    code: 'GROUND_DIFFERS',
    subject: 'stake B3',
    says: { off: 60, side: 'below' },
    set: (job, ground: string) => {
      job['existingLevels'] = spotsAt([-1, 4, 9]);
      setStakes(job, ['B3'], { ground });
    },
    danger: '360 mm',
    harmless: '350 mm',
  }),
  twins({
    figure: 'existing surface above finished grade, ground at the stakes flush',
    code: 'EXISTING_DIFFERS',
    subject: 'Drive',
    says: { declared: 100, declaredSide: 'above', shown: 0, shownSide: 'above' },
    set: (job, above: string) => (driveOf(job)['existingAboveFinish'] = above),
    danger: '100 mm',
    harmless: '40 mm',
  }),
  twins({
    figure: 'existing surface above finished grade, spot heights 120 mm over it',
    code: 'EXISTING_DIFFERS',
    subject: 'Drive',
    says: { declared: 60, declaredSide: 'below', shown: 120, shownSide: 'above' },
    set: (job, above: string) => {
      clearStakes(job, 'ground');
      job['existingLevels'] = spotsAt([-1, 4, 9], () => 0.12);
      driveOf(job)['existingAboveFinish'] = above;
    },
    danger: '-60 mm',
    harmless: '80 mm',
  }),
];

const DIGS = [
  twins({
    figure: 'underside of a footing',
    code: 'DIG_BELOW_FOOTING',
    subject: 'Drive',
    says: { edge: 4, dig: 305, footing: 300, below: 5 },
    set: (job, footing: string) => (driveOf(job)['edges'] = edge4({ along: 'building', footing })),
    danger: '300 mm',
    harmless: '305 mm',
  }),
  twins({
    figure: 'base beside a building without a known footing',
    code: 'FOOTING_NOT_KNOWN',
    subject: 'Drive',
    says: { edge: 4, dig: 451, limit: 450 },
    set: setBase,
    danger: '346 mm',
    harmless: '345 mm',
  }),
  twins({
    figure: 'ground beside a building without a known footing',
    code: 'FOOTING_NOT_KNOWN',
    subject: 'Drive',
    // 305 + 300 - 150
    says: { edge: 4, dig: 455, limit: 450 },
    set: (job, ground: string) => setStakes(job, ['A1', 'A2', 'A3', 'B1', 'B2', 'B3'], { ground }),
    danger: '150 mm',
    harmless: '155 mm',
  }),
  twins({
    figure: 'base down to 4 ft',
    code: 'DIG_RULE',
    subject: 'Drive',
    says: { rule: 'egress', depth: 1219.2 },
    set: (job, thickness: string) => {
      job['excavation'] = { soil: 'C', spoilDistance: '1 m' };
      driveOf(job)['edges'] = edge4('restraint');
      setBase(job, thickness);
    },
    danger: '1114.2 mm',
    harmless: '1114.1 mm',
  }),
  twins({
    figure: 'base down to 4 ft in soil that nobody has classified',
    code: 'DIG_RULE',
    subject: 'Drive',
    says: { rule: 'egress', depth: 1219.2 },
    set: (job, thickness: string) => {
      driveOf(job)['edges'] = edge4('restraint');
      setBase(job, thickness);
    },
    danger: '1114.2 mm',
    harmless: '1114.1 mm',
  }),
  twins({
    figure: 'distance to spoil',
    code: 'SPOIL_TOO_NEAR',
    subject: 'Drive',
    says: { distance: 600, least: 609.6 },
    set: (job, spoilDistance: string) => (job['excavation'] = { soil: 'C', spoilDistance }),
    danger: '600 mm',
    harmless: '610 mm',
  }),
  twins({
    figure: 'slope of the side toward a walk 0.6 m away',
    code: 'SIDE_RUNS_INTO_DIG',
    subject: 'Drive',
    says: { other: 'Walk', depth: 305 },
    set: (job, batter: number) => {
      driveOf(job)['edges'] = edge2({ along: 'open', batter });
      job.pavements.push(walkFrom(8.6));
    },
    danger: 3,
    harmless: 0.5,
  }),
  twins({
    figure: 'stakes whose ground was read',
    code: 'SURFACE_GAP',
    subject: 'Drive',
    // beyond the diagonal from A3 to B1: 4 m down from y = 4 to 2.4 of it at x = 0 is outside
    says: { levels: 'ground readings at stakes' },
    set: (job, unread: readonly string[]) => {
      for (const one of job.stakes) {
        if (unread.includes(String(one['id']))) Reflect.deleteProperty(one, 'ground');
      }
    },
    danger: ['B2', 'B3'],
    harmless: [],
  }),
  twins({
    figure: 'how far spot heights reach',
    code: 'SURFACE_GAP',
    subject: 'Drive',
    // half a metre by 4 m
    says: { area: 2, levels: 'spot levels' },
    set: (job, x: number) => (job['existingLevels'] = spotsAt([-1, 4, x])),
    danger: 7.5,
    harmless: 8,
  }),
];

const STRINGS = [
  twins({
    figure: 'ground read upward from the string',
    code: 'STRING_IN_GROUND',
    subject: 'stake A2',
    says: { string: 'a', above: 20 },
    set: (job, ground: string) => setStakes(job, ['A2'], { ground }),
    danger: '-20 mm',
    harmless: '20 mm',
  }),
  twins({
    figure: 'height of a hump between two stakes',
    code: 'STRING_IN_GROUND',
    subject: 'string a, A1 to A2',
    says: { string: 'a', above: 50, x: 2000, y: -600 },
    set: (job, hump: number) => {
      job['existingLevels'] = spotsAt([-1, 0, 2, 4, 9], (x, y) => (x === 2 && y < 0 ? hump : 0));
    },
    danger: 0.35,
    harmless: 0.3,
  }),
  twins({
    figure: 'pull in the string',
    code: 'STRING_SAGS',
    subject: 'string a, A1 to A2',
    // 0.05 N/m over 4 m: 0.05 x 16 / (8 x 5) is 20 mm
    says: { sag: 20, tolerance: 10 },
    set: (job, tension: string) => {
      job['string'] = { tension, weightPerLength: '0.05 N/m' };
      setStakes(job, ['B2'], {});
      dropStringB(job);
    },
    danger: '5 N',
    harmless: '12 N',
  }),
  twins({
    figure: 'tolerance of stakes along a half circle',
    code: 'STAKES_TOO_FAR_ON_CURVE',
    subject: 'string c, C1 to C2',
    // 3.25 m from the centre, 1.75 m apart in x and in y: 3.25 - sqrt(3.25^2 - 1.53125)
    says: { edge: 2, off: 244.8, tolerance: 240 },
    also: ['LINE_NOT_CHECKED'],
    set: (job, tolerance: string) => {
      clearStakes(job, 'ground');
      job['stakeTolerance'] = tolerance;
      driveOf(job)['outline'] = {
        ...(driveOf(job)['outline'] as object),
        arcs: [{ edge: 2, bulgeMiddleOrdinate: '2 m' }],
      };
      job.stakes.push({ id: 'C1', x: '9.25 m', y: '-1 m' }, { id: 'C2', x: '11 m', y: '0.75 m' });
      job.stringLines.push({ id: 'c', pavement: 'drive', stakes: ['C1', 'C2'] });
    },
    danger: '240 mm',
    harmless: '245 mm',
  }),
  twins({
    figure: 'finished grade at the far stakes: a low point at 4 m',
    code: 'LOW_POINT',
    subject: 'stake A2',
    says: { string: 'a', from: 'A1', to: 'A3', drop: 100, rise: 100 },
    set: (job, finish: string) => setStakes(job, ['A3', 'B3'], { finish }),
    danger: '50.00 m',
    harmless: '49.80 m',
  }),
  twins({
    figure: 'cross slope at a low point',
    code: 'LOW_POINT',
    subject: 'stake A2',
    says: { string: 'a', from: 'A1', to: 'A3', drop: 100, rise: 100 },
    set: (job, crossSlope: string) => {
      dropStringB(job);
      setStakes(job, ['A3'], { finish: '50.00 m' });
      driveOf(job)['crossSlope'] = crossSlope;
    },
    danger: '1.9%',
    harmless: '2%',
  }),
  twins({
    figure: 'stakes of a string',
    code: 'STAKE_UNUSED',
    subject: 'stake X',
    says: {},
    set: (job, stakes: readonly string[]) => {
      job.stakes.push({ id: 'X', x: '12 m', y: '4.6 m' });
      Object.assign(job.stringLines[1] ?? {}, { stakes });
    },
    danger: ['B1', 'B2', 'B3'],
    harmless: ['B1', 'B2', 'B3', 'X'],
  }),
  twins({
    figure: 'outline of old paving',
    code: 'OLD_PAVING_UNUSED',
    subject: 'old asphalt 1',
    says: {},
    set: (job, east: number) => {
      const x = [east, east + 2, east + 2, east];
      const points = x.map((at, k) => [at, k < 2 ? 1 : 2]);
      Object.assign(job, {
        oldPaving: [{ material: 'asphalt', thickness: '60 mm', outline: { unit: 'm', points } }],
      });
    },
    danger: 100,
    harmless: 1,
  }),
];

const SLOPES = [
  twins({
    figure: 'finished grade at the end of a drive',
    code: 'SLOPE_TOO_STEEP',
    subject: 'string a, A2 to A3',
    // 49.9 to 49.2 in 4 m, over 1 in 6
    says: { slope: 17.5, most: 16.667, purpose: 'a private drive' },
    set: (job, finish: string) => setStakes(job, ['A3', 'B3'], { finish }),
    danger: '49.2 m',
    harmless: '49.25 m',
  }),
  twins({
    figure: 'finished grade at the end of a walk',
    code: 'SLOPE_TOO_STEEP',
    subject: 'string a, A2 to A3',
    says: { slope: 6.25, most: 5, purpose: 'an accessible route' },
    set: (job, finish: string) => {
      driveOf(job)['use'] = 'pedestrian';
      setStakes(job, ['A3', 'B3'], { finish });
    },
    danger: '49.65 m',
    harmless: '49.70 m',
  }),
  twins({
    figure: 'level of a plane of a walk',
    code: 'SLOPE_TOO_STEEP',
    subject: 'Drive',
    says: { slope: 6.25, most: 5, purpose: 'an accessible route' },
    set: (job, z: number) => {
      driveOf(job)['use'] = 'pedestrian';
      layGrade(job, 'plane', [
        [0, 0, 50],
        [0, 4, 50],
        [8, 0, z],
      ]);
    },
    danger: 49.5,
    harmless: 49.6,
  }),
  twins({
    figure: 'finished levels of a walk',
    code: 'SLOPE_TOO_STEEP',
    subject: 'Drive',
    says: { slope: 7, most: 5, purpose: 'an accessible route' },
    set: (job, z: number) => {
      driveOf(job)['use'] = 'pedestrian';
      finishedTo(job, z);
    },
    danger: 49.3,
    // 5.04 %: levels are rounded
    harmless: 49.496,
  }),
  twins({
    figure: 'place of the third level of a plane',
    code: 'GRADE_EXTENDED',
    subject: 'Drive',
    // past the line from (3, 0) to (0, 4): (4 x 8 + 3 x 4 - 12) / 5; the levels are 12 / 5 wide there
    says: { far: 6400, farLimit: 2400, x: 8000, y: 4000 },
    set: (job, x: number) =>
      layGrade(job, 'plane', [
        [0, 0, 50],
        [0, 4, 50],
        [x, 0, 49.8],
      ]),
    danger: 3,
    harmless: 8,
  }),
  twins({
    figure: 'place of the last level of a line',
    code: 'GRADE_EXTENDED',
    subject: 'Drive',
    says: { far: 4100, farLimit: 3900, x: 8000 },
    set: (job, x: number) =>
      layGrade(job, 'line', [
        [0, 2, 50],
        [x, 2, 49.9],
      ]),
    danger: 3.9,
    harmless: 4,
  }),
];

const MATERIALS = [
  twins({
    figure: 'density of stone, a digit short',
    code: 'DENSITY_UNLIKELY',
    subject: 'stone',
    says: { what: 'compacted dry density', got: 210, low: 1200, high: 2900 },
    set: (job, compactedDryDensity: string) => setStone(job, { compactedDryDensity }),
    danger: '210 kg/m3',
    harmless: '1200 kg/m3',
  }),
  twins({
    figure: 'density of stone, heavier than rock',
    code: 'DENSITY_UNLIKELY',
    subject: 'stone',
    says: { what: 'compacted dry density', got: 2901, low: 1200, high: 2900 },
    set: (job, compactedDryDensity: string) => setStone(job, { compactedDryDensity }),
    danger: '2901 kg/m3',
    harmless: '2900 kg/m3',
  }),
  twins({
    figure: 'density of sand',
    code: 'DENSITY_UNLIKELY',
    subject: 'sand',
    says: { what: 'compacted dry density', got: 170, low: 1200, high: 2200 },
    set: (job, compactedDryDensity: string) => setSand(job, { compactedDryDensity }),
    danger: '170 kg/m3',
    harmless: '1700 kg/m3',
  }),
  twins({
    figure: 'density of soil',
    code: 'DENSITY_UNLIKELY',
    subject: 'soil',
    says: { what: 'bank density', got: 180, low: 1000, high: 2700 },
    set: (job, bankDensity: string) => (job.soil['bankDensity'] = bankDensity),
    danger: '180 kg/m3',
    harmless: '1800 kg/m3',
  }),
  twins({
    figure: 'density of old paving',
    code: 'DENSITY_UNLIKELY',
    subject: 'old paving, asphalt',
    says: { what: 'density', got: 240, low: 1000, high: 3000 },
    set: (job, density: string) => {
      job['oldPaving'] = [{ material: 'asphalt', thickness: '50 mm', density, pavement: 'drive' }];
    },
    danger: '240 kg/m3',
    harmless: '2400 kg/m3',
  }),
  twins({
    figure: 'compaction of stone',
    code: 'RATIO_UNLIKELY',
    subject: 'stone',
    says: { what: 'compacted over loose volume', got: 0.97, low: 0.6, high: 0.95 },
    set: (job, compactedPerLoose: number) => setStone(job, { compactedPerLoose }),
    danger: 0.97,
    harmless: 0.95,
  }),
  twins({
    figure: 'compaction of sand',
    code: 'RATIO_UNLIKELY',
    subject: 'sand',
    says: { what: 'compacted over loose volume', got: 0.55, low: 0.6, high: 0.95 },
    set: (job, compactedPerLoose: number) => setSand(job, { compactedPerLoose }),
    danger: 0.55,
    harmless: 0.6,
  }),
  twins({
    figure: 'moisture of stone',
    code: 'RATIO_UNLIKELY',
    subject: 'stone',
    says: { what: 'moisture', got: 0.6, low: 0, high: 0.25 },
    set: (job, moisture: number) => setStone(job, { moisture }),
    danger: 0.6,
    harmless: 0.06,
  }),
  twins({
    figure: 'swell of soil',
    code: 'RATIO_UNLIKELY',
    subject: 'soil',
    says: { what: 'loose over bank volume', got: 2.4, low: 1.02, high: 1.8 },
    set: (job, loosePerBank: number) => (job.soil['loosePerBank'] = loosePerBank),
    danger: 2.4,
    harmless: 1.8,
  }),
  twins({
    figure: 'shrinkage of soil',
    code: 'RATIO_UNLIKELY',
    subject: 'soil',
    says: { what: 'compacted over bank volume', got: 0.5, low: 0.7, high: 1.4 },
    set: (job, compactedPerBank: number) => (job.soil['compactedPerBank'] = compactedPerBank),
    danger: 0.5,
    harmless: 0.7,
  }),
  twins({
    figure: 'lift of stone',
    code: 'LIFT_TOO_THICK',
    subject: 'stone',
    says: { lift: 201, most: 200 },
    set: (job, maxLift: string) => setStone(job, { maxLift }),
    danger: '201 mm',
    harmless: '200 mm',
  }),
];

const walkAlong = (edges: readonly unknown[], fields: object = {}) =>
  walkFrom(8, { edges, ...fields });
const RESTRAINED = ['restraint', 'restraint', 'restraint', 'restraint'];

const EDGES = [
  twins({
    figure: 'an edge about which nothing is said',
    code: 'EDGE_NOT_SAID',
    subject: 'Drive',
    says: { edges: 'edge 2' },
    set: (job, said: string | null) => (driveOf(job)['edges'] = edge2(said)),
    danger: null,
    harmless: 'open',
  }),
  twins({
    figure: 'edges of which none is said',
    code: 'EDGE_NOT_SAID',
    subject: 'Drive',
    says: { edges: 'every edge' },
    set: (job, edges: readonly string[] | undefined) => {
      if (edges === undefined) delete driveOf(job)['edges'];
      else driveOf(job)['edges'] = edges;
    },
    danger: undefined,
    harmless: ['open', 'open', 'open', 'open'],
  }),
  twins({
    figure: 'where a walk starts',
    code: 'EDGES_SHARED',
    subject: 'Drive',
    says: { edge: 2, other: 'Walk', otherEdge: 4, run: 2000 },
    set: (job, west: number) => job.pavements.push(walkFrom(west)),
    danger: 8.001,
    harmless: 8.0011,
  }),
  twins({
    figure: 'edge of a walk that meets an adjoining drive',
    code: 'EDGES_SHARED',
    subject: 'Drive',
    says: { edge: 2, other: 'Walk', otherEdge: 4, run: 2000 },
    set: (job, said: string) => {
      driveOf(job)['edges'] = edge2('adjoining');
      job.pavements.push(walkAlong([...RESTRAINED.slice(1), said]));
    },
    danger: 'restraint',
    harmless: 'adjoining',
  }),
  twins({
    figure: 'edge of a drive with nothing along it',
    code: 'NOTHING_ADJOINS',
    subject: 'Drive',
    says: { edge: 2 },
    set: (job, said: string) => (driveOf(job)['edges'] = edge2(said)),
    danger: 'adjoining',
    harmless: 'restraint',
  }),
  twins({
    figure: 'hollow of a walk round the end of a drive',
    code: 'EDGES_SHARED',
    subject: 'Drive',
    // an arc of 4 m by 0.5 m: radius 4.25 m, half angle asin(2 / 4.25)
    says: { edge: 2, other: 'Walk', otherEdge: 4, run: 4164.6 },
    set: (job, hollow: string) => {
      const drive = driveOf(job);
      drive['outline'] = {
        ...(drive['outline'] as object),
        arcs: [{ edge: 2, bulgeMiddleOrdinate: '0.5 m' }],
      };
      const outline = {
        unit: 'm',
        points: [
          [8, 0],
          [11, 0],
          [11, 4],
          [8, 4],
        ],
        arcs: [{ edge: 4, bulgeMiddleOrdinate: hollow }],
      };
      job.pavements.push(walkAlong(RESTRAINED, { outline }));
    },
    danger: '-0.5 m',
    harmless: '-0.6 m',
  }),
];

const MORE = [
  twins({
    figure: 'where a walk meets the end of a drive',
    code: 'EDGES_SHARED',
    subject: 'Drive',
    says: { edge: 2, other: 'Walk', otherEdge: 4, run: 100 },
    set: (job, south: number) => {
      const points = [
        [8, south],
        [10, south],
        [10, 4.5],
        [8, 4.5],
      ];
      job.pavements.push(walkAlong(RESTRAINED, { outline: { unit: 'm', points } }));
    },
    danger: 3.9,
    harmless: 3.999,
  }),
  twins({
    figure: 'second stake of a string along a half circle, or before it',
    code: 'STAKES_TOO_FAR_ON_CURVE',
    subject: 'string c, C1 to C2',
    says: { edge: 2, off: 244.8, tolerance: 240 },
    also: ['LINE_NOT_CHECKED'],
    set: (job, [x, y]: readonly [string, string]) => {
      clearStakes(job, 'ground');
      job['stakeTolerance'] = '240 mm';
      driveOf(job)['outline'] = {
        ...(driveOf(job)['outline'] as object),
        arcs: [{ edge: 2, bulgeMiddleOrdinate: '2 m' }],
      };
      job.stakes.push({ id: 'C1', x: '9.25 m', y: '-1 m' }, { id: 'C2', x, y });
      job.stringLines.push({ id: 'c', pavement: 'drive', stakes: ['C1', 'C2'] });
    },
    danger: ['11 m', '0.75 m'],
    harmless: ['6.75 m', '-1 m'],
  }),
  twins({
    figure: 'rise beyond a low point',
    code: 'LOW_POINT',
    subject: 'stake A2',
    says: { drop: 100, rise: 2 },
    set: (job, finish: string) => {
      job['minimumFall'] = '0.01%';
      setStakes(job, ['A3', 'B3'], { finish });
    },
    danger: '49.902 m',
    harmless: '49.901 m',
  }),
  twins({
    figure: 'cross slope of a line of levels with a low point',
    code: 'LOW_POINT',
    subject: 'stake A2',
    says: { drop: 100, rise: 100 },
    set: (job, crossSlope: string) => {
      layGrade(job, 'line', [
        [0, 2, 50],
        [4, 2, 49.9],
        [8, 2, 50],
      ]);
      Object.assign(driveOf(job)['grade'] as object, { crossSlope });
    },
    danger: '1.9%',
    harmless: '2%',
  }),
  twins({
    figure: 'height of a hump below a string alone',
    code: 'STRING_IN_GROUND',
    subject: 'string a, A1 to A2',
    says: { string: 'a', above: 50, x: 2000, y: -600 },
    also: ['NO_FINISHED_SURFACE'],
    set: (job, hump: number) => {
      dropStringB(job);
      job['existingLevels'] = spotsAt([-1, 0, 2, 4, 9], (x, y) => (x === 2 && y < 0 ? hump : 0));
    },
    danger: 0.35,
    harmless: 0.3,
  }),
  twins({
    figure: 'how far a drive reaches over steep finished levels',
    code: 'SLOPE_TOO_STEEP',
    subject: 'Drive',
    // from x = 9 to 12 m they fall by 0.6 m
    says: { slope: 20, most: 16.667 },
    set: (job, east: number) => {
      finishedTo(job, 49.7);
      const levels = driveOf(job)['finishedLevels'] as { points: number[][] };
      levels.points.push([12, -1, 49.1], [12, 5, 49.1]);
      driveOf(job)['outline'] = {
        unit: 'm',
        points: [
          [0, 0],
          [east, 0],
          [east, 4],
          [0, 4],
        ],
      };
    },
    danger: 10.5,
    harmless: 8,
  }),
];

const ALL = [
  ...LINES,
  ...WATER,
  ...CONTRADICTIONS,
  ...DIGS,
  ...STRINGS,
  ...SLOPES,
  ...MATERIALS,
  ...EDGES,
  ...MORE,
];

const codesOf = ({ warnings }: JobPlan) => [...new Set(warnings.map(({ code }) => code))].sort();

test('the site warns of nothing', () => {
  expect(planFile(harmlessSite()).warnings).toEqual([]);
  expect(ALL.length).toBeGreaterThanOrEqual(50);
});

describe.each(ALL)('$figure', ({ code, subject, says, also, dangerous, harmless }) => {
  test(`a danger: ${code}`, () => {
    const plan = dangerous();
    const found = plan.warnings.find((one) => one.code === code && one.subject === subject);
    expect(codesOf(plan)).toEqual([...also, code].sort());
    if (found === undefined) expect.unreachable(JSON.stringify(plan.warnings));
    expect(figuresOf(found)).toMatchObject(says);
    for (const system of ['us', 'metric'] as const) {
      expect(describeWarning(found, { system })).toMatch(/^[A-Z][^{}]*[^\s.]\.$/);
    }
  });

  test('its harmless twin', () => {
    expect(codesOf(harmless())).toEqual([...also].sort());
  });
});

/** The wall of the drive as the first edge of an outline that runs the other way. */
const turned = (job: LooseJob, finish: string): void => {
  const points = [
    [0, 0],
    [0, 4],
    [8, 4],
    [8, 0],
  ];
  Object.assign(driveOf(job), {
    outline: { unit: 'm', points },
    edges: ['building', 'restraint', 'restraint', 'restraint'],
  });
  setStakes(job, ['B1'], { finish });
};

describe('water at a wall, however it is drawn', () => {
  const wetAt = (edit: (job: LooseJob) => void) => {
    const job = harmlessSite();
    edit(job);
    return planFile(job)
      .warnings.filter(({ code }) => code === 'FALLS_TO_BUILDING')
      .map((one) => figuresOf(one));
  };

  test('an outline that runs the other way', () => {
    expect(wetAt((job) => turned(job, '49.80 m'))).toMatchObject([{ edge: 1, fall: 2.5 }]);
    expect(wetAt((job) => turned(job, '50.00 m'))).toEqual([]);
  });

  test('stakes and strings in another order', () => {
    const found = wetAt((job) => {
      setStakes(job, ['B1'], { finish: '49.80 m' });
      job.stakes.reverse();
      job.stringLines.reverse();
    });
    expect(found).toMatchObject([{ edge: 4, fall: 2.5 }]);
  });

  test('far from the origin of its grid', () => {
    const found = wetAt((job) => {
      setStakes(job, ['B1'], { finish: '49.80 m' });
      for (const one of job.stakes) {
        one['x'] = `${Number.parseFloat(String(one['x'])) + 4_000_000} m`;
      }
      Object.assign(driveOf(job), { outline: { unit: 'm', points: moved(4_000_000) } });
    });
    expect(found).toMatchObject([{ edge: 4, fall: 2.5, x: 4e9 }]);
  });

  test('a round wall: where its outward side points up the slope', () => {
    // bulging out of the drive at x = 0 by 0.5 m, the wall is wet where the drive falls to it
    const round = (finish: string) =>
      wetAt((job) => {
        Object.assign(driveOf(job), {
          outline: {
            ...(driveOf(job)['outline'] as object),
            arcs: [{ edge: 4, bulgeMiddleOrdinate: '0.5 m' }],
          },
        });
        setStakes(job, ['A1', 'B1'], { finish });
      });
    // the steepest chord faces the slope to within a twentieth of a radian
    expect(round('49.80 m')).toMatchObject([{ edge: 4, along: 'building' }]);
    expect(Number(round('49.80 m')[0]?.['fall'])).toBeGreaterThan(2.49);
    expect(round('50.00 m')).toEqual([]);
  });
});

const moved = (by: number) => [
  [by, 0],
  [by + 8, 0],
  [by + 8, 4],
  [by, 4],
];

test('a line beside the dig is not warned of, one that runs out of it is measured inside alone', () => {
  const coverOf = (path: readonly (readonly [number, number])[]) => {
    const job = harmlessSite();
    // a bank of 200 mm at x = 6 m, half of it within the dig
    job['existingLevels'] = spotsAt([-1, 4, 6, 8, 9], (x, y) => (x === 6 && y > 3 ? 0.2 : 0));
    job['utilities'] = [
      line({ path: path.map(([x, y]) => ({ x: `${x} m`, y: `${y} m` })), found: '455 mm' }),
    ];
    const { warnings, pavements } = planFile(job);
    const left = pavements[0]?.nearby.utilities[0]?.left?.toNumber('mm') ?? null;
    return { codes: warnings.map(({ code }) => code), left };
  };
  expect(
    coverOf([
      [-3, 8],
      [12, 8],
    ]),
  ).toEqual({ codes: [], left: null });
  // from y = 2 to 4.6 m the bank rises to 200 mm: at the edge, y = 4, 2 / 2.6 of it
  const { codes, left } = coverOf([
    [6, -3],
    [6, 9],
  ]);
  expect(codes).toEqual(['UTILITY_IN_DIG', 'UTILITY_ABOVE_BOTTOM']);
  expect(left).toBeCloseTo(455 - 305 - (200 * 2) / 2.6, 3);
});

test('three stakes a hand out of one line tell nothing of the slope across them', () => {
  const job = harmlessSite();
  dropStringB(job);
  job['stakeTolerance'] = '50 mm';
  // 2 mm in 40 mm would be 5 % at the wall along y = 0
  setStakes(job, ['A2'], { y: '-0.64 m', finish: '49.898 m' });
  driveOf(job)['edges'] = ['building', 'restraint', 'restraint', 'restraint'];
  expect(codesOf(planFile(job))).toEqual([]);
});

test.each([-0.4, -0.305])('over a line under ground at %d m nothing is dug', (low) => {
  const job = harmlessSite();
  job['existingLevels'] = spotsAt([-1, 1, 2, 3, 9], (at) => (at === 2 ? low : 0));
  const path = ['-3 m', '7 m'].map((y) => ({ x: '2 m', y }));
  job['utilities'] = [line({ path, found: '455 mm', minimumCover: '300 mm' })];
  const [one] = planFile(job).pavements[0]?.nearby.utilities ?? [];
  expect(one?.handDigArea.isZero()).toBe(false);
  expect(one?.cover).toBeNull();
  // 455 mm below ground that is filled by 95 mm, or not at all
  expect(one?.left?.toNumber('mm')).toBeCloseTo(455 - (305 + low * 1000), 6);
});
