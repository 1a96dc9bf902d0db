import type { Box } from '../bounds.js';

/** A point in plan [m]. Internal. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * An edge with its figure on the left: straight, or an arc that rises by `bulge` [m] to the right of
 * its chord (negative: to the left). Internal.
 */
export interface FigureEdge {
  readonly from: Spot;
  readonly to: Spot;
  readonly bulge: number;
}

/**
 * An edge as a curve: `g(u) = m u . u + b ux + c uy`, with u measured from the start of the edge. It
 * is zero on the edge and positive on its left, with a slope of 1, so g is the distance [m] close by.
 * A straight line has m = 0, and even the flattest arc loses no digits. Internal.
 */
export interface Bound extends FigureEdge {
  readonly m: number;
  readonly b: number;
  readonly c: number;
  readonly chord: number;
  /** Half the central angle [rad], without its sign. */
  readonly half: number;
  /** Number of the figure, and number of the edge in its list. */
  readonly figure: number;
  readonly edge: number;
  readonly box: Box;
}

/** Makes the curve of an edge. Internal. */
export function boundOf(own: FigureEdge, figure: number, edge: number): Bound {
  const { from, to, bulge } = own;
  // field by field: objects of one shape stay fast
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const quarter = (chord * chord) / 4;
  const size = quarter + bulge * bulge;
  // along the chord and to its left
  const along = (bulge * chord) / size;
  const left = (quarter - bulge * bulge) / size;
  return {
    from,
    to,
    bulge,
    m: -bulge / size,
    b: (along * dx - left * dy) / chord,
    c: (along * dy + left * dx) / chord,
    chord,
    half: 2 * Math.atan((2 * Math.abs(bulge)) / chord),
    figure,
    edge,
    box: boxOf(own, chord),
  };
}

/** All of an arc lies within half the chord, or within the bulge if that is more, of its middle. */
function boxOf({ from, to, bulge }: FigureEdge, chord: number): Box {
  if (bulge === 0) {
    return {
      west: Math.min(from.x, to.x),
      south: Math.min(from.y, to.y),
      east: Math.max(from.x, to.x),
      north: Math.max(from.y, to.y),
    };
  }
  const reach = Math.max(chord / 2, Math.abs(bulge));
  const x = (from.x + to.x) / 2;
  const y = (from.y + to.y) / 2;
  return { west: x - reach, south: y - reach, east: x + reach, north: y + reach };
}

/** The distance [m] of a point near an edge, positive on the left. Internal. */
export function offsetFrom({ from, m, b, c }: Bound, { x, y }: Spot): number {
  const ux = x - from.x;
  const uy = y - from.y;
  return m * (ux * ux + uy * uy) + b * ux + c * uy;
}

/** The direction of travel at a point of an edge, and its turn to the left there [1/m]. Internal. */
export function directionAt({ from, m, b, c }: Bound, { x, y }: Spot) {
  const gx = 2 * m * (x - from.x) + b;
  const gy = 2 * m * (y - from.y) + c;
  return { x: gy, y: -gx, turn: -2 * m };
}

/** Arcs of less than this half angle [rad] are measured along their chord. */
const FLAT = 0.5;

/**
 * Share of an edge before a point on its curve: 0 at the start, 1 at the end, less than 0 or more than
 * 1 beyond the edge. Internal.
 */
export function shareAlong(bound: Bound, { x, y }: Spot): number {
  const { from, to, chord, half, bulge } = bound;
  const ux = x - from.x;
  const uy = y - from.y;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const along = ux * dx + uy * dy;
  const right = ux * dy - uy * dx;
  // the far side of the circle is not part of a flat arc
  if (half < FLAT) return Math.abs(right) > chord * chord ? -1 : along / (chord * chord);
  // seen from the start, the point moves from the tangent to the chord
  return 1 - Math.atan2(bulge > 0 ? right : -right, along) / half;
}

/** Rise of a stretch of an edge to the right of its chord [m]. Internal. */
export function riseOf(bound: Bound, [p, q]: readonly [Spot, Spot], part: number): number {
  if (bound.bulge === 0) return 0;
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const half =
    bound.half < FLAT ? Math.asin(Math.min(1, chord * Math.abs(bound.m))) : bound.half * part;
  return (Math.tan(half / 2) / 2) * chord * Math.sign(bound.bulge);
}

/** The middle of a stretch of an edge; `part` is its share of the edge. Internal. */
export function middleOf(bound: Bound, ends: readonly [Spot, Spot], part: number): Spot {
  const [p, q] = ends;
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const rise = riseOf(bound, ends, part) / Math.sqrt(dx * dx + dy * dy);
  return { x: (p.x + q.x) / 2 + rise * dy, y: (p.y + q.y) / 2 - rise * dx };
}

/** Twice the area [m2] between an edge and the lines from its ends to the origin, signed. Internal. */
export function doubleAreaUnder({ from, to, chord, half, bulge }: Bound): number {
  const triangle = from.x * to.y - to.x * from.y;
  if (half < 0.1) return triangle + (4 / 3) * chord * bulge;
  const radius = chord / (2 * Math.sin(half));
  const segment = 2 * radius * radius * (half - Math.sin(half) * Math.cos(half));
  return triangle + (bulge > 0 ? segment : -segment);
}
