import { quantity } from '../input/field.js';
import { SITE_LENGTH } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { radiusOf } from './arc-from-chord.js';
import { marksAlong, ordinateAt } from './marks-along.js';

/** An arc, given by its chord and middle ordinate, and the spacing of the marks. */
export interface ChordOffsetsOptions {
  /** Length of a string straight across the arc [length], more than 0 and at most 10 km. */
  readonly chord: LengthInput;
  /**
   * Distance from the middle of the chord square to the arc [length], more than 0 and at most half
   * the chord.
   */
  readonly middleOrdinate: LengthInput;
  /**
   * Distance between marks along the chord, from its start [length], more than 0 and at most 10 km.
   * The middle and the end are added. At most 2000 marks.
   */
  readonly spacing: LengthInput;
}

const OPTIONS = shapeOf<ChordOffsetsOptions>()({
  chord: quantity(SITE_LENGTH),
  middleOrdinate: quantity(SITE_LENGTH),
  spacing: quantity(SITE_LENGTH),
});

/** A mark on the chord, and the offset to the arc there. */
export interface ChordOffset {
  /** Distance along the chord from its start [length]. */
  readonly along: Length;
  /** Distance from the middle of the chord [length], - before it and + after it. */
  readonly fromMiddle: Length;
  /** Offset square from the chord to the arc [length]. */
  readonly offset: Length;
}

/** An arc set out by offsets from its chord. */
export interface ChordOffsets extends Worked {
  /** Radius of the arc [length]. */
  readonly radius: Length;
  /** One row per mark, from the start of the chord to its end. */
  readonly rows: readonly ChordOffset[];
}

/**
 *
 * Sets out an arc by offsets from its chord: `y = sqrt(R^2 - x^2) - (R - M)`, x from the middle of the
 * chord. For an arc of no more than half a circle.
 *
 * @param options - see {@link ChordOffsetsOptions}
 * @returns radius and, for each mark, the distance along the chord and the offset to the arc
 * [length]
 * @throws `OUTSIDE_ARC` for more than half a circle, `OUT_OF_RANGE` for more than 2000 marks,
 *   `NOT_POSITIVE` and the reading codes
 * @source curve-stakeout
 * @example
 * const { rows } = chordOffsets({ chord: '4 m', middleOrdinate: '0.5 m', spacing: '1 m' });
 * rows.map(({ offset }) => offset.to('m').toFixed(4)) //=> ['0.0000', '0.3807', '0.5000', '0.3807', '0.0000']
 */
export function chordOffsets(options: ChordOffsetsOptions): ChordOffsets {
  const { chord, middleOrdinate: ordinate, spacing } = readOptions(options, OPTIONS, checkArc);
  const half = chord.dividedBy(2);
  const marks = marksAlong({ length: chord, spacing, also: [half] });
  const radius = radiusOf(chord, ordinate);
  const rows = marks.map((along) => {
    const fromMiddle = along.minus(half);
    const offset = ordinateAt(radius, fromMiddle).minus(radius.minus(ordinate));
    return { along, fromMiddle, offset };
  });
  return withWorking({ radius, rows }, () =>
    rows.map(({ along, fromMiddle, offset }) =>
      formulaStep({
        title: `Offset at ${along.to('m').toDecimalPlaces(4).toString()} m along the chord`,
        formula: 'y = sqrt(R^2 - x^2) - (R - M)',
        given: [
          given('R', 'radius', radius),
          given('x', 'from the middle of the chord', fromMiddle),
          given('M', 'middle ordinate', ordinate),
        ],
        result: given('y', 'offset', offset),
        source: 'curve-stakeout',
      }),
    ),
  );
}

const checkArc: Check<typeof OPTIONS> = (reader, { chord, middleOrdinate }, path, raw) => {
  if (chord === undefined || middleOrdinate === undefined) return;
  if (middleOrdinate.times(2).compare(chord) <= 0) return;
  const [ordinate, long] = [
    asWritten(raw['middleOrdinate'], middleOrdinate),
    asWritten(raw['chord'], chord),
  ];
  const message = `${ordinate} is more than half the chord of ${long}, so the arc is more than half a circle. Set it out in two parts`;
  reader.fail('OUTSIDE_ARC', [...path, 'middleOrdinate'], message);
};
