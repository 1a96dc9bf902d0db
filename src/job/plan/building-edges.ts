import { isOutwardRight } from '../../outline/chords.js';
import { forEachEdge } from '../../outline/ring.js';
import { HALF_RATIO } from '../../units/ratio.js';
import { minus, plus, pointFrom, scaled, turnedLeft, turnedRight } from '../../units/vector.js';
import { slopeAt, type FinishSurface } from './finish-surface.js';
import type { Pavement } from '../schema/layer-kinds.js';

/** The edges, counted from 1, that drain toward a building or slab. Internal. */
export function edgesShedAtBuilding(
  { outline, edges }: Pavement,
  surface: FinishSurface,
): readonly number[] {
  if (edges === undefined) return [];
  const found: number[] = [];
  const isRight = isOutwardRight(outline, false);
  forEachEdge(outline.points, (a, b, edge) => {
    const along = edges[edge]?.along;
    if (along !== 'building' && along !== 'slab') return;
    const middle = pointFrom(outline.origin, scaled(plus(a, b), HALF_RATIO));
    const outward = (isRight ? turnedRight : turnedLeft)(minus(b, a));
    if (slopeAt(surface, middle, outward).isNegative()) found.push(edge + 1);
  });
  return found;
}
