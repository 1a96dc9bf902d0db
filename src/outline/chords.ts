import { readNumber } from '../units/read-number.js';
import { roughNumber, signOfRatio, type Ratio } from '../units/ratio.js';
import { smallDecimal } from '../units/small-decimal.js';
import { minus, type Vector } from '../units/vector.js';
import { doubleArea } from './double-area.js';
import { forEachEdge, type Ring } from './ring.js';

/** A ring of straight edges, each with the original edge it came from. Internal. */
export interface Chords {
  readonly points: readonly Vector[];
  readonly edgeOf: readonly number[];
}

/** Angle of a chord, in radians, that stays within 1/20 000 of the radius of its arc. */
const STEP = 0.02;

/**
 * Outward side of the edges: the right of an outer ring that runs counter-clockwise. A ring of two
 * points counts as counter-clockwise. Internal.
 */
export function isOutwardRight({ points }: Ring, isHole: boolean): boolean {
  const isClockwise = signOfRatio(doubleArea(points)) < 0;
  return isClockwise === isHole;
}

/**
 * Replaces arcs by chords. New points are on a grid of a ten-millionth of the chord or finer;
 * points of the ring stay as they are, and a ring of straight edges is returned unchanged.
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

/** How the points along an arc are set out: its middle ordinate, + to the right of travel, and their step in radians. */
interface ArcSteps {
  readonly height: number;
  readonly step: number;
}

/**
 * Points along an arc, evenly spaced by no more than `step` radians; `height` is its middle
 * ordinate, + to the right of a-b. Internal.
 */
export function pointsOfArc(a: Vector, b: Vector, steps: ArcSteps): Vector[] {
  const along = minus(b, a);
  const [dx, dy] = [roughNumber(along.x), roughNumber(along.y)];
  const places = Math.min(
    15,
    Math.max(0, 7 - Math.floor(Math.log10(Math.sqrt(dx * dx + dy * dy)))),
  );
  const [x, y] = [roughNumber(a.x), roughNumber(a.y)];
  return floatsOfArc([x, y, dx, dy], steps).map((point) => vectorOf(point[0], point[1], places));
}

/**
 * The same points in floats, for an arc from x, y whose chord runs by dx, dy, in any unit. Internal.
 */
export function floatsOfArc(
  [x, y, dx, dy]: readonly [number, number, number, number],
  { height, step = STEP }: Partial<ArcSteps> & Pick<ArcSteps, 'height'>,
): [number, number][] {
  const chord = Math.sqrt(dx * dx + dy * dy);
  const half = 2 * Math.atan((2 * height) / chord);
  const diameter = chord / Math.sin(Math.abs(half));
  const count = Math.max(2, Math.ceil((2 * Math.abs(half)) / step));
  return Array.from({ length: count - 1 }, (_, index) => {
    // from a to a point of the arc: this long, and turned from the chord by the rest of the half
    // angle
    const part = (Math.abs(half) * (index + 1)) / count;
    const size = (diameter * Math.sin(part)) / chord;
    const turn = Math.sign(half) * (Math.abs(half) - part);
    const [cos, sin] = [size * Math.cos(turn), size * Math.sin(turn)];
    // turned to the right
    return [x + dx * cos + dy * sin, y + dy * cos - dx * sin];
  });
}

/** A vector of few digits close to a point in floats. */
const vectorOf = (x: number, y: number, places: number): Vector => ({
  x: onGrid(x, 10 ** places),
  y: onGrid(y, 10 ** places),
});

function onGrid(value: number, scale: number): Ratio {
  const steps = Math.round(value * scale);
  return Number.isSafeInteger(steps) ? smallDecimal(steps, scale) : readNumber(value);
}
