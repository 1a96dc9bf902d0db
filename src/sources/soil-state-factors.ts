import type { SourceId, SourceStatus } from './catalogue.js';

/** Volume of a soil loose and compacted against in the bank, as printed. */
export interface SoilFactorRow {
  readonly loosePerBank: string;
  readonly compactedPerBank: string;
  readonly source: SourceId;
  readonly status: SourceStatus;
}

const row = (
  loosePerBank: string,
  compactedPerBank: string,
  source: SourceId,
  status: SourceStatus,
): SoilFactorRow => Object.freeze({ loosePerBank, compactedPerBank, source, status });

/**
 * Soil conversion factors. Only the sand row was read; the others are from memory, and real soils
 * vary: a trial load beats any table.
 */
export const SOIL_STATE_FACTORS = Object.freeze({
  sand: row('1.11', '0.95', 'soil-factors-text', 'read'),
  loam: row('1.25', '0.90', 'fm-5-434', 'memory'),
  clay: row('1.43', '0.90', 'fm-5-434', 'memory'),
  'blasted-rock': row('1.50', '1.30', 'fm-5-434', 'memory'),
});

/** The soils of the table. */
export type SoilName = keyof typeof SOIL_STATE_FACTORS;

/** The names of the soils of the table. */
export const SOIL_NAMES = Object.freeze(['sand', 'loam', 'clay', 'blasted-rock'] as const);
