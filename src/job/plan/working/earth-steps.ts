import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import type { StepItem } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { levelsTaken } from '../earth/ground-levels.js';
import type { LaidOut } from '../lay-out.js';
import { done, take, worked, type PlacedStep, type Taken } from '../placed.js';
import type { DeepestPlan } from '../plan-of-site.js';
import type { PavementPlan } from '../plan.js';

/** The working of the earth of a dig. Internal. */
export function earthSteps(
  job: ReadJob,
  { ground, dig, pavement }: LaidOut,
  plan: PavementPlan,
): PlacedStep[] {
  const basis: Taken[] = [
    take('A', 'area of the dig, counted here', plan.areas.ownDig, ['areas', 'ownDig']),
    take('O', 'old paving stripped, in place', plan.earth.stripped, ['earth', 'stripped']),
    ...(ground.depth === null
      ? [
          take('D', 'total build-up', plan.buildUp.total, ['buildUp', 'total']),
          ...levelsTaken(job, pavement),
        ]
      : [take('E', 'depth of dig', dig.depth, ['dig', 'depth'])]),
  ];
  return [...strippedSteps(plan), ...cutSteps(plan, basis), ...foundSteps(plan, basis)];
}

function strippedSteps({ oldPaving, earth }: PavementPlan): PlacedStep[] {
  if (oldPaving.length === 0) return [];
  return [
    worked({
      title: 'Old paving stripped, in place',
      formula: 'O = sum(V)',
      takes: [
        take(
          'V',
          'volume of each piece in place',
          oldPaving.map(({ inPlace }) => inPlace),
          ...oldPaving.map((_, index) => ['oldPaving', index, 'inPlace']),
        ),
      ],
      result: given('O', 'old paving stripped, in place', earth.stripped),
      gives: [['earth', 'stripped']],
    }),
  ];
}

const CUT: readonly FieldPath[] = [
  ['earth', 'cut', 'volume'],
  ['spoil', 'bank', 'volume'],
];

function cutSteps({ earth, edges }: PavementPlan, basis: readonly Taken[]): PlacedStep[] {
  const { cut, sides } = earth;
  const isSloped = !sides.isZero();
  const upright = 'soil to dig between upright sides, bank volume';
  const above = cut.volume.minus(sides);
  const between = done({
    title: 'Soil between the stripped ground and the subgrade',
    procedure: 'planJob',
    method:
      'Lowers the ground by the old paving that is stripped, cuts it with the subgrade inside the dig line, and returns the soil above the subgrade. Parts without levels count at the mean depth of the rest.',
    takes: basis,
    result: isSloped
      ? given('Cu', upright, above)
      : given('C', 'soil to dig, bank volume', cut.volume),
    gives: isSloped ? [] : CUT,
  });
  if (!isSloped) return [between];
  return [
    between,
    done({
      title: 'Soil that sloped sides add',
      procedure: 'planJob',
      method:
        'Adds up the areas between the side and the bottom from the foot to the top of the slope. Soil in the dig of another pavement counts there.',
      takes: [
        ...basis,
        take(
          't',
          'top of the slope outside each edge',
          edges.map(({ top }) => top),
          ...edges.map((_, index) => ['edges', index, 'top']),
        ),
      ],
      result: given('S', 'volume that sloped sides add', sides),
      gives: [['earth', 'sides']],
    }),
    worked({
      title: 'Soil to dig, sloped sides included',
      formula: 'C = Cu + S',
      takes: [
        take('Cu', upright, above),
        take('S', 'volume that sloped sides add', sides, ['earth', 'sides']),
      ],
      result: given('C', 'soil to dig, bank volume', cut.volume),
      gives: CUT,
    }),
  ];
}

interface Found {
  readonly name: string;
  readonly value: StepItem | null;
  readonly path: FieldPath;
}

/** What else the cut of the ground with the subgrade shows. */
function foundSteps({ earth }: PavementPlan, basis: readonly Taken[]): PlacedStep[] {
  const at = (...fields: string[]): FieldPath => ['earth', ...fields];
  const found: readonly Found[] = [
    { name: 'fill', value: earth.fill.volume, path: at('fill', 'volume') },
    { name: 'area of cut', value: earth.cutArea, path: at('cutArea') },
    { name: 'area of fill', value: earth.fillArea, path: at('fillArea') },
    { name: 'area without levels', value: earth.uncovered, path: at('uncovered') },
    { name: 'open diagonals', value: earth.diagonalDoubt, path: at('diagonalDoubt') },
    ...deepest('deepest cut', earth.deepestCut, at('deepestCut')),
    ...deepest('deepest fill', earth.deepestFill, at('deepestFill')),
  ];
  const known = found.flatMap(({ name, value, path }) =>
    value === null ? [] : [{ name, value, path }],
  );
  return [
    done({
      title: 'Fill, areas and deepest points of the dig',
      procedure: 'planJob',
      method:
        'Cuts the ground with the subgrade inside the dig line, and returns what is filled, the areas of both, and where they are deepest.',
      takes: basis,
      result: given(
        'R',
        known.map(({ name }) => name).join(', '),
        known.map(({ value }) => value),
      ),
      gives: known.map(({ path }) => path),
    }),
  ];
}

function deepest(name: string, point: DeepestPlan | null, at: FieldPath): Found[] {
  if (point === null) return [];
  return (['depth', 'x', 'y'] as const).map((field) => ({
    name: field === 'depth' ? name : `its ${field}`,
    value: point[field],
    path: [...at, field],
  }));
}
