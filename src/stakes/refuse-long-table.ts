import { fault, type FieldPath } from '../errors.js';
import type { Decimal } from '../units/decimal.js';

/** More rows than this point to a wrong digit or unit. */
const MOST_ROWS = 2000;

/** Refuses a table with too many marks or stakes. Internal. */
export function refuseLongTable(rows: Decimal, of: string, path: FieldPath): void {
  if (rows.lte(MOST_ROWS)) return;
  const message = `makes more than ${MOST_ROWS} ${of}. Check the digits and the unit`;
  throw fault('OUT_OF_RANGE', message, { most: MOST_ROWS }, path);
}
