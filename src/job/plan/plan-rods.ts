import { targetsFrom } from '../../levelling/rod-targets.js';
import type { Surface } from '../../levelling/surfaces.js';
import type { Length } from '../../units/quantity.js';
import type { LevellingPlan, RodPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { surfacesBelow, type Surfaced } from './surfaces.js';

/** The surfaces that a rod is set on at a stake, from the string down. Internal. */
export const rodSurfaces = (pavement: Surfaced, height: Length): Surface[] => [
  { surface: 'string', depth: height.negated() },
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
