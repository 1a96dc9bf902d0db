import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { between, plus, pointFrom, type PlanPoint, type Vector } from '../units/vector.js';
import { makeReader } from '../input/reader.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { convexHull, isInHull } from './convex-hull.js';
import { fallOf, type Fall } from './fall-of.js';
import type { LocalPoint, PlaneFit } from './plane-fit.js';
import { readPlanPoint, type PlanPointInput, type SurfacePoint } from './read-points.js';
import { inWholeNumbers, ratioOfWhole } from './whole-numbers.js';

/** How far a point stands off the plane. */
export interface PlaneResidual {
  readonly id?: string;
  /** Elevation of the plane there. */
  readonly fitted: Length;
  /** Point less plane: + above it. */
  readonly residual: Length;
}

/** What the plane says at a place. */
export interface PlaneAt extends SurfacePoint {
  /** True outside the points that the plane was laid through. */
  readonly extrapolated: boolean;
}

/** A plane through levels. */
export interface Plane extends Fall, Worked {
  /** Slope along x, + rising with x. */
  readonly gradeX: Slope;
  /** Slope along y, + rising with y. */
  readonly gradeY: Slope;
  /** A point of the plane: at the middle of the points given. */
  readonly point: SurfacePoint;
  readonly residuals: readonly PlaneResidual[];
  /** The point that stands furthest off. */
  readonly worst: PlaneResidual;
  /** Root mean square of the residuals. */
  readonly rms: Length;
  /** True where every point lies in the plane. */
  readonly isExact: boolean;
  /** Elevation at any place. Outside the points the plane is carried on: `at` says so. */
  readonly elevationAt: (place: PlanPointInput) => Length;
  readonly at: (place: PlanPointInput) => PlaneAt;
}

/** A point that has been read. Internal. */
export interface ReadPoint extends SurfacePoint {
  readonly id: { readonly id?: string };
  readonly fixed: boolean;
}

/** Points and the plane laid through them. Internal. */
export interface Fitted {
  readonly points: readonly ReadPoint[];
  readonly local: readonly LocalPoint[];
  readonly origin: SurfacePoint;
  readonly fit: PlaneFit;
}

/** Says all that a plane tells. Internal. */
export function describePlane({ points, local, origin, fit }: Fitted): Plane {
  const levelOf = (p: Vector): Length => origin.z.plus(fromSI('length', heightOn(fit, p)));
  const residuals = points.map(({ id, z }, k) => {
    const fitted = levelOf(local[k] ?? NO_VECTOR);
    return { ...id, fitted, residual: z.minus(fitted) };
  });
  const middle = meanOf(local);
  const hull = convexHull(local);
  const at = (input: PlanPointInput): PlaneAt => {
    const place = readPlace(input);
    const p = between(origin, place);
    return Object.freeze({ ...place, z: levelOf(p), extrapolated: !isInHull(hull, p) });
  };
  const plane = {
    ...fallOf(fit.gradeX, fit.gradeY),
    gradeX: fromSI('slope', fit.gradeX),
    gradeY: fromSI('slope', fit.gradeY),
    point: { ...pointFrom(origin, middle), z: levelOf(middle) },
    residuals,
    worst: residuals.reduce((a, b) => (b.residual.abs().compare(a.residual.abs()) > 0 ? b : a)),
    rms: fromSI('length', rootMeanSquare(residuals.map(({ residual }) => exactOf(residual)))),
    isExact: residuals.every(({ residual }) => residual.isZero()),
    elevationAt: (place: PlanPointInput) => at(place).z,
    at,
  };
  return withWorking(plane, () => planeSteps(plane, points.length));
}

const NO_VECTOR: Vector = Object.freeze({ x: ZERO_RATIO, y: ZERO_RATIO });

/** Height of the plane above its origin. */
const heightOn = ({ level, gradeX, gradeY }: PlaneFit, p: Vector): Ratio =>
  addRatios(level, addRatios(multiplyRatios(gradeX, p.x), multiplyRatios(gradeY, p.y)));

function meanOf(points: readonly Vector[]): Vector {
  const sum = points.reduce(plus, NO_VECTOR);
  const count = wholeRatio(points.length);
  return { x: divideRatios(sum.x, count), y: divideRatios(sum.y, count) };
}

function rootMeanSquare(values: readonly Ratio[]): Ratio {
  const { whole, scale } = inWholeNumbers(values);
  const squares = whole.reduce((total, value) => total + value * value, 0n);
  return squareRoot(ratioOfWhole(squares, scale * scale * BigInt(values.length)));
}

function readPlace(input: PlanPointInput): PlanPoint {
  const reader = makeReader();
  const place = readPlanPoint(reader, input, []);
  reader.finish();
  return place;
}

function planeSteps(
  plane: Pick<Plane, 'gradeX' | 'gradeY' | 'slope' | 'rms'>,
  count: number,
): Step[] {
  const { gradeX, gradeY, slope, rms } = plane;
  const grades = [
    given('gx', 'grade along x (+ rising)', gradeX),
    given('gy', 'grade along y (+ rising)', gradeY),
  ];
  return [
    {
      title: count === 3 ? 'Plane through three points' : 'Plane of least squares',
      formula: 'z = z0 + gx x + gy y',
      given: [given('n', 'points', count), ...grades],
      result: given('rms', 'root mean square of the residuals', rms),
      source: 'derived',
    },
    {
      title: 'Steepest slope of the plane',
      formula: 'g = sqrt(gx^2 + gy^2)',
      given: grades,
      result: given('g', 'steepest slope', slope),
      source: 'derived',
    },
  ];
}
