import type { BuildUp } from '../build-up/build-up.js';
import { targetsFrom, targetSteps } from '../levelling/rod-targets.js';
import type { Surface } from '../levelling/surfaces.js';
import type { Length } from '../units/quantity.js';
import type { Step } from '../working.js';
import type { LevellingPlan, LiftPlan, RodPlan, StakePlan } from './plan.js';
import type { Job } from './schema.js';

/** The surfaces that a rod is set on at a stake, from the string down. Internal. */
export function rodSurfaces(
  stack: BuildUp,
  lifts: readonly LiftPlan[],
  stringHeight: Length,
): Surface[] {
  const layers = stack.layers.map(({ name, top }, index) => ({
    surface: index === 0 ? 'finished grade' : `${name} top`,
    depth: top,
  }));
  const tops = lifts
    .filter(({ belowFinish }) => layers.every(({ depth }) => !depth.equals(belowFinish)))
    .map(({ lift, belowFinish }) => ({ surface: `lift ${lift} top`, depth: belowFinish }));
  const below = [...layers, ...tops].sort((a, b) => a.depth.compare(b.depth));
  return [
    { surface: 'string', depth: stringHeight.negated() },
    ...below,
    { surface: 'subgrade', depth: stack.total },
  ];
}

/** What the rod reads on each surface at a stake; null where its level is not known. Internal. */
export function rodsAt(
  finish: Length | null,
  day: {
    readonly surfaces: readonly Surface[];
    readonly levelling: LevellingPlan | null;
    readonly job: Job;
  },
): readonly RodPlan[] | null {
  if (finish === null || day.levelling === null) return null;
  const { instrumentHeight: height } = day.levelling;
  const rodLength = day.job.levelling?.rodLength;
  return targetsFrom({ height, finish, surfaces: day.surfaces, rodLength });
}

/** The working of the readings at the stakes of a string. Internal. */
export function rodSteps(levelling: LevellingPlan | null, stakes: readonly StakePlan[]): Step[] {
  if (levelling === null) return [];
  return stakes.flatMap(({ id, rods }) =>
    targetSteps(levelling.instrumentHeight, rods ?? []).map((step) => ({
      ...step,
      title: `${step.title}, stake ${id}`,
    })),
  );
}
