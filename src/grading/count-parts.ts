import { fault, type FieldPath } from '../errors.js';
import type { Dimension } from '../units/catalogue.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import type { Quantity } from '../units/quantity.js';

/** What a whole is cut into, and how many of it are still sensible. Internal. */
export interface PartRule {
  /** In the plural: `stakes`. */
  readonly of: string;
  readonly most: number;
  /** The field that gives the size of a part. */
  readonly path: FieldPath;
}

/** How many equal parts, each no larger than `part`, make up a whole; exact. Internal. */
export function countParts<D extends Dimension>(
  whole: Quantity<D>,
  part: Quantity<D>,
  { of, most, path }: PartRule,
): number {
  if (whole.compare(part.times(most)) <= 0) return wholeNumberUp(whole, part);
  const message = `makes more than ${most} ${of}. Check the digits and the unit`;
  throw fault('CAPACITY_EXCEEDED', message, { most }, path);
}
