import { number, optional, quantity } from '../../input/field.js';
import { DEPTH_OR_NONE, FRACTION, SHARE, THICKNESS_OR_NONE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import { FROST_PENETRATION } from '../../sources/frost-figures.js';
import type { LengthInput } from '../../units/construct.js';
import { Decimal40, ONE, type Decimal } from '../../units/decimal.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import {
  formulaStep,
  given,
  published,
  withWorking,
  type Step,
  type Worked,
} from '../../working.js';

/** Depth of frost under a pavement, and the moisture of base and subgrade. */
export interface FrostBaseOptions {
  /** Depth of frost below the surface, in base without end [length], 0 to 50 m. */
  readonly frostDepth: LengthInput;
  /** Thickness of pavers and bedding over the base [length], 0 to 5 m. */
  readonly pavement: LengthInput;
  /** Moisture of the subgrade: water over dry mass, a fraction 0 to 1. */
  readonly subgradeMoisture: number | string;
  /** Moisture of the base: water over dry mass, a fraction more than 0 and at most 1. */
  readonly baseMoisture: number | string;
  /** Maximum of the ratio of the two, 1 to 10. Default: 2, the one with the thicker base. */
  readonly maximumRatio?: number | string;
}

const RATIO = { sign: 'positive', least: 1, most: 10, example: '2' } as const;

const OPTIONS = shapeOf<FrostBaseOptions>()({
  frostDepth: quantity(DEPTH_OR_NONE),
  pavement: quantity(THICKNESS_OR_NONE),
  subgradeMoisture: number(FRACTION),
  baseMoisture: number(SHARE),
  maximumRatio: optional(number(RATIO), new Decimal40(FROST_PENETRATION.maximumRatio.value)),
});

/** Thickness of base that keeps frost out of the subgrade, or nearly. */
export interface FrostBase extends Cautioned, Worked {
  /** Base that keeps all frost out of the subgrade; 0 if the pavement alone does. */
  readonly complete: Length;
  /** Base that lets frost into the subgrade by no more than a quarter of itself. */
  readonly limited: Length;
  /** How far frost then goes into the subgrade. */
  readonly intoSubgrade: Length;
  /** Ratio of the moistures. */
  readonly ratio: number;
  /** Ratio that was used: no more than the maximum. */
  readonly usedRatio: number;
  /** True if the ratio is over its maximum, which was then used in its place. */
  readonly isRatioLimited: boolean;
}

/**
 * Base against frost by the rule of limited penetration: `c = a - p` keeps all frost out of the
 * subgrade; `b = c / (1 + r / 4)` lets `b / 4` of frost into it, r being the moisture of the subgrade
 * over that of the base, no more than its maximum. The chart of the rule was not read: the line is
 * the one through the readings printed with it. Base and sub-base must not be frost-susceptible.
 *
 * @param options - see {@link FrostBaseOptions}
 * @returns thicknesses of base [length], frost in the subgrade [length], ratios, cautions
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source frost-penetration-limit
 * @example
 * const base = frostBase({
 *   frostDepth: '36 in',
 *   pavement: '6 in',
 *   subgradeMoisture: '0.16',
 *   baseMoisture: '0.04',
 * });
 * base.complete.to('in').toString() //=> '30'
 * base.limited.to('in').toString() //=> '20'
 * base.intoSubgrade.to('in').toString() //=> '5'
 */
export function frostBase(options: FrostBaseOptions): FrostBase {
  const read = readOptions(options, OPTIONS);
  const { frostDepth, pavement, maximumRatio } = read;
  const below = frostDepth.minus(pavement);
  const complete = below.isNegative() ? NO_LENGTH : below;
  const ratio = new Decimal40(read.subgradeMoisture).dividedBy(read.baseMoisture);
  const isRatioLimited = ratio.gt(maximumRatio);
  const used = isRatioLimited ? maximumRatio : ratio;
  const share = new Decimal40(FROST_PENETRATION.allowedShare.value);
  const limited = complete.dividedBy(ONE.plus(share.times(used)));
  const found = {
    complete,
    limited,
    intoSubgrade: limited.times(share),
    ratio: ratio.toNumber(),
    usedRatio: used.toNumber(),
    isRatioLimited,
    cautions: cautionsFor('ground', 'structure'),
  };
  return withWorking(found, () => baseSteps(read, { complete, limited, used }));
}

const isPublished = (ratio: Decimal): boolean => ratio.eq(FROST_PENETRATION.maximumRatio.value);

function baseSteps(
  { frostDepth, pavement, subgradeMoisture, baseMoisture, maximumRatio }: Values<typeof OPTIONS>,
  of: {
    readonly complete: Length;
    readonly limited: Length;
    readonly used: Decimal;
  },
): Step[] {
  const source = 'frost-penetration-limit';
  return [
    formulaStep({
      title: 'Base that keeps all frost out of the subgrade',
      formula: 'c = max(0, a - p)',
      given: [given('a', 'depth of frost', frostDepth), given('p', 'pavers and bedding', pavement)],
      result: given('c', 'base without frost below', of.complete),
      source,
    }),
    formulaStep({
      title: 'Ratio of the moistures',
      formula: 'r = min(ws / wb, m)',
      given: [
        given('ws', 'moisture of the subgrade', subgradeMoisture),
        given('wb', 'moisture of the base', baseMoisture),
        isPublished(maximumRatio)
          ? published('m', 'maximum ratio', maximumRatio, source)
          : given('m', 'maximum ratio', maximumRatio),
      ],
      result: given('r', 'ratio', of.used),
      source,
    }),
    formulaStep({
      title: 'Base that lets a quarter of itself of frost into the subgrade',
      formula: 'b = c / (1 + r / 4)',
      given: [given('c', 'base without frost below', of.complete), given('r', 'ratio', of.used)],
      result: given('b', 'base', of.limited),
      source,
    }),
  ];
}
