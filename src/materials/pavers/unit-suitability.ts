import { choice, object, optional, quantity, ratio } from '../../input/field.js';
import { SHARE, UNIT_SIDE } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import type { SourceId } from '../../sources/catalogue.js';
import { PAVEMENT_USES, type PavementUse } from '../../sources/minimum-thickness.js';
import {
  CUT_UNIT_LIMITS,
  UNIT_SHAPE_GUIDES,
  UNIT_SHAPE_LIMITS,
  type UnitShapeGuide,
} from '../../sources/unit-shape.js';
import { length, type LengthInput } from '../../units/construct.js';
import { exactOf, type Length } from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  ratioToDecimal,
  ratioToNumber,
  type Ratio,
} from '../../units/ratio.js';
import { readNumber } from '../../units/read-number.js';
import { formulaStep, given, withWorking, type Worked } from '../../working.js';

/** The smallest cut piece. */
export interface SmallestCutInput {
  /**
   * Share of a whole paver, more than 0 and at most 1; the rule for vehicles uses it. Default: none.
   */
  readonly share?: number | string;
  /**
   * Width of the piece [length], more than 0 and at most 5 m; the rule elsewhere uses it. Default:
   * none.
   */
  readonly width?: LengthInput;
}

/** A paver, and the traffic on it. */
export interface UnitSuitabilityOptions {
  /** Longest side of the paver [length], more than 0 and at most 5 m. */
  readonly length: LengthInput;
  /** Thickness of the paver [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Traffic on it. */
  readonly use: PavementUse;
  /** Guide to follow. Default: `interlocking`. */
  readonly guide?: UnitShapeGuide;
  /** The smallest cut piece. Default: none; cut pieces are not checked. */
  readonly smallestCut?: SmallestCutInput;
  /**
   * Minimum share of a cut piece under vehicles by your own specification, more than 0 and at most
   * 1. Default: a third, as published.
   */
  readonly minimumCutShare?: number | string;
}

const CUT = shapeOf<SmallestCutInput>()({
  share: optional(ratio(SHARE)),
  width: optional(quantity(UNIT_SIDE)),
});

const OPTIONS = shapeOf<UnitSuitabilityOptions>()({
  length: quantity(UNIT_SIDE),
  thickness: quantity(UNIT_SIDE),
  use: choice(PAVEMENT_USES),
  guide: optional(choice(UNIT_SHAPE_GUIDES), 'interlocking'),
  smallestCut: optional(object(CUT)),
  minimumCutShare: optional(ratio(SHARE)),
});

/** One rule on the shape of pavers, and the verdict. */
export interface ShapeFinding {
  /** Which rule. */
  readonly rule: 'length-to-thickness' | 'cut-share' | 'cut-width';
  /** Null if it was not checked. */
  readonly verdict: 'pass' | 'fail' | null;
  /** The rule, and what to do if it fails. */
  readonly note: string;
  /** Where the rule is printed; null for your own limit. */
  readonly source: SourceId | null;
}

/** Check of the shape of a paver for its use. */
export interface UnitSuitability extends Worked {
  /** Length over thickness. */
  readonly ratio: number;
  /** Largest length over thickness that the guide allows for this use. */
  readonly maximumRatio: number;
  /** `fail` where a rule fails; rules that were not checked do not count. */
  readonly verdict: 'pass' | 'fail';
  /** One for each rule. */
  readonly findings: readonly ShapeFinding[];
}

/**
 * Checks the shape of a paver against the published rules: `length / thickness` at most 4 or 3 by
 * use; the smallest cut piece at least a third of a paver under vehicles, and at least 3/8 in wide
 * elsewhere. A paver on a limit passes. These rules do not cover large slabs or the strength of the
 * pavement.
 *
 * @param options - see {@link UnitSuitabilityOptions}
 * @returns the ratio and its limit, the verdict, the findings with their sources
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE` and the reading codes
 * @source paver-tolerances
 * @source permeable-tolerances
 * @example
 * const slab = unitSuitability({
 *   length: '300 mm',
 *   thickness: '60 mm',
 *   use: 'residential-driveway',
 * });
 * slab.ratio //=> 5
 * slab.verdict //=> 'fail'
 */
export function unitSuitability(options: UnitSuitabilityOptions): UnitSuitability {
  const read = readOptions(options, OPTIONS);
  const limit = UNIT_SHAPE_LIMITS[read.guide][read.use];
  const ratio = divideRatios(exactOf(read.length), exactOf(read.thickness));
  const isLong = compareRatios(ratio, readNumber(limit.value)) > 0;
  const shape: ShapeFinding = {
    rule: 'length-to-thickness',
    verdict: isLong ? 'fail' : 'pass',
    note: isLong
      ? `The paver is more than ${limit.value} times as long as it is thick. Choose a thicker or a shorter one.`
      : `The paver is no more than ${limit.value} times as long as it is thick.`,
    source: limit.source,
  };
  const findings = [shape, read.use === 'pedestrian' ? cutWidth(read) : cutShare(read)];
  const suitability = {
    ratio: ratioToNumber(ratio),
    maximumRatio: ratioToNumber(readNumber(limit.value)),
    verdict: findings.some(({ verdict }) => verdict === 'fail') ? 'fail' : 'pass',
    findings,
  } as const;
  return withWorking(suitability, () => [
    formulaStep({
      title: 'Length to thickness',
      formula: 'k = l / t',
      given: [
        given('l', 'length of a paver', read.length),
        given('t', 'thickness', read.thickness),
      ],
      result: given('k', `ratio, at most ${limit.value}`, suitability.ratio),
      source: limit.source,
    }),
  ]);
}

type Read = Values<typeof OPTIONS>;

function cutShare({ smallestCut, minimumCutShare }: Read): ShapeFinding {
  const published = CUT_UNIT_LIMITS.vehicularShare;
  const isOwn = minimumCutShare !== undefined;
  const least = isOwn ? shareText(minimumCutShare) : published.value;
  const [rule, source] = ['cut-share', isOwn ? null : published.source] as const;
  const share = smallestCut?.share;
  if (share === undefined) {
    const note = `Keep every cut piece to ${least} of a paver or more. This was not checked, because no share of a cut piece was given.`;
    return { rule, source, verdict: null, note };
  }
  const isSmall = compareRatios(share, minimumCutShare ?? readNumber(published.value)) < 0;
  const note = isSmall
    ? `The smallest cut is less than ${least} of a paver. Shift the pattern, or cut two pieces for one.`
    : `The smallest cut is ${least} of a paver or more.`;
  return { rule, source, verdict: isSmall ? 'fail' : 'pass', note };
}

/** A share in words. */
const shareText = (share: Ratio): string => ratioToDecimal(share).toSignificantDigits(3).toString();

function cutWidth({ smallestCut }: Read): ShapeFinding {
  const { value, unit, source } = CUT_UNIT_LIMITS.otherWidth;
  const least = `${value} ${unit}`;
  const rule = 'cut-width';
  const width: Length | undefined = smallestCut?.width;
  if (width === undefined) {
    const note = `Keep every cut piece to ${least} or more. This was not checked, because no width of a cut piece was given.`;
    return { rule, source, verdict: null, note };
  }
  const isSmall = width.compare(length(least)) < 0;
  const note = isSmall
    ? `The smallest cut is narrower than ${least}. Shift the pattern.`
    : `The smallest cut is ${least} or wider.`;
  return { rule, source, verdict: isSmall ? 'fail' : 'pass', note };
}
