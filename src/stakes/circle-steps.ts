import { entry } from '../invariant.js';
import type { Length } from '../units/quantity.js';
import type { PlanPoint } from '../units/vector.js';
import { derivedStep, given, procedureStep, type Step, type StepInput } from '../working.js';

interface CirclePoint {
  readonly id: string;
  readonly at: PlanPoint;
}

interface Shown {
  readonly centre: PlanPoint;
  readonly radius: Length;
  readonly residuals: readonly Length[];
}

/** The working of a circle through three points, or nearest to more. Internal. */
export const circleSteps = (points: readonly CirclePoint[], circle: Shown): Step[] =>
  points.length === 3 ? exactSteps(points, circle) : fittedSteps(points, circle);

const placesOf = (points: readonly CirclePoint[]): StepInput[] => [
  given(
    'x',
    'x of each point',
    points.map(({ at }) => at.x),
  ),
  given(
    'y',
    'y of each point',
    points.map(({ at }) => at.y),
  ),
];

const centreOf = ({ centre }: Shown): readonly [StepInput, StepInput] => [
  given('x0', 'x of the centre', centre.x),
  given('y0', 'y of the centre', centre.y),
];

/** Twice the cross product of the two sides from the first point, and the squares of these sides. */
const TWICE = '(2 * ((x[2] - x[1]) * (y[3] - y[1]) - (x[3] - x[1]) * (y[2] - y[1])))';
const SECOND = '((x[2] - x[1])^2 + (y[2] - y[1])^2)';
const THIRD = '((x[3] - x[1])^2 + (y[3] - y[1])^2)';

function exactSteps(points: readonly CirclePoint[], circle: Shown): Step[] {
  const places = placesOf(points);
  const [x0, y0] = centreOf(circle);
  return [
    derivedStep({
      title: 'Circle through 3 points: x of the centre',
      formula: `x0 = x[1] + ((y[3] - y[1]) * ${SECOND} - (y[2] - y[1]) * ${THIRD}) / ${TWICE}`,
      given: places,
      result: x0,
    }),
    derivedStep({
      title: 'Circle through 3 points: y of the centre',
      formula: `y0 = y[1] + ((x[2] - x[1]) * ${THIRD} - (x[3] - x[1]) * ${SECOND}) / ${TWICE}`,
      given: places,
      result: y0,
    }),
    derivedStep({
      title: 'Circle through 3 points: radius',
      formula: 'R = sqrt((x[1] - x0)^2 + (y[1] - y0)^2)',
      given: [...places, x0, y0],
      result: given('R', 'radius', circle.radius),
    }),
  ];
}

function fittedSteps(points: readonly CirclePoint[], circle: Shown): Step[] {
  const [x0, y0] = centreOf(circle);
  const radius = given('R', 'radius', circle.radius);
  const fit = procedureStep({
    title: `Circle nearest to ${points.length} points`,
    procedure: 'circleThrough',
    method:
      'Finds the circle with the smallest sum of squared distances of the points from it: exactly if all of them are on one circle, else step by step until the centre stays. It returns the centre and the radius.',
    given: placesOf(points),
    result: given('x0, y0, R', 'centre and radius', [
      circle.centre.x,
      circle.centre.y,
      circle.radius,
    ]),
    source: 'derived',
  });
  const offsets = points.map(({ id, at }, k) =>
    derivedStep({
      title: `Point ${id} off the circle (+ outside)`,
      formula: 'd = sqrt((x - x0)^2 + (y - y0)^2) - R',
      given: [
        given('x', 'x of the point', at.x),
        given('y', 'y of the point', at.y),
        x0,
        y0,
        radius,
      ],
      result: given('d', 'distance from the circle', entry(circle.residuals, k)),
    }),
  );
  return [fit, ...offsets];
}
