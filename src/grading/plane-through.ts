import { fault, type FieldPath } from '../errors.js';
import { flag, list, object, optional, text } from '../input/field.js';
import { givenEntries } from '../input/given-entries.js';
import type { Reader } from '../input/reader.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { entry } from '../invariant.js';
import { exactOf } from '../units/quantity.js';
import { subtractRatios } from '../units/ratio.js';
import { between } from '../units/vector.js';
import { fitExactly, type LocalPoint } from './plane-fit.js';
import { describePlane, type Plane, type ReadPoint } from './plane.js';
import { SURFACE_POINT, type SurfacePoint, type SurfacePointInput } from './read-points.js';

/** A point of a plane to fit. */
export interface PlanePointInput extends SurfacePointInput {
  /** What the crew calls it. Optional. */
  readonly id?: string;
  /**
   * True for a level that cannot move, such as a slab corner: the plane passes through it. Default:
   * false.
   */
  readonly fixed?: boolean;
}

/** The points of a plane. */
export interface PlaneThroughOptions {
  /** Points, 3 to 1000, not on one line in plan. No more than three are `fixed`. */
  readonly points: readonly PlanePointInput[];
}

const POINT = shapeOf<PlanePointInput>()({
  ...SURFACE_POINT,
  id: optional(text()),
  fixed: optional(flag, false),
});

const MOST_POINTS = 1000;

const OPTIONS = shapeOf<PlaneThroughOptions>()({
  points: list(object(POINT), { of: 'points', least: 3, most: MOST_POINTS }),
});

/**
 * The plane through three points, or the least-squares plane through more, `z = z0 + gx x + gy y`.
 * It has the smallest sum of squared vertical distances and passes through every point marked
 * `fixed`. Gradients and levels are exact; the steepest slope `sqrt(gx^2 + gy^2)` and the azimuth
 * are taken to 40 digits. Large coordinates lose no accuracy. For scanned surfaces see `fitPlane`.
 *
 * @param options - see {@link PlaneThroughOptions}
 * @returns steepest `slope` [slope, not negative] and `downhillAzimuth` [angle, clockwise from +y; null
 *   for a level plane]; `gradeX` and `gradeY` [slope]; residuals, their rms and the worst [length,
 *   + point above plane]; `elevationAt({ x, y })` [length]; `at`, which adds a flag outside the points
 * @throws `TOO_FEW`, `TOO_MANY`, `POINTS_COLLINEAR`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const apron = planeThrough({
 *   points: [
 *     { x: '0 m', y: '0 m', z: '30 m' },
 *     { x: '10 m', y: '0 m', z: '29.7 m' },
 *     { x: '0 m', y: '5 m', z: '29.8 m' },
 *   ],
 * });
 * apron.slope.to('percent').toString() //=> '5'
 * apron.gradeY.to('percent').toString() //=> '-4'
 * apron.downhillAzimuth?.to('deg').toFixed(3) //=> '36.870'
 * apron.elevationAt({ x: '5 m', y: '2 m' }).to('m').toString() //=> '29.77'
 */
export function planeThrough(options: PlaneThroughOptions): Plane {
  const points = readOptions(options, OPTIONS, checkFixed).points.map(readPoint);
  const origin = entry(points, 0);
  const local = points.map((point) => localPoint(point, origin));
  const fit = fitExactly(local);
  if (fit === undefined) throw fault('POINTS_COLLINEAR', IN_LINE, {}, ['points']);
  return describePlane({ points, local, origin, fit });
}

const IN_LINE =
  'the points, or the fixed ones among them, are on one line in plan. Add a point to the side of it';
const MOST_FIXED = 3;

function checkFixed(
  reader: Reader,
  _: unknown,
  path: FieldPath,
  raw: Readonly<Record<string, unknown>>,
): void {
  const given = givenEntries(raw['points'], POINT, MOST_POINTS);
  const got = given.filter((point) => point?.['fixed'] === true).length;
  if (got <= MOST_FIXED) return;
  const message = `${got} fixed levels are too many for one plane. Mark no more than ${MOST_FIXED}`;
  reader.fail('TOO_MANY', [...path, 'points'], message, { most: MOST_FIXED, got });
}

const readPoint = ({ id, ...point }: Values<typeof POINT>): ReadPoint => ({
  ...point,
  id: id ?? null,
});

function localPoint(point: ReadPoint, origin: SurfacePoint): LocalPoint {
  const z = subtractRatios(exactOf(point.z), exactOf(origin.z));
  return { ...between(origin, point), z, fixed: point.fixed };
}
