import { makeReader, type Reader } from '../input/reader.js';
import {
  force,
  length,
  lineWeight,
  slope,
  type ForceInput,
  type LengthInput,
  type LineWeightInput,
  type SlopeInput,
} from '../units/construct.js';
import { formatQuantity } from '../units/format-quantity.js';
import { exactOf, fromSI, type Force, type Length, type LineWeight } from '../units/quantity.js';
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
import { given, withWorking, type Step, type Worked } from '../working.js';
import { SITE_LENGTH } from './limits.js';

/** A tape that hangs free between its ends, or between supports at even distances. */
export interface HangingTapeInput {
  readonly weightPerLength: LineWeightInput;
  /** The pull at its end. */
  readonly tension: ForceInput;
  /** How many even bays it hangs in, default 1. */
  readonly bays?: number;
}

/** A taped length brought to plan. */
export interface PlanDistance extends Worked {
  /** Level distance. */
  readonly plan: Length;
  /** Plan less tape: nothing or negative. */
  readonly correction: Length;
  /** What the sag of the tape takes off; nothing for a tape on the ground. */
  readonly sagCorrection: Length;
  /** What the slope takes off. */
  readonly slopeCorrection: Length;
}

/**
 * Brings a taped length to plan: `H = sqrt(S^2 - h^2)` from the rise h between its ends, or
 * `H = S / sqrt(1 + i^2)` from its slope i. A tape that hangs free reads too long: in each bay of
 * length L by `w^2 L^3 / (24 P^2)`, w its weight per length and P the pull, which is taken off first.
 * The rise and slope parts are exact but for one root; the sag is that of a flat curve.
 *
 * @param options.taped - as read on the tape [length]
 * @param options.rise - difference of level between the ends [length, either way]; or give `slope`
 * @param options.slope - of the tape [slope, either way], rise over level run, up to 10
 * @param options.hanging - `weightPerLength` [line-weight], `tension` [force] and number of `bays`, if the
 *   tape hangs free
 * @returns plan distance [length], corrections [length, negative: plan is shorter]
 * @throws `RISE_EXCEEDS_SLOPE_LENGTH`, `ONE_OF`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const side = planDistance({ taped: '18 m', rise: '1.1 m' });
 * side.plan.to('m').toFixed(4) //=> '17.9664'
 * side.correction.to('mm').toFixed(1) //=> '-33.6'
 */
export function planDistance(options: {
  readonly taped: LengthInput;
  readonly rise?: LengthInput;
  readonly slope?: SlopeInput;
  readonly hanging?: HangingTapeInput;
}): PlanDistance {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const taped = reader.quantity('length', fields['taped'], ['taped'], SITE_LENGTH);
  const rise =
    fields['rise'] === undefined
      ? undefined
      : reader.quantity('length', fields['rise'], ['rise'], ANY_RISE);
  const steepness =
    fields['slope'] === undefined
      ? undefined
      : reader.quantity('slope', fields['slope'], ['slope'], STEEPNESS);
  if (rise !== undefined && steepness !== undefined) {
    reader.fail('ONE_OF', ['slope'], 'give the rise or the slope, not both');
  }
  const hanging = fields['hanging'] === undefined ? undefined : readTape(reader, fields['hanging']);
  reader.finish();
  const sag = hanging === undefined ? NOTHING : sagOf(taped, hanging);
  const straight = taped.minus(sag);
  if (sag.compare(taped.dividedBy(10)) > 0) {
    const message = 'the tape would sag by far too much: a slip of a unit?';
    reader.fail('OUT_OF_RANGE', ['hanging', 'tension'], message);
  }
  if (rise !== undefined && rise.abs().compare(straight) >= 0) {
    const [up, long] = [rise.abs(), straight].map((one) =>
      formatQuantity(one, { as: 'm', places: 3 }),
    );
    const message = `a rise of ${up} is not shorter than the tape of ${long}: measure again`;
    reader.fail('RISE_EXCEEDS_SLOPE_LENGTH', ['rise'], message);
  }
  reader.finish();
  const plan = levelled(straight, rise, steepness && exactOf(steepness));
  const slopeCorrection = plan.minus(straight);
  return withWorking(
    { plan, correction: plan.minus(taped), sagCorrection: sag.negated(), slopeCorrection },
    () => [
      ...(hanging === undefined ? [] : [sagStep(taped, hanging, sag)]),
      {
        title: 'Level distance',
        formula: steepness === undefined ? 'H = sqrt(S^2 - h^2)' : 'H = S / sqrt(1 + i^2)',
        given: [
          given('S', 'taped', straight),
          steepness === undefined
            ? given('h', 'rise', rise ?? NOTHING)
            : given('i', 'slope', steepness),
        ],
        result: given('H', 'plan', plan),
        source: 'derived',
      },
    ],
  );
}

const NOTHING = length(0, 'm');
const ANY_RISE = Object.freeze({ sign: 'any', most: length(10, 'km') } as const);
const STEEPNESS = Object.freeze({ sign: 'any', most: slope(10, 'ratio') } as const);
const WEIGHT = Object.freeze({ sign: 'positive', most: lineWeight(1000, 'N/m') } as const);
const PULL = Object.freeze({ sign: 'positive', most: force(1000, 'kN') } as const);

interface HangingTape {
  readonly weight: LineWeight;
  readonly pull: Force;
  readonly bays: number;
}

function readTape(reader: Reader, value: unknown): HangingTape {
  const path = ['hanging'];
  const fields = reader.object(value, path);
  const weight = reader.quantity(
    'line-weight',
    fields['weightPerLength'],
    [...path, 'weightPerLength'],
    WEIGHT,
  );
  const pull = reader.quantity('force', fields['tension'], [...path, 'tension'], PULL);
  const at = [...path, 'bays'];
  const bays = reader.number(fields['bays'] ?? 1, at, { sign: 'positive', most: 1000 });
  if (!bays.isInteger()) reader.fail('OUT_OF_RANGE', at, 'must be a whole number');
  return { weight, pull, bays: bays.toNumber() };
}

/** `n w^2 L^3 / (24 P^2)` with L one of n bays. */
function sagOf(taped: Length, { weight, pull, bays }: HangingTape): Length {
  const bay = taped.dividedBy(bays);
  const ratio = weight.times(bay).dividedBy(pull);
  return bay.times(ratio.times(ratio)).times(bays).dividedBy(24);
}

const sagStep = (taped: Length, { weight, pull, bays }: HangingTape, sag: Length): Step => ({
  title: 'What the sag of the tape adds to its reading',
  formula: 'n w^2 L^3 / (24 P^2)',
  given: [
    given('n', 'bays', bays),
    given('w', 'weight per length', weight),
    given('L', 'one bay', taped.dividedBy(bays)),
    given('P', 'pull', pull),
  ],
  result: given('C', 'sag of the tape', sag),
  source: 'derived',
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
