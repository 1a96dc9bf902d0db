import { makeReader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import { EARTH } from '../sources/levelling-figures.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import type { NumberInput } from '../units/read-number.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { ALLOWED, SIGHT } from './limits.js';

/** What the round earth and the bent light add to a reading. */
export interface CurvatureRefraction extends Worked {
  /** How far the level surface has dropped below a straight line of sight. */
  readonly curvature: Length;
  /** What the bent light takes back of it. */
  readonly refraction: Length;
  /** Curvature less refraction: the reading is too big by this. */
  readonly error: Length;
  /** The sight at which the error reaches `limit`, where that was given. */
  readonly longestSight?: Length;
}

/**
 * Curvature of the earth and refraction of the line of sight: `c = D^2 / d`, `r = m c`,
 * `error = c - r`, with the diameter d and the share m of `EARTH`. Under 60 m it is a quarter of a
 * millimetre, and equal sights cancel it. Refraction close above hot paving can be anything.
 *
 * @param options.sight - length of the sight [length, up to 100 km]
 * @param options.refraction - share of the curvature that refraction takes back, 0 to below 1; default
 *   that of `EARTH`
 * @param options.limit - an error [length], if the sight that leads to it is wanted:
 *   `D = sqrt(limit d / (1 - m))`
 * @returns curvature, refraction and error of the reading [length, + too big]; longest sight [length,
 *   to 40 digits]
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source earth-curvature
 * @example
 * const sight = curvatureRefraction({ sight: '60 m', limit: '3 mm' });
 * sight.error.to('mm').toFixed(2) //=> '0.24'
 * sight.longestSight?.to('m').toFixed(2) //=> '211.16'
 */
export function curvatureRefraction(options: {
  readonly sight: LengthInput;
  readonly refraction?: NumberInput;
  readonly limit?: LengthInput;
}): CurvatureRefraction {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const sight = reader.quantity('length', fields['sight'], ['sight'], SIGHT);
  const part = fields['refraction'] ?? EARTH.refractionOfCurvature.value;
  const bent = reader.number(part, ['refraction'], { sign: 'not-negative' });
  if (bent.greaterThanOrEqualTo(1)) {
    reader.fail('OUT_OF_RANGE', ['refraction'], 'is a share of the curvature: give less than 1');
  }
  const limit =
    fields['limit'] === undefined
      ? undefined
      : reader.quantity('length', fields['limit'], ['limit'], ALLOWED);
  reader.finish();
  const curvature = fromSI('length', divideRatios(squared(exactOf(sight)), DIAMETER));
  const refraction = curvature.times(bent);
  const error = curvature.minus(refraction);
  const left = subtractRatios(ONE_RATIO, decimalRatio(bent));
  const longest = limit === undefined ? {} : { longestSight: sightFor(limit, left) };
  return withWorking({ curvature, refraction, error, ...longest }, (): Step[] => [
    {
      title: 'Curvature less refraction',
      formula: 'e = (1 - m) D^2 / d',
      given: [
        given('m', 'share that refraction takes back', bent),
        given('D', 'sight', sight),
        given('d', 'diameter of the earth', fromSI('length', DIAMETER)),
      ],
      result: given('e', 'reading too big by', error),
      source: 'earth-curvature',
    },
  ]);
}

const DIAMETER: Ratio = exactOf(referenceQuantity('length', EARTH.diameter));

const squared = (a: Ratio): Ratio => multiplyRatios(a, a);

const sightFor = (limit: Length, left: Ratio): Length =>
  fromSI('length', squareRoot(divideRatios(multiplyRatios(exactOf(limit), DIAMETER), left)));
