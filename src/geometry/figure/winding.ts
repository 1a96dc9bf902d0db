import { offsetFrom, type Bound, type Spot } from './bound.js';

/**
 * True for a point inside a figure, away from its edges: the chords wind round it once. The part
 * between an arc and its chord is counted separately. Internal.
 */
export function isInside(figure: readonly Bound[], place: Spot): boolean {
  let turns = 0;
  for (const bound of figure) {
    const { from, to, bulge } = bound;
    const isAbove = from.y > place.y;
    const climbs = isAbove !== to.y > place.y;
    if (!climbs && bulge === 0) continue;
    const isLeft = isLeftOf(bound, place);
    if (climbs && isLeft !== isAbove) turns += isAbove ? -1 : 1;
    if (bulge > 0 && !isLeft && offsetFrom(bound, place) > 0) turns += 1;
    else if (bulge < 0 && isLeft && offsetFrom(bound, place) < 0) turns -= 1;
  }
  return turns > 0;
}

/** A point on the chord itself counts as a little farther east, then a little farther north. */
function isLeftOf({ from, to }: Bound, { x, y }: Spot): boolean {
  const side = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  if (side !== 0) return side > 0;
  return to.y === from.y ? to.x > from.x : to.y < from.y;
}
