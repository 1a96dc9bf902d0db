import type { Unit } from '../units/catalogue.js';
import type { SourceId, SourceStatus } from './catalogue.js';

/** A published figure as printed: digits as text, unit, where it stands and how it was obtained. */
export interface ReferenceValue {
  readonly value: string;
  readonly unit: Unit;
  readonly source: SourceId;
  readonly status: SourceStatus;
}

/** A published figure without a unit, such as a ratio, as printed. */
export interface ReferenceNumber {
  readonly value: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
}

/** Makes a reference number. */
export function printedNumber(
  value: string,
  source: SourceId,
  status: SourceStatus = 'read',
): ReferenceNumber {
  return Object.freeze({ value, source, status });
}

/** Makes a reference value. */
export function printed(
  value: string,
  unit: Unit,
  source: SourceId,
  status: SourceStatus = 'read',
): ReferenceValue {
  return Object.freeze({ value, unit, source, status });
}
