import type { JsonSchemaPart } from '../../input/about.js';
import type { Field } from '../../input/shape.js';
import { readOutline, type Outline } from '../../outline/read-outline.js';
import { unitsOf } from '../../units/catalogue.js';
import { NUMBER_SCHEMA } from './json-parts.js';

const PAIRS: JsonSchemaPart = {
  type: 'array',
  minItems: 3,
  items: { type: 'array', minItems: 2, maxItems: 2, items: NUMBER_SCHEMA },
};

const POINTS: JsonSchemaPart = {
  type: 'array',
  minItems: 3,
  items: { type: 'object', required: ['x', 'y'] },
};

const ARCS: JsonSchemaPart = {
  type: 'array',
  items: {
    type: 'object',
    required: ['edge', 'bulgeMiddleOrdinate'],
    additionalProperties: false,
    properties: {
      edge: { type: 'integer', minimum: 0, description: 'The edge that is an arc.' },
      bulgeMiddleOrdinate: {
        description: 'Height of the arc over the middle of its chord, + outward from the paving.',
      },
    },
  },
};

const RING: JsonSchemaPart = {
  type: 'object',
  properties: {
    unit: { enum: unitsOf('length'), description: 'The unit of the points.' },
    points: { anyOf: [PAIRS, POINTS], description: 'Corners in order round the paving.' },
    arcs: { ...ARCS, description: 'Edges that are arcs. Optional.' },
    holes: {
      type: 'array',
      items: { anyOf: [{ type: 'object' }, PAIRS, POINTS] },
      description: 'Islands left in the paving. Optional.',
    },
  },
  required: ['points'],
  additionalProperties: false,
};

/** An outline of a job. Internal. */
export const outlineField: Field<Outline> = {
  read: readOutline,
  about: { kind: 'custom', schema: { anyOf: [RING, POINTS] } },
};
