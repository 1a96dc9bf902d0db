import type { BuildUp } from '../../build-up/build-up.js';
import { sum } from '../../units/aggregate.js';
import type { Length } from '../../units/quantity.js';
import { given, type Step } from '../../working.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { DigPlan, PavementPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOfFirstString } from './string-height.js';

/**
 * Depth of dig below the existing surface: the mean of the digs measured at the stakes, or build-up
 * and existing level where none was measured. Internal.
 */
export function planDig(
  job: ReadJob,
  pavement: Pavement,
  stack: BuildUp,
  measured: readonly Length[],
): DigPlan {
  const uniform = stack.total.plus(pavement.existingAboveFinish ?? NO_LENGTH);
  const isMeasured = measured.length > 0;
  const depth = isMeasured ? sum(measured).dividedBy(measured.length) : uniform;
  return {
    depth,
    soil: depth.minus(pavement.oldSurface?.thickness ?? NO_LENGTH),
    belowString: heightOfFirstString(job, pavement).plus(stack.total),
    basis: isMeasured ? 'measured' : 'uniform',
    measuredStakes: measured.length,
  };
}

/** Digs measured at the stakes of a pavement: subgrade below the string less the ground. Internal. */
export function measuredDigs(job: ReadJob, { id, layers }: Pavement): Length[] {
  const total = sum(layers.map(({ thickness }) => thickness));
  return job.stringLines
    .filter(({ pavement }) => pavement === id)
    .flatMap(({ stakes, height }) =>
      stakes.flatMap(({ ground }) =>
        ground === undefined ? [] : [total.plus(height ?? job.stringHeight).minus(ground)],
      ),
    );
}

/** The working of the depth of dig. Internal. */
export function digSteps(plan: PavementPlan, measured: readonly Length[]): Step[] {
  const { dig, oldSurface } = plan;
  return [
    depthStep(plan, measured),
    {
      title: 'Soil left once the old surface is stripped',
      formula: 'S = E - o',
      given: [
        given('E', 'depth of dig', dig.depth),
        given('o', 'old surface', oldSurface?.thickness ?? NO_LENGTH),
      ],
      result: given('S', 'soil', dig.soil),
      source: 'derived',
    },
  ];
}

function surfaceStep(dig: DigPlan, { areas, earthwork }: PavementPlan): Step {
  const [cut, fill] = [earthwork?.cut.volume, earthwork?.fill.volume];
  return {
    title: 'Depth of dig, mean over the spot heights',
    formula: 'E = (C - F) / A',
    given: [
      given('C', 'cut, in the bank', cut ?? 0),
      given('F', 'fill, in place', fill ?? 0),
      given('A', 'area of the dig', areas.dig),
    ],
    result: given('E', 'mean depth of dig', dig.depth),
    source: 'derived',
  };
}

function depthStep(plan: PavementPlan, measured: readonly Length[]): Step {
  const { dig, buildUp } = plan;
  if (dig.basis === 'surface') return surfaceStep(dig, plan);
  const result = given('E', 'depth of dig', dig.depth);
  if (measured.length === 0) {
    const above = dig.depth.minus(buildUp.total);
    return {
      title: 'Depth of dig',
      formula: 'E = D + a',
      given: [given('D', 'build-up', buildUp.total), given('a', 'existing above finish', above)],
      result,
      source: 'derived',
    };
  }
  return {
    title: 'Depth of dig, mean of the stakes',
    formula: 'E = sum(e) / n',
    given: measured.map((one, index) => given(`e${index + 1}`, 'dig measured at a stake', one)),
    result,
    source: 'derived',
  };
}
