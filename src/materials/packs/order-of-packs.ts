import { fault } from '../../errors.js';
import {
  multiplyRatios,
  ONE_RATIO,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import type { Measure, Order, Pack } from './read-order.js';

/** A need and the packs it is sold in, the smallest first; each larger pack holds so many of the one before. */
export interface PackedNeed<M extends Measure> {
  readonly measure: M;
  /** The need, in pieces or SI units. */
  readonly need: Ratio;
  readonly packs: readonly Pack[];
  /** Minimum order in packs. Default: none. */
  readonly minimum?: Ratio | undefined;
}

/**
 * An order in whole packs from what was read before, as in a job. Internal.
 *
 * @throws `EMPTY_LIST` without packs, `NOT_POSITIVE` for a pack that holds nothing
 */
export function orderOfPacks<M extends Measure>(of: PackedNeed<M>): Order<M> {
  const { measure, need, minimum = ZERO_RATIO } = of;
  let holds: Ratio = ONE_RATIO;
  const packs = of.packs.map((pack): Pack => {
    if (signOfRatio(pack.holds) <= 0) {
      throw fault('NOT_POSITIVE', `a pack ${pack.name} holds nothing. Write what it holds`);
    }
    holds = multiplyRatios(holds, pack.holds);
    return { name: pack.name, holds };
  });
  const [sold] = packs;
  if (sold === undefined) throw fault('EMPTY_LIST', 'no packs are given');
  return { measure, need, packs, sold, sellsPartPacks: false, minimum };
}
