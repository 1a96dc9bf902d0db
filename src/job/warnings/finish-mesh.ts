import { isSettlineError } from '../../errors.js';
import { at } from '../../geometry/floats.js';
import { locate } from '../../geometry/surface/locate.js';
import { readSurface } from '../../geometry/surface/read-surface.js';
import { corner, type Surface } from '../../geometry/surface/triangulation.js';
import { entry } from '../../invariant.js';
import type { PlanPoint } from '../../units/vector.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { SpotHeight } from '../schema/spot-heights-field.js';
import { placeFrom, type Place } from './figures.js';

/** A triangle of levels as a plane, in metres. Internal. */
export interface Facet {
  readonly corners: readonly [Place, Place, Place];
  /** Height at the first corner, and how it rises along x and y. */
  readonly z: number;
  readonly gradeX: number;
  readonly gradeY: number;
}

/** A surface in triangles between levels, in metres from an origin. Internal. */
export interface LevelMesh {
  /** The triangles. */
  readonly facets: readonly Facet[];
  /** The same, and of four levels that leave the choice of a diagonal those of the other choice. */
  readonly bothChoices: () => readonly Facet[];
  /** The facet nearest to a place outside of all, within {@link REACH}. */
  readonly nearestTo: (place: Place) => Facet | null;
  /** The facet that holds a place; null outside all. */
  readonly facetIn: (place: Place) => Facet | null;
}

/**
 * A triangle lower than this [metres] says nothing of the slope across it: the heights of its corners
 * are good to some millimetres.
 */
const LEAST_ALTITUDE = 0.3;
/** The slope of a triangle is taken to hold so far beyond it [metres]. */
const REACH = 3;

/** Puts levels in triangles; null where they make none. Internal. */
export function levelMesh(levels: readonly SpotHeight[], origin: PlanPoint): LevelMesh | null {
  const surface = triangulated(levels, origin);
  if (surface === null) return null;
  const all = Array.from({ length: surface.triangles.length / 3 }, (_, triangle) =>
    facetOf(surface, cornersOf(surface, triangle)),
  );
  const facets = all.flatMap((facet) => facet ?? []);
  if (facets.length === 0) return null;
  const facetIn = ({ x, y }: Place): Facet | null => all[locate(surface, x, y, 0)] ?? null;
  let both: readonly Facet[] | undefined;
  return {
    facets,
    bothChoices: () => (both ??= [...facets, ...otherChoices(surface)]),
    facetIn,
    nearestTo: (place) => nearestOf(facets, place),
  };
}

const meshes = new WeakMap<readonly SpotHeight[], LevelMesh | null>();

/** The finished levels of a pavement in triangles, seen from its outline: put so once. Internal. */
export function finishedMesh({ finishedLevels, outline }: Pavement): LevelMesh | null {
  if (finishedLevels === undefined) return null;
  const known = meshes.get(finishedLevels);
  if (known !== undefined) return known;
  const made = levelMesh(finishedLevels, outline.origin);
  meshes.set(finishedLevels, made);
  return made;
}

const cornersOf = (surface: Surface, triangle: number): Corners => [
  corner(surface, triangle, 0),
  corner(surface, triangle, 1),
  corner(surface, triangle, 2),
];

type Corners = readonly [number, number, number];

/** Two triangles are cut by the other diagonal too where the angles facing the first come this near to half a turn. */
const OPEN_CHOICE = 0.2;

/** The triangles that four levels make by the other diagonal, where either would do. */
function otherChoices(surface: Surface): Facet[] {
  const found: Facet[] = [];
  surface.halfedges.forEach((twin, side) => {
    if (twin < side) return;
    const [from, to] = [at32(surface.triangles, side), at32(surface.triangles, next(side))];
    const apex = at32(surface.triangles, next(next(side)));
    const facing = at32(surface.triangles, next(next(twin)));
    const angles = angleAt(surface, apex, from, to) + angleAt(surface, facing, from, to);
    if (angles < Math.PI - OPEN_CHOICE) return;
    for (const corners of [
      [apex, from, facing],
      [apex, facing, to],
    ] as const) {
      const facet = facetOf(surface, corners);
      if (facet !== null) found.push(facet);
    }
  });
  return found;
}

/** The half-edge after one, round its triangle. */
const next = (side: number): number => (side % 3 === 2 ? side - 2 : side + 1);

const at32 = (list: Uint32Array, index: number): number => list[index] ?? 0;

