import { known } from '../invariant.js';
import type { FieldPath } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { object, optional, quantity } from '../input/field.js';
import { DISTANCE, ELEVATION, SLOPE, SLOPE_OF_SOME, STATION } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length, Slope } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import type { GradePoint } from './grade-points.js';
import { shareOf, slopeBetween } from './slope-between.js';

/** The start or intersection of a curve. */
export interface VerticalCurvePointInput {
  /** Distance along the line [length], up to 100 km either way. */
  readonly station: LengthInput;
  /** Elevation there [length], up to 10 km either way. */
  readonly elevation: LengthInput;
}

/** Maximum rate of change of grade along a curve. */
export interface ChangePerInput {
  /** Maximum change of grade [slope], more than 0 and at most 10. */
  readonly change: SlopeInput;
  /** Distance for that change [length], more than 0 and at most 100 km. */
  readonly distance: LengthInput;
}

/** Two grades, and the curve between them. */
export interface VerticalCurveOptions {
  /** Where the curve starts. Give this or `intersection`. */
  readonly start?: VerticalCurvePointInput;
  /** Where the straight grades meet. Give this or `start`. */
  readonly intersection?: VerticalCurvePointInput;
  /** Grade before the curve [slope], positive if it rises; up to 10 either way. */
  readonly before: SlopeInput;
  /** Grade after the curve [slope], positive if it rises; up to 10 either way. */
  readonly after: SlopeInput;
  /** Plan length of the curve [length], more than 0 and at most 100 km. Give this or `changePer`. */
  readonly length?: LengthInput;
  /**
   * Maximum rate of change of grade; the curve is as short as that allows. Give this or `length`.
   */
  readonly changePer?: ChangePerInput;
}

const POINT = shapeOf<VerticalCurvePointInput>()({
  station: quantity(STATION),
  elevation: quantity(ELEVATION),
});

const CHANGE_PER = shapeOf<ChangePerInput>()({
  change: quantity(SLOPE_OF_SOME),
  distance: quantity(DISTANCE),
});

const OPTIONS = shapeOf<VerticalCurveOptions>()({
  start: optional(object(POINT)),
  intersection: optional(object(POINT)),
  before: quantity(SLOPE),
  after: quantity(SLOPE),
  length: optional(quantity(DISTANCE)),
  changePer: optional(object(CHANGE_PER)),
});

/** The curve at a station. */
export interface CurveAt extends GradePoint {
  /** Grade there, positive if it rises. */
  readonly grade: Slope;
  /** True if the station is off the curve, where its straight grades are extended. */
  readonly extrapolated: boolean;
}

/** A parabola that rounds a grade break. */
export interface VerticalCurve extends Worked {
  /** Plan length. */
  readonly length: Length;
  /** Where the curve starts. */
  readonly start: GradePoint;
  /** Where the straight grades meet. */
  readonly intersection: GradePoint;
  /** Where the curve ends. */
  readonly end: GradePoint;
  /** `crest`: humped; `sag`: hollow; `straight`: both grades are the same. */
  readonly kind: 'crest' | 'sag' | 'straight';
  /** High or low point within the curve, where the grade is zero; null if there is none. */
  readonly turningPoint: GradePoint | null;
  /**
   * Offset of the middle of the curve: below the straight grades at a crest, above them in a sag.
   */
  readonly middleOffset: Length;
  /** Elevation at any station. Off the curve its straight grades are extended; `at` flags it. */
  readonly elevationAt: (station: LengthInput) => Length;
  /** Elevation and grade at any station; flagged off the curve. */
  readonly at: (station: LengthInput) => CurveAt;
}

/**
 * A vertical curve, the parabola from one grade to another:
 * `z(x) = z0 + g1 x + (g2 - g1) x^2 / (2 L)`, `g(x) = g1 + (g2 - g1) x / L`, high or low point at
 * `x = -g1 L / (g2 - g1)`, offset at the middle `e = |g2 - g1| L / 8`. Exact.
 *
 * @param options - see {@link VerticalCurveOptions}
 * @returns start, intersection, end and turning point with station and elevation [length], middle
 *   offset [length]; `elevationAt(station)` [length]; `at(station)`, which adds the grade and a flag
 *   off the curve
 * @throws `CONFLICTING_FIELDS`, `REQUIRED`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
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
export function verticalCurve(options: VerticalCurveOptions): VerticalCurve {
  const curve = curveOf(readOptions(options, OPTIONS, checkOptions));
  const { start, intersection, end, length, before, after } = curve;
  const bend = after.minus(before);
  const middleOffset = length.times(bend.abs()).dividedBy(8);
  const at = (station: LengthInput) => curveAt(curve, readOptions({ station }, AT).station);
  const result: Omit<VerticalCurve, 'working'> = {
    length,
    start,
    intersection,
    end,
    kind: bend.isZero() ? 'straight' : bend.isNegative() ? 'crest' : 'sag',
    turningPoint: turningPointOf(curve),
    middleOffset,
    elevationAt: (station: LengthInput) => at(station).elevation,
    at,
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Offset of the curve from the straight grades at its middle',
      formula: 'e = abs(g2 - g1) * L / 8',
      given: [
        given('g1', 'grade before', before),
        given('g2', 'grade after', after),
        given('L', 'length of the curve', length),
      ],
      result: given('e', 'middle offset', middleOffset),
    }),
  ]);
}

const AT = shapeOf<{ readonly station: LengthInput }>()({ station: quantity(STATION) });

function checkOptions(
  reader: Reader,
  { before, after }: Partial<Values<typeof OPTIONS>>,
  path: FieldPath,
  raw: Readonly<Record<string, unknown>>,
): void {
  exactlyOne(reader, raw, ['start', 'intersection'], [...path, 'start']);
  const by = exactlyOne(reader, raw, ['length', 'changePer'], [...path, 'length']);
  if (by !== 'changePer' || before === undefined || after === undefined) return;
  if (!before.equals(after)) return;
  const why = 'before and after are the same grade, so the curve has no length. Give length';
  reader.fail('NOT_POSITIVE', [...path, 'changePer'], why);
}

interface Curve {
  readonly start: GradePoint;
  readonly intersection: GradePoint;
  readonly end: GradePoint;
  readonly length: Length;
  readonly before: Slope;
  readonly after: Slope;
}

function curveOf(read: Values<typeof OPTIONS>): Curve {
  const { before, after } = read;
  const length =
    read.length ?? shortest(after.minus(before).abs(), known(read.changePer, 'change'));
  const half = length.dividedBy(2);
  const start =
    read.start ?? moved(known(read.intersection, 'intersection'), half.negated(), before);
  const intersection = moved(start, half, before);
  return { start, intersection, end: moved(intersection, half, after), length, before, after };
}

/** The length that a change of grade needs. */
const shortest = (bend: Slope, { distance, change }: Values<typeof CHANGE_PER>): Length =>
  distance.times(bend).dividedBy(change);

/** The point farther along a straight grade. */
const moved = ({ station, elevation }: GradePoint, by: Length, grade: Slope): GradePoint => ({
  station: station.plus(by),
  elevation: elevation.plus(by.times(grade)),
});

function curveAt(curve: Curve, station: Length): CurveAt {
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
  // a grade of zero at an end is not a turning point: the line continues level
  if (before.isZero() || after.isZero() || before.isNegative() === after.isNegative()) return null;
  const x = length.times(before).dividedBy(before.minus(after));
  const { station, elevation } = onCurve(curve, start.station.plus(x));
  return { station, elevation };
}
