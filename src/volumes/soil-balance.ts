import { makeReader } from '../input/reader.js';
import { fromSI, type Volume } from '../units/quantity.js';
import { ZERO_RATIO } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { FRACTION } from './limits.js';
import {
  inState,
  readSoilFactors,
  requireState,
  type SoilFactors,
  type StateVolume,
} from './state-volume.js';

/** Where the soil of a site comes from and goes to. */
export interface SoilBalance extends Worked {
  /** Bank soil that the fill takes when it is compacted. */
  readonly neededBank: StateVolume<'bank'>;
  /** Of the cut: what goes into the fill. */
  readonly reused: StateVolume<'bank'>;
  /** Of the cut: what is carted away, as it lies and as it rides. */
  readonly spoil: StateVolume<'bank'>;
  readonly spoilLoose: StateVolume<'loose'>;
  /** What has to be brought, in the bank of its pit (soil of the same factors) and as it rides. */
  readonly borrow: StateVolume<'bank'>;
  readonly borrowLoose: StateVolume<'loose'>;
  /** All in the bank: cut and borrow against reuse in the fill and spoil. */
  readonly conservation: {
    readonly into: Volume;
    readonly outOf: Volume;
    /** Zero, exactly: nothing is lost between the states. */
    readonly difference: Volume;
  };
}

/**
 * Balances cut against fill through the states of the soil: the fill takes
 * `B = F / (compacted per bank)` of bank soil; of the cut `min(C u, B)` goes into it, the rest is
 * spoil, and what is missing is borrowed. Bank volumes alone do not tell: soil shrinks when it is
 * compacted and swells on the truck.
 *
 * @param options.cut - from `stateVolume(v, 'bank')`, `siteVolumes` or `endAreaVolumes`
 * @param options.fill - from `stateVolume(v, 'compacted')`, likewise
 * @param options.factors - `loosePerBank` (0.9 to 3) and `compactedPerBank` (0.4 to 2) of the soil
 * @param options.usable - part of the cut that is fit for fill, a fraction 0 to 1; default 1
 * @returns soil reused, spoil and borrow, each as it lies and as it rides, and the sums in and out
 * @throws `STATE_MISSING`, `RATIO_OUT_OF_RANGE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
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
export function soilBalance(options: {
  readonly cut: StateVolume<'bank'>;
  readonly fill: StateVolume<'compacted'>;
  readonly factors: SoilFactors;
  readonly usable?: number | string;
}): SoilBalance {
  const reader = makeReader();
  const fields = reader.object(options, []);
  for (const [name, state] of [
    ['cut', 'bank'],
    ['fill', 'compacted'],
  ] as const) {
    const words = `give stateVolume(v, '${state}')`;
    requireState(reader, fields[name], { state, path: [name], words });
  }
  const factors = readSoilFactors(reader, fields['factors'], ['factors']);
  const usable = reader.number(
    fields['usable'] === undefined ? 1 : fields['usable'],
    ['usable'],
    FRACTION,
  );
  reader.finish();

  const [cut, fill] = [options.cut.volume, options.fill.volume];
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
  return withWorking(balance, () => [
    step('Bank soil that the fill takes', 'B = F / c', [
      given('F', 'fill, compacted', fill),
      given('c', 'compacted per bank', factors.compactedPerBank),
      given('B', 'bank soil', needed),
    ]),
    step('Spoil', 'S = C - min(C u, B)', [
      given('C', 'cut, in the bank', cut),
      given('u', 'part fit for fill', usable),
      given('S', 'spoil, in the bank', spoil),
    ]),
    step('Borrow', 'W = B - min(C u, B)', [
      given('B', 'bank soil that the fill takes', needed),
      given('W', 'borrow, in the bank', borrow),
    ]),
  ]);
}

/** A step whose result is the last of its values. */
function step(title: string, formula: string, values: readonly ReturnType<typeof given>[]): Step {
  const result = values.at(-1) ?? given('', '', fromSI('volume', ZERO_RATIO));
  return { title, formula, given: values.slice(0, -1), result, source: 'derived' };
}
