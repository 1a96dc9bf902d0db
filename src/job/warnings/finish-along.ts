import { entry } from '../../invariant.js';
import { fromNumber } from '../../units/construct.js';
import { exactOf } from '../../units/quantity.js';
import type { PlanPoint } from '../../units/vector.js';
import { slopeAt, type FinishSurface } from '../plan/finish-surface.js';
import type { LaidOut } from '../plan/lay-out.js';
import { placeFrom, type Place } from './figures.js';
import {
  facetsNear,
  finishedMesh,
  heightOf,
  isIn,
  levelMesh,
  marksAlong,
  type LevelMesh,
} from './finish-mesh.js';
import { alongPiece, type EdgePiece } from './paving-edges.js';

/** Finished grade at a place of an edge. Internal. */
export interface FinishOnEdge {
  readonly place: Place;
  /** Elevation in metres. */
  readonly height: number;
  /** Slope of finished grade out of the paving, + rising. */
  readonly outward: number;
}

/** Finished grade of a pavement as one kind of level gives it. Internal. */
export interface KnownFinish {
  /** Finished grade along a piece of an edge, wherever it may be at its highest or flattest. */
  readonly along: (piece: EdgePiece) => readonly FinishOnEdge[];
  /** Slopes that differ by less are the same: what the levels are rounded to. */
  readonly rounding: number;
}

/** Levels are written to a millimetre or a hundredth of a foot: over some metres that is so much slope. */
const ROUNDING_OF_LEVELS = 5e-4;
/** Float noise of a slope. */
const NOISE = 1e-7;

/** Finished grade by finished levels, by fixed levels and by stakes: by each that a pavement has. Internal. */
export function knownFinishes({ pavement, grade, finishes }: LaidOut): KnownFinish[] {
  const { origin } = pavement.outline;
  const known: KnownFinish[] = [];
  const addMesh = (mesh: LevelMesh | null): void => {
    if (mesh !== null) known.push(finishByMesh(mesh));
  };
  addMesh(finishedMesh(pavement));
  if (grade !== null) known.push(finishBySurface(grade, origin));
  addMesh(levelMesh(finishes.levels, origin));
  return known;
}

/** Between the sides of triangles height and slope run evenly: their ends and middles tell all. */
function finishByMesh(mesh: LevelMesh): KnownFinish {
  const along = (piece: EdgePiece): FinishOnEdge[] => {
    const near = facetsNear(mesh.bothChoices(), piece.from, piece.to);
    const marks = marksAlong(near, piece.from, piece.to);
    return marks.slice(1).flatMap((last, k) => {
      const first = entry(marks, k);
      const middle = inward(alongPiece(piece, (first + last) / 2), piece);
      const holding = near.filter((facet) => isIn(facet, middle));
      const facets = holding.length > 0 ? holding : [mesh.nearestTo(middle)];
      return facets.flatMap((facet) => {
        if (facet === null) return [];
        const outward = facet.gradeX * piece.outward.x + facet.gradeY * piece.outward.y;
        return [first, last].map((share) => {
          const place = alongPiece(piece, share);
          return { place, height: heightOf(facet, place), outward };
        });
      });
    });
  };
  return { along, rounding: ROUNDING_OF_LEVELS };
}

/** A hair into the paving: an edge may lie on the side of two triangles. */
const inward = ({ x, y }: Place, { outward }: EdgePiece): Place => ({
  x: x - outward.x * HAIR,
  y: y - outward.y * HAIR,
});
const HAIR = 1e-6;

/** Steps along an edge: slope and height of planes and warped surfaces run evenly along it. */
const STEPS = { plane: 3, warped: 3, line: 12 } as const;

/** A surface through fixed levels: at even steps, and beside each level of a line that may bend there. */
function finishBySurface(
  { surface, plan }: NonNullable<LaidOut['grade']>,
  origin: PlanPoint,
): KnownFinish {
  const levels = plan.levels.map((level) => placeFrom(origin, level));
  const along = (piece: EdgePiece): FinishOnEdge[] => {
    const even = STEPS[plan.kind];
    const steps = Array.from({ length: even + 1 }, (_, k) => k / even);
    const beside =
      plan.kind === 'line' ? levels.flatMap((level) => sharesBeside(piece, level)) : [];
    return [...steps, ...beside].map((share) => sampled(surface, origin, { piece, share }));
  };
  return { along, rounding: NOISE };
}

/** Just before and just beyond the place of a piece that a level lies beside. */
function sharesBeside({ from, to }: EdgePiece, level: Place): number[] {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const share = ((level.x - from.x) * x + (level.y - from.y) * y) / (x * x + y * y);
  return [share - 0.01, share + 0.01].filter((one) => one > 0 && one < 1);
}

function sampled(
  surface: FinishSurface,
  origin: PlanPoint,
  { piece, share }: { readonly piece: EdgePiece; readonly share: number },
): FinishOnEdge {
  const place = alongPiece(piece, share);
  const there = {
    x: origin.x.plus(fromNumber(place.x, 'm')),
    y: origin.y.plus(fromNumber(place.y, 'm')),
  };
  const direction = {
    x: exactOf(fromNumber(piece.outward.x, 'm')),
    y: exactOf(fromNumber(piece.outward.y, 'm')),
  };
  return {
    place,
    height: surface(there).elevation.toNumber('m'),
    outward: slopeAt(surface, there, direction).toNumber('ratio'),
  };
}
