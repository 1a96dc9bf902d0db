import type { Length } from '../../units/quantity.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';

/** Height of the string that the depths of a pavement count from: its first one. Internal. */
export function heightOfFirstString(job: ReadJob, { id }: Pavement): Length {
  return job.stringLines.find(({ pavement }) => pavement === id)?.height ?? job.stringHeight;
}
