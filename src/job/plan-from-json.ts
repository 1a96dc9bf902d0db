import { fault, isSettlineError, SettlineError, type Issue } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { shown } from '../input/shown.js';
import { planJob } from './plan-job.js';
import type { JobPlan } from './plan/plan.js';
import type { JobInput } from './schema/job-input.js';
import { requireSame } from './same-plan.js';

/**
 * Reads a plan back from its JSON form: plans the job that it carries again, and holds every figure of
 * the saved plan against it. An altered plan is refused. So is one saved by a version of the library
 * that came to other figures: then plan its `job` again.
 *
 * @param json - what `JSON.parse(JSON.stringify(plan))` gives; not changed
 * @returns the plan, frozen, with its working
 * @throws `PLAN_INVALID` for what is no saved plan, `PLAN_ALTERED` for a figure that its job does not
 *   give, with the path
 * @example
 * const plan = planJob(job);
 * const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
 * again.pavements[0]?.buildUp.total.to('in').toString() //=> '18.75'
 */
export function planFromJSON(json: unknown): JobPlan {
  if (!isPlain(json) || json['kind'] !== 'settline-plan') {
    const message = `expected the JSON of a plan as planJob() makes it, got ${shown(json)}`;
    throw fault('PLAN_INVALID', message);
  }
  const { version } = json;
  if (version !== 1) {
    const words = `a plan of version ${shown(version)}: this library reads version 1`;
    throw fault('PLAN_INVALID', words, {}, ['version']);
  }
  if (json['job'] === undefined) throw fault('PLAN_INVALID', 'missing', {}, ['job']);
  const plan = planAgain(json['job']);
  const said = Object.fromEntries(WORDS.flatMap((key) => (key in json ? [[key, plan[key]]] : [])));
  requireSame(plan, { ...json, ...said }, []);
  return plan;
}

/** What is not compared: the job is what the plan is made from, the words carry no figures. */
const WORDS = ['job', 'cautions', 'sources'] as const;

function planAgain(job: unknown): JobPlan {
  try {
    return planJob(job as JobInput);
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const inJob = (issue: Issue): Issue => ({ ...issue, path: ['job', ...issue.path] });
    const [first, ...rest] = error.issues;
    if (first === undefined) throw error;
    throw new SettlineError([inJob(first), ...rest.map(inJob)], 'PLAN_INVALID');
  }
}
