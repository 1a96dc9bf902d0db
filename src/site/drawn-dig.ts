import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
// a dig is an outline: it is read, checked and measured as one
import { chordsOf } from '../outline/chords.js';
import { areaOf } from '../outline/outline-area.js';
import { readOutline } from '../outline/read-outline.js';
import { PLACE } from '../input/ranges.js';
import { ringsOf } from '../outline/ring.js';
import type { Area } from '../units/quantity.js';
import { ratioToNumber } from '../units/ratio.js';
import { between, type PlanPoint, type Vector } from '../units/vector.js';

/** Chords this many radians long leave their arc by less than 1/300 000 of its radius. */
const STEP = 0.005;
/** What lies further from the dig than this [m] is a slip. */
const FURTHEST = 10_000;

/** A dig that has been read: its rings from the first point, chords in the place of arcs. Internal. */
export interface DrawnDig {
  readonly origin: PlanPoint;
  /** The outer ring first, then the holes; only after `finish`. */
  readonly rings: () => readonly (readonly Vector[])[];
  /** With its arcs, less the holes; only after `finish`. */
  readonly area: () => Area;
}

/** Reads the outline of a dig, with its arcs and holes. Internal. */
export function readDrawnDig(reader: Reader, value: unknown, path: FieldPath): DrawnDig {
  const outline = readOutline(reader, value, path);
  return {
    origin: outline.origin,
    rings: () => ringsOf(outline).map((ring, index) => chordsOf(ring, index > 0, STEP).points),
    area: () => areaOf(outline),
  };
}

/** Reads a place beside a dig, as a vector from the first point of its outline. Internal. */
export function readPlace(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  origin: PlanPoint,
): Vector {
  const fields = reader.object(value, path);
  const place = between(origin, {
    x: reader.quantity('length', fields['x'], [...path, 'x'], PLACE),
    y: reader.quantity('length', fields['y'], [...path, 'y'], PLACE),
  });
  const [x, y] = floatsOf([place]);
  if (Math.max(Math.abs(x ?? 0), Math.abs(y ?? 0)) > FURTHEST) {
    reader.fail(
      'OUT_OF_RANGE',
      path,
      'more than 10 km from the dig: a slip of a digit or an axis?',
    );
  }
  return place;
}

/** x and y of each point in turn [m]. Internal. */
export const floatsOf = (points: readonly Vector[]): number[] =>
  points.flatMap(({ x, y }) => [ratioToNumber(x), ratioToNumber(y)]);
