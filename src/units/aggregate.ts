import { fault } from '../errors.js';
import type { Dimension } from './catalogue.js';
import { isQuantity, otherKind, ownQuantity, type Quantity } from './quantity.js';
import { shown } from './shown.js';

type OneOrMore<T> = readonly [T, ...T[]] | readonly T[];

/**
 *
 * Adds quantities of one dimension, exactly.
 *
 * @throws `EMPTY_LIST`: the sum of an empty list has no dimension; `WRONG_TYPE`, `REQUIRED` and
 * `DIMENSION_MISMATCH` with the index of the entry as path
 * @example
 * sum([length('3 1/4 in'), length('1 in'), length('8 in')]).to('in').toString() //=> '12.25'
 */
export function sum<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  return quantitiesOf(quantities).reduce((total, quantity) => total.plus(quantity));
}

/**
 * The smallest of quantities of one dimension.
 *
 * @throws as {@link sum}
 * @example
 * min([length('1 ft'), length('300 mm')]).to('mm').toString() //=> '300'
 */
export function min<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  return quantitiesOf(quantities).reduce((least, one) => (one.compare(least) < 0 ? one : least));
}

/**
 * The largest of quantities of one dimension.
 *
 * @throws as {@link sum}
 * @example
 * max([length('1 ft'), length('300 mm')]).to('ft').toString() //=> '1'
 */
export function max<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  return quantitiesOf(quantities).reduce((most, one) => (one.compare(most) > 0 ? one : most));
}

/**
 * Orders two quantities, for `Array.prototype.sort`.
 *
 * @throws `WRONG_TYPE`, `DIMENSION_MISMATCH`
 * @example
 * [length('2 in'), length('1 in')].sort(compareQuantities)[0]?.to('in').toString() //=> '1'
 */
export function compareQuantities<D extends Dimension>(a: Quantity<D>, b: Quantity<D>): number {
  if (!isQuantity(a)) throw fault('WRONG_TYPE', `expected a quantity, got ${shown(a)}`);
  return ownQuantity(a).compare(b);
}

/** The entries of a list, all quantities of one dimension. */
function quantitiesOf<D extends Dimension>(list: readonly Quantity<D>[]): Quantity<D>[] {
  const isList: boolean = Array.isArray(list);
  if (!isList) throw fault('WRONG_TYPE', `expected a list [ ... ], got ${shown(list)}`);
  if (list.length === 0) throw fault('EMPTY_LIST', 'the list is empty. Give at least one quantity');
  const read: Quantity<D>[] = [];
  // by index: a list may have gaps
  for (let index = 0; index < list.length; index += 1) {
    read.push(entryAt(list[index], index, read[0]));
  }
  return read;
}

function entryAt<D extends Dimension>(
  entry: Quantity<D> | undefined,
  index: number,
  first: Quantity<D> | undefined,
): Quantity<D> {
  if (entry === undefined) {
    throw fault('REQUIRED', 'missing: the list has a gap here', {}, [index]);
  }
  if (!isQuantity(entry)) {
    throw fault('WRONG_TYPE', `expected a quantity, got ${shown(entry)}`, {}, [index]);
  }
  if (first !== undefined && entry.dimension !== first.dimension) {
    const { message, params } = otherKind(first.dimension, entry);
    throw fault('DIMENSION_MISMATCH', message, params, [index]);
  }
  return ownQuantity(entry);
}
