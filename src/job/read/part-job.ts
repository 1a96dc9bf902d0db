import type { ReadJob } from '../schema/job-shape.js';
import type { Partly } from './partly.js';

/** The readable parts of a job. Internal. */
export type PartJob = Partly<ReadJob>;
/** The readable parts of a pavement. Internal. */
export type PartPavement = Partly<ReadJob['pavements'][number]>;
