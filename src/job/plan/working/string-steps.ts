import { entry } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import { depthPath } from './depth-path.js';
import { place, take, worked, done, type PlacedStep, type Taken } from '../placed.js';
import { sandOf } from '../materials.js';
import { rowSteps } from './row-steps.js';
import { pavementAt, stakeAt, stakeOfJob, type StringBasis } from '../string-basis.js';
import { rodSteps, sagSteps } from './rod-steps.js';
import { slopeSteps } from './slope-steps.js';
import type { StringLinePlan } from '../plan-of-strings.js';

/** The working of a string, with the fields that it gives. Internal. */
export const stringSteps = (of: StringBasis): PlacedStep[] => [
  ...depthSteps(of),
  ...surfaceSteps(of),
  ...rowSteps(of),
  ...finishSteps(of),
  ...slopeSteps(of),
  ...rodSteps(of),
  ...sagSteps(of),
];

const HEIGHT: FieldPath = ['stringHeight'];

const ofEach = ({ stakes }: StringLinePlan, ...path: FieldPath): FieldPath[] =>
  stakes.map((_, k) => ['stakes', k, ...path]);

function depthSteps(of: StringBasis): PlacedStep[] {
  const { depths, plan } = of;
  const last = plan.surfaces.length - 1;
  return depths.working.map((step) => {
    if (step.result.symbol === 'B') {
      const gives = [
        ...ofEach(plan, 'subgrade'),
        ...ofEach(plan, 'layers', of.planned.buildUp.layers.length - 1, 'bottom'),
        ['surfaces', last, 'belowString'],
      ];
      return place(step, gives, {
        h: [HEIGHT],
        D: [pavementAt(of, 'plan', 'buildUp', 'total')],
      });
    }
    const k = plan.stakes.findIndex(({ id }) => isAbout(step, id));
    if (step.result.symbol === 'E') {
      return place(step, [['stakes', k, 'dig']], {
        B: [['stakes', k, 'subgrade']],
        g: [['stakes', k, 'ground']],
      });
    }
    const old = step.given.find(({ symbol }) => symbol === 'o');
    return place(step, [['stakes', k, 'soil']], {
      E: [['stakes', k, 'dig']],
      ...oldTaken(of, old?.value),
    });
  });
}

/** True for a step about one stake: the working names it at the end, or before what it is about. */
const isAbout = ({ title }: PlacedStep, id: string): boolean =>
  title === `Dig at stake ${id}` || title === `Soil at stake ${id} after stripping the old surface`;

/** The piece of old paving under a stake, where it is a single one. */
function oldTaken({ job, line }: StringBasis, value: unknown): Record<string, FieldPath[]> {
  const pieces = job.oldPaving ?? [];
  const index = pieces.findIndex(
    ({ pavement, thickness }) =>
      (pavement === undefined || pavement === line.pavement) &&
      thickness.equals(value as typeof thickness),
  );
  return index < 0 ? {} : { o: [['job', 'oldPaving', index, 'thickness']] };
}

/** Every surface below the string, and as it is placed before the plate. */
function surfaceSteps(of: StringBasis): PlacedStep[] {
  const { plan, planned } = of;
  const { stringHeight, surfaces } = plan;
  const h = take('h', 'string above finished grade', stringHeight, HEIGHT);
  return surfaces.flatMap((one, s) => {
    const { surface, belowFinish, belowString, placedBelowString } = one;
    const d = take(
      'd',
      'below finished grade',
      belowFinish,
      pavementAt(of, 'plan', ...depthPath(planned, belowFinish)),
    );
    const { layers } = planned.buildUp;
    const gives = [
      ['surfaces', s, 'belowString'],
      ...(s === 0 ? ofEach(plan, 'finish') : []),
      ...layers.flatMap(({ top, bottom }, k) => [
        ...(top.equals(belowFinish) ? ofEach(plan, 'layers', k, 'top') : []),
        ...(bottom.equals(belowFinish) ? ofEach(plan, 'layers', k, 'bottom') : []),
      ]),
    ];
    // the subgrade has its own step
    const isLast = s === surfaces.length - 1;
    const below = worked({
      title: `${surface} below the string`,
      formula: s === 0 ? 'B = h' : 'B = h + d',
      takes: s === 0 ? [h] : [h, d],
      result: given('B', `${surface} below the string`, belowString),
      gives,
    });
    if (placedBelowString === null) return isLast ? [] : [below];
    const result = given('P', `${surface} below the string, as placed`, placedBelowString);
    const shown = {
      title: `${surface} below the string, as placed`,
      result,
      gives: [['surfaces', s, 'placedBelowString']],
    };
    const [symbols, takes] = placedTaken(of, one);
    return [
      below,
      worked({ ...shown, formula: `P = h + d - ${symbols}`, takes: [h, d, ...takes] }),
    ];
  });
}

/** How much higher a surface is placed: by the settlement of the bedding, or by what the plate takes. */
function placedTaken(
  of: StringBasis,
  { kind, belowFinish }: StringLinePlan['surfaces'][number],
): readonly [string, readonly Taken[]] {
  const { job, planned, basis } = of;
  if (kind === 'pavers' || kind === 'bedding') {
    const sand = sandOf(job.materials, basis.pavement);
    const path = ['job', 'materials', 'sands', job.materials.sands.indexOf(sand), 'settlement'];
    return [
      's',
      sand.settlement === undefined ? [] : [take('s', 'settlement', sand.settlement, path)],
    ];
  }
  const k = planned.lifts.findIndex((lift) => lift.belowFinish.equals(belowFinish));
  const lift = entry(planned.lifts, k);
  const at = (field: string) => pavementAt(of, 'plan', 'lifts', k, field);
  return [
    '(l - c)',
    [
      take('l', 'loose lift', lift.loose, at('loose')),
      take('c', 'compacted lift', lift.compacted, at('compacted')),
    ],
  ];
}

/** Finished grade at the stakes from fixed levels, and the string above it. */
function finishSteps(of: StringBasis): PlacedStep[] {
  const { plan, planned } = of;
  const h = take('h', 'string above finished grade', plan.stringHeight, HEIGHT);
  return plan.stakes.flatMap((stake, k) => {
    const { id, finishElevation: finish, finishFrom, stringElevation } = stake;
    if (finish === null || stringElevation === null) return [];
    const name = `finished grade at ${id}`;
    const levels = planned.grade?.levels ?? [];
    const grade =
      finishFrom === 'stake'
        ? []
        : [
            done({
              title: `Finished grade at ${id}`,
              procedure: 'planJob',
              method:
                'Returns the elevation, at the stake, of the surface through the fixed levels.',
              takes: [
                take('x', `x of ${id}`, stakeAt(of, k, 'x'), stakeOfJob(of, id, 'x')),
                take('y', `y of ${id}`, stakeAt(of, k, 'y'), stakeOfJob(of, id, 'y')),
                take(
                  'z',
                  'elevation of each level',
                  levels.map(({ elevation }) => elevation),
                  ...levels.map((_, n) =>
                    pavementAt(of, 'plan', 'grade', 'levels', n, 'elevation'),
                  ),
                ),
              ],
              result: given('Z', name, finish),
              gives: [['stakes', k, 'finishElevation']],
            }),
          ];
    return [
      ...grade,
      worked({
        title: `Elevation of the string at ${id}`,
        formula: 'Zs = Z + h',
        takes: [take('Z', name, finish, ['stakes', k, 'finishElevation']), h],
        result: given('Zs', `elevation of the string at ${id}`, stringElevation),
        gives: [['stakes', k, 'stringElevation']],
      }),
    ];
  });
}
