import type { Decimal } from '../../units/decimal.js';
import { isDecimal } from '../../units/decimal.js';
import { fromSI, isQuantity } from '../../units/quantity.js';
import { pointFrom, type PlanPoint } from '../../units/vector.js';
import type { OutlineInput } from '../../outline/read-outline.js';
import type { Outline, Ring } from '../../outline/ring.js';
import type { JobInput } from '../schema/job-input.js';
import type { ReadJob } from '../schema/job-shape.js';

/**
 * The job as a plain job input again: quantities as they are, numbers as digits, outlines as lists of
 * points. Reading it gives the same job. Internal.
 */
export function normalJob(job: ReadJob): JobInput {
  return normal(job) as JobInput;
}

function normal(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || isQuantity(value)) return value;
  if (isDecimal(value)) return decimalText(value);
  if (Array.isArray(value)) return value.map(normal);
  if (isOutline(value)) return plainOutline(value);
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  return Object.fromEntries(fields.map(([key, field]) => [key, normal(field)]));
}

const decimalText = (value: Decimal): string => value.toFixed();

const isOutline = (value: object): value is Outline => 'origin' in value && 'points' in value;

/** An outline as it is given: a list of points; with arcs or holes an object. Internal. */
export function plainOutline(outline: Outline): OutlineInput {
  const { origin, holes } = outline;
  const outer = plainRing(outline, origin);
  if (holes.length === 0 && outer.arcs.length === 0) return outer.points;
  return { ...outer, holes: holes.map((hole) => plainRing(hole, origin)) };
}

const plainRing = ({ points, bulges = [] }: Ring, origin: PlanPoint) => ({
  points: points.map((point) => pointFrom(origin, point)),
  arcs: bulges.flatMap((bulge, edge) =>
    bulge === undefined ? [] : [{ edge, bulgeMiddleOrdinate: fromSI('length', bulge) }],
  ),
});
