import { entry } from '../invariant.js';
import { fault } from '../errors.js';
import { custom, list, object, optional, quantity } from '../input/field.js';
import { DISTANCE, PLACE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { shown } from '../input/shown.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Area, type Length } from '../units/quantity.js';
import {
  addRatios,
  quotientToDecimal,
  roughNumber,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { minus, norm, plus, scaled, share, type PlanPoint, type Vector } from '../units/vector.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { closedPoints } from './area-steps.js';
import { readBearing } from './bearing.js';
import { settled } from './corner.js';
import { crossingEdges } from './crossing-edges.js';
import { areaOfDouble, doubleArea } from './double-area.js';

/** One side of an outline, by bearing and distance. */
export interface TraverseCourseInput {
  /**
   * Such as `'N 19-46-00 W'`: degrees, or degrees-minutes-seconds, from north or south toward east or
   * west.
   */
  readonly bearing: string;
  /** Length of the side [length], more than 0. */
  readonly distance: LengthInput;
}

/** Start point of a traverse. */
export interface TraverseStartInput {
  /** East [length]. */
  readonly x: LengthInput;
  /** North [length]. */
  readonly y: LengthInput;
}

/** The courses of a traverse. */
export interface AreaByBearingsOptions {
  /** Three or more, in order. */
  readonly courses: readonly TraverseCourseInput[];
  /** The first corner. Default: the origin. */
  readonly start?: TraverseStartInput;
}

const EAST: Vector = Object.freeze({ x: Object.freeze({ n: 1, d: 1 }), y: ZERO_RATIO });

const bearing = custom((reader, value, path): Vector => {
  const before = reader.faults();
  const text = reader.text(value, path);
  const direction = readBearing(text);
  if (direction !== undefined || reader.faults() > before) return direction ?? EAST;
  const message = `${shown(text)} is not a bearing. Write "N 19-46-00 W" or "S 76.2 E"`;
  reader.fail('TEXT_UNREADABLE', path, message, { reason: 'BEARING' });
  return EAST;
});

const COURSE = shapeOf<TraverseCourseInput>()({ bearing, distance: quantity(DISTANCE) });

const OPTIONS = shapeOf<AreaByBearingsOptions>()({
  courses: list(object(COURSE), { of: 'courses', least: 3, most: 10_000 }),
  start: optional(
    object(shapeOf<TraverseStartInput>()({ x: quantity(PLACE), y: quantity(PLACE) })),
    {
      x: NO_LENGTH,
      y: NO_LENGTH,
    },
  ),
});

/** One course of a traverse, as measured and adjusted. */
export interface TraverseCourse {
  /** Latitude (northward) as measured. */
  readonly latitude: Length;
  /** Departure (eastward) as measured. */
  readonly departure: Length;
  /** Latitude after adjustment. */
  readonly adjustedLatitude: Length;
  /** Departure after adjustment. */
  readonly adjustedDeparture: Length;
  /**
   * Double meridian distance: twice the distance of the middle of the side from the meridian of the
   * start, for a check by hand.
   */
  readonly doubleMeridianDistance: Length;
}

/** Area of a traverse, its closure and the adjusted corners. */
export interface AreaByBearings extends Worked {
  /** Area inside the adjusted corners. */
  readonly area: Area;
  /** Sum of the distances. */
  readonly perimeter: Length;
  /** Linear misclosure of the courses. */
  readonly closure: {
    /** Sum of the latitudes; 0 if all was measured right. */
    readonly latitude: Length;
    /** Sum of the departures; 0 if all was measured right. */
    readonly departure: Length;
    /** Distance from the end of the last course to the start. */
    readonly distance: Length;
    /** Perimeter over that distance (12 100 for 1 in 12 100); null where the figure closes exactly. */
    readonly oneIn: number | null;
  };
  /** Each side, as measured and adjusted. */
  readonly courses: readonly TraverseCourse[];
  /** Adjusted corners, x east and y north, from the start on. */
  readonly points: readonly PlanPoint[];
}

/**
 * Area inside courses of bearing and distance: `latitude = L cos(bearing)`,
 * `departure = L sin(bearing)`; the misclosure is distributed by length (compass rule), so each
 * course gets `-closure L / sum(L)`, and the area is that of the adjusted corners. Sines and
 * cosines are taken to 40 digits. Check the closure before you use the area: the error of a misread
 * or missing course is distributed too.
 *
 * @param options - see {@link AreaByBearingsOptions}
 * @returns area, closure, courses and adjusted corners
 * @throws `TOO_FEW`, `TEXT_UNREADABLE`, `SELF_INTERSECTION`, `ZERO_AREA`,
 *   `TOO_MANY` and the reading codes
 * @source derived
 * @example
 * const courses = [
 *   { bearing: 'N 90 E', distance: '36 ft' },
 *   { bearing: 'N 0 E', distance: '14 ft' },
 *   { bearing: 'S 90 W', distance: '36 ft' },
 *   { bearing: 'S 0 E', distance: '14 ft' },
 * ];
 * const { area, closure } = areaByBearings({ courses });
 * area.to('ft2').toString() //=> '504'
 * closure.oneIn //=> null
 */
export function areaByBearings(options: AreaByBearingsOptions): AreaByBearings {
  const { courses, start } = readOptions(options, OPTIONS);
  const measured = courses.map(({ bearing, distance }): Measured => {
    const size = exactOf(distance);
    return { along: scaled(bearing, size), size };
  });
  const figure = close(measured);
  requireFigure(figure.corners);
  const area = areaOfDouble(doubleArea(figure.corners));
  const closure = closureOf(figure);
  const result = {
    area,
    perimeter: fromSI('length', figure.perimeter),
    closure,
    courses: coursesOf(measured, figure.adjusted),
    points: figure.corners.map(({ x, y }) => ({
      x: start.x.plus(fromSI('length', x)),
      y: start.y.plus(fromSI('length', y)),
    })),
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Closure of the courses',
      formula: 'e = sqrt(sum(n)^2 + sum(d)^2)',
      given: [
        given(
          'n',
          'latitude of each course, its distance times the cosine of its bearing',
          result.courses.map(({ latitude }) => latitude),
        ),
        given(
          'd',
          'departure of each course, its distance times the sine of its bearing',
          result.courses.map(({ departure }) => departure),
        ),
      ],
      result: given('e', 'closure', closure.distance),
    }),
    derivedStep({
      title: 'Area of the adjusted courses',
      formula: 'A = abs(sum(x[i] * y[i + 1] - x[i + 1] * y[i])) / 2',
      given: closedPoints(
        figure.corners,
        'from the start, each course less its share of the closure by distance',
      ),
      result: given('A', 'area', area),
    }),
  ]);
}

