import { known } from '../../invariant.js';
import type { Outline, Ring } from '../../outline/ring.js';
import { exactOf, isQuantity, ownQuantity, type Length } from '../../units/quantity.js';
import { ratioToDecimal, ratioToNumber, signOfRatio, type Ratio } from '../../units/ratio.js';
import { readWritten } from '../../units/read-number.js';
import { between, type PlanPoint } from '../../units/vector.js';
import type { JobPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { JOB_NUMBERS, WHOLE } from './job-numbers.js';

const jobs = new WeakMap<JobPlan, ReadJob>();

/**
 * The job of a plan as it was read. A plan holds it in the plain form that `normalJob` writes; this
 * takes that form back, without reading a job file again. Internal.
 */
export function jobOfPlan(plan: JobPlan): ReadJob {
  const known = jobs.get(plan);
  if (known !== undefined) return known;
  const job = restored(plan.job, 'job') as ReadJob;
  jobs.set(plan, job);
  return job;
}

/** A part of the plain form by the name of its field; a list passes its name on. */
function restored(value: unknown, name: string): unknown {
  if (typeof value === 'string' || typeof value === 'number') {
    return JOB_NUMBERS.has(name) ? restoredNumber(value, name) : value;
  }
  if (typeof value !== 'object' || value === null) return value;
  if (name === 'outline') return restoredOutline(value as PlainOutline);
  if (isQuantity(value)) return ownQuantity(value);
  if (Array.isArray(value)) return value.map((part: unknown) => restored(part, name));
  const read: Record<string, unknown> = {};
  for (const [field, part] of Object.entries(value)) {
    if (part !== undefined) read[field] = restored(part, field);
  }
  return read;
}

function restoredNumber(value: string | number, name: string): unknown {
  const exact = readWritten(value);
  return WHOLE.has(name) ? ratioToNumber(exact) : ratioToDecimal(exact);
}

/** A ring in the form that a plan writes; edges count from 1. */
interface PlainRing {
  readonly points: readonly PlanPoint[];
  readonly arcs?: readonly { readonly edge: number; readonly bulgeMiddleOrdinate: Length }[];
}
type PlainOutline = readonly PlanPoint[] | (PlainRing & { readonly holes: readonly PlainRing[] });

const isPoints = (value: PlainOutline): value is readonly PlanPoint[] => Array.isArray(value);

/** How many edges an outline in the plain form has, those of its holes among them. Internal. */
export function edgesIn(outline: unknown): number {
  const value = outline as PlainOutline;
  const rings = isPoints(value) ? [{ points: value }] : [value, ...value.holes];
  return rings.reduce((sum, { points }) => sum + points.length, 0);
}

function restoredOutline(value: PlainOutline): Outline {
  const outer = isPoints(value) ? { points: value } : value;
  const holes = isPoints(value) ? [] : value.holes;
  const first = known(outer.points[0], 'point of an outline');
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
