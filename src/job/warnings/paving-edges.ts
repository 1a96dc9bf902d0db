import { entry } from '../../invariant.js';
import { chordsOf, isOutwardRight } from '../../outline/chords.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import { roughNumber } from '../../units/ratio.js';
import type { PlanPoint } from '../../units/vector.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { Place } from './figures.js';

/** What the job says of an edge; null where nothing is said. Internal. */
export type SaidOfEdge = NonNullable<NonNullable<Pavement['edges']>[number]> | null;

/** A straight piece of an edge of the paving, in metres from the first point of its outline. Internal. */
export interface EdgePiece {
  /** The edge, counted from 1. */
  readonly edge: number;
  readonly said: SaidOfEdge;
  readonly from: Place;
  readonly to: Place;
  /** Unit vector out of the paving. */
  readonly outward: Place;
}

/** Angle of a chord of an arc, in radians. */
const STEP = 0.1;

/** The edges along which something stays that water may not reach: buildings, slabs and floors. Internal. */
export const isBuilt = (said: SaidOfEdge): boolean =>
  said?.along === 'building' || said?.along === 'slab';

/** The edges of a paving in straight pieces, those of its holes after the outer ones. Internal. */
export function edgePieces(
  { outline, edges }: Pavement,
  isWanted: (said: SaidOfEdge) => boolean,
): EdgePiece[] {
  let before = 0;
  return ringsOf(outline).flatMap((ring, index) => {
    const start = before;
    before += ring.points.length;
    const said = ring.points.map((_, k) => edges?.[start + k] ?? null);
    if (!said.some(isWanted)) return [];
    const isHole = index > 0;
    const isRight = isOutwardRight(ring, isHole);
    const { points, edgeOf } = chordsOf(ring, isHole, STEP);
    const pieces: EdgePiece[] = [];
    forEachEdge(points, (a, b, piece) => {
      const edge = entry(edgeOf, piece);
      const about = said[edge] ?? null;
      if (!isWanted(about)) return;
      const from = { x: roughNumber(a.x), y: roughNumber(a.y) };
      const to = { x: roughNumber(b.x), y: roughNumber(b.y) };
      const outward = outwardOf(from, to, isRight);
      pieces.push({ edge: start + edge + 1, said: about, from, to, outward });
    });
    return pieces;
  });
}

function outwardOf(from: Place, to: Place, isRight: boolean): Place {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return isRight ? { x: y, y: -x } : { x: -y, y: x };
}

/** A place along a piece. Internal. */
export const alongPiece = ({ from, to }: Pick<EdgePiece, 'from' | 'to'>, share: number): Place => ({
  x: from.x + (to.x - from.x) * share,
  y: from.y + (to.y - from.y) * share,
});

/** The origin that the pieces of a pavement are seen from. Internal. */
export const originOf = ({ outline }: Pavement): PlanPoint => outline.origin;
