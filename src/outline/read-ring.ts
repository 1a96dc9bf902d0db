import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { shown } from '../input/shown.js';
import { length } from '../units/construct.js';
import { isDecimal } from '../units/decimal.js';
import { exactOf } from '../units/quantity.js';
import { signOfRatio, type Ratio } from '../units/ratio.js';
import type { PlanPoint } from '../units/vector.js';

/** A ring as read, not yet checked as a figure. Internal. */
export interface ReadRing {
  readonly places: readonly PlanPoint[];
  readonly bulges: readonly (Ratio | undefined)[] | undefined;
  /** The path of the points, for faults of the figure. */
  readonly path: FieldPath;
  /** The unit of the points, where they have one in common. */
  readonly unit: string | undefined;
}

/** A coordinate: national grids are far from their origin. Internal. */
export const PLACE = Object.freeze({ sign: 'any', most: length(100_000, 'km') } as const);

/** Stands for points that could not be read. Internal. */
export const ORIGIN: PlanPoint = Object.freeze({ x: length(0, 'm'), y: length(0, 'm') });

/** The exact ledger is for drawn outlines; scanned ones go through the bulk functions. */
const MOST_POINTS = 10_000;

/** False, with a fault, for more points than a drawn outline has. Internal. */
export function isDrawable(reader: Reader, got: number, path: FieldPath): boolean {
  if (got <= MOST_POINTS) return true;
  const words = `more than ${MOST_POINTS} points: take the bulk functions for a scanned outline`;
  reader.fail('TOO_MANY', path, words, { most: MOST_POINTS, got });
  return false;
}

/** Reads a list of points, unless it is too long to be one by one. */
function readList(reader: Reader, value: unknown, path: FieldPath): readonly unknown[] {
  const list = reader.list(value, path);
  return isDrawable(reader, list.length, path) ? list : [];
}

type Fields = Readonly<Record<string, unknown>>;

/** Reads the points and arcs of a ring; `unit` is that of the outline round a hole. Internal. */
export function readRing(reader: Reader, value: unknown, path: FieldPath, unit?: string): ReadRing {
  const nothing = { places: [], bulges: undefined, path, unit };
  if (value === undefined) {
    reader.fail(
      'REQUIRED',
      path,
      'is missing: write { "unit": "ft", "points": [[0, 0], [24, 0], ...] }',
    );
    return nothing;
  }
  if (Array.isArray(value)) {
    const isPairs = unit !== undefined && value.length > 0 && value.every(Array.isArray);
    const places = isPairs
      ? readPairs(reader, value, path, unit)
      : readLengths(reader, value, path);
    return { ...nothing, places: open(places) };
  }
  const fields = reader.object(value, path);
  const at = [...path, 'points'];
  if (fields['unit'] === undefined && isListOfObjects(fields['points'])) {
    const places = open(readLengths(reader, fields['points'], at));
    const bulges = readArcs(reader, fields, path, { count: places.length });
    return { places, bulges, path: at, unit: undefined };
  }
  const own = readUnit(reader, fields, path, unit);
  if (own === undefined) return nothing;
  const places = open(readPairs(reader, fields['points'], at, own));
  const bulges = readArcs(reader, fields, path, { count: places.length, unit: own });
  return { places, bulges, path: at, unit: own };
}

const isListOfObjects = (value: unknown): value is readonly object[] =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every((item) => typeof item === 'object' && item !== null && !Array.isArray(item));

function readUnit(
  reader: Reader,
  fields: Fields,
  path: FieldPath,
  outer: string | undefined,
): string | undefined {
  const unit = fields['unit'] ?? outer;
  if (typeof unit === 'string') return unit;
  const code = unit === undefined ? 'UNIT_MISSING' : 'WRONG_TYPE';
  reader.fail(code, [...path, 'unit'], 'name the unit of the points, such as "ft" or "m"');
  return undefined;
}

/** Leaves out a last point that repeats the first. */
function open(places: readonly PlanPoint[]): readonly PlanPoint[] {
  const [first, last] = [places[0], places.at(-1)];
  if (places.length < 2 || first === undefined || last === undefined) return places;
  return last.x.equals(first.x) && last.y.equals(first.y) ? places.slice(0, -1) : places;
}

function readLengths(reader: Reader, list: readonly unknown[], path: FieldPath): PlanPoint[] {
  return readList(reader, list, path).map((item, index) => {
    const at = [...path, index];
    const fields = reader.object(item, at);
    return {
      x: reader.quantity('length', fields['x'], [...at, 'x'], PLACE),
      y: reader.quantity('length', fields['y'], [...at, 'y'], PLACE),
    };
  });
}

function readPairs(reader: Reader, list: unknown, path: FieldPath, unit: string): PlanPoint[] {
  return readList(reader, list, path).map((pair, index) => {
    const at = [...path, index];
    if (!Array.isArray(pair) || pair.length !== 2) {
      reader.fail('WRONG_TYPE', at, `expected a point [x, y], got ${shown(pair)}`);
      return ORIGIN;
    }
    const coordinate = (axis: 0 | 1) =>
      reader.quantity('length', { value: pair[axis] as unknown, unit }, [...at, axis], PLACE);
    return { x: coordinate(0), y: coordinate(1) };
  });
}

function readArcs(
  reader: Reader,
  fields: Fields,
  path: FieldPath,
  ring: { readonly count: number; readonly unit?: string },
): readonly (Ratio | undefined)[] | undefined {
  if (fields['arcs'] === undefined) return undefined;
  const at = [...path, 'arcs'];
  const list = Array.isArray(fields['arcs']) ? fields['arcs'] : reader.list(fields['arcs'], at);
  const bulges = Array.from({ length: ring.count }, (): Ratio | undefined => undefined);
  list.forEach((item: unknown, index) => {
    const own = [...at, index];
    const arc = reader.object(item, own);
    const bulge = readBulge(reader, arc['bulgeMiddleOrdinate'], own, ring.unit);
    const edge = readEdge(reader, arc['edge'], [...own, 'edge'], ring.count);
    if (edge === undefined || signOfRatio(bulge) === 0) return;
    if (bulges[edge] !== undefined) {
      reader.fail('DUPLICATE_ID', [...own, 'edge'], `edge ${edge} has two arcs`, { edge });
    }
    bulges[edge] = bulge;
  });
  return bulges.every((bulge) => bulge === undefined) ? undefined : bulges;
}

function readBulge(reader: Reader, value: unknown, path: FieldPath, unit: string | undefined) {
  const isBare = typeof value === 'number' || isDecimal(value) || isDigits(value);
  const given = isBare && unit !== undefined ? { value, unit } : value;
  return exactOf(reader.quantity('length', given, [...path, 'bulgeMiddleOrdinate'], PLACE));
}

const isDigits = (value: unknown): boolean =>
  typeof value === 'string' && /^\s*[+-]?[\d.]+(?:\/\d+)?\s*$/.test(value);

function readEdge(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  count: number,
): number | undefined {
  if (typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < count) {
    return value;
  }
  if (value === undefined) reader.fail('REQUIRED', path, 'is missing: name the edge of the arc');
  else if (count > 0) {
    const words = `expected the number of an edge, 0 to ${count - 1}, got ${shown(value)}`;
    reader.fail(typeof value === 'number' ? 'OUT_OF_RANGE' : 'WRONG_TYPE', path, words);
  }
  return undefined;
}
