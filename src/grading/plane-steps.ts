import type { Length, Slope } from '../units/quantity.js';
import { derivedStep, given, procedureStep, type Step, type StepInput } from '../working.js';
import type { SurfacePoint } from './read-points.js';

/** A point, and whether the plane must pass through it. */
interface PlacedPoint extends SurfacePoint {
  readonly fixed: boolean;
}

/** What the working shows of a plane. */
interface Shown {
  readonly gradeX: Slope;
  readonly gradeY: Slope;
  readonly slope: Slope;
  readonly rms: Length;
  readonly residuals: readonly { readonly residual: Length }[];
}

/** The working of a plane. Internal. */
export function planeSteps(plane: Shown, points: readonly PlacedPoint[]): Step[] {
  const gx = given('gx', 'grade along x (+ rising)', plane.gradeX);
  const gy = given('gy', 'grade along y (+ rising)', plane.gradeY);
  return [
    ...(points.length === 3 ? exactSteps(points, { gx, gy }) : fittedSteps(points, plane)),
    derivedStep({
      title: 'Steepest slope of the plane',
      formula: 'g = sqrt(gx^2 + gy^2)',
      given: [gx, gy],
      result: given('g', 'steepest slope', plane.slope),
    }),
  ];
}

const placesOf = (points: readonly PlacedPoint[]): StepInput[] => [
  given(
    'x',
    'x of each point',
    points.map(({ x }) => x),
  ),
  given(
    'y',
    'y of each point',
    points.map(({ y }) => y),
  ),
  given(
    'z',
    'elevation of each point',
    points.map(({ z }) => z),
  ),
];

/** Twice the area that three points enclose in plan. */
const ENCLOSED = '((x[2] - x[1]) * (y[3] - y[1]) - (x[3] - x[1]) * (y[2] - y[1]))';

function exactSteps(
  points: readonly PlacedPoint[],
  { gx, gy }: { readonly gx: StepInput; readonly gy: StepInput },
): Step[] {
  const places = placesOf(points);
  return [
    derivedStep({
      title: 'Plane through three points: grade along x',
      formula: `gx = ((z[2] - z[1]) * (y[3] - y[1]) - (z[3] - z[1]) * (y[2] - y[1])) / ${ENCLOSED}`,
      given: places,
      result: gx,
    }),
    derivedStep({
      title: 'Plane through three points: grade along y',
      formula: `gy = ((x[2] - x[1]) * (z[3] - z[1]) - (x[3] - x[1]) * (z[2] - z[1])) / ${ENCLOSED}`,
      given: places,
      result: gy,
    }),
  ];
}

function fittedSteps(
  points: readonly PlacedPoint[],
  { gradeX, gradeY, residuals, rms }: Shown,
): Step[] {
  const held = points.flatMap(({ fixed }, k) => (fixed ? [`${k + 1}`] : []));
  const fixed = held.length === 0 ? 'no point' : `point ${held.join(', ')}`;
  return [
    procedureStep({
      title: 'Least-squares plane',
      procedure: 'planeThrough',
      method:
        'Finds the plane with the smallest sum of squared plumb distances of the points from it that passes through every fixed point. It returns the grade of the plane along x and the grade along y.',
      given: [...placesOf(points), given('f', 'fixed', fixed)],
      result: given('gx, gy', 'grades along x and along y (+ rising)', [gradeX, gradeY]),
      source: 'derived',
    }),
    derivedStep({
      title: 'Root mean square of the residuals',
      formula: 'r = sqrt(mean(e[i]^2))',
      given: [
        given(
          'e',
          'each point above the plane',
          residuals.map(({ residual }) => residual),
        ),
      ],
      result: given('r', 'root mean square', rms),
    }),
  ];
}
