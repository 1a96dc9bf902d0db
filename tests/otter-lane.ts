import type { JobInput } from 'settline/job';
import otterLane from '../examples/otter-lane.json' with { type: 'json' };

/** The second invented site, with everything that a job may carry; new for each caller. */
export const otterLaneJob = (): JobInput => structuredClone(otterLane) as unknown as JobInput;
