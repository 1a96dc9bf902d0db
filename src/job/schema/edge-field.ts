import { choice, number, optional, quantity } from '../../input/field.js';
import { BATTER, DEPTH, ELEVATION } from '../../input/ranges.js';
import { shapeOf, type Field, type Values } from '../../input/shape.js';
import { part } from './part.js';
import type { EdgeKind, JobEdgeInput } from './pavement-input.js';

const KIND = choice<EdgeKind>(['open', 'adjoining', 'restraint', 'slab', 'building']);

const EDGE_SHAPE = shapeOf<JobEdgeInput>()({
  along: KIND,
  batter: optional(number(BATTER)),
  level: optional(quantity(ELEVATION)),
  footing: optional(quantity(DEPTH)),
});

const EDGE = part('JobEdgeInput', EDGE_SHAPE);
const NOTHING_SAID: Field<null> = {
  read: () => null,
  about: { kind: 'custom', schema: { type: 'null' }, items: undefined },
};

/** An edge that has been read. A word alone is its kind. Internal. */
export type Edge = Values<typeof EDGE_SHAPE>;

/** An edge of a pavement: a word, an object, or null if it is not known. Internal. */
export const edgeField: Field<Edge | null> = {
  read: (reader, value, path) => {
    if (value === null) return null;
    const isPart = typeof value === 'object';
    return isPart ? EDGE.read(reader, value, path) : plain(KIND.read(reader, value, path));
  },
  about: { kind: 'either', fields: [KIND, EDGE, NOTHING_SAID] },
};

const plain = (along: EdgeKind): Edge => ({
  along,
  batter: undefined,
  level: undefined,
  footing: undefined,
});
