import type { FieldPath } from '../../errors.js';
import { custom, quantity } from '../../input/field.js';
import { readLengthUnit } from '../../input/length-unit.js';
import { inUnit, readInUnit } from '../../input/number-in-unit.js';
import { ELEVATION, PLACE } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { readShape, shapeOf, type Field } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { counted } from '../counted.js';
import { LENGTH_UNIT_SCHEMA, NUMBER_SCHEMA } from './json-parts.js';
import { part } from './part.js';
import type { SpotHeightInput, SpotTableInput } from './pavement-input.js';

/** A spot height that has been read. Internal. */
export interface SpotHeight {
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** Elevation. */
  readonly z: Length;
}

const LEAST_SPOTS = 3;
/** More than a crew shoots. Scanned sites belong in surfaceVolumes. */
const MOST_SPOTS = 100_000;
const SIZE = Object.freeze({ minItems: LEAST_SPOTS, maxItems: MOST_SPOTS });
const TRIPLE = { type: 'array', minItems: 3, maxItems: 3, items: NUMBER_SCHEMA };

const SPOT = shapeOf<SpotHeightInput>()({
  x: quantity(PLACE),
  y: quantity(PLACE),
  z: quantity(ELEVATION),
});

const TABLE = shapeOf<SpotTableInput>()({
  unit: custom(readLengthUnit, LENGTH_UNIT_SCHEMA),
  points: custom(readCounted, { type: 'array', ...SIZE, items: TRIPLE }),
});

/** Spot heights of a job. Internal. */
export const spotHeights: Field<readonly SpotHeight[]> = {
  read: (reader, value, path) =>
    Array.isArray(value) ? readSpots(reader, value, path) : readTable(reader, value, path),
  about: {
    kind: 'either',
    fields: [
      part('SpotTableInput', TABLE),
      custom(readSpots, { type: 'array', ...SIZE }, part('SpotHeightInput', SPOT)),
    ],
  },
};

/** Points of three lengths each. */
function readSpots(reader: Reader, value: unknown, path: FieldPath): SpotHeight[] {
  if (Array.isArray(value) && value.length > 0 && value.every(Array.isArray)) {
    const message =
      'these points have no unit. Write { "unit": "ft", "points": [[0, 0, 98.4], ...] }';
    reader.fail('UNIT_MISSING', path, message);
    return [];
  }
  const before = reader.faults();
  const spots = readCounted(reader, value, path).map((point, index) => {
    const { x, y, z } = readShape(reader, point, [...path, index], SPOT);
    return x === undefined || y === undefined || z === undefined ? NOWHERE : { x, y, z };
  });
  if (reader.faults() === before) refuseTwoHeights(reader, spots, path);
  return spots;
}

/** Refuses one place with two heights. */
function refuseTwoHeights(reader: Reader, spots: readonly SpotHeight[], path: FieldPath): void {
  const first = new Map<string, number>();
  spots.forEach(({ x, y, z }, index) => {
    const place = `${x.toNumber('m')} ${y.toNumber('m')}`;
    const earlier = first.get(place);
    if (earlier === undefined) first.set(place, index);
    else if (spots[earlier]?.z.equals(z) === false) {
      const [one, other] = [earlier + 1, index + 1];
      const message = `points ${one} and ${other} are at one place and have two heights (the first point is point 1). Remove one of them`;
      reader.fail('TWO_HEIGHTS', [...path, index], message, { first: one, second: other });
    }
  });
}

/** Points of three numbers each, all in one unit. */
function readTable(reader: Reader, value: unknown, path: FieldPath): SpotHeight[] {
  const before = reader.faults();
  const { unit, points = [] } = readShape(reader, value, path, TABLE);
  // if the unit is not known, points are read only for their faults
  const read = points.map((point, index) =>
    readTriple(reader, point, { unit: unit ?? 'mm', path: [...path, 'points', index] }),
  );
  if (reader.faults() === before) refuseTwoHeights(reader, read, [...path, 'points']);
  return unit === undefined ? [] : read;
}

function readTriple(
  reader: Reader,
  point: unknown,
  { unit, path }: { readonly unit: string; readonly path: FieldPath },
): SpotHeight {
  if (!Array.isArray(point) || point.length !== 3) {
    reader.fail('WRONG_TYPE', path, `expected a point [x, y, elevation], got ${shown(point)}`);
    return NOWHERE;
  }
  const read = (axis: 0 | 1 | 2, rule: typeof PLACE_NUMBER) =>
    readInUnit(reader, { value: point[axis], unit }, [...path, axis], rule);
  return { x: read(0, PLACE_NUMBER), y: read(1, PLACE_NUMBER), z: read(2, LEVEL_NUMBER) };
}

const PLACE_NUMBER = inUnit(PLACE);
const LEVEL_NUMBER = inUnit(ELEVATION);

/** Placeholder for a point that could not be read. It is never used, because the reader has a fault. */
const NOWHERE: SpotHeight = { x: NO_LENGTH, y: NO_LENGTH, z: NO_LENGTH };

/** Reads a list with enough points for a surface and no more than a crew shoots. */
function readCounted(reader: Reader, value: unknown, path: FieldPath): readonly unknown[] {
  if (Array.isArray(value) && value.length > MOST_SPOTS) {
    const got = value.length;
    const words = `${got} spot heights, maximum ${MOST_SPOTS}. Thin them out`;
    reader.fail('TOO_MANY', path, words, { most: MOST_SPOTS, got });
    return [];
  }
  const list = reader.list(value, path);
  const got = list.length;
  if (got > 0 && got < LEAST_SPOTS) {
    const words = `${counted(got, 'spot height')}, a surface needs ${LEAST_SPOTS} or more. Take more levels`;
    reader.fail('TOO_FEW', path, words, { least: LEAST_SPOTS, got });
  }
  return list;
}
