import { makeReader } from '../input/reader.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { length, type LengthInput } from '../units/construct.js';
import { wholeNumberUp } from '../units/format-quantity.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { multiplyRatios, subtractRatios, wholeRatio } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { angleOfArc } from './arc-from-chord.js';
import { MOST_ROWS, RADIUS, SITE_LENGTH } from './limits.js';

/** How far apart stakes may stand on a curve that a straight string follows. */
export interface StakeSpacing extends Worked {
  /** Straight from stake to stake at the most. */
  readonly chord: Length;
  /** The same along the curve. */
  readonly arc: Length;
  /** For a curve of a given length: how many pieces, and how long each is along the curve. */
  readonly pieces?: number;
  readonly piece?: Length;
  /** True where the stakes come so close that a bent strip or a template serves better. */
  readonly useTemplate: boolean;
  readonly note: string;
}

/**
 * The largest stake spacing on a curve for which a straight string stays within a distance of it:
 * `c = 2 sqrt(2 R d - d^2)`, about `sqrt(8 R d)`.
 *
 * @param options.radius - of the curve [length]
 * @param options.deviation - largest distance between string and curve [length], at most the radius
 * @param options.length - of the curve [length], if it is to be divided into even pieces
 * @returns chord and arc from stake to stake [length], number of pieces, and whether a template serves
 *   better (stakes closer than 0.4 m: common practice, no source)
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE` and the reading codes
 * @source derived
 * @example
 * const curve = stakeSpacing({ radius: '6 m', deviation: '3 mm', length: '5 m' });
 * curve.chord.to('m').toFixed(4) //=> '0.3794'
 * curve.pieces //=> 14
 * curve.useTemplate //=> true
 */
export function stakeSpacing(options: {
  readonly radius: LengthInput;
  readonly deviation: LengthInput;
  readonly length?: LengthInput;
}): StakeSpacing {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const radius = reader.quantity('length', fields['radius'], ['radius'], RADIUS);
  const deviation = reader.quantity('length', fields['deviation'], ['deviation'], SITE_LENGTH);
  const whole =
    fields['length'] === undefined
      ? undefined
      : reader.quantity('length', fields['length'], ['length'], SITE_LENGTH);
  if (!radius.isZero() && deviation.compare(radius) > 0) {
    const message = 'a string cannot be further from a curve than its radius';
    reader.fail('OUT_OF_RANGE', ['deviation'], message);
  }
  reader.finish();
  const chord = chordFor(radius, deviation);
  const arc = radius.times(angleOfArc(chord, deviation).si);
  if (whole?.dividedBy(arc).gt(MOST_ROWS) === true) {
    const message = `makes more than ${MOST_ROWS} stakes: a slip of a digit or of a unit?`;
    reader.fail('OUT_OF_RANGE', ['deviation'], message);
    reader.finish();
  }
  const count = whole === undefined ? undefined : wholeNumberUp(whole, arc);
  const divided =
    whole === undefined || count === undefined
      ? {}
      : { pieces: count, piece: whole.dividedBy(count) };
  const useTemplate = chord.compare(CLOSEST) < 0;
  const note = useTemplate ? NOTES.template : NOTES.stakes;
  return withWorking({ chord, arc, ...divided, useTemplate, note }, () => [
    {
      title: 'Largest stake spacing on the curve',
      formula: 'c = 2 sqrt(2 R d - d^2)',
      given: [given('R', 'radius', radius), given('d', 'string off the curve', deviation)],
      result: given('c', 'from stake to stake', chord),
      source: 'derived',
    },
  ]);
}

const CLOSEST = length(CURVE_PRACTICE.closestStakes.value, 'm');

const NOTES = {
  template: 'The stakes would stand very close: bend a strip or cut a template instead.',
  stakes: 'The string runs inside the curve between stakes, by the deviation at the most.',
} as const;

function chordFor(radius: Length, deviation: Length): Length {
  const [r, d] = [exactOf(radius), exactOf(deviation)];
  const square = multiplyRatios(subtractRatios(multiplyRatios(wholeRatio(2), r), d), d);
  return fromSI('length', multiplyRatios(wholeRatio(2), squareRoot(square)));
}
