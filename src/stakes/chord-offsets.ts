import { makeReader, type Reader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { multiplyRatios, subtractRatios } from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { given, withWorking, type Worked } from '../working.js';
import { radiusOf } from './arc-from-chord.js';
import { MOST_ROWS, SITE_LENGTH } from './limits.js';

/** A mark on the chord and how far the arc lies from it there. */
export interface ChordOffset {
  /** Along the chord from its start. */
  readonly along: Length;
  /** From the middle of the chord, - before it and + after it. */
  readonly fromMiddle: Length;
  /** Square to the chord out to the arc. */
  readonly offset: Length;
}

/** An arc set out by offsets from its chord. */
export interface ChordOffsets extends Worked {
  readonly radius: Length;
  readonly rows: readonly ChordOffset[];
}

/**
 * Sets out an arc by offsets from its chord: `y = sqrt(R^2 - x^2) - (R - M)`, x from the middle of the
 * chord. For an arc of no more than half a circle.
 *
 * @param options.chord - a string straight across the arc [length]
 * @param options.middleOrdinate - from the middle of the chord square to the arc [length], at most half
 *   the chord
 * @param options.spacing - between marks along the chord from its start [length]; the middle and the
 *   end are added
 * @returns radius and, for each mark, where it is along the chord and the offset out to the arc [length]
 * @throws `OUTSIDE_ARC` for more than half a circle, `OUT_OF_RANGE` for more than 2000 marks,
 *   `NOT_POSITIVE` and the reading codes
 * @source curve-stakeout
 * @example
 * const { rows } = chordOffsets({ chord: '4 m', middleOrdinate: '0.5 m', spacing: '1 m' });
 * rows.map(({ offset }) => offset.to('m').toFixed(4)) //=> ['0.0000', '0.3807', '0.5000', '0.3807', '0.0000']
 */
export function chordOffsets(options: {
  readonly chord: LengthInput;
  readonly middleOrdinate: LengthInput;
  readonly spacing: LengthInput;
}): ChordOffsets {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = (name: string) => reader.quantity('length', fields[name], [name], SITE_LENGTH);
  const [chord, ordinate] = [read('chord'), read('middleOrdinate')];
  const spacing = read('spacing');
  if (!chord.isZero() && ordinate.times(2).compare(chord) > 0) {
    const message = 'more than half a circle: offsets from the chord would not reach it all';
    reader.fail('OUTSIDE_ARC', ['middleOrdinate'], message);
  }
  reader.finish();
  const half = chord.dividedBy(2);
  const marks = marksAlong(reader, { length: chord, spacing, also: [half] });
  const radius = radiusOf(chord, ordinate);
  const rows = marks.map((along) => {
    const fromMiddle = along.minus(half);
    const offset = ordinateAt(radius, fromMiddle).minus(radius.minus(ordinate));
    return { along, fromMiddle, offset };
  });
  return withWorking({ radius, rows }, () =>
    rows.map(({ along, fromMiddle, offset }) => ({
      title: `Offset at ${along.to('m').toDecimalPlaces(4).toString()} m along the chord`,
      formula: 'y = sqrt(R^2 - x^2) - (R - M)',
      given: [
        given('R', 'radius', radius),
        given('x', 'from the middle of the chord', fromMiddle),
        given('M', 'middle ordinate', ordinate),
      ],
      result: given('y', 'offset', offset),
      source: 'curve-stakeout',
    })),
  );
}

/** `sqrt(R^2 - x^2)`; x is no longer than R. Internal. */
export function ordinateAt(radius: Length, x: Length): Length {
  const [r, s] = [exactOf(radius), exactOf(x)];
  return fromSI('length', squareRoot(subtractRatios(multiplyRatios(r, r), multiplyRatios(s, s))));
}

/** Marks from 0 at each spacing, the end and others too, in order and each once. Internal. */
export function marksAlong(
  reader: Reader,
  of: { readonly length: Length; readonly spacing: Length; readonly also?: readonly Length[] },
): readonly Length[] {
  const { length, spacing, also = [] } = of;
  const steps = length.dividedBy(spacing).floor().toNumber();
  if (steps > MOST_ROWS) {
    const message = `makes more than ${MOST_ROWS} marks: a slip of a digit or of a unit?`;
    reader.fail('OUT_OF_RANGE', ['spacing'], message);
    reader.finish();
  }
  const regular = Array.from({ length: steps + 1 }, (_, k) => spacing.times(k));
  const sorted = [...regular, ...also, length].sort((a, b) => a.compare(b));
  return sorted.filter((mark, k) => sorted[k - 1]?.equals(mark) !== true);
}
