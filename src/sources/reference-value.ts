import type { Unit } from '../units/catalogue.js';
import type { SourceId } from './catalogue.js';

/**
 * A published figure as printed: digits as text, unit and source. How far it can be traced is the
 * status of its source in `SOURCES`.
 */
export interface ReferenceValue {
  readonly value: string;
  readonly unit: Unit;
  readonly source: SourceId;
}

/** A published figure without a unit, such as a ratio, as printed. */
export interface ReferenceNumber {
  readonly value: string;
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
