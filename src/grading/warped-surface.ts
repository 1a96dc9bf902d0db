import { object, optional, quantity } from '../input/field.js';
import { DISTANCE, ELEVATION, STATION, UNIT_SIDE } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length, type Slope } from '../units/quantity.js';
import { multiplyRatios, signOfRatio } from '../units/ratio.js';
import { NO_SLOPE } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { steepestOf } from './fall-of.js';
import { shareOf, slopeBetween } from './slope-between.js';
import { warpedAt, type WarpedAt, type WarpedGrades } from './warped-at.js';

/** The corners of a warped surface, seen along its length: start and end, left and right of travel. */
export type WarpedCorner = 'startRight' | 'endRight' | 'startLeft' | 'endLeft';

/** Elevations of the four corners, seen along the length. */
export interface WarpedCornersInput {
  /** Elevation at the start, right of travel [length], up to 10 km either way. */
  readonly startRight: LengthInput;
  /** Elevation at the end, right of travel [length], up to 10 km either way. */
  readonly endRight: LengthInput;
  /** Elevation at the start, left of travel [length], up to 10 km either way. */
  readonly startLeft: LengthInput;
  /** Elevation at the end, left of travel [length], up to 10 km either way. */
  readonly endLeft: LengthInput;
}

/** The size of a paver. */
export interface PaverSizeInput {
  /** Length [length], more than 0 and at most 5 m. */
  readonly length: LengthInput;
  /** Width [length], more than 0 and at most 5 m. */
  readonly width: LengthInput;
}

/** A rectangle with four corner levels. */
export interface WarpedSurfaceOptions {
  /** Length of the surface in plan [length], more than 0 and at most 100 km. */
  readonly length: LengthInput;
  /** Width of the surface in plan, to the left [length], more than 0 and at most 100 km. */
  readonly width: LengthInput;
  /** Elevations of the four corners. */
  readonly corners: WarpedCornersInput;
  /** A paver, to find out how much it rocks. Default: not checked. */
  readonly paver?: PaverSizeInput;
}

/** A point on a warped surface. */
export interface WarpedPlaceInput {
  /** Distance along the right edge from the start [length], up to 100 km either way. */
  readonly station: LengthInput;
  /** Distance to the left of the right edge [length], up to 100 km either way. */
  readonly offset: LengthInput;
}

const OPTIONS = shapeOf<WarpedSurfaceOptions>()({
  length: quantity(DISTANCE),
  width: quantity(DISTANCE),
  corners: object(
    shapeOf<WarpedCornersInput>()({
      startRight: quantity(ELEVATION),
      endRight: quantity(ELEVATION),
      startLeft: quantity(ELEVATION),
      endLeft: quantity(ELEVATION),
    }),
  ),
  paver: optional(
    object(shapeOf<PaverSizeInput>()({ length: quantity(UNIT_SIDE), width: quantity(UNIT_SIDE) })),
  ),
});

const PLACE = shapeOf<WarpedPlaceInput>()({
  station: quantity(STATION),
  offset: quantity(STATION),
});

/** A surface between four corner levels that need not be in one plane. */
export interface WarpedSurface extends Worked {
  /** Distance of the corners out of one plane: `startRight - endRight + endLeft - startLeft`. */
  readonly twist: Length;
  /** True if the four corners are in one plane. */
  readonly isPlane: boolean;
  /** Grades of the four edges. */
  readonly grades: WarpedGrades;
  /** The lowest corner, or several at the same elevation. Water runs to it. */
  readonly lowCorners: readonly WarpedCorner[];
  /** Elevation at the centre. */
  readonly centre: Length;
  /** Steepest slope anywhere on the surface, not negative. */
  readonly steepest: Slope;
  /** Flattest slope anywhere on the surface, not negative. */
  readonly flattest: Slope;
  /** True if the long slope rises on one side and falls on the other. */
  readonly longTurns: boolean;
  /** True if the cross slope rises at one end and falls at the other. */
  readonly crossTurns: boolean;
  /**
   * Rock of a paver: distance of one corner from the plane of the others; null if no paver is
   * given.
   */
  readonly paverRock: Length | null;
  /** Elevation at any point. Outside the corners the surface is extended; `at` flags it. */
  readonly elevationAt: (place: WarpedPlaceInput) => Length;
  /** Elevation and slopes at any point; flagged outside the corners. */
  readonly at: (place: WarpedPlaceInput) => WarpedAt;
}

