import type { Decimal } from '../../units/decimal.js';
import { isDecimal } from '../../units/decimal.js';
import { exactText } from '../../units/quantity-json.js';
import { fromSI, isQuantity } from '../../units/quantity.js';
import { decimalRatio } from '../../units/ratio.js';
import { pointFrom } from '../../units/vector.js';
import type { OutlineInput } from '../../outline/read-outline.js';
import type { Outline, Ring } from '../../outline/ring.js';
import type { JobInput } from '../schema/job-input.js';
import type { ReadJob } from '../schema/job-shape.js';

/**
 * Converts a job back to a plain input: quantities as they are, numbers as digits, outlines as lists
 * of points. Reading it gives the same job. Internal.
 */
export function normalJob(job: ReadJob): JobInput {
  return normal(job) as JobInput;
}

function normal(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || isQuantity(value)) return value;
  if (isDecimal(value)) return numberText(value);
  if (Array.isArray(value)) return value.map(normal);
  if (isOutline(value)) return outlineWith(value, 1);
  const plain: Record<string, unknown> = {};
  for (const [key, field] of Object.entries(value)) {
    if (field !== undefined) plain[key] = normal(field);
  }
  return plain;
}

/** A number of a job as text, all of it. Internal. */
export const numberText = (value: Decimal): string => exactText(decimalRatio(value));

const isOutline = (value: object): value is Outline => 'origin' in value && 'points' in value;

/** Converts an outline to an input: a list of points, or an object if it has arcs or holes. Internal. */
export const plainOutline = (outline: Outline): OutlineInput => outlineWith(outline, 0);

/** The same, with edges counted from a given number; a job counts them from 1. */
function outlineWith(outline: Outline, firstEdge: number): OutlineInput {
  const { origin, holes } = outline;
  const plainRing = ({ points, bulges = [] }: Ring) => ({
    points: points.map((point) => pointFrom(origin, point)),
    arcs: bulges.flatMap((bulge, edge) =>
      bulge === undefined
        ? []
        : [{ edge: edge + firstEdge, bulgeMiddleOrdinate: fromSI('length', bulge) }],
    ),
  });
  const outer = plainRing(outline);
  if (holes.length === 0 && outer.arcs.length === 0) return outer.points;
  return { ...outer, holes: holes.map(plainRing) };
}
