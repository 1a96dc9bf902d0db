import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { isQuantity } from '../units/quantity.js';
import type { GradeLine, GradePoint } from './grade-line.js';

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
  const isWhole = arePoints(points) && points.length > 1 && arePoints(breaks);
  return isWhole && typeof at === 'function';
}

const arePoints = (list: unknown): list is readonly GradePoint[] =>
  Array.isArray(list) && list.every((point: unknown) => isPoint(point));

function isPoint(value: unknown): boolean {
  const { station, elevation } = (value ?? {}) as Partial<GradePoint>;
  return isQuantity(station) && isQuantity(elevation) && station.dimension === 'length';
}
