import { entry } from '../invariant.js';
// The outline is read, with its arcs, by the outline folder: one description for all calculations.
import { isSettlineError, SettlineError, type FieldPath, type Issue } from '../errors.js';
import { custom, optional } from '../input/field.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import { once, onceForEach } from '../once.js';
import { readOutline, type Outline, type OutlineInput } from '../outline/read-outline.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import type { PlanPoint } from '../units/vector.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { readSiteDesign, type ReadDesign, type SiteDesignInput } from './read-site-design.js';
import { readSpots, type SpotsInput } from './read-spots.js';
import {
  floatFrom,
  floatsOf,
  makeFrame,
  outlineIn,
  unitMeasured,
  type SiteFrame,
} from './site-frame.js';
import { inState, type StateVolume } from './state-volume.js';
import { makeHeights } from '../geometry/surface/heights.js';
import { compare, type Compared } from '../geometry/surface/compare.js';
import type { LocalPlane } from '../geometry/surface/compare-with-plane.js';
import { readRings, type Rings } from '../geometry/surface/outline-mesh.js';
import { atHeights, readSurface } from '../geometry/surface/read-surface.js';
import type { Depth } from '../geometry/surface/tally.js';
import type { Surface } from '../geometry/surface/triangulation.js';
import { meshWarped } from '../geometry/surface/warped-mesh.js';

/** An existing surface, a design and where to dig. */
export interface SiteVolumesOptions {
  /** Spot heights of the existing surface, 3 to 20 000. */
  readonly existing: SpotsInput;
  /** Elevations to dig or fill to: a plane, spot heights, or four corners in order. */
  readonly design: SiteDesignInput;
  /** Where to dig, as in `outlineArea`, with arcs and holes. Default: all that both surfaces cover. */
  readonly outline?: OutlineInput;
}

const OPTIONS = shapeOf<SiteVolumesOptions>()({
  existing: custom((reader, value, path) => readSpots(reader, value, { path })),
  design: custom(readSiteDesign),
  outline: optional(custom(readOutline)),
});

/** A depth on the site, not negative, and where it is. */
export interface SiteDepth {
  /** How deep, of the cut or of the fill. */
  readonly depth: Length;
  /** Plan coordinate. */
  readonly x: Length;
  /** Plan coordinate. */
  readonly y: Length;
}

/** Cut and fill of a site. */
export interface SiteVolumes extends Cautioned, Worked {
  /** Soil to dig, in place. */
  readonly cut: StateVolume<'bank'>;
  /** Soil to fill, compacted. */
  readonly fill: StateVolume<'compacted'>;
  /** Cut less fill, as volumes of the site. */
  readonly net: Volume;
  /**
   * By how much cut or fill may be more or less than given, because points on one circle, such as the
   * corners of a grid cell, can be joined in more than one way; 0 where nothing is open.
   */
  readonly diagonalDoubt: Volume;
  /** Where there is cut. */
  readonly cutArea: Area;
  /** Where there is fill. */
  readonly fillArea: Area;
  /** What was compared: where both surfaces are, inside the outline. */
  readonly area: Area;
  /** Part of the outline that the spot heights do not reach: nothing is counted there. */
  readonly uncoveredArea: Area;
  /** True where the spot heights reach over the whole outline, or none was given. */
  readonly isCovered: boolean;
  /** Net over the area compared, + where the site is high. */
  readonly meanDepth: Length;
  /** Where the cut is deepest; null where there is none. */
  readonly deepestCut: SiteDepth | null;
  /** Where the fill is deepest; null where there is none. */
  readonly deepestFill: SiteDepth | null;
}

