import type { FieldPath } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { custom, list, object, optional, quantity } from '../input/field.js';
import { ELEVATION, SLOPE, STATION } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';

/** A point of a grade line by its elevation: a fixed level. */
export interface FixedPointInput {
  /** Distance along the line [length], up to 100 km either way; farther than the point before. */
  readonly station: LengthInput;
  /** Elevation of finished grade there [length], up to 10 km either way. */
  readonly elevation: LengthInput;
  /** Not with `elevation`. */
  readonly grade?: never;
}

/** A point of a grade line by the grade from the point before. */
export interface GradedPointInput {
  /** Distance along the line [length], up to 100 km either way; farther than the point before. */
  readonly station: LengthInput;
  /** Grade from the point before [slope], positive if it rises; up to 10 either way. */
  readonly grade: SlopeInput;
  /** Not with `grade`. */
  readonly elevation?: never;
}

/** A point of a grade line: a fixed level, or a grade from the point before. */
export type GradePointInput = FixedPointInput | GradedPointInput;

const POINT = shapeOf<{
  readonly station: LengthInput;
  readonly elevation?: LengthInput;
  readonly grade?: SlopeInput;
}>()({
  station: quantity(STATION),
  elevation: optional(quantity(ELEVATION)),
  grade: optional(quantity(SLOPE)),
});

type ReadPoint = Values<typeof POINT>;

const POINTS = list(
  object(POINT, (reader, _, path, raw) => {
    exactlyOne(reader, raw, ['elevation', 'grade'], [...path, 'elevation']);
  }),
  { of: 'points', least: 2 },
);

/** A point of the line. */
export interface GradePoint {
  /** Distance along the line. */
  readonly station: Length;
  /** Elevation there. */
  readonly elevation: Length;
}

/** The points of a grade line, in order. Internal. */
export const gradePoints: Field<readonly GradePoint[]> = custom((reader, value, path) => {
  const before = reader.faults();
  // a point that could not be read is undefined
  const points: readonly (ReadPoint | undefined)[] = POINTS.read(reader, value, path);
  if (points[0]?.grade !== undefined) {
    const why = 'the first point has no point before it. Write its elevation';
    reader.fail('REQUIRED', [...path, 0, 'elevation'], why);
  }
  points.forEach((point, k) => {
    checkForward(reader, point, { before: points[k - 1], path: [...path, k, 'station'] });
  });
  return reader.faults() > before ? [] : levelled(points.filter((point) => point !== undefined));
});

/** Stations run forward. */
function checkForward(
  reader: Reader,
  point: ReadPoint | undefined,
  { before, path }: { readonly before: ReadPoint | undefined; readonly path: FieldPath },
): void {
  if (point === undefined || before === undefined) return;
  if (point.station.compare(before.station) > 0) return;
  reader.fail('NOT_INCREASING', path, 'is not beyond the point before. List the points in order');
}

/** The points with their elevations, grades resolved. */
function levelled(points: readonly ReadPoint[]): GradePoint[] {
  const found: GradePoint[] = [];
  for (const { station, elevation, grade } of points) {
    const before = found.at(-1);
    if (elevation !== undefined) found.push({ station, elevation });
    else if (grade !== undefined && before !== undefined) {
      const rise = station.minus(before.station).times(grade);
      found.push({ station, elevation: before.elevation.plus(rise) });
    }
  }
  return found;
}
