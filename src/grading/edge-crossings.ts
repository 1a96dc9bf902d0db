import { entry } from '../invariant.js';
import { fromSI, type Length } from '../units/quantity.js';
import { signOfRatio, subtractRatios, ZERO_RATIO, type Ratio } from '../units/ratio.js';
import {
  between,
  norm,
  pointFrom,
  scaled,
  share,
  type PlanPoint,
  type Vector,
} from '../units/vector.js';
import type { SurfacePoint } from './read-points.js';

/** A stake where a line of the surface meets an edge. */
export interface LineStake extends SurfacePoint {
  /** The edge, counted from 0: it runs from the point with this index to the next. */
  readonly edge: number;
  /** Distance from the start of that edge. */
  readonly station: Length;
}

interface Edges {
  readonly path: readonly PlanPoint[];
  readonly closed: boolean;
  /** Zero on the line, with opposite signs on its two sides; changes linearly along an edge. */
  readonly gap: (p: PlanPoint) => Ratio;
  readonly levelOf: (p: PlanPoint) => SurfacePoint;
}

/**
 * Where a line meets the edges of an outline, exactly: within an edge, or at a corner. An edge that
 * lies on the line has a stake at each end. Internal.
 */
export function edgeCrossings({ path, closed, gap, levelOf }: Edges): LineStake[] {
  const [first] = path;
  if (first === undefined) return [];
  const ends = closed ? [...path.slice(1), first] : path.slice(1);
  return ends.flatMap((to, edge) => {
    const from = entry(path, edge);
    const side = between(from, to);
    const [here, there] = [gap(from), gap(to)];
    const stake = (along: Vector): LineStake => ({
      ...levelOf(pointFrom(from, along)),
      edge,
      station: fromSI('length', norm(along)),
    });
    const starts = signOfRatio(here) === 0 ? [stake(scaled(side, ZERO_RATIO))] : [];
    const isLast = !closed && edge === ends.length - 1;
    // a corner on the line is the start of the next edge, except at the end of an open path
    if (signOfRatio(there) === 0) return isLast ? [...starts, stake(side)] : starts;
    if (signOfRatio(here) * signOfRatio(there) >= 0) return starts;
    return [stake(share(side, here, subtractRatios(here, there)))];
  });
}
