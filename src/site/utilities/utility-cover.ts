import { optional, quantity } from '../../input/field.js';
import { DEPTH, DEPTH_OR_NONE, TOLERANCE } from '../../input/ranges.js';
import { readOptions, shapeOf } from '../../input/shape.js';
import { cautionsFor, type Cautioned } from '../../sources/cautions.js';
import type { SystemText } from '../../sources/system-text.js';
import { formatLength } from '../../units/format-length.js';
import type { LengthInput } from '../../units/construct.js';
import type { Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { verdictOf, type Verdict } from '../../verdict.js';
import { derivedStep, given, withWorking, type Worked } from '../../working.js';

/** A line in a test hole, and the dig near it. Measure both depths from one surface. */
export interface UtilityCoverOptions {
  /**
   * Depth of the top of the line, measured in a test hole [length], 0 to 50 m. Never a usual or a marked
   * depth.
   */
  readonly found: LengthInput;
  /** Depth of the dig there [length], more than 0 and at most 50 m. */
  readonly dig: LengthInput;
  /** Minimum cover that the owner of the line requires [length], 0 to 50 m. No default. */
  readonly minimumCover: LengthInput;
  /** Uncertainty of the depth, either way [length], 0 to 10 m. Default: 0. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<UtilityCoverOptions>()({
  found: quantity(DEPTH_OR_NONE),
  dig: quantity(DEPTH),
  minimumCover: quantity(DEPTH_OR_NONE),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** What the depth of a line means for the dig. No code means that it is safe to dig on. */
export type CoverCode = 'line-in-dig' | 'less-than-minimum' | 'unclear' | 'minimum-kept';

/** Cover over a line. */
export interface UtilityCover extends Cautioned, Worked {
  /** Top of the line less depth of dig; negative if the line is in the dig. */
  readonly cover: Length;
  /** `fail` if the line is in the dig, or has less than the minimum cover. A pass is not a release to dig. */
  readonly verdict: Verdict;
  /** The verdict in detail. */
  readonly code: CoverCode;
  /** What to do next. */
  readonly note: SystemText;
  /** What a test hole does not show. */
  readonly notes: readonly string[];
}

/**
 * Cover left over a line that was exposed in a test hole:
 * `cover = depth of its top - depth of dig`, against the minimum cover that its owner requires.
 *
 * @param options - see {@link UtilityCoverOptions}
 * @returns cover [length], verdict, what to do next, cautions
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const gas = utilityCover({ found: '0.52 m', dig: '0.435 m', minimumCover: '0.15 m' });
 * gas.cover.to('mm').toString() //=> '85'
 * gas.verdict //=> 'fail'
 * gas.code //=> 'less-than-minimum'
 */
export function utilityCover(options: UtilityCoverOptions): UtilityCover {
  const { found, dig, minimumCover: least, uncertainty } = readOptions(options, OPTIONS);
  const cover = found.minus(dig);
  const verdict = judge(cover, least, uncertainty);
  const code: CoverCode = isInDig(cover) ? 'line-in-dig' : CODES[verdict];
  const result = {
    cover,
    verdict,
    code,
    note: {
      us: noteText(code, (q) => formatLength(q, { as: 'in' }), cover, least),
      metric: noteText(code, (q) => formatLength(q, { as: 'mm' }), cover, least),
    },
    notes: NOTES,
    cautions: cautionsFor('utilities', 'excavation'),
  };
  return withWorking(result, () => [
    derivedStep({
      title: 'Cover over the line',
      formula: 'c = f - e',
      given: [given('f', 'top of the line', found), given('e', 'depth of dig', dig)],
      result: given('c', 'cover', cover),
    }),
  ]);
}

const CODES = Object.freeze({
  pass: 'minimum-kept',
  unclear: 'unclear',
  fail: 'less-than-minimum',
} as const);

const isInDig = (cover: Length): boolean => cover.isNegative() || cover.isZero();

const judge = (cover: Length, least: Length, uncertainty: Length): Verdict =>
  isInDig(cover) ? 'fail' : verdictOf(cover.minus(least), uncertainty);

function noteText(
  code: CoverCode,
  text: (length: Length) => string,
  cover: Length,
  least: Length,
): string {
  switch (code) {
    case 'line-in-dig':
      return `Stop. The line reaches ${text(cover.abs())} into the dig. Do not dig deeper here. Call the utility owner, and change the levels or have the line moved.`;
    case 'less-than-minimum':
      return `Only ${text(cover)} of cover is left over the line, and its owner requires ${text(least)}. Stop above it and call the utility owner before you dig deeper.`;
    case 'unclear':
      return `About ${text(cover)} of cover is left over the line, too close to the ${text(least)} that its owner requires. Measure again in a test hole.`;
    default:
      return `${text(cover)} of cover is left over the line at the test hole. Use hand tools in the zone, and open another test hole at each change of direction.`;
  }
}

const NOTES: readonly string[] = Object.freeze([
  'The depth is right only at the test hole, because lines rise and fall between holes. Open one at each crossing.',
  'Plates and trucks load the line below them. Ask the utility owner before you compact over the line.',
]);
