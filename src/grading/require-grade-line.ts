import type { FieldPath } from '../errors.js';
import { custom } from '../input/field.js';
import type { Reader } from '../input/reader.js';
import type { Field } from '../input/shape.js';
import { length } from '../units/construct.js';
import { isLength } from '../units/is-length.js';
import { NO_LENGTH } from '../units/zero.js';
import { lineThrough, type GradeLine } from './grade-line.js';
import type { GradePoint } from './grade-points.js';

/**
 * Makes sure that a field is a grade line as `gradeLine` makes it, and makes it again from its points;
 * undefined after a fault.
 */
function requireGradeLine(reader: Reader, value: unknown, path: FieldPath): GradeLine | undefined {
  const points = pointsOf(value);
  if (points !== undefined) return lineThrough(points);
  const code = value === undefined ? 'REQUIRED' : 'WRONG_TYPE';
  reader.fail(code, path, 'pass the result of gradeLine()');
  return undefined;
}

/** A grade line that has been worked out. Internal. */
export const workedLine: Field<GradeLine> = custom(
  (reader, value, path) => requireGradeLine(reader, value, path) ?? lineThrough(STAND_IN),
);

const STAND_IN: readonly GradePoint[] = [
  { station: NO_LENGTH, elevation: NO_LENGTH },
  { station: length(1, 'm'), elevation: NO_LENGTH },
];

const MOST_POINTS = 10_000;

function pointsOf(value: unknown): readonly GradePoint[] | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { points, at } = value as Partial<GradeLine>;
  if (typeof at !== 'function' || !Array.isArray(points)) return undefined;
  if (points.length < 2 || points.length > MOST_POINTS) return undefined;
  const found: GradePoint[] = [];
  for (const point of points as readonly (Partial<GradePoint> | null | undefined)[]) {
    const { station, elevation } = point ?? {};
    if (!isLength(station) || !isLength(elevation)) return undefined;
    const before = found.at(-1);
    if (before !== undefined && station.compare(before.station) <= 0) return undefined;
    found.push({ station, elevation });
  }
  return found;
}
