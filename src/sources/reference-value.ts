import type { Unit } from '../units/catalogue.js';
import type { SourceId } from './catalogue.js';

/**
 * A published figure as printed: digits as text, unit and source. The status of its source is in
 * `SOURCES`.
 */
export interface ReferenceValue {
  /** The digits as printed. */
  readonly value: string;
  /** The unit it is printed in. */
  readonly unit: Unit;
  /** Where it is printed. */
  readonly source: SourceId;
}

/** A published figure without a unit, such as a ratio, as printed. */
export interface ReferenceNumber {
  /** The digits as printed. */
  readonly value: string;
  /** Where it is printed. */
  readonly source: SourceId;
}

/** Makes a reference number. */
export function printedNumber(value: string, source: SourceId): ReferenceNumber {
  return Object.freeze({ value, source });
}

/** Makes a reference value. */
export function printed(value: string, unit: Unit, source: SourceId): ReferenceValue {
  return Object.freeze({ value, unit, source });
}
