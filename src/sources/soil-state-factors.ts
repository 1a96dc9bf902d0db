import type { SourceId } from './catalogue.js';

/** Loose and compacted volume of a soil over its bank volume, as printed. */
export interface SoilFactorRow {
  /** Loose over bank volume, as printed. */
  readonly loosePerBank: string;
  /** Compacted over bank volume, as printed. */
  readonly compactedPerBank: string;
  /** Where it is printed. */
  readonly source: SourceId;
}

const row = (loosePerBank: string, compactedPerBank: string, source: SourceId): SoilFactorRow =>
  Object.freeze({ loosePerBank, compactedPerBank, source });

/**
 * Soil conversion factors. Only the sand row was read (`soil-factors-text`); the others are from
 * memory (`fm-5-434`). Tables differ: a course sheet prints 1.05 and 0.89 for sand and 1.30 for
 * clay. Real soils vary, and a trial load beats any table.
 */
export const SOIL_STATE_FACTORS = Object.freeze({
  sand: row('1.11', '0.95', 'soil-factors-text'),
  loam: row('1.25', '0.90', 'fm-5-434'),
  clay: row('1.43', '0.90', 'fm-5-434'),
  'blasted-rock': row('1.50', '1.30', 'fm-5-434'),
});

/** The soils of the table. */
export type SoilName = keyof typeof SOIL_STATE_FACTORS;

/** The names of the soils of the table. */
export const SOIL_NAMES = Object.freeze(['sand', 'loam', 'clay', 'blasted-rock'] as const);
