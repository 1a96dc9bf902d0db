import { fault } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { exactOf, fromSI } from '../units/quantity.js';
import { subtractRatios, ZERO_RATIO } from '../units/ratio.js';
import { between } from '../units/vector.js';
import { fitExactly, type LocalPoint } from './plane-fit.js';
import { describePlane, type Plane, type ReadPoint } from './plane.js';
import { readSurfacePoint, type SurfacePoint, type SurfacePointInput } from './read-points.js';

/** A point that a plane is laid through. */
export interface PlanePointInput extends SurfacePointInput {
  readonly id?: string;
  /** True for a level that cannot move, such as a slab corner: the plane runs through it. */
  readonly fixed?: boolean;
}

/**
 * The plane through three points, or the plane of least squares through more: it makes the sum of
 * squared upright distances least, `z = z0 + gx x + gy y`, and runs exactly through points marked
 * `fixed`. Gradients and levels are exact; the steepest slope `sqrt(gx^2 + gy^2)` and the azimuth are
 * taken to 40 digits. Large coordinates lose nothing.
 *
 * @param options.points - three or more, not on one line in plan; `x`, `y` and elevation `z`
 *   [length], `id` if wanted, `fixed` for at most three levels that cannot move
 * @returns steepest `slope` [slope, not negative] and `downhillAzimuth` [angle, clockwise from +y; null
 *   for a level plane, which has none]; `gradeX` and `gradeY` [slope]; residuals, their rms and the
 *   worst [length, + point above plane]; `elevationAt({ x, y })` [length] and its twin `at`, which
 *   says where the plane is carried on beyond its points
 * @throws `TOO_FEW_POINTS`, `POINTS_COLLINEAR`, `TOO_MANY_FIXED`, `CAPACITY_EXCEEDED`
 *   (more than 1000 points), `OUT_OF_RANGE` and the reading codes
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
export function planeThrough(options: { readonly points: readonly PlanePointInput[] }): Plane {
  const reader = makeReader();
  const points = readPoints(reader, reader.object(options, [])['points']);
  reader.finish();
  const origin = points[0] ?? NOWHERE;
  const local = points.map((point) => localPoint(point, origin));
  const fit = fitExactly(local);
  if (fit === undefined) throw fault('POINTS_COLLINEAR', IN_LINE, {}, ['points']);
  return describePlane({ points, local, origin, fit });
}

const IN_LINE = 'the points, or the fixed ones among them, lie on one line in plan';
const MOST_POINTS = 1000;
const MOST_FIXED = 3;
const ZERO = fromSI('length', ZERO_RATIO);
const NOWHERE: SurfacePoint = Object.freeze({ x: ZERO, y: ZERO, z: ZERO });

function readPoints(reader: Reader, value: unknown): ReadPoint[] {
  const list = reader.list(value, ['points']);
  if (list.length > MOST_POINTS) {
    const why = `more than ${MOST_POINTS} points: use fitPlane for scanned surfaces`;
    reader.fail('CAPACITY_EXCEEDED', ['points'], why);
    return [];
  }
  if (list.length > 0 && list.length < 3) {
    reader.fail('TOO_FEW_POINTS', ['points'], 'a plane needs three points or more');
  }
  const points = list.map((item, k) => {
    const path = ['points', k];
    const fields = reader.object(item, path);
    const id = fields['id'] === undefined ? {} : { id: reader.text(fields['id'], [...path, 'id']) };
    const fixed = reader.flag(fields['fixed'] ?? false, [...path, 'fixed']);
    return { ...readSurfacePoint(reader, item, path), id, fixed };
  });
  if (points.filter(({ fixed }) => fixed).length > MOST_FIXED) {
    reader.fail('TOO_MANY_FIXED', ['points'], 'a plane can hold three fixed levels at most');
  }
  return points;
}

function localPoint(point: ReadPoint, origin: SurfacePoint): LocalPoint {
  const z = subtractRatios(exactOf(point.z), exactOf(origin.z));
  return { ...between(origin, point), z, fixed: point.fixed };
}
