import { fault } from '../../errors.js';
import { MOST_SPREAD, unusable } from '../bulk-points.js';
import { at } from '../floats.js';

/** Sums of points about their mean, in metres; the mean is counted from the first point. Internal. */
export interface LineMoments {
  readonly count: number;
  /** The first point. */
  readonly x0: number;
  readonly y0: number;
  /** The mean, less the first point. */
  readonly meanX: number;
  readonly meanY: number;
  /** `sum dx^2`, `sum dx dy` and `sum dy^2` about the mean. */
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Where the first point lies this far out, in squares against the spread, a second pass is made. */
const FAR_OUT = 8;

/**
 * Moments of points in one pass about the first point, moved to the mean afterwards. That loses three
 * bits at most: where the first point lies so far from the others that it would lose more, a second
 * pass is made about the mean. Internal.
 */
export function momentsOf(xy: Float64Array): LineMoments {
  const once = momentsAbout(xy, 0, 0);
  const spread = once.a + once.c;
  if (!(spread <= MOST_SPREAD)) throw unusable(xy, 2);
  const { count, meanX, meanY } = once;
  const outlying = count * (meanX * meanX + meanY * meanY);
  return outlying <= FAR_OUT * spread ? once : momentsAbout(xy, meanX, meanY);
}

/** Moments by sums about a point, counted from the first one. */
function momentsAbout(xy: Float64Array, shiftX: number, shiftY: number): LineMoments {
  const [x0, y0] = [at(xy, 0), at(xy, 1)];
  const count = xy.length / 2;
  let [x, y, a, b, c] = [0, 0, 0, 0, 0];
  for (let i = 0; i < xy.length; i += 2) {
    const dx = at(xy, i) - x0 - shiftX;
    const dy = at(xy, i + 1) - y0 - shiftY;
    x += dx;
    y += dy;
    a += dx * dx;
    b += dx * dy;
    c += dy * dy;
  }
  return {
    count,
    x0,
    y0,
    meanX: shiftX + x / count,
    meanY: shiftY + y / count,
    a: Math.max(a - (x * x) / count, 0),
    b: b - (x * y) / count,
    c: Math.max(c - (y * y) / count, 0),
  };
}

/** Sums of squares [m2] below this lose the digits of floats: no two points are apart. */
const LEAST_SPREAD = 1e-150;

/**
 * Unit eigenvector of `[[a, b], [b, c]]` with the larger eigenvalue, without trigonometry and without
 * cancellation. Internal.
 */
export function mainDirection(a: number, b: number, c: number): readonly [number, number] {
  if (!(a + c > LEAST_SPREAD)) throw fault('POINTS_COINCIDE', 'all points are the same point');
  const spread = Math.hypot(a - c, 2 * b);
  if (!(spread > 1e-14 * (a + c))) {
    throw fault('DIRECTION_UNDEFINED', 'the points spread alike in every direction');
  }
  const [x, y] = a >= c ? [spread + (a - c), 2 * b] : [2 * b, spread + (c - a)];
  const norm = Math.hypot(x, y);
  return [x / norm, y / norm];
}
