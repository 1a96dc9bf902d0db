import { PAVER_TOLERANCES } from '../../sources/surface-tolerances.js';
import { slope } from '../../units/construct.js';
import { Decimal40 } from '../../units/decimal.js';
import {
  exactOf,
  fromSI,
  fromSIDecimal,
  type AnyQuantity,
  type Length,
  type Slope,
} from '../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  divideRatios,
  multiplyRatios,
  negateRatio,
  type Ratio,
} from '../../units/ratio.js';
import {
  between as planVector,
  norm,
  pointFrom,
  scaled,
  squared,
  type PlanPoint,
} from '../../units/vector.js';
import { NO_SLOPE } from '../../units/zero.js';
import { given, type Step } from '../../working.js';
import { slopeAt, type FinishSurface } from './finish-surface.js';
import type { SlopePlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

interface Stake extends PlanPoint {
  readonly id: string;
  /** Elevation of finished grade; null where it is not known. */
  readonly finish: Length | null;
}

/** The least fall of a job that names none: the published minimum. */
export const PUBLISHED_LEAST_FALL = slope(PAVER_TOLERANCES.slopeLeast.value, 'percent');

const square = (value: AnyQuantity): Ratio => multiplyRatios(exactOf(value), exactOf(value));

interface PlannedSlope {
  readonly slope: SlopePlan;
  readonly steps: () => readonly Step[];
}

/**
 * The fall between neighbouring stakes whose finished grade is given:
 * `slope = rise / run`, `steepest fall = sqrt(slope^2 + cross fall^2)`. Whether it reaches the
 * minimum is decided on the squares, exactly. Internal.
 */
export function planSlopes(
  stakes: readonly Stake[],
  across: { readonly crossFall: Slope | undefined; readonly surface: FinishSurface | null },
  job: ReadJob,
): PlannedSlope[] {
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const planned: PlannedSlope[] = [];
  stakes.forEach((to, index) => {
    const from = stakes[index - 1];
    if (from === undefined || from.finish === null || to.finish === null) return;
    const { surface } = across;
    const crossFall =
      surface === null ? (across.crossFall ?? NO_SLOPE) : crossFallOf(surface, from, to);
    planned.push(between(from, to, from.finish, to.finish, crossFall, least));
  });
  return planned;
}

/** The fall of a surface square to the way from one stake to the next, midway. */
function crossFallOf(surface: FinishSurface, from: Stake, to: Stake): Slope {
  const ahead = planVector(from, to);
  const middle = pointFrom(from, scaled(ahead, HALF));
  return slopeAt(surface, middle, { x: negateRatio(ahead.y), y: ahead.x }).abs();
}

const HALF: Ratio = Object.freeze({ n: 5, d: 10 });

function between(
  from: Stake,
  to: Stake,
  low: Length,
  high: Length,
  crossFall: Slope,
  least: Slope,
): PlannedSlope {
  const across = planVector(from, to);
  const run = fromSI('length', norm(across));
  const rise = high.minus(low);
  const along = fromSI('slope', divideRatios(exactOf(rise), exactOf(run)));
  // compare rise^2 + (cross fall x run)^2 with (least x run)^2: no root, no rounding at the limit
  const squaredRun = squared(across);
  const sideways = multiplyRatios(square(crossFall), squaredRun);
  const reached = addRatios(square(rise), sideways);
  const wanted = multiplyRatios(square(least), squaredRun);
  const verdict = compareRatios(reached, wanted) >= 0 ? 'pass' : 'fail';
  const fall = crossFall.isZero()
    ? along.abs()
    : fromSIDecimal('slope', Decimal40.hypot(along.si, crossFall.si));
  const plan = { from: from.id, to: to.id, run, rise, slope: along, fall, verdict } as const;
  return {
    slope: plan,
    steps: () => [
      {
        title: `Slope from ${from.id} to ${to.id}`,
        formula: 's = (z2 - z1) / L',
        given: [
          given('z1', `finished grade at ${from.id}`, low),
          given('z2', `finished grade at ${to.id}`, high),
          given('L', 'run', run),
        ],
        result: given('s', 'slope along the string', along),
        source: 'derived',
      },
      {
        title: `Steepest fall from ${from.id} to ${to.id} against the minimum`,
        formula: 'f = sqrt(s^2 + c^2)',
        given: [
          given('s', 'slope along the string', along),
          given('c', 'cross fall', crossFall),
          given('f0', 'least fall', least),
        ],
        result: given('f', `steepest fall: ${verdict}`, fall),
        source: 'paver-tolerances',
      },
    ],
  };
}
