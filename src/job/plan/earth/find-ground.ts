import type { BuildUp } from '../../../build-up/build-up.js';
import { digDepth } from '../../../build-up/excavation-depth.js';
import type { FieldPath } from '../../../errors.js';
import { chordsOf } from '../../../outline/chords.js';
import { ORIGIN } from '../../../outline/read-ring.js';
import type { Outline } from '../../../outline/ring.js';
import { fromSI, type Length } from '../../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../../units/ratio.js';
import { NO_LENGTH } from '../../../units/zero.js';
import type { ReadDesign } from '../../../volumes/read-site-design.js';
import { volumesFrom } from '../../../volumes/site-volumes.js';
import { once, onceForEach } from '../../../once.js';
import { inField } from '../../read/in-field.js';
import { jobInvalid } from '../../read/read-job.js';
import type { ReadJob } from '../../schema/job-shape.js';
import type { Pavement } from '../../schema/layer-kinds.js';
import type { SpotHeight } from '../../schema/spot-heights-field.js';
import type { FinishSurface } from '../finish-surface.js';
import { earthOf, evenGround, filledUp, type Ground, type Measured } from './ground.js';
import { meanDig } from './mean-dig.js';
import { planeOf } from './plane-of.js';
import type { PlannedGrade } from '../plan-grade.js';
import type { EarthPlan } from '../plan-of-site.js';
import type { StakeDig } from '../stake-grounds.js';

/** Readings and outlines for finding the ground of a pavement. Internal. */
export interface GroundBasis {
  readonly pavement: Pavement;
  readonly grade: PlannedGrade | null;
  /** The build-up. Its total is the depth of the subgrade below finished grade. */
  readonly stack: BuildUp;
  /** The bottom of the dig. */
  readonly dig: Outline;
  /** The digs measured at the stakes, string by string. */
  readonly measured: readonly (readonly StakeDig[])[];
  /** Elevations of finished grade from the stakes, at the points they apply to. */
  readonly finishes: readonly SpotHeight[];
  readonly path: FieldPath;
}

/**
 * The ground of a pavement relative to its subgrade. It comes from the first of these that is known:
 * spot heights of the site; ground readings at stakes with known finished grade, as spot heights;
 * those readings weighted along their strings; one depth for the whole dig. Surfaces that are neither
 * planes nor spot heights are split into triangles over a grid of 24 by 24 cells. The error for a
 * twist T is less than T / 6900. Internal.
 *
 * @throws `JOB_INVALID` if the spot heights do not reach the dig, or are on one line
 */
export function findGround(job: ReadJob, basis: GroundBasis): Ground {
  const finish = finishOf(basis);
  if (finish !== null && job.existingLevels !== undefined) {
    const ground = groundBetween('spot-heights', job.existingLevels, { finish, basis });
    if (reaches(ground, basis)) return ground;
    const message = 'no level of the site reaches its dig. Shoot levels inside the dig line';
    throw jobInvalid([
      { path: [...basis.path, 'outline'], code: 'SURFACES_APART', message, params: {} },
    ]);
  }
  const spots = basis.measured.flatMap((line) => line.flatMap(({ spot }) => spot ?? []));
  if (finish !== null && planeOf(spots) !== 'line') {
    const ground = groundBetween('stake-levels', withoutDoubles(spots), { finish, basis });
    // stakes to one side of a dig do not show how its depth varies
    if (reaches(ground, basis)) return ground;
  }
  const mean = meanDig(basis.measured);
  if (mean !== null) return evenGround('along-strings', mean.depth);
  const above = basis.pavement.existingAboveFinish ?? NO_LENGTH;
  return evenGround('uniform', digDepth(basis.stack, above));
}

/** Equal thicknesses have equal digits. */
const digitsOf = (thickness: Length): string => thickness.toJSON().value;

const reaches = (ground: Ground, { dig }: GroundBasis): boolean =>
  !ground.measure(dig, NO_LENGTH).covered.isZero();

interface Finish {
  readonly kind: NonNullable<EarthPlan['finish']>;
  readonly design: ReadDesign;
}

function groundBetween(
  by: 'spot-heights' | 'stake-levels',
  spots: readonly SpotHeight[],
  { finish, basis }: { readonly finish: Finish; readonly basis: GroundBasis },
): Ground {
  const { dig, stack, path } = basis;
  const existing = { spots, path: ['existing'], unit: undefined };
  const inJob = <T>(run: () => T): T =>
    inField(run, ([first]) => {
      if (first === 'design') return [...path, 'finishedLevels'];
      if (first === 'outline') return [...path, 'outline'];
      return by === 'spot-heights' ? ['existingLevels'] : ['stakes'];
    });
  const lowered = once(() => volumesFrom({ existing, design: finish.design }, dig.origin));
  // to strip the ground is to lower the design by as much less
  const between = onceForEach(
    (stripped: Length) => lowered()(stack.total.minus(stripped)),
    digitsOf,
  );
  const known = (outline: Outline, stripped: Length): Measured =>
    inJob(() => earthOf(outline, between(stripped).inside));
  const wholeDig = onceForEach((stripped: Length) => known(dig, stripped), digitsOf);
  return {
    basis: by,
    finish: finish.kind,
    depth: null,
    depthAt: (place) => between(NO_LENGTH).depthAt(place),
    existingAt: (place) => between(NO_LENGTH).existingAt(place),
    measure: (outline, stripped) => {
      const whole = () => wholeDig(stripped);
      return filledUp(outline === dig ? whole() : known(outline, stripped), whole);
    },
  };
}

function finishOf({ pavement, grade, dig, finishes }: GroundBasis): Finish | null {
  const { finishedLevels } = pavement;
  if (finishedLevels !== undefined) {
    return { kind: 'spot-heights', design: spotsDesign(finishedLevels) };
  }
  if (grade === null) return finishOfStakes(finishes);
  const { plane, surface } = grade;
  if (plane !== null) {
    const { gradeX, gradeY } = plane;
    const exact = { z0: plane.elevationAt(ORIGIN), gradeX, gradeY };
    return { kind: 'plane', design: { kind: 'plane', ...exact } };
  }
  return { kind: 'sampled', design: spotsDesign(sampled(surface, dig), true) };
}

/** Finished grade at the stakes: a plane if all are in one, else triangles between them. */
function finishOfStakes(levels: readonly SpotHeight[]): Finish | null {
  const plane = planeOf(levels);
  if (plane === 'line') return null;
  return plane === 'surface'
    ? { kind: 'stakes', design: spotsDesign(levels) }
    : { kind: 'plane', design: { kind: 'plane', ...plane } };
}

/** A stake of two strings counts once. */
function withoutDoubles(spots: readonly SpotHeight[]): SpotHeight[] {
  const keyOf = ({ x, y }: SpotHeight) => `${x.toJSON().value} ${y.toJSON().value}`;
  return [...new Map(spots.map((spot) => [keyOf(spot), spot])).values()];
}

const spotsDesign = (spots: readonly SpotHeight[], isFine = false): ReadDesign => ({
  kind: 'spots',
  spots: { spots, path: ['design'], unit: undefined, isFine },
});

const CELLS = 24;

/** A surface sampled at the corners of a grid over the bounding box of the dig. */
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
