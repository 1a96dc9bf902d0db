/** Negative if a comes before b, 0 if they are equal, positive if a comes after b. */
type Compare = (a: number, b: number) => number;

/**
 * Sorts numbers that run up or down in long stretches, like the points around a smooth shape. The
 * stretches are merged in pairs, so m of them take n log m time. Neighbours must differ. Internal.
 */
export function inOrder(list: Uint32Array, compare: Compare): Uint32Array {
  let from = list.slice();
  let ends = turnStretches(from, compare);
  let into = new Uint32Array(list.length);
  while (ends.length > 1) {
    ends = mergePairs({ from, into, ends }, compare);
    [from, into] = [into, from];
  }
  return from;
}

/** Reverses every stretch that runs down, and returns the end of each stretch. */
function turnStretches(list: Uint32Array, compare: Compare): number[] {
  const ends: number[] = [];
  const count = list.length;
  for (let start = 0; start < count;) {
    let end = start + 1;
    const isDown = end < count && compare(list[start] ?? 0, list[end] ?? 0) > 0;
    const sign = isDown ? 1 : -1;
    while (end < count && sign * compare(list[end - 1] ?? 0, list[end] ?? 0) > 0) end += 1;
    if (isDown) list.subarray(start, end).reverse();
    ends.push(end);
    start = end;
  }
  return ends;
}

interface Merge {
  readonly from: Uint32Array;
  readonly into: Uint32Array;
  readonly ends: readonly number[];
}

function mergePairs({ from, into, ends }: Merge, compare: Compare): number[] {
  const merged: number[] = [];
  let start = 0;
  for (let k = 0; k < ends.length; k += 2) {
    const middle = ends[k] ?? 0;
    const end = ends[k + 1] ?? middle;
    let low = start;
    let high = middle;
    for (let to = start; to < end; to += 1) {
      const a = from[low] ?? 0;
      const b = from[high] ?? 0;
      const takesLow = low < middle && (high >= end || compare(a, b) <= 0);
      into[to] = takesLow ? a : b;
      if (takesLow) low += 1;
      else high += 1;
    }
    merged.push(end);
    start = end;
  }
  return merged;
}
