import { printed, type ReferenceValue } from './reference-value.js';

/** Bulking of sand at a moisture: volume of damp sand over dry, less 1. */
export interface SandBulkingRow {
  /** Water over dry mass, as a fraction. */
  readonly moisture: ReferenceValue;
  /** Lower end of the bulking, as a fraction. */
  readonly minimum: ReferenceValue;
  /** Upper end of the bulking, as a fraction. */
  readonly maximum: ReferenceValue;
}

/**
 * Bulking of damp sand over dry sand, by moisture. Sand that is dry or under water does not bulk.
 * The figures are secondary and sands differ (another page prints 20 to 40% at 5 to 8%): measure
 * your own in a jar (`beddingSand`). Source: `sand-bulking-notes`.
 */
export const SAND_BULKING: readonly SandBulkingRow[] = Object.freeze([
  row('0', '0', '0'),
  row('0.05', '0.25', '0.30'),
  row('0.10', '0.10', '0.10'),
]);

function row(moisture: string, minimum: string, maximum: string): SandBulkingRow {
  const figure = (value: string) => printed(value, 'ratio', 'sand-bulking-notes');
  return Object.freeze({
    moisture: figure(moisture),
    minimum: figure(minimum),
    maximum: figure(maximum),
  });
}
