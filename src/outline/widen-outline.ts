import { known } from '../invariant.js';
import { fault, type FieldPath } from '../errors.js';
import { exactlyOne } from '../input/exactly-one.js';
import { choice, custom, list, optional, quantity } from '../input/field.js';
import { SET_BACK } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Area, type Length } from '../units/quantity.js';
import { signOfRatio } from '../units/ratio.js';
import { pointFrom, type PlanPoint } from '../units/vector.js';
import { given, procedureStep, withWorking, type Worked } from '../working.js';
import { chordsOf } from './chords.js';
import type { Corners } from './corner.js';
import { crossingEdges } from './crossing-edges.js';
import { doubleArea } from './double-area.js';
import { moveEdges, ringOfMoved, type Move, type MovedEdge } from './moved-ring.js';
import { areaOf } from './outline-area.js';
import { readOutline, type Outline, type OutlineInput } from './read-outline.js';
import { resolveOutline } from './resolve-outline.js';
import { edgeCount, ringsOf, type Ring } from './ring.js';

/** An outline and the distances by which its edges move out. */
export interface WidenOutlineOptions {
  /** Outline of the paving, as in `outlineArea`; it may have arcs and holes. */
  readonly outline: OutlineInput;
  /** Distance for every edge [length], 0 to 100 m; or give `perEdge`. */
  readonly by?: LengthInput;
  /**
   * A distance for each edge [length], 0 to 100 m; or give `by`. Edge k runs from point k to the next.
   * The edges of the holes follow in order.
   */
  readonly perEdge?: readonly LengthInput[];
  /** Shape of the corners. Default: `mitred`. */
  readonly corners?: Corners;
}

const OPTIONS = shapeOf<WidenOutlineOptions>()({
  outline: custom(readOutline),
  by: optional(quantity(SET_BACK)),
  perEdge: optional(list(quantity(SET_BACK), { of: 'distances' })),
  corners: optional(choice(['mitred', 'round']), 'mitred'),
});

const distancesMatch: Check<typeof OPTIONS> = (reader, { outline, perEdge }, path, raw) => {
  exactlyOne(reader, raw, ['by', 'perEdge'], path);
  if (outline === undefined || perEdge === undefined) return;
  const [edges, got] = [edgeCount(outline), perEdge.length];
  if (got === edges) return;
  const message = `${got === 1 ? '1 distance' : `${got} distances`} for ${edges} edges. Give one for each`;
  reader.fail('COUNT_MISMATCH', ['perEdge'], message, { expected: edges, got });
};

/** An edge of a widened outline that is an arc. */
export interface WidenedArc {
  /** The edge, counted from 0. */
  readonly edge: number;
  /** Height of the arc over the middle of its chord, + if it bulges outward from the paving. */
  readonly bulgeMiddleOrdinate: Length;
}

/** A hole in a widened outline: what remains of a hole, or a gap that closes in. */
export interface WidenedHole {
  /** Its corners in order. */
  readonly points: readonly PlanPoint[];
  /** Its edges that are arcs. */
  readonly arcs: readonly WidenedArc[];
}

/** A widened outline and its area. */
export interface WidenedOutline extends Worked {
  /** Corners of the outer edge, in order. */
  readonly outline: readonly PlanPoint[];
  /** Edges of the outer edge that are arcs. */
  readonly arcs: readonly WidenedArc[];
  /** Holes that remain, and gaps that close in. */
  readonly holes: readonly WidenedHole[];
  /** Area, without the holes. */
  readonly area: Area;
  /** True if edges have vanished or parts have run together, such as a notch that closes. */
  readonly closesUp: boolean;
  /**
   * Corners so sharp that the mitre reaches more than ten widths out: cut it off, or round it.
   * Corner k is at the start of edge k; the corners of the holes follow.
   */
  readonly longMitres: readonly number[];
}

/**
 * Moves the edges of an outline outward, each by its own distance. Every edge moves square to itself,
 * and the corners are filled in:
 *
 * - Mitred: neighbours are extended, or cut back, to the point where they meet, so nothing reaches past
 *   the line of an edge that does not move. For one distance d all round,
 *   `A' = A + P d + d^2 sum(tan(turn / 2))`. `longMitres` lists each corner whose mitre reaches more
 *   than ten times the larger of its two distances from the old corner.
 * - Round: convex corners are arcs about the old corner unless the edges are cut back. For a convex
 *   outline `A' = A + P d + pi d^2`.
 *
 * If neighbours in one line, or almost, move by different distances, there is a step between them.
 * Holes get smaller. If edges vanish or the outline runs into itself (a notch narrower than twice the
 * distance, a small island), the swept strips are united and the notch closes.
 *
 * Straight outlines with mitred corners are always exact, but gaps narrower than 1/60 000 000 of the
 * outline may close too. Arcs and round corners are kept to 40 digits; an arc that ends within a
 * millimetre of its corner is extended to it. If something closes up, arcs become chords within
 * 1/80 000 of the radius.
 *
 * @param options - see {@link WidenOutlineOptions}
 * @returns the moved points, arcs and holes, and the area they enclose
 * @throws `COUNT_MISMATCH`, `CONFLICTING_FIELDS`, `NEGATIVE`, `OUT_OF_RANGE`, `OUTLINE_UNRESOLVED` and
 *   the codes of {@link outlineArea}
 * @source derived
 * @example
 * const triangle = { unit: 'm', points: [[0, 0], [3, 0], [0, 4]] } as const;
 * widenOutline({ outline: triangle, by: '1 m' }).area.to('m2').toString() //=> '24'
 * const round = widenOutline({ outline: triangle, by: '1 m', corners: 'round' });
 * round.area.to('m2').toFixed(12) //=> (6 + 12 + Math.PI).toFixed(12)
 */
