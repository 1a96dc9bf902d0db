import { makeReader, type Reader } from '../input/reader.js';
import { COVERAGE_FACTOR } from '../sources/levelling-figures.js';
import { sum } from '../units/aggregate.js';
import { length, type LengthInput } from '../units/construct.js';
import type { NumberInput } from '../units/read-number.js';
import { exactOf, type Length } from '../units/quantity.js';
import { multiplyRatios, quotientToNumber } from '../units/ratio.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { ALLOWED, ERROR, TOLERANCE } from './limits.js';
import { rootSumOfSquares } from './root-sum-of-squares.js';

/** A random error: what it comes from and its standard deviation. */
export interface RandomErrorInput {
  readonly name: string;
  readonly sigma: LengthInput;
}

/** An error that always acts one way, such as the tilt of a beam or the sag of a string. */
export interface SystematicErrorInput {
  readonly name: string;
  /** + where it makes the result too high. */
  readonly error: LengthInput;
}

/** What one source adds to the whole. */
export interface ErrorShare {
  readonly name: string;
  readonly sigma: Length;
  /** Its part of the squares, from 0 to 1; all parts make 1. */
  readonly share: number;
}

/** An error budget of one height. */
export interface ErrorBudget extends Worked {
  /** Random errors together: one standard deviation. */
  readonly total: Length;
  /** The total times the coverage factor. */
  readonly uncertainty: Length;
  /** Systematic errors together: correct the height by taking this off. */
  readonly systematic: Length;
  readonly shares: readonly ErrorShare[];
  /** Tolerance less uncertainty and systematic errors: what is left for the work; may be negative. */
  readonly left: Length;
  /** Whether the tolerance leaves something for the work. */
  readonly isEnough: boolean;
  /** Whether a measured deviation keeps the tolerance, where one was given. */
  readonly verdict?: Verdict;
}

/**
 * Error budget of one height by root sum of squares: `s = sqrt(s1^2 + s2^2 ...)`, `U = k s`, and what
 * is left of the tolerance for the work, `left = T - U - |systematic|`. Only random errors add up like
 * that: what always acts one way is given apart, and is best corrected and left out.
 *
 * @param options.random - each with `name` and `sigma`, its standard deviation [length]
 * @param options.systematic - each with `name` and `error` [length, + too high], default none
 * @param options.tolerance - up or down [length]
 * @param options.coverage - how many standard deviations are counted, from 1 to 5; default
 *   `COVERAGE_FACTOR`, which takes in about 95 %
 * @param options.deviation - a measured deviation from the height wanted [length, + too high], to judge;
 *   the systematic errors are taken off it first
 * @returns total, uncertainty and systematic errors [length], the share of each source in the squares
 *   [0 to 1], what is left of the tolerance [length], the verdict on the deviation
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
 * budget.left.to('mm').toFixed(2) //=> '3.29'
 */
export function errorBudget(options: {
  readonly random: readonly RandomErrorInput[];
  readonly systematic?: readonly SystematicErrorInput[];
  readonly tolerance: LengthInput;
  readonly coverage?: NumberInput;
  readonly deviation?: LengthInput;
}): ErrorBudget {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const random = readErrors(reader, fields['random'], 'random');
  const biases =
    fields['systematic'] === undefined
      ? []
      : readErrors(reader, fields['systematic'], 'systematic');
  const tolerance = reader.quantity('length', fields['tolerance'], ['tolerance'], ALLOWED);
  const factor = fields['coverage'] ?? COVERAGE_FACTOR.value;
  const coverage = reader.number(factor, ['coverage'], { sign: 'positive', least: 1, most: 5 });
  const deviation =
    fields['deviation'] === undefined
      ? undefined
      : reader.quantity('length', fields['deviation'], ['deviation'], ERROR);
  reader.finish();
  const total = rootSumOfSquares(random.map(({ size }) => size));
  const uncertainty = total.times(coverage);
  const systematic = sum([NOTHING, ...biases.map(({ size }) => size)]);
  const left = tolerance.minus(uncertainty).minus(systematic.abs());
  const result: Omit<ErrorBudget, 'working'> = {
    total,
    uncertainty,
    systematic,
    shares: random.map(({ name, size }) => ({ name, sigma: size, share: shareOf(size, total) })),
    left,
    isEnough: !left.isNegative() && !left.isZero(),
    ...(deviation === undefined
      ? {}
      : { verdict: verdictOf(tolerance.minus(deviation.minus(systematic).abs()), uncertainty) }),
  };
  return withWorking(result, () => [
    {
      title: 'Random errors together',
      formula: 's = sqrt(sum of squares)',
      given: random.map(({ name, size }, k) => given(`s${k + 1}`, name, size)),
      result: given('s', 'standard deviation', total),
      source: 'derived',
    },
    {
      title: 'Tolerance left for the work',
      formula: 'L = T - k s - |b|',
      given: [
        given('T', 'tolerance', tolerance),
        given('k', 'coverage factor', coverage),
        given('s', 'standard deviation', total),
        given('b', 'systematic errors', systematic),
      ],
      result: given('L', 'left', left),
      source: 'derived',
    },
  ]);
}

const NOTHING = length(0, 'm');

interface NamedError {
  readonly name: string;
  readonly size: Length;
}

function readErrors(reader: Reader, value: unknown, list: 'random' | 'systematic'): NamedError[] {
  const [field, rule] =
    list === 'random' ? (['sigma', TOLERANCE] as const) : (['error', ERROR] as const);
  return reader.list(value, [list]).map((item, k) => {
    const fields = reader.object(item, [list, k]);
    return {
      name: reader.text(fields['name'], [list, k, 'name']),
      size: reader.quantity('length', fields[field], [list, k, field], rule),
    };
  });
}

/** Part of the squares; nothing of nothing is nothing. */
function shareOf(size: Length, total: Length): number {
  if (total.isZero()) return 0;
  const [part, whole] = [exactOf(size), exactOf(total)];
  return quotientToNumber(multiplyRatios(part, part), multiplyRatios(whole, whole));
}
