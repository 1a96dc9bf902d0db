import { entry } from '../invariant.js';
import { sum } from '../units/aggregate.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { signOfRatio } from '../units/ratio.js';
import {
  between,
  cross,
  dot,
  norm,
  pointFrom,
  share,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import { NO_LENGTH } from '../units/zero.js';
import { partAt } from './part-at.js';

/** Which way an edge turns, seen along it. */
export type Turn = 'left' | 'right' | 'back';

/** A corner of an edge. Internal. */
export interface Corner {
  /** Distance along the edge. */
  readonly station: Length;
  /** Which way the edge turns there. */
  readonly turn: Turn;
}

/** An edge in plan that stations run along. Internal. */
export interface EdgePath {
  /** Length from end to end, or all the way round. */
  readonly length: Length;
  /** Points where the direction changes; the first point of a closed edge may be one. */
  readonly corners: readonly Corner[];
  /** The point at a station from 0 to the length. */
  readonly pointAt: (station: Length) => PlanPoint;
}

interface Side {
  readonly start: PlanPoint;
  readonly along: Vector;
  readonly from: Length;
  readonly length: Length;
}

/** Lays stations along straight sides; lengths of slanted sides are taken to 40 digits. Internal. */
export function edgePath(points: readonly PlanPoint[], closed: boolean): EdgePath {
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  const sides: Side[] = [];
  ends.forEach((end, k) => {
    const start = entry(points, k);
    const along = between(start, end);
    const before = sides.at(-1);
    const from = before === undefined ? NO_LENGTH : before.from.plus(before.length);
    sides.push({ start, along, from, length: fromSI('length', norm(along)) });
  });
  return {
    length: sum(sides.map((side) => side.length)),
    corners: cornersOf(sides, closed),
    pointAt: (station) => pointOn(sides, station),
  };
}

function cornersOf(sides: readonly Side[], closed: boolean): Corner[] {
  return sides.flatMap((side, k) => {
    const before = k > 0 || closed ? sides.at(k - 1) : undefined;
    const turn = before === undefined ? undefined : turnBetween(before.along, side.along);
    return turn === undefined ? [] : [{ station: side.from, turn }];
  });
}

/** Turn from a to b; undefined if it is straight. */
function turnBetween(a: Vector, b: Vector): Turn | undefined {
  const side = signOfRatio(cross(a, b));
  if (side !== 0) return side > 0 ? 'left' : 'right';
  return signOfRatio(dot(a, b)) < 0 ? 'back' : undefined;
}

function pointOn(sides: readonly Side[], station: Length): PlanPoint {
  const side = partAt(sides, station, ({ from }) => from);
  const along = station.minus(side.from);
  return pointFrom(side.start, share(side.along, exactOf(along), exactOf(side.length)));
}
