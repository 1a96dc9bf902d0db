import { boundOf, doubleAreaUnder, riseOf, type Bound } from './bound.js';
import type { Combined } from './combined.js';
import type { Node, Piece } from './pieces.js';
import { isInside } from './winding.js';

interface Ground {
  readonly bounds: readonly Bound[];
  readonly nodes: readonly Node[];
  readonly near: number;
}

interface Measured {
  readonly ring: readonly Piece[];
  readonly bounds: readonly Bound[];
  /** Twice the area, negative for a hole. */
  readonly double: number;
}

/**
 * Puts every hole into the smallest figure around it. Lines that enclose less than a strip as wide as
 * the distance within which two points count as one are left out. Internal.
 */
export function sortRings(
  rings: readonly (readonly Piece[])[],
  ground: Ground,
): readonly Combined[] {
  const measured = rings
    .map((ring) => measure(ring, ground))
    .filter(({ double, bounds }) => Math.abs(double) > ground.near * lengthOf(bounds));
  const outer = measured
    .filter(({ double }) => double > 0)
    .map((one) => ({ holes: [] as Measured[], ...one }));
  for (const hole of measured.filter(({ double }) => double < 0)) {
    const place = hole.ring[0]?.middle ?? { x: 0, y: 0 };
    const round = outer.filter(({ bounds }) => isInside(bounds, place));
    round.sort((a, b) => a.double - b.double)[0]?.holes.push(hole);
  }
  const named = ({ ring }: Measured) =>
    ring.map(({ bound, from }) => ({ edge: bound, node: ground.nodes[from] ?? { x: 0, y: 0 } }));
  return outer.map((one) => ({ outer: named(one), holes: one.holes.map(named) }));
}

function measure(ring: readonly Piece[], { bounds, nodes }: Ground): Measured {
  const own = ring.flatMap((piece, index) => {
    const [edge, from, to] = [bounds[piece.bound], nodes[piece.from], nodes[piece.to]];
    if (edge === undefined || from === undefined || to === undefined) return [];
    const bulge = riseOf(edge, [from, to], piece.endShare - piece.startShare);
    return [boundOf({ from, to, bulge }, 0, index)];
  });
  const double = own.reduce((sum, bound) => sum + doubleAreaUnder(bound), 0);
  return { ring, bounds: own, double };
}

const lengthOf = (bounds: readonly Bound[]): number =>
  bounds.reduce((sum, { chord }) => sum + chord, 0);
