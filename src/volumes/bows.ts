import { entry } from '../invariant.js';
import { floatsOfArc } from '../outline/chords.js';

/** A ring of chords, and the bows between them and the arcs they stand for. Internal. */
export interface ChordRing {
  /** x and y of each point in turn. */
  readonly xy: readonly number[];
  /**
   * x and y of the middle of each bow and its area, in turn; the area is negative where the arc bulges
   * into the paving.
   */
  readonly bows: readonly number[];
}

/** Of a bow as flat as these: how far its centre lies from the chord, over its area over its chord. */
const CENTRE = 0.6;

/**
 * Puts chords in the place of arcs. The bows add up to what lies between the chords and the arc, to the
 * rounding of floats. Internal.
 *
 * @param bulges - the middle ordinate of each edge, + outward from the paving, 0 for a straight one
 */
export function chordsIn(
  points: readonly (readonly [number, number])[],
  bulges: readonly number[],
  isOutwardRight: boolean,
): ChordRing {
  const xy: number[] = [];
  const bows: number[] = [];
  points.forEach(([x, y], edge) => {
    const [endX, endY] = entry(points, (edge + 1) % points.length);
    const [dx, dy] = [endX - x, endY - y];
    const bulge = bulges[edge] ?? 0;
    xy.push(x, y);
    if (bulge === 0) return;
    const height = isOutwardRight ? bulge : -bulge;
    const between = floatsOfArc([x, y, dx, dy], { height });
    xy.push(...between.flat());
    const chain = [[x, y] as const, ...between, [endX, endY] as const];
    const area = bowArea(Math.hypot(dx, dy), Math.abs(bulge), between.length + 1);
    chain.slice(1).forEach(([qx, qy], k) => {
      const [px, py] = entry(chain, k);
      const away = (CENTRE * Math.sign(height) * area) / ((qx - px) ** 2 + (qy - py) ** 2);
      bows.push((px + qx) / 2 + away * (qy - py), (py + qy) / 2 - away * (qx - px));
      bows.push(Math.sign(bulge) * area);
    });
  });
  return { xy, bows };
}

/** Area of one of the equal bows of an arc: `R^2 (h - sin h cos h)`, with half the angle of a bow as h. */
function bowArea(chord: number, height: number, count: number): number {
  const half = 2 * Math.atan2(2 * height, chord);
  const radius = chord / (2 * Math.sin(half));
  const h = half / count;
  const square = h * h;
  // as a series: h is 1/100 or less, and the difference would lose digits
  const part = (2 / 3) * h * square * (1 - square * (1 / 5 - square * (2 / 105)));
  return radius * radius * part;
}
