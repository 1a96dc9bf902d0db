import { PAVER_TOLERANCES } from '../sources/surface-tolerances.js';
import { slope } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Length, type Slope } from '../units/quantity.js';
import { norm, squared } from '../units/vector.js';
import { given, type Step } from '../working.js';
import type { SlopePlan } from './plan.js';
import type { Job } from './schema.js';

type Stake = Job['stringLines'][number]['stakes'][number];

const FLAT = slope(0, 'ratio');
/** The least fall of a job that names none: the published minimum. */
export const PUBLISHED_LEAST_FALL = slope(PAVER_TOLERANCES.slopeLeast.value, 'percent');

const square = (value: Decimal): Decimal => value.times(value);

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
  crossFall: Slope | undefined,
  job: Job,
): PlannedSlope[] {
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const planned: PlannedSlope[] = [];
  stakes.forEach((to, index) => {
    const from = stakes[index - 1];
    if (from?.finish === undefined || to.finish === undefined) return;
    planned.push(between(from, to, from.finish, to.finish, crossFall ?? FLAT, least));
  });
  return planned;
}

function between(
  from: Stake,
  to: Stake,
  low: Length,
  high: Length,
  crossFall: Slope,
  least: Slope,
): PlannedSlope {
  const across = { x: to.x.minus(from.x).si, y: to.y.minus(from.y).si };
  const run = fromSIDecimal('length', norm(across));
  const rise = high.minus(low);
  const along = fromSIDecimal('slope', rise.si.div(run.si));
  // compare rise^2 + (cross fall x run)^2 with (least x run)^2: no root, no rounding at the limit
  const squaredRun = squared(across);
  const reached = square(rise.si).plus(square(crossFall.si).times(squaredRun));
  const verdict = reached.gte(square(least.si).times(squaredRun)) ? 'pass' : 'fail';
  const fall = fromSIDecimal('slope', norm({ x: along.si, y: crossFall.si }));
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
