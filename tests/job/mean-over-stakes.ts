// A second way to the mean depth over stakes: triangles whose circle is empty, cut by rectangles.

/** A stake in plan, and the dig measured there. */
export interface Sounding {
  readonly x: number;
  readonly y: number;
  readonly dig: number;
}
type Rectangle = readonly [west: number, south: number, east: number, north: number];

/** Mean of the digs over rectangles that make up a dig, and the area that no triangle reaches. */
export function meanOverStakes(stakes: readonly Sounding[], dig: readonly Rectangle[]) {
  let [covered, volume, whole] = [0, 0, 0];
  for (const rectangle of dig) {
    const [west, south, east, north] = rectangle;
    whole += (east - west) * (north - south);
    for (const triangle of trianglesOf(stakes)) {
      const piece = cutBy(triangle, rectangle);
      for (let k = 1; k + 1 < piece.length; k += 1) {
        const [a, b, c] = [piece[0], piece[k], piece[k + 1]] as [Sounding, Sounding, Sounding];
        const area = Math.abs(turn(a, b, c)) / 2;
        covered += area;
        volume += (area * (a.dig + b.dig + c.dig)) / 3;
      }
    }
  }
  return { mean: volume / covered, uncovered: whole - covered };
}

const turn = (a: Sounding, b: Sounding, c: Sounding): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function trianglesOf(stakes: readonly Sounding[]): Sounding[][] {
  const found: Sounding[][] = [];
  stakes.forEach((a, i) => {
    stakes.slice(i + 1).forEach((b, j) => {
      for (const c of stakes.slice(i + j + 2)) {
        if (Math.abs(turn(a, b, c)) > 1e-9 && isEmpty([a, b, c], stakes)) found.push([a, b, c]);
      }
    });
  });
  return found;
}

/** True where no stake lies inside the circle through three of them. */
function isEmpty([a, b, c]: readonly [Sounding, Sounding, Sounding], stakes: readonly Sounding[]) {
  const d = 2 * turn(a, b, c);
  const square = (p: Sounding, q: Sounding) => (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
  const [ab, ac] = [square(a, b), square(a, c)];
  const x = a.x + ((c.y - a.y) * ab - (b.y - a.y) * ac) / d;
  const y = a.y + ((b.x - a.x) * ac - (c.x - a.x) * ab) / d;
  const centre = { x, y, dig: 0 };
  return stakes.every((one) => square(one, centre) > square(a, centre) - 1e-9);
}

/** The part of a polygon in a rectangle, side by side. */
function cutBy(polygon: readonly Sounding[], [west, south, east, north]: Rectangle): Sounding[] {
  const sides: readonly ((at: Sounding) => number)[] = [
    ({ x }) => x - west,
    ({ x }) => east - x,
    ({ y }) => y - south,
    ({ y }) => north - y,
  ];
  return sides.reduce<Sounding[]>(
    (left, inside) =>
      left.flatMap((to, k) => {
        const from = left.at(k - 1) ?? to;
        const [a, b] = [inside(from), inside(to)];
        const share = a / (a - b);
        const part = (of: (at: Sounding) => number) => of(from) + share * (of(to) - of(from));
        const on = { x: part((p) => p.x), y: part((p) => p.y), dig: part((p) => p.dig) };
        return [...(a < 0 !== b < 0 ? [on] : []), ...(b < 0 ? [] : [to])];
      }),
    [...polygon],
  );
}
