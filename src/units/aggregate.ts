import { fault } from '../errors.js';
import type { Dimension } from './catalogue.js';
import type { Quantity } from './quantity.js';

type OneOrMore<T> = readonly [T, ...T[]] | readonly T[];

/**
 * Adds quantities of one dimension, exactly.
 *
 * @throws `EMPTY_LIST`: the sum of nothing has no dimension
 * @example
 * sum([length('3 1/4 in'), length('1 in'), length('8 in')]).to('in').toString() //=> '12.25'
 */
export function sum<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  const [first, ...rest] = notEmpty(quantities);
  return rest.reduce((total, quantity) => total.plus(quantity), first);
}

/**
 * The smallest of quantities of one dimension.
 *
 * @throws `EMPTY_LIST`
 * @example
 * min([length('1 ft'), length('300 mm')]).to('mm').toString() //=> '300'
 */
export function min<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  const [first, ...rest] = notEmpty(quantities);
  return rest.reduce((least, quantity) => (quantity.compare(least) < 0 ? quantity : least), first);
}

/**
 * The largest of quantities of one dimension.
 *
 * @throws `EMPTY_LIST`
 * @example
 * max([length('1 ft'), length('300 mm')]).to('ft').toString() //=> '1'
 */
export function max<D extends Dimension>(quantities: OneOrMore<Quantity<D>>): Quantity<D> {
  const [first, ...rest] = notEmpty(quantities);
  return rest.reduce((most, quantity) => (quantity.compare(most) > 0 ? quantity : most), first);
}

/**
 * Orders two quantities, for `Array.prototype.sort`.
 *
 * @example
 * [length('2 in'), length('1 in')].sort(compareQuantities)[0]?.to('in').toString() //=> '1'
 */
export function compareQuantities<D extends Dimension>(a: Quantity<D>, b: Quantity<D>): number {
  return a.compare(b);
}

function notEmpty<T>(list: readonly T[]): readonly [T, ...T[]] {
  const [first, ...rest] = list;
  if (first === undefined) throw fault('EMPTY_LIST', 'nothing to add up or compare');
  return [first, ...rest];
}
