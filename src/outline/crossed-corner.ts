import { entry, known } from '../invariant.js';
import { roughNumber } from '../units/ratio.js';
import { minus, type Vector } from '../units/vector.js';
import { isOutwardRight, toRight } from './chords.js';
import type { Ring } from './ring.js';

/** Maximum rounding error of the angle of arcs that are tangent at a corner [radians]. */
const TANGENT = 1e-9;

/**
 * The first corner at which an arc starts or ends on the wrong side of its neighbour, so the two
 * cross closer than chords can show: the angle of the paving between the two tangents is below 0 or
 * above 360 degrees. -1 for none. Internal.
 */
export function crossedCorner(ring: Ring, isHole: boolean): number {
  const { points, bulges } = ring;
  if (bulges === undefined) return -1;
  const isRight = isOutwardRight(ring, isHole);
  const edges = points.map((point, edge) => {
    const along = floatsOf(minus(entry(points, (edge + 1) % points.length), point));
    const bulge = bulges[edge];
    const height = bulge === undefined ? 0 : toRight(bulge, isRight);
    // an arc leaves its chord by half its central angle, + outward from the paving
    const swing = 2 * Math.atan((2 * height) / Math.hypot(...along));
    return { along, swing: isRight ? swing : -swing };
  });
  return edges.findIndex((next, corner) => {
    const before = known(edges.at(corner - 1), 'such entry');
    if (before.swing === 0 && next.swing === 0) return false;
    const turn = turnOf(before.along, next.along);
    // chords that run back over each other do not show the side of the paving
    if (Math.abs(turn) > Math.PI - TANGENT) return false;
    const angle = Math.PI - (isRight ? turn : -turn) + before.swing + next.swing;
    return angle < -TANGENT || angle > 2 * Math.PI + TANGENT;
  });
}

type Floats = readonly [x: number, y: number];

const floatsOf = ({ x, y }: Vector): Floats => [roughNumber(x), roughNumber(y)];

/** From one direction to the next, + to the left, from -pi to pi. */
const turnOf = ([ax, ay]: Floats, [bx, by]: Floats): number =>
  Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
