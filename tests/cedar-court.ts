import type { JobInput } from 'settline/job';
import cedarCourt from '../examples/cedar-court.json' with { type: 'json' };

/** The built-in site in US units; new for each caller. */
export const cedarCourtJob = (): JobInput => structuredClone(cedarCourt) as unknown as JobInput;

/** The same, for the examples in the documentation. */
export const job: JobInput = cedarCourtJob();
