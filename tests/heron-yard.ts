import { readJob, type JobInput } from 'settline/job';
import heronYard from '../examples/heron-yard.json' with { type: 'json' };
import type { LooseJob } from './loose-job.js';

/** The file of the site with a drive, a walk that meets it and an island; new for each caller. */
export const heronYardFile = (): LooseJob => structuredClone(heronYard);

/** The site with a drive, a walk that meets it and an island. */
export const heronYardJob = (): JobInput => readJob(heronYard);
