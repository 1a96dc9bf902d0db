import { makeReader, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { fromSI, type Length, type Slope } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import type { GradePoint } from './grade-line.js';
import { DISTANCE, ELEVATION, SLOPE, SLOPE_LIMIT, STATION } from './limits.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** What a vertical curve says at a station. */
export interface CurveAt extends GradePoint {
  readonly grade: Slope;
  /** True before or beyond the curve, where its straight grades are carried on. */
  readonly extrapolated: boolean;
}

/** A point that a curve is laid from, as the caller gives it. */
export interface GradePointAt {
  readonly station: LengthInput;
  readonly elevation: LengthInput;
}

/** A parabola that rounds a grade break. */
export interface VerticalCurve extends Worked {
  readonly length: Length;
  readonly start: GradePoint;
  /** Where the straight grades would meet. */
  readonly intersection: GradePoint;
  readonly end: GradePoint;
  readonly kind: 'crest' | 'sag' | 'straight';
  /** The high or low point, where the grade is zero within the curve; null where there is none. */
  readonly turningPoint: GradePoint | null;
  /** How far the curve stands below a crest, or above a sag, of the straight grades. */
  readonly middleOffset: Length;
  readonly elevationAt: (station: LengthInput) => Length;
  readonly at: (station: LengthInput) => CurveAt;
}

/**
 * A vertical curve, the parabola that takes one grade over into another:
 * `z(x) = z0 + g1 x + (g2 - g1) x^2 / (2 L)`, `g(x) = g1 + (g2 - g1) x / L`, high or low point at
 * `x = -g1 L / (g2 - g1)`, offset at the middle `e = |g2 - g1| L / 8`. Exact.
 *
 * @param options.start - `station` and `elevation` [length] where the curve begins; or give
 * @param options.intersection - where the straight grades meet, likewise
 * @param options.before - grade that the curve takes over from [slope, + rising]
 * @param options.after - grade that it leads to [slope, + rising]
 * @param options.length - plan length of the curve [length]; or give
 * @param options.changePer - the most that the grade may change: `change` [slope] over a `distance`
 *   [length]; the curve is then as short as that allows
 * @returns start, intersection, end and turning point with station and elevation [length], middle
 *   offset [length]; `elevationAt(station)` [length] and its twin `at`, which adds the grade and says
 *   where a station lies off the curve
 * @throws `ONE_OF`, `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const crest = verticalCurve({
 *   intersection: { station: '5650 ft', elevation: '1325 ft' },
 *   before: '5%',
 *   after: '-3.5%',
 *   length: '500 ft',
 * });
 * crest.elevationAt('5700 ft').to('ft').toString() //=> '1319.85'
 * crest.turningPoint?.station.to('ft').toFixed(2) //=> '5694.12'
 */
export function verticalCurve(options: {
  readonly start?: GradePointAt;
  readonly intersection?: GradePointAt;
  readonly before: SlopeInput;
  readonly after: SlopeInput;
  readonly length?: LengthInput;
  readonly changePer?: { readonly change: SlopeInput; readonly distance: LengthInput };
}): VerticalCurve {
  const { which, point, before, after, length } = readOptions(options);
  const half = length.dividedBy(2);
  const start = which === 'start' ? point : moved(point, half.negated(), before);
  const intersection = moved(start, half, before);
  const curve = { start, end: moved(intersection, half, after), length, before, after };
  const bend = after.minus(before);
  const middleOffset = length.times(bend.abs()).dividedBy(8);
  const at = (station: LengthInput) => curveAt(curve, station);
  const result: Omit<VerticalCurve, 'working'> = {
    length,
    start,
    intersection,
    end: curve.end,
    kind: bend.isZero() ? 'straight' : bend.isNegative() ? 'crest' : 'sag',
    turningPoint: turningPointOf(curve),
    middleOffset,
    elevationAt: (station: LengthInput) => at(station).elevation,
    at,
  };
  return withWorking(result, () => [
    {
      title: 'Offset of the curve from the straight grades at its middle',
      formula: 'e = |g2 - g1| L / 8',
      given: [
        given('g1', 'grade before', before),
        given('g2', 'grade after', after),
        given('L', 'length of the curve', length),
      ],
      result: given('e', 'middle offset', middleOffset),
      source: 'derived',
    },
  ]);
}

function readOptions(options: unknown) {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const which = exactlyOne(reader, fields, ['start', 'intersection'], ['start']);
  const point = which === undefined ? NOWHERE : readPoint(reader, fields[which], which);
  const before = reader.quantity('slope', fields['before'], ['before'], SLOPE);
  const after = reader.quantity('slope', fields['after'], ['after'], SLOPE);
  const length = readLength(reader, fields, after.minus(before).abs());
  reader.finish();
  return { which, point, before, after, length };
}

const NOTHING = fromSI('length', ZERO_RATIO);
const NOWHERE: GradePoint = Object.freeze({ station: NOTHING, elevation: NOTHING });

function readPoint(reader: Reader, value: unknown, name: string): GradePoint {
  const fields = reader.object(value, [name]);
  const at = [name, 'elevation'];
  return {
    station: reader.quantity('length', fields['station'], [name, 'station'], STATION),
    elevation: reader.quantity('length', fields['elevation'], at, ELEVATION),
  };
}

function readLength(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  bend: Slope,
): Length {
  const which = exactlyOne(reader, fields, ['length', 'changePer'], ['length']);
  if (which === 'length') return reader.quantity('length', fields['length'], ['length'], DISTANCE);
  if (which === undefined) return NOTHING;
  const per = reader.object(fields['changePer'], ['changePer']);
  const path = (name: string) => ['changePer', name];
  const change = reader.quantity('slope', per['change'], path('change'), SLOPE_LIMIT);
  const distance = reader.quantity('length', per['distance'], path('distance'), DISTANCE);
  if (bend.isZero()) {
    reader.fail('NOT_POSITIVE', ['changePer'], 'the grades do not differ: a curve has no length');
  }
  return change.isZero() ? NOTHING : distance.times(bend).dividedBy(change);
}

/** The point further along a straight grade. */
const moved = ({ station, elevation }: GradePoint, by: Length, grade: Slope): GradePoint => ({
  station: station.plus(by),
  elevation: elevation.plus(by.times(grade)),
});

interface Curve {
  readonly start: GradePoint;
  readonly end: GradePoint;
  readonly length: Length;
  readonly before: Slope;
  readonly after: Slope;
}

function curveAt(curve: Curve, input: LengthInput): CurveAt {
  const reader = makeReader();
  const station = reader.quantity('length', input, ['station'], STATION);
  reader.finish();
  const { start, end, before, after } = curve;
  if (station.compare(start.station) < 0) return straightAt(start, station, before);
  if (station.compare(end.station) > 0) return straightAt(end, station, after);
  return Object.freeze({ ...onCurve(curve, station), extrapolated: false });
}

function straightAt(from: GradePoint, station: Length, grade: Slope): CurveAt {
  const point = moved(from, station.minus(from.station), grade);
  return Object.freeze({ ...point, grade, extrapolated: true });
}

function onCurve({ start, length, before, after }: Curve, station: Length) {
  const x = station.minus(start.station);
  const bend = after.minus(before);
  const bent = slopeBetween(x.times(bend), length);
  const elevation = start.elevation
    .plus(x.times(before))
    .plus(shareOf(x.times(bend), x, length).dividedBy(2));
  return { station, elevation, grade: before.plus(bent) };
}

function turningPointOf(curve: Curve): GradePoint | null {
  const { before, after, start, length } = curve;
  // a grade of nothing at an end is no turn: the line goes on level
  if (before.isZero() || after.isZero() || before.isNegative() === after.isNegative()) return null;
  const x = length.times(before).dividedBy(before.minus(after));
  const { station, elevation } = onCurve(curve, start.station.plus(x));
  return { station, elevation };
}
