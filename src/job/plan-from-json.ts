import { isSettlineError, SettlineError, type Issue } from '../errors.js';
import { choice, optional } from '../input/field.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { deepFreeze } from '../working.js';
import { LIBRARY_VERSION } from '../library-version.js';
import { planJob } from './plan-job.js';
import type { JobPlan } from './plan/plan.js';
import { MOST_LISTED, manyFaults } from './saved/reading.js';
import { readSavedPlan, type SavedPlan } from './saved/read-saved-plan.js';
import type { JobInput } from './schema/job-input.js';
import { markPlan } from './require-plan.js';
import { differencesOf, type Difference } from './same-plan.js';

/** How a saved plan is read back. */
export interface PlanFromJSONOptions {
  /**
   * `same` refuses a plan with a figure that its job does not give. `altered` reads it as it was saved,
   * with `figures` set to `altered` and the paths in `altered`. Default: `same`.
   */
  readonly accept?: 'same' | 'altered';
}

const OPTIONS = shapeOf<PlanFromJSONOptions>()({
  accept: optional(choice(['same', 'altered']), 'same'),
});

/**
 * Reads a saved plan back. It checks the form of every field, plans the job in the plan again, and
 * compares every figure. A plan whose figures differ was changed after it was saved, or planned by a
 * version of the library that gives other figures; the message then names both versions. `readPlan`
 * reads a plan without the planner.
 *
 * @param json - a plan after `JSON.parse` or `structuredClone`; not changed
 * @param options - see {@link PlanFromJSONOptions}
 * @returns the plan, frozen, with its working
 * @throws `PLAN_INVALID` if it is not a saved plan; `PLAN_ALTERED` for figures that its job does not
 *   give. `issues` has the paths of all, up to 100, and the number of the rest
 * @example
 * const plan = planJob(job);
 * const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
 * again.pavements[0]?.buildUp.total.to('in').toString() //=> '18.75'
 * const other = planFromJSON({ ...plan, name: 'Elm Court' }, { accept: 'altered' });
 * other.altered //=> [['name']]
 */
export function planFromJSON(json: unknown, options: PlanFromJSONOptions = {}): JobPlan {
  const { accept } = readOptions(options, OPTIONS);
  const saved = readSavedPlan(json);
  const plan = planAgain(saved.job);
  const found = differencesOf(plan, saved);
  if (found.length === 0) return plan;
  if (accept !== 'altered') throw planAltered(found, saved);
  saved.figures = 'altered';
  saved.altered = found.map(({ path }) => path);
  return deepFreeze(markPlan(saved));
}

function planAgain(job: JobInput): JobPlan {
  try {
    return planJob(job);
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const inJob = (issue: Issue): Issue => ({ ...issue, path: ['job', ...issue.path] });
    const [first, ...rest] = error.issues;
    if (first === undefined) throw error;
    throw new SettlineError([inJob(first), ...rest.map(inJob)], 'PLAN_INVALID');
  }
}

function planAltered(found: readonly Difference[], { libraryVersion }: SavedPlan): SettlineError {
  const versions =
    libraryVersion === LIBRARY_VERSION
      ? ''
      : ` It was planned by version ${libraryVersion} of the library, and this is version ${LIBRARY_VERSION}.`;
  const issueOf = ({ path, planned, saved }: Difference): Issue => {
    const message = `the saved plan says ${saved}, but its job gives ${planned}.${versions} Plan the job again`;
    const params = { planned, got: saved, savedBy: libraryVersion, readBy: LIBRARY_VERSION };
    return { path, code: 'PLAN_ALTERED', message, params };
  };
  return manyFaults(found.slice(0, MOST_LISTED).map(issueOf), found.length);
}
