import { printed, type ReferenceValue } from './reference-value.js';

/** Purposes of a slope. */
export const SLOPE_PURPOSES = Object.freeze([
  'drainage',
  'hard-surface-at-foundation',
  'soil-at-foundation',
  'accessible-route',
  'accessible-route-cross',
  'accessible-ramp',
  'accessible-ramp-cross',
  'accessible-counter-slope',
] as const);
/** A purpose of {@link SLOPE_PURPOSES}. */
export type SlopePurpose = (typeof SLOPE_PURPOSES)[number];

/** The minimum or the maximum slope for a purpose. */
export interface SlopeLimits {
  /** Minimum slope. */
  readonly minimum?: ReferenceValue;
  /** Maximum slope. */
  readonly maximum?: ReferenceValue;
}

/**
 * Limits of slopes by purpose. Sources: `paver-tolerances` (drainage), `residential-code` (the first
 * 10 ft from a foundation: 2% for hard surfaces, 6 in in 10 ft for soil), `ada-ramps`,
 * `ramp-cross-slope`, `ada-counter-slope`, `route-slope` (the two of a route).
 */
export const SLOPE_LIMITS: Readonly<Record<SlopePurpose, SlopeLimits>> = Object.freeze({
  drainage: Object.freeze({ minimum: printed('2', 'percent', 'paver-tolerances') }),
  'hard-surface-at-foundation': Object.freeze({
    minimum: printed('2', 'percent', 'residential-code'),
  }),
  'soil-at-foundation': Object.freeze({ minimum: printed('6/10', 'in/ft', 'residential-code') }),
  'accessible-route': Object.freeze({ maximum: printed('1/20', 'ratio', 'route-slope') }),
  'accessible-route-cross': Object.freeze({ maximum: printed('1/48', 'ratio', 'route-slope') }),
  'accessible-ramp': Object.freeze({ maximum: printed('1/12', 'ratio', 'ada-ramps') }),
  'accessible-ramp-cross': Object.freeze({ maximum: printed('1/48', 'ratio', 'ramp-cross-slope') }),
  'accessible-counter-slope': Object.freeze({
    maximum: printed('1/20', 'ratio', 'ada-counter-slope'),
  }),
});

/**
 * Changes of level on an accessible route: up to `vertical` without treatment, up to `bevelled` with
 * an edge no steeper than `bevel`, beyond that a ramp. Source: `ada-level-change`.
 */
export const LEVEL_CHANGE_LIMITS = Object.freeze({
  vertical: printed('1/4', 'in', 'ada-level-change'),
  bevelled: printed('1/2', 'in', 'ada-level-change'),
  bevel: printed('1/2', 'ratio', 'ada-level-change'),
});

/**
 * Maximum change of grade of a driveway without a vertical curve, and the distance between such
 * changes. The same manual quotes 6 to 8% as workable. Source: `driveway-profiles`.
 */
export const DRIVEWAY_BREAK_LIMITS = Object.freeze({
  change: printed('3', 'percent', 'driveway-profiles'),
  apart: printed('11', 'ft', 'driveway-profiles'),
});

/**
 * Maximum gradient of a private drive, and the gradient above which a change of grade needs a
 * transition length. Source: `nhbc-drives`.
 */
export const DRIVE_GRADIENTS = Object.freeze({
  maximum: printed('1/6', 'ratio', 'nhbc-drives'),
  transitionsBeyond: printed('1/10', 'ratio', 'nhbc-drives'),
});

/** Clearance of a damp-proof course above the paving. Source: `nhbc-drives`. */
export const DAMP_PROOF_FREEBOARD = printed('150', 'mm', 'nhbc-drives');

/** Comfort of steps: maximum of two risers and a tread. Source: `masonry-handbook`. */
export const STEP_COMFORT = printed('25', 'in', 'masonry-handbook');
