import { fault } from '../errors.js';
import { object, optional, quantity, whole } from '../input/field.js';
import { likeWritten } from '../input/like-written.js';
import { COUNT, FORCE, LINE_WEIGHT, SITE_LENGTH, SITE_OFFSET, SLOPE } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Values } from '../input/shape.js';
import type { ForceInput, LengthInput, LineWeightInput, SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import {
  addRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  signOfRatio,
  subtractRatios,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import { refuseBoth } from './refuse-both.js';

/** A tape that hangs free between its ends, or between evenly spaced supports. */
export interface HangingTapeInput {
  /** Weight of the tape per length [line-weight], more than 0 and at most 1000 N/m. */
  readonly weightPerLength: LineWeightInput;
  /** Tension at its end [force], more than 0 and at most 10 000 kN. */
  readonly tension: ForceInput;
  /** Number of equal bays it hangs in, a whole number from 1. Default: 1. */
  readonly bays?: number;
}

/** A taped length to reduce to level. */
export interface PlanDistanceOptions {
  /** Reading of the tape [length], more than 0 and at most 10 km. */
  readonly taped: LengthInput;
  /** Difference of level between the ends [length], up or down, less than the tape. Give this or `slope`. Default: level. */
  readonly rise?: LengthInput;
  /**
   * Slope of the tape [slope], rise over level run, up to 10 either way. Give this or `rise`.
   * Default: level.
   */
  readonly slope?: SlopeInput;
  /** The tape, if it hangs free. Default: it lies on the ground. */
  readonly hanging?: HangingTapeInput;
}

const HANGING_TAPE = shapeOf<HangingTapeInput>()({
  weightPerLength: quantity(LINE_WEIGHT),
  tension: quantity(FORCE),
  bays: optional(whole(COUNT), 1),
});

const OPTIONS = shapeOf<PlanDistanceOptions>()({
  taped: quantity(SITE_LENGTH),
  rise: optional(quantity(SITE_OFFSET)),
  slope: optional(quantity(SLOPE)),
  hanging: optional(object(HANGING_TAPE)),
});

/** A taped length reduced to level. */
export interface PlanDistance extends Worked {
  /** Level distance [length]. */
  readonly plan: Length;
  /** Plan less tape [length]: 0 or negative. */
  readonly correction: Length;
  /** Part of the correction for the sag of the tape [length]; 0 for a tape on the ground. */
  readonly sagCorrection: Length;
  /** Part of the correction for the slope [length]. */
  readonly slopeCorrection: Length;
}

/**
 * Reduces a taped length to level: `H = sqrt(S^2 - h^2)` from the rise h between its ends, or
 * `H = S / sqrt(1 + i^2)` from its slope i. A tape that hangs free reads too long, in each bay of
 * length L by `w^2 L^3 / (24 P^2)` with w its weight per length and P the tension. That is deducted
 * first. The rise and slope parts are exact but for one root; the sag is the formula for a flat
 * curve.
 *
 * @param options - see {@link PlanDistanceOptions}
 * @returns plan distance [length], corrections [length, negative: plan is shorter]
 * @throws `TRIANGLE_IMPOSSIBLE` for a rise that is not less than the tape, `CONFLICTING_FIELDS`,
 *   `NOT_POSITIVE`, `NOT_WHOLE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const side = planDistance({ taped: '18 m', rise: '1.1 m' });
 * side.plan.to('m').toFixed(4) //=> '17.9664'
 * side.correction.to('mm').toFixed(1) //=> '-33.6'
 */
export function planDistance(options: PlanDistanceOptions): PlanDistance {
  const read = readOptions(options, OPTIONS, (reader, values) =>
    refuseBoth(reader, values, ['rise', 'slope']),
  );
  const { taped, rise, slope, hanging } = read;
  const sag = hanging === undefined ? NO_LENGTH : sagOf(taped, hanging);
  const straight = taped.minus(sag);
  checkRise(options, read, straight);
  const plan = levelled(straight, rise, slope && exactOf(slope));
  const slopeCorrection = plan.minus(straight);
  return withWorking(
    { plan, correction: plan.minus(taped), sagCorrection: sag.negated(), slopeCorrection },
    () => [
      ...(hanging === undefined ? [] : [sagStep(taped, hanging, sag)]),
      derivedStep({
        title: 'Level distance',
        formula: slope === undefined ? 'H = sqrt(S^2 - h^2)' : 'H = S / sqrt(1 + k^2)',
        given: [
          given('S', hanging === undefined ? 'taped' : 'taped, less the sag', straight),
          slope === undefined ? given('h', 'rise', rise ?? NO_LENGTH) : given('k', 'slope', slope),
        ],
        result: given('H', 'plan', plan),
      }),
    ],
  );
}

/** Refuses a rise as long as the tape or longer. */
function checkRise(
  options: PlanDistanceOptions,
  { taped, rise }: Values<typeof OPTIONS>,
  straight: Length,
): void {
  if (rise === undefined || rise.abs().compare(straight) < 0) return;
  const long = straight.equals(taped)
    ? asWritten(options.taped, taped)
    : likeWritten(straight, options.taped);
  const message = `a rise of ${asWritten(options.rise, rise)} is not less than the tape, ${long}. Measure again`;
  throw fault('TRIANGLE_IMPOSSIBLE', message, {}, ['rise']);
}

type HangingTape = Values<typeof HANGING_TAPE>;

/** `(w L / P)^2` of a tape that loses a tenth of its length to sag. */
const MOST_SAG = 2.4;

/** `n w^2 L^3 / (24 P^2)` with L one of n bays. */
function sagOf(taped: Length, { weightPerLength, tension, bays }: HangingTape): Length {
  const bay = taped.dividedBy(bays);
  const square = weightPerLength.times(bay).dividedBy(tension).pow(2);
  if (square.gt(MOST_SAG)) {
    const message =
      'the sag would take up more than a tenth of the tape. Check the units of tension and weight';
    throw fault('OUT_OF_RANGE', message, {}, ['hanging', 'tension']);
  }
  return bay.times(square).times(bays).dividedBy(24);
}

const sagStep = (
  taped: Length,
  { weightPerLength, tension, bays }: HangingTape,
  sag: Length,
): Step =>
  derivedStep({
    title: 'Length that the sag adds to the reading',
    formula: 'C = n * w^2 * L^3 / (24 * P^2)',
    given: [
      given('n', 'bays', bays),
      given('w', 'weight per length', weightPerLength),
      given('L', 'one bay', taped.dividedBy(bays)),
      given('P', 'pull', tension),
    ],
    result: given('C', 'sag of the tape', sag),
  });

function levelled(straight: Length, rise: Length | undefined, slope: Ratio | undefined): Length {
  const long = exactOf(straight);
  if (slope !== undefined && signOfRatio(slope) !== 0) {
    const factor = squareRoot(addRatios(ONE_RATIO, multiplyRatios(slope, slope)));
    return fromSI('length', divideRatios(long, factor));
  }
  if (rise === undefined || rise.isZero()) return straight;
  const up = exactOf(rise);
  const square = subtractRatios(multiplyRatios(long, long), multiplyRatios(up, up));
  return fromSI('length', squareRoot(square));
}
