import { object, quantity } from '../input/field.js';
import { SLOPE } from '../input/ranges.js';
import { shapeOf } from '../input/shape.js';
import type { SlopeInput } from '../units/construct.js';
import { exactOf, fromSI } from '../units/quantity.js';
import { addRatios, type Ratio } from '../units/ratio.js';
import { between, dot, type PlanPoint, type Vector } from '../units/vector.js';
import { SURFACE_POINT, type SurfacePoint, type SurfacePointInput } from './read-points.js';

/** A plane by its grades and one of its points. The result of `planeThrough` is one. */
export interface PlaneInput {
  /** Slope along x [slope], positive if it rises with x; up to 10 either way. */
  readonly gradeX: SlopeInput;
  /** Slope along y [slope], positive if it rises with y; up to 10 either way. */
  readonly gradeY: SlopeInput;
  /** A point of the plane. */
  readonly point: SurfacePointInput;
}

/** A plane by its grades, or as `planeThrough` returns it. Internal. */
export const planeOrGrades = object(
  shapeOf<PlaneInput>()({
    gradeX: quantity(SLOPE),
    gradeY: quantity(SLOPE),
    point: object(SURFACE_POINT),
  }),
);

type PlaneValues = ReturnType<typeof planeOrGrades.read>;

/** A plane by its exact gradient and a point. Internal. */
export interface PointedPlane {
  readonly gradient: Vector;
  readonly point: SurfacePoint;
}

/** A plane that has been read, by its exact gradient. Internal. */
export const pointedPlane = ({ gradeX, gradeY, point }: PlaneValues): PointedPlane => ({
  gradient: { x: exactOf(gradeX), y: exactOf(gradeY) },
  point,
});

/** Elevation of a plane at a point, in metres. Internal. */
export const heightOf = ({ gradient, point }: PointedPlane, p: PlanPoint): Ratio =>
  addRatios(exactOf(point.z), dot(gradient, between(point, p)));

/** The point of a plane above a plan point. Internal. */
export const levelled = (on: PointedPlane, { x, y }: PlanPoint): SurfacePoint => ({
  x,
  y,
  z: fromSI('length', heightOf(on, { x, y })),
});
