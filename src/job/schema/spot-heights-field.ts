import type { FieldPath } from '../../errors.js';
import { ELEVATION, PLACE } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import type { Field } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import { refuseUnknown } from '../../input/unknown-field.js';
import { unitsOf } from '../../units/catalogue.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { NUMBER_SCHEMA } from './json-parts.js';

/** A spot height that has been read. Internal. */
export interface SpotHeight {
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
  /** Elevation. */
  readonly z: Length;
}

/** More than a crew shoots; scanned sites go to surfaceVolumes. */
const MOST_SPOTS = 5000;

const TRIPLE = { type: 'array', minItems: 3, maxItems: 3, items: NUMBER_SCHEMA };

/** Spot heights of a job. Internal. */
export const spotHeights: Field<readonly SpotHeight[]> = {
  read: (reader, value, path) =>
    Array.isArray(value) ? readList(reader, value, path) : readTable(reader, value, path),
  about: {
    kind: 'custom',
    schema: {
      anyOf: [
        {
          type: 'object',
          properties: {
            unit: { enum: unitsOf('length'), description: 'The unit of all three numbers.' },
            points: { type: 'array', minItems: 3, items: TRIPLE, description: 'x, y, elevation.' },
          },
          required: ['unit', 'points'],
          additionalProperties: false,
        },
        { type: 'array', minItems: 3, items: { type: 'object', required: ['x', 'y', 'z'] } },
      ],
    },
  },
};

const AXES = Object.freeze({ x: PLACE, y: PLACE, z: ELEVATION });

/** Points of three lengths each. */
function readList(reader: Reader, list: readonly unknown[], path: FieldPath): SpotHeight[] {
  return counted(reader, list, path).map((point, index) => {
    const at = [...path, index];
    const fields = reader.object(point, at);
    refuseUnknown(reader, fields, at, AXES);
    const read = (axis: keyof typeof AXES) =>
      reader.quantity('length', fields[axis], [...at, axis], AXES[axis]);
    return { x: read('x'), y: read('y'), z: read('z') };
  });
}

/** Points of three numbers each, all in one unit. */
function readTable(reader: Reader, value: unknown, path: FieldPath): SpotHeight[] {
  const fields = reader.object(value, path);
  refuseUnknown(reader, fields, path, { unit: true, points: true });
  const { unit } = fields;
  if (unit === undefined) {
    reader.fail('UNIT_MISSING', [...path, 'unit'], 'name the unit of the points, "ft" or "m"');
    return [];
  }
  const at = [...path, 'points'];
  return counted(reader, reader.list(fields['points'], at), at).map((point, index) =>
    readTriple(reader, point, { unit, path: [...at, index] }),
  );
}

function readTriple(
  reader: Reader,
  point: unknown,
  { unit, path }: { readonly unit: unknown; readonly path: FieldPath },
): SpotHeight {
  if (!Array.isArray(point) || point.length !== 3) {
    reader.fail('WRONG_TYPE', path, `expected a point [x, y, elevation], got ${shown(point)}`);
    return NOWHERE;
  }
  const read = (axis: 0 | 1 | 2, range: typeof PLACE) =>
    reader.quantity('length', { value: point[axis] as unknown, unit }, [...path, axis], range);
  return { x: read(0, PLACE), y: read(1, PLACE), z: read(2, ELEVATION) };
}

const NOWHERE: SpotHeight = { x: NO_LENGTH, y: NO_LENGTH, z: NO_LENGTH };

function counted(reader: Reader, list: readonly unknown[], path: FieldPath): readonly unknown[] {
  const got = list.length;
  if (got > 0 && got < 3) {
    reader.fail('TOO_FEW', path, `${got} spot heights, a surface needs 3 or more`, {
      least: 3,
      got,
    });
  }
  if (got <= MOST_SPOTS) return list;
  const words = `${got} spot heights, no more than ${MOST_SPOTS} are taken`;
  reader.fail('TOO_MANY', path, words, { most: MOST_SPOTS, got });
  return [];
}
