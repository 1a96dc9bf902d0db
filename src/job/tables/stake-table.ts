import { known } from '../../invariant.js';
import type { Length } from '../../units/quantity.js';
import type { JobPlan } from '../plan/plan.js';
import { jobOfPlan } from '../saved/job-of-plan.js';
import { requirePlan } from '../require-plan.js';

/** A stake on a string, as it is handed to an instrument or a spreadsheet. */
export interface StakeRow {
  /** Id on the stake. */
  readonly id: string;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** Elevation of finished grade; null where it is not known. */
  readonly finish: Length | null;
  /** Id of the string. */
  readonly string: string;
  /** Distance along the string from its first stake. */
  readonly station: Length;
  /** How far it is out of line, + to the left. */
  readonly offset: Length;
}

/**
 * The stakes of a plan as rows, string by string; a stake that serves two strings has two rows.
 * {@link tableText} writes them as text, and `readPointTable` reads that back as stakes of a job.
 *
 * @param plan - from `planJob`
 * @throws `PLAN_INVALID`
 * @example
 * const rows = stakeTable(planJob(job));
 * [rows[0]?.id, rows[0]?.x.to('ft').toString()] //=> ['K1', '-1']
 */
export function stakeTable(plan: JobPlan): readonly StakeRow[] {
  requirePlan(plan);
  const places = new Map(jobOfPlan(plan).stakes.map((stake) => [stake.id, stake]));
  return Object.freeze(
    plan.stringLines.flatMap((line) =>
      line.stakes.map(({ id, finishElevation, station, offset }): StakeRow => {
        const { x, y } = known(places.get(id), 'stake');
        return Object.freeze({
          id,
          x,
          y,
          finish: finishElevation,
          string: line.id,
          station,
          offset,
        });
      }),
    ),
  );
}
