import { referenceQuantity } from '../reference-quantity.js';
import { statusOf, type SourceId } from '../sources/catalogue.js';
import type { ReferenceValue } from '../sources/reference-value.js';
import { SLOPE_LIMITS, type SlopePurpose } from '../sources/slope-limits.js';
import type { SourceStatus } from '../sources/source.js';
import type { Slope } from '../units/quantity.js';
import type { Verdict } from '../verdict.js';

/** A slope against one limit. */
export interface SlopeLimitCheck {
  /** `minimum`: the fall must reach it; `maximum`: the slope must not be steeper, either way. */
  readonly limit: 'minimum' | 'maximum';
  /** The limit. */
  readonly value: Slope;
  /** Margin to the limit; negative if the slope is out of limits. */
  readonly margin: Slope;
  /** Verdict on this limit. */
  readonly verdict: Verdict;
  /** Where the limit is printed; `caller` for your own. */
  readonly source: SourceId | 'caller';
  /** How far the limit can be traced; `caller` for your own. */
  readonly status: SourceStatus | 'caller';
}

/** One limit of a slope, and where it comes from. Internal. */
export type SlopeLimit = Pick<SlopeLimitCheck, 'limit' | 'value' | 'source' | 'status'>;

/** How far a slope is on the right side of a limit; negative on the wrong side. Internal. */
export const marginTo = (
  { limit, value }: Pick<SlopeLimit, 'limit' | 'value'>,
  fall: Slope,
): Slope => (limit === 'minimum' ? fall.minus(value) : value.minus(fall.abs()));

/** The published limits for a purpose. Internal. */
export function limitsOf(purpose: SlopePurpose): SlopeLimit[] {
  const { minimum, maximum } = SLOPE_LIMITS[purpose];
  return [...published('minimum', minimum), ...published('maximum', maximum)];
}

function published(limit: SlopeLimit['limit'], figure: ReferenceValue | undefined): SlopeLimit[] {
  if (figure === undefined) return [];
  const { source } = figure;
  return [{ limit, value: referenceQuantity('slope', figure), source, status: statusOf(source) }];
}

/** The limits that the caller gave. Internal. */
export function limitsGiven(limits: {
  readonly minimum?: Slope | undefined;
  readonly maximum?: Slope | undefined;
}): SlopeLimit[] {
  return (['minimum', 'maximum'] as const).flatMap((limit): SlopeLimit[] => {
    const value = limits[limit];
    return value === undefined ? [] : [{ limit, value, source: 'caller', status: 'caller' }];
  });
}
