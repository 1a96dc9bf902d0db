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
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import {
  between,
  cross,
  dot,
  minus,
  norm,
  opposite,
  scaled,
  squared,
  type PlanPoint,
  type Vector,
} from '../../units/vector.js';

/** A level that finished grade has to meet. Internal. */
export interface FixedLevel extends PlanPoint {
  readonly name: string;
  readonly elevation: Length;
  readonly fixed: boolean;
}

/** Finished grade at a place. Internal. */
export interface FinishAt {
  readonly elevation: Length;
  /** True beyond the fixed levels, where the surface is carried on. */
  readonly carriedOn: boolean;
}

/** Finished grade everywhere. Internal. */
export type FinishSurface = (place: PlanPoint) => FinishAt;

/**
 * A surface along a line of levels: straight from level to level, and square to the line by the
 * cross slope. A place belongs to the nearest stretch. Internal.
 */
export function lineSurface(levels: readonly FixedLevel[], crossSlope: Slope): FinishSurface {
  const stretches = levels.slice(1).map((to, k) => stretchBetween(levels[k] ?? to, to));
  const last = stretches.length - 1;
  return (place) => {
    const near = stretches
      .map((stretch, k) => placeOn(stretch, place, { isFirst: k === 0, isLast: k === last }))
      .reduce((best, one) => (compareRatios(one.away, best.away) < 0 ? one : best));
    const along = near.from.plus(near.rise.times(fromSI('slope', near.share)));
    const level = crossSlope.isZero() ? along : along.plus(near.offset().times(crossSlope));
    return { elevation: level, carriedOn: near.carriedOn };
  };
}

interface Stretch {
  readonly from: FixedLevel;
  readonly ahead: Vector;
  readonly rise: Length;
}

const stretchBetween = (from: FixedLevel, to: FixedLevel): Stretch => ({
  from,
  ahead: between(from, to),
  rise: to.elevation.minus(from.elevation),
});

interface Ends {
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** Where a place lies along a stretch, carried on at the ends of the line alone. */
function placeOn({ from, ahead, rise }: Stretch, place: PlanPoint, { isFirst, isLast }: Ends) {
  const to = between(from, place);
  const share = divideRatios(dot(to, ahead), squared(ahead));
  const isBefore = signOfRatio(share) < 0;
  const isBeyond = compareRatios(share, ONE_RATIO) > 0;
  const start = isBefore && !isFirst ? ZERO_RATIO : share;
  const held = isBeyond && !isLast ? ONE_RATIO : start;
  const away = squared(minus(to, scaled(ahead, held)));
  return {
    share: held,
    away,
    from: from.elevation,
    rise,
    carriedOn: (isBefore && isFirst) || (isBeyond && isLast),
    /** Left of the line, + to the left. */
    offset: (): Length => fromSI('length', divideRatios(cross(ahead, to), norm(ahead))),
  };
}

/** The plane through the levels, or of least squares through more than three. Internal. */
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
    return { elevation: z, carriedOn: extrapolated };
  };
  return { plane, surface };
}

/** The warped surface between four corners that {@link areCorners} has passed. Internal. */
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
    return { elevation, carriedOn: isOutside(u) || isOutside(v) };
  };
  return { warped, surface };
}

const part = (height: Length, share: Ratio): Length => height.times(fromSI('slope', share));

const isOutside = (share: Ratio): boolean =>
  signOfRatio(share) < 0 || compareRatios(share, ONE_RATIO) > 0;

/**
 * The slope of a surface across a place, in a direction: over a thousandth of the vector to either
 * side, which is exact on planes and warped surfaces. + rising that way. Internal.
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
