import type { FieldPath } from '../../../errors.js';
import { entry, known, present } from '../../../invariant.js';
import { max } from '../../../units/aggregate.js';
import type { Length } from '../../../units/quantity.js';
import { ROOT_CUT_MARKS } from '../../../sources/tree-rules.js';
import { formulaStep, given, published, type Step, type Worked } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { LaidOut } from '../lay-out.js';
import { done, place, placeBy, take, worked, type PlacedStep } from '../placed.js';
import type { TreePlan, UtilityPlan } from '../plan-of-site.js';
import type { PavementPlan } from '../plan.js';
import { gateSteps } from './gate-steps.js';

/** What the working of lines, trees and rules near a dig is placed with. Internal. */
export interface NearbyWorked {
  readonly handDig: Worked | null;
  readonly covers: readonly (Worked | null)[];
  readonly zones: readonly Worked[];
  readonly gates: Worked | null;
}

const at = (...path: FieldPath): FieldPath => ['nearby', ...path];

/** The working of lines, trees and rules near a dig. Internal. */
export function nearbySteps(
  job: ReadJob,
  laid: LaidOut,
  { plan, made }: { readonly plan: PavementPlan; readonly made: NearbyWorked },
): PlacedStep[] {
  const { nearby } = plan;
  const isEmpty = nearby.handDig === null && nearby.gates === null && nearby.trees.length === 0;
  if (isEmpty && nearby.utilities.length === 0) return [];
  return [
    ...deepestSteps(job, laid, plan),
    ...handDigSteps(job, plan, made),
    ...nearby.utilities.flatMap((line, index) => lineSteps(job, { line, index, plan, made })),
    ...nearby.trees.flatMap((tree, index) => treeSteps(job, { tree, index, plan, made })),
    ...gateSteps(nearby, made.gates),
  ];
}

/** The deepest known dig, on which lines and rules depend. */
function deepestSteps(
  job: ReadJob,
  { measured, pavement }: LaidOut,
  plan: PavementPlan,
): PlacedStep[] {
  const lines = job.stringLines.flatMap(({ pavement: id }, k) => (id === pavement.id ? [k] : []));
  const { deepestCut } = plan.earth;
  const depths: { value: Length; path: FieldPath }[] = [
    { value: plan.dig.depth, path: ['dig', 'depth'] },
    ...measured.flatMap((stakes, k) =>
      stakes.flatMap(({ dig }, stake) =>
        dig === null
          ? []
          : [
              {
                value: dig,
                path: ['plan', 'stringLines', entry(lines, k), 'stakes', stake, 'dig'],
              },
            ],
      ),
    ),
    ...(deepestCut === null
      ? []
      : [{ value: deepestCut.depth, path: ['earth', 'deepestCut', 'depth'] }]),
  ];
  return [
    worked({
      title: 'Deepest known dig',
      formula: 'e = max(E)',
      takes: [
        take(
          'E',
          'mean depth, the digs at stakes and the deepest cut',
          depths.map(({ value }) => value),
          ...depths.map(({ path }) => path),
        ),
      ],
      result: given('e', 'depth', max(depths.map(({ value }) => value))),
      gives: [],
    }),
  ];
}

function handDigSteps(
  job: ReadJob,
  plan: PavementPlan,
  { handDig: worker }: NearbyWorked,
): PlacedStep[] {
  const { handDig, utilities } = plan.nearby;
  if (handDig === null) return [];
  const lines = known(job.utilities, 'utilities');
  const tolerances = lines.flatMap(({ tolerance }, k) =>
    tolerance === undefined ? [] : [{ tolerance, path: ['job', 'utilities', k, 'tolerance'] }],
  );
  const dig = take('A', 'area of the dig', plan.areas.dig, ['areas', 'dig']);
  const zones = done({
    title: 'Zones of marked lines in the dig',
    procedure: 'handDig',
    method:
      'Draws a strip along each line, of its width and the tolerance to either side, and returns the area of each in the dig, and what each adds to those before.',
    takes: [
      dig,
      ...(tolerances.length === 0
        ? []
        : [
            take(
              't',
              'tolerance to either side of each line',
              tolerances.map(({ tolerance }) => tolerance),
              ...tolerances.map(({ path }) => path),
            ),
          ]),
    ],
    result: given('Z', 'area of each zone in the dig, and what each adds', [
      ...handDig.zones.map(({ area }) => area),
      ...handDig.zones.map(({ added }) => added),
      ...utilities.map(({ handDigArea }) => handDigArea),
    ]),
    gives: [
      ...handDig.zones.map((_, k) => at('handDig', 'zones', k, 'area')),
      ...handDig.zones.map((_, k) => at('handDig', 'zones', k, 'added')),
      ...utilities.map((_, k) => at('utilities', k, 'handDigArea')),
    ],
  });
  return [
    zones,
    worked({
      title: 'Zones of marked lines together',
      formula: 'A = sum(a)',
      takes: [
        take(
          'a',
          'area that each zone adds',
          handDig.zones.map(({ added }) => added),
          ...handDig.zones.map((_, k) => at('handDig', 'zones', k, 'added')),
        ),
      ],
      result: given('A', 'zones together, within the dig', handDig.area),
      gives: [at('handDig', 'area')],
    }),
    ...placeBy(
      present(worker, 'hand dig').working,
      { V: [at('handDig', 'volume')] },
      { A: [at('handDig', 'area')] },
    ),
  ];
}

