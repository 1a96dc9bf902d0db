import type { FieldPath } from '../../errors.js';
import type { Reader } from '../../input/reader.js';
import type { Length } from '../../units/quantity.js';

/** Refuses a bed that settles away. Internal. */
export function checkSettlement(
  reader: Reader,
  settlement: Length | undefined,
  bed: Length | undefined,
  path: FieldPath,
): void {
  if (settlement === undefined || bed === undefined || settlement.compare(bed) < 0) return;
  const message =
    'a bed cannot settle by its whole thickness. Write how far it goes down, such as "1/4 in", not how thick it is loose';
  reader.fail('OUT_OF_RANGE', [...path, 'settlement'], message);
}
