import { entry } from '../../../invariant.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { Ground } from './ground.js';
import { layOut } from '../lay-out.js';
import { levelsFrom, planLevelBook } from '../plan-levels.js';
import { stakesById } from '../stake-grounds.js';

/** The ground that a pavement of a planned job was measured with; null for one it has not. Internal. */
export function groundOf(job: ReadJob, id: string): Ground | null {
  const index = job.pavements.findIndex((one) => one.id === id);
  const pavement = entry(job.pavements, index);
  const path = ['pavements', index];
  const levelOf = levelsFrom(planLevelBook(job));
  return layOut(job, pavement, { path, levelOf, stakes: stakesById(job) }).ground;
}
