import { targetsFrom, targetSteps } from '../../levelling/rod-targets.js';
import type { Surface } from '../../levelling/surfaces.js';
import type { Length } from '../../units/quantity.js';
import type { Step } from '../../working.js';
import type { LevellingPlan, RodPlan, StakePlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { surfacesBelow, type Surfaced } from './surfaces.js';

/** The surfaces that a rod is set on at a stake, from the string down. Internal. */
export const rodSurfaces = (pavement: Surfaced, stringHeight: Length): Surface[] => [
  { surface: 'string', depth: stringHeight.negated() },
  ...surfacesBelow(pavement).map(({ surface, depth }) => ({ surface, depth })),
];

/** Rod readings on each surface at a stake; null if its level is not known. Internal. */
export function rodsAt(
  finish: Length | null,
  day: {
    readonly surfaces: readonly Surface[];
    readonly levelling: LevellingPlan | null;
    readonly job: ReadJob;
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
