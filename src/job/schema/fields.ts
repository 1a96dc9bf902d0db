import * as z from 'zod';
import { isSettlineError, type FieldPath } from '../../errors.js';
import { makeReader, type NumberRule, type QuantityRule, type Reader } from '../../input/reader.js';
import { shown } from '../../input/shown.js';
import { unitsOf, type Dimension, type LengthUnit } from '../../units/catalogue.js';
import { length, type LengthInput, type QuantityInput } from '../../units/construct.js';
import type { Decimal } from '../../units/decimal.js';
import type { Length, Quantity } from '../../units/quantity.js';
import type { NumberInput } from '../../units/read-number.js';
import { readOutline, type Outline, type OutlineInput } from '../../outline/read-outline.js';

/** A part of a JSON Schema, for the fields that zod cannot describe by itself. */
type JsonSchemaPart = Readonly<Record<string, unknown>>;

/**
 * A field that one of the library's readers reads: faults keep the reader's code, words and path.
 */
function readField<Out, In>(
  describe: JsonSchemaPart,
  read: (reader: Reader, value: unknown) => Out,
): z.ZodType<Out, In> {
  return z
    .any()
    .meta(describe)
    .transform((value: unknown, context): Out => {
      const reader = makeReader();
      const result = read(reader, value);
      try {
        reader.finish();
      } catch (error) {
        if (!isSettlineError(error)) throw error;
        for (const { code, message, params, path } of error.issues) {
          context.addIssue({ code: 'custom', message, path: [...path], params: { code, params } });
        }
        return z.NEVER;
      }
      return result;
    });
}

const HERE: FieldPath = [];

/** A number in a field: `0.05` or `"0.05"`. */
export const NUMBER_SCHEMA: JsonSchemaPart = {
  anyOf: [{ type: 'number' }, { type: 'string', pattern: '^[+-]?[0-9.]+(/[0-9.]+)?$' }],
};

/** A quantity field: text with its unit, or value and unit. */
export function quantityField<D extends Dimension>(
  dimension: D,
  rule: QuantityRule<D>,
  description: string,
): z.ZodType<Quantity<D>, QuantityInput<D>> {
  const describe = {
    description: `${description} (${dimension}, ${SIGN_WORDS[rule.sign]})`,
    anyOf: [
      { type: 'string', description: 'the number with its unit' },
      {
        type: 'object',
        properties: { value: NUMBER_SCHEMA, unit: { enum: unitsOf(dimension) } },
        required: ['value', 'unit'],
        additionalProperties: false,
      },
    ],
  };
  return readField(describe, (reader, value) => {
    refuseStrangers(reader, value, ['value', 'unit']);
    return reader.quantity(dimension, value, HERE, rule);
  });
}

const SIGN_WORDS = {
  positive: 'more than zero',
  'not-negative': 'zero or more',
  any: 'either sign',
} as const;

/** Refuses keys that a value-and-unit object does not have. */
function refuseStrangers(
  reader: Reader,
  value: unknown,
  known: readonly string[],
  path: FieldPath = HERE,
): void {
  if (typeof value !== 'object' || value === null || 'dimension' in value) return;
  if (Array.isArray(value)) return;
  for (const key of Object.keys(value)) {
    if (known.includes(key)) continue;
    const takes = known.join(known.length > 2 ? ', ' : ' and ');
    reader.fail('UNKNOWN_FIELD', [...path, key], `unknown field; this object takes ${takes}`);
  }
}

/** A plain number field. */
export function numberField(
  rule: NumberRule,
  description: string,
): z.ZodType<Decimal, NumberInput> {
  return readField({ ...NUMBER_SCHEMA, description }, (reader, value) =>
    reader.number(value, HERE, rule),
  );
}

/** A number field that another reader checks. */
export function checkedNumberField(
  read: (reader: Reader, value: unknown, path: FieldPath) => Decimal,
  description: string,
): z.ZodType<Decimal, NumberInput> {
  return readField({ ...NUMBER_SCHEMA, description }, (reader, value) => read(reader, value, HERE));
}

/** A short name or id: one line, up to 60 characters. */
export function nameField(description: string): z.ZodType<string, string> {
  return readField(
    { type: 'string', minLength: 1, maxLength: 60, description },
    (reader, value) => {
      const text = reader.text(value, HERE);
      if (text.length > 60) reader.fail('TOO_LONG', HERE, 'more than 60 characters');
      if (/[\u0000-\u001f\u007f]/.test(text)) {
        reader.fail(
          'BAD_CHARACTER',
          HERE,
          'line breaks and control characters have no place in a name',
        );
      }
      return text;
    },
  );
}

const OUTLINE_FIELDS = ['unit', 'points', 'arcs', 'holes'] as const;
const HOLE_FIELDS = ['unit', 'points', 'arcs'] as const;

/** An outline field. */
export function outlineField(description: string): z.ZodType<Outline, OutlineInput> {
  const describe = { description, anyOf: [RING_SCHEMA, POINT_LIST_SCHEMA] };
  return readField(describe, (reader, value) => {
    refuseStrangers(reader, value, OUTLINE_FIELDS);
    refuseStrangersInArcs(reader, value, []);
    partsOf(value, 'holes').forEach((hole, index) => {
      refuseStrangers(reader, hole, HOLE_FIELDS, ['holes', index]);
      refuseStrangersInArcs(reader, hole, ['holes', index]);
    });
    return readOutline(reader, value, HERE);
  });
}

