// Areas that figures cover, by a way of its own: the plane is cut into level strips at every corner, at
// every crossing and at the top and bottom of every circle; between them the widths are smooth, and
// Gauss's rule integrates them over the angle that straightens out the roots at the ends.

/** An edge: straight, or the arc of a circle that rises by `bulge` to the right of its chord. */
export interface ScanEdge {
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
  readonly bulge?: number;
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

function circleOf({ a, b, bulge = 0 }: ScanEdge): Circle {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const chord = Math.hypot(dx, dy);
  const signed = (chord * chord) / (8 * bulge) + bulge / 2;
  const off = (bulge - signed) / chord;
  return { x: (a[0] + b[0]) / 2 + off * dy, y: (a[1] + b[1]) / 2 - off * dx, r: Math.abs(signed) };
}

/** Where an edge meets a level line: x and whether it lies on the edge. */
function cutsAt(edge: ScanEdge, y: number): number[] {
  const { a, b, bulge = 0 } = edge;
  if (bulge === 0) {
    if (a[1] > y === b[1] > y) return [];
    return [a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])];
  }
  const circle = circleOf(edge);
  const half = circle.r ** 2 - (y - circle.y) ** 2;
  if (half <= 0) return [];
  const isOnArc = (x: number) => {
    const right = (x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0]);
    return bulge > 0 ? right > 0 : right < 0;
  };
  return [circle.x - Math.sqrt(half), circle.x + Math.sqrt(half)].filter(isOnArc);
}

/** Levels at which something changes. */
function levelsOf(figures: readonly (readonly ScanEdge[])[]): number[] {
  const edges = figures.flat();
  const levels = edges.flatMap(({ a, b }) => [a[1], b[1]]);
  edges.forEach((one, i) => {
    if (one.bulge !== undefined && one.bulge !== 0) {
      const { y, r } = circleOf(one);
      levels.push(y - r, y + r);
    }
    for (const other of edges.slice(i + 1)) levels.push(...crossingLevels(one, other));
  });
  return levels.sort((a, b) => a - b);
}

/** More levels than needed do no harm: whole lines and circles are crossed. */
function crossingLevels(one: ScanEdge, other: ScanEdge): number[] {
  const isRound = (edge: ScanEdge) => edge.bulge !== undefined && edge.bulge !== 0;
  if (!isRound(one) && !isRound(other)) {
    const [ux, uy] = [one.b[0] - one.a[0], one.b[1] - one.a[1]];
    const [vx, vy] = [other.b[0] - other.a[0], other.b[1] - other.a[1]];
    const turn = ux * vy - uy * vx;
    if (turn === 0) return [];
    const t = ((other.a[0] - one.a[0]) * vy - (other.a[1] - one.a[1]) * vx) / turn;
    return t >= 0 && t <= 1 ? [one.a[1] + t * uy] : [];
  }
  if (!isRound(one)) return crossingLevels(other, one);
  const { x, y, r } = circleOf(one);
  if (isRound(other)) {
    const second = circleOf(other);
    const [dx, dy] = [second.x - x, second.y - y];
    const apart = Math.hypot(dx, dy);
    if (apart === 0) return [];
    const along = (apart ** 2 + r ** 2 - second.r ** 2) / (2 * apart);
    const half = r ** 2 - along ** 2;
    if (half < 0) return [];
    return [1, -1].map((s) => y + (along * dy + s * Math.sqrt(half) * dx) / apart);
  }
  const [dx, dy] = [other.b[0] - other.a[0], other.b[1] - other.a[1]];
  const size = Math.hypot(dx, dy);
  const foot = ((x - other.a[0]) * dx + (y - other.a[1]) * dy) / size;
  const off = ((x - other.a[0]) * dy - (y - other.a[1]) * dx) / size;
  if (r ** 2 < off ** 2) return [];
  return [1, -1].map((s) => other.a[1] + ((foot + s * Math.sqrt(r ** 2 - off ** 2)) * dy) / size);
}

const GAUSS = gauss(48);

/** Places and weights of Gauss's rule from -1 to 1. */
function gauss(n: number): readonly (readonly [number, number])[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 20; round += 1) {
      let [p, q] = [1, 0];
      for (let k = 1; k <= n; k += 1) [p, q] = [((2 * k - 1) * x * p - (k - 1) * q) / k, p];
      slope = (n * (x * p - q)) / (x * x - 1);
      x -= p / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

/** Area [m2] where at least so many of the figures lie over each other. */
export function scanArea(figures: readonly (readonly ScanEdge[])[], least: number): number {
  const levels = levelsOf(figures);
  let sum = 0;
  levels.slice(1).forEach((top, k) => {
    const bottom = levels[k] ?? top;
    if (top - bottom < 1e-13) return;
    const [middle, half] = [(top + bottom) / 2, (top - bottom) / 2];
    for (const [place, weight] of GAUSS) {
      const angle = ((place + 1) * Math.PI) / 2;
      const width = widthAt(figures, middle - half * Math.cos(angle), least);
      sum += width * half * Math.sin(angle) * weight * (Math.PI / 2);
    }
  });
  return sum;
}

function widthAt(figures: readonly (readonly ScanEdge[])[], y: number, least: number): number {
  const changes = figures.flatMap((figure) => {
    const cuts = figure.flatMap((edge) => cutsAt(edge, y)).sort((a, b) => a - b);
    return cuts.map((x, index) => ({ x, by: index % 2 === 0 ? 1 : -1 }));
  });
  changes.sort((a, b) => a.x - b.x);
  let [width, depth] = [0, 0];
  changes.forEach(({ x, by }, index) => {
    if (depth >= least) width += x - (changes[index - 1]?.x ?? x);
    depth += by;
  });
  return width;
}
