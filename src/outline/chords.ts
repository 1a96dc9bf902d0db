import { readNumber } from '../units/read-number.js';
import { roughNumber, signOfRatio, type Ratio } from '../units/ratio.js';
import { smallDecimal } from '../units/small-decimal.js';
import { minus, type Vector } from '../units/vector.js';
import { doubleArea } from './double-area.js';
import { forEachEdge, type Ring } from './ring.js';

/** A ring of straight edges only, with the edge of the original that each came from. Internal. */
export interface Chords {
  readonly points: readonly Vector[];
  readonly edgeOf: readonly number[];
}

/** Chords this many radians long leave their arc by less than one part in twenty thousand of R. */
const STEP = 0.02;

/**
 * Which way out of the paving is, seen along the edges: to the right of an outer ring that runs
 * counter-clockwise. A ring of two points counts as counter-clockwise. Internal.
 */
export function isOutwardRight({ points }: Ring, isHole: boolean): boolean {
  const isClockwise = signOfRatio(doubleArea(points)) < 0;
  return isClockwise === isHole;
}

/**
 * Puts chords in the place of arcs. The points in between lie on a grid of a ten-millionth of the
 * chord or finer; those of the ring stay as they are, and a ring of straight edges is handed back.
 * Internal.
 */
export function chordsOf(ring: Ring, isHole: boolean, step = STEP): Chords {
  const { points, bulges } = ring;
  if (bulges === undefined) return { points, edgeOf: points.map((_, edge) => edge) };
  const isRight = isOutwardRight(ring, isHole);
  const all: Vector[] = [];
  const edgeOf: number[] = [];
  forEachEdge(points, (a, b, edge) => {
    const bulge = bulges[edge];
    const height = bulge === undefined ? 0 : toRight(bulge, isRight);
    const between = bulge === undefined ? [] : pointsOfArc(a, b, { height, step });
    for (const point of [a, ...between]) {
      all.push(point);
      edgeOf.push(edge);
    }
  });
  return { points: all, edgeOf };
}

/** A middle ordinate as a float, + to the right of travel. Internal. */
export const toRight = (bulge: Ratio, isRight: boolean): number =>
  isRight ? roughNumber(bulge) : -roughNumber(bulge);

/**
 * Points inside an arc, evenly spaced in steps of so many radians at most; `height` is its middle
 * ordinate, + to the right of a-b. Internal.
 */
export function pointsOfArc(
  a: Vector,
  b: Vector,
  { height, step }: { readonly height: number; readonly step: number },
): Vector[] {
  const [x, y] = [roughNumber(a.x), roughNumber(a.y)];
  const along = minus(b, a);
  const [dx, dy] = [roughNumber(along.x), roughNumber(along.y)];
  const chord = Math.sqrt(dx * dx + dy * dy);
  const half = 2 * Math.atan((2 * height) / chord);
  const diameter = chord / Math.sin(Math.abs(half));
  const count = Math.max(2, Math.ceil((2 * Math.abs(half)) / step));
  const places = Math.min(15, Math.max(0, 7 - Math.floor(Math.log10(chord))));
  return Array.from({ length: count - 1 }, (_, index) => {
    // from a to a point of the arc: this long, and turned from the chord by what is left of the half
    const part = (Math.abs(half) * (index + 1)) / count;
    const size = (diameter * Math.sin(part)) / chord;
    const turn = Math.sign(half) * (Math.abs(half) - part);
    const [cos, sin] = [size * Math.cos(turn), size * Math.sin(turn)];
    // turned to the right
    return vectorOf(x + dx * cos + dy * sin, y + dy * cos - dx * sin, places);
  });
}

/** A vector of few digits next to a place in floats. */
const vectorOf = (x: number, y: number, places: number): Vector => ({
  x: onGrid(x, 10 ** places),
  y: onGrid(y, 10 ** places),
});

function onGrid(value: number, scale: number): Ratio {
  const steps = Math.round(value * scale);
  return Number.isSafeInteger(steps) ? smallDecimal(steps, scale) : readNumber(value);
}
