import {
  fromSI,
  type Area,
  type Length,
  type Mass,
  type Quantity,
  type Volume,
} from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  ratioToDecimal,
  ratioToNumber,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import {
  derivedStep,
  given,
  type Step,
  type StepValue,
  withWorking,
  type Worked,
} from '../../working.js';
import { wholeDown, wholeUp } from '../whole-number.js';
import {
  readOrder,
  type Measure,
  type Order,
  type OrderAreaOptions,
  type OrderLengthOptions,
  type OrderMassOptions,
  type OrderUnitsOptions,
  type OrderVolumeOptions,
  type Pack,
} from './read-order.js';

/** An order in whole packs of one kind, to compare. */
export interface RoundedOrder<A> {
  /** The need rounded up to this pack. */
  readonly ordered: A;
  /** Surplus of that order. */
  readonly surplus: A;
}

/** An order in one kind of pack. */
export interface PackCount<A> {
  /** Name of the pack. */
  readonly name: string;
  /** Quantity in one pack. */
  readonly holds: A;
  /** Packs of the order, the last perhaps part full. */
  readonly count: number;
  /** Full packs of the order. */
  readonly full: number;
  /** The order if the need were rounded up to this pack. */
  readonly rounded: RoundedOrder<A>;
}

/** Packs of one kind on the truck. */
export interface LoadedPacks {
  /** Name of the pack. */
  readonly name: string;
  /** Number of full packs. */
  readonly count: number;
}

/** An order rounded up to packs. */
export interface OrderPacks<A> extends Worked {
  /** The need. */
  readonly need: A;
  /** Packs to order, of the smallest that is sold; where parts are sold, the last may be one. */
  readonly count: number;
  /** What is ordered. */
  readonly ordered: A;
  /** Order less need. */
  readonly surplus: A;
  /** Surplus over need: 0.02 means 2%. 0 for no need. */
  readonly surplusShare: number;
  /** True if the minimum order is more than the need. */
  readonly isMinimumOrder: boolean;
  /** From the smallest pack to the largest. */
  readonly packs: readonly PackCount<A>[];
  /** Packs to load, largest first. Sizes with a count of 0 are left out. */
  readonly load: readonly LoadedPacks[];
}

/**
 *
 * Rounds a need up to the packs it is sold in: `n = ceil(need / pack)`. It is exact: a need of
 * exactly ten bags is ten, slightly more is eleven. A need of 0 is no pack, whatever the minimum
 * order. An order is never less than the need, and is less than one pack more unless the minimum
 * order applies. Colours differ from batch to batch, so order once.
 *
 * @param options - one need: `units`, `mass`, `volume`, `area` or `length`; see
 *   {@link OrderUnitsOptions}, {@link OrderMassOptions}, {@link OrderVolumeOptions},
 *   {@link OrderAreaOptions} and {@link OrderLengthOptions}
 * @returns need, order, surplus, packs of each kind, and the packs to load
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless one need is given, `UNKNOWN_ID` for a pack that is
 *   not listed, `DUPLICATE_ID`, `NOT_WHOLE`, `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE`, `EMPTY_LIST`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const order = orderPacks({
 *   units: 3129,
 *   packs: [{ name: 'layer', holds: 40 }, { name: 'pallet', holds: 10 }],
 * });
 * order.ordered //=> 3160
 * order.count //=> 79
 * order.surplus //=> 31
 * order.load //=> [{ name: 'pallet', count: 7 }, { name: 'layer', count: 9 }]
 * orderPacks({ volume: '27 ft3', packs: [{ name: 'yard', holds: '1 yd3' }] }).count //=> 1
 */
export function orderPacks(options: OrderUnitsOptions): OrderPacks<number>;
export function orderPacks(options: OrderMassOptions): OrderPacks<Mass>;
export function orderPacks(options: OrderVolumeOptions): OrderPacks<Volume>;
export function orderPacks(options: OrderAreaOptions): OrderPacks<Area>;
export function orderPacks(options: OrderLengthOptions): OrderPacks<Length>;
export function orderPacks(options: object): OrderPacks<Amount> {
  return packsOf(readOrder(options));
}

/** The same for an order that has been read. Internal. */
export function packsOf<M extends Measure>(order: Order<M>): OrderPacks<AmountIn<M>>;
export function packsOf(order: Order): OrderPacks<Amount> {
  const { measure, need, packs, sold } = order;
  const amount = (value: Ratio) => amountOf(measure, value);
  const { ordered, isMinimumOrder } = roundOrder(order);
  const surplus = subtractRatios(ordered, need);
  const result = {
    need: amount(need),
    count: wholeUp(ordered, sold.holds),
    ordered: amount(ordered),
    surplus: amount(surplus),
    surplusShare: signOfRatio(need) === 0 ? 0 : ratioToNumber(divideRatios(surplus, need)),
    isMinimumOrder,
    packs: packs.map(({ name, holds }) => {
      const up = roundedUp(need, holds);
      return {
        name,
        holds: amount(holds),
        count: wholeUp(ordered, holds),
        full: wholeDown(ordered, holds),
        rounded: { ordered: amount(up), surplus: amount(subtractRatios(up, need)) },
      };
    }),
    load: loadOf(ordered, packs.slice(packs.indexOf(sold))),
  };
  return withWorking(result, () => [orderStep(order, ordered)]);
}

type Amount = number | Quantity<Exclude<Measure, 'units'>>;
type AmountIn<M extends Measure> = M extends 'units' ? number : Quantity<Exclude<M, 'units'>>;

/** The need in packs that are sold, or the minimum order. */
function roundOrder(order: Order) {
  const { need, sellsPartPacks, minimum } = order;
  const { holds } = order.sold;
  const rounded = sellsPartPacks ? need : roundedUp(need, holds);
  const smallest = multiplyRatios(minimum, holds);
  const isMinimumOrder = signOfRatio(need) !== 0 && compareRatios(smallest, rounded) > 0;
  return { ordered: isMinimumOrder ? smallest : rounded, isMinimumOrder };
}

const roundedUp = (need: Ratio, pack: Ratio): Ratio =>
  multiplyRatios(wholeRatio(wholeUp(need, pack)), pack);

/** Full packs from the largest down; a rest smaller than the smallest pack is not listed. */
function loadOf(ordered: Ratio, packs: readonly Pack[]): LoadedPacks[] {
  let rest = ordered;
  return [...packs].reverse().flatMap(({ name, holds }) => {
    const count = wholeDown(rest, holds);
    rest = subtractRatios(rest, multiplyRatios(wholeRatio(count), holds));
    return count === 0 ? [] : [{ name, count }];
  });
}

const amountOf = (measure: Measure, value: Ratio): Amount =>
  measure === 'units' ? ratioToNumber(value) : fromSI(measure, value);

function orderStep(order: Order, ordered: Ratio): Step {
  const { name, holds } = order.sold;
  const value = (amount: Ratio): StepValue =>
    order.measure === 'units' ? ratioToNumber(amount) : fromSI(order.measure, amount);
  return derivedStep({
    title: `Rounded up to ${name}`,
    formula: order.sellsPartPacks
      ? 'Q = max(q / p, q / p > 0 ? m : 0) * p'
      : 'Q = max(ceil(q / p), q / p > 0 ? m : 0) * p',
    given: [
      given('q', 'need', value(order.need)),
      given('p', 'pack sold', value(holds)),
      given('m', 'smallest order, in packs', ratioToDecimal(order.minimum)),
    ],
    result: given('Q', 'order', value(ordered)),
  });
}