/**
 * Cut and fill of a site between existing spot heights and a design, inside an outline:
 * `cut = integral of max(existing - design, 0)` over the triangles between the heights, `fill`
 * likewise below. The heights are read exactly, from the first one on; the sums are taken in floats
 * and kept to 12 digits. Up to an arc of the outline, areas are exact to 12 digits and volumes to
 * 1e-9 of the whole.
 *
 * Four spot heights on one circle, such as the corners of a grid cell, can be joined along either
 * diagonal. Both count: the volumes are the mean, and `diagonalDoubt` is half of what they differ by,
 * summed over the site. More points on one circle count as the mean over fans of triangles. The order
 * of the heights makes no difference. Where cells are twisted, cut and fill are each larger than those
 * of `gridVolumes`, whose cells are smooth: by no more than `diagonalDoubt`.
 *
 * @param options - see {@link SiteVolumesOptions}; the existing surface as `{ unit, points: [x, y, z][] }`
 *   or a list of `{ x, y, z }` lengths; the design as a plane `{ z0, gradeX, gradeY }` (`z0` at
 *   x = y = 0) or `{ point, gradeX, gradeY }`, as spot heights, or as `{ unit, corners: [x, y, z][] }`
 * @returns cut bank, fill compacted, net, what diagonals leave open, areas, mean depth, deepest cut and fill with their
 * places, and the area of the outline that the heights do not reach
 * @throws `TOO_FEW`, `POINTS_COLLINEAR`, `TWO_HEIGHTS`, `CORNERS_NOT_CONVEX`,
 *   `SURFACES_APART`, `SELF_INTERSECTION`, `HOLE_OUTSIDE`, `ZERO_AREA`, `TOO_MANY`,
 *   `CONFLICTING_FIELDS` and the reading codes
 * @source derived
 * @example
 * const yard = siteVolumes({
 *   existing: { unit: 'ft', points: [[0, 0, 10], [9, 0, 10], [9, 9, 10], [0, 9, 10]] },
 *   design: { z0: '9 ft 8 in', gradeX: '0%', gradeY: '0%' },
 * });
 * yard.cut.to('yd3').toString() //=> '1'
 * yard.meanDepth.to('in').toString() //=> '4'
 */
export function siteVolumes(options: SiteVolumesOptions): SiteVolumes {
  return volumesBetween(readOptions(options, OPTIONS));
}

/** A site that has been read. Internal. */
export type ReadSite = Values<typeof OPTIONS>;

/** Cut and fill of a site that has been read. */
function volumesBetween({ existing, design, outline }: ReadSite): SiteVolumes {
  const origin = outline?.origin ?? entry(existing.spots, 0);
  return volumesFrom({ existing, design }, origin)(NO_LENGTH).inside(outline);
}

/** An existing surface and a design that have been put in triangles. Internal. */
export interface SiteSurfaces {
  /** Cut and fill inside an outline. */
  readonly inside: (outline: Outline | undefined) => SiteVolumes;
  /** Elevation of the existing surface at a place; null where the heights do not reach. */
  readonly existingAt: (place: PlanPoint) => Length | null;
  /** Existing surface less design at a place; null where one of them does not reach. */
  readonly depthAt: (place: PlanPoint) => Length | null;
}

/**
 * Cut and fill of a site inside one outline after another, and depths at places, with the design
 * lowered by one distance after another: the surfaces are put in triangles once. All is seen from the
 * origin. Internal.
 */
export function volumesFrom(
  { existing, design }: Omit<ReadSite, 'outline'>,
  { x, y }: PlanPoint,
): (loweredBy: Length) => SiteSurfaces {
  const z = entry(existing.spots, 0).z;
  const frame = makeFrame({ x, y, z }, existing.unit ?? unitMeasured(existing.spots));
  const paths = { existing: existing.path, design: pathOf(design) };
  const ground = once(() => readSurface(floatsOf(existing.spots, frame), 'existing', NOWHERE));
  const rings = onceForEach((outline: Outline) => ringsOf(outline, frame));
  let meshed: LocalDesign | undefined;
  return (loweredBy) => {
    const lowered = { ...frame, origin: { x, y, z: z.plus(loweredBy) } };
    const surfaces = located(paths, () => ({
      existing: ground(),
      design: localDesign(design, lowered, meshed),
    }));
    meshed = surfaces.design;
    return compared(surfaces, { frame, paths, rings });
  };
}

type LocalDesign = Surface | LocalPlane;

/** What comparisons of a site share. */
interface Site {
  readonly frame: SiteFrame;
  readonly paths: Readonly<Record<'existing' | 'design', FieldPath>>;
  readonly rings: (outline: Outline) => Rings;
}

/** Compares two surfaces of a site, inside outlines and at places. */
function compared(
  surfaces: { readonly existing: Surface; readonly design: LocalDesign },
  { frame, paths, rings }: Site,
): SiteSurfaces {
  const heightOf = {
    existing: once(() => heightsOf(surfaces.existing)),
    design: once(() => heightsOf(surfaces.design)),
  };
  const heightAt = (of: keyof typeof surfaces, { x, y }: PlanPoint): number | undefined =>
    heightOf[of]()(
      floatFrom(frame.origin.x, x, frame.unit),
      floatFrom(frame.origin.y, y, frame.unit),
    );
  return {
    inside: (outline) => {
      const bounds = outline && rings(outline);
      return describe(
        located(paths, () => compare(surfaces.existing, surfaces.design, bounds)),
        frame,
      );
    },
    existingAt: (place) => {
      const height = heightAt('existing', place);
      return height === undefined ? null : frame.origin.z.plus(frame.toLength(height));
    },
    depthAt: (place) => {
      const [above, below] = [heightAt('existing', place), heightAt('design', place)];
      return above === undefined || below === undefined ? null : frame.toLength(above - below);
    },
  };
}

