import { steepestAlong } from '../../grading/fall-of.js';
import { slopeBetween } from '../../grading/slope-between.js';
import { marginTo } from '../../grading/slope-limit.js';
import { referenceQuantity } from '../../reference-quantity.js';
import { PAVER_TOLERANCES } from '../../sources/surface-tolerances.js';
import { fromSI, type Length, type Slope } from '../../units/quantity.js';
import { HALF_RATIO } from '../../units/ratio.js';
import {
  between as planVector,
  norm,
  pointFrom,
  scaled,
  squared,
  turnedLeft,
  type PlanPoint,
} from '../../units/vector.js';
import { NO_SLOPE } from '../../units/zero.js';
import { exactVerdict } from '../../verdict.js';
import { derivedStep, formulaStep, given, type Step } from '../../working.js';
import { slopeAt, type FinishSurface } from './finish-surface.js';
import type { SlopePlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

interface Stake extends PlanPoint {
  readonly id: string;
  /** Elevation of finished grade; null if it is not known. */
  readonly finish: Length | null;
}

/** The minimum fall if the job gives none: the published minimum. */
export const PUBLISHED_LEAST_FALL = referenceQuantity('slope', PAVER_TOLERANCES.minimumSlope);

/** A fall between two stakes, with its working. Internal. */
export interface PlannedSlope {
  readonly slope: SlopePlan;
  /** The fall square to the string. */
  readonly crossSlope: Slope;
  readonly steps: () => readonly Step[];
}

/**
 * The fall between neighbouring stakes with known finished grade: `slope = rise / run`,
 * `steepest fall = sqrt(slope^2 + cross slope^2)`. The comparison with the minimum is exact. Internal.
 */
export function planSlopes(
  stakes: readonly Stake[],
  across: { readonly crossSlope: Slope | undefined; readonly surface: FinishSurface | null },
  job: ReadJob,
): PlannedSlope[] {
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const planned: PlannedSlope[] = [];
  stakes.forEach((to, index) => {
    const from = stakes[index - 1];
    if (from === undefined) return;
    if (from.finish === null || to.finish === null) return;
    const { surface } = across;
    const crossSlope =
      surface === null ? (across.crossSlope ?? NO_SLOPE) : crossSlopeOf(surface, from, to);
    planned.push(between(from, to, from.finish, to.finish, crossSlope, least));
  });
  return planned;
}

/** The fall of a surface midway between two stakes, square to the line between them. */
function crossSlopeOf(surface: FinishSurface, from: Stake, to: Stake): Slope {
  const ahead = planVector(from, to);
  const middle = pointFrom(from, scaled(ahead, HALF_RATIO));
  return slopeAt(surface, middle, turnedLeft(ahead)).abs();
}

function between(
  from: Stake,
  to: Stake,
  low: Length,
  high: Length,
  crossSlope: Slope,
  least: Slope,
): PlannedSlope {
  const across = planVector(from, to);
  const run = fromSI('length', norm(across));
  const rise = high.minus(low);
  const along = slopeBetween(rise, run);
  const fall = crossSlope.isZero() ? along.abs() : steepestAlong(rise, squared(across), crossSlope);
  const verdict = exactVerdict(marginTo({ limit: 'minimum', value: least }, fall));
  const plan = { from: from.id, to: to.id, run, rise, slope: along, fall, verdict } as const;
  return {
    slope: plan,
    crossSlope,
    steps: () => [
      derivedStep({
        title: `Slope from ${from.id} to ${to.id}`,
        formula: 's = (z2 - z1) / L',
        given: [
          given('z1', `finished grade at ${from.id}`, low),
          given('z2', `finished grade at ${to.id}`, high),
          given('L', 'run', run),
        ],
        result: given('s', 'slope along the string', along),
      }),
      derivedStep({
        title: `Steepest fall from ${from.id} to ${to.id}`,
        formula: 'f = sqrt(s^2 + c^2)',
        given: [given('s', 'slope along the string', along), given('c', 'cross slope', crossSlope)],
        result: given('f', 'steepest fall', fall),
      }),
      formulaStep({
        title: `Steepest fall from ${from.id} to ${to.id}, compared with the minimum`,
        formula: 'm = f - f0',
        given: [given('f', 'steepest fall', fall), given('f0', 'minimum fall', least)],
        result: given('m', `above the minimum: ${verdict}`, fall.minus(least)),
        source: 'paver-tolerances',
      }),
    ],
  };
}
