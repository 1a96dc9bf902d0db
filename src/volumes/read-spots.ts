import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { shown } from '../input/shown.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';
import { ELEVATION, PLACE } from './limits.js';

/** A spot height of three lengths. */
export interface SpotHeight {
  readonly x: LengthInput;
  readonly y: LengthInput;
  /** Elevation. */
  readonly z: LengthInput;
}

/** Spot heights: x, y and elevation, all in one unit or of three lengths each. */
export type SpotsInput =
  | {
      readonly unit: LengthUnit;
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
}

/** The exact border reads every digit; more points than this go through the bulk function. */
const MOST_SPOTS = 20_000;

/**
 * Reads spot heights; `list` is the field that holds them where they have a unit in common. Internal.
 */
export function readSpots(
  reader: Reader,
  value: unknown,
  { path, list = 'points' }: { readonly path: FieldPath; readonly list?: string },
): Spots {
  if (Array.isArray(value)) {
    const spots = few(reader, reader.list(value, path), path).map((item, index) =>
      readSpot(reader, item, [...path, index]),
    );
    return { spots, path, unit: undefined };
  }
  const fields = reader.object(value, path);
  const at = [...path, list];
  const { unit } = fields;
  if (typeof unit !== 'string') {
    const code = unit === undefined ? 'UNIT_MISSING' : 'WRONG_TYPE';
    reader.fail(code, [...path, 'unit'], 'name the unit of the points, such as "ft" or "m"');
    return { spots: [], path: at, unit: undefined };
  }
  const spots = few(reader, reader.list(fields[list], at), at).map((item, index) =>
    readTriple(reader, item, { unit, path: [...at, index] }),
  );
  return { spots, path: at, unit };
}

function few(reader: Reader, list: readonly unknown[], path: FieldPath): readonly unknown[] {
  if (list.length <= MOST_SPOTS) return list;
  const words = `${list.length} spot heights: give more than ${MOST_SPOTS} to surfaceVolumes, in metres`;
  reader.fail('CAPACITY_EXCEEDED', path, words, { most: MOST_SPOTS });
  return [];
}

function readSpot(reader: Reader, value: unknown, path: FieldPath): Spot {
  const fields = reader.object(value, path);
  return {
    x: reader.quantity('length', fields['x'], [...path, 'x'], PLACE),
    y: reader.quantity('length', fields['y'], [...path, 'y'], PLACE),
    z: reader.quantity('length', fields['z'], [...path, 'z'], ELEVATION),
  };
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
