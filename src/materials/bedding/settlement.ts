import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import type { Length } from '../../units/quantity.js';

/** Refuses a settlement as large as the bed. Internal. */
export function checkSettlement(
  reader: Reader,
  settlement: Length | undefined,
  bed: Length | undefined,
  path: FieldPath,
): void {
  if (settlement === undefined || bed === undefined || settlement.compare(bed) < 0) return;
  const message =
    'a bed cannot settle by its whole thickness. Write how far it settles, such as "1/4 in", not its loose thickness';
  reader.fail('OUT_OF_RANGE', [...path, 'settlement'], message);
}
