import { makeReader, type Reader } from '../input/reader.js';
import { exactlyOne } from '../input/exactly-one.js';
import { referenceQuantity } from '../reference-quantity.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { SourceStatus } from '../sources/source.js';
import { cautionsFor, type Caution, type CautionId } from '../sources/cautions.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import { SLOPE_LIMITS, SLOPE_PURPOSES, type SlopePurpose } from '../sources/slope-limits.js';
import type { SlopeInput } from '../units/construct.js';
import { formatQuantity } from '../units/format-quantity.js';
import type { Slope } from '../units/quantity.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { SLOPE, SLOPE_LIMIT, SLOPE_MARGIN } from './limits.js';

/** A slope against one limit. */
export interface SlopeLimitCheck {
  /** `least`: the fall must be no less; `most`: the slope must be no steeper, either way. */
  readonly limit: 'least' | 'most';
  readonly value: Slope;
  /** How far the slope keeps the limit; negative beyond it. */
  readonly margin: Slope;
  readonly verdict: Verdict;
  /** Where the limit stands; `caller` for one that was given. */
  readonly source: SourceId | 'caller';
  readonly status: SourceStatus | 'caller';
}

/** A slope against the limits of a purpose. */
export interface SlopeCheck extends Worked {
  readonly verdict: Verdict;
  readonly fall: Slope;
  readonly checks: readonly SlopeLimitCheck[];
  /** The verdict in words. */
  readonly text: string;
  readonly cautions: readonly Caution[];
}

/**
 * Checks a slope against the limits of a purpose, or against limits of the caller. Least falls are
 * compared with the fall as given, so that one that runs the wrong way fails; greatest slopes with its
 * size. With an uncertainty u the verdict is `pass` where the whole band keeps the limit, `fail` where
 * none of it does, else `unclear`. Exactly on the limit passes.
 *
 * @param options.fall - the slope [slope], + where it falls the way it should
 * @param options.purpose - one of `SLOPE_PURPOSES`, or give `limits`
 * @param options.limits - `least` fall and `most` slope of the caller [slope], one or both
 * @param options.uncertainty - of the measured slope [slope], default none
 * @returns verdict, each limit with its value, margin [slope], source and status, the verdict in words
 *   and cautions
 * @throws `UNKNOWN_CHOICE`, `ONE_OF`, `REQUIRED`, `LIMITS_CONTRADICT`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source paver-tolerances
 * @source ada-ramps
 * @example
 * checkSlope({ fall: '1.66%', purpose: 'drainage' }).verdict //=> 'fail'
 * checkSlope({ fall: '1/4 in per ft', purpose: 'accessible-ramp-cross' }).verdict //=> 'pass'
 * const measured = checkSlope({ fall: '2.1%', purpose: 'drainage', uncertainty: '0.3%' });
 * measured.verdict //=> 'unclear'
 */
export function checkSlope(options: {
  readonly fall: SlopeInput;
  readonly purpose?: SlopePurpose;
  readonly limits?: { readonly least?: SlopeInput; readonly most?: SlopeInput };
  readonly uncertainty?: SlopeInput;
}): SlopeCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const fall = reader.quantity('slope', fields['fall'], ['fall'], SLOPE);
  const limits = readLimits(reader, fields);
  const uncertainty = reader.quantity(
    'slope',
    fields['uncertainty'] ?? '0%',
    ['uncertainty'],
    SLOPE_MARGIN,
  );
  reader.finish();
  const checks = limits.map((one) => judge(one, fall, uncertainty));
  const verdict = worstVerdict(checks.map((check) => check.verdict));
  const text = checks.map((check) => sentence(check, fall)).join(' ');
  const cautions = cautionsFor(...cautionOf(fields['purpose']));
  return withWorking({ verdict, fall, checks, text, cautions }, () =>
    checks.map((check) => ({
      title: check.limit === 'least' ? 'Fall against the least' : 'Slope against the steepest',
      formula: check.limit === 'least' ? 'm = g - g0' : 'm = g0 - |g|',
      given: [
        given('g', 'slope', fall),
        given('g0', 'limit', check.value),
        given('u', 'uncertainty', uncertainty),
      ],
      result: given('m', 'margin', check.margin),
      source: check.source === 'caller' ? ('derived' as const) : check.source,
    })),
  );
}

type Limit = Pick<SlopeLimitCheck, 'limit' | 'value' | 'source' | 'status'>;

const NAMES = ['least', 'most'] as const;

function readLimits(reader: Reader, fields: Readonly<Record<string, unknown>>): Limit[] {
  const which = exactlyOne(reader, fields, ['purpose', 'limits'], ['purpose']);
  if (which === undefined) return [];
  if (which === 'purpose') {
    const purpose = reader.choice(fields['purpose'], ['purpose'], SLOPE_PURPOSES);
    const published = SLOPE_LIMITS[purpose];
    return NAMES.flatMap((limit) => publishedLimit(limit, published[limit]));
  }
  const own = reader.object(fields['limits'], ['limits']);
  const limits = NAMES.flatMap((limit): Limit[] => {
    if (own[limit] === undefined) return [];
    const value = reader.quantity('slope', own[limit], ['limits', limit], SLOPE_LIMIT);
    return [{ limit, value, source: 'caller', status: 'caller' }];
  });
  const [least, most] = limits;
  if (least === undefined) reader.fail('REQUIRED', ['limits'], 'is missing: give least or most');
  else if (most !== undefined && least.value.compare(most.value) > 0) {
    reader.fail('LIMITS_CONTRADICT', ['limits'], 'the least fall is steeper than the steepest');
  }
  return limits;
}

function publishedLimit(limit: 'least' | 'most', value: ReferenceValue | undefined): Limit[] {
  if (value === undefined) return [];
  const { source } = value;
  return [{ limit, value: referenceQuantity('slope', value), source, status: statusOf(source) }];
}

function judge(limit: Limit, fall: Slope, uncertainty: Slope): SlopeLimitCheck {
  const margin = limit.limit === 'least' ? fall.minus(limit.value) : limit.value.minus(fall.abs());
  return { ...limit, margin, verdict: verdictOf(margin, uncertainty) };
}

function sentence({ limit, value, verdict }: SlopeLimitCheck, fall: Slope): string {
  const [size, most] = inPercent(fall.abs(), value);
  const way = limit === 'least' && fall.isNegative() ? 'Rises' : 'Falls';
  const subject = limit === 'least' ? `${way} ${size}` : `Slope ${size}`;
  const rule = `the ${limit === 'least' ? 'least fall' : 'steepest slope'} of ${most}`;
  if (verdict === 'unclear') return `${subject}: too close to ${rule} to tell. Measure again.`;
  return `${subject}: ${verdict === 'pass' ? 'keeps' : 'does not keep'} ${rule}.`;
}

/** Two slopes in per cent, with as many places as it takes to tell them apart. */
function inPercent(a: Slope, b: Slope, places = 2): readonly [string, string] {
  const [first, second] = [a, b].map((one) => formatQuantity(one, { as: 'percent', places }));
  const isToldApart = first !== second || a.equals(b) || places === MOST_PLACES;
  return isToldApart ? [first ?? '', second ?? ''] : inPercent(a, b, places + 1);
}

const MOST_PLACES = 12;

const cautionOf = (purpose: unknown): CautionId[] =>
  typeof purpose === 'string' && purpose.startsWith('accessible') ? ['access'] : ['drainage'];
