import { printed, printedNumber, type ReferenceNumber } from './reference-value.js';
import type { SourceId } from './catalogue.js';

/** A range of runoff coefficients. */
export interface RunoffRange {
  /** Minimum share of the rain that runs off. */
  readonly minimum: ReferenceNumber;
  /** Maximum share of the rain that runs off. */
  readonly maximum: ReferenceNumber;
}

function range(minimum: string, maximum: string, source: SourceId = 'runoff-table'): RunoffRange {
  return Object.freeze({
    minimum: printedNumber(minimum, source),
    maximum: printedNumber(maximum, source),
  });
}

/**
 * Share of the rain that runs off, by surface, for the rational formula. Sources: `runoff-table`;
 * `rational-method` (gravel). Pavers with sand joints run off as brick does. `runoff-code` prints
 * one figure for roofs and pavements, 0.8.
 */
export const RUNOFF_COEFFICIENTS = Object.freeze({
  asphalt: range('0.70', '0.95'),
  concrete: range('0.80', '0.95'),
  brick: range('0.70', '0.85'),
  gravel: range('0.35', '0.70', 'rational-method'),
  'roof-or-pavement': range('0.8', '0.8', 'runoff-code'),
  'lawn, sandy, flat': range('0.05', '0.10'),
  'lawn, sandy, average': range('0.10', '0.15'),
  'lawn, sandy, steep': range('0.15', '0.20'),
  'lawn, heavy, flat': range('0.13', '0.17'),
  'lawn, heavy, average': range('0.18', '0.22'),
  'lawn, heavy, steep': range('0.25', '0.35'),
});

/** A surface of {@link RUNOFF_COEFFICIENTS}. */
export type RunoffSurface = keyof typeof RUNOFF_COEFFICIENTS;

/**
 * Stone reservoirs: share of voids of 50 mm clear stone, maximum of draining area over paving,
 * and on soil that takes at least `fastSoil` in an hour the maximum depth. Source:
 * `permeable-sizing`. The trade reckons voids of 35 to 40% (`permeable-storage`).
 */
export const RESERVOIR = Object.freeze({
  voids: printedNumber('0.4', 'permeable-sizing'),
  maximumAreaRatio: printedNumber('2', 'permeable-sizing'),
  fastSoil: printed('45', 'mm', 'permeable-sizing'),
  maximumDepth: printed('2', 'm', 'permeable-sizing'),
  minimumVoids: printedNumber('0.35', 'permeable-storage'),
  maximumVoids: printedNumber('0.40', 'permeable-storage'),
});
