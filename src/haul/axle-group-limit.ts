import { quantity, whole } from '../input/field.js';
import { AXLES, SITE_LENGTH } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { AXLE_GROUP_FORMULA } from '../sources/axle-limits.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { length, mass, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Mass } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  subtractRatios,
  wholeRatio,
  HALF_RATIO,
} from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { roundQuotient } from '../units/round-ratio.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';

/** A group of consecutive axles. */
export interface AxleGroupLimitOptions {
  /** Axles in the group, 2 to 20. */
  readonly axles: number;
  /**
   * From the first axle to the last [length], more than 0 and at most 10 km. The printed tables use
   * whole feet.
   */
  readonly spread: LengthInput;
}

const OPTIONS = shapeOf<AxleGroupLimitOptions>()({
  axles: whole(AXLES),
  spread: quantity(SITE_LENGTH),
});

/** What the axle-group formula allows on a group. */
export interface AxleGroupLimit extends Cautioned, Worked {
  /** The formula before rounding. */
  readonly unrounded: Mass;
  /** To the nearest 500 lb, an exact half rounded down as in the printed tables. */
  readonly limit: Mass;
}

/**
 * Weight that the United States axle-group formula allows on two or more consecutive axles:
 * `W = 500 (L N / (N - 1) + 12 N + 36)`, W in pounds, L in feet, rounded to the nearest 500 lb. This is
 * the formula alone. {@link checkAxleGroups} adds the caps on single axles, tandems and the whole
 * vehicle; states, towns and bridges post less.
 *
 * @param options - see {@link AxleGroupLimitOptions}
 * @returns the weight by the formula, unrounded and rounded [mass]
 * @throws `OUT_OF_RANGE`, `NOT_WHOLE`, `NOT_POSITIVE` and the reading codes
 * @source bridge-formula
 * @source axle-weight-table
 * @example
 * axleGroupLimit({ axles: 3, spread: '18 ft' }).limit.to('lb').toString() //=> '49500'
 * axleGroupLimit({ axles: 3, spread: '9 ft' }).limit.to('lb').toString() //=> '42500'
 */
export function axleGroupLimit(options: AxleGroupLimitOptions): AxleGroupLimit {
  const { axles, spread } = readOptions(options, OPTIONS);
  const unrounded = groupFormula(axles, spread);
  const limit = roundedGroup(unrounded);
  return withWorking({ unrounded, limit, cautions: cautionsFor('loads') }, () => [
    ...groupSteps(axles, spread, unrounded, limit),
  ]);
}

const FOOT = exactOf(length(1, 'ft'));
const STEP = exactOf(mass(AXLE_GROUP_FORMULA.step.value, 'lb'));
const PER_AXLE = readNumber(AXLE_GROUP_FORMULA.perAxle.value);
const CONSTANT = readNumber(AXLE_GROUP_FORMULA.constant.value);
/** The formula before rounding. Internal. */
export function groupFormula(axles: number, spread: Length): Mass {
  const feet = divideRatios(exactOf(spread), FOOT);
  const n = wholeRatio(axles);
  const first = divideRatios(multiplyRatios(feet, n), wholeRatio(axles - 1));
  const terms = addRatios(addRatios(first, multiplyRatios(n, PER_AXLE)), CONSTANT);
  return fromSI('mass', multiplyRatios(terms, STEP));
}

/** To the nearest step, an exact half down: up from half a step below. Internal. */
export function roundedGroup(unrounded: Mass): Mass {
  const halfBelow = subtractRatios(exactOf(unrounded), multiplyRatios(STEP, HALF_RATIO));
  return fromSI('mass', multiplyRatios(roundQuotient(halfBelow, STEP, 'up'), STEP));
}

/** The working of a group. Internal. */
export function groupSteps(axles: number, spread: Length, unrounded: Mass, limit: Mass): Step[] {
  const { step, perAxle, constant } = AXLE_GROUP_FORMULA;
  const s = given('s', 'step of the formula', mass(step.value, 'lb'));
  return [
    formulaStep({
      title: `Formula for ${axles} axles`,
      formula: `W0 = s * (L / u * N / (N - 1) + ${perAxle.value} * N + ${constant.value})`,
      given: [
        s,
        given('L', 'first to last axle', spread),
        given('u', 'one foot', length(1, 'ft')),
        given('N', 'axles', axles),
      ],
      result: given('W0', 'before rounding', unrounded),
      source: 'bridge-formula',
    }),
    formulaStep({
      title: 'To the nearest step, an exact half down',
      formula: 'W = ceil(W0 / s - 0.5) * s',
      given: [given('W0', 'before rounding', unrounded), s],
      result: given('W', 'formula weight', limit),
      source: 'bridge-formula',
    }),
  ];
}
