import { isSettlineError, type FieldPath } from '../../errors.js';
import { planeThrough } from '../../grading/plane-through.js';
import type { Plane } from '../../grading/plane.js';
import { chordsOf } from '../../outline/chords.js';
import { ORIGIN } from '../../outline/read-ring.js';
import type { Outline } from '../../outline/ring.js';
import { fromSI, type Area, type Length, type Volume } from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import type { ReadDesign } from '../../volumes/read-site-design.js';
import { volumesBetween, type SiteVolumes } from '../../volumes/site-volumes.js';
import { inState } from '../../volumes/state-volume.js';
import { given, type Step } from '../../working.js';
import { inField } from '../read/in-field.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { SpotHeight } from '../schema/spot-heights-field.js';
import type { FinishSurface } from './finish-surface.js';
import { digOutline, type DigRings } from './in-dig.js';
import type { PlannedGrade } from './plan-grade.js';
import type { DigPlan, EarthworkPlan } from './plan.js';

/** What the dig of a pavement is measured between. Internal. */
export interface EarthworkBasis {
  readonly pavement: Pavement;
  readonly grade: PlannedGrade | null;
  /** Total build-up: subgrade below finished grade. */
  readonly total: Length;
  /** The dig by one depth all over. */
  readonly dig: DigPlan;
  readonly digArea: Area;
  readonly rings: DigRings;
}

interface Finish extends Pick<EarthworkPlan, 'finish'> {
  readonly design: ReadDesign;
}

/**
 * Earth between the existing spot heights and the subgrade, inside the dig, with vertical sides: the
 * sums of {@link siteVolumes}. Null where the job has no spot heights or no finished surface. Surfaces
 * that are neither planes nor spot heights are put in triangles over a grid of 24 by 24 cells, which
 * leaves a twist T off by less than T / 6900. Internal.
 *
 * @throws `JOB_INVALID` where the spot heights do not reach the dig, or lie on one line
 */
export function planEarthwork(
  job: ReadJob,
  basis: EarthworkBasis,
  path: FieldPath,
): EarthworkPlan | null {
  const { existingLevels } = job;
  if (existingLevels === undefined) return null;
  const outline = digOutline(basis.rings);
  const finish = finishOf(job, basis, outline);
  if (finish === null) return null;
  const existing = { spots: existingLevels, path: ['existing'], unit: undefined };
  const found = inField(
    () => volumesBetween({ existing, design: finish.design, outline }),
    ([first]) => {
      if (first === 'design') return [...path, 'finishedLevels'];
      return first === 'outline' ? [...path, 'outline'] : ['existingLevels'];
    },
  );
  return described(found, finish.finish, basis);
}

function finishOf(job: ReadJob, basis: EarthworkBasis, outline: Outline): Finish | null {
  const { pavement, grade, total } = basis;
  const { finishedLevels } = pavement;
  if (finishedLevels !== undefined) {
    return { finish: 'spot-heights', design: lowered(finishedLevels, total) };
  }
  if (grade !== null) {
    return grade.plane === null
      ? { finish: 'sampled', design: lowered(sampled(grade.surface, outline), total) }
      : { finish: 'plane', design: planeBelow(grade.plane, total) };
  }
  return finishOfStakes(job, basis);
}

/** Finished grade at the stakes: a plane if all lie in one, else their triangles. */
function finishOfStakes(job: ReadJob, { pavement, total }: EarthworkBasis): Finish | null {
  const levels = job.stringLines
    .filter(({ pavement: id }) => id === pavement.id)
    .flatMap(({ stakes }) =>
      stakes.flatMap(({ x, y, finish }) => (finish === undefined ? [] : [{ x, y, z: finish }])),
    );
  if (levels.length < 3) return null;
  try {
    const plane = planeThrough({ points: levels });
    return plane.isExact
      ? { finish: 'plane', design: planeBelow(plane, total) }
      : { finish: 'stakes', design: lowered(levels, total) };
  } catch (error) {
    // stakes in one line, or too many: they make no surface
    if (isSettlineError(error)) return null;
    throw error;
  }
}

const planeBelow = (plane: Plane, total: Length): ReadDesign => ({
  kind: 'plane',
  z0: plane.elevationAt(ORIGIN).minus(total),
  gradeX: plane.gradeX,
  gradeY: plane.gradeY,
});

