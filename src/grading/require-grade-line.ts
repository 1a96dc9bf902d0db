import type { FieldPath } from '../errors.js';
import type { Reader } from '../input.js';
import type { GradeLine } from './grade-line.js';

/** Checks that a field is a grade line as `gradeLine` makes it; undefined after a fault. Internal. */
export function requireGradeLine(
  reader: Reader,
  value: unknown,
  path: FieldPath,
): GradeLine | undefined {
  if (isGradeLine(value)) return value;
  reader.fail('WRONG_TYPE', path, 'expected what gradeLine({ points }) returns');
  return undefined;
}

function isGradeLine(value: unknown): value is GradeLine {
  if (typeof value !== 'object' || value === null) return false;
  const { points, breaks, at } = value as Partial<GradeLine>;
  return Array.isArray(points) && Array.isArray(breaks) && typeof at === 'function';
}
