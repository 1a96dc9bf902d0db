import { shareAlong, type Bound, type Spot } from './bound.js';

/**
 * The crossings of two edges, not counting their ends: none, one or two points. The two curves
 * `m u . u + b ux + c uy + d`, weighted so that the squares cancel, give the line through the
 * crossings. On that line the more curved edge is a quadratic. Edges that only touch are skipped: they
 * bound the same figures. Internal.
 */
export function crossingsOf(one: Bound, other: Bound): Spot[] {
  const { from } = one;
  const spots = one.m === 0 && other.m === 0 ? onLines(one, other) : onCurves(one, other);
  return spots
    .map(({ x, y }) => ({ x: x + from.x, y: y + from.y }))
    .filter((spot) => isWithin(one, spot) && isWithin(other, spot));
}

function isWithin(bound: Bound, spot: Spot): boolean {
  const share = shareAlong(bound, spot);
  return share > 0 && share < 1;
}

interface Curve {
  readonly m: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** The curve of an edge, seen from the start of another. */
function seenFrom({ from, m, b, c }: Bound, at: Spot): Curve {
  const wx = from.x - at.x;
  const wy = from.y - at.y;
  return {
    m,
    b: b - 2 * m * wx,
    c: c - 2 * m * wy,
    d: m * (wx * wx + wy * wy) - b * wx - c * wy,
  };
}

function onLines(one: Bound, other: Bound): Spot[] {
  const { b, c, d } = seenFrom(other, one.from);
  const turn = one.b * c - one.c * b;
  if (turn === 0) return [];
  return [{ x: (one.c * d) / turn, y: (-one.b * d) / turn }];
}

function onCurves(one: Bound, other: Bound): Spot[] {
  const first: Curve = { ...one, d: 0 };
  const second = seenFrom(other, one.from);
  const b = second.m * first.b - first.m * second.b;
  const c = second.m * first.c - first.m * second.c;
  const size = Math.sqrt(b * b + c * c);
  // circles about one centre
  if (size <= 1e-14 * Math.max(Math.abs(first.m), Math.abs(second.m))) return [];
  const toLine = (first.m * second.d) / size;
  const foot = { x: (toLine * b) / size, y: (toLine * c) / size };
  const along = { x: -c / size, y: b / size };
  const curve = Math.abs(first.m) >= Math.abs(second.m) ? first : second;
  return rootsOn(curve, foot, along).map((t) => ({
    x: foot.x + t * along.x,
    y: foot.y + t * along.y,
  }));
}

/** Where a line meets a curve, as distances from its foot. */
function rootsOn({ m, b, c, d }: Curve, foot: Spot, along: Spot): number[] {
  const slope = (2 * m * foot.x + b) * along.x + (2 * m * foot.y + c) * along.y;
  const value = m * (foot.x * foot.x + foot.y * foot.y) + b * foot.x + c * foot.y + d;
  const square = slope * slope - 4 * m * value;
  if (square <= 0) return [];
  const sum = -(slope + (slope < 0 ? -1 : 1) * Math.sqrt(square)) / 2;
  return [sum / m, value / sum].filter(Number.isFinite);
}
