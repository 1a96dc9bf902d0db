import type { JobPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { restored } from './restored.js';

type Each<T> = NonNullable<T> extends readonly (infer One)[] ? One : never;

/** What lies where on a site, as its job was read. Internal. */
export interface JobPlaces extends Pick<ReadJob, 'setOutStep'> {
  readonly pavements: readonly Pick<Each<ReadJob['pavements']>, 'id' | 'outline' | 'taperedBase'>[];
  readonly stakes: readonly Pick<Each<ReadJob['stakes']>, 'id' | 'x' | 'y'>[];
  readonly utilities?: readonly Pick<
    Each<ReadJob['utilities']>,
    'id' | 'path' | 'width' | 'tolerance'
  >[];
  readonly trees?: readonly Pick<Each<ReadJob['trees']>, 'id' | 'x' | 'y'>[];
  readonly oldPaving?: readonly Pick<
    Each<ReadJob['oldPaving']>,
    'outline' | 'material' | 'thickness' | 'pavement'
  >[];
}

const known = new WeakMap<JobPlan, JobPlaces>();

/** The places of a plan's job; numbers without a unit are left as they are written. Internal. */
export function placesOfPlan(plan: JobPlan): JobPlaces {
  const places = known.get(plan) ?? (restored(plan.job, 'job', (value) => value) as JobPlaces);
  known.set(plan, places);
  return places;
}
