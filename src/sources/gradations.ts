import { entry } from '../invariant.js';
import type { SourceId } from './catalogue.js';
import { printed, type ReferenceValue } from './reference-value.js';

/** Limits of percent passing for a sieve. */
export interface SieveLimits {
  /** Opening of the sieve. */
  readonly sieve: ReferenceValue;
  /** Minimum percent passing. */
  readonly minimum: ReferenceValue;
  /** Maximum percent passing. */
  readonly maximum: ReferenceValue;
}

/**
 * Gradation limits of bedding and joint sand, coarsest sieve first, percent passing by mass. They
 * differ, so choose the one that the job is built to. Sources, and what is doubtful in them:
 * `bedding-sand-clause` lets 10 to 60% pass 0.3 mm and 50 to 100% pass 1.18 mm, most likely
 * misprints of the 10 to 30 and 50 to 85 that `bedding-sand-guide` prints in a table that is
 * otherwise the same (`bedding-sand-capped`); `joint-sand-clause` misprints 1.18 mm as 1.8 mm and
 * 600 micrometres as 600 mm; `washed-sand-guide`, a washed coarse sand for work that must drain,
 * prints 25 to 50 at 0.6 mm and 25 to 85 in an earlier revision, `astm-c33` 25 to 60. `astm-c144`
 * is a sand for joints. Open-graded stone no. 57: `stone-57`, as one state prints it. For
 * comparison: zones of concrete sand (`sand-zones`) and a fine sand
 * (`grout-sand`). None of these lets 60% pass 0.3 mm in a coarse sand, and the 30 to 60 of the joint
 * sand is near the 30 to 55 of the fine one: so the 10 to 60 of `bedding-sand-clause` is a misprint,
 * kept as printed; see {@link GRADATION_MISPRINTS}.
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
  'bedding-sand-capped': table('bedding-sand-guide', [
    ['9.52', '100', '100'],
    ['4.75', '95', '100'],
    ['2.36', '80', '100'],
    ['1.18', '50', '85'],
    ['0.6', '25', '60'],
    ['0.3', '10', '30'],
    ['0.15', '5', '15'],
    ['0.075', '0', '10'],
  ]),
  'concrete-sand-c33': table('astm-c33', [
    ['9.5', '100', '100'],
    ['4.75', '95', '100'],
    ['2.36', '80', '100'],
    ['1.18', '50', '85'],
    ['0.6', '25', '60'],
    ['0.3', '5', '30'],
    ['0.15', '0', '10'],
    ['0.075', '0', '3'],
  ]),
  'joint-sand': table('joint-sand-clause', [
    ['2.36', '100', '100'],
    ['1.18', '90', '100'],
    ['0.6', '60', '90'],
    ['0.3', '30', '60'],
    ['0.15', '15', '30'],
    ['0.075', '10', '20'],
  ]),
  'joint-sand-c144-natural': table('astm-c144', [
    ['4.75', '100', '100'],
    ['2.36', '95', '100'],
    ['1.18', '70', '100'],
    ['0.6', '40', '75'],
    ['0.3', '10', '35'],
    ['0.15', '2', '15'],
  ]),
  'joint-sand-c144-manufactured': table('astm-c144', [
    ['4.75', '100', '100'],
    ['2.36', '95', '100'],
    ['1.18', '70', '100'],
    ['0.6', '40', '75'],
    ['0.3', '20', '40'],
    ['0.15', '10', '25'],
    ['0.075', '0', '10'],
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
  'stone-57': table('stone-57', [
    ['37.5', '100', '100'],
    ['25', '95', '100'],
    ['12.5', '25', '60'],
    ['4.75', '0', '10'],
    ['2.36', '0', '5'],
    ['0.075', '0', '1.5'],
  ]),
  'sand-zone-1': zone('90 60 30 15 5 0', '100 95 70 34 20 10'),
  'sand-zone-2': zone('90 75 55 35 8 0', '100 100 90 59 30 10'),
  'sand-zone-3': zone('90 85 75 60 12 0', '100 100 100 79 40 10'),
  'sand-zone-4': zone('95 95 90 80 15 0', '100 100 100 100 50 15'),
  'fine-sand': table('grout-sand', [
    ['2.36', '100', '100'],
    ['1.18', '95', '100'],
    ['0.6', '55', '80'],
    ['0.3', '30', '55'],
    ['0.15', '10', '30'],
    ['0.075', '0', '10'],
  ]),
});

/** The gradations of the table. */
export type GradationName = keyof typeof GRADATIONS;

function table(
  source: SourceId,
  rows: readonly (readonly [sieve: string, minimum: string, maximum: string])[],
): readonly SieveLimits[] {
  return Object.freeze(
    rows.map(([sieve, minimum, maximum]) =>
      Object.freeze({
        sieve: printed(sieve, 'mm', source),
        minimum: printed(minimum, 'percent', source),
        maximum: printed(maximum, 'percent', source),
      }),
    ),
  );
}

/** A zone of concrete sand: percent passing 4.75 mm down to 0.15 mm, and 100 at 10 mm. */
function zone(minimums: string, maximums: string): readonly SieveLimits[] {
  const sieves = ['4.75', '2.36', '1.18', '0.6', '0.3', '0.15'];
  const least = minimums.split(' ');
  const most = maximums.split(' ');
  return table('sand-zones', [
    ['10', '100', '100'],
    ...sieves.map((sieve, k) => [sieve, entry(least, k), entry(most, k)] as const),
  ]);
}

/** A figure of a gradation that is most likely a misprint, beside the right one. */
export interface GradationMisprint {
  /** The gradation. */
  readonly gradation: GradationName;
  /** The sieve. */
  readonly sieve: ReferenceValue;
  /** The maximum as printed. */
  readonly printed: ReferenceValue;
  /** The maximum that a table that is otherwise the same prints. */
  readonly right: ReferenceValue;
}

const misprint = (sieve: string, wrong: string, right: string): GradationMisprint =>
  Object.freeze({
    gradation: 'bedding-sand',
    sieve: printed(sieve, 'mm', 'bedding-sand-clause'),
    printed: printed(wrong, 'percent', 'bedding-sand-clause'),
    right: printed(right, 'percent', 'bedding-sand-guide'),
  });

/**
 * Maximums of the bedding clause that are misprints. Sources: `bedding-sand-clause` (as printed),
 * `bedding-sand-guide` (right). `astm-c33` has the same maximum at both sieves.
 */
export const GRADATION_MISPRINTS: readonly GradationMisprint[] = Object.freeze([
  misprint('1.18', '100', '85'),
  misprint('0.3', '60', '30'),
]);
