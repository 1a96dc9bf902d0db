import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** What may pass a sieve. */
export interface SieveLimits {
  readonly sieve: ReferenceValue;
  readonly least: ReferenceValue;
  readonly most: ReferenceValue;
}

/**
 * Gradation limits of bedding and joint sand, coarsest sieve first, percent passing by mass. Sources:
 * `bedding-sand-clause`; `joint-sand-clause`, which misprints 1.18 mm as 1.8 mm and 600 micrometres
 * as 600 mm; `washed-sand-guide`, a washed coarse sand for work that must drain. They differ: choose
 * the one that the job is built to.
 */
export const GRADATIONS = Object.freeze({
  'bedding-sand': table('bedding-sand-clause', [
    ['9.52', '100', '100'],
    ['4.75', '95', '100'],
    ['2.36', '80', '100'],
    ['1.18', '50', '100'],
    ['0.6', '25', '60'],
    ['0.3', '10', '60'],
    ['0.15', '5', '15'],
    ['0.075', '0', '10'],
  ]),
  'joint-sand': table('joint-sand-clause', [
    ['2.36', '100', '100'],
    ['1.18', '90', '100'],
    ['0.6', '60', '90'],
    ['0.3', '30', '60'],
    ['0.15', '15', '30'],
    ['0.075', '10', '20'],
  ]),
  'washed-coarse-sand': table('washed-sand-guide', [
    ['9.5', '100', '100'],
    ['4.75', '95', '100'],
    ['2.36', '80', '100'],
    ['1.18', '50', '85'],
    ['0.6', '25', '50'],
    ['0.3', '5', '30'],
    ['0.15', '0', '10'],
    ['0.075', '0', '3'],
  ]),
});

/** The gradations of the table. */
export type GradationName = keyof typeof GRADATIONS;

function table(
  source: SourceId,
  rows: readonly (readonly [sieve: string, least: string, most: string])[],
): readonly SieveLimits[] {
  return Object.freeze(
    rows.map(([sieve, least, most]) =>
      Object.freeze({
        sieve: printed(sieve, 'mm', source),
        least: printed(least, 'percent', source),
        most: printed(most, 'percent', source),
      }),
    ),
  );
}
