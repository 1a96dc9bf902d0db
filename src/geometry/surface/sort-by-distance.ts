// After the package delaunator: its notice is at the head of delaunay.ts.
import type { Place } from './seed-triangle.js';
import { at } from '../floats.js';

/** The square of the distance of each point from a place. Internal. */
export function distancesFrom(xy: Float64Array, [x, y]: Place): Float64Array {
  const dists = new Float64Array(xy.length >> 1);
  for (let i = 0; i < dists.length; i += 1) {
    const dx = at(xy, 2 * i) - x;
    const dy = at(xy, 2 * i + 1) - y;
    dists[i] = dx * dx + dy * dy;
  }
  return dists;
}

/** Sorts points by distance: a few by moving each to its place, many by parting them. Internal. */
export function sortByDistance(
  ids: Uint32Array,
  dists: Float64Array,
  left: number,
  right: number,
): void {
  if (right - left <= 20) {
    sortFew(ids, dists, left, right);
    return;
  }
  const of = (k: number): number => at(dists, ids[k] ?? 0);
  const order = (j: number, k: number): void => {
    if (of(j) > of(k)) swap(ids, j, k);
  };
  let i = left + 1;
  let j = right;
  swap(ids, (left + right) >> 1, i);
  order(left, right);
  order(i, right);
  order(left, i);
  const pivot = ids[i] ?? 0;
  const distance = at(dists, pivot);
  for (;;) {
    do i += 1;
    while (of(i) < distance);
    do j -= 1;
    while (of(j) > distance);
    if (j < i) break;
    swap(ids, i, j);
  }
  ids[left + 1] = ids[j] ?? 0;
  ids[j] = pivot;
  sortByDistance(ids, dists, left, j - 1);
  sortByDistance(ids, dists, i, right);
}

function sortFew(ids: Uint32Array, dists: Float64Array, left: number, right: number): void {
  for (let i = left + 1; i <= right; i += 1) {
    const id = ids[i] ?? 0;
    const distance = at(dists, id);
    let j = i - 1;
    for (; j >= left && at(dists, ids[j] ?? 0) > distance; j -= 1) ids[j + 1] = ids[j] ?? 0;
    ids[j + 1] = id;
  }
}

function swap(ids: Uint32Array, i: number, j: number): void {
  const id = ids[i] ?? 0;
  ids[i] = ids[j] ?? 0;
  ids[j] = id;
}
