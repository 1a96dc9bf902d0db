import { entry } from '../../../invariant.js';
import type { FieldPath } from '../../../errors.js';
import { given } from '../../../working.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { Pavement } from '../../schema/layer-kinds.js';
import { take, worked, type PlacedStep } from '../placed.js';
import type { PavementPlan } from '../plan.js';
import { heightOf } from '../../schema/string-height.js';

/** The working of the depths below a line from one string to another. Internal. */
export function betweenSteps(
  job: ReadJob,
  { betweenStrings: asked }: Pavement,
  { betweenStrings: plan, buildUp }: PavementPlan,
): PlacedStep[] {
  if (asked === undefined || plan === null) return [];
  const indexOf = (name: string) => job.stringLines.findIndex(({ id }) => id === name);
  const [from, to] = [indexOf(plan.from), indexOf(plan.to)];
  const [first, second] = [entry(job.stringLines, from), entry(job.stringLines, to)];
  const at = (...path: FieldPath): FieldPath => ['betweenStrings', ...path];
  const width = take('w', 'distance between the strings', plan.width, at('width'));
  const l = take('l', 'height of the first string', heightOf(job, first), [
    'plan',
    'stringLines',
    from,
    'stringHeight',
  ]);
  const r = take('r', 'height of the second string', heightOf(job, second), [
    'plan',
    'stringLines',
    to,
    'stringHeight',
  ]);
  const D = take('D', 'total build-up', buildUp.total, ['buildUp', 'total']);
  const last = plan.rows.length - 1;
  const rows = plan.rows.flatMap(({ distance, toFinish, toSubgrade }, k) => {
    const d = take('d', 'distance from the first string', distance, at('rows', k, 'distance'));
    const name = `row ${k + 1}`;
    return [
      ...(k === last
        ? []
        : [
            worked({
              title: `Distance of ${name}`,
              formula: 'd = k * s',
              takes: [
                take('k', 'rows before', k),
                take('s', 'spacing', asked.spacing, ['given', 'betweenStrings', 'spacing']),
              ],
              result: given('d', 'distance from the first string', distance),
              gives: [at('rows', k, 'distance')],
            }),
          ]),
      worked({
        title: `Finished grade below the line, ${name}`,
        formula: 'f = l + (r - l) * d / w',
        takes: [l, r, d, width],
        result: given('f', `finished grade below the line, ${name}`, toFinish),
        gives: [at('rows', k, 'toFinish')],
      }),
      worked({
        title: `Subgrade below the line, ${name}`,
        formula: 'B = f + D',
        takes: [
          take('f', `finished grade below the line, ${name}`, toFinish, at('rows', k, 'toFinish')),
          D,
        ],
        result: given('B', `subgrade below the line, ${name}`, toSubgrade),
        gives: [at('rows', k, 'toSubgrade')],
      }),
    ];
  });
  return [widthStep(job, { first, second, plan, last, at }), ...rows];
}

function widthStep(
  job: ReadJob,
  {
    first,
    second,
    plan,
    last,
    at,
  }: {
    readonly first: ReadJob['stringLines'][number];
    readonly second: ReadJob['stringLines'][number];
    readonly plan: NonNullable<PavementPlan['betweenStrings']>;
    readonly last: number;
    readonly at: (...path: FieldPath) => FieldPath;
  },
): PlacedStep {
  const ids = [first.stakes[0], first.stakes.at(-1), second.stakes[0]];
  const found = ids.map((id) => {
    const index = job.stakes.findIndex((stake) => stake.id === id);
    return { stake: entry(job.stakes, index), index };
  });
  const list = (axis: 'x' | 'y') =>
    take(
      axis,
      `${axis} of both ends of the first string, and of the first stake of the second`,
      found.map(({ stake }) => stake[axis]),
      ...found.map(({ index }) => ['job', 'stakes', index, axis]),
    );
  return worked({
    title: 'Distance between the strings',
    formula:
      'w = abs((x[2] - x[1]) * (y[3] - y[1]) - (y[2] - y[1]) * (x[3] - x[1])) / sqrt((x[2] - x[1])^2 + (y[2] - y[1])^2)',
    takes: [list('x'), list('y')],
    result: given('w', 'distance between the strings', plan.width),
    gives: [at('width'), at('rows', last, 'distance')],
  });
}
