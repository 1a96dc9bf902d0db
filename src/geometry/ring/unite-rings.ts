import { Clipper64, ClipType, FillRule, PathType, type Point64 } from 'clipper2-ts';

/**
 * Where a corner of a united figure comes from: a point that was given, by its number; or the place
 * where two edges cross, each between two such places. `at` is where the package found it, good to
 * one step of its grid. Internal.
 */
export interface UnitedCorner {
  readonly at: readonly [x: number, y: number];
  readonly given?: number;
  readonly crossing?: readonly [from: Place, to: Place, otherFrom: Place, otherTo: Place];
}

type Place = UnitedCorner;

/** The united rings, and one step of the grid on which they were found. Internal. */
export interface United {
  readonly rings: readonly (readonly UnitedCorner[])[];
  readonly step: number;
}

/**
 * Unites closed rings: what is wound round counter-clockwise more often than clockwise is inside
 * (the positive rule), so that rings may cross themselves and each other. The work is done on a grid
 * of whole numbers as fine as floats allow (2^26 steps over the figure, a micrometre and a half over
 * 100 m); the corners name where they come from, so that the caller can place them exactly. The
 * package takes time n times the edges abreast of each other along y, which makes a comb quadratic:
 * the figure is turned so that fewer are. Internal.
 *
 * @param rings - x and y of each point in turn, any number of rings
 * @returns outer rings counter-clockwise, holes clockwise; undefined where the package fails
 */
export function uniteRings(rings: readonly Float64Array[]): United | undefined {
  const grid = gridOver(rings);
  const isTurned = areFewerAbreastAlongX(rings, grid);
  const clipper = new Clipper64();
  const places: Place[] = [];
  clipper.addPaths(
    rings.map((ring) => pathOf(ring, grid, { isTurned, places })),
    PathType.Subject,
  );
  const onSite = ({ x, y }: Point64) => {
    const [east, north] = isTurned ? [-y, x] : [x, y];
    return [east / grid.scale + grid.x, north / grid.scale + grid.y] as const;
  };
  const placeOf = (point: Point64): Place => places[(point.z ?? 0) - 1] ?? { at: onSite(point) };
  clipper.zCallback = (from, to, otherFrom, otherTo, point) => {
    // the package has already named a crossing that falls on the end of an edge
    if ((point.z ?? 0) > 0) return;
    const crossing = [placeOf(from), placeOf(to), placeOf(otherFrom), placeOf(otherTo)] as const;
    places.push({ at: onSite(point), crossing });
    point.z = places.length;
  };
  const united: Point64[][] = [];
  if (!clipper.execute(ClipType.Union, FillRule.Positive, united)) return undefined;
  return { rings: united.map((path) => path.map(placeOf)), step: 1 / grid.scale };
}

interface Grid {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/** Further than so many steps from where the package found it, a crossing is one of edges almost in line. Internal. */
export const NEAR_STEPS = 64;
/** Rings of less double area than so many steps square are slivers that only the grid has left. Internal. */
export const SLIVER_STEPS = 2 ** 20;

/** 2^26 steps over the figure: products of two differences stay whole in a float. */
const STEPS = 26;

function gridOver(rings: readonly Float64Array[]): Grid {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (let k = 0; k < ring.length - 1; k += 2) {
      const [x, y] = [ring[k] ?? 0, ring[k + 1] ?? 0];
      west = Math.min(west, x);
      east = Math.max(east, x);
      south = Math.min(south, y);
      north = Math.max(north, y);
    }
  }
  const extent = Math.max(east - west, north - south);
  const scale = 2 ** (STEPS - Math.ceil(Math.log2(extent)));
  return { x: west, y: south, width: east - west, height: north - south, scale };
}

/** Compares how many edges a line across the figure cuts on average, this way and that. */
function areFewerAbreastAlongX(rings: readonly Float64Array[], { width, height }: Grid): boolean {
  let [alongX, alongY] = [0, 0];
  for (const ring of rings) {
    for (let k = 2; k < ring.length - 1; k += 2) {
      alongX += Math.abs((ring[k] ?? 0) - (ring[k - 2] ?? 0));
      alongY += Math.abs((ring[k + 1] ?? 0) - (ring[k - 1] ?? 0));
    }
  }
  return alongX * height < alongY * width;
}

interface PathOptions {
  readonly isTurned: boolean;
  readonly places: Place[];
}

function pathOf(ring: Float64Array, grid: Grid, { isTurned, places }: PathOptions): Point64[] {
  const { x, y, scale } = grid;
  const path: Point64[] = [];
  for (let k = 0; k < ring.length - 1; k += 2) {
    const at = [ring[k] ?? 0, ring[k + 1] ?? 0] as const;
    places.push({ at, given: places.length });
    const east = Math.round((at[0] - x) * scale);
    const north = Math.round((at[1] - y) * scale);
    path.push(
      isTurned ? { x: north, y: -east, z: places.length } : { x: east, y: north, z: places.length },
    );
  }
  return path;
}
