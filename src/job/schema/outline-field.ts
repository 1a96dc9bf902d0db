import type { JsonSchemaPart } from '../../input/about.js';
import type { Field } from '../../input/shape.js';
import { readOutline, type Outline } from '../../outline/read-outline.js';
import { LENGTH_UNIT_SCHEMA, NUMBER_SCHEMA } from './json-parts.js';

/** The schema of an object with required and optional fields. */
const fields = (
  required: Readonly<Record<string, JsonSchemaPart>>,
  more: Readonly<Record<string, JsonSchemaPart>> = {},
): JsonSchemaPart => ({
  type: 'object',
  properties: { ...required, ...more },
  required: Object.keys(required),
  additionalProperties: false,
});

const PLACE = { description: 'Plan coordinate with its unit.' };
const POINTS = { type: 'array', minItems: 3, items: fields({ x: PLACE, y: PLACE }) };
const PAIRS = {
  type: 'array',
  minItems: 3,
  items: { type: 'array', minItems: 2, maxItems: 2, items: NUMBER_SCHEMA },
};

const ARC = fields({
  edge: {
    type: 'integer',
    minimum: 1,
    description: 'Number of the edge that is an arc, counted from 1.',
  },
  bulgeMiddleOrdinate: {
    description:
      'Height of the arc over the middle of its chord, + outward from the paving. A bare number takes the unit of the points.',
  },
});

const ringOf = (points: JsonSchemaPart, more: Readonly<Record<string, JsonSchemaPart>> = {}) =>
  fields(
    { points: { ...points, description: 'Corners in order around the paving.' } },
    {
      unit: { ...LENGTH_UNIT_SCHEMA, description: 'Unit of the points.' },
      arcs: { type: 'array', items: ARC, description: 'Edges that are arcs. Optional.' },
      ...more,
    },
  );

const RING_POINTS = { anyOf: [PAIRS, POINTS] };
const HOLES = {
  type: 'array',
  items: { anyOf: [ringOf(RING_POINTS), PAIRS, POINTS] },
  description: 'Islands left in the paving. Optional.',
};

/** An outline of a job. Its edges count from 1, as on the sheet. Internal. */
export const outlineField: Field<Outline> = {
  read: (reader, value, path) => readOutline(reader, value, path, { firstEdge: 1 }),
  about: {
    kind: 'custom',
    schema: { anyOf: [ringOf(RING_POINTS, { holes: HOLES }), POINTS] },
    items: undefined,
  },
};
