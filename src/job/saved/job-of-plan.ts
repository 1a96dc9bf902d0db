import type { Outline, Ring } from '../../outline/ring.js';
import { exactOf, isQuantity, ownQuantity, type Length } from '../../units/quantity.js';
import { ratioToDecimal, ratioToNumber, signOfRatio, type Ratio } from '../../units/ratio.js';
import { readWritten } from '../../units/read-number.js';
import { between, type PlanPoint } from '../../units/vector.js';
import type { JobPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { WHOLE } from './saved-limits.js';
import { planFields, type Code, type FieldCode } from './shape-code.js';

const jobs = new WeakMap<JobPlan, ReadJob>();

/**
 * The job of a plan as it was read. A plan holds it in the plain form that `normalJob` writes; this
 * takes that form back, without reading a job file again. Internal.
 */
export function jobOfPlan(plan: JobPlan): ReadJob {
  const known = jobs.get(plan);
  if (known !== undefined) return known;
  const field = planFields().find(({ name }) => name === 'job');
  const job = (field === undefined ? {} : restored(field.code, plan.job, 'job')) as ReadJob;
  jobs.set(plan, job);
  return job;
}

function restored(code: Code, value: unknown, name: string): unknown {
  switch (code.kind) {
    case 'nullable':
      return value === null ? null : restored(code.of, value, name);
    case 'list':
      return (value as readonly unknown[]).map((part) => restored(code.of, part, name));
    case 'object':
      return restoredFields(code.fields, value as Readonly<Record<string, unknown>>);
    case 'plain':
      return restoredPlain(code.name, value, name);
    default:
      return value;
  }
}

function restoredFields(
  fields: readonly FieldCode[],
  value: Readonly<Record<string, unknown>>,
): unknown {
  const read: Record<string, unknown> = {};
  for (const { name, code } of fields) {
    const part = value[name];
    if (part !== undefined) read[name] = restored(code, part, name);
  }
  return read;
}

function restoredPlain(code: string, value: unknown, name: string): unknown {
  if (code === 'outline') return restoredOutline(value as PlainOutline);
  if (code === 'digits') {
    const exact = readWritten(value as string | number);
    return WHOLE.has(name) ? ratioToNumber(exact) : ratioToDecimal(exact);
  }
  return isQuantity(value) ? ownQuantity(value) : value;
}

/** A ring in the form that a plan writes; edges count from 1. */
interface PlainRing {
  readonly points: readonly PlanPoint[];
  readonly arcs?: readonly { readonly edge: number; readonly bulgeMiddleOrdinate: Length }[];
}
type PlainOutline = readonly PlanPoint[] | (PlainRing & { readonly holes?: readonly PlainRing[] });

const isPoints = (value: PlainOutline): value is readonly PlanPoint[] => Array.isArray(value);

function restoredOutline(value: PlainOutline): Outline {
  const outer = isPoints(value) ? { points: value } : value;
  const holes = isPoints(value) ? [] : (value.holes ?? []);
  const [first] = outer.points;
  if (first === undefined) throw new RangeError('an outline without points');
  const origin: PlanPoint = { x: ownQuantity(first.x), y: ownQuantity(first.y) };
  return {
    origin,
    ...restoredRing(origin, outer),
    holes: holes.map((hole) => restoredRing(origin, hole)),
  };
}

function restoredRing(origin: PlanPoint, { points, arcs = [] }: PlainRing): Ring {
  const bulges = points.map((): Ratio | undefined => undefined);
  for (const { edge, bulgeMiddleOrdinate } of arcs) {
    const bulge = exactOf(bulgeMiddleOrdinate);
    if (signOfRatio(bulge) !== 0) bulges[edge - 1] = bulge;
  }
  return {
    points: points.map((point) => between(origin, point)),
    ...(bulges.every((bulge) => bulge === undefined) ? {} : { bulges }),
  };
}
