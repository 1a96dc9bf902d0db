import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import type { LengthUnit } from '../units/catalogue.js';
import type { LengthInput } from '../units/construct.js';
import type { NumberInput } from '../units/read-number.js';
import { between } from '../units/vector.js';
import { checkOutline } from './check-outline.js';
import { isDrawable, ORIGIN, readRing, type Around, type ReadRing } from './read-ring.js';
import { edgeCount, type Outline, type Ring } from './ring.js';

export type { Outline, Ring } from './ring.js';

/** An edge that is an arc of a circle. */
export interface ArcInput {
  /** Which edge, counted from 0: edge k runs from point k to the next. */
  readonly edge: number;
  /**
   * Height of the arc over the middle of its chord, + if it bulges outward from the paving (on a
   * hole: into the hole). A bare number has the unit of the points.
   */
  readonly bulgeMiddleOrdinate: Exclude<LengthInput, 0> | NumberInput;
}

/** A closed line: points in order, in one unit or as pairs of lengths. It closes automatically. */
export type RingInput =
  | {
      /** The unit of the points. */
      readonly unit: LengthUnit;
      /** Corners in order; the line closes automatically. */
      readonly points: readonly (readonly [NumberInput, NumberInput])[];
      /** Edges that are arcs. Optional. */
      readonly arcs?: readonly ArcInput[];
    }
  | {
      /** Corners in order; the line closes automatically. */
      readonly points: readonly {
        /** Plan coordinate [length]. */
        readonly x: LengthInput;
        /** Plan coordinate [length]. */
        readonly y: LengthInput;
      }[];
      /** Edges that are arcs. Optional. */
      readonly arcs?: readonly ArcInput[];
    }
  | readonly {
      /** Plan coordinate [length]. */
      readonly x: LengthInput;
      /** Plan coordinate [length]. */
      readonly y: LengthInput;
    }[];

/** A hole: a ring, or points in the unit of the outline. */
export type HoleInput =
  | RingInput
  | readonly (readonly [NumberInput, NumberInput])[]
  | {
      /** Corners in order, in the unit of the outline. */
      readonly points: readonly (readonly [NumberInput, NumberInput])[];
      /** Edges that are arcs. Optional. */
      readonly arcs?: readonly ArcInput[];
    };

/** An outline: a ring, and the holes in it (islands, trees, manholes). */
export type OutlineInput =
  | RingInput
  | (Exclude<RingInput, readonly unknown[]> & {
      /** Holes in the paving, such as islands. Optional. */
      readonly holes?: readonly HoleInput[];
    });

/** How edges, points and holes are counted: from 0, or from 1 as people do. Internal. */
export interface EdgeCount {
  readonly firstEdge?: 0 | 1;
}

/**
 * Reads an outline and checks its shape: no edge without length, no two edges that cross or touch,
 * holes inside and apart from each other. Internal.
 */
export function readOutline(
  reader: Reader,
  value: unknown,
  path: FieldPath,
  { firstEdge = 0 }: EdgeCount = {},
): Outline {
  const before = reader.faults();
  const outer = readRing(reader, value, path, { firstEdge });
  const holes = readHoles(reader, value, path, { firstEdge, ...outer });
  const origin = outer.places[0] ?? ORIGIN;
  const ring = ({ places, bulges }: ReadRing): Ring => ({
    points: places.map((place) => between(origin, place)),
    ...(bulges === undefined ? {} : { bulges }),
  });
  const outline: Outline = { origin, ...ring(outer), holes: holes.map(ring) };
  const paths = [outer, ...holes].map(({ path: own }) => own);
  const count = edgeCount(outline);
  const isRead = outer.places.length > 0 && reader.faults() === before;
  if (isRead && isDrawable(reader, count, path)) {
    checkOutline(reader, outline, { paths, first: firstEdge });
  }
  return outline;
}

function readHoles(reader: Reader, value: unknown, path: FieldPath, outer: Around): ReadRing[] {
  if (typeof value !== 'object' || value === null || !('holes' in value)) return [];
  if (value.holes === undefined) return [];
  const list = Array.isArray(value.holes)
    ? value.holes
    : reader.list(value.holes, [...path, 'holes']);
  return list.map((hole: unknown, index) =>
    readRing(reader, hole, [...path, 'holes', index], outer),
  );
}
