import { number, optional } from '../input/field.js';
import { FRACTION } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { lastOf } from '../invariant.js';
import { ONE } from '../units/decimal.js';
import type { Decimal } from '../units/decimal.js';
import type { Volume } from '../units/quantity.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  inState,
  inStateField,
  soilFactorsField,
  type SoilFactors,
  type StateVolume,
} from './state-volume.js';

/** Cut and fill of a site, and the soil of the cut. */
export interface SoilBalanceOptions {
  /** Bank volume, from `stateVolume(v, 'bank')`, `siteVolumes` or `endAreaVolumes`. */
  readonly cut: StateVolume<'bank'>;
  /** Compacted volume, from the same functions. */
  readonly fill: StateVolume<'compacted'>;
  /** Swell and shrinkage of the soil. */
  readonly factors: SoilFactors;
  /** Share of the cut that is fit for fill, a fraction 0 to 1. Default: 1. */
  readonly usable?: number | string;
}

const OPTIONS = shapeOf<SoilBalanceOptions>()({
  cut: inStateField('bank', 'a cut is a bank volume'),
  fill: inStateField('compacted', 'a fill is measured compacted'),
  factors: soilFactorsField,
  usable: optional(number(FRACTION), ONE),
});

/** Where the soil of a site comes from and goes to. */
export interface SoilBalance extends Worked {
  /** Bank soil needed for the compacted fill. */
  readonly neededBank: StateVolume<'bank'>;
  /** Cut that is reused in the fill. */
  readonly reused: StateVolume<'bank'>;
  /** Cut that is hauled away, as bank volume. */
  readonly spoil: StateVolume<'bank'>;
  /** The same in the truck. */
  readonly spoilLoose: StateVolume<'loose'>;
  /** Borrow to bring in, as bank volume at the pit, for soil of the same factors. */
  readonly borrow: StateVolume<'bank'>;
  /** The same in the truck. */
  readonly borrowLoose: StateVolume<'loose'>;
  /** Check of the sums, all as bank volume: cut and borrow against fill and spoil. */
  readonly conservation: {
    /** Cut and borrow. */
    readonly into: Volume;
    /** Reuse in the fill and spoil. */
    readonly outOf: Volume;
    /** Zero, exactly: nothing is lost between the states. */
    readonly difference: Volume;
  };
}

/**
 * Balances cut and fill, with the swell and shrinkage of the soil. The fill needs
 * `B = F / (compacted per bank)` of bank soil. The cut supplies `min(C u, B)` of it and the rest of
 * the cut is spoil; borrow makes up any shortage. Cut less fill alone is not the answer: soil shrinks
 * when you compact it and swells in the truck.
 *
 * @param options - see {@link SoilBalanceOptions}
 * @returns soil reused, spoil and borrow, each in place and in the truck, and the sums in and out
 * @throws `WRONG_STATE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const yard = soilBalance({
 *   cut: stateVolume('100 yd3', 'bank'),
 *   fill: stateVolume('45 yd3', 'compacted'),
 *   factors: { loosePerBank: 1.25, compactedPerBank: 0.9 },
 * });
 * yard.neededBank.to('yd3').toString() //=> '50'
 * yard.spoilLoose.to('yd3').toString() //=> '62.5'
 * yard.conservation.difference.isZero() //=> true
 */
export function soilBalance(options: SoilBalanceOptions): SoilBalance {
  const read = readOptions(options, OPTIONS);
  const { factors, usable } = read;
  const [cut, fill] = [read.cut.volume, read.fill.volume];
  const needed = fill.dividedBy(factors.compactedPerBank);
  const fit = cut.times(usable);
  const reused = fit.compare(needed) < 0 ? fit : needed;
  const spoil = cut.minus(reused);
  const borrow = needed.minus(reused);
  const loose = (bank: Volume) => inState(bank.times(factors.loosePerBank), 'loose');
  const into = cut.plus(borrow);
  const outOf = fill.dividedBy(factors.compactedPerBank).plus(spoil);
  const balance = {
    neededBank: inState(needed, 'bank'),
    reused: inState(reused, 'bank'),
    spoil: inState(spoil, 'bank'),
    spoilLoose: loose(spoil),
    borrow: inState(borrow, 'bank'),
    borrowLoose: loose(borrow),
    conservation: { into, outOf, difference: into.minus(outOf) },
  };
  return withWorking(balance, () =>
    stepsOf({ cut, fill, needed, usable, spoil, borrow, perBank: factors.compactedPerBank }),
  );
}

interface Balanced {
  readonly cut: Volume;
  readonly fill: Volume;
  readonly needed: Volume;
  readonly usable: Decimal;
  readonly spoil: Volume;
  readonly borrow: Volume;
  readonly perBank: Decimal;
}

function stepsOf({ cut, fill, needed, usable, spoil, borrow, perBank }: Balanced): Step[] {
  const onSite = [
    given('C', 'cut, bank', cut),
    given('u', 'part fit for fill', usable),
    given('B', 'bank soil needed for the fill', needed),
  ];
  return [
    step('Bank soil needed for the fill', 'B = F / c', [
      given('F', 'fill, compacted', fill),
      given('c', 'compacted per bank', perBank),
      given('B', 'bank soil', needed),
    ]),
    step('Spoil', 'S = C - min(C * u, B)', [...onSite, given('S', 'spoil, bank', spoil)]),
    step('Borrow', 'W = B - min(C * u, B)', [...onSite, given('W', 'borrow, bank', borrow)]),
  ];
}

/** A step whose result is the last of its values. */
function step(title: string, formula: string, values: readonly ReturnType<typeof given>[]): Step {
  const result = lastOf(values);
  return derivedStep({ title, formula, given: values.slice(0, -1), result });
}