function refuseStrangersInArcs(reader: Reader, value: unknown, path: FieldPath): void {
  partsOf(value, 'arcs').forEach((arc, index) => {
    refuseStrangers(reader, arc, ['edge', 'bulgeMiddleOrdinate'], [...path, 'arcs', index]);
  });
}

/** A list in a field of an object; nothing where there is none. */
function partsOf(value: unknown, name: string): readonly unknown[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  const list = (value as Record<string, unknown>)[name];
  return Array.isArray(list) ? list : [];
}

const PAIRS_SCHEMA: JsonSchemaPart = {
  type: 'array',
  minItems: 3,
  items: { type: 'array', minItems: 2, maxItems: 2, items: NUMBER_SCHEMA },
};

const POINT_LIST_SCHEMA: JsonSchemaPart = {
  type: 'array',
  minItems: 3,
  items: { type: 'object', required: ['x', 'y'] },
};

const ARCS_SCHEMA: JsonSchemaPart = {
  type: 'array',
  items: {
    type: 'object',
    required: ['edge', 'bulgeMiddleOrdinate'],
    additionalProperties: false,
    properties: { edge: { type: 'integer', minimum: 0 }, bulgeMiddleOrdinate: {} },
  },
};

const RING_SCHEMA: JsonSchemaPart = {
  type: 'object',
  properties: {
    unit: { enum: unitsOf('length') },
    points: { anyOf: [PAIRS_SCHEMA, POINT_LIST_SCHEMA] },
    arcs: ARCS_SCHEMA,
    holes: {
      type: 'array',
      items: { anyOf: [{ type: 'object' }, PAIRS_SCHEMA, POINT_LIST_SCHEMA] },
    },
  },
  required: ['points'],
  additionalProperties: false,
};

/** A spot height that has been read. Internal. */
export interface SpotHeight {
  readonly x: Length;
  readonly y: Length;
  readonly z: Length;
}

/** Spot heights as they are written: all in one unit, or of three lengths each. */
export type SpotHeightsInput =
  | {
      readonly unit: LengthUnit;
      readonly points: readonly (readonly [NumberInput, NumberInput, NumberInput])[];
    }
  | readonly { readonly x: LengthInput; readonly y: LengthInput; readonly z: LengthInput }[];

/** More than a crew shoots; scanned sites go to surfaceVolumes. */
const MOST_SPOTS = 5000;

/** A field of spot heights. */
export function spotHeightsField(
  description: string,
): z.ZodType<readonly SpotHeight[], SpotHeightsInput> {
  const triple = { type: 'array', minItems: 3, maxItems: 3, items: NUMBER_SCHEMA };
  const describe = {
    description: `${description} (x, y and elevation; three points or more)`,
    anyOf: [
      {
        type: 'object',
        properties: {
          unit: { enum: unitsOf('length') },
          points: { type: 'array', minItems: 3, items: triple },
        },
        required: ['unit', 'points'],
        additionalProperties: false,
      },
      { type: 'array', minItems: 3, items: { type: 'object', required: ['x', 'y', 'z'] } },
    ],
  };
  return readField(describe, (reader, value) => {
    if (Array.isArray(value)) {
      return counted(reader, value, HERE).map((point, index) => {
        refuseStrangers(reader, point, ['x', 'y', 'z'], [index]);
        const { x, y, z: level } = reader.object(point, [index]);
        return readSpot(
          reader,
          [x, y, level],
          [
            [index, 'x'],
            [index, 'y'],
            [index, 'z'],
          ],
        );
      });
    }
    refuseStrangers(reader, value, ['unit', 'points']);
    const { unit, points } = reader.object(value, HERE);
    if (unit === undefined) reader.fail('UNIT_MISSING', ['unit'], 'name the unit of the points');
    const list = reader.list(points, ['points']);
    return counted(reader, list, ['points']).map((point, index) => {
      const path = ['points', index];
      if (!Array.isArray(point) || point.length !== 3) {
        reader.fail('WRONG_TYPE', path, `expected a point [x, y, elevation], got ${shown(point)}`);
        return NOWHERE;
      }
      const given = point.map((one: unknown) => ({ value: one, unit }));
      return readSpot(
        reader,
        given,
        [0, 1, 2].map((axis) => [...path, axis]),
      );
    });
  });
}

const NOWHERE: SpotHeight = { x: length(0, 'm'), y: length(0, 'm'), z: length(0, 'm') };

function counted(reader: Reader, list: readonly unknown[], path: FieldPath): readonly unknown[] {
  if (list.length < 3) {
    reader.fail('TOO_FEW_POINTS', path, 'a surface needs three spot heights or more');
  }
  if (list.length <= MOST_SPOTS) return list;
  reader.fail('CAPACITY_EXCEEDED', path, `more than ${MOST_SPOTS} spot heights`, {
    most: MOST_SPOTS,
  });
  return [];
}

const SPOT_PLACE: QuantityRule<'length'> = { sign: 'any', most: length(100_000, 'km') };
const SPOT_LEVEL: QuantityRule<'length'> = { sign: 'any', most: length(10_000, 'm') };

function readSpot(
  reader: Reader,
  [x, y, level]: readonly unknown[],
  [atX = HERE, atY = HERE, atZ = HERE]: readonly FieldPath[],
): SpotHeight {
  return {
    x: reader.quantity('length', x, atX, SPOT_PLACE),
    y: reader.quantity('length', y, atY, SPOT_PLACE),
    z: reader.quantity('length', level, atZ, SPOT_LEVEL),
  };
}
