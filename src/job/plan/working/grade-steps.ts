import { entry } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import type { LevelBook } from '../../../levelling/reduce-levels.js';
import { given } from '../../../working.js';
import type { Pavement } from '../../schema/layer-kinds.js';
import { done, place, take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { PlannedGrade } from '../plan-grade.js';
import type { GradePlan } from '../plan.js';

/** The working of finished grade through fixed levels. Internal. */
export function gradeSteps(
  { grade: asked }: Pavement,
  grade: PlannedGrade | null,
  book: LevelBook | null,
): PlacedStep[] {
  if (grade === null || asked === undefined) return [];
  const { plan } = grade;
  return [
    ...bookedSteps(asked, plan, book),
    ...surfaceSteps(grade.steps(), plan),
    ...finishSteps(plan),
    ...limitSteps(plan),
    ...stretchSteps(plan),
  ];
}

type Grade = NonNullable<Pavement['grade']>;

const level = (index: number, field: string): FieldPath => ['grade', 'levels', index, field];

/** Levels that stand in the level book. */
const bookedSteps = ({ levels }: Grade, plan: GradePlan, book: LevelBook | null): PlacedStep[] =>
  levels.flatMap(({ elevation, levelled }, index) => {
    const made = plan.levels[index];
    const row = book?.rows.findIndex(({ point }) => point === levelled) ?? -1;
    if (elevation !== undefined || made === undefined || row < 0) return [];
    return [
      worked({
        title: `Level of ${made.name}, from the level book`,
        formula: 'z = Z',
        takes: [
          take('Z', `adjusted level of ${levelled}`, made.elevation, [
            'plan',
            'levelBook',
            'rows',
            row,
            'adjusted',
          ]),
        ],
        result: given('z', `level of ${made.name}`, made.elevation),
        gives: [level(index, 'elevation')],
      }),
    ];
  });

/** The elevations of the levels, as an input. */
const elevationsOf = ({ levels }: GradePlan): Taken =>
  take(
    'z',
    'elevation of each level',
    levels.map(({ elevation }) => elevation),
    ...levels.map((_, index) => level(index, 'elevation')),
  );

const ofEach = ({ levels }: GradePlan, field: string) => levels.map((_, k) => level(k, field));

/** The steps of the surface itself. */
function surfaceSteps(steps: readonly PlacedStep[], plan: GradePlan): PlacedStep[] {
  let stretch = 0;
  return steps.map((step) => {
    const symbols = step.given.map(({ symbol }) => symbol);
    if (symbols.includes('z00')) {
      const [z00, z10, z11, z01] = ofEach(plan, 'elevation').map((path) => [path]);
      return place(step, [['grade', 'twist']], {
        ...(z00 && { z00 }),
        ...(z10 && { z10 }),
        ...(z11 && { z11 }),
        ...(z01 && { z01 }),
      });
    }
    if (plan.kind === 'plane') {
      const isSteepest = step.result.symbol === 'g';
      const isListed = step.given.some(
        ({ symbol, value }) =>
          symbol === 'x' && Array.isArray(value) && value.length === plan.levels.length,
      );
      return place(
        step,
        isSteepest
          ? [
              ['grade', 'steepest'],
              ['grade', 'flattest'],
            ]
          : [],
        isListed
          ? { x: ofEach(plan, 'x'), y: ofEach(plan, 'y'), z: ofEach(plan, 'elevation') }
          : {},
      );
    }
    if (plan.kind === 'line' && step.result.symbol === 'g') {
      const k = stretch;
      stretch += 1;
      return place(step, [['grade', 'stretches', k, 'grade']], {
        z1: [level(k, 'elevation')],
        z2: [level(k + 1, 'elevation')],
        L: [['grade', 'stretches', k, 'length']],
      });
    }
    return step;
  });
}

const SURFACES = {
  plane: ['planeThrough', 'Lays a plane through the levels'],
  warped: [
    'warpedSurface',
    'Joins the four levels by straight edges and rules a surface between them',
  ],
  line: ['planJob', 'Runs a line through the levels, with the cross slope to either side'],
} as const;

function finishSteps(plan: GradePlan): PlacedStep[] {
  const { kind, levels, downhillAzimuth } = plan;
  const [procedure, how] = SURFACES[kind];
  const finish = done({
    title: 'Finished grade at the levels',
    procedure,
    method: `${how}, and returns its elevation at each of them.`,
    takes: [elevationsOf(plan)],
    result: given(
      'f',
      'finished grade at each level',
      levels.map((one) => one.finish),
    ),
    gives: ofEach(plan, 'finish'),
  });
  const misses = levels.map(({ name, elevation, finish: made, miss }, index) =>
    worked({
      title: `Level of ${name} above finished grade`,
      formula: 'm = z - f',
      takes: [
        take('z', `level of ${name}`, elevation, level(index, 'elevation')),
        take('f', 'finished grade there', made, level(index, 'finish')),
      ],
      result: given('m', `level of ${name} above finished grade`, miss),
      gives: [level(index, 'miss')],
    }),
  );
  if (downhillAzimuth === null) return [finish, ...misses];
  const azimuth = done({
    title: 'Direction downhill',
    procedure: 'planeThrough',
    method: 'Returns the direction in which the plane falls most, from y over x.',
    takes: [elevationsOf(plan)],
    result: given('a', 'direction downhill', downhillAzimuth),
    gives: [['grade', 'downhillAzimuth']],
  });
  return [finish, ...misses, azimuth];
}

/** Steepest and flattest: of a warped surface over its four edges, of a line over its stretches. */
function limitSteps(plan: GradePlan): PlacedStep[] {
  const { kind, stretches, steepest, flattest } = plan;
  if (kind === 'plane') return [];
  const both = [
    ['steepest', 'max', steepest],
    ['flattest', 'min', flattest],
  ] as const;
  if (kind === 'warped') {
    return both.map(([field, , value]) =>
      done({
        title: `The ${field} slope of the surface`,
        procedure: 'warpedSurface',
        method: `Takes the ${field === 'steepest' ? 'larger' : 'smaller'} slope of the two edges along and of the two across, and returns the slope of both together.`,
        takes: [elevationsOf(plan)],
        result: given('g', `${field} slope`, value),
        gives: [['grade', field]],
      }),
    );
  }
  return both.map(([field, pick, value]) =>
    worked({
      title: `The ${field} fall of the line`,
      formula: `g = ${pick}(f)`,
      takes: [
        take(
          'f',
          'steepest fall of each stretch',
          stretches.map(({ fall }) => fall),
          ...stretches.map((_, k) => ['grade', 'stretches', k, 'fall']),
        ),
      ],
      result: given('g', `${field} slope`, value),
      gives: [['grade', field]],
    }),
  );
}

function stretchSteps({ stretches, levels }: GradePlan): PlacedStep[] {
  return stretches.flatMap(({ from, to, length, rise, grade, crossSlope, fall }, k) => {
    const [a, b] = [entry(levels, k), entry(levels, k + 1)];
    const at = (field: string): FieldPath => ['grade', 'stretches', k, field];
    const ends = (axis: 'x' | 'y') =>
      take(axis, `${axis} of both levels`, [a[axis], b[axis]], level(k, axis), level(k + 1, axis));
    return [
      worked({
        title: `Distance from ${from} to ${to}`,
        formula: 'L = sqrt((x[2] - x[1])^2 + (y[2] - y[1])^2)',
        takes: [ends('x'), ends('y')],
        result: given('L', `distance from ${from} to ${to}`, length),
        gives: [at('length')],
      }),
      worked({
        title: `Rise from ${from} to ${to}`,
        formula: 'h = z2 - z1',
        takes: [
          take('z1', 'elevation at the start', a.elevation, level(k, 'elevation')),
          take('z2', 'elevation at the end', b.elevation, level(k + 1, 'elevation')),
        ],
        result: given('h', `rise from ${from} to ${to}`, rise),
        gives: [at('rise')],
      }),
      worked({
        title: `Steepest fall from ${from} to ${to}`,
        formula: 'f = sqrt(g^2 + c^2)',
        takes: [
          take('g', 'grade (+ rising)', grade, at('grade')),
          take('c', 'cross slope', crossSlope, at('crossSlope')),
        ],
        result: given('f', `steepest fall from ${from} to ${to}`, fall),
        gives: [at('fall')],
      }),
    ];
  });
}
