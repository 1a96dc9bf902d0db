// The hole is a compacted volume; `volumes` defines the states.
import { isStateVolume, type StateVolume } from '../../volumes/state-volume.js';
import { fault, type FieldPath } from '../../errors.js';
import { custom, list, object, optional, quantity, ratio } from '../../input/field.js';
import {
  AT_MOST_RATIO,
  DENSITY,
  FRACTION,
  MASS_OR_NONE,
  PAYLOAD,
  SHARE,
  VOLUME,
} from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { YIELD_LIMITS } from '../../sources/yield-limits.js';
import { sum } from '../../units/aggregate.js';
import type { DensityInput, MassInput, VolumeInput } from '../../units/construct.js';
import { exactOf, type Density, type Mass, type Volume } from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  ratioToDecimal,
  ratioToNumber,
  subtractRatios,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { readNumber } from '../../units/read-number.js';
import { onePlus, overRatio } from '../../units/times-ratio.js';
import { NO_MASS } from '../../units/zero.js';
import type { Verdict } from '../../verdict.js';
import { derivedStep, formulaStep, given, withWorking, type Worked } from '../../working.js';
import { quantityOr } from '../quantity-or.js';
import { verdictWithin } from '../within-limits.js';

/** A delivery ticket with the moisture of that day. */
export interface MoistTicketInput {
  /** Mass on the ticket [mass], more than 0 and at most 10 000 t. */
  readonly mass: MassInput;
  /** Water over dry mass, a fraction 0 to 1. Default: that of all tickets. */
  readonly moisture?: number | string;
}

/** A delivery ticket: its mass, or its mass with the moisture of that day. */
export type TicketInput = MassInput | MoistTicketInput;

/** Limits of implied over expected density; on a limit it passes. */
export interface YieldLimitsInput {
  /** Minimum, more than 0 and at most 1. */
  readonly minimum: number | string;
  /** Maximum, 1 to 100. */
  readonly maximum: number | string;
}

/** Tickets, and the hole that the stone went into. */
export interface YieldCheckOptions {
  /** Masses on the scale, each with its moisture if it is known, 1 to 10 000. */
  readonly tickets: readonly TicketInput[];
  /** Moisture of tickets without their own: water over dry mass, a fraction 0 to 1. Default: 0. */
  readonly moisture?: number | string;
  /**
   * Volume of the hole as measured, in place [volume], more than 0; or a compacted state volume.
   */
  readonly compactedVolume: VolumeInput | StateVolume<'compacted'>;
  /** Expected dry density after compaction [density], more than 0 and at most 5 t/m3. */
  readonly expectedDryDensity: DensityInput;
  /** Dry stone of these tickets that went elsewhere, such as into soft spots [mass]. Default: none. */
  readonly usedElsewhere?: MassInput;
  /** Limits of the ratio. Default: 0.9 to 1.1, common practice. */
  readonly limits?: YieldLimitsInput;
  /** Uncertainty of the ratio, as a fraction of it, 0 to 1. Default: 0. */
  readonly uncertainty?: number | string;
}

const TICKET = shapeOf<MoistTicketInput>()({
  mass: quantity(PAYLOAD),
  moisture: optional(ratio(FRACTION)),
});

const LIMITS = shapeOf<YieldLimitsInput>()({
  minimum: ratio(SHARE),
  maximum: ratio(AT_MOST_RATIO),
});

const OPTIONS = shapeOf<YieldCheckOptions>()({
  tickets: list(
    quantityOr(PAYLOAD, object(TICKET), (mass) => ({ mass, moisture: undefined })),
    { of: 'tickets' },
  ),
  moisture: optional(ratio(FRACTION), ZERO_RATIO),
  compactedVolume: custom(readHole),
  expectedDryDensity: quantity(DENSITY),
  usedElsewhere: optional(quantity(MASS_OR_NONE), NO_MASS),
  limits: optional(object(LIMITS)),
  uncertainty: optional(ratio(FRACTION), ZERO_RATIO),
});

/** Check of delivered stone against the hole. */
export interface YieldCheck extends Worked {
  /** Mass on the tickets, water included. */
  readonly deliveredMass: Mass;
  /** Dry stone for this hole: water and stone used elsewhere deducted. */
  readonly dryMass: Mass;
  /** Dry density in place, if all of it were in the hole. */
  readonly impliedDryDensity: Density;
  /** Implied over expected dry density. */
  readonly ratio: number;
  /** Whether the ratio is within its limits. */
  readonly verdict: Verdict;
  /** Too thick or too thin; null if it passes. */
  readonly code: 'too-much' | 'too-little' | null;
  /** What it means and what to do next. */
  readonly note: string;
}

