import { known } from '../../invariant.js';
import { fault, type SettlineError } from '../../errors.js';
import { number, optional, quantity } from '../../input/field.js';
import { RELATIVE_DENSITY, VOID_RATIO } from '../../input/ground-ranges.js';
import { DENSITY } from '../../input/ranges.js';
import { readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import type { DensityInput } from '../../units/construct.js';
import { Decimal40, type Decimal } from '../../units/decimal.js';
import type { Density } from '../../units/quantity.js';
import { shareOf } from '../../units/times-ratio.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';

/** The loosest and the densest state of sand or gravel, and the state in place. */
export interface RelativeDensityOptions {
  /** Dry density at its loosest [density], more than 0 and at most 5 t/m3. Give densities or void ratios. */
  readonly loosest?: DensityInput;
  /** Dry density at its densest [density], over `loosest`. */
  readonly densest?: DensityInput;
  /** Dry density in place [density]. Give this or `percent`. */
  readonly dryDensity?: DensityInput;
  /** Void ratio at its loosest, 0 to 20. */
  readonly maximumVoids?: number | string;
  /** Void ratio at its densest, less than `maximumVoids`. */
  readonly minimumVoids?: number | string;
  /** Void ratio in place. Give this or `percent`. */
  readonly voidRatio?: number | string;
  /** Relative density in percent to find the state for, 0 to 130. */
  readonly percent?: number | string;
}

const OPTIONS = shapeOf<RelativeDensityOptions>()({
  loosest: optional(quantity(DENSITY)),
  densest: optional(quantity(DENSITY)),
  dryDensity: optional(quantity(DENSITY)),
  maximumVoids: optional(number(VOID_RATIO)),
  minimumVoids: optional(number(VOID_RATIO)),
  voidRatio: optional(number(VOID_RATIO)),
  percent: optional(number(RELATIVE_DENSITY)),
});

/** How dense sand or gravel is between its loosest and its densest state. */
export interface RelativeDensity extends Worked {
  /** Relative density in percent: 0 at its loosest, 100 at its densest. */
  readonly percent: number;
  /** Dry density of the state; null if void ratios are given. */
  readonly dryDensity: Density | null;
  /** Void ratio of the state; null if densities are given. */
  readonly voidRatio: number | null;
  /** True for a state looser or denser than the tests of the laboratory. */
  readonly extrapolated: boolean;
}

/**
 * Relative density of sand or gravel: by void ratios `D = (e1 - e) / (e1 - e2)`, by dry densities
 * `D = (d - d1) / (d2 - d1) * d2 / d`; 1 is the loosest state and 2 the densest. Given the percent,
 * the state. It holds for soil without fines; it is not relative compaction.
 *
 * @param options - see {@link RelativeDensityOptions}
 * @returns percent, dry density [density] or void ratio
 * @throws `REQUIRED` and `CONFLICTING_FIELDS` unless one full set is given, `LIMITS_CONTRADICT`,
 *   `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @example
 * const sand = relativeDensity({ maximumVoids: '0.8', minimumVoids: '0.4', voidRatio: '0.5' });
 * sand.percent //=> 75
 * const state = relativeDensity({ loosest: '1.5 t/m3', densest: '1.8 t/m3', percent: 100 });
 * state.dryDensity?.to('t/m3').toString() //=> '1.8'
 */
export function relativeDensity(options: RelativeDensityOptions): RelativeDensity {
  const read = readOptions(options, OPTIONS, checkSet);
  return read.maximumVoids === undefined ? byDensity(read) : byVoids(read);
}

const BY_DENSITY = ['loosest', 'densest', 'dryDensity'] as const;
const BY_VOIDS = ['maximumVoids', 'minimumVoids', 'voidRatio'] as const;

const checkSet: Check<typeof OPTIONS> = (reader, _, path, raw) => {
  const isByVoids = BY_VOIDS.some((name) => raw[name] !== undefined);
  const [own, other] = isByVoids ? [BY_VOIDS, BY_DENSITY] : [BY_DENSITY, BY_VOIDS];
  const [low, high, state] = own;
  for (const name of [low, high]) {
    if (raw[name] === undefined) {
      reader.fail(
        'REQUIRED',
        [...path, name],
        `missing. Give ${low}, ${high} and ${state} or percent`,
      );
    }
  }
  for (const name of other) {
    if (raw[name] === undefined) continue;
    reader.fail('CONFLICTING_FIELDS', [...path, name], 'give densities or void ratios, not both');
  }
  const hasState = raw[state] !== undefined;
  if (!hasState && raw['percent'] === undefined) {
    reader.fail('REQUIRED', [...path, state], `missing. Give ${state} or percent`);
  } else if (hasState && raw['percent'] !== undefined) {
    const message = `follows from ${state}. Leave one of them out`;
    reader.fail('CONFLICTING_FIELDS', [...path, 'percent'], message);
  }
};

type Read = Values<typeof OPTIONS>;

const HUNDRED = 100;

const contradict = (field: string, message: string): SettlineError =>
  fault('LIMITS_CONTRADICT', message, {}, [field]);

function byVoids(read: Read): RelativeDensity {
  const most = new Decimal40(known(read.maximumVoids, 'maximumVoids'));
  const least = known(read.minimumVoids, 'minimumVoids');
  if (least.gte(most)) {
    throw contradict(
      'minimumVoids',
      'the densest state has fewer voids than the loosest. Check both',
    );
  }
  const range = most.minus(least);
  const voids =
    read.voidRatio ?? most.minus(range.times(known(read.percent, 'percent')).dividedBy(HUNDRED));
  if (voids.isNegative()) {
    const message = 'gives a negative void ratio. Check the percent';
    throw fault('OUT_OF_RANGE', message, {}, ['percent']);
  }
  const percent = read.percent ?? most.minus(voids).dividedBy(range).times(HUNDRED);
  const found = {
    percent: percent.toNumber(),
    dryDensity: null,
    voidRatio: voids.toNumber(),
    extrapolated: isBeyond(percent),
  };
  const limits = [
    given('e1', 'void ratio at its loosest', most),
    given('e2', 'void ratio at its densest', least),
  ];
  const [state, share] = [given('e', 'void ratio', voids), given('D', SHARE, percent)];
  return withWorking(found, () => [
    read.percent === undefined
      ? derivedStep({
          title: 'Relative density by void ratios',
          formula: 'D = 100 * (e1 - e) / (e1 - e2)',
          given: [state, ...limits],
          result: share,
        })
      : derivedStep({
          title: 'Void ratio at a relative density',
          formula: 'e = e1 - (e1 - e2) * D / 100',
          given: [share, ...limits],
          result: state,
        }),
  ]);
}

const SHARE = 'relative density in percent';

const isBeyond = (percent: Decimal): boolean => percent.lt(0) || percent.gt(HUNDRED);

function byDensity(read: Read): RelativeDensity {
  const low = known(read.loosest, 'loosest');
  const high = known(read.densest, 'densest');
  if (low.atLeast(high)) {
    throw contradict('densest', 'the densest state is denser than the loosest. Check both');
  }
  const dry = read.dryDensity ?? densityAt(low, high, known(read.percent, 'percent'));
  const percent =
    read.percent ??
    new Decimal40(HUNDRED)
      .times(dry.minus(low).dividedBy(high.minus(low)))
      .times(high.dividedBy(dry));
  const found = {
    percent: percent.toNumber(),
    dryDensity: dry,
    voidRatio: null,
    extrapolated: isBeyond(percent),
  };
  const limits = [
    given('d1', 'dry density at its loosest', low),
    given('d2', 'dry density at its densest', high),
  ];
  const [state, share] = [given('d', 'dry density', dry), given('D', SHARE, percent)];
  return withWorking(found, () => [
    read.percent === undefined
      ? derivedStep({
          title: 'Relative density by dry densities',
          formula: 'D = 100 * (d - d1) / (d2 - d1) * d2 / d',
          given: [state, ...limits],
          result: share,
        })
      : derivedStep({
          title: 'Dry density at a relative density',
          formula: 'd = d1 * d2 / (d2 - (d2 - d1) * D / 100)',
          given: [share, ...limits],
          result: state,
        }),
  ]);
}

/** `d = d1 d2 / (d2 - D (d2 - d1))` */
function densityAt(low: Density, high: Density, percent: Decimal): Density {
  const rest = high.minus(high.minus(low).times(percent).dividedBy(HUNDRED));
  if (!rest.isNegative() && !rest.isZero()) return low.times(shareOf(high, rest));
  throw fault('OUT_OF_RANGE', 'no density is that far past the densest state', {}, ['percent']);
}
