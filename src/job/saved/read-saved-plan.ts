import { fault, isSettlineError } from '../../errors.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import { cautionIdsOf } from '../plan/caution-ids.js';
import type { JobPlan } from '../plan/plan.js';
import { checkLinks } from './check-links.js';
import { readFields } from './read-form.js';
import { startReading, type Reading } from './reading.js';
import { planFields } from './shape-code.js';

/** A plan that can still be written to, before it is marked and frozen. Internal. */
export type SavedPlan = { -readonly [K in keyof JobPlan]: JobPlan[K] };

/**
 * Reads the form of a saved plan: every field, its type, its dimension and a sane size. The figures
 * are believed. Internal.
 *
 * @throws `PLAN_INVALID` with the path of every fault
 */
export function readSavedPlan(json: unknown): SavedPlan {
  try {
    return readParts(json);
  } catch (error) {
    if (isSettlineError(error)) throw error;
    // a getter or a proxy of the caller
    throw fault(
      'PLAN_INVALID',
      'an object in it throws when it is read. Pass the result of JSON.parse',
    );
  }
}

function readParts(json: unknown): SavedPlan {
  const head = requirePlanJSON(json);
  const reading = startReading();
  const plan = readFields(reading, planFields(), head) as unknown as SavedPlan;
  reading.finish();
  checkCautions(reading, plan);
  checkLinks(plan, reading);
  reading.finish();
  return plan;
}

function requirePlanJSON(json: unknown): Readonly<Record<string, unknown>> {
  if (!isPlain(json) || json['kind'] !== 'settline-plan') {
    const message = `expected the JSON of a plan as planJob() makes it, got ${shown(json)}`;
    throw fault('PLAN_INVALID', message);
  }
  const { version } = json;
  if (version === 1) return json;
  const words = `a plan of version ${shown(version)}: this library reads version 1`;
  throw fault('PLAN_INVALID', words, {}, ['version']);
}

/** Every caution that a plan of this job has must be there. */
function checkCautions(reading: Reading, plan: SavedPlan): void {
  const given = new Set(plan.cautions.map(({ id }) => id));
  const missing = cautionIdsOf(plan.job).filter((id) => !given.has(id));
  if (missing.length === 0) return;
  reading.fail(`missing: ${missing.join(', ')}. A plan is not read without them`, ['cautions']);
}
