import { quantity } from '../input/field.js';
import { ELEVATION, STATION } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { entry } from '../invariant.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { gradePoints, type GradePoint, type GradePointInput } from './grade-points.js';
import { partAt } from './part-at.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** The points of a grade line. */
export interface GradeLineOptions {
  /** Points in order of their stations, 2 to 10 000. The first one has an elevation. */
  readonly points: readonly GradePointInput[];
}

const OPTIONS = shapeOf<GradeLineOptions>()({ points: gradePoints });

/** A straight segment of the line. */
export interface GradeSegment {
  /** Where it starts. */
  readonly from: GradePoint;
  /** Where it ends. */
  readonly to: GradePoint;
  /** Distance along the line. */
  readonly length: Length;
  /** End less start; negative if it falls. */
  readonly rise: Length;
  /** Rise over run, positive if it rises with the stations. */
  readonly grade: Slope;
}

/** A place where the grade changes. */
export interface GradeBreak extends GradePoint {
  /** Grade up to the break. */
  readonly before: Slope;
  /** Grade from the break on. */
  readonly after: Slope;
  /** Grade after less grade before. */
  readonly change: Slope;
  /** `crest`: humped; `sag`: hollow. */
  readonly kind: 'crest' | 'sag';
  /** True at a high or a low point: the line rises on one side and falls on the other. */
  readonly turns: boolean;
}

/** The line at a station. */
export interface GradeAt extends GradePoint {
  /** Grade of the segment ahead; at the last point, of the segment behind. */
  readonly grade: Slope;
  /** True if the station is past the ends, where the end grade is extended. */
  readonly extrapolated: boolean;
}

/** A grade line: straight grades through levels. */
export interface GradeLine extends Worked {
  /** Points that the line runs through, in order. */
  readonly points: readonly GradePoint[];
  /** Straight segments from point to point. */
  readonly segments: readonly GradeSegment[];
  /** Points where the grade changes. Each needs a stake. */
  readonly breaks: readonly GradeBreak[];
  /** From the first point to the last. */
  readonly length: Length;
  /** Elevation at any station. Past the ends the end grade is extended; `at` flags it. */
  readonly elevationAt: (station: LengthInput) => Length;
  /** Elevation and grade at any station; flagged past the ends. */
  readonly at: (station: LengthInput) => GradeAt;
  /** Stations between the ends at which the line has an elevation. */
  readonly stationsAt: (elevation: LengthInput) => readonly Length[];
}

/**
 *
 * A grade line through fixed levels, straight from each one to the next:
 * `g = (z2 - z1) / (s2 - s1)`, `z(s) = z1 + g (s - s1)`. Exact. Each change of grade is a break,
 * and a break needs a stake.
 *
 * @param options - see {@link GradeLineOptions}
 * @returns points, segments and breaks [length, slope]; `elevationAt(station)` [length];
 * `at(station)`, which adds the grade and a flag past the ends; `stationsAt(elevation)` [length]
 * @throws `TOO_FEW`, `NOT_INCREASING`, `CONFLICTING_FIELDS`, `REQUIRED`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source derived
 * @example
 * const drive = gradeLine({
 *   points: [
 *     { station: '0 ft', elevation: '100 ft' },
 *     { station: '20 ft', elevation: '99.5 ft' },
 *     { station: '30 ft', grade: '-6%' },
 *   ],
 * });
 * drive.elevationAt('12 ft').to('ft').toString() //=> '99.7'
 * drive.breaks[0]?.change.to('percent').toString() //=> '-3.5'
 * drive.at('35 ft').extrapolated //=> true
 */
export function gradeLine(options: GradeLineOptions): GradeLine {
  return lineThrough(readOptions(options, OPTIONS).points);
}

const AT = shapeOf<{ readonly station: LengthInput }>()({ station: quantity(STATION) });
const LEVEL = shapeOf<{ readonly elevation: LengthInput }>()({ elevation: quantity(ELEVATION) });

/** The line through points that have been read. Internal. */
export function lineThrough(points: readonly GradePoint[]): GradeLine {
  const segments = points.slice(1).map((to, k) => segmentBetween(entry(points, k), to));
  const at = (station: LengthInput) => levelAt(segments, readOptions({ station }, AT).station);
  const stationsAt = (elevation: LengthInput) =>
    Object.freeze(stationsOn(segments, readOptions({ elevation }, LEVEL).elevation));
  return withWorking(
    {
      points,
      segments,
      breaks: breaksBetween(segments),
      length: sum(segments.map(({ length }) => length)),
      elevationAt: (station: LengthInput) => at(station).elevation,
      at,
      stationsAt,
    },
    () => segments.map(gradeStep),
  );
}

function segmentBetween(from: GradePoint, to: GradePoint): GradeSegment {
  const length = to.station.minus(from.station);
  const rise = to.elevation.minus(from.elevation);
  return { from, to, length, rise, grade: slopeBetween(rise, length) };
}

function breaksBetween(segments: readonly GradeSegment[]): GradeBreak[] {
  return segments.slice(1).flatMap(({ from, grade: after }, k) => {
    const before = entry(segments, k).grade;
    if (after.equals(before)) return [];
    const change = after.minus(before);
    const kind: GradeBreak['kind'] = change.isNegative() ? 'crest' : 'sag';
    const turns = !before.isZero() && !after.isZero() && before.isNegative() !== after.isNegative();
    return [{ ...from, before, after, change, kind, turns }];
  });
}

/** The line at a station that has been read. Internal. */
export function levelAt(segments: readonly GradeSegment[], station: Length): GradeAt {
  const segment = partAt(segments, station, ({ from }) => from.station);
  const { from, to, length, rise, grade } = segment;
  const elevation = from.elevation.plus(shareOf(rise, station.minus(from.station), length));
  const extrapolated = station.compare(from.station) < 0 || station.compare(to.station) > 0;
  return Object.freeze({ station, elevation, grade, extrapolated });
}

function stationsOn(segments: readonly GradeSegment[], level: Length): Length[] {
  return segments.flatMap(({ from, to, length, rise }, k) => {
    const below = level.minus(from.elevation);
    const ends = to.elevation.equals(level) ? [to.station] : [];
    const starts = k === 0 && below.isZero() ? [from.station] : [];
    const left = rise.minus(below);
    // strictly between the ends, both parts of the rise have the same sign
    const isWithin = !below.isZero() && !left.isZero() && below.isNegative() === left.isNegative();
    const between = isWithin ? [from.station.plus(shareOf(length, below, rise))] : [];
    return [...starts, ...between, ...ends];
  });
}

function gradeStep({ from, to, length, grade }: GradeSegment): Step {
  return derivedStep({
    title: 'Grade between two levels',
    formula: 'g = (z2 - z1) / L',
    given: [
      given('z1', 'elevation at the start', from.elevation),
      given('z2', 'elevation at the end', to.elevation),
      given('L', 'distance', length),
    ],
    result: given('g', 'grade (+ rising)', grade),
  });
}
