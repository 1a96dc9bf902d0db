import { printed, printedNumber, type ReferenceValue } from './reference-value.js';

/** Legal weights of one jurisdiction, as published. */
export interface AxleLimitSet {
  /** Limit of a single axle. */
  readonly single: ReferenceValue;
  /** Limit of a tandem. */
  readonly tandem: ReferenceValue;
  /** Limit of the whole vehicle. */
  readonly gross: ReferenceValue;
  /** Axles no farther apart than this count as one single axle. */
  readonly singleSpread: ReferenceValue;
  /** Axles no farther apart than this, first to last, are a tandem. */
  readonly tandemSpread: ReferenceValue;
  /** Two tandems whose first and last axles are this far apart may carry a tandem limit each. */
  readonly twoTandemsFrom: ReferenceValue;
}

/**
 * Axle limits to choose from. Choose; there is no default, and states, towns and haul roads have
 * lower ones. Source: `vehicle-weights`; the exception for two tandems is in `bridge-formula`.
 */
export const AXLE_LIMITS = Object.freeze({
  'us-interstate': Object.freeze({
    single: printed('20000', 'lb', 'vehicle-weights'),
    tandem: printed('34000', 'lb', 'vehicle-weights'),
    gross: printed('80000', 'lb', 'vehicle-weights'),
    singleSpread: printed('40', 'in', 'vehicle-weights'),
    tandemSpread: printed('96', 'in', 'vehicle-weights'),
    twoTandemsFrom: printed('36', 'ft', 'bridge-formula'),
  }),
} as const satisfies Record<string, AxleLimitSet>);

/** The axle limits of the table. */
export type AxleLimitName = keyof typeof AXLE_LIMITS;

/**
 * The axle-group formula `W = 500 (L N / (N - 1) + 12 N + 36)`, pounds and feet, rounded to the
 * nearest 500 lb. The printed tables round an exact half down: 42,750 lb is printed as 42,500.
 * Sources: `bridge-formula` (formula), `axle-weight-table` (halves).
 */
export const AXLE_GROUP_FORMULA = Object.freeze({
  step: printed('500', 'lb', 'bridge-formula'),
  perAxle: printedNumber('12', 'bridge-formula'),
  constant: printedNumber('36', 'bridge-formula'),
});
