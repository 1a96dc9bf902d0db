import { number, optional, quantity } from '../input/field.js';
import { DISTANCE_OR_NONE, REFRACTION, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import { EARTH } from '../sources/levelling-figures.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { readNumber, type NumberInput } from '../units/read-number.js';
import { squareRoot } from '../units/root.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';

/** A sight, and the refraction along it. */
export interface CurvatureRefractionOptions {
  /** Length of the sight [length], 0 to 100 km. */
  readonly sight: LengthInput;
  /** Share of the curvature that refraction offsets, 0 to 0.99. Default: that of `EARTH`, 1/7. */
  readonly refraction?: NumberInput;
  /**
   * An error, to find the sight at which it is reached [length], more than 0 and at most 10 m.
   * Default: none.
   */
  readonly limit?: LengthInput;
}

const OPTIONS = shapeOf<CurvatureRefractionOptions>()({
  sight: quantity(DISTANCE_OR_NONE),
  refraction: optional(number(REFRACTION)),
  limit: optional(quantity(TOLERANCE_OF_SOME)),
});

/** Effect of curvature and refraction on a reading. */
export interface CurvatureRefraction extends Worked {
  /** Drop of the level surface below a straight line of sight. */
  readonly curvature: Length;
  /** Part of it that refraction offsets. */
  readonly refraction: Length;
  /** Curvature less refraction. The reading is too large by this. */
  readonly error: Length;
  /** Sight at which the error reaches `limit`, `sqrt(limit d / (1 - m))`; null if none is given. */
  readonly maximumSight: Length | null;
}

/**
 * Curvature of the earth and refraction of the line of sight: `c = D^2 / d`, `r = m c`,
 * `error = c - r`, with the diameter d and the share m of `EARTH`. Under 60 m it is a quarter of a
 * millimetre, and equal sights cancel it. Just above hot paving, refraction is unpredictable.
 *
 * @param options - see {@link CurvatureRefractionOptions}
 * @returns curvature, refraction and error of the reading [length, + too large]; maximum sight [length,
 *   to 40 digits]
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source earth-curvature
 * @example
 * const sight = curvatureRefraction({ sight: '60 m', limit: '3 mm' });
 * sight.error.to('mm').toFixed(2) //=> '0.24'
 * sight.maximumSight?.to('m').toFixed(2) //=> '211.16'
 */
export function curvatureRefraction(options: CurvatureRefractionOptions): CurvatureRefraction {
  const { sight, refraction: share = USUAL_SHARE, limit } = readOptions(options, OPTIONS);
  const curvature = fromSI('length', divideRatios(squared(exactOf(sight)), DIAMETER));
  const refraction = curvature.times(share);
  const error = curvature.minus(refraction);
  const left = subtractRatios(ONE_RATIO, decimalRatio(share));
  const maximumSight = limit === undefined ? null : sightFor(limit, left);
  return withWorking({ curvature, refraction, error, maximumSight }, () => [
    formulaStep({
      title: 'Curvature less refraction',
      formula: 'e = (1 - m) * D^2 / d',
      given: [
        given('m', 'share that refraction takes back', share),
        given('D', 'sight', sight),
        given('d', 'diameter of the earth', fromSI('length', DIAMETER)),
      ],
      result: given('e', 'reading too large by', error),
      source: 'earth-curvature',
    }),
  ]);
}

const USUAL_SHARE = ratioToDecimal(readNumber(EARTH.refractionOfCurvature.value));

const DIAMETER: Ratio = exactOf(referenceQuantity('length', EARTH.diameter));

const squared = (a: Ratio): Ratio => multiplyRatios(a, a);

const sightFor = (limit: Length, left: Ratio): Length =>
  fromSI('length', squareRoot(divideRatios(multiplyRatios(exactOf(limit), DIAMETER), left)));
