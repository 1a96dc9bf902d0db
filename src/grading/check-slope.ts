import { known } from '../invariant.js';
import { exactlyOne } from '../input/exactly-one.js';
import { choice, object, optional, quantity } from '../input/field.js';
import { SLOPE, SLOPE_OF_SOME, SLOPE_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { cautionsFor, type CautionId, type Cautioned } from '../sources/cautions.js';
import { SLOPE_PURPOSES, type SlopePurpose } from '../sources/slope-limits.js';
import type { SlopeInput } from '../units/construct.js';
import type { Slope } from '../units/quantity.js';
import { NO_SLOPE } from '../units/zero.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { formulaStep, given, type Step, withWorking, type Worked } from '../working.js';
import { slopeNote } from './slope-note.js';
import {
  limitsGiven,
  limitsOf,
  marginTo,
  type SlopeLimit,
  type SlopeLimitCheck,
} from './slope-limit.js';

/** Your own slope limits: one of them or both. */
export interface SlopeLimitsInput {
  /** Minimum fall [slope], more than 0 and at most 10 (rise over run). Default: none. */
  readonly minimum?: SlopeInput;
  /** Maximum slope, in either direction [slope], more than 0 and at most 10. Default: none. */
  readonly maximum?: SlopeInput;
}

/** A slope to check, and what to check it against. */
export interface CheckSlopeOptions {
  /** The slope [slope], positive if it falls in the right direction; up to 10 either way. */
  readonly fall: SlopeInput;
  /** Purpose of the slope, to apply its published limits. Give this or `limits`. */
  readonly purpose?: SlopePurpose;
  /** Your own limits. Give this or `purpose`. */
  readonly limits?: SlopeLimitsInput;
  /** Uncertainty of the measured slope [slope], 0 to 10. Default: 0. */
  readonly uncertainty?: SlopeInput;
}

const LIMITS = shapeOf<SlopeLimitsInput>()({
  minimum: optional(quantity(SLOPE_OF_SOME)),
  maximum: optional(quantity(SLOPE_OF_SOME)),
});

const OPTIONS = shapeOf<CheckSlopeOptions>()({
  fall: quantity(SLOPE),
  purpose: optional(choice(SLOPE_PURPOSES)),
  limits: optional(
    object(LIMITS, (reader, { minimum, maximum }, path, raw) => {
      if (raw['minimum'] === undefined && raw['maximum'] === undefined) {
        reader.fail('REQUIRED', path, 'no limit is given. Give minimum, maximum or both');
      }
      if (minimum === undefined || maximum === undefined) return;
      if (minimum.compare(maximum) > 0) {
        reader.fail('LIMITS_CONTRADICT', path, 'minimum is steeper than maximum. Swap them');
      }
    }),
  ),
  uncertainty: optional(quantity(SLOPE_OR_NONE), NO_SLOPE),
});

/** A slope compared with its limits. */
export interface SlopeCheck extends Cautioned, Worked {
  /** The worst verdict of all limits. */
  readonly verdict: Verdict;
  /** The slope that was checked. */
  readonly fall: Slope;
  /** The slope compared with each limit. */
  readonly checks: readonly SlopeLimitCheck[];
  /** The verdict in words, with the figures. */
  readonly note: string;
}

/**
 * Checks a slope against the published limits for a purpose or your own limits. A minimum applies
 * to the fall as given, so a fall in the wrong direction fails. A maximum applies to the size of
 * the slope: `m = g - g0` or `m = g0 - |g|`. With an uncertainty u the verdict is `pass` where the
 * whole band is within the limit, `fail` where none of it is, else `unclear`. A slope exactly on
 * the limit passes.
 *
 * @param options - see {@link CheckSlopeOptions}
 * @returns verdict, each limit with its value, margin [slope], source and status, the verdict in words,
 *   and cautions
 * @throws `UNKNOWN_CHOICE`, `CONFLICTING_FIELDS`, `REQUIRED`, `LIMITS_CONTRADICT`, `OUT_OF_RANGE` and
 *   the reading codes
 * @source paver-tolerances
 * @source ada-ramps
 * @example
 * checkSlope({ fall: '1.66%', purpose: 'drainage' }).verdict //=> 'fail'
 * checkSlope({ fall: '1/4 in per ft', purpose: 'accessible-ramp-cross' }).verdict //=> 'pass'
 * const measured = checkSlope({ fall: '2.1%', purpose: 'drainage', uncertainty: '0.3%' });
 * measured.verdict //=> 'unclear'
 */
export function checkSlope(options: CheckSlopeOptions): SlopeCheck {
  const { fall, purpose, limits, uncertainty } = readOptions(
    options,
    OPTIONS,
    (reader, _, path, raw) => {
      exactlyOne(reader, raw, ['purpose', 'limits'], [...path, 'purpose']);
    },
  );
  const all = purpose === undefined ? limitsGiven(known(limits, 'limits')) : limitsOf(purpose);
  const isAccess = purpose?.startsWith('accessible') === true;
  return checkedSlope(fall, all, { uncertainty, caution: isAccess ? 'access' : 'drainage' });
}

/** A slope that has been read against limits. Internal. */
export function checkedSlope(
  fall: Slope,
  limits: readonly SlopeLimit[],
  { uncertainty, caution }: { readonly uncertainty: Slope; readonly caution: CautionId },
): SlopeCheck {
  const checks = limits.map((limit) => judge(limit, fall, uncertainty));
  const result = {
    verdict: worstVerdict(checks.map(({ verdict }) => verdict)),
    fall,
    checks,
    note: checks.map((check) => slopeNote(check, fall)).join(' '),
    cautions: cautionsFor(caution),
  };
  return withWorking(result, () => checks.map((check) => marginStep(check, fall)));
}

function judge(limit: SlopeLimit, fall: Slope, uncertainty: Slope): SlopeLimitCheck {
  const margin = marginTo(limit, fall);
  return { ...limit, margin, verdict: verdictOf(margin, uncertainty) };
}

function marginStep({ limit, value, margin, source }: SlopeLimitCheck, fall: Slope): Step {
  const isMinimum = limit === 'minimum';
  return formulaStep({
    title: isMinimum ? 'Fall against the minimum' : 'Slope against the maximum',
    formula: isMinimum ? 'm = g - g0' : 'm = g0 - abs(g)',
    given: [given('g', 'slope', fall), given('g0', 'limit', value)],
    result: given('m', 'margin', margin),
    source: source === 'caller' ? 'derived' : source,
  });
}
