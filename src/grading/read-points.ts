import type { FieldPath } from '../errors.js';
import { custom, list, object, quantity } from '../input/field.js';
import { ELEVATION, PLACE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { between, isZero, type PlanPoint } from '../units/vector.js';

/** A point in plan. */
export interface PlanPointInput {
  /** Plan coordinate [length] on any grid. */
  readonly x: LengthInput;
  /** Plan coordinate, left of the x direction [length]. */
  readonly y: LengthInput;
}

/** A point of a surface. */
export interface SurfacePointInput extends PlanPointInput {
  /** Elevation [length], up to 10 km either way. */
  readonly z: LengthInput;
}

/** A point of a surface. */
export interface SurfacePoint extends PlanPoint {
  /** Elevation. */
  readonly z: Length;
}

/** The fields of a point in plan. Internal. */
export const PLAN_POINT = shapeOf<PlanPointInput>()({ x: quantity(PLACE), y: quantity(PLACE) });

/** The fields of a point of a surface. Internal. */
export const SURFACE_POINT = shapeOf<SurfacePointInput>()({
  ...PLAN_POINT,
  z: quantity(ELEVATION),
});

const POINTS = list(object(PLAN_POINT), { of: 'points', least: 2 });

/** The points of an edge in order, two or more and each apart from the next. Internal. */
export const edgePoints: Field<readonly PlanPoint[]> = custom((reader, value, path) => {
  // a point that could not be read is undefined
  const points: readonly (PlanPoint | undefined)[] = POINTS.read(reader, value, path);
  points.forEach((point, k) => {
    const before = points[k - 1];
    if (point === undefined || before === undefined || !areOne(before, point)) return;
    const message = 'is the same point as the one before it. Remove one of them';
    reader.fail('POINTS_COINCIDE', [...path, k], message, { earlier: k - 1 });
  });
  return points.filter((point) => point !== undefined);
});

/** The points of an edge; a closed one may have repeated its first point at the end. Internal. */
export function openEnd(points: readonly PlanPoint[], closed: boolean): readonly PlanPoint[] {
  const [first, last] = [points[0], points.at(-1)];
  const repeats = first !== undefined && last !== undefined && areOne(first, last);
  return closed && repeats ? points.slice(0, -1) : points;
}

/** A closed edge has three points or more. Internal. */
export function checkClosed(
  reader: Reader,
  points: readonly PlanPoint[] | undefined,
  { closed, path }: { readonly closed: boolean | undefined; readonly path: FieldPath },
): void {
  if (points === undefined || closed !== true) return;
  const got = openEnd(points, closed).length;
  if (got >= LEAST_CLOSED) return;
  const message = `${got} points are too few for a closed edge. List at least ${LEAST_CLOSED}`;
  reader.fail('TOO_FEW', path, message, { least: LEAST_CLOSED, got });
}

const LEAST_CLOSED = 3;

const areOne = (a: PlanPoint, b: PlanPoint): boolean => isZero(between(a, b));
