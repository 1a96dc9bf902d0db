import type { FieldPath } from '../errors.js';
import { shown, type Reader } from '../input.js';
import type { LengthUnit } from '../units/catalogue.js';
import { length, type LengthInput } from '../units/construct.js';
import type { NumberInput } from '../units/read-number.js';
import { signOfRatio } from '../units/ratio.js';
import { between, cross, isZero, minus, type PlanPoint, type Vector } from '../units/vector.js';
import { crossingEdges } from './crossing-edges.js';

/** An outline: points in order, all in one unit, or points of two lengths each. Closed by itself. */
export type OutlineInput =
  | {
      readonly unit: LengthUnit;
      readonly points: readonly (readonly [NumberInput, NumberInput])[];
    }
  | readonly { readonly x: LengthInput; readonly y: LengthInput }[];

/** An outline that has been read and checked. Internal. */
export interface Outline {
  /** The first point as given: the origin of the others. */
  readonly origin: PlanPoint;
  /** All points less the first, in metres, in the order given. */
  readonly points: readonly Vector[];
}

const PLACE = Object.freeze({ sign: 'any', most: length(100_000, 'km') } as const);
/** The exact ledger is for drawn outlines; scanned ones go through the bulk functions. */
const MOST_POINTS = 1000;

/**
 * Reads an outline of straight edges and makes sure that it is one simple figure: three points or
 * more, no edge of no length, no two edges that cross or touch. Internal.
 */
export function readOutline(reader: Reader, value: unknown, path: FieldPath): Outline {
  const places = readPlaces(reader, value, path);
  const origin = places[0] ?? ORIGIN;
  const points = places.map((place) => between(origin, place));
  if (points.length > 0) checkShape(reader, points, pointsPath(value, path));
  return { origin, points };
}

const ORIGIN: PlanPoint = Object.freeze({ x: length(0, 'm'), y: length(0, 'm') });

const pointsPath = (value: unknown, path: FieldPath): FieldPath =>
  Array.isArray(value) ? path : [...path, 'points'];

function readPlaces(reader: Reader, value: unknown, path: FieldPath): readonly PlanPoint[] {
  if (value === undefined) {
    reader.fail(
      'REQUIRED',
      path,
      'is missing: write { "unit": "ft", "points": [[0, 0], [24, 0], ...] }',
    );
    return [];
  }
  const places = Array.isArray(value)
    ? readLengths(reader, value, path)
    : readPairs(reader, reader.object(value, path), path);
  const [first, last] = [places[0], places.at(-1)];
  const isClosed =
    places.length > 1 &&
    first !== undefined &&
    last?.x.equals(first.x) === true &&
    last.y.equals(first.y);
  return isClosed ? places.slice(0, -1) : places;
}

function readLengths(reader: Reader, list: readonly unknown[], path: FieldPath): PlanPoint[] {
  return reader.list(list, path).map((item, index) => {
    const at = [...path, index];
    const fields = reader.object(item, at);
    return {
      x: reader.quantity('length', fields['x'], [...at, 'x'], PLACE),
      y: reader.quantity('length', fields['y'], [...at, 'y'], PLACE),
    };
  });
}

function readPairs(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  path: FieldPath,
): PlanPoint[] {
  const unit = fields['unit'];
  if (typeof unit !== 'string') {
    const code = unit === undefined ? 'UNIT_MISSING' : 'WRONG_TYPE';
    reader.fail(code, [...path, 'unit'], 'name the unit of the points, such as "ft" or "m"');
    return [];
  }
  return reader.list(fields['points'], [...path, 'points']).map((pair, index) => {
    const at = [...path, 'points', index];
    if (!Array.isArray(pair) || pair.length !== 2) {
      reader.fail('WRONG_TYPE', at, `expected a point [x, y], got ${shown(pair)}`);
      return ORIGIN;
    }
    const coordinate = (axis: 0 | 1) =>
      reader.quantity('length', { value: pair[axis] as unknown, unit }, [...at, axis], PLACE);
    return { x: coordinate(0), y: coordinate(1) };
  });
}

/** True where every point lies on the line of the first two. */
function areInLine(points: readonly Vector[]): boolean {
  const [first, second] = points;
  if (first === undefined || second === undefined) return true;
  const along = minus(second, first);
  return points.every((point) => signOfRatio(cross(along, minus(point, first))) === 0);
}

function checkShape(reader: Reader, points: readonly Vector[], path: FieldPath): void {
  if (points.length < 3) {
    reader.fail(
      'TOO_FEW_POINTS',
      path,
      `an outline needs three points or more, got ${points.length}`,
    );
    return;
  }
  if (points.length > MOST_POINTS) {
    reader.fail('CAPACITY_EXCEEDED', path, `more than ${MOST_POINTS} points in one outline`);
    return;
  }
  const repeated = points.findIndex((point, index) => {
    const next = points[(index + 1) % points.length] ?? point;
    return isZero(minus(next, point));
  });
  if (repeated >= 0) {
    const next = (repeated + 1) % points.length;
    reader.fail('POINTS_COINCIDE', path, `points ${repeated} and ${next} are the same point`, {
      first: repeated,
      second: next,
    });
    return;
  }
  if (areInLine(points)) {
    reader.fail('ZERO_AREA', path, 'all points lie on one line: the outline encloses nothing');
    return;
  }
  const crossing = crossingEdges(points);
  if (crossing === undefined) return;
  const [first, second] = crossing;
  reader.fail(
    'SELF_INTERSECTION',
    path,
    `edge ${first} and edge ${second} cross or touch: are the points in order round the outline? (edge k runs from point k to the next)`,
    { first, second },
  );
}
