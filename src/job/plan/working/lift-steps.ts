import { lifts as liftsOf } from '../../../build-up/lifts.js';
import { given, type Step, type StepInput } from '../../../working.js';
import { numberText } from '../../read/normal-job.js';
import type { ReadJob } from '../../schema/job-shape.js';
import { isStone, type Pavement } from '../../schema/layer-kinds.js';
import { looseOf } from '../materials.js';
import { placeBy, take, worked, type PlacedStep } from '../placed.js';
import type { LiftPlan, PavementPlan } from '../plan.js';

/** The working of the lifts, layer by layer from the subgrade up. Internal. */
export function liftSteps(
  job: ReadJob,
  pavement: Pavement,
  { lifts, buildUp }: PavementPlan,
): PlacedStep[] {
  let first = 0;
  const layers = pavement.layers
    .map((layer, index) => ({ layer, index }))
    .reverse()
    .filter(({ layer }) => isStone(layer));
  const split = layers.flatMap(({ layer, index }) => {
    const { stones } = job.materials;
    const { maxLift, compactedPerLoose } = looseOf(stones, layer.material);
    const stone = stones.indexOf(looseOf(stones, layer.material));
    const { working, count, compacted } = liftsOf({
      thickness: layer.thickness,
      maxLift,
      compactedPerLoose: numberText(compactedPerLoose),
    });
    const own = Array.from({ length: count }, (_, k) => first + k);
    first += count;
    const name = layer.name ?? layer.kind;
    const T = [['given', 'layers', index, 'thickness']];
    const placed = placeBy(
      working.map((step) => ofLayer(step, name)),
      { s: own.map((k) => ['lifts', k, 'loose']) },
      {
        T,
        L: [['job', 'materials', 'stones', stone, 'maxLift']],
        r: [['job', 'materials', 'stones', stone, 'compactedPerLoose']],
      },
    );
    return [
      ...placed,
      worked({
        title: `Lift thickness compacted, ${name}`,
        formula: 'c = T / n',
        takes: [
          take('T', 'thickness', layer.thickness, ...T),
          take('n', `lifts of ${name}`, count),
        ],
        result: given('c', 'compacted lift', compacted),
        gives: own.map((k) => ['lifts', k, 'compacted']),
      }),
    ];
  });
  const tops = lifts.flatMap((lift, index) => topSteps(lift, lifts[index - 1], { index, buildUp }));
  return [...split, ...tops];
}

/** The same step, with the layer in its title and its number of lifts. */
function ofLayer(step: Step, name: string): Step {
  const named = (input: StepInput): StepInput =>
    input.symbol === 'n' ? { ...input, name: `lifts of ${name}` } : input;
  const title = `${step.title}, ${name}`;
  return { ...step, title, given: step.given.map(named), result: named(step.result) };
}

function topSteps(
  { lift, compacted, aboveSubgrade, belowFinish }: LiftPlan,
  below: LiftPlan | undefined,
  { index, buildUp }: { readonly index: number; readonly buildUp: PavementPlan['buildUp'] },
): PlacedStep[] {
  const at = (field: string, k = index) => ['lifts', k, field];
  const c = take('c', 'compacted lift', compacted, at('compacted'));
  const height = given('h', `top of lift ${lift} above the subgrade`, aboveSubgrade);
  return [
    worked({
      title: `Top of lift ${lift} above the subgrade`,
      formula: below === undefined ? 'h = c' : 'h = h0 + c',
      takes:
        below === undefined
          ? [c]
          : [
              take(
                'h0',
                'top of the lift below',
                below.aboveSubgrade,
                at('aboveSubgrade', index - 1),
              ),
              c,
            ],
      result: height,
      gives: [at('aboveSubgrade')],
    }),
    worked({
      title: `Top of lift ${lift} below finished grade`,
      formula: 'd = D - h',
      takes: [
        take('D', 'total build-up', buildUp.total, ['buildUp', 'total']),
        take('h', height.name, aboveSubgrade, at('aboveSubgrade')),
      ],
      result: given('d', `top of lift ${lift} below finished grade`, belowFinish),
      gives: [at('belowFinish')],
    }),
  ];
}
