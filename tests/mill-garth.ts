import { readJob, type JobInput } from 'settline/job';
import millGarth from '../examples/mill-garth.json' with { type: 'json' };

/** The built-in site in metric units. */
export const millGarthJob = (): JobInput => readJob(millGarth);
