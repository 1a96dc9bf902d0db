import { isSettlineError, type FieldPath } from '../../errors.js';
import { planeThrough } from '../../grading/plane-through.js';
import type { Plane } from '../../grading/plane.js';
import { fromNumber } from '../../units/construct.js';
import { exactOf, fromSI, type Area, type Length, type Volume } from '../../units/quantity.js';
import { divideRatios, wholeRatio } from '../../units/ratio.js';
import type { PlanPoint } from '../../units/vector.js';
import { inState } from '../../volumes/state-volume.js';
import type { DesignPlane } from '../../geometry/surface/read-design.js';
import { surfaceVolumes } from '../../geometry/surface/surface-volumes.js';
import type { Depth } from '../../geometry/surface/tally.js';
import { given, type Step } from '../../working.js';
import type { SpotHeight } from '../schema/spot-heights-field.js';
import type { FinishSurface } from './finish-surface.js';
import { inField } from '../read/in-field.js';
import { digRings } from './in-dig.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { PlannedGrade } from './plan-grade.js';
import type { DeepestPlan, DigPlan, DigRing, EarthworkPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** What the dig of a pavement is measured between. Internal. */
export interface EarthworkBasis {
  readonly pavement: Pavement;
  readonly grade: PlannedGrade | null;
  /** Total build-up: subgrade below finished grade. */
  readonly total: Length;
  /** The dig by one depth all over. */
  readonly dig: DigPlan;
  readonly digArea: Area;
  readonly rings: { readonly outer: DigRing; readonly holes: readonly DigRing[] };
}

type Finish = Pick<EarthworkPlan, 'finish'> & { readonly design: DesignPlane | Float64Array };

/**
 * Earth between the existing spot heights and the subgrade, inside the dig: the sides stand upright.
 * Null where the job has no spot heights or no finished surface. Worked out in floats, to 1e-12 or
 * so; surfaces that are neither planes nor spot heights are put in triangles over a grid of 24 by 24
 * cells, which leaves a twist T off by less than T / 6900. Internal.
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
  const { outer, holes } = digRings(basis.rings);
  const finish = finishOf(job, basis, outer);
  if (finish === null) return null;
  const found = inField(
    () =>
      surfaceVolumes({
        existing: triples(existingLevels),
        design: finish.design,
        outline: [outer, ...holes],
      }),
    ([first]) => {
      if (first === 'design') return [...path, 'finishedLevels'];
      return first === 'outline' ? [...path, 'outline'] : ['existingLevels'];
    },
  );
  return described(found, finish.finish, basis);
}

function finishOf(job: ReadJob, basis: EarthworkBasis, outer: Float64Array): Finish | null {
  const { pavement, grade, total } = basis;
  const { finishedLevels } = pavement;
  if (finishedLevels !== undefined) {
    return { finish: 'spot-heights', design: triples(finishedLevels, total) };
  }
  if (grade !== null) {
    return grade.plane === null
      ? { finish: 'sampled', design: sampled(grade.surface, outer, total) }
      : { finish: 'plane', design: planeOf(grade.plane, total) };
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
      ? { finish: 'plane', design: planeOf(plane, total) }
      : { finish: 'stakes', design: triples(levels, total) };
  } catch (error) {
    // stakes in one line, or too many: they make no surface
    if (isSettlineError(error)) return null;
    throw error;
  }
}

function planeOf(plane: Plane, total: Length): DesignPlane {
  const [gradeX, gradeY] = [plane.gradeX.toNumber('ratio'), plane.gradeY.toNumber('ratio')];
  const z0 = plane.elevationAt(ORIGIN).minus(total).toNumber('m');
  return { z0, gradeX, gradeY };
}

const NOTHING = fromNumber(0, 'm');
const ORIGIN: PlanPoint = Object.freeze({ x: NOTHING, y: NOTHING });

/** Spot heights in metres, lowered by a depth. */
function triples(points: readonly SpotHeight[], by: Length = NOTHING): Float64Array {
  const found = new Float64Array(3 * points.length);
  points.forEach(({ x, y, z }, index) => {
    found.set([x.toNumber('m'), y.toNumber('m'), z.minus(by).toNumber('m')], 3 * index);
  });
  return found;
}

const CELLS = 24;

/** A surface at the corners of a grid over the box round the dig, lowered by a depth. */
function sampled(surface: FinishSurface, outer: Float64Array, total: Length): Float64Array {
  const even = (axis: 0 | 1): Length[] => {
    const values = outer.filter((_, index) => index % 2 === axis);
    const least = fromNumber(Math.min(...values), 'm');
    const width = exactOf(fromNumber(Math.max(...values), 'm').minus(least));
    const step = fromSI('length', divideRatios(width, wholeRatio(CELLS)));
    return Array.from({ length: CELLS + 1 }, (_, index) => least.plus(step.times(index)));
  };
  const ys = even(1);
  const points = even(0).flatMap((x) => ys.map((y) => ({ x, y, z: surface({ x, y }).elevation })));
  return triples(points, total);
}

function described(
  found: ReturnType<typeof surfaceVolumes>,
  finish: EarthworkPlan['finish'],
  { dig, digArea }: EarthworkBasis,
): EarthworkPlan {
  const share = found.uncoveredArea / found.area;
  const volume = (cubicMetres: number): Volume => fromNumber(cubicMetres * (1 + share), 'm3');
  const uniform = {
    depth: dig.depth,
    volume: digArea.times(dig.depth),
    basis: dig.basis === 'measured' ? ('measured' as const) : ('uniform' as const),
  };
  const cut = volume(found.cut);
  return {
    finish,
    cut: inState(cut, 'bank'),
    fill: inState(volume(found.fill), 'compacted'),
    cutArea: fromNumber(found.cutArea, 'm2'),
    fillArea: fromNumber(found.fillArea, 'm2'),
    uncovered: fromNumber(found.uncoveredArea, 'm2'),
    deepestCut: deepest(found.deepestCut),
    deepestFill: deepest(found.deepestFill),
    uniform,
    uniformOff: uniform.volume.minus(cut),
  };
}

const deepest = (place: Depth | null): DeepestPlan | null =>
  place && {
    depth: fromNumber(place.depth, 'm'),
    x: fromNumber(place.x, 'm'),
    y: fromNumber(place.y, 'm'),
  };

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
