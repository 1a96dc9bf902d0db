import type { FieldPath } from '../errors.js';
import type { Reader } from '../input/reader.js';
import { isQuantity, type Length } from '../units/quantity.js';

/** Position along a line of levels: a number of set-ups, or a distance. */
type Along = number | Length;

/**
 * Judges how far along the line points are: all in set-ups or all by distance, never running back, and
 * somewhere at the end. What could not be read is undefined. Internal.
 */
export function checkAlong(
  reader: Reader,
  line: readonly (Along | undefined)[],
  path: FieldPath,
): void {
  const first = line.find((along) => along !== undefined && !isNothing(along));
  line.forEach((along, k) => {
    const at = [...path, k, 'along'];
    if (along === undefined || first === undefined) return;
    if (!isNothing(along) && isQuantity(along) !== isQuantity(first)) {
      const message = 'set-ups and distances are mixed. Give set-ups for all points, or distances';
      reader.fail('WRONG_TYPE', at, message);
    } else if (isLess(along, line[k - 1])) {
      const message = 'is less than at the point before. List the points in order from the start';
      reader.fail('NOT_INCREASING', at, message);
    }
  });
  const last = line.at(-1);
  if (last === undefined || !isNothing(last)) return;
  const message = 'is not greater than zero at the closing mark. Count from the start';
  reader.fail('NOT_POSITIVE', [...path, line.length - 1, 'along'], message);
}

const isNothing = (along: Along): boolean => (isQuantity(along) ? along.isZero() : along === 0);

function isLess(along: Along, before: Along | undefined): boolean {
  if (before === undefined || isNothing(before)) return false;
  if (isNothing(along)) return true;
  if (!isQuantity(along)) return !isQuantity(before) && along < before;
  return isQuantity(before) && along.compare(before) < 0;
}
