import { printed, printedNumber, type ReferenceValue } from './reference-value.js';

/** An allowable misclosure: `k x sqrt(n)`, n counted in set-ups or in lengths of `per`. */
export interface MisclosureRuleValue {
  /** Constant of the rule. */
  readonly k: ReferenceValue;
  /** Distance that counts as one. */
  readonly per: 'set-up' | ReferenceValue;
}

const perKilometre = (k: string): MisclosureRuleValue =>
  Object.freeze({
    k: printed(k, 'mm', 'misclosure-rules'),
    per: printed('1', 'km', 'misclosure-rules'),
  });

/**
 * Rules for a misclosure, to choose from: there is no default. They are written for long lines; on
 * a small site use the rule by set-ups. Source: `misclosure-rules`.
 */
export const MISCLOSURE_RULES = Object.freeze({
  'second-order-class-2': perKilometre('8.4'),
  'third-order-loop': perKilometre('12'),
  'college-practice': perKilometre('20'),
  'by-set-ups': Object.freeze({
    k: printed('5', 'mm', 'misclosure-rules'),
    per: 'set-up',
  } as const),
});

/**
 * The earth as a sphere, and the share of its curvature that refraction offsets. The refraction is
 * a typical value; over hot paving it is unpredictable. Source: `earth-curvature`, which prints the
 * coefficients that these two figures give.
 */
export const EARTH = Object.freeze({
  diameter: printed('12740', 'km', 'earth-curvature'),
  refractionOfCurvature: printed('1/7', 'ratio', 'earth-curvature'),
});

/**
 * Coverage factor of an uncertainty: about 95% of random errors are within two standard deviations.
 * Source: `nist-tn1297`.
 */
export const COVERAGE_FACTOR = printedNumber('2', 'nist-tn1297');