/** Heights of a surface; undefined where it does not reach. */
const heightsOf = (surface: LocalDesign): ((x: number, y: number) => number | undefined) =>
  'z0' in surface
    ? (x, y) => surface.z0 + surface.gradeX * x + surface.gradeY * y
    : makeHeights(surface);

const NOWHERE = Object.freeze({ x: 0, y: 0 });

function ringsOf(outline: Outline, frame: SiteFrame): Rings {
  const { rings, bows } = outlineIn(outline, frame);
  return readRings(rings, NOWHERE, bows);
}

/** A design seen from the origin of a frame; triangles that it was put in before are kept. */
function localDesign(
  design: ReadDesign,
  frame: SiteFrame,
  meshed: LocalDesign | undefined,
): LocalDesign {
  if (design.kind === 'spots') {
    const { spots, isFine = false } = design.spots;
    const seen = { ...NOWHERE, isFine };
    const floats = floatsOf(spots, frame);
    return meshed !== undefined && 'xy' in meshed
      ? atHeights(meshed, floats, seen)
      : readSurface(floats, 'design', seen);
  }
  if (design.kind === 'corners') {
    return meshWarped(floatsOf(design.spots.spots, frame), ['design']);
  }
  const { x, y, z } = frame.origin;
  const { z0, gradeX, gradeY } = design;
  return {
    z0: z0.plus(x.times(gradeX)).plus(y.times(gradeY)).minus(z).toNumber(frame.unit),
    gradeX: gradeX.toNumber('ratio'),
    gradeY: gradeY.toNumber('ratio'),
  };
}

const pathOf = (design: ReadDesign): FieldPath =>
  design.kind === 'plane' ? ['design'] : design.spots.path;

/** Runs the comparison and moves its faults to the fields of the caller. */
function located<T>(paths: Readonly<Record<string, FieldPath>>, run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!isSettlineError(error)) throw error;
    const [first, ...rest] = error.issues.map((issue): Issue => {
      const [field = '', ...more] = issue.path;
      return { ...issue, path: [...(paths[field] ?? [field]), ...more] };
    });
    throw first === undefined ? error : new SettlineError([first, ...rest]);
  }
}

function describe(compared: Compared, frame: SiteFrame): SiteVolumes {
  const [cutVolume, fillVolume] = [frame.toVolume(compared.cut), frame.toVolume(compared.fill)];
  const net = cutVolume.minus(fillVolume);
  const placed = (depth: Depth | null): SiteDepth | null =>
    depth && {
      depth: frame.toLength(depth.depth),
      x: frame.origin.x.plus(frame.toLength(depth.x)),
      y: frame.origin.y.plus(frame.toLength(depth.y)),
    };
  const whole = frame.toArea(compared.area);
  const found = {
    cut: inState(cutVolume, 'bank'),
    fill: inState(fillVolume, 'compacted'),
    net,
    diagonalDoubt: frame.toVolume(compared.diagonalDoubt),
    cutArea: frame.toArea(compared.cutArea),
    fillArea: frame.toArea(compared.fillArea),
    area: whole,
    uncoveredArea: frame.toArea(compared.uncoveredArea),
    isCovered: compared.uncoveredArea === 0,
    meanDepth: net.dividedBy(whole),
    deepestCut: placed(compared.deepestCut),
    deepestFill: placed(compared.deepestFill),
    cautions: cautionsFor('excavation', 'utilities'),
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Cut and fill between the surfaces',
      formula: 'N = C - F',
      given: [given('C', 'cut, bank', cutVolume), given('F', 'fill, compacted', fillVolume)],
      result: given('N', 'net', net),
    }),
    derivedStep({
      title: 'Mean depth',
      formula: 'd = N / A',
      given: [given('N', 'net', net), given('A', 'area compared', whole)],
      result: given('d', 'mean depth (+ the site is high)', found.meanDepth),
    }),
  ]);
}
