import { flag, optional, quantity } from '../input/field.js';
import {
  DEPTH_OR_NONE,
  ELEVATION,
  GRADE,
  SET_BACK,
  STRING_HEIGHT,
  THICKNESS_OR_NONE,
} from '../input/ranges.js';
import { isLeftOut, readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';

/** Stakes offset from an edge, and how the string on them is set. */
export interface OffsetStringInput {
  /** String above finished grade [length], 0 to 5 m. */
  readonly stringHeight: LengthInput;
  /** Level distance from the edge out to the stakes [length], 0 to 100 m. */
  readonly offset: LengthInput;
  /** Slope of the paving across the edge [slope], + rising outward, up to 1 either way. */
  readonly crossSlope: SlopeInput;
  /**
   * True: the string is above the paving as if it were extended to the stakes at its cross slope, so a
   * straight line from string to string lies along the paving. False: it is above the edge itself.
   */
  readonly carriesCrossSlope: boolean;
  /** Minimum height of the string above the ground [length], 0 to 5 m. Default: 0. */
  readonly clearance?: LengthInput;
}

/** How an offset string is read. Internal. */
export const OFFSET_STRING = shapeOf<OffsetStringInput>()({
  stringHeight: quantity(STRING_HEIGHT),
  offset: quantity(SET_BACK),
  crossSlope: quantity(GRADE),
  carriesCrossSlope: flag,
  clearance: optional(quantity(THICKNESS_OR_NONE), NO_LENGTH),
});

/** An offset string that has been read. Internal. */
export type OffsetString = Values<typeof OFFSET_STRING>;

/** A stake offset from the edge, and the string on it. */
export interface StringAtStakeOptions extends OffsetStringInput {
  /** Elevation of finished grade at the edge [length], up to 10 km either way. */
  readonly finishedGrade: LengthInput;
  /** Elevation of the ground at the stake [length], up to 10 km either way. Default: not known. */
  readonly ground?: LengthInput;
  /**
   * Depth of the stake in the ground, to get its length [length], 0 to 50 m. Needs `ground`.
   * Default: no length.
   */
  readonly inGround?: LengthInput;
  /** Height of the stake above the string [length], 0 to 100 m. Default: 0. */
  readonly aboveString?: LengthInput;
}

const OPTIONS = shapeOf<StringAtStakeOptions>()({
  ...OFFSET_STRING,
  finishedGrade: quantity(ELEVATION),
  ground: optional(quantity(ELEVATION)),
  inGround: optional(quantity(DEPTH_OR_NONE)),
  aboveString: optional(quantity(SET_BACK), NO_LENGTH),
});

/** The string at a stake. */
export interface OffsetTie {
  /** Where to tie the string: elevation [length]. */
  readonly elevation: Length;
  /** The string above finished grade at the edge [length]. */
  readonly aboveEdge: Length;
  /**
   * Rise of the cross slope from edge to stake [length], + up, whether the string carries it or
   * not.
   */
  readonly crossRise: Length;
  /** The string above the ground at the stake [length], negative below it; null if the ground is not known. */
  readonly aboveGround: Length | null;
  /** Raise the string by this to clear the ground [length], 0 if it does; null if the ground is not known. */
  readonly raiseStringBy: Length | null;
  /** What to do, in words. */
  readonly note: string;
}

/** The string at one stake. */
export interface StringAtStake extends OffsetTie, Worked {
  /** Length of the stake, foot to top [length]; null if `inGround` is not given. */
  readonly stakeLength: Length | null;
}

/**
 * Where to tie the string on a stake that is offset from the edge, so that the dig does not disturb
 * it: `z = finish + k i o + h`, with k 1 if the string carries the cross slope out and 0 if it does
 * not. You must say which: 2% over 0.45 m is 9 mm.
 *
 * If the string would touch the ground, raise it along the whole line, not on one stake.
 *
 * @param options - see {@link StringAtStakeOptions}
 * @returns elevation of the string, height above edge and ground, length of the stake [length]
 * @throws `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const tie = stringAtStake({
 *   finishedGrade: '29.88 m',
 *   stringHeight: '150 mm',
 *   offset: '450 mm',
 *   crossSlope: '-2%',
 *   carriesCrossSlope: true,
 *   ground: '29.84 m',
 *   inGround: '350 mm',
 *   aboveString: '150 mm',
 * });
 * tie.elevation.to('m').toString() //=> '30.021'
 * tie.aboveGround?.to('m').toString() //=> '0.181'
 * tie.stakeLength?.to('m').toString() //=> '0.681'
 */
export function stringAtStake(options: StringAtStakeOptions): StringAtStake {
  const read = readOptions(options, OPTIONS, checkGround);
  const tie = tieAt(read.finishedGrade, read, read.ground);
  const { aboveGround } = tie;
  const stakeLength =
    read.inGround === undefined || aboveGround === null
      ? null
      : read.inGround.plus(aboveGround).plus(read.aboveString);
  return withWorking({ ...tie, stakeLength }, () => [tieStep(read.finishedGrade, read, tie)]);
}

const checkGround: Check<typeof OPTIONS> = (reader, values, path) => {
  if (values.inGround === undefined || !isLeftOut(values, 'ground')) return;
  const message = 'missing. The length of a stake needs the elevation of the ground';
  reader.fail('REQUIRED', [...path, 'ground'], message);
};

/** The string at a stake. Internal. */
export function tieAt(
  finishedGrade: Length,
  string: OffsetString,
  ground: Length | undefined,
): OffsetTie {
  const crossRise = string.offset.times(string.crossSlope);
  const aboveEdge = string.carriesCrossSlope
    ? string.stringHeight.plus(crossRise)
    : string.stringHeight;
  const elevation = finishedGrade.plus(aboveEdge);
  const tie = { elevation, aboveEdge, crossRise };
  if (ground === undefined) {
    return { ...tie, aboveGround: null, raiseStringBy: null, note: NOTES.clear };
  }
  const aboveGround = elevation.minus(ground);
  const short = string.clearance.minus(aboveGround);
  const isLow = !short.isNegative() && !short.isZero();
  const raiseStringBy = isLow ? short : NO_LENGTH;
  return { ...tie, aboveGround, raiseStringBy, note: isLow ? NOTES.low : NOTES.clear };
}

const NOTES = {
  clear: 'Write on the stake how far it is from the edge, and what the string is above.',
  low: 'The string is too low over the ground here. Raise it along the whole line, never on one stake.',
} as const;

/** The step that shows how the string was worked out. Internal. */
export const tieStep = (
  finishedGrade: Length,
  string: OffsetString,
  { elevation }: { readonly elevation: Length },
): Step =>
  derivedStep({
    title: 'Elevation of the string at the stake',
    formula: string.carriesCrossSlope ? 'z = zf + g * o + h' : 'z = zf + h',
    given: [
      given('zf', 'finished grade at the edge', finishedGrade),
      ...(string.carriesCrossSlope
        ? [
            given('g', 'cross slope (+ rising outward)', string.crossSlope),
            given('o', 'offset of the stake', string.offset),
          ]
        : []),
      given('h', 'string above finished grade', string.stringHeight),
    ],
    result: given('z', 'string', elevation),
  });
