import type { JobInput } from 'settline/job';
import heronBend from '../examples/heron-bend.json' with { type: 'json' };

/** The built-in site, new for each caller. */
export const heronBendJob = (): JobInput => structuredClone(heronBend) as unknown as JobInput;

/** The built-in site, for the examples in the documentation. */
export const job: JobInput = heronBendJob();
