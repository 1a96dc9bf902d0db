import { isOutwardRight } from '../../outline/chords.js';
import { forEachEdge } from '../../outline/ring.js';
import { negateRatio, type Ratio } from '../../units/ratio.js';
import { minus, plus, pointFrom, scaled, type Vector } from '../../units/vector.js';
import { slopeAt, type FinishSurface } from './finish-surface.js';
import type { Pavement } from '../schema/layer-kinds.js';

/** The edges at a building, counted from 0, over which the surface sheds water at it. Internal. */
export function edgesShedAtBuilding(
  { outline, edges }: Pavement,
  surface: FinishSurface,
): readonly number[] {
  if (edges === undefined) return [];
  const found: number[] = [];
  const isRight = isOutwardRight(outline, false);
  forEachEdge(outline.points, (a, b, edge) => {
    if (edges[edge] !== 'building') return;
    const middle = pointFrom(outline.origin, scaled(plus(a, b), HALF));
    const outward = square(minus(b, a), isRight);
    if (slopeAt(surface, middle, outward).isNegative()) found.push(edge);
  });
  return found;
}

const HALF: Ratio = Object.freeze({ n: 5, d: 10 });

const square = ({ x, y }: Vector, isRight: boolean): Vector =>
  isRight ? { x: y, y: negateRatio(x) } : { x: negateRatio(y), y: x };
