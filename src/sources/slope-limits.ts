import { printed, type ReferenceValue } from './reference-value.js';

/** What a slope is asked for. */
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

/** The least fall that a purpose asks for, or the steepest slope that it allows. */
export interface SlopeLimits {
  /** Minimum slope. */
  readonly least?: ReferenceValue;
  /** Maximum slope. */
  readonly most?: ReferenceValue;
}

/**
 * Limits of slopes by purpose. Sources: `paver-tolerances` (drainage), `residential-code` (the first
 * 10 ft from a foundation: 2 % for hard surfaces, 6 in in 10 ft for soil), `ada-ramps`,
 * `ramp-cross-slope`, `ada-counter-slope`, `route-slope` (the two of a route).
 */
export const SLOPE_LIMITS: Readonly<Record<SlopePurpose, SlopeLimits>> = Object.freeze({
  drainage: Object.freeze({ least: printed('2', 'percent', 'paver-tolerances') }),
  'hard-surface-at-foundation': Object.freeze({
    least: printed('2', 'percent', 'residential-code'),
  }),
  'soil-at-foundation': Object.freeze({ least: printed('6/10', 'in/ft', 'residential-code') }),
  'accessible-route': Object.freeze({ most: printed('1/20', 'ratio', 'route-slope') }),
  'accessible-route-cross': Object.freeze({ most: printed('1/48', 'ratio', 'route-slope') }),
  'accessible-ramp': Object.freeze({ most: printed('1/12', 'ratio', 'ada-ramps') }),
  'accessible-ramp-cross': Object.freeze({ most: printed('1/48', 'ratio', 'ramp-cross-slope') }),
  'accessible-counter-slope': Object.freeze({
    most: printed('1/20', 'ratio', 'ada-counter-slope'),
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
 * Greatest change of grade of a driveway without a vertical curve, and how far apart such changes
 * stay. The same manual quotes 6 to 8 % as workable. Source: `driveway-profiles`.
 */
export const DRIVEWAY_BREAK_LIMITS = Object.freeze({
  change: printed('3', 'percent', 'driveway-profiles'),
  apart: printed('11', 'ft', 'driveway-profiles'),
});

/**
 * Steepest gradient of a private drive, and the gradient beyond which a change of grade needs a
 * transition length. Source: `nhbc-drives`.
 */
export const DRIVE_GRADIENTS = Object.freeze({
  most: printed('1/6', 'ratio', 'nhbc-drives'),
  transitionsBeyond: printed('1/10', 'ratio', 'nhbc-drives'),
});

/** How far paving stays below a damp-proof course. Source: `nhbc-drives`. */
export const DAMP_PROOF_FREEBOARD = printed('150', 'mm', 'nhbc-drives');

/** Comfort of steps: two risers and a tread come to no more than this. Source: `masonry-handbook`. */
export const STEP_COMFORT = printed('25', 'in', 'masonry-handbook');