function lineSteps(
  job: ReadJob,
  {
    line,
    index,
    plan,
    made,
  }: {
    readonly line: UtilityPlan;
    readonly index: number;
    readonly plan: PavementPlan;
    readonly made: NearbyWorked;
  },
): PlacedStep[] {
  const found = job.utilities?.[index]?.found;
  if (line.left === null || found === undefined) return [];
  const name = `deepest dig along ${line.id}`;
  const dug = found.minus(line.left);
  const top = ['job', 'utilities', index, 'found'];
  return [
    done({
      title: `Deepest dig along ${line.id}`,
      procedure: 'planJob',
      method: 'Follows the line across the dig, and returns the largest depth along it.',
      takes: [take('E', 'depth of dig', plan.dig.depth, ['dig', 'depth'])],
      result: given('e', name, dug),
      gives: [],
    }),
    worked({
      title: `Ground left between the dig and ${line.id}`,
      formula: 'c = f - e',
      takes: [take('f', 'top of the line', found, top), take('e', name, dug)],
      result: given('c', `ground left over ${line.id}`, line.left),
      gives: [at('utilities', index, 'left')],
    }),
    ...placeBy(
      (made.covers[index]?.working ?? []).map((step): Step => renamed(step, 'e', name)),
      { c: [at('utilities', index, 'cover', 'cover')] },
      { f: [top] },
    ),
  ];
}

/** The same step with another name for one input. */
const renamed = (step: Step, symbol: string, name: string): Step => ({
  ...step,
  given: step.given.map((input) => (input.symbol === symbol ? { ...input, name } : input)),
});

function treeSteps(
  job: ReadJob,
  {
    tree: { id, zone },
    index,
    plan,
    made,
  }: {
    readonly tree: TreePlan;
    readonly index: number;
    readonly plan: PavementPlan;
    readonly made: NearbyWorked;
  },
): PlacedStep[] {
  const tree = entry(known(job.trees, 'trees'), index);
  const to = (...path: FieldPath) => at('trees', index, 'zone', ...path);
  const inJob = (field: string): FieldPath[] => [['job', 'trees', index, field]];
  const trunk = take('D', 'trunk diameter', tree.trunkDiameter, ...inJob('trunkDiameter'));
  const { value, source } = ROOT_CUT_MARKS.diameters;
  const placed = placeBy(
    entry(made.zones, index).working.map((step) => ({ ...step, title: `${step.title}, ${id}` })),
    { R: [to('radius')], A: [to('cut', 'area')] },
    {
      D: inJob('trunkDiameter'),
      k: inJob('radiusPerDiameter'),
      R0: inJob('minimumRadius'),
      R: [to('radius')],
    },
  );
  return [
    ...placed,
    worked({
      title: `Area of the root zone, ${id}`,
      formula: 'Z = pi * R^2',
      takes: [take('R', 'radius', zone.radius, to('radius'))],
      result: given('Z', 'area of the root zone', zone.area),
      gives: [to('area')],
    }),
    place(
      formulaStep({
        title: `Closest trench to the trunk, ${id}`,
        formula: 'c = n * D',
        given: [published('n', 'trunk diameters', Number(value), source), trunk.input],
        result: given('c', 'closest trench to the trunk', zone.closestTrench),
        source,
      }),
      [to('closestTrench')],
      { D: trunk.from },
    ),
    ...(zone.cut === null
      ? []
      : [
          done({
            title: `Distance from the trunk to the dig, ${id}`,
            procedure: 'rootZone',
            method:
              'Returns the distance from the middle of the trunk to the nearest point of the dig.',
            takes: [
              take('x', 'x of the trunk', tree.x, ...inJob('x')),
              take('y', 'y of the trunk', tree.y, ...inJob('y')),
              take('A', 'area of the dig', plan.areas.dig, ['areas', 'dig']),
            ],
            result: given('d', 'distance from the trunk to the dig', zone.cut.distance),
            gives: [to('cut', 'distance')],
          }),
        ]),
  ];
}
