import { at } from '../floats.js';

/** A convex ring: x and y of its corners in turn. */
type Hull = Float64Array;

/** The top of the shared height need not be met by more than this share of the common width. */
const NEAR_TOP = 0.01;
/** A sliver takes as many steps as floats have digits. */
const MOST_STEPS = 120;

/**
 * A point well inside two convex hulls at once, undefined where they share no area: the height that
 * both share above x grows and then falls, so that halving finds its top. Internal.
 */
export function commonPoint(a: Hull, b: Hull): readonly [number, number] | undefined {
  const low = Math.max(leastX(a), leastX(b));
  const high = Math.min(mostX(a), mostX(b));
  const heightAt = (x: number): number => {
    const [bottom, top] = sharedAt(a, b, x);
    return top - bottom;
  };
  let from = low;
  let to = high;
  let isFound = false;
  for (let step = 0; step < MOST_STEPS && !isFound; step += 1) {
    const third = (to - from) / 3;
    const left = heightAt(from + third);
    const right = heightAt(to - third);
    // where both are equal, the top lies between them
    if (left <= right) from += third;
    if (left >= right) to -= third;
    isFound = left > 0 && right > 0 && to - from < NEAR_TOP * (high - low);
  }
  const x = (from + to) / 2;
  const [bottom, top] = sharedAt(a, b, x);
  return high > low && top > bottom ? [x, (bottom + top) / 2] : undefined;
}

function sharedAt(a: Hull, b: Hull, x: number): readonly [number, number] {
  const [one, other] = [spanAt(a, x), spanAt(b, x)];
  return [Math.max(one[0], other[0]), Math.min(one[1], other[1])];
}

/** Lowest and highest y of a convex ring at x. */
function spanAt(hull: Hull, x: number): readonly [number, number] {
  let bottom = Infinity;
  let top = -Infinity;
  let px = at(hull, hull.length - 2);
  let py = at(hull, hull.length - 1);
  for (let k = 0; k < hull.length; k += 2) {
    const qx = at(hull, k);
    const qy = at(hull, k + 1);
    if (px <= x === qx >= x || qx === x) {
      const y = px === qx ? qy : py + ((x - px) / (qx - px)) * (qy - py);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
    px = qx;
    py = qy;
  }
  return [bottom, top];
}

function leastX(hull: Hull): number {
  let least = Infinity;
  for (let k = 0; k < hull.length; k += 2) least = Math.min(least, at(hull, k));
  return least;
}

function mostX(hull: Hull): number {
  let most = -Infinity;
  for (let k = 0; k < hull.length; k += 2) most = Math.max(most, at(hull, k));
  return most;
}