function angleAt({ xy }: Surface, apex: number, from: number, to: number): number {
  const [x, y] = [at(xy, 2 * apex), at(xy, 2 * apex + 1)];
  const [ax, ay] = [at(xy, 2 * from) - x, at(xy, 2 * from + 1) - y];
  const [bx, by] = [at(xy, 2 * to) - x, at(xy, 2 * to + 1) - y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

function triangulated(levels: readonly SpotHeight[], origin: PlanPoint): Surface | null {
  if (levels.length < 3) return null;
  const floats = new Float64Array(3 * levels.length);
  levels.forEach((level, k) => {
    const { x, y } = placeFrom(origin, level);
    floats.set([x, y, level.z.toNumber('m')], 3 * k);
  });
  if (isOnOneLine(floats)) return null;
  try {
    // fine: both diagonals are looked at by the facets themselves
    return readSurface(floats, 'levels', { x: 0, y: 0, isFine: true });
  } catch (error) {
    // levels that lie on one line but for a rounding make no surface
    if (isSettlineError(error)) return null;
    throw error;
  }
}

/** Stakes along one string are the usual case: an error for each would take longer than the rest. */
function isOnOneLine(floats: Float64Array): boolean {
  const [x0, y0] = [at(floats, 0), at(floats, 1)];
  const [dx, dy] = [at(floats, 3) - x0, at(floats, 4) - y0];
  for (let k = 6; k < floats.length; k += 3) {
    if (dx * (at(floats, k + 1) - y0) !== dy * (at(floats, k) - x0)) return false;
  }
  return true;
}

function facetOf(surface: Surface, [a, b, c]: Corners): Facet | null {
  const place = (k: number): Place => ({ x: at(surface.xy, 2 * k), y: at(surface.xy, 2 * k + 1) });
  const [pa, pb, pc] = [place(a), place(b), place(c)];
  const [ux, uy, vx, vy] = [pb.x - pa.x, pb.y - pa.y, pc.x - pa.x, pc.y - pa.y];
  const double = ux * vy - uy * vx;
  const longest = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy), Math.hypot(vx - ux, vy - uy));
  if (Math.abs(double) < LEAST_ALTITUDE * longest) return null;
  const z = at(surface.z, a);
  const [up, over] = [at(surface.z, b) - z, at(surface.z, c) - z];
  const gradeX = (up * vy - over * uy) / double;
  const gradeY = (over * ux - up * vx) / double;
  return { corners: [pa, pb, pc], z, gradeX, gradeY };
}

function nearestOf(facets: readonly Facet[], place: Place): Facet | null {
  let nearest: Facet | null = null;
  let least = REACH;
  for (const facet of facets) {
    const away = distanceTo(facet, place);
    if (away > least || (away === least && nearest !== null)) continue;
    nearest = facet;
    least = away;
  }
  return nearest;
}

/** The facets whose boxes come near a stretch. Internal. */
export function facetsNear(facets: readonly Facet[], from: Place, to: Place): readonly Facet[] {
  const [west, east] = [Math.min(from.x, to.x) - NEAR, Math.max(from.x, to.x) + NEAR];
  const [south, north] = [Math.min(from.y, to.y) - NEAR, Math.max(from.y, to.y) + NEAR];
  return facets.filter(
    ({ corners: [a, b, c] }) =>
      Math.max(a.x, b.x, c.x) >= west &&
      Math.min(a.x, b.x, c.x) <= east &&
      Math.max(a.y, b.y, c.y) >= south &&
      Math.min(a.y, b.y, c.y) <= north,
  );
}
const NEAR = 1e-3;

/** True for a place in a facet, its sides counted. Internal. */
export const isIn = (facet: Facet, place: Place): boolean => distanceTo(facet, place) === 0;

/** From a triangle to a place; 0 inside. */
function distanceTo({ corners }: Facet, place: Place): number {
  const sides = corners.map((from, k) => [from, entry(corners, (k + 1) % 3)] as const);
  const turns = sides.map(
    ([a, b]) => (b.x - a.x) * (place.y - a.y) - (b.y - a.y) * (place.x - a.x),
  );
  if (turns.every((turn) => turn >= 0) || turns.every((turn) => turn <= 0)) return 0;
  return Math.min(...sides.map(([a, b]) => distanceToSide(a, b, place)));
}

const distanceToSide = (a: Place, b: Place, place: Place): number => {
  const on = nearestOnSide(a, b, place);
  return Math.hypot(place.x - on.x, place.y - on.y);
};

/** The point of a stretch that is nearest to a place. Internal. */
export function nearestOnSide(a: Place, b: Place, place: Place): Place {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const share = ((place.x - a.x) * x + (place.y - a.y) * y) / (x * x + y * y);
  const held = Math.min(1, Math.max(0, share));
  return { x: a.x + x * held, y: a.y + y * held };
}

/** Height of a facet, also beyond it. Internal. */
export const heightOf = ({ corners: [a], z, gradeX, gradeY }: Facet, { x, y }: Place): number =>
  z + gradeX * (x - a.x) + gradeY * (y - a.y);

/** Where a stretch crosses sides of facets, as shares of it in order; 0 and 1 included. Internal. */
export function marksAlong(facets: readonly Facet[], from: Place, to: Place): number[] {
  const marks = new Set([0, 1]);
  const [x, y] = [to.x - from.x, to.y - from.y];
  for (const { corners } of facets) {
    corners.forEach((c, k) => {
      const d = entry(corners, (k + 1) % 3);
      const [sx, sy] = [d.x - c.x, d.y - c.y];
      const turn = x * sy - y * sx;
      if (turn === 0) return;
      const share = ((c.x - from.x) * sy - (c.y - from.y) * sx) / turn;
      const along = ((c.x - from.x) * y - (c.y - from.y) * x) / turn;
      if (share > 0 && share < 1 && along >= 0 && along <= 1) marks.add(share);
    });
  }
  return [...marks].sort((a, b) => a - b);
}
