import type { Decimal } from '../units/decimal.js';
import { isDecimal } from '../units/decimal.js';
import { isQuantity } from '../units/quantity.js';
import { pointFrom } from '../units/vector.js';
import type { Outline } from '../outline/read-outline.js';
import type { Job, JobInput } from './schema.js';

/**
 * The job as a plain job input again: quantities as they are, numbers as digits, outlines as lists of
 * points. Reading it gives the same job. Internal.
 */
export function normalJob(job: Job): JobInput {
  return normal(job) as JobInput;
}

function normal(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || isQuantity(value)) return value;
  if (isDecimal(value)) return decimalText(value);
  if (Array.isArray(value)) return value.map(normal);
  if (isOutline(value)) return outlinePoints(value);
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  return Object.fromEntries(fields.map(([key, field]) => [key, normal(field)]));
}

const decimalText = (value: Decimal): string => value.toFixed();

const isOutline = (value: object): value is Outline => 'origin' in value && 'points' in value;

const outlinePoints = ({ origin, points }: Outline) =>
  points.map((point) => pointFrom(origin, point));
