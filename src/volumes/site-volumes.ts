// The outline is read, with its arcs, by the outline folder: one description for all calculations.
import { isSettlineError, SettlineError, type FieldPath, type Issue } from '../errors.js';
import { makeReader } from '../input/reader.js';
import { readOutline, type Outline, type OutlineInput } from '../outline/read-outline.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { fromNumber } from '../units/construct.js';
import type { Area, Length, Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { readSiteDesign, type ReadDesign, type SiteDesignInput } from './read-site-design.js';
import { readSpots, type Spots, type SpotsInput } from './read-spots.js';
import { floatsOf, makeFrame, ringsIn, type SiteFrame } from './site-frame.js';
import { inState, type StateVolume } from './state-volume.js';
import { compare, type Compared, type LocalPlane } from './surface/compare.js';
import { readRings } from './surface/outline-mesh.js';
import { readSurface } from './surface/read-surface.js';
import type { Depth } from './surface/tally.js';
import type { Surface } from './surface/triangulation.js';
import { meshWarped } from './surface/warped-mesh.js';

/** A depth on the site, not negative, and where it is. */
export interface SiteDepth {
  readonly depth: Length;
  readonly x: Length;
  readonly y: Length;
}

/** Cut and fill of a site. */
export interface SiteVolumes extends Worked {
  /** Soil to dig, as it lies. */
  readonly cut: StateVolume<'bank'>;
  /** Room to fill, which holds compacted soil. */
  readonly fill: StateVolume<'compacted'>;
  /** Room of the cut less room of the fill. */
  readonly net: Volume;
  readonly cutArea: Area;
  readonly fillArea: Area;
  /** What was compared: where both surfaces are, inside the outline. */
  readonly area: Area;
  /** Part of the outline that the spot heights do not reach: nothing is counted there. */
  readonly uncoveredArea: Area;
  /** True where the spot heights reach over the whole outline, or none was given. */
  readonly isCovered: boolean;
  /** Net over the area compared, + where the site is high. */
  readonly meanDepth: Length;
  readonly deepestCut: SiteDepth | null;
  readonly deepestFill: SiteDepth | null;
  readonly cautions: readonly Caution[];
}

/**
 * Cut and fill of a site between existing spot heights and a design, inside an outline:
 * `cut = integral of max(existing - design, 0)` over the triangles between the heights, `fill`
 * likewise below. The heights are read exactly, from the first one on; the sums are taken in floats
 * and kept to 12 digits. Arcs of the outline count as chords of 1/50 rad.
 *
 * @param options.existing - `{ unit, points: [x, y, z][] }` or a list of `{ x, y, z }` lengths; z is
 *   the elevation of the existing surface; 3 to 20 000 points
 * @param options.design - elevations to dig or fill to: a plane `{ z0, gradeX, gradeY }` (`z0` at
 *   x = y = 0) or `{ point, gradeX, gradeY }`; or spot heights as above; or
 *   `{ unit, corners: [x, y, z][] }`, four in order, with straight lines between
 * @param options.outline - where to dig; as in `outlineArea`, with arcs and holes. Without it, all
 *   that both surfaces cover
 * @returns cut in the bank, fill compacted, net, areas, mean depth, deepest cut and fill with their
 *   places, and the area of the outline that the heights do not reach
 * @throws `TOO_FEW_POINTS`, `POINTS_COLLINEAR`, `TWO_HEIGHTS`, `CORNERS_NOT_CONVEX`,
 *   `SURFACES_APART`, `SELF_INTERSECTION`, `HOLE_OUTSIDE`, `ZERO_AREA`, `CAPACITY_EXCEEDED`,
 *   `ONE_OF` and the reading codes
 * @source derived
 * @example
 * const yard = siteVolumes({
 *   existing: { unit: 'ft', points: [[0, 0, 10], [9, 0, 10], [9, 9, 10], [0, 9, 10]] },
 *   design: { z0: '9 ft 8 in', gradeX: '0%', gradeY: '0%' },
 * });
 * yard.cut.to('yd3').toString() //=> '1'
 * yard.meanDepth.to('in').toString() //=> '4'
 */
export function siteVolumes(options: {
  readonly existing: SpotsInput;
  readonly design: SiteDesignInput;
  readonly outline?: OutlineInput;
}): SiteVolumes {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const existing = readSpots(reader, fields['existing'], { path: ['existing'] });
  const design = readSiteDesign(reader, fields['design']);
  const outline =
    fields['outline'] === undefined
      ? undefined
      : readOutline(reader, fields['outline'], ['outline']);
  reader.finish();
  const frame = frameOf(existing, outline);
  const compared = located({ existing: existing.path, design: pathOf(design) }, () =>
    compare(
      readSurface(floatsOf(existing.spots, frame), 'existing', NOWHERE),
      localDesign(design, frame),
      outline && readRings(ringsIn(outline, frame), NOWHERE),
    ),
  );
  return describe(compared, frame);
}

const NOWHERE = Object.freeze({ x: 0, y: 0 });

const ZERO_LENGTH: Length = fromNumber(0, 'm');

function frameOf(existing: Spots, outline: Outline | undefined): SiteFrame {
  const [first] = existing.spots;
  const z = first?.z ?? ZERO_LENGTH;
  const { x, y } = outline?.origin ?? first ?? { x: ZERO_LENGTH, y: ZERO_LENGTH };
  return makeFrame({ x, y, z }, existing.unit);
}

function localDesign(design: ReadDesign, frame: SiteFrame): Surface | LocalPlane {
  if (design.kind === 'spots') {
    return readSurface(floatsOf(design.spots.spots, frame), 'design', NOWHERE);
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
    {
      title: 'Cut and fill between the surfaces',
      formula: 'N = C - F',
      given: [
        given('C', 'cut, in the bank', cutVolume),
        given('F', 'fill, compacted', fillVolume),
        given('A', 'area compared', whole),
      ],
      result: given('N', 'net', net),
      source: 'derived',
    },
    {
      title: 'Mean depth',
      formula: 'd = N / A',
      given: [given('N', 'net', net), given('A', 'area compared', whole)],
      result: given('d', 'mean depth (+ the site is high)', found.meanDepth),
      source: 'derived',
    },
  ]);
}
