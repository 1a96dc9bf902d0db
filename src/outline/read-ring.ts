import type { FieldPath } from '../errors.js';
import { quantity } from '../input/field.js';
import { readLengthUnit } from '../input/length-unit.js';
import { inUnit, readInUnit } from '../input/number-in-unit.js';
import { PLACE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { readShape } from '../input/shape.js';
import { shown } from '../input/shown.js';
import { refuseUnknown } from '../input/unknown-field.js';
import { length } from '../units/construct.js';
import { isDecimal } from '../units/decimal.js';
import { exactOf } from '../units/quantity.js';
import { signOfRatio, type Ratio } from '../units/ratio.js';
import type { PlanPoint } from '../units/vector.js';

/** A ring as read, before its shape is checked. Internal. */
export interface ReadRing {
  readonly places: readonly PlanPoint[];
  readonly bulges: readonly (Ratio | undefined)[] | undefined;
  /** The path of the points, for faults of the shape. */
  readonly path: FieldPath;
  /** The common unit of the points, if they have one; a stand-in for one that could not be read. */
  readonly unit: string | undefined;
}

/** Replaces points that could not be read. Internal. */
export const ORIGIN: PlanPoint = Object.freeze({ x: length(0, 'm'), y: length(0, 'm') });

/** Maximum points of a drawn outline; scanned ones need the bulk functions. */
const MOST_POINTS = 10_000;

/** False, with a fault, for more points than a drawn outline may have. Internal. */
export function isDrawable(reader: Reader, got: number, path: FieldPath): boolean {
  if (got <= MOST_POINTS) return true;
  const words = `more than ${MOST_POINTS} points. Use the bulk functions for a scanned outline`;
  reader.fail('TOO_MANY', path, words, { most: MOST_POINTS, got });
  return false;
}

/** Reads a list of points, unless it is too long. */
function readList(reader: Reader, value: unknown, path: FieldPath): readonly unknown[] {
  const list = reader.list(value, path);
  return isDrawable(reader, list.length, path) ? list : [];
}

/** What a ring takes over: the unit of the outline round a hole, and how edges are counted. Internal. */
export interface Around {
  /** Of a hole: the unit of the outline round it. */
  readonly unit?: string | undefined;
  /** Of a hole: the points of the outline round it. */
  readonly places?: readonly PlanPoint[];
  /** The number of the first edge. */
  readonly firstEdge: 0 | 1;
}

type Fields = Readonly<Record<string, unknown>>;

const RING = Object.freeze({ unit: true, points: true, arcs: true });
const OUTER_RING = Object.freeze({ ...RING, holes: true });
const ARC = Object.freeze({ edge: true, bulgeMiddleOrdinate: true });

/** Reads the points and arcs of a ring; a hole may use the unit of its outline. Internal. */
export function readRing(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  { unit, places: round, firstEdge }: Around = { firstEdge: 0 },
): ReadRing {
  const nothing = { places: [], bulges: undefined, path, unit: unit ?? STAND_IN };
  if (value === undefined) {
    reader.fail('REQUIRED', path, `missing. Write ${WITH_UNIT}`);
    return nothing;
  }
  if (Array.isArray(value)) {
    const isPairs = value.length > 0 && value.every(Array.isArray);
    if (isPairs && unit === undefined) {
      const message = `these points have no unit. Write ${WITH_UNIT}`;
      reader.fail('UNIT_MISSING', path, message);
      return nothing;
    }
    const places =
      isPairs && unit !== undefined
        ? readPairs(reader, value, path, unit)
        : readLengths(reader, value, path);
    return { ...nothing, places: open(places), unit };
  }
  const before = reader.faults();
  const fields = reader.object(value, path);
  if (reader.faults() > before) return nothing;
  const misspelt = refuseUnknown(reader, fields, path, round === undefined ? OUTER_RING : RING);
  const isMisspelt = (name: string) => fields[name] === undefined && misspelt.has(name);
  const at = [...path, 'points'];
  const hasUnit = fields['unit'] !== undefined;
  if (!hasUnit && isListOfObjects(fields['points'])) {
    const places = open(readLengths(reader, fields['points'], at));
    const bulges = readArcs(reader, fields, path, { count: places.length, firstEdge });
    return { places, bulges, path: at, unit: undefined };
  }
  const own = isMisspelt('unit')
    ? undefined
    : readLengthUnit(reader, hasUnit ? fields['unit'] : unit, [...path, 'unit']);
  if (isMisspelt('points')) return { ...nothing, unit: own ?? STAND_IN };
  const places = open(readPairs(reader, fields['points'], at, own ?? STAND_IN));
  const bulges = readArcs(reader, fields, path, {
    count: places.length,
    firstEdge,
    unit: own ?? STAND_IN,
  });
  return own === undefined ? nothing : { places, bulges, path: at, unit: own };
}

/** Points whose unit is written once. */
const WITH_UNIT = '{ "unit": "ft", "points": [[0, 0], [24, 0], ...] }';

/** A unit in which no number is too large, to check points whose own unit is not known. */
const STAND_IN = 'mm';

const isListOfObjects = (value: unknown): value is readonly object[] =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every((item) => typeof item === 'object' && item !== null && !Array.isArray(item));

/** Drops a last point that repeats the first. */
function open(places: readonly PlanPoint[]): readonly PlanPoint[] {
  const [first, last] = [places[0], places.at(-1)];
  if (places.length < 2 || first === undefined || last === undefined) return places;
  return last.x.equals(first.x) && last.y.equals(first.y) ? places.slice(0, -1) : places;
}

function readLengths(reader: Reader, list: readonly unknown[], path: FieldPath): PlanPoint[] {
  return readList(reader, list, path).map((item, index) => {
    const { x, y } = readShape(reader, item, [...path, index], POINT);
    // a stand-in is never used: the reader has a fault
    return x === undefined || y === undefined ? ORIGIN : { x, y };
  });
}

const POINT = Object.freeze({ x: quantity(PLACE), y: quantity(PLACE) });

function readPairs(reader: Reader, list: unknown, path: FieldPath, unit: string): PlanPoint[] {
  return readList(reader, list, path).map((pair, index) => {
    const at = [...path, index];
    if (!Array.isArray(pair) || pair.length !== 2) {
      reader.fail('WRONG_TYPE', at, `expected a point [x, y], got ${shown(pair)}`);
      return ORIGIN;
    }
    const coordinate = (axis: 0 | 1) =>
      readInUnit(reader, { value: pair[axis], unit }, [...at, axis], COORDINATE);
    return { x: coordinate(0), y: coordinate(1) };
  });
}

const COORDINATE = inUnit(PLACE);

function readArcs(
  reader: Reader,
  fields: Fields,
  path: FieldPath,
  ring: { readonly count: number; readonly firstEdge: 0 | 1; readonly unit?: string },
): readonly (Ratio | undefined)[] | undefined {
  if (fields['arcs'] === undefined) return undefined;
  const at = [...path, 'arcs'];
  const list = Array.isArray(fields['arcs']) ? fields['arcs'] : reader.list(fields['arcs'], at);
  const bulges = Array.from({ length: ring.count }, (): Ratio | undefined => undefined);
  list.forEach((item: unknown, index) => {
    const own = [...at, index];
    const before = reader.faults();
    const arc = reader.object(item, own);
    if (reader.faults() > before) return;
    const misspelt = refuseUnknown(reader, arc, own, ARC);
    if ([...misspelt].some((name) => arc[name] === undefined)) return;
    const bulge = readBulge(reader, arc['bulgeMiddleOrdinate'], own, ring.unit);
    const edge = readEdge(reader, arc['edge'], [...own, 'edge'], ring);
    if (edge === undefined || signOfRatio(bulge) === 0) return;
    if (bulges[edge] !== undefined) {
      reader.fail(
        'DUPLICATE_ID',
        [...own, 'edge'],
        `edge ${edge + ring.firstEdge} has two arcs. Remove one of them`,
        {
          edge: edge + ring.firstEdge,
        },
      );
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
  { count, firstEdge }: { readonly count: number; readonly firstEdge: 0 | 1 },
): number | undefined {
  const edge = typeof value === 'number' ? value - firstEdge : -1;
  if (Number.isInteger(edge) && edge >= 0 && edge < count) return edge;
  if (value === undefined)
    reader.fail(
      'REQUIRED',
      path,
      `missing. Write the number of the edge, such as ${firstEdge} for the edge from the first point to the second`,
    );
  else if (count > 0) {
    const words = `expected the number of an edge, ${firstEdge} to ${count - 1 + firstEdge}, got ${shown(value)}`;
    reader.fail(typeof value === 'number' ? 'OUT_OF_RANGE' : 'WRONG_TYPE', path, words);
  }
  return undefined;
}
