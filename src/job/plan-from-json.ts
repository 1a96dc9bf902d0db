import { fault, isSettlineError, type FieldPath } from '../errors.js';
import { shown } from '../input/shown.js';
import { unitEntry } from '../units/engine.js';
import { fromJSON } from '../units/construct.js';
import { isQuantity, type AnyQuantity, type Volume } from '../units/quantity.js';
import { inState, type SoilState } from '../volumes/state-volume.js';
import { planJob, withPlanWorking } from './plan-job.js';
import type { JobPlan } from './plan/plan.js';

/**
 * Reads a plan back from its JSON form: quantities become quantities again, exactly, and the working
 * can be asked for again (it is made by planning the job that the plan carries).
 *
 * @param json - what `JSON.parse(JSON.stringify(plan))` gives
 * @returns the plan, frozen
 * @throws `PLAN_INVALID` with the path of what cannot be read
 * @example
 * const plan = planJob(job);
 * const again = planFromJSON(JSON.parse(JSON.stringify(plan)));
 * again.pavements[0]?.buildUp.total.to('in').toString() //=> '18.75'
 */
export function planFromJSON(json: unknown): JobPlan {
  const revived = revive(json, []);
  if (!isPlan(revived)) {
    throw fault('PLAN_INVALID', `expected a plan as planJob makes it, got ${shown(json)}`);
  }
  const { version } = revived as { readonly version: unknown };
  if (version !== 1) {
    const words = `a plan of version ${shown(version)}: this library reads version 1`;
    throw fault('PLAN_INVALID', words, {}, ['version']);
  }
  for (const field of FIELDS) {
    if (!(field in revived)) throw fault('PLAN_INVALID', 'is missing', {}, [field]);
  }
  return withPlanWorking(revived, () => planJob(revived.job).working);
}

const FIELDS = [
  'name',
  'job',
  'stringHeight',
  'minimumFall',
  'pavements',
  'stringLines',
  'levelBook',
  'levelling',
  'totals',
  'warnings',
  'cautions',
  'sources',
] as const;

const isPlan = (value: unknown): value is Omit<JobPlan, 'working'> =>
  typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'settline-plan';

function revive(value: unknown, path: FieldPath): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((item, index) => revive(item, [...path, index]));
  if (isQuantity(value)) return value;
  const fields = Object.entries(value);
  if (isQuantityJSON(value)) return reviveQuantity(value, path);
  const revived = Object.fromEntries(
    fields.map(([key, field]) => [key, revive(field, [...path, key])]),
  );
  return isStateVolumeJSON(revived) ? inState(revived.volume, revived.state) : revived;
}

function isQuantityJSON(value: object): value is { value: string; unit: string } {
  const keys = Object.keys(value);
  return keys.length === 2 && 'value' in value && 'unit' in value;
}

function reviveQuantity(json: { value: string; unit: string }, path: FieldPath): AnyQuantity {
  if (typeof json.unit !== 'string' || unitEntry(json.unit) === undefined) {
    throw fault('PLAN_INVALID', `${shown(json.unit)} is no unit`, {}, [...path, 'unit']);
  }
  try {
    return fromJSON(json);
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    throw fault('PLAN_INVALID', error.message, {}, [...path, 'value']);
  }
}

function isStateVolumeJSON(
  value: Readonly<Record<string, unknown>>,
): value is { state: SoilState; volume: Volume } & Readonly<Record<string, unknown>> {
  const isState =
    value['state'] === 'bank' || value['state'] === 'loose' || value['state'] === 'compacted';
  return isState && Object.keys(value).length === 2 && isQuantity(value['volume']);
}