interface Measured {
  readonly along: Vector;
  readonly size: Ratio;
}

interface Figure {
  readonly closure: Vector;
  readonly perimeter: Ratio;
  readonly adjusted: readonly Vector[];
  readonly corners: readonly Vector[];
}

/** Distributes the misclosure by length. */
function close(measured: readonly Measured[]): Figure {
  const nowhere: Vector = { x: ZERO_RATIO, y: ZERO_RATIO };
  const closure = measured.reduce((total, { along }) => plus(total, along), nowhere);
  const perimeter = measured.reduce<Ratio>((total, { size }) => addRatios(total, size), ZERO_RATIO);
  const adjusted = measured.map(({ along, size }) =>
    minus(along, settled(share(closure, size, perimeter), true)),
  );
  let at = nowhere;
  const corners = adjusted.map((course) => {
    const corner = at;
    at = plus(at, course);
    return corner;
  });
  return { closure, perimeter, adjusted, corners };
}

function requireFigure(corners: readonly Vector[]): void {
  const crossing = crossingEdges([corners]);
  if (crossing !== undefined) {
    const { first, second } = crossing;
    const message = `courses ${first} and ${second} cross or touch (the first course is course 0). Check that no bearing is reversed`;
    throw fault('SELF_INTERSECTION', message, { first, second }, ['courses']);
  }
  if (signOfRatio(doubleArea(corners)) === 0) {
    throw fault('ZERO_AREA', 'the courses enclose no area. Check the bearings and distances', {}, [
      'courses',
    ]);
  }
}

/** Sines and cosines have 40 digits; a rest in the last of them is not a misclosure. */
const isRounding = (distance: Ratio, perimeter: Ratio): boolean =>
  roughNumber(distance) <= 1e-36 * roughNumber(perimeter);

function closureOf({ closure, perimeter }: Figure): AreaByBearings['closure'] {
  const distance = norm(closure);
  return {
    latitude: fromSI('length', closure.y),
    departure: fromSI('length', closure.x),
    distance: fromSI('length', distance),
    oneIn: isRounding(distance, perimeter)
      ? null
      : quotientToDecimal(perimeter, distance).toNumber(),
  };
}

function coursesOf(measured: readonly Measured[], adjusted: readonly Vector[]): TraverseCourse[] {
  let meridian: Ratio = ZERO_RATIO;
  let before: Ratio = ZERO_RATIO;
  return adjusted.map((course, index) => {
    const raw = entry(measured, index).along;
    meridian = addRatios(addRatios(meridian, before), course.x);
    before = course.x;
    return {
      latitude: fromSI('length', raw.y),
      departure: fromSI('length', raw.x),
      adjustedLatitude: fromSI('length', course.y),
      adjustedDeparture: fromSI('length', course.x),
      doubleMeridianDistance: fromSI('length', meridian),
    };
  });
}
