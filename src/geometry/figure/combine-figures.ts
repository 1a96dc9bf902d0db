import type { Combined } from './combined.js';
import type { Box } from '../bounds.js';
import { boundOf, type Bound, type FigureEdge, type Spot } from './bound.js';
import { chainPieces } from './chain-pieces.js';
import { cutEdges, type Node, type Piece } from './pieces.js';
import { sortRings } from './sort-rings.js';
import { isInside } from './winding.js';

/** A figure in the plane: closed rings of edges in order, with the figure on their left. Internal. */
export type Figure = readonly (readonly FigureEdge[])[];

/** A stretch of an edge on the boundary of combined figures; it ends where the next starts. Internal. */
export interface Stretch {
  /** The edge, counted through all figures and their rings. */
  readonly edge: number;
  /** Start of the stretch: an end of an edge, or a crossing of two. */
  readonly node: Node;
}

/** A closed line with the figure on its left. Internal. */
export type Outlining = readonly Stretch[];

/**
 * The union (`any`) or the intersection (`all`) of several figures. Arcs stay arcs. Every edge is cut
 * where it meets edges of other figures. A stretch is kept if it has covered ground on its left and
 * none on its right. Edges that run along each other bound nothing if there is a figure on either side
 * of them. No chords and no grid are used; a gap narrower than 1e-11 of the farthest coordinate may
 * close. A crossing is good to about 1e-15 of the coordinates over the sine of the angle, and an area
 * made from crossings to about 1e-14 of the box around the figures. Each stretch names the edges it
 * comes from, so the caller can place it exactly. Time: n log n, plus one step for each pair of edges
 * with boxes that overlap, plus one for each stretch and each edge of a figure whose box it is in.
 * Internal.
 *
 * @returns undefined if the lines do not close
 */
export function combineFigures(
  figures: readonly Figure[],
  covered: 'any' | 'all',
): readonly Combined[] | undefined {
  const { bounds, next } = gather(figures);
  const { pieces, nodes, near } = cutEdges(bounds, next);
  const kept = keep({ pieces, bounds, near }, covered, figures.length);
  const rings = chainPieces(kept, { bounds, nodes });
  return rings && sortRings(rings, { bounds, nodes, near });
}

function gather(figures: readonly Figure[]) {
  const bounds: Bound[] = [];
  const next: number[] = [];
  figures.forEach((rings, figure) => {
    for (const ring of rings) {
      const first = bounds.length;
      ring.forEach((edge, index) => {
        next.push(index + 1 < ring.length ? bounds.length + 1 : first);
        bounds.push(boundOf(edge, figure, bounds.length));
      });
    }
  });
  return { bounds, next };
}

interface Cut {
  readonly pieces: readonly Piece[];
  readonly bounds: readonly Bound[];
  readonly near: number;
}

/**
 * The stretches with covered ground on their left and none on their right, each once. At a node where
 * no other figure has an edge, nothing changes along the line.
 */
function keep({ pieces, bounds, near }: Cut, covered: 'any' | 'all', count: number): Piece[] {
  const figureOf = ({ bound }: Piece): number => bounds[bound]?.figure ?? 0;
  const isAlone = nodesOfOne(pieces, figureOf);
  const bounding = boundingTest({ pieces, bounds, near }, covered, count);
  const kept: Piece[] = [];
  let before: Piece | undefined;
  let isKept = false;
  for (const piece of pieces) {
    const goesOn = before?.to === piece.from && isAlone(piece.from);
    if (!goesOn) isKept = bounding(piece);
    if (isKept) kept.push(piece);
    before = piece;
  }
  return kept;
}

/** Finds the nodes at which only one figure has edges. */
function nodesOfOne(
  pieces: readonly Piece[],
  figureOf: (piece: Piece) => number,
): (node: number) => boolean {
  const owners = new Map<number, number>();
  for (const piece of pieces) {
    const own = figureOf(piece);
    const owner = owners.get(piece.from) ?? own;
    owners.set(piece.from, owner === own ? own : -1);
  }
  return (node) => owners.get(node) !== -1;
}

function boundingTest({ pieces, bounds, near }: Cut, covered: 'any' | 'all', count: number) {
  const edgesOf = Array.from({ length: count }, (_, figure) =>
    bounds.filter((bound) => bound.figure === figure),
  );
  const boxes = edgesOf.map(boxRound);
  const figureOf = ({ bound }: Piece): number => bounds[bound]?.figure ?? 0;
  const beside = besideEachOther(pieces, near);
  return (piece: Piece): boolean => {
    const own = figureOf(piece);
    const along = beside(piece);
    for (let figure = 0; figure < count; figure += 1) {
      if (figure === own) continue;
      const other = along.find((candidate) => figureOf(candidate) === figure);
      const isSameWay = other?.from === piece.from;
      if (other !== undefined && isSameWay && figure < own) return false;
      const isWithin =
        other === undefined &&
        isIn(boxes[figure], piece.middle) &&
        isInside(edgesOf[figure] ?? [], piece.middle);
      const isRightCovered = isWithin || (other !== undefined && !isSameWay);
      const isLeftCovered = isWithin || isSameWay;
      if (covered === 'any' ? isRightCovered : !isLeftCovered) return false;
    }
    return true;
  };
}

const boxRound = (bounds: readonly Bound[]): Box => ({
  west: bounds.reduce((least, { box }) => Math.min(least, box.west), Infinity),
  south: bounds.reduce((least, { box }) => Math.min(least, box.south), Infinity),
  east: bounds.reduce((most, { box }) => Math.max(most, box.east), -Infinity),
  north: bounds.reduce((most, { box }) => Math.max(most, box.north), -Infinity),
});

const isIn = (box: Box | undefined, { x, y }: Spot): boolean =>
  box !== undefined && box.west <= x && x <= box.east && box.south <= y && y <= box.north;

/** Finds the pieces that run between the same nodes along the same path. */
function besideEachOther(pieces: readonly Piece[], near: number) {
  const keyOf = ({ from, to }: Piece) => (from < to ? `${from} ${to}` : `${to} ${from}`);
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const group = groups.get(keyOf(piece));
    if (group === undefined) groups.set(keyOf(piece), [piece]);
    else group.push(piece);
  }
  return (piece: Piece): readonly Piece[] => {
    const { x, y } = piece.middle;
    return (groups.get(keyOf(piece)) ?? []).filter(({ middle }) => {
      const far = Math.max(Math.abs(middle.x - x), Math.abs(middle.y - y));
      return far <= SIDE_BY_SIDE * near;
    });
  };
}

/** Stretches between the same nodes are one if their middles are within this many times `near`. */
const SIDE_BY_SIDE = 4;
