import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { multiplyRatios, signOfRatio, ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { steepestOf } from './fall-of.js';
import { DISTANCE, ELEVATION, STATION } from './limits.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** The corners of a warped surface, seen along its length: start and end, left and right of travel. */
export type WarpedCorner = 'startRight' | 'endRight' | 'startLeft' | 'endLeft';

/** A place on a warped surface. */
export interface WarpedPlaceInput {
  /** Along the right edge from the start. */
  readonly station: LengthInput;
  /** To the left from the right edge. */
  readonly offset: LengthInput;
}

/** What the surface says at a place. */
export interface WarpedAt {
  readonly station: Length;
  readonly offset: Length;
  readonly elevation: Length;
  /** Slope along the length there, + rising. */
  readonly long: Slope;
  /** Slope across there, + rising to the left. */
  readonly cross: Slope;
  /** Steepest slope there, not negative. */
  readonly steepest: Slope;
  /** True outside the four corners. */
  readonly extrapolated: boolean;
}

/** A surface between four corner levels that need not lie in a plane. */
export interface WarpedSurface extends Worked {
  /** How far the corners are out of one plane: `startRight - endRight + endLeft - startLeft`. */
  readonly twist: Length;
  readonly isPlane: boolean;
  /** Grades of the four edges, + rising from start to end and from right to left. */
  readonly grades: {
    readonly right: Slope;
    readonly left: Slope;
    readonly start: Slope;
    readonly end: Slope;
  };
  /** The corner that water runs to, or corners of one height. */
  readonly lowCorners: readonly WarpedCorner[];
  readonly centre: Length;
  /** Steepest and flattest slope that any place of the surface has, not negative. */
  readonly steepest: Slope;
  readonly flattest: Slope;
  /** True where the long slope, or the cross slope, changes its sign between two edges. */
  readonly longTurns: boolean;
  readonly crossTurns: boolean;
  /** How far a corner of one paver stands off the plane of the others, where its size was given. */
  readonly paverRock?: Length;
  readonly elevationAt: (place: WarpedPlaceInput) => Length;
  readonly at: (place: WarpedPlaceInput) => WarpedAt;
}

/**
 * The warped surface over a rectangle with four corner levels, straight along and across:
 * `z(u, v) = z00 (1-u)(1-v) + z10 u (1-v) + z11 u v + z01 (1-u) v`. Exact. A string along or across
 * lies on it; a string from corner to corner does not, by a quarter of the twist at the middle.
 *
 * @param options.length - along the surface [length]
 * @param options.width - across it, to the left [length]
 * @param options.corners - elevations [length] `startRight`, `endRight`, `startLeft`, `endLeft`
 * @param options.paver - `length` and `width` of a paver [length], for its rock `|T| l w / (L W)`
 * @returns twist, centre [length], grades of the edges, steepest and flattest slope [slope], low
 *   corners; `elevationAt({ station, offset })` [length] and its twin `at`, which adds the slopes and
 *   says where a place lies outside the corners
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
export function warpedSurface(options: {
  readonly length: LengthInput;
  readonly width: LengthInput;
  readonly corners: Readonly<Record<WarpedCorner, LengthInput>>;
  readonly paver?: { readonly length: LengthInput; readonly width: LengthInput };
}): WarpedSurface {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const long = reader.quantity('length', fields['length'], ['length'], DISTANCE);
  const wide = reader.quantity('length', fields['width'], ['width'], DISTANCE);
  const corners = readCorners(reader, fields['corners']);
  const paver = fields['paver'] === undefined ? undefined : readPaver(reader, fields['paver']);
  reader.finish();
  const { startRight, endRight, startLeft, endLeft } = corners;
  const twist = startRight.minus(endRight).plus(endLeft).minus(startLeft);
  const grades = {
    right: slopeBetween(endRight.minus(startRight), long),
    left: slopeBetween(endLeft.minus(startLeft), long),
    start: slopeBetween(startLeft.minus(startRight), wide),
    end: slopeBetween(endLeft.minus(endRight), wide),
  };
  const at = (place: WarpedPlaceInput) => placeOn({ corners, grades, long, wide, twist }, place);
  const rock =
    paver === undefined
      ? {}
      : { paverRock: shareOf(shareOf(twist.abs(), paver.length, long), paver.width, wide) };
  const surface = {
    twist,
    isPlane: twist.isZero(),
    grades,
    lowCorners: lowCornersOf(corners),
    centre: startRight.plus(endRight).plus(startLeft).plus(endLeft).dividedBy(4),
    ...extremes(grades),
    ...rock,
    elevationAt: (place: WarpedPlaceInput) => at(place).elevation,
    at,
  };
  return withWorking(surface, () => [
    {
      title: 'Twist of the surface',
      formula: 'T = z00 - z10 + z11 - z01',
      given: [
        given('z00', 'start right', startRight),
        given('z10', 'end right', endRight),
        given('z11', 'end left', endLeft),
        given('z01', 'start left', startLeft),
      ],
      result: given('T', 'twist', twist),
      source: 'derived',
    },
  ]);
}

type Corners = Readonly<Record<WarpedCorner, Length>>;
type Grades = WarpedSurface['grades'];

function readCorners(reader: Reader, value: unknown): Corners {
  const fields = reader.object(value, ['corners']);
  const read = (name: WarpedCorner) =>
    reader.quantity('length', fields[name], ['corners', name], ELEVATION);
  return {
    startRight: read('startRight'),
    endRight: read('endRight'),
    startLeft: read('startLeft'),
    endLeft: read('endLeft'),
  };
}

function readPaver(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['paver']);
  return {
    length: reader.quantity('length', fields['length'], ['paver', 'length'], DISTANCE),
    width: reader.quantity('length', fields['width'], ['paver', 'width'], DISTANCE),
  };
}

interface Surface {
  readonly corners: Corners;
  readonly grades: Grades;
  readonly long: Length;
  readonly wide: Length;
  readonly twist: Length;
}

function placeOn(surface: Surface, input: WarpedPlaceInput): WarpedAt {
  const { corners, grades, long, wide, twist } = surface;
  const reader = makeReader();
  const fields = reader.object(input, []);
  const station = reader.quantity('length', fields['station'], ['station'], STATION);
  const offset = reader.quantity('length', fields['offset'], ['offset'], STATION);
  reader.finish();
  // along the right edge, then across, with what the twist adds to both
  const twisted = shareOf(shareOf(twist, station, long), offset, wide);
  const elevation = corners.startRight
    .plus(station.times(grades.right))
    .plus(offset.times(grades.start))
    .plus(twisted);
  const slopeOfTwist = (part: Length, of: Length, run: Length) =>
    slopeBetween(shareOf(twist, part, of), run);
  const alongThere = grades.right.plus(slopeOfTwist(offset, wide, long));
  const acrossThere = grades.start.plus(slopeOfTwist(station, long, wide));
  return Object.freeze({
    station,
    offset,
    elevation,
    long: alongThere,
    cross: acrossThere,
    steepest: steepestOf(exactOf(acrossThere), exactOf(alongThere)),
    extrapolated: isOutside(station, long) || isOutside(offset, wide),
  });
}

const isOutside = (value: Length, most: Length): boolean =>
  value.isNegative() || value.compare(most) > 0;

function lowCornersOf(corners: Corners): WarpedCorner[] {
  const names: readonly WarpedCorner[] = ['startRight', 'endRight', 'startLeft', 'endLeft'];
  return names.filter((name) => names.every((other) => corners[name].compare(corners[other]) <= 0));
}

/** The long slope depends on the offset alone and the cross slope on the station alone. */
function extremes({ right, left, start, end }: Grades) {
  const steepest = steepestOf(exactOf(larger(start, end)), exactOf(larger(right, left)));
  const flattest = steepestOf(exactOf(smaller(start, end)), exactOf(smaller(right, left)));
  return {
    steepest,
    flattest,
    longTurns: turns(right, left),
    crossTurns: turns(start, end),
  };
}

const turns = (a: Slope, b: Slope): boolean =>
  signOfRatio(multiplyRatios(exactOf(a), exactOf(b))) < 0;

const larger = (a: Slope, b: Slope): Slope => (a.abs().compare(b.abs()) >= 0 ? a : b);

const smaller = (a: Slope, b: Slope): Slope => {
  if (turns(a, b)) return LEVEL;
  return a.abs().compare(b.abs()) <= 0 ? a : b;
};

const LEVEL: Slope = fromSI('slope', ZERO_RATIO);
