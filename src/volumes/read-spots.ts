import type { FieldPath } from '../errors.js';
import { object, quantity } from '../input/field.js';
import { ELEVATION, PLACE } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { shapeOf, type Field } from '../input/shape.js';
import { shown } from '../input/shown.js';
import { refuseUnknown } from '../input/unknown-field.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';

/** A spot height, given as three lengths. */
export interface SpotHeight {
  /** Plan coordinate [length]. */
  readonly x: LengthInput;
  /** Plan coordinate [length]. */
  readonly y: LengthInput;
  /** Elevation [length]. */
  readonly z: LengthInput;
}

/** A spot height of three lengths, as a field. Internal. */
export const spotHeight: Field<Spot> = object(
  shapeOf<SpotHeight>()({ x: quantity(PLACE), y: quantity(PLACE), z: quantity(ELEVATION) }),
);

/** Spot heights: x, y and elevation, as numbers in one unit or as three lengths each. */
export type SpotsInput =
  | {
      /** The unit of all three numbers of every point. */
      readonly unit: LengthUnit;
      /** Points as x, y and elevation. */
      readonly points: readonly (readonly [NumberInput, NumberInput, NumberInput])[];
    }
  | readonly SpotHeight[];

/** A spot height that has been read. Internal. */
export interface Spot {
  readonly x: Length;
  readonly y: Length;
  readonly z: Length;
}

/** Spot heights with the path of their list. Internal. */
export interface Spots {
  readonly spots: readonly Spot[];
  readonly path: FieldPath;
  readonly unit: string | undefined;
  /**
   * True for a surface put into cells too small for their diagonals to matter: one of them counts.
   * Default: both do.
   */
  readonly isFine?: boolean;
}

/** The exact border reads every digit; more points than this go through the bulk function. */
const MOST_SPOTS = 20_000;

/**
 * Reads spot heights. `list` is the field that holds them if they share a unit. Internal.
 */
export function readSpots(
  reader: Reader,
  value: unknown,
  { path, list = 'points' }: { readonly path: FieldPath; readonly list?: string },
): Spots {
  if (Array.isArray(value)) {
    const spots = few(reader, reader.list(value, path), path).map((item, index) =>
      spotHeight.read(reader, item, [...path, index]),
    );
    return { spots, path, unit: undefined };
  }
  const fields = reader.object(value, path);
  refuseUnknown(reader, fields, path, { unit: true, [list]: true });
  const at = [...path, list];
  const { unit } = fields;
  if (typeof unit !== 'string') {
    const code = unit === undefined ? 'UNIT_MISSING' : 'WRONG_TYPE';
    reader.fail(code, [...path, 'unit'], 'write the unit of the points, such as "ft" or "m"');
    return { spots: [], path: at, unit: undefined };
  }
  const spots = few(reader, reader.list(fields[list], at), at).map((item, index) =>
    readTriple(reader, item, { unit, path: [...at, index] }),
  );
  return { spots, path: at, unit };
}

function few(reader: Reader, list: readonly unknown[], path: FieldPath): readonly unknown[] {
  if (list.length <= MOST_SPOTS) return list;
  const words = `${list.length} spot heights, maximum ${MOST_SPOTS}. Pass them to surfaceVolumes, in metres`;
  reader.fail('TOO_MANY', path, words, { most: MOST_SPOTS, got: list.length });
  return [];
}

function readTriple(
  reader: Reader,
  value: unknown,
  { unit, path }: { readonly unit: string; readonly path: FieldPath },
): Spot {
  const isTriple = Array.isArray(value) && value.length === 3;
  if (!isTriple) {
    reader.fail('WRONG_TYPE', path, `expected a point [x, y, z], got ${shown(value)}`);
  }
  const triple: readonly unknown[] = isTriple ? value : [0, 0, 0];
  const read = (k: number, rule: typeof PLACE) =>
    reader.quantity('length', { value: triple[k], unit }, [...path, k], rule);
  return { x: read(0, PLACE), y: read(1, PLACE), z: read(2, ELEVATION) };
}
