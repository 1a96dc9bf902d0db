/** The corners of a hull, from left to right. Internal. */
export interface RangeHull {
  readonly count: () => number;
  /** The reading at a corner. */
  readonly at: (corner: number) => number;
}

/** Ranges of readings: for reading i, those after it up to `ends[i]`; none if that is i. Internal. */
export interface Ranges {
  /** `s0, z0, s1, z1 ...`, with increasing stations. */
  readonly profile: Float64Array;
  readonly ends: Int32Array;
  /** 1 for upper hulls, -1 for lower ones. */
  readonly side: 1 | -1;
}

/**
 * Visits the hull of each range, in one or two parts; one part ends where the other begins.
 *
 * A range is cut before the reading in it whose number can be halved most often. Ranges with the same
 * cut share two hulls that grow from it, one to the left and one to the right. A hull is visited for a
 * range when it has grown to the end of that range. It takes n log m steps for n ranges of up to m
 * readings, plus the work of the visits. Internal.
 */
export function forEachRange(ranges: Ranges, visit: (reading: number, hull: RangeHull) => void) {
  const { ends } = ranges;
  const count = ends.length;
  let longest = 0;
  for (let i = 0; i < count; i += 1) longest = Math.max(longest, at(ends, i) - i);
  const { first, next } = byEnd(ends);
  const hull = growingHull(ranges, longest + 1);
  for (let half = 1; half < count && longest > 0; half *= 2) {
    const reach = Math.min(half, longest);
    for (let cut = half; cut < count; cut += 2 * half) {
      hull.clear(-1);
      for (let i = cut - 1; i >= cut - reach; i -= 1) {
        if (i < cut - 1 && at(ends, i) >= cut && at(ends, i) < cut + half) visit(i, hull);
        hull.push(i);
      }
      hull.clear(1);
      const last = Math.min(cut + reach, count) - 1;
      for (let k = cut; k <= last; k += 1) {
        hull.push(k);
        for (let i = at(first, k); i >= 0; i = at(next, i)) {
          if (i < cut && i >= cut - half) visit(i, hull);
        }
      }
    }
  }
}

const at = (values: Int32Array, index: number): number => values[index] ?? -1;

/** Lists of the readings whose ranges end at one, as chains. */
function byEnd(ends: Int32Array): { readonly first: Int32Array; readonly next: Int32Array } {
  const [first, next] = [new Int32Array(ends.length).fill(-1), new Int32Array(ends.length)];
  ends.forEach((end, i) => {
    next[i] = at(first, end);
    first[end] = i;
  });
  return { first, next };
}

interface GrowingHull extends RangeHull {
  /** Empties the hull; each reading to come is to the right (1) or to the left (-1) of the one before. */
  readonly clear: (way: 1 | -1) => void;
  readonly push: (reading: number) => void;
}

function growingHull({ profile, side }: Ranges, most: number): GrowingHull {
  const corners = new Int32Array(most);
  let count = 0;
  let way = 1;
  /** True if the last corner is on or below the line from the corner before it to a reading. */
  const isCovered = (reading: number): boolean => {
    const a = 2 * at(corners, count - 2);
    const b = 2 * at(corners, count - 1);
    const s = profile[b] ?? 0;
    const z = profile[b + 1] ?? 0;
    const before = (s - (profile[a] ?? 0)) * ((profile[2 * reading + 1] ?? 0) - z);
    const after = (z - (profile[a + 1] ?? 0)) * ((profile[2 * reading] ?? 0) - s);
    return (before - after) * side * way >= 0;
  };
  return {
    clear: (to) => {
      count = 0;
      way = to;
    },
    push: (reading) => {
      while (count > 1 && isCovered(reading)) count -= 1;
      corners[count] = reading;
      count += 1;
    },
    count: () => count,
    at: (corner) => at(corners, way > 0 ? corner : count - 1 - corner),
  };
}
