import { makeReader, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import { angle, length, type AngleInput, type LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { DISTANCE, READING, SIGHT } from './limits.js';

/** What a rod out of plumb adds to its reading. */
export interface RodTilt extends Worked {
  /** Reading less true reading: never negative, a leaning rod always reads too big. */
  readonly error: Length;
  readonly corrected: Length;
}

/**
 * Error of a rod out of plumb: `error = r (1 - cos t)`. The reading is always too big, so that the
 * ground seems too low. From a lean of b over a length l of the rod `cos t = sqrt(1 - b^2 / l^2)`. To
 * 40 digits.
 *
 * @param options.reading - on the leaning rod [length, 0 to 20 m]
 * @param options.tilt - from the plumb line [angle, up to 45 degrees]; or give
 * @param options.lean - how far a point of the rod stands out of plumb: `by` [length] `over` its
 *   distance from the foot along the rod [length]
 * @returns error and corrected reading [length]
 * @throws `ONE_OF`, `REQUIRED`, `NEGATIVE`, `OUT_OF_RANGE` (leaning by more than 45 degrees) and the
 *   reading codes
 * @source derived
 * @example
 * const leaning = rodTilt({ reading: '1.5 m', tilt: '5 deg' });
 * leaning.error.to('mm').toFixed(2) //=> '5.71'
 * rodTilt({ reading: '2 m', lean: { by: '60 mm', over: '1 m' } }).error.to('mm').toFixed(2) //=> '3.60'
 */
export function rodTilt(options: {
  readonly reading: LengthInput;
  readonly tilt?: AngleInput;
  readonly lean?: { readonly by: LengthInput; readonly over: LengthInput };
}): RodTilt {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const reading = reader.quantity('length', fields['reading'], ['reading'], READING);
  const which = exactlyOne(reader, fields, ['tilt', 'lean'], ['tilt']);
  const cosine =
    which === 'lean' ? readLean(reader, fields['lean']) : readTilt(reader, which, fields['tilt']);
  reader.finish();
  const corrected = fromSI('length', multiplyRatios(exactOf(reading), cosine));
  const error = reading.minus(corrected);
  return withWorking({ error, corrected }, () => [
    {
      title: 'Reading of the rod if it were plumb',
      formula: 'r0 = r cos(t)',
      given: [
        given('r', 'reading', reading),
        given('cos(t)', 'cosine of the tilt', fromSI('slope', cosine).to('ratio')),
      ],
      result: given('r0', 'corrected reading', corrected),
      source: 'derived',
    },
  ]);
}

const STEEPEST = Object.freeze({ sign: 'any', most: angle(45, 'deg') } as const);

function readTilt(reader: Reader, which: string | undefined, value: unknown): Ratio {
  if (which === undefined) return ONE_RATIO;
  const tilt = reader.quantity('angle', value, ['tilt'], STEEPEST);
  return decimalRatio(Decimal40.cos(tilt.si));
}

function readLean(reader: Reader, value: unknown): Ratio {
  const fields = reader.object(value, ['lean']);
  const by = reader.quantity('length', fields['by'], ['lean', 'by'], SIGHT);
  const over = reader.quantity('length', fields['over'], ['lean', 'over'], DISTANCE);
  if (over.isZero()) return ONE_RATIO;
  const sine = divideRatios(exactOf(by), exactOf(over));
  const squared = subtractRatios(ONE_RATIO, multiplyRatios(sine, sine));
  const isBeyond = fromSI('slope', squared).compare(HALF) < 0;
  if (!isBeyond) return squareRoot(squared);
  reader.fail('OUT_OF_RANGE', ['lean', 'by'], 'leans by more than 45 degrees: a slip of a digit?');
  return ONE_RATIO;
}

const HALF = fromSI('slope', divideRatios(ONE_RATIO, exactOf(length(2, 'm'))));
