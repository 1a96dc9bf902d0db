import { exactOf, type Length, type Slope } from '../units/quantity.js';
import { steepestOf } from './fall-of.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** Grades of the four edges of a warped surface. */
export interface WarpedGrades {
  /** Right edge, positive if it rises from start to end. */
  readonly right: Slope;
  /** Left edge, positive if it rises from start to end. */
  readonly left: Slope;
  /** Edge at the start, positive if it rises from right to left. */
  readonly start: Slope;
  /** Edge at the end, positive if it rises from right to left. */
  readonly end: Slope;
}

/** A warped surface at a point. */
export interface WarpedAt {
  /** Distance along the right edge from the start. */
  readonly station: Length;
  /** Distance to the left of the right edge. */
  readonly offset: Length;
  /** Elevation there. */
  readonly elevation: Length;
  /** Slope along the length there, positive if it rises. */
  readonly longSlope: Slope;
  /** Slope across there, positive if it rises to the left. */
  readonly crossSlope: Slope;
  /** Steepest slope there, not negative. */
  readonly steepest: Slope;
  /** True if the point is outside the four corners, where the surface is extended. */
  readonly extrapolated: boolean;
}

interface Surface {
  /** Elevation of the corner at the start, right. */
  readonly origin: Length;
  readonly grades: WarpedGrades;
  readonly length: Length;
  readonly width: Length;
  readonly twist: Length;
}

/** A warped surface at a point that has been read. Internal. */
export function warpedAt(
  { origin, grades, length, width, twist }: Surface,
  { station, offset }: { readonly station: Length; readonly offset: Length },
): WarpedAt {
  // along the right edge, then across, with the effect of the twist on both
  const twisted = shareOf(shareOf(twist, station, length), offset, width);
  const elevation = origin
    .plus(station.times(grades.right))
    .plus(offset.times(grades.start))
    .plus(twisted);
  const slopeOfTwist = (part: Length, of: Length, run: Length) =>
    slopeBetween(shareOf(twist, part, of), run);
  const longSlope = grades.right.plus(slopeOfTwist(offset, width, length));
  const crossSlope = grades.start.plus(slopeOfTwist(station, length, width));
  return Object.freeze({
    station,
    offset,
    elevation,
    longSlope,
    crossSlope,
    steepest: steepestOf(exactOf(crossSlope), exactOf(longSlope)),
    extrapolated: isOutside(station, length) || isOutside(offset, width),
  });
}

const isOutside = (value: Length, most: Length): boolean =>
  value.isNegative() || value.compare(most) > 0;
