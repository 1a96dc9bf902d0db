import { isOutwardRight } from '../../outline/chords.js';
import { forEachEdge, ringsOf } from '../../outline/ring.js';
import { HALF_RATIO } from '../../units/ratio.js';
import { minus, plus, pointFrom, scaled, turnedLeft, turnedRight } from '../../units/vector.js';
import { slopeAt, type FinishSurface } from './finish-surface.js';
import type { Pavement } from '../schema/layer-kinds.js';

/** The edges, counted from 1 over all rings, that drain toward a building or slab. Internal. */
export function edgesShedAtBuilding(
  { outline, edges }: Pavement,
  surface: FinishSurface,
): readonly number[] {
  if (edges === undefined) return [];
  const found: number[] = [];
  let edge = 0;
  ringsOf(outline).forEach((ring, index) => {
    const turned = isOutwardRight(ring, index > 0) ? turnedRight : turnedLeft;
    forEachEdge(ring.points, (a, b) => {
      const along = edges[edge]?.along;
      edge += 1;
      if (along !== 'building' && along !== 'slab') return;
      const middle = pointFrom(outline.origin, scaled(plus(a, b), HALF_RATIO));
      if (slopeAt(surface, middle, turned(minus(b, a))).isNegative()) found.push(edge);
    });
  });
  return found;
}
