import { makeReader, type Reader } from '../input/reader.js';
import type { SourceId } from '../sources/catalogue.js';
import { PAVEMENT_USES, type PavementUse } from '../sources/minimum-thickness.js';
import {
  CUT_UNIT_LIMITS,
  UNIT_SHAPE_GUIDES,
  UNIT_SHAPE_LIMITS,
  type UnitShapeGuide,
} from '../sources/unit-shape.js';
import { length, type LengthInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import { exactOf, type Length } from '../units/quantity.js';
import { compareRatios, divideRatios, ratioToDecimal, type Ratio } from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { given, withWorking, type Worked } from '../working.js';
import { readRatio } from './exact.js';
import { SHARE, UNIT_SIDE } from './limits.js';

/** One rule on the shape of units, and how the unit meets it. */
export interface ShapeFinding {
  readonly rule: 'length-to-thickness' | 'cut-share' | 'cut-width';
  readonly verdict: 'pass' | 'fail' | 'not-checked';
  readonly text: string;
  /** Null for the job's own limit. */
  readonly source: SourceId | null;
}

/** Whether the shape of a unit suits the use. */
export interface UnitSuitability extends Worked {
  /** Length over thickness. */
  readonly ratio: Decimal;
  /** The greatest that the guide allows for this use. */
  readonly mostRatio: Decimal;
  /** False where a rule fails. */
  readonly ok: boolean;
  readonly findings: readonly ShapeFinding[];
}

/**
 * Shape of a unit against the published rules: `length / thickness` at most 4 or 3 by use; the smallest
 * cut piece at least a third of a unit where vehicles run, and at least 3/8 in wide elsewhere. A unit
 * on a limit passes. Large slabs are outside these rules, and so is the strength of the pavement.
 *
 * @param options.length - longest side of the unit [length]
 * @param options.thickness - [length]
 * @param options.use - what runs over it
 * @param options.guide - `interlocking` (the default) or `permeable`
 * @param options.smallestCut - the smallest piece left after cutting: `share` of a unit (0 to 1) where
 *   vehicles run, `width` [length] elsewhere
 * @param options.leastCutShare - of the job's own specification, where vehicles run; default a third
 * @returns the ratio and its limit, the findings with their sources
 * @throws `NOT_POSITIVE`, `OUT_OF_RANGE`, `UNKNOWN_CHOICE` and the reading codes
 * @source paver-tolerances
 * @source permeable-tolerances
 * @example
 * const slab = unitSuitability({
 *   length: '300 mm',
 *   thickness: '60 mm',
 *   use: 'residential-driveway',
 * });
 * slab.ratio.toString() //=> '5'
 * slab.ok //=> false
 */
export function unitSuitability(options: {
  readonly length: LengthInput;
  readonly thickness: LengthInput;
  readonly use: PavementUse;
  readonly guide?: UnitShapeGuide;
  readonly smallestCut?: { readonly share?: number | string; readonly width?: LengthInput };
  readonly leastCutShare?: number | string;
}): UnitSuitability {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const side = reader.quantity('length', fields['length'], ['length'], UNIT_SIDE);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], UNIT_SIDE);
  const use = reader.choice(fields['use'], ['use'], PAVEMENT_USES);
  const guide = reader.choice(fields['guide'] ?? 'interlocking', ['guide'], UNIT_SHAPE_GUIDES);
  const cut = readCut(reader, fields);
  reader.finish();

  const limit = UNIT_SHAPE_LIMITS[guide][use];
  const ratio = divideRatios(exactOf(side), exactOf(thickness));
  const isLong = compareRatios(ratio, readNumber(limit.value)) > 0;
  const shape: ShapeFinding = {
    rule: 'length-to-thickness',
    verdict: isLong ? 'fail' : 'pass',
    text: isLong
      ? `The unit is more than ${limit.value} times as long as it is thick: take a thicker or a shorter one.`
      : `The unit is no more than ${limit.value} times as long as it is thick.`,
    source: limit.source,
  };
  const findings = [shape, use === 'pedestrian' ? cutWidth(cut) : cutShare(cut)];
  const result = {
    ratio: ratioToDecimal(ratio),
    mostRatio: ratioToDecimal(readNumber(limit.value)),
    ok: findings.every(({ verdict }) => verdict !== 'fail'),
    findings,
  };
  return withWorking(result, () => [
    {
      title: 'Length to thickness',
      formula: 'k = l / t',
      given: [given('l', 'length of a unit', side), given('t', 'thickness', thickness)],
      result: given('k', `ratio, at most ${limit.value}`, result.ratio),
      source: limit.source,
    },
  ]);
}

interface Cut {
  readonly share: Ratio | undefined;
  readonly width: Length | undefined;
  readonly leastShare: Ratio | undefined;
}

function readCut(reader: Reader, fields: Readonly<Record<string, unknown>>): Cut {
  const shareOf = (value: unknown, path: readonly string[]) =>
    value === undefined ? undefined : readRatio(reader, value, path, SHARE);
  const smallest = reader.object(fields['smallestCut'] ?? {}, ['smallestCut']);
  return {
    share: shareOf(smallest['share'], ['smallestCut', 'share']),
    width:
      smallest['width'] === undefined
        ? undefined
        : reader.quantity('length', smallest['width'], ['smallestCut', 'width'], UNIT_SIDE),
    leastShare: shareOf(fields['leastCutShare'], ['leastCutShare']),
  };
}

function cutShare({ share, leastShare }: Cut): ShapeFinding {
  const published = CUT_UNIT_LIMITS.vehicularShare;
  const least = leastShare === undefined ? published.value : shareText(leastShare);
  const source = leastShare === undefined ? published.source : null;
  const rule = 'cut-share';
  if (share === undefined) {
    const text = `Keep every cut piece to ${least} of a unit or more: not checked, no piece was given.`;
    return { rule, verdict: 'not-checked', text, source };
  }
  const limit = leastShare ?? readNumber(published.value);
  const isSmall = compareRatios(share, limit) < 0;
  const text = isSmall
    ? `The smallest cut is less than ${least} of a unit: shift the pattern, or cut two pieces for one.`
    : `The smallest cut is ${least} of a unit or more.`;
  return { rule, verdict: isSmall ? 'fail' : 'pass', text, source };
}

/** A share as people say it. */
const shareText = (share: Ratio): string => ratioToDecimal(share).toSignificantDigits(3).toString();

function cutWidth({ width }: Cut): ShapeFinding {
  const { value, unit, source } = CUT_UNIT_LIMITS.otherWidth;
  const [rule, least] = ['cut-width', `${value} ${unit}`] as const;
  if (width === undefined) {
    const text = `Keep every cut piece to ${least} or more: not checked, no piece was given.`;
    return { rule, verdict: 'not-checked', text, source };
  }
  const isSmall = width.compare(length(least)) < 0;
  const text = isSmall
    ? `The smallest cut is narrower than ${least}: shift the pattern.`
    : `The smallest cut is ${least} or wider.`;
  return { rule, verdict: isSmall ? 'fail' : 'pass', text, source };
}