/**
 * The warped surface over a rectangle with four corner levels, straight along and across:
 * `z(u, v) = z00 (1-u)(1-v) + z10 u (1-v) + z11 u v + z01 (1-u) v`. Exact. A string along or across
 * the surface lies on it. A string from corner to corner is off it by a quarter of the twist at the
 * middle.
 *
 * @param options - see {@link WarpedSurfaceOptions}
 * @returns twist, centre [length], grades of the edges, steepest and flattest slope [slope], low
 *   corners, rock of a paver `|T| l w / (L W)` [length]; `elevationAt({ station, offset })` [length];
 *   `at`, which adds the slopes and a flag outside the corners
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const apron = warpedSurface({
 *   length: '12 m',
 *   width: '5 m',
 *   corners: { startRight: '30 m', endRight: '29.7 m', endLeft: '29.52 m', startLeft: '29.9 m' },
 * });
 * apron.twist.to('mm').toString() //=> '-80'
 * apron.elevationAt({ station: '6 m', offset: '2.5 m' }).to('m').toString() //=> '29.78'
 * apron.lowCorners //=> ['endLeft']
 */
export function warpedSurface(options: WarpedSurfaceOptions): WarpedSurface {
  const { length, width, corners, paver } = readOptions(options, OPTIONS);
  const { startRight, endRight, startLeft, endLeft } = corners;
  const twist = startRight.minus(endRight).plus(endLeft).minus(startLeft);
  const grades = {
    right: slopeBetween(endRight.minus(startRight), length),
    left: slopeBetween(endLeft.minus(startLeft), length),
    start: slopeBetween(startLeft.minus(startRight), width),
    end: slopeBetween(endLeft.minus(endRight), width),
  };
  const at = (place: WarpedPlaceInput) =>
    warpedAt({ origin: startRight, grades, length, width, twist }, readOptions(place, PLACE));
  const surface = {
    twist,
    isPlane: twist.isZero(),
    grades,
    lowCorners: lowCornersOf(corners),
    centre: startRight.plus(endRight).plus(startLeft).plus(endLeft).dividedBy(4),
    ...extremes(grades),
    paverRock:
      paver === undefined
        ? null
        : shareOf(shareOf(twist.abs(), paver.length, length), paver.width, width),
    elevationAt: (place: WarpedPlaceInput) => at(place).elevation,
    at,
  };
  return withWorking(surface, () => [
    derivedStep({
      title: 'Twist of the surface',
      formula: 'T = z00 - z10 + z11 - z01',
      given: [
        given('z00', 'start right', startRight),
        given('z10', 'end right', endRight),
        given('z11', 'end left', endLeft),
        given('z01', 'start left', startLeft),
      ],
      result: given('T', 'twist', twist),
    }),
  ]);
}

function lowCornersOf(corners: Values<typeof OPTIONS>['corners']): WarpedCorner[] {
  const names: readonly WarpedCorner[] = ['startRight', 'endRight', 'startLeft', 'endLeft'];
  return names.filter((name) => names.every((other) => corners[name].compare(corners[other]) <= 0));
}

/** The long slope depends only on the offset, the cross slope only on the station. */
function extremes({ right, left, start, end }: WarpedGrades) {
  return {
    steepest: steepestOf(exactOf(larger(start, end)), exactOf(larger(right, left))),
    flattest: steepestOf(exactOf(smaller(start, end)), exactOf(smaller(right, left))),
    longTurns: turns(right, left),
    crossTurns: turns(start, end),
  };
}

const turns = (a: Slope, b: Slope): boolean =>
  signOfRatio(multiplyRatios(exactOf(a), exactOf(b))) < 0;

const larger = (a: Slope, b: Slope): Slope => (a.abs().compare(b.abs()) >= 0 ? a : b);

const smaller = (a: Slope, b: Slope): Slope => {
  if (turns(a, b)) return NO_SLOPE;
  return a.abs().compare(b.abs()) <= 0 ? a : b;
};
