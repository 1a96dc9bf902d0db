import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import { edgeCount } from '../../outline/ring.js';
import type { PartPavement } from './part-job.js';

type PartEdges = NonNullable<PartPavement['edges']>;

/** Checks that every edge has one entry with fields of its kind, and that a border names edges of the outline. Internal. */
export function checkEdges(
  reader: Reader,
  { edges, outline, border }: PartPavement,
  path: FieldPath,
): void {
  edges?.forEach((edge, index) => {
    checkEdge(reader, edge, [...path, 'edges', index]);
  });
  if (outline === undefined) return;
  const count = edgeCount(outline);
  if (edges !== undefined && edges.length !== count) {
    const listed = edges.length === 1 ? '1 edge is' : `${edges.length} edges are`;
    const message = `${listed} listed for an outline of ${count}. List one for each: edge 1 runs from the first point to the second`;
    const params = { edges: count, got: edges.length };
    reader.fail('COUNT_MISMATCH', [...path, 'edges'], message, params);
  }
  border?.edges?.forEach((edge, index) => {
    if (edge === undefined || edge <= count) return;
    const message = `the outline has no edge ${edge}. Count its ${count} edges from 1`;
    reader.fail('OUT_OF_RANGE', [...path, 'border', 'edges', index], message, {
      most: count,
      got: edge,
    });
  });
}

/** Kinds of edge that each field applies to. */
const ABOUT = {
  batter: ['open'],
  level: ['slab', 'building'],
  footing: ['building'],
} as const;

function checkEdge(reader: Reader, edge: PartEdges[number], path: FieldPath): void {
  const along = edge?.along;
  if (edge === undefined || edge === null || along === undefined) return;
  for (const name of ['batter', 'level', 'footing'] as const) {
    const kinds: readonly string[] = ABOUT[name];
    if (edge[name] === undefined || kinds.includes(along)) continue;
    const message = `this edge is along ${along}; the field is only for ${kinds.join(' or ')}. Remove it`;
    reader.fail('CONFLICTING_FIELDS', [...path, name], message);
  }
}
