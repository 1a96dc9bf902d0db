import type { Unit } from '../units/catalogue.js';
import type { SourceId, SourceStatus } from './catalogue.js';

/** A published figure as printed: digits as text, unit, where it stands and how it was obtained. */
export interface ReferenceValue {
  readonly value: string;
  readonly unit: Unit;
  readonly source: SourceId;
  readonly status: SourceStatus;
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
