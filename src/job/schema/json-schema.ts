import type { About, JsonSchemaPart } from '../../input/about.js';
import type { Field, OptionalField, Shape } from '../../input/shape.js';
import { unitsOf, type Dimension } from '../../units/catalogue.js';
import type { QuantityRange } from '../../input/ranges.js';
import type { NumberRule } from '../../input/rule.js';
import { FIELD_TEXTS } from './field-texts.js';
import { JOB } from './job-shape.js';
import { NUMBER_SCHEMA, NUMBER_TEXT_SCHEMA } from './json-parts.js';

/**
 * The job description as a JSON Schema (draft 2020-12), for editors and other languages. Texts,
 * ranges and choices are those of {@link JobInput} and of the reader.
 *
 * @example
 * jobJsonSchema()['type'] //=> 'object'
 */
export function jobJsonSchema(): Record<string, unknown> {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A job of settline',
    ...objectSchema(JOB, 'JobInput'),
  };
}

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
        description: `the number with its unit (${SIGNS[sign]}, no more than ${most.toString()}), such as ${example}`,
      },
      {
        type: 'object',
        properties: { value: NUMBER_SCHEMA, unit: { enum: unitsOf(dimension) } },
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
    ...(example === undefined ? {} : { description: `such as ${example}` }),
  };
  return { anyOf: [number, NUMBER_TEXT_SCHEMA] };
}
