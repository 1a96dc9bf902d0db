import type { JobInput } from 'settline/job';
import slateWharf from '../examples/slate-wharf.json' with { type: 'json' };

/** The site with everything that a job may carry; new for each caller. */
export const slateWharfJob = (): JobInput => structuredClone(slateWharf) as unknown as JobInput;
