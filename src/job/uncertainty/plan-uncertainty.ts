import { fault, type FieldPath } from '../../errors.js';
import { number, optional, quantity } from '../../input/field.js';
import { COVERAGE, TOLERANCE } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { entry } from '../../invariant.js';
import { COVERAGE_FACTOR } from '../../sources/levelling-figures.js';
import type { LengthInput } from '../../units/construct.js';
import { fromSI, type AnyQuantity, type Length } from '../../units/quantity.js';
import { ratioToDecimal } from '../../units/ratio.js';
import { readNumber, type NumberInput } from '../../units/read-number.js';
import { deepFreeze } from '../../working.js';
import { mark, requireMarked } from '../mark.js';
import type { JobPlan } from '../plan/plan.js';
import { planJob } from '../plan-job.js';
import { requirePlan } from '../require-plan.js';
import { figuresOf } from './figures-of.js';
import { movedBy, readingsIn, type Reading, type ReadingKind } from './readings-in.js';

/** How well readings are known. Each is one standard deviation of one reading; at least one is needed. */
export interface PlanUncertaintyOptions {
  /** A coordinate of a stake, by tape [length], 0 to 10 m. Default: exact. */
  readonly tape?: LengthInput;
  /**
   * A level by level and rod: spot heights, finished grade set at a stake, rows of the level book
   * [length], 0 to 10 m. Default: exact.
   */
  readonly rod?: LengthInput;
  /** The height of a string, and a depth measured down from it [length], 0 to 10 m. Default: exact. */
  readonly string?: LengthInput;
  /** Coverage factor: standard deviations in the printed range, 1 to 5. Default: `COVERAGE_FACTOR`, about 95%. */
  readonly coverage?: NumberInput;
}

const OPTIONS = shapeOf<PlanUncertaintyOptions>()({
  tape: optional(quantity(TOLERANCE)),
  rod: optional(quantity(TOLERANCE)),
  string: optional(quantity(TOLERANCE)),
  coverage: optional(number(COVERAGE)),
});

const USUAL_COVERAGE = ratioToDecimal(readNumber(COVERAGE_FACTOR.value));

/** A figure of a plan, and how well it is known. */
export interface UncertainFigure {
  /** The field of the plan. */
  readonly path: FieldPath;
  /** Pavement, string or stake. */
  readonly subject: string;
  /** The figure in words, such as `dig depth`. */
  readonly what: string;
  /** The figure, as the plan has it. */
  readonly value: AnyQuantity;
  /** One standard deviation of it. */
  readonly standard: AnyQuantity;
  /** The standard deviation times the coverage factor: the figure is good to this much either way. */
  readonly expanded: AnyQuantity;
}

/** How well the figures of a plan are known. */
export interface PlanUncertainty {
  /** Number of readings that were taken as uncertain. */
  readonly readings: number;
  /** Coverage factor. */
  readonly coverage: number;
  /** Depths of dig, cut and fill of each pavement; digs, offsets and falls at the stakes. */
  readonly figures: readonly UncertainFigure[];
}

/**
 * How well depths of dig, offsets of stakes, falls and volumes of a plan are known, if its readings
 * have known uncertainties. Each reading is moved up and down by its standard deviation, the job is
 * planned again, and half the changes are combined: `u^2 = sum((f(r + u) - f(r - u))^2 / 4)`, to first
 * order, readings independent of each other. Outlines, thicknesses and material figures are taken as exact, and so is the way the ground
 * runs between readings: this is no statement about what was not measured.
 *
 * Two plans a reading: a job of a hundred readings takes as long as two hundred plans.
 *
 * @param plan - from `planJob` or `planFromJSON`; not changed
 * @param options - see {@link PlanUncertaintyOptions}
 * @returns the figures with standard and expanded uncertainty; those without any are left out
 * @throws `PLAN_INVALID`, `OUT_OF_RANGE`, `NEGATIVE`, `UNKNOWN_FIELD` and the reading codes;
 *   `REQUIRED` without any uncertainty
 * @source derived
 * @example
 * const { figures } = planUncertainty(planJob(job), { string: '1/8 in' });
 * const dig = figures.find(({ subject }) => subject === 'stake K1');
 * [dig?.what, dig?.expanded.si.toFixed(4)] //=> ['dig depth', '0.0090']
 */
export function planUncertainty(plan: JobPlan, options: PlanUncertaintyOptions): PlanUncertainty {
  requirePlan(plan);
  const { coverage = USUAL_COVERAGE, ...known } = readOptions(options, OPTIONS);
  if (!Object.values(known).some(isUncertain)) {
    throw fault('REQUIRED', 'give at least one of tape, rod and string, such as rod: "2 mm"');
  }
  const readings = readingsIn(plan.job).filter(({ kind }) => isUncertain(known[kind]));
  const sums = figuresOf(plan).map(() => 0);
  for (const reading of readings) {
    changesBy(plan, reading, known).forEach((change, index) => {
      sums[index] = entry(sums, index) + change ** 2;
    });
  }
  const figures = figuresOf(plan).flatMap((figure, index) => {
    const standard = Math.sqrt(entry(sums, index));
    if (standard === 0) return [];
    const spread = (times: number) => fromSI(figure.value.dimension, readNumber(standard * times));
    return [{ ...figure, standard: spread(1), expanded: spread(coverage.toNumber()) }];
  });
  return deepFreeze(
    mark({ readings: readings.length, coverage: coverage.toNumber(), figures }, UNCERTAINTY),
  );
}

const isUncertain = (sigma: Length | undefined): boolean => sigma !== undefined && !sigma.isZero();

/** Half the change of every figure from one standard deviation below to one above, in SI units. */
function changesBy(
  { job }: JobPlan,
  reading: Reading,
  known: Readonly<Record<ReadingKind, Length | undefined>>,
): readonly number[] {
  const step = known[reading.kind];
  if (step === undefined) return [];
  const up = figuresOf(planJob(movedBy(job, reading, step)));
  const down = figuresOf(planJob(movedBy(job, reading, step.negated())));
  return up.map(
    ({ value }, index) => (value.si.toNumber() - entry(down, index).value.si.toNumber()) / 2,
  );
}

const UNCERTAINTY = Symbol.for('settline.uncertainty');

/**
 * Refuses what does not say how well a plan is known. Internal.
 *
 * @throws `WRONG_TYPE`
 */
export function requireUncertainty(value: unknown): asserts value is PlanUncertainty {
  requireMarked(value, UNCERTAINTY, 'the result of planUncertainty()');
}
