import { Clipper64, ClipType, FillRule, PathType, type Point64 } from 'clipper2-ts';
import { boundsOf } from '../bounds.js';

/**
 * Origin of a corner of a united figure: an input point, by its number, or the crossing of two edges,
 * each between two such corners. `at` is its location from the package, good to one step of its grid.
 * Internal.
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
 * Unites closed rings, which may cross themselves and each other. A point is inside if the rings wind
 * round it more often counter-clockwise than clockwise (the positive rule). The package works on a
 * grid of whole numbers as fine as floats allow: 2^26 steps over the figure, 1.5 micrometres over
 * 100 m. Each corner names its origin, so the caller can place it exactly. The package takes time n
 * times the number of edges abreast along y, which makes a comb quadratic, so the figure is turned to
 * keep that number low. Internal.
 *
 * @param rings - interleaved `x0, y0, x1, y1 ...`, any number of rings
 * @returns outer rings counter-clockwise, holes clockwise; undefined if the package fails
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
    // the package has already named a crossing at the end of an edge
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

/** A crossing farther than this many steps from the package's location is one of edges almost in line. Internal. */
export const NEAR_STEPS = 64;
/** Rings of less double area than this, in square steps, are slivers that come from the grid alone. Internal. */
export const SLIVER_STEPS = 2 ** 20;

/** With 2^26 steps over the figure, products of two differences are still exact in a float. */
const STEPS = 26;

function gridOver(rings: readonly Float64Array[]): Grid {
  const { west, south, east, north } = boundsOf(rings);
  const extent = Math.max(east - west, north - south);
  const scale = 2 ** (STEPS - Math.ceil(Math.log2(extent)));
  return { x: west, y: south, width: east - west, height: north - south, scale };
}

/** Compares the average number of edges that a line across the figure cuts, in both directions. */
function areFewerAbreastAlongX(rings: readonly Float64Array[], { width, height }: Grid): boolean {
  let alongX = 0;
  let alongY = 0;
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
