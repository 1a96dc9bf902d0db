import type { Point } from '../svg/shapes.js';

/** A stroke from point to point. Internal. */
export type Stroke = readonly Point[];

/**
 * Parallel lines inside a closed figure, cut off at its sides. `way` has length 1; lines are counted
 * from the origin, so that those of neighbours meet. Internal.
 */
export function linesAcross(points: readonly Point[], [dx, dy]: Point, apart: number): Stroke[] {
  const across = points.map(([x, y]) => y * dx - x * dy);
  const along = points.map(([x, y]) => x * dx + y * dy);
  const strokes: Stroke[] = [];
  const last = Math.max(...across);
  for (let k = Math.ceil(Math.min(...across) / apart); k * apart < last; k += 1) {
    const cuts = cutsAt(k * apart, across, along);
    for (let n = 1; n < cuts.length; n += 2) {
      const at = (t = 0): Point => [t * dx - k * apart * dy, t * dy + k * apart * dx];
      strokes.push([at(cuts[n - 1]), at(cuts[n])]);
    }
  }
  return strokes;
}

/** Where a line at a distance from the origin crosses the sides, in order along it. */
function cutsAt(off: number, across: readonly number[], along: readonly number[]): number[] {
  const cuts: number[] = [];
  let before = across.length - 1;
  for (let k = 0; k < across.length; before = k, k += 1) {
    const [a = 0, b = 0] = [across[before], across[k]];
    if (a < off === b < off) continue;
    const [from = 0, to = 0] = [along[before], along[k]];
    cuts.push(from + ((off - a) / (b - a)) * (to - from));
  }
  return cuts.sort((a, b) => a - b);
}
