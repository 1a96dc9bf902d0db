import { bentLine } from '../../grading/bent-line.js';
import { planeThrough } from '../../grading/plane-through.js';
import { warpedSurface } from '../../grading/warped-surface.js';
import { exactOf, fromSI, type Length, type Slope } from '../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  signOfRatio,
  type Ratio,
} from '../../units/ratio.js';
import {
  between,
  cross,
  norm,
  opposite,
  scaled,
  type PlanPoint,
  type Vector,
} from '../../units/vector.js';

/** A level that finished grade must meet. Internal. */
export interface FixedLevel extends PlanPoint {
  readonly name: string;
  readonly elevation: Length;
  readonly fixed: boolean;
}

/** Finished grade at a point. Internal. */
export interface FinishAt {
  readonly elevation: Length;
  /** True beyond the fixed levels, where the surface is extended. */
  readonly extrapolated: boolean;
}

/** Finished grade at any point. Internal. */
export type FinishSurface = (place: PlanPoint) => FinishAt;

/**
 * A surface along a line of levels: straight from level to level, mitred at bends, with the cross slope
 * square to the line. Internal.
 */
export function lineSurface(levels: readonly FixedLevel[], crossSlope: Slope) {
  const line = bentLine(levels, crossSlope);
  const surface: FinishSurface = (place) => {
    const { elevation, extrapolated } = line.at(place);
    return { elevation, extrapolated };
  };
  return { line, surface };
}

/** The plane through three levels, or the least-squares plane of more. Internal. */
export function planeSurface(levels: readonly FixedLevel[]) {
  const plane = planeThrough({
    points: levels.map(({ name, x, y, elevation, fixed }) => ({
      id: name,
      x,
      y,
      z: elevation,
      fixed,
    })),
  });
  const surface: FinishSurface = ({ x, y }) => {
    const { z, extrapolated } = plane.at({ x, y });
    return { elevation: z, extrapolated };
  };
  return { plane, surface };
}

/** The warped surface between four corners that {@link areCorners} has accepted. Internal. */
export function cornerSurface(levels: readonly FixedLevel[]) {
  const [a, b, c, d] = levels as readonly [FixedLevel, FixedLevel, FixedLevel, FixedLevel];
  const [long, wide] = [between(a, b), between(a, d)];
  const [length, width] = [fromSI('length', norm(long)), fromSI('length', norm(wide))];
  const warped = warpedSurface({
    length,
    width,
    corners: {
      startRight: a.elevation,
      endRight: b.elevation,
      endLeft: c.elevation,
      startLeft: d.elevation,
    },
  });
  const whole = cross(long, wide);
  const surface: FinishSurface = (place) => {
    const to = between(a, place);
    const u = divideRatios(cross(to, wide), whole);
    const v = divideRatios(cross(long, to), whole);
    const elevation = a.elevation
      .plus(part(b.elevation.minus(a.elevation), u))
      .plus(part(d.elevation.minus(a.elevation), v))
      .plus(part(warped.twist, multiplyRatios(u, v)));
    return { elevation, extrapolated: isOutside(u) || isOutside(v) };
  };
  return { warped, surface };
}

const part = (height: Length, share: Ratio): Length => height.times(fromSI('slope', share));

const isOutside = (share: Ratio): boolean =>
  signOfRatio(share) < 0 || compareRatios(share, ONE_RATIO) > 0;

/**
 * The slope of a surface at a point in a direction, + rising that way. It is measured over a thousandth
 * of the vector to either side. That is exact on planes and warped surfaces, and a close mean beside
 * the bend of a line. Internal.
 */
export function slopeAt(surface: FinishSurface, place: PlanPoint, direction: Vector): Slope {
  const step = scaled(direction, THOUSANDTH);
  const moved = (by: Vector): PlanPoint => ({
    x: place.x.plus(fromSI('length', by.x)),
    y: place.y.plus(fromSI('length', by.y)),
  });
  const rise = surface(moved(step)).elevation.minus(surface(moved(opposite(step))).elevation);
  const run = norm(step);
  return fromSI('slope', divideRatios(exactOf(rise), addRatios(run, run)));
}

const THOUSANDTH: Ratio = Object.freeze({ n: 1, d: 1000 });
