import type { PlanWarning, JobPlan, PavementPlan, StringLinePlan } from '../plan/plan.js';
import { PUBLISHED_LEAST_FALL } from '../plan/plan-slopes.js';
import type { ReadJob } from '../schema/job-shape.js';
import { warning } from './warning.js';

/** What a level book and the end of the day tell. Internal. */
export function levelWarnings({
  levelBook,
  levelling,
}: Pick<JobPlan, 'levelBook' | 'levelling'>): PlanWarning[] {
  const found: PlanWarning[] = [];
  if (levelBook?.isAccepted === false && levelBook.misclosure !== null) {
    const values = {
      misclosure: levelBook.misclosure.abs(),
      ...(levelBook.allowable === null ? {} : { allowable: levelBook.allowable }),
    };
    found.push(warning('LEVELS_DO_NOT_CLOSE', 'level book', values));
  }
  if (levelling?.closing?.verdict === 'fail') {
    const { benchmark, closing } = levelling;
    const values = { drift: closing.drift.abs(), tolerance: closing.tolerance };
    found.push(warning('INSTRUMENT_MOVED', benchmark, values));
  }
  return found;
}

/** What the fixed levels of a pavement tell. Internal. */
export function gradeWarnings(job: ReadJob, { name, grade }: PavementPlan): PlanWarning[] {
  if (grade === null) return [];
  const misses = grade.levels
    .filter(({ miss }) => !miss.isZero())
    .map((level) =>
      warning('GRADE_MISSES_LEVEL', name, {
        level: level.name,
        off: level.miss.abs(),
        side: level.miss.isNegative() ? 'below' : 'above',
      }),
    );
  const flat =
    grade.verdict === 'pass'
      ? []
      : [
          warning('FALL_TOO_SMALL', name, {
            fall: grade.flattest,
            least: job.minimumFall ?? PUBLISHED_LEAST_FALL,
          }),
        ];
  return [...misses, ...flat];
}

/** Stakes whose rod readings cannot be taken. Internal. */
export function rodWarnings(
  { stakes }: StringLinePlan,
  { levelling }: Pick<JobPlan, 'levelling'>,
): PlanWarning[] {
  if (levelling === null) return [];
  return stakes.flatMap(({ id, rods }) => {
    if (rods === null) return [warning('ROD_NEEDS_FINISH', `stake ${id}`)];
    return rods
      .filter(({ reach }) => reach !== 'on-rod')
      .map(({ surface, reach }) => warning('ROD_CANNOT_REACH', `stake ${id}`, { surface, reach }));
  });
}