const lowered = (points: readonly SpotHeight[], by: Length): ReadDesign => ({
  kind: 'spots',
  spots: {
    spots: points.map(({ x, y, z }) => ({ x, y, z: z.minus(by) })),
    path: ['design'],
    unit: undefined,
  },
});

const CELLS = 24;

/** A surface at the corners of a grid over the box round the dig. */
function sampled(surface: FinishSurface, outline: Outline): SpotHeight[] {
  const { points } = chordsOf(outline, false);
  const even = (values: readonly Ratio[]): Length[] => {
    const least = values.reduce((a, b) => (compareRatios(b, a) < 0 ? b : a));
    const most = values.reduce((a, b) => (compareRatios(b, a) > 0 ? b : a));
    const step = fromSI('length', divideRatios(subtractRatios(most, least), wholeRatio(CELLS)));
    const start = fromSI('length', least);
    return Array.from({ length: CELLS + 1 }, (_, index) => start.plus(step.times(index)));
  };
  const { x: x0, y: y0 } = outline.origin;
  const ys = even(points.map(({ y }) => y)).map((y) => y0.plus(y));
  return even(points.map(({ x }) => x)).flatMap((along) => {
    const x = x0.plus(along);
    return ys.map((y) => ({ x, y, z: surface({ x, y }).elevation }));
  });
}

function described(
  found: SiteVolumes,
  finish: EarthworkPlan['finish'],
  { dig, digArea }: EarthworkBasis,
): EarthworkPlan {
  const { area, uncoveredArea, deepestCut, deepestFill } = found;
  // what the spot heights do not reach counts in at the mean of the rest
  const whole = (volume: Volume): Volume =>
    found.isCovered ? volume : volume.times(area.plus(uncoveredArea).dividedBy(area));
  const uniform = {
    depth: dig.depth,
    volume: digArea.times(dig.depth),
    basis: dig.basis === 'measured' ? ('measured' as const) : ('uniform' as const),
  };
  const cut = whole(found.cut.volume);
  return {
    finish,
    cut: inState(cut, 'bank'),
    fill: inState(whole(found.fill.volume), 'compacted'),
    cutArea: found.cutArea,
    fillArea: found.fillArea,
    uncovered: uncoveredArea,
    deepestCut,
    deepestFill,
    uniform,
    uniformOff: uniform.volume.minus(cut),
  };
}

/** The depth of dig that spot heights give: their mean over the dig. Internal. */
export function digBySurface(
  uniform: DigPlan,
  earthwork: EarthworkPlan | null,
  { digArea, removed }: { readonly digArea: Area; readonly removed: Length },
): DigPlan {
  if (earthwork === null) return uniform;
  const net = earthwork.cut.volume.minus(earthwork.fill.volume);
  const depth = net.dividedBy(digArea);
  return { ...uniform, depth, soil: depth.minus(removed), basis: 'surface' };
}

/** The working of the earth between two surfaces. Internal. */
export function earthworkSteps(earthwork: EarthworkPlan | null, digArea: Area): Step[] {
  if (earthwork === null) return [];
  const { cut, fill, cutArea, fillArea, uncovered, uniform, uniformOff } = earthwork;
  return [
    {
      title: 'Earth between the spot heights and the subgrade',
      formula: 'C = integral of (existing - subgrade) where it is above, F where it is below',
      given: [
        given('A', 'area of the dig', digArea),
        given('Ac', 'area of cut', cutArea),
        given('Af', 'area of fill', fillArea),
        given('Au', 'not reached by spot heights, counted at the mean depth', uncovered),
        given('F', 'fill, in place', fill.volume),
      ],
      result: given('C', 'cut, in the bank', cut.volume),
      source: 'derived',
    },
    {
      title: 'How far one depth all over would have been off',
      formula: 'o = A E - C',
      given: [
        given('A', 'area of the dig', digArea),
        given('E', `depth all over (${uniform.basis})`, uniform.depth),
        given('C', 'cut, in the bank', cut.volume),
      ],
      result: given('o', 'too much (+) or too little (-)', uniformOff),
      source: 'derived',
    },
  ];
}
