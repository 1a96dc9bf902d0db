import { entry } from '../../invariant.js';
import type { Ground } from '../../job/plan/earth/ground.js';
import { fromNumber } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import type { Place } from '../plan/rings-in-metres.js';

/** The depth of a dig at a place in metres; null where it is not known. Internal. */
export type DepthAt = (place: Place) => Length | null;

/** The depths of a dig by its ground. Internal. */
export const depthsOf =
  ({ depthAt }: Ground): DepthAt =>
  ([x, y]) =>
    depthAt({ x: fromNumber(x, 'm'), y: fromNumber(y, 'm') });

const CELLS = 40;

/** Box of places [m]. */
interface Bounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** Where dig turns to fill, in short straight lines over a grid of 40 by 40 cells. Internal. */
export function zeroLines(
  depthAt: (place: Place) => number | null,
  { west, east, south, north }: Bounds,
): (readonly [Place, Place])[] {
  const place = (i: number, j: number): Place => [
    west + ((east - west) * i) / CELLS,
    south + ((north - south) * j) / CELLS,
  ];
  const side = CELLS + 1;
  const depths = Array.from({ length: side * side }, (_, k) =>
    depthAt(place(k % side, Math.floor(k / side))),
  );
  const at = (i: number, j: number): Corner => ({
    place: place(i, j),
    depth: depths[j * side + i] ?? null,
  });
  return Array.from({ length: CELLS * CELLS }, (_, k) => {
    const [i, j] = [k % CELLS, Math.floor(k / CELLS)];
    const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
    return [inTriangle([a, b, c]), inTriangle([a, c, d])];
  }).flatMap((pair) => pair.flatMap((one) => (one === null ? [] : [one])));
}

interface Corner {
  readonly place: Place;
  readonly depth: number | null;
}

/** The zero line in a triangle; depths of zero count as dig. */
function inTriangle(corners: readonly [Corner, Corner, Corner]): readonly [Place, Place] | null {
  const ends = corners.flatMap((from, k): Place[] => {
    const to = entry(corners, (k + 1) % 3);
    if (from.depth === null || to.depth === null) return [];
    if (from.depth < 0 === to.depth < 0) return [];
    const share = from.depth / (from.depth - to.depth);
    return [
      [
        from.place[0] + (to.place[0] - from.place[0]) * share,
        from.place[1] + (to.place[1] - from.place[1]) * share,
      ],
    ];
  });
  const [a, b] = ends;
  return a === undefined || b === undefined ? null : [a, b];
}