export function widenOutline(options: WidenOutlineOptions): WidenedOutline {
  const { outline, by, perEdge, corners } = readOptions(options, OPTIONS, distancesMatch);
  const distances =
    perEdge ?? Array.from({ length: edgeCount(outline) }, () => known(by, 'distance'));
  return widenRead(outline, { distances, corners, path: ['outline'] });
}

/** Widens an outline that has been read, corners mitred. Internal. */
export const widen = (
  outline: Outline,
  distances: readonly Length[],
  path: FieldPath,
): WidenedOutline => widenRead(outline, { distances, corners: 'mitred', path });

interface Widening {
  /** Distance of each edge, outer ring first, then the holes. */
  readonly distances: readonly Length[];
  readonly corners: Corners;
  readonly path: FieldPath;
}

/** Widens an outline that has been read. Internal. */
export function widenRead(
  outline: Outline,
  { distances, corners, path }: Widening,
): WidenedOutline {
  let edges = 0;
  const moves = ringsOf(outline).map((ring, index): Move => {
    const own = distances.slice(edges, (edges += ring.points.length)).map(exactOf);
    return { ring, isHole: index > 0, distances: own, corners };
  });
  const made = moves.map(moveEdges);
  const simple = simplyMoved(made);
  if (simple === undefined) refuseInward(made, path);
  const [outer = outline, ...holes] = simple ?? resolved(moves, made, path);
  const widened: Outline = { origin: outline.origin, holes, ...outer };
  const area = areaOf(widened);
  const fields = {
    outline: placesOf(outline, outer),
    arcs: arcsOf(outer),
    holes: holesOf(widened),
    area,
    closesUp: simple === undefined,
    longMitres: made.flat().flatMap(({ corner }, index) => (corner.isLong ? [index] : [])),
  };
  return withWorking(fields, () => [
    procedureStep({
      title: 'Area of the widened outline',
      procedure: 'widenOutline',
      method: `Moves each edge of the outline out by its distance, with ${corners} corners, drops what closes up, and returns the area inside.`,
      given: [
        given('A', 'area before', areaOf(outline)),
        given('d', 'distance out of each edge, in order', distances),
      ],
      result: given('Aw', 'area after', area),
      source: 'derived',
    }),
  ]);
}

type MovedEdges = readonly MovedEdge[];

/** The moved rings if every edge keeps its direction and nothing crosses; else undefined. */
function simplyMoved(made: readonly MovedEdges[]): readonly Ring[] | undefined {
  const isKept = made.every((edges) => edges.every((edge) => !edge.vanishes && edge.isClean));
  if (!isKept) return undefined;
  const rings = made.map(ringOfMoved);
  const chords = rings.map((ring, index) => chordsOf(ring, index > 0).points);
  return crossingEdges(chords) === undefined ? rings : undefined;
}

/** The library also moves edges inward (a border). An outline that then closes up is refused. */
function refuseInward(made: readonly MovedEdges[], path: FieldPath): void {
  const edges = made.flat();
  if (!edges.some(({ start }) => signOfRatio(start.distance) < 0)) return;
  const edge = edges.findIndex(({ vanishes }) => vanishes);
  const params = edge < 0 ? {} : { edge };
  throw fault(
    'SELF_INTERSECTION',
    'the edges run into each other when they are moved',
    params,
    path,
  );
}

/** Outer ring and holes of the united figure. */
function resolved(
  moves: readonly Move[],
  made: readonly MovedEdges[],
  path: FieldPath,
): readonly Ring[] {
  const rings = resolveOutline(moves, made)?.map((points): Ring => ({ points }));
  const outer = rings?.filter(({ points }) => signOfRatio(doubleArea(points)) > 0) ?? [];
  const holes = rings?.filter(({ points }) => signOfRatio(doubleArea(points)) < 0) ?? [];
  // a widened outline is in one piece, so one ring goes around it
  if (outer.length !== 1) {
    throw fault(
      'OUTLINE_UNRESOLVED',
      'the widened outline could not be worked out. Widen by less, or enter the dig line by hand',
      {},
      path,
    );
  }
  return [...outer, ...holes];
}

/** The holes of a moved outline. Internal. */
export const holesOf = (outline: Outline): WidenedHole[] =>
  outline.holes.map((hole) => ({ points: placesOf(outline, hole), arcs: arcsOf(hole) }));

/** The points of a ring in plan coordinates. Internal. */
export const placesOf = ({ origin }: Outline, { points }: Ring): PlanPoint[] =>
  points.map((point) => pointFrom(origin, point));

/** The arcs of a moved ring. Internal. */
export const arcsOf = ({ bulges = [] }: Ring): WidenedArc[] =>
  bulges.flatMap((bulge, edge) =>
    bulge === undefined ? [] : [{ edge, bulgeMiddleOrdinate: fromSI('length', bulge) }],
  );
