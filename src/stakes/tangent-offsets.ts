import { quantity } from '../input/field.js';
import { RADIUS, SITE_LENGTH } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';
import { marksAlong, ordinateAt } from './marks-along.js';

/** An arc, the straight it leaves, and the spacing of the marks. */
export interface TangentOffsetsOptions {
  /** Radius of the arc [length], more than 0 and at most 1000 km. */
  readonly radius: LengthInput;
  /**
   * Distance along the tangent to set out [length], more than 0 and at most the radius or 10 km.
   */
  readonly length: LengthInput;
  /**
   * Distance between marks, from the start of the arc [length], more than 0 and at most 10 km. The
   * end is added. At most 2000 marks.
   */
  readonly spacing: LengthInput;
}

const OPTIONS = shapeOf<TangentOffsetsOptions>()({
  radius: quantity(RADIUS),
  length: quantity(SITE_LENGTH),
  spacing: quantity(SITE_LENGTH),
});

/** A mark on the tangent, and the offset to the arc there. */
export interface TangentOffset {
  /** Distance along the tangent from the start of the arc [length]. */
  readonly along: Length;
  /** Offset square from the tangent to the arc [length]. */
  readonly offset: Length;
}

/** An arc set out by offsets from its tangent. */
export interface TangentOffsets extends Worked {
  /** One row per mark, from the start of the arc. */
  readonly rows: readonly TangentOffset[];
}

/**
 * Sets out an arc by offsets from the straight it leaves: `t = R - sqrt(R^2 - x^2)`, x along the
 * straight from the start of the arc.
 *
 * @param options - see {@link TangentOffsetsOptions}
 * @returns for each mark the distance along the tangent and the offset to the arc [length]
 * @throws `OUTSIDE_ARC` beyond the radius, `OUT_OF_RANGE` for more than 2000 marks, `NOT_POSITIVE` and
 *   the reading codes
 * @source curve-stakeout
 * @example
 * const { rows } = tangentOffsets({ radius: '4.25 m', length: '2 m', spacing: '1 m' });
 * rows.map(({ offset }) => offset.to('mm').toFixed(1)) //=> ['0.0', '119.3', '500.0']
 */
export function tangentOffsets(options: TangentOffsetsOptions): TangentOffsets {
  const { radius, length, spacing } = readOptions(options, OPTIONS, checkReach);
  const rows = marksAlong({ length, spacing }).map((along) => ({
    along,
    offset: radius.minus(ordinateAt(radius, along)),
  }));
  return withWorking({ rows }, () =>
    rows.map(({ along, offset }) =>
      formulaStep({
        title: `Offset at ${along.to('m').toDecimalPlaces(4).toString()} m along the tangent`,
        formula: 't = R - sqrt(R^2 - x^2)',
        given: [given('R', 'radius', radius), given('x', 'along the tangent', along)],
        result: given('t', 'offset', offset),
        source: 'curve-stakeout',
      }),
    ),
  );
}

const checkReach: Check<typeof OPTIONS> = (reader, { radius, length }, path, raw) => {
  if (radius === undefined || length === undefined || length.compare(radius) <= 0) return;
  const [long, most] = [asWritten(raw['length'], length), asWritten(raw['radius'], radius)];
  const message = `${long} is past the end of the arc. Write no more than the radius, ${most}`;
  reader.fail('OUTSIDE_ARC', [...path, 'length'], message);
};
