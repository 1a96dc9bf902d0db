import { entry } from '../invariant.js';
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
import { between, plus, pointFrom, type Vector } from '../units/vector.js';
import { readOptions } from '../input/shape.js';
import { withWorking, type Worked } from '../working.js';
import { convexHull, isInHull } from './convex-hull.js';
import { fallOf, type Fall } from './fall-of.js';
import type { LocalPoint, PlaneFit } from './plane-fit.js';
import { planeSteps } from './plane-steps.js';
import { PLAN_POINT, type PlanPointInput, type SurfacePoint } from './read-points.js';
import { inWholeNumbers, ratioOfWhole } from './whole-numbers.js';

/** A point compared with the plane. */
export interface PlaneResidual {
  /** What the crew calls the point; null if it was not named. */
  readonly id: string | null;
  /** Elevation of the plane there. */
  readonly fitted: Length;
  /** Point less plane; positive if the point is above it. */
  readonly residual: Length;
}

/** The plane at a point. */
export interface PlaneAt extends SurfacePoint {
  /** True if the point is outside the given points, where the plane is extended. */
  readonly extrapolated: boolean;
}

/** A plane fitted to levels. */
export interface Plane extends Fall, Worked {
  /** Slope along x, positive if it rises with x. */
  readonly gradeX: Slope;
  /** Slope along y, positive if it rises with y. */
  readonly gradeY: Slope;
  /** A point of the plane, at the centroid of the points given. */
  readonly point: SurfacePoint;
  /** Each point compared with the plane, in the order given. */
  readonly residuals: readonly PlaneResidual[];
  /** The point that is farthest off. */
  readonly worst: PlaneResidual;
  /** Root mean square of the residuals. */
  readonly rms: Length;
  /** True if every point is in the plane. */
  readonly isExact: boolean;
  /** Elevation at any point. Outside the given points the plane is extended; `at` flags it. */
  readonly elevationAt: (place: PlanPointInput) => Length;
  /** The point of the plane at any plan point; flagged outside the given points. */
  readonly at: (place: PlanPointInput) => PlaneAt;
}

/** A point that has been read. Internal. */
export interface ReadPoint extends SurfacePoint {
  readonly id: string | null;
  readonly fixed: boolean;
}

/** Points and the plane laid through them. Internal. */
export interface Fitted {
  readonly points: readonly ReadPoint[];
  readonly local: readonly LocalPoint[];
  readonly origin: SurfacePoint;
  readonly fit: PlaneFit;
}

/** What there is to say of a plane. Internal. */
export function describePlane({ points, local, origin, fit }: Fitted): Plane {
  const levelOf = (p: Vector): Length => origin.z.plus(fromSI('length', heightOn(fit, p)));
  const residuals = points.map(({ id, z }, k) => {
    const fitted = levelOf(entry(local, k));
    return { id, fitted, residual: z.minus(fitted) };
  });
  const middle = meanOf(local);
  const hull = convexHull(local);
  const at = (input: PlanPointInput): PlaneAt => {
    const place = readOptions(input, PLAN_POINT);
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
  return withWorking(plane, () => planeSteps(plane, points));
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
