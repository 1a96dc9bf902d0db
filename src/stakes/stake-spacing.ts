import { optional, quantity } from '../input/field.js';
import { RADIUS, SITE_LENGTH } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { length, type LengthInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { multiplyRatios, subtractRatios, wholeRatio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { angleOfArc } from './arc-from-chord.js';
import { refuseLongTable } from './refuse-long-table.js';

/** A curve to follow with straight strings. */
export interface StakeSpacingOptions {
  /** Radius of the curve [length], more than 0 and at most 1000 km. */
  readonly radius: LengthInput;
  /**
   * Maximum distance between string and curve [length], more than 0 and at most the radius or 10
   * km.
   */
  readonly deviation: LengthInput;
  /**
   * Length of the curve, to divide it into equal pieces [length], more than 0 and at most 10 km.
   * Default: not divided.
   */
  readonly length?: LengthInput;
}

const OPTIONS = shapeOf<StakeSpacingOptions>()({
  radius: quantity(RADIUS),
  deviation: quantity(SITE_LENGTH),
  length: optional(quantity(SITE_LENGTH)),
});

/** Maximum stake spacing on a curve for straight strings. */
export interface StakeSpacing extends Worked {
  /** Maximum straight distance from stake to stake [length]. */
  readonly chord: Length;
  /** The same along the curve [length]. */
  readonly arc: Length;
  /** Number of equal pieces; null if no length of the curve is given. */
  readonly pieces: number | null;
  /** Length of one piece along the curve [length]; null if no length of the curve is given. */
  readonly piece: Length | null;
  /** True if the stakes are so close that a bent strip or a template works better. */
  readonly needsTemplate: boolean;
  /** What to do, in words. */
  readonly note: string;
}

/**
 *
 * The maximum stake spacing on a curve that keeps a straight string within a distance of it:
 * `c = 2 sqrt(2 R d - d^2)`, about `sqrt(8 R d)`.
 *
 * @param options - see {@link StakeSpacingOptions}
 * @returns chord and arc from stake to stake [length], number of pieces, and whether a template
 * works better (stakes closer than 0.4 m: common practice, no source)
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE` and the reading codes
 * @source derived
 * @example
 * const curve = stakeSpacing({ radius: '6 m', deviation: '3 mm', length: '5 m' });
 * curve.chord.to('m').toFixed(4) //=> '0.3794'
 * curve.pieces //=> 14
 * curve.needsTemplate //=> true
 */
export function stakeSpacing(options: StakeSpacingOptions): StakeSpacing {
  const { radius, deviation, length: whole } = readOptions(options, OPTIONS, checkDeviation);
  const chord = chordFor(radius, deviation);
  const arc = radius.times(angleOfArc(chord, deviation).si);
  const divided = whole === undefined ? NOT_DIVIDED : inPieces(whole, arc);
  const needsTemplate = chord.compare(CLOSEST) < 0;
  const note = needsTemplate ? NOTES.template : NOTES.stakes;
  return withWorking({ chord, arc, ...divided, needsTemplate, note }, () => [
    derivedStep({
      title: 'Maximum stake spacing on the curve',
      formula: 'c = 2 * sqrt(2 * R * d - d^2)',
      given: [given('R', 'radius', radius), given('d', 'string off the curve', deviation)],
      result: given('c', 'from stake to stake', chord),
    }),
  ]);
}

const checkDeviation: Check<typeof OPTIONS> = (reader, { radius, deviation }, path, raw) => {
  if (radius === undefined || deviation === undefined || deviation.compare(radius) <= 0) return;
  const [off, most] = [asWritten(raw['deviation'], deviation), asWritten(raw['radius'], radius)];
  const message = `${off} is more than the radius, ${most}. Write how far the string may be off the curve`;
  reader.fail('OUT_OF_RANGE', [...path, 'deviation'], message);
};

const NOT_DIVIDED = { pieces: null, piece: null } as const;

function inPieces(whole: Length, longest: Length) {
  refuseLongTable(whole.dividedBy(longest), 'stakes', ['deviation']);
  const pieces = wholeNumberUp(whole, longest);
  return { pieces, piece: whole.dividedBy(pieces) };
}

const CLOSEST = length(CURVE_PRACTICE.closestStakes.value, 'm');

const NOTES = {
  template: 'The stakes would be very close together. Bend a strip or cut a template instead.',
  stakes: 'Between stakes the string is inside the curve, by no more than the deviation.',
} as const;

function chordFor(radius: Length, deviation: Length): Length {
  const [r, d] = [exactOf(radius), exactOf(deviation)];
  const square = multiplyRatios(subtractRatios(multiplyRatios(wholeRatio(2), r), d), d);
  return fromSI('length', multiplyRatios(wholeRatio(2), squareRoot(square)));
}
