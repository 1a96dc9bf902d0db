import type { FieldPath } from '../errors.js';
import { makeReader, type QuantityRule, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ELEVATION, SLOPE, STATION } from './limits.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** A fixed level on the line; or a point that a grade leads to from the point before it. */
export type GradePointInput =
  | { readonly station: LengthInput; readonly elevation: LengthInput; readonly grade?: never }
  | { readonly station: LengthInput; readonly grade: SlopeInput; readonly elevation?: never };

/** A point that the line runs through. */
export interface GradePoint {
  readonly station: Length;
  readonly elevation: Length;
}

/** A straight stretch of the line. */
export interface GradeSegment {
  readonly from: GradePoint;
  readonly to: GradePoint;
  readonly length: Length;
  /** End less start: negative where it falls. */
  readonly rise: Length;
  /** Rise over run, + rising with the stations. */
  readonly grade: Slope;
}

/** A place where the grade changes. */
export interface GradeBreak extends GradePoint {
  readonly before: Slope;
  readonly after: Slope;
  /** After less before. */
  readonly change: Slope;
  readonly kind: 'crest' | 'sag';
  /** True at a high or a low point: the line rises on one side and falls on the other. */
  readonly turns: boolean;
}

/** What the line says at a station. */
export interface GradeAt extends GradePoint {
  /** Of the stretch ahead; at the last point of the stretch behind. */
  readonly grade: Slope;
  /** True beyond the ends, where the grade of the end stretch is carried on. */
  readonly extrapolated: boolean;
}

/** A line of straight grades through levels. */
export interface GradeLine extends Worked {
  readonly points: readonly GradePoint[];
  readonly segments: readonly GradeSegment[];
  readonly breaks: readonly GradeBreak[];
  readonly length: Length;
  /** Elevation at any station. Beyond the ends the end grade is carried on: `at` says so. */
  readonly elevationAt: (station: LengthInput) => Length;
  /** Elevation and grade at a station, with a flag beyond the ends. */
  readonly at: (station: LengthInput) => GradeAt;
  /** Stations between the ends at which the line stands at an elevation. */
  readonly stationsAt: (elevation: LengthInput) => readonly Length[];
}

