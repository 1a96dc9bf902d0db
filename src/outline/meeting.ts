import {
  addRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import {
  cross,
  dot,
  minus,
  norm,
  plus,
  scaled,
  share,
  squared,
  turnedRight,
  type Vector,
} from '../units/vector.js';

/** A straight line. Internal. */
export interface Line {
  readonly point: Vector;
  readonly along: Vector;
}

/** A circle. Internal. */
export interface Circle {
  readonly centre: Vector;
  readonly radius: Ratio;
}

/** The line or circle of an edge. Internal. */
export type Run = Line | Circle;

const isCircle = (run: Run): run is Circle => 'centre' in run;

/**
 * The meeting point of two edges, the one nearer to a point if there are two; undefined if they do
 * not meet or are parallel. Internal.
 */
export function meeting(a: Run, b: Run, near: Vector): Vector | undefined {
  if (isCircle(a)) return isCircle(b) ? onTwoCircles(a, b, near) : onLineAndCircle(b, a, near);
  return isCircle(b) ? onLineAndCircle(a, b, near) : onTwoLines(a, b);
}

function onTwoLines(a: Line, b: Line): Vector | undefined {
  const turn = cross(a.along, b.along);
  if (signOfRatio(turn) === 0) return undefined;
  const part = cross(minus(b.point, a.point), b.along);
  return plus(a.point, share(a.along, part, turn));
}

/** The meeting point of a line and a circle: the foot of the centre on the line, plus or minus half the chord. */
function onLineAndCircle(line: Line, { centre, radius }: Circle, near: Vector): Vector | undefined {
  const size = squared(line.along);
  const foot = plus(
    line.point,
    share(line.along, dot(minus(centre, line.point), line.along), size),
  );
  const rest = subtractRatios(multiplyRatios(radius, radius), squared(minus(centre, foot)));
  if (signOfRatio(rest) < 0) return undefined;
  const half = squareRoot(rest);
  const isAhead = signOfRatio(dot(minus(near, foot), line.along)) >= 0;
  return plus(foot, share(line.along, isAhead ? half : negateRatio(half), norm(line.along)));
}

/** The meeting point of two circles, on their radical line: square to the line of centres, equal powers. */
function onTwoCircles(a: Circle, b: Circle, near: Vector): Vector | undefined {
  const apart = minus(b.centre, a.centre);
  const square = squared(apart);
  if (signOfRatio(square) === 0) return undefined;
  const powers = subtractRatios(
    multiplyRatios(a.radius, a.radius),
    multiplyRatios(b.radius, b.radius),
  );
  const part = divideRatios(addRatios(powers, square), multiplyRatios(square, wholeRatio(2)));
  const point = plus(a.centre, scaled(apart, part));
  return onLineAndCircle({ point, along: turnedRight(apart) }, a, near);
}
