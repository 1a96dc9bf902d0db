import type { About, JsonSchemaPart } from '../../input/about.js';
import type { Field, OptionalField, Shape } from '../../input/shape.js';
import { unitsOf, type Dimension } from '../../units/catalogue.js';
import type { QuantityRange } from '../../input/ranges.js';
import type { NumberRule } from '../../input/rule.js';
import { FIELD_TEXTS } from './field-texts.js';
import { fieldTitle } from './field-title.js';
import { JOB } from './job-shape.js';
import { NUMBER_SCHEMA, NUMBER_TEXT_SCHEMA } from './json-parts.js';
import { unitPattern } from './unit-pattern.js';

/**
 * Returns the JSON Schema (draft 2020-12) of a job file, for editors and other languages. Texts, ranges
 * and choices are those of {@link JobInput} and of the reader. The package contains it as
 * `job.schema.json`, and a job file may name that in `$schema`.
 *
 * @example
 * jobJsonSchema()['type'] //=> 'object'
 */
export function jobJsonSchema(): Record<string, unknown> {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'job.schema.json',
    title: 'settline job',
    ...withTitles(objectSchema(JOB, 'JobInput')),
  };
}

/** Adds a title to every property, at every depth. */
function withTitles(schema: JsonSchemaPart): JsonSchemaPart {
  return mapValues(schema, (key, value) =>
    key === 'properties' && isPart(value) ? mapValues(value, titled) : deeper(value),
  );
}

function titled(key: string, value: unknown): unknown {
  return isPart(value) ? { title: fieldTitle(key), ...withTitles(value) } : value;
}

function deeper(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(deeper);
  return isPart(value) ? withTitles(value) : value;
}

const isPart = (value: unknown): value is JsonSchemaPart =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const mapValues = (
  part: JsonSchemaPart,
  change: (key: string, value: unknown) => unknown,
): JsonSchemaPart =>
  Object.fromEntries(Object.entries(part).map(([key, value]) => [key, change(key, value)]));

function objectSchema(shape: Shape, name: string | undefined): JsonSchemaPart {
  const texts = FIELD_TEXTS[name ?? ''] ?? {};
  const entries = Object.entries(shape);
  return {
    type: 'object',
    properties: Object.fromEntries(
      entries.map(([key, field]) => [key, described(schemaOf(field), texts[key])]),
    ),
    required: entries.flatMap(([key, field]) => (field.isOptional === true ? [] : [key])),
    additionalProperties: false,
  };
}

const described = (schema: JsonSchemaPart, text: string | undefined): JsonSchemaPart =>
  text === undefined ? schema : { description: text, ...schema };

function schemaOf({ about }: Field<unknown> | OptionalField<unknown>): JsonSchemaPart {
  return about === undefined ? {} : partOf(about);
}

function partOf(about: About): JsonSchemaPart {
  switch (about.kind) {
    case 'quantity':
      return quantitySchema(about.range);
    case 'number':
    case 'whole':
      return numberSchema(about.rule, about.kind === 'whole');
    case 'flag':
      return { type: 'boolean' };
    case 'choice':
      return { enum: about.choices };
    case 'text':
      return { type: 'string', minLength: 1, maxLength: about.most };
    case 'object':
      return objectSchema(about.shape, about.name);
    case 'list': {
      const { least = 1, most } = about.rule;
      const size = { minItems: least, ...(most === undefined ? {} : { maxItems: most }) };
      return { type: 'array', ...size, items: schemaOf(about.item) };
    }
    case 'either':
      return { anyOf: about.fields.map(schemaOf) };
    case 'custom':
      return about.items === undefined
        ? about.schema
        : { ...about.schema, items: schemaOf(about.items) };
  }
}

const SIGNS = { positive: 'more than zero', 'not-negative': 'zero or more', any: 'either sign' };

function quantitySchema({ dimension, sign, most, example }: QuantityRange<Dimension>) {
  return {
    anyOf: [
      {
        type: 'string',
        pattern: unitPattern(dimension),
        description: `A number with its unit (${SIGNS[sign]}, maximum ${most.toString()}), such as ${example}.`,
      },
      {
        type: 'object',
        properties: {
          value: { description: 'The number.', ...NUMBER_SCHEMA },
          unit: { description: 'Unit of the number.', enum: unitsOf(dimension) },
        },
        required: ['value', 'unit'],
        additionalProperties: false,
      },
      { const: 0 },
    ],
  };
}

function numberSchema({ sign, least, most, example }: NumberRule, isWhole: boolean) {
  const from = sign === 'positive' ? { exclusiveMinimum: 0 } : { minimum: 0 };
  const low = least === undefined ? (sign === 'any' ? {} : from) : { minimum: least };
  const number = {
    type: isWhole ? 'integer' : 'number',
    ...low,
    ...(most === undefined ? {} : { maximum: most }),
    ...(example === undefined ? {} : { description: `Such as ${example}.` }),
  };
  return { anyOf: [number, NUMBER_TEXT_SCHEMA] };
}
