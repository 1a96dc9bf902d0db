/**
 * What a check of a row of stakes found. `ambiguous`: out of line, but there is no way to tell which
 * stake is off. `always-in-line`: two stakes, so there is nothing to judge.
 */
export type RowFinding = 'in-line' | 'out-of-line' | 'ambiguous' | 'always-in-line';

/** The finding in one word. Internal. */
export function rowFinding(row: {
  readonly count: number;
  readonly isInLine: boolean;
  readonly isAmbiguous: boolean;
}): RowFinding {
  if (row.count === 2) return 'always-in-line';
  if (row.isInLine) return 'in-line';
  return row.isAmbiguous ? 'ambiguous' : 'out-of-line';
}
