import type { JobInput } from 'settline/job';
import millGarth from '../examples/mill-garth.json' with { type: 'json' };

/** The built-in site in metric units; new for each caller. */
export const millGarthJob = (): JobInput => structuredClone(millGarth) as unknown as JobInput;
