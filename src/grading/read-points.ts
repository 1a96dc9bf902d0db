import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { between, isZero, type PlanPoint } from '../units/vector.js';
import { ELEVATION, PLACE } from './limits.js';

/** A point in plan as the caller gives it. */
export interface PlanPointInput {
  readonly x: LengthInput;
  readonly y: LengthInput;
}

/** A point of a surface as the caller gives it. */
export interface SurfacePointInput extends PlanPointInput {
  /** Elevation. */
  readonly z: LengthInput;
}

/** A point of a surface. */
export interface SurfacePoint extends PlanPoint {
  readonly z: Length;
}

/** Reads `{ x, y }`. Internal. */
export function readPlanPoint(reader: Reader, value: unknown, path: FieldPath): PlanPoint {
  const fields = reader.object(value, path);
  return {
    x: reader.quantity('length', fields['x'], [...path, 'x'], PLACE),
    y: reader.quantity('length', fields['y'], [...path, 'y'], PLACE),
  };
}

/** Reads `{ x, y, z }`. Internal. */
export function readSurfacePoint(reader: Reader, value: unknown, path: FieldPath): SurfacePoint {
  const z = reader.object(value, path)['z'];
  return {
    ...readPlanPoint(reader, value, path),
    z: reader.quantity('length', z, [...path, 'z'], ELEVATION),
  };
}

/**
 * Reads the points of an edge, two or more and each apart from the next; a closed one may repeat its
 * first point at the end. Internal.
 */
export function readPath(
  reader: Reader,
  value: unknown,
  { path, closed }: { readonly path: FieldPath; readonly closed: boolean },
): PlanPoint[] {
  const read = reader.list(value, path).map((item, k) => readPlanPoint(reader, item, [...path, k]));
  const [first, last] = [read[0], read.at(-1)];
  const repeats = first !== undefined && last !== undefined && areOne(first, last);
  const points = closed && repeats && read.length > 1 ? read.slice(0, -1) : read;
  const least = closed ? 3 : 2;
  if (read.length > 0 && points.length < least) {
    reader.fail('TOO_FEW_POINTS', path, `needs ${least} points or more, got ${points.length}`);
  }
  const meetings = points.slice(1).flatMap((point, k) => {
    const before = points[k];
    return before !== undefined && areOne(before, point) ? [k] : [];
  });
  for (const k of meetings) {
    reader.fail('POINTS_COINCIDE', [...path, k + 1], `is the same point as point ${k}`);
  }
  return points;
}

const areOne = (a: PlanPoint, b: PlanPoint): boolean => isZero(between(a, b));
