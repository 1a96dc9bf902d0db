import type { FieldPath } from '../errors.js';
import { ELEVATION } from '../input/ranges.js';
import type { Reader } from '../input/reader.js';
import { refuseUnknown } from '../input/unknown-field.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import type { NumberInput } from '../units/read-number.js';

/** Depths or elevations on a grid, row by row: numbers in one unit, or lengths. `null` if a value is missing. */
export type GridInput =
  | {
      /** The unit of every number. */
      readonly unit: LengthUnit;
      /** Rows in order along y, values in order along x; `null` if a value is missing. */
      readonly rows: readonly (readonly (NumberInput | null)[])[];
    }
  | readonly (readonly (LengthInput | null)[])[];

/** A grid that has been read. Internal. */
export interface ReadGrid {
  readonly rows: readonly (readonly (Length | null)[])[];
  readonly unit: string | undefined;
}

/** The exact border reads every digit; larger grids go through the bulk function, as points. */
const MOST_NODES = 20_000;

/** Reads a grid of lengths with rows of one size. Internal. */
export function readGrid(reader: Reader, value: unknown, path: FieldPath): ReadGrid {
  const isList = Array.isArray(value);
  const fields = isList ? {} : reader.object(value, path);
  if (!isList) refuseUnknown(reader, fields, path, { unit: true, rows: true });
  const at = isList ? path : [...path, 'rows'];
  const unit = isList ? undefined : fields['unit'];
  if (!isList && typeof unit !== 'string') {
    const code = unit === undefined ? 'UNIT_MISSING' : 'WRONG_TYPE';
    reader.fail(code, [...path, 'unit'], 'write the unit of the rows, such as "ft" or "m"');
    return { rows: [], unit: undefined };
  }
  const list = reader.list(isList ? value : fields['rows'], at);
  const rows = list.map((row, index) => reader.list(row, [...at, index]));
  const width = rows[0]?.length ?? 0;
  rows.forEach((row, index) => {
    if (row.length === width) return;
    const words = `has ${row.length} of the ${width} values of the first row. Write null for a missing value`;
    reader.fail('COUNT_MISMATCH', [...at, index], words, { got: row.length, expected: width });
  });
  if (rows.length * width > MOST_NODES) {
    const words = `more than ${MOST_NODES} grid points. Pass them to surfaceVolumes as points, in metres`;
    reader.fail('TOO_MANY', at, words, { most: MOST_NODES });
    return { rows: [], unit: undefined };
  }
  const read = (item: unknown, place: FieldPath): Length | null => {
    if (item === null) return null;
    const given = unit === undefined ? item : { value: item, unit };
    return reader.quantity('length', given, place, ELEVATION);
  };
  return {
    rows: rows.map((row, r) => row.map((item, c) => read(item, [...at, r, c]))),
    unit: typeof unit === 'string' ? unit : undefined,
  };
}