/**
 * A grade line through fixed levels, straight from each to the next:
 * `g = (z2 - z1) / (s2 - s1)`, `z(s) = z1 + g (s - s1)`. Exact. Where the grade changes there is a
 * break, which needs a stake of its own.
 *
 * @param options.points - two or more in order of their stations; each with `station` [length] and
 *   `elevation` [length], or with the `grade` [slope, + rising with the stations] that leads to it
 *   from the point before
 * @returns points, segments and breaks [length, slope]; `elevationAt(station)` [length] and its twin
 *   `at(station)`, which adds the grade and says where the line is carried on beyond its ends;
 *   `stationsAt(elevation)` [length]
 * @throws `TOO_FEW_POINTS`, `STATION_ORDER`, `ONE_OF`, `REQUIRED`, `OUT_OF_RANGE` and the reading codes
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
export function gradeLine(options: { readonly points: readonly GradePointInput[] }): GradeLine {
  const reader = makeReader();
  const points = readPoints(reader, reader.object(options, [])['points']);
  reader.finish();
  return lineThrough(points);
}

type ReadPoint = GradePoint | { readonly station: Length; readonly grade: Slope };

function readPoints(reader: Reader, value: unknown): GradePoint[] {
  const read = reader.list(value, ['points']).map((item, k) => readPoint(reader, item, k));
  if (read.length === 1) {
    reader.fail('TOO_FEW_POINTS', ['points'], 'a grade line needs two points or more');
  }
  const points: GradePoint[] = [];
  read.forEach((point, k) => {
    const before = points.at(-1);
    if (before !== undefined && point.station.compare(before.station) <= 0) {
      const path = ['points', k, 'station'];
      reader.fail('STATION_ORDER', path, 'must be beyond the station of the point before');
    }
    points.push(levelled(point, before));
  });
  return points;
}

function readPoint(reader: Reader, item: unknown, k: number): ReadPoint {
  const path: FieldPath = ['points', k];
  const fields = reader.object(item, path);
  const station = reader.quantity('length', fields['station'], [...path, 'station'], STATION);
  const which = exactlyOne(reader, fields, ['elevation', 'grade'], path);
  if (which === 'grade') {
    const grade = reader.quantity('slope', fields['grade'], [...path, 'grade'], SLOPE);
    if (k > 0) return { station, grade };
    const why = 'is missing: no point stands before the first, so that a grade leads nowhere';
    reader.fail('REQUIRED', [...path, 'elevation'], why);
    return { station, elevation: station };
  }
  if (which === undefined) return { station, elevation: station };
  const at = [...path, 'elevation'];
  return { station, elevation: reader.quantity('length', fields['elevation'], at, ELEVATION) };
}

function levelled(point: ReadPoint, before: GradePoint | undefined): GradePoint {
  if ('elevation' in point) return point;
  const run = before === undefined ? point.station : point.station.minus(before.station);
  const rise = run.times(point.grade);
  return { station: point.station, elevation: before?.elevation.plus(rise) ?? rise };
}

function lineThrough(points: readonly GradePoint[]): GradeLine {
  const segments = points.slice(1).map((to, k) => segmentBetween(points[k] ?? to, to));
  const at = (station: LengthInput) => levelAt(segments, readLevel(station, 'station', STATION));
  return withWorking(
    {
      points,
      segments,
      breaks: breaksBetween(segments),
      length: sum(segments.map(({ length }) => length)),
      elevationAt: (station: LengthInput) => at(station).elevation,
      at,
      stationsAt: (elevation: LengthInput) =>
        Object.freeze(stationsAt(segments, readLevel(elevation, 'elevation', ELEVATION))),
    },
    () => segments.map(gradeStep),
  );
}

function readLevel(value: LengthInput, name: string, rule: QuantityRule<'length'>): Length {
  const reader = makeReader();
  const level = reader.quantity('length', value, [name], rule);
  reader.finish();
  return level;
}

function segmentBetween(from: GradePoint, to: GradePoint): GradeSegment {
  const length = to.station.minus(from.station);
  const rise = to.elevation.minus(from.elevation);
  return { from, to, length, rise, grade: slopeBetween(rise, length) };
}

function breaksBetween(segments: readonly GradeSegment[]): GradeBreak[] {
  return segments.slice(1).flatMap(({ from, grade: after }, k) => {
    const before = segments[k]?.grade ?? after;
    if (after.equals(before)) return [];
    const change = after.minus(before);
    const kind: GradeBreak['kind'] = change.isNegative() ? 'crest' : 'sag';
    const turns = !before.isZero() && !after.isZero() && before.isNegative() !== after.isNegative();
    return [{ ...from, before, after, change, kind, turns }];
  });
}

function levelAt(segments: readonly GradeSegment[], station: Length): GradeAt {
  // the last stretch that begins at or before the station, else the first
  const segment = segments.reduce((found, one) =>
    station.compare(one.from.station) >= 0 ? one : found,
  );
  const { from, to, length, rise, grade } = segment;
  const elevation = from.elevation.plus(shareOf(rise, station.minus(from.station), length));
  const extrapolated = station.compare(from.station) < 0 || station.compare(to.station) > 0;
  return Object.freeze({ station, elevation, grade, extrapolated });
}

function stationsAt(segments: readonly GradeSegment[], level: Length): Length[] {
  const found = segments.flatMap(({ from, to, length, rise }, k) => {
    const below = level.minus(from.elevation);
    const ends = to.elevation.equals(level) ? [to.station] : [];
    const starts = k === 0 && below.isZero() ? [from.station] : [];
    const left = rise.minus(below);
    // strictly between the ends both parts of the rise have its sign
    const isWithin = !below.isZero() && !left.isZero() && below.isNegative() === left.isNegative();
    const between = isWithin ? [from.station.plus(shareOf(length, below, rise))] : [];
    return [...starts, ...between, ...ends];
  });
  return found;
}

function gradeStep({ from, to, length, grade }: GradeSegment): Step {
  return {
    title: 'Grade between two levels',
    formula: 'g = (z2 - z1) / L',
    given: [
      given('z1', 'elevation at the start', from.elevation),
      given('z2', 'elevation at the end', to.elevation),
      given('L', 'distance', length),
    ],
    result: given('g', 'grade (+ rising)', grade),
    source: 'derived',
  };
}
