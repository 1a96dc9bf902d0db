import { known } from '../invariant.js';
import { exactlyOne } from '../input/exactly-one.js';
import { object, optional, quantity } from '../input/field.js';
import { DISTANCE_OR_NONE, ROD_READING, SITE_LENGTH, TILT } from '../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  subtractRatios,
  HALF_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { NO_ANGLE } from '../units/zero.js';
import { derivedStep, given, type StepInput, withWorking, type Worked } from '../working.js';

/** A rod out of plumb. */
export interface LeanInput {
  /** Horizontal distance out of plumb [length], 0 or more; the rod may lean up to 45 degrees. */
  readonly by: LengthInput;
  /**
   * Distance from the foot to that point, along the rod [length], more than 0 and at most 10 km.
   */
  readonly over: LengthInput;
}

/** A reading on a rod that leans. */
export interface RodTiltOptions {
  /** Reading on the leaning rod [length], 0 to 20 m. */
  readonly reading: LengthInput;
  /** Tilt from plumb [angle], up to 45 degrees either way. Give this or `lean`. */
  readonly tilt?: AngleInput;
  /** Lean of the rod. Give this or `tilt`. */
  readonly lean?: LeanInput;
}

const LEAN = shapeOf<LeanInput>()({ by: quantity(DISTANCE_OR_NONE), over: quantity(SITE_LENGTH) });

const OPTIONS = shapeOf<RodTiltOptions>()({
  reading: quantity(ROD_READING),
  tilt: optional(quantity(TILT)),
  lean: optional(
    object(LEAN, (reader, { by, over }, path) => {
      if (by === undefined || over === undefined) return;
      if (compareRatios(squaredCosine({ by, over }), HALF_RATIO) >= 0) return;
      const why = 'the rod leans by more than 45 degrees. Check the digits and the unit';
      reader.fail('OUT_OF_RANGE', [...path, 'by'], why);
    }),
  ),
});

/** A reading, and its error from the lean. */
export interface RodTilt extends Worked {
  /** Reading less true reading, not negative: a leaning rod always reads too high. */
  readonly error: Length;
  /** The reading on a plumb rod. */
  readonly corrected: Length;
}

/**
 * Error of a rod out of plumb: `error = r (1 - cos t)`. The reading is always too large, so the ground
 * looks too low. From a lean of b over a length l of the rod, `cos t = sqrt(1 - b^2 / l^2)`. To 40
 * digits.
 *
 * @param options - see {@link RodTiltOptions}
 * @returns error and corrected reading [length]
 * @throws `CONFLICTING_FIELDS`, `REQUIRED`, `NEGATIVE`, `OUT_OF_RANGE` (leaning by more than 45 degrees)
 *   and the reading codes
 * @source derived
 * @example
 * const leaning = rodTilt({ reading: '1.5 m', tilt: '5 deg' });
 * leaning.error.to('mm').toFixed(2) //=> '5.71'
 * rodTilt({ reading: '2 m', lean: { by: '60 mm', over: '1 m' } }).error.to('mm').toFixed(2) //=> '3.60'
 */
export function rodTilt(options: RodTiltOptions): RodTilt {
  const read = readOptions(options, OPTIONS, (reader, _, path, raw) => {
    exactlyOne(reader, raw, ['tilt', 'lean'], [...path, 'tilt']);
  });
  const { reading } = read;
  const cosine = cosineOf(read);
  const corrected = fromSI('length', multiplyRatios(exactOf(reading), cosine));
  const error = reading.minus(corrected);
  return withWorking({ error, corrected }, () => [
    derivedStep({
      title: 'Reading on a plumb rod',
      formula: read.lean === undefined ? 'r0 = r * cos(t)' : 'r0 = r * sqrt(1 - b^2 / l^2)',
      given: [given('r', 'reading', reading), ...leanOf(read)],
      result: given('r0', 'corrected reading', corrected),
    }),
  ]);
}

const leanOf = ({ tilt = NO_ANGLE, lean }: Values<typeof OPTIONS>): StepInput[] =>
  lean === undefined
    ? [given('t', 'tilt', tilt)]
    : [given('b', 'lean of the rod', lean.by), given('l', 'over this length of it', lean.over)];

function cosineOf({ tilt, lean }: Values<typeof OPTIONS>): Ratio {
  if (lean !== undefined) return squareRoot(squaredCosine(lean));
  return decimalRatio(Decimal40.cos(known(tilt, 'tilt').si));
}

/** `1 - b^2 / l^2`; negative if the lean is longer than the rod. */
function squaredCosine({ by, over }: Values<typeof LEAN>): Ratio {
  const sine = divideRatios(exactOf(by), exactOf(over));
  return subtractRatios(ONE_RATIO, multiplyRatios(sine, sine));
}