/**
 * Checks delivery tickets against the measured hole: `implied = sum(m / (1 + w)) / V`,
 * `ratio = implied / expected`. If there is too much stone, it went somewhere else (over-dig, soft
 * spot, spill). If there is too little, the layer is thin or loose.
 *
 * @param options - see {@link YieldCheckOptions}
 * @returns delivered and dry mass, implied density, ratio, verdict and what it means
 * @throws `WRONG_STATE` for a volume that is not compacted, `OUT_OF_RANGE`, `NEGATIVE`,
 *   `NOT_POSITIVE`, `EMPTY_LIST` and the reading codes
 * @source derived
 * @source common-practice
 * @example
 * const check = yieldCheck({
 *   tickets: ['18.2 t', '18.2 t'],
 *   moisture: 0.05,
 *   compactedVolume: '14.48 m3',
 *   expectedDryDensity: '2.15 t/m3',
 * });
 * check.impliedDryDensity.to('t/m3').toFixed(3) //=> '2.394'
 * check.verdict //=> 'fail'
 * check.code //=> 'too-much'
 */
export function yieldCheck(options: YieldCheckOptions): YieldCheck {
  const read = readOptions(options, OPTIONS);
  const { tickets, moisture, compactedVolume: hole, expectedDryDensity: expected } = read;
  const dryOf = (ticket: (typeof tickets)[number]) =>
    overRatio(ticket.mass, onePlus(ticket.moisture ?? moisture));
  const dryMass = sum(tickets.map(dryOf)).minus(read.usedElsewhere);
  if (dryMass.isNegative()) {
    const message =
      'this is more than the dry stone on all tickets. Write only the stone of these tickets that went elsewhere';
    throw fault('OUT_OF_RANGE', message, {}, ['usedElsewhere']);
  }
  const implied = dryMass.dividedBy(hole);
  const ratio = divideRatios(exactOf(implied), exactOf(expected));
  const doubt = multiplyRatios(ratio, read.uncertainty);
  const verdict = verdictWithin(ratio, read.limits ?? PUBLISHED, doubt);
  const side = compareRatios(ratio, ONE_RATIO);
  const check = {
    deliveredMass: sum(tickets.map((ticket) => ticket.mass)),
    dryMass,
    impliedDryDensity: implied,
    ratio: ratioToNumber(ratio),
    verdict,
    code: verdict === 'pass' || side === 0 ? null : side > 0 ? 'too-much' : 'too-little',
    note: noteOn(verdict, ratio),
  } as const;
  return withWorking(check, () => [
    derivedStep({
      title: 'Dry density that the tickets imply',
      formula: 'dt = (sum(m[i] / (1 + w[i])) - m0) / V',
      given: [
        given(
          'm',
          'mass on each ticket',
          tickets.map(({ mass }) => mass),
        ),
        given(
          'w',
          'moisture of dry mass, of each ticket',
          tickets.map((ticket) => ratioToDecimal(ticket.moisture ?? moisture)),
        ),
        given('m0', 'dry stone used elsewhere', read.usedElsewhere),
        given('V', 'measured hole, compacted', hole),
      ],
      result: given('dt', 'implied dry density', implied),
    }),
    formulaStep({
      title: 'Tickets against the hole',
      formula: 'k = dt / d',
      given: [
        given('dt', 'implied dry density', implied),
        given('d', 'expected dry density', expected),
      ],
      result: given('k', 'ratio', check.ratio),
      source: 'common-practice',
    }),
  ]);
}

const PUBLISHED = {
  minimum: readNumber(YIELD_LIMITS.minimum.value),
  maximum: readNumber(YIELD_LIMITS.maximum.value),
};

function readHole(reader: Reader, value: unknown, path: FieldPath): Volume {
  const { read } = quantity(VOLUME);
  if (!isStateVolume(value)) return read(reader, value, path);
  if (value.state !== 'compacted') {
    const message = `this volume is ${value.state}, and a hole filled with stone is compacted. Convert it with toState(volume, 'compacted', factors)`;
    reader.fail('WRONG_STATE', path, message, { got: value.state });
  }
  return read(reader, value.volume, path);
}

/** Deviation from one, in words: `11.4% more stone than`. */
function noteOn(verdict: Verdict, ratio: Ratio): string {
  if (verdict === 'pass') return 'The tickets agree with the measured hole.';
  const percent = ratioToDecimal(subtractRatios(ratio, ONE_RATIO)).times(100);
  const isLess = percent.isNegative();
  const much = `${percent.abs().toFixed(1)}% ${isLess ? 'less' : 'more'} stone than the measured hole holds`;
  if (verdict === 'unclear') {
    return `${much}, which may be within the uncertainty. Take more readings of the hole and the moisture, then check again.`;
  }
  return isLess
    ? `${much}. The layer is thinner than measured, not compacted, or a ticket is missing. Shoot the layer again before you cover it.`
    : `${much}. The cause may be over-dig, a soft spot that was not booked separately, a spill, or wetter stone than booked. Find it before you order more.`;
}
