import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** A band of running slopes of a route. */
export interface RouteBand {
  /** Running slope up to which the band holds. */
  readonly upTo: ReferenceValue;
  /** Maximum length of a segment between rests; null for no limit. */
  readonly length: ReferenceValue | null;
  /** Maximum rise of a segment between rests; null for no limit. */
  readonly rise: ReferenceValue | null;
}

/** Limits of a route. */
export interface RouteLimits {
  /** Bands of running slope, from flat to steep; a slope beyond the last is not permitted. */
  readonly bands: readonly RouteBand[];
  /** Maximum slope across the way of travel. */
  readonly cross: ReferenceValue;
  /** Slope across that is permitted on a surface that is not paved; null for the same. */
  readonly crossUnpaved: ReferenceValue | null;
  /** Share of the length that may be steeper than 1:12; null for no rule. */
  readonly steeperShare: ReferenceValue | null;
}

const slope = (value: string, source: SourceId): ReferenceValue => printed(value, 'ratio', source);
const band = (
  upTo: string,
  source: SourceId,
  most: { readonly feet?: string; readonly inches?: string; readonly riseFrom?: SourceId } = {},
): RouteBand =>
  Object.freeze({
    upTo: slope(upTo, source),
    length: most.feet === undefined ? null : printed(most.feet, 'ft', source),
    rise: most.inches === undefined ? null : printed(most.inches, 'in', most.riseFrom ?? source),
  });

function route(
  cross: ReferenceValue,
  bands: readonly RouteBand[],
  more: Partial<Pick<RouteLimits, 'crossUnpaved' | 'steeperShare'>> = {},
): RouteLimits {
  const { crossUnpaved = null, steeperShare = null } = more;
  return Object.freeze({ bands: Object.freeze([...bands]), cross, crossUnpaved, steeperShare });
}

/**
 * Running slope, length and rise of segments, and slope across, of routes by edition. Sources:
 * `route-slope` (walk of 2010), `walks-1991`, `ada-ramps`, `ramp-cross-slope` and `ramps-1991`
 * (ramps: the rise of a flight is read in the edition of 1991), `ramp-runs` (slope across of 1991),
 * `outdoor-trails` (it prints 1:8 as 12 percent), `outdoor-access-routes` (the slope across too, and
 * for trails, from the same summary), `beach-access-routes`, `forest-routes` (1:33 across where the
 * later summary has 1:20).
 */
export const ROUTE_LIMITS = Object.freeze({
  'walk-2010': route(slope('1/48', 'route-slope'), [band('1/20', 'route-slope')]),
  'walk-1991': route(slope('1/50', 'walks-1991'), [band('1/20', 'walks-1991')]),
  'ramp-2010': route(slope('1/48', 'ramp-cross-slope'), [
    band('1/12', 'ada-ramps', { inches: '30', riseFrom: 'ramps-1991' }),
  ]),
  'ramp-1991': route(slope('1/50', 'ramp-runs'), [band('1/12', 'ramps-1991', { inches: '30' })]),
  'ramp-2010-existing': route(slope('1/48', 'ramp-cross-slope'), [
    band('1/12', 'ada-ramps', { inches: '30', riseFrom: 'ramps-1991' }),
    band('1/10', 'ada-ramps', { inches: '6' }),
    band('1/8', 'ada-ramps', { inches: '3' }),
  ]),
  trail: route(
    slope('1/48', 'outdoor-access-routes'),
    [
      band('1/20', 'outdoor-trails'),
      band('1/12', 'outdoor-trails', { feet: '200' }),
      band('1/10', 'outdoor-trails', { feet: '30' }),
      band('1/8', 'outdoor-trails', { feet: '10' }),
    ],
    {
      crossUnpaved: slope('1/20', 'outdoor-access-routes'),
      steeperShare: printed('30/100', 'ratio', 'outdoor-trails'),
    },
  ),
  'outdoor-access-route': route(
    slope('1/48', 'outdoor-access-routes'),
    [
      band('1/20', 'outdoor-access-routes'),
      band('1/12', 'outdoor-access-routes', { feet: '50' }),
      band('1/10', 'outdoor-access-routes', { feet: '30' }),
    ],
    { crossUnpaved: slope('1/20', 'outdoor-access-routes') },
  ),
  'beach-access-route': route(
    slope('1/48', 'outdoor-access-routes'),
    [
      band('1/20', 'beach-access-routes'),
      band('1/12', 'beach-access-routes', { feet: '50' }),
      band('1/10', 'beach-access-routes', { feet: '30' }),
    ],
    { crossUnpaved: slope('1/20', 'outdoor-access-routes') },
  ),
  'forest-route': route(slope('1/48', 'forest-routes'), [band('1/10', 'forest-routes')], {
    crossUnpaved: slope('1/33', 'forest-routes'),
  }),
});

/** A route of {@link ROUTE_LIMITS}. */
export type RouteEdition = keyof typeof ROUTE_LIMITS;

/**
 * Slope across to aim at, so that building it does not go over the limit. Source:
 * `cross-slope-practice`.
 */
export const CROSS_SLOPE_AIM = printed('1.5', 'percent', 'cross-slope-practice');
