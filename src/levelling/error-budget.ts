import { list, number, object, optional, quantity, text } from '../input/field.js';
import { COVERAGE, ERROR, TOLERANCE, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { COVERAGE_FACTOR } from '../sources/levelling-figures.js';
import { sum } from '../units/aggregate.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, type Length } from '../units/quantity.js';
import { multiplyRatios, quotientToNumber, ratioToDecimal } from '../units/ratio.js';
import { readNumber, type NumberInput } from '../units/read-number.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';

/** A random error: its cause and its standard deviation. */
export interface RandomErrorInput {
  /** Cause of the error. */
  readonly name: string;
  /** Its standard deviation [length], 0 to 10 m. */
  readonly sigma: LengthInput;
}

/**
 * A systematic error, which always acts one way, such as the tilt of a beam or the sag of a string.
 */
export interface SystematicErrorInput {
  /** Cause of the error. */
  readonly name: string;
  /** Size [length], positive if it makes the result too high; up to 10 m either way. */
  readonly error: LengthInput;
}

/** The errors of one elevation, and its tolerance. */
export interface ErrorBudgetOptions {
  /** Random errors, 1 to 10 000. */
  readonly random: readonly RandomErrorInput[];
  /** Systematic errors. Default: none. */
  readonly systematic?: readonly SystematicErrorInput[];
  /** Tolerance of the elevation, up or down [length], more than 0 and at most 10 m. */
  readonly tolerance: LengthInput;
  /**
   * Coverage factor: number of standard deviations, 1 to 5. Default: `COVERAGE_FACTOR`, about 95%.
   */
  readonly coverage?: NumberInput;
  /**
   * A measured deviation from the design elevation, to judge [length], positive if it is too high;
   * up to 10 m either way. The systematic errors are deducted first. Default: none.
   */
  readonly deviation?: LengthInput;
}

const RANDOM = shapeOf<RandomErrorInput>()({ name: text(), sigma: quantity(TOLERANCE) });

const SYSTEMATIC = shapeOf<SystematicErrorInput>()({ name: text(), error: quantity(ERROR) });

const OPTIONS = shapeOf<ErrorBudgetOptions>()({
  random: list(object(RANDOM), { of: 'errors' }),
  systematic: optional(list(object(SYSTEMATIC), { of: 'errors', least: 0 }), []),
  tolerance: quantity(TOLERANCE_OF_SOME),
  coverage: optional(number(COVERAGE)),
  deviation: optional(quantity(ERROR)),
});

/** Share of one random error in the total. */
export interface ErrorShare {
  /** Cause of the error. */
  readonly name: string;
  /** Its standard deviation. */
  readonly sigma: Length;
  /** Share of the total variance, 0 to 1. The shares add up to 1, or to 0 if the total is 0. */
  readonly share: number;
}

/** An error budget of one elevation. */
export interface ErrorBudget extends Worked {
  /** All random errors together, as one standard deviation. */
  readonly total: Length;
  /** The total times the coverage factor. */
  readonly uncertainty: Length;
  /** All systematic errors together. Deduct this from the elevation to correct it. */
  readonly systematic: Length;
  /** Share of each random error, in the order given. */
  readonly shares: readonly ErrorShare[];
  /**
   * Tolerance that remains for the work: tolerance less uncertainty and systematic errors. Negative
   * if they exceed it.
   */
  readonly remaining: Length;
  /** True if part of the tolerance remains for the work. */
  readonly isEnough: boolean;
  /** Whether the measured deviation is within the tolerance; null if none is given. */
  readonly verdict: Verdict | null;
}

/**
 * Error budget of one elevation by root sum of squares: `s = sqrt(s1^2 + s2^2 ...)`, `U = k s`, and
 * the tolerance that remains for the work, `L = T - U - |systematic|`. Only random errors add up
 * like that. Give systematic errors separately, or better, correct them and leave them out.
 *
 * @param options - see {@link ErrorBudgetOptions}
 * @returns total, uncertainty and systematic errors [length], the share of each random error in the
 *   squares [0 to 1], what remains of the tolerance [length], the verdict on the deviation
 * @throws `EMPTY_LIST`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const budget = errorBudget({
 *   random: [
 *     { name: 'benchmark', sigma: '2 mm' },
 *     { name: 'beam', sigma: '2 mm' },
 *     { name: 'rod', sigma: '1.5 mm' },
 *     { name: 'mark on the stake', sigma: '1 mm' },
 *   ],
 *   tolerance: '10 mm',
 * });
 * budget.total.to('mm').toFixed(2) //=> '3.35'
 * budget.remaining.to('mm').toFixed(2) //=> '3.29'
 */
export function errorBudget(options: ErrorBudgetOptions): ErrorBudget {
  const read = readOptions(options, OPTIONS);
  const { random, tolerance, coverage = USUAL_COVERAGE, deviation } = read;
  const total = rootSumOfSquares(random.map(({ sigma }) => sigma));
  const uncertainty = total.times(coverage);
  const systematic = sum([NO_LENGTH, ...read.systematic.map(({ error }) => error)]);
  const remaining = tolerance.minus(uncertainty).minus(systematic.abs());
  const isWithin = (off: Length) => verdictOf(tolerance.minus(off.abs()), uncertainty);
  const result: Omit<ErrorBudget, 'working'> = {
    total,
    uncertainty,
    systematic,
    shares: random.map(({ name, sigma }) => ({ name, sigma, share: shareOf(sigma, total) })),
    remaining,
    isEnough: !remaining.isNegative() && !remaining.isZero(),
    verdict: deviation === undefined ? null : isWithin(deviation.minus(systematic)),
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Random errors together',
      formula: 's = sqrt(sum(e[i]^2))',
      given: [
        given(
          'e',
          `standard deviation: ${random.map(({ name }) => name).join(', ')}`,
          random.map(({ sigma }) => sigma),
        ),
      ],
      result: given('s', 'standard deviation', total),
    }),
    derivedStep({
      title: 'Tolerance that remains for the work',
      formula: 'L = T - k * s - abs(b)',
      given: [
        given('T', 'tolerance', tolerance),
        given('k', 'coverage factor', coverage),
        given('s', 'standard deviation', total),
        given('b', 'systematic errors', systematic),
      ],
      result: given('L', 'remaining', remaining),
    }),
  ]);
}

const USUAL_COVERAGE = ratioToDecimal(readNumber(COVERAGE_FACTOR.value));

/** Share of the total variance; 0 if the total is 0. */
function shareOf(sigma: Length, total: Length): number {
  if (total.isZero()) return 0;
  const [part, whole] = [exactOf(sigma), exactOf(total)];
  return quotientToNumber(multiplyRatios(part, part), multiplyRatios(whole, whole));
}
