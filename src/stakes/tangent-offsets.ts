import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { marksAlong, ordinateAt } from './chord-offsets.js';
import { RADIUS, SITE_LENGTH } from './limits.js';

/** A mark on the tangent and how far the arc has left it there. */
export interface TangentOffset {
  /** Along the tangent from the point where the arc begins. */
  readonly along: Length;
  /** Square to the tangent to the arc. */
  readonly offset: Length;
}

/** An arc set out by offsets from its tangent. */
export interface TangentOffsets extends Worked {
  readonly rows: readonly TangentOffset[];
}

/**
 * Sets out an arc by offsets from the straight it leaves: `t = R - sqrt(R^2 - x^2)`, x along the
 * straight from the point where the arc begins.
 *
 * @param options.radius - of the arc [length]
 * @param options.length - how far along the tangent [length], at most the radius
 * @param options.spacing - between marks from the start of the arc [length]; the end is added
 * @returns for each mark the distance along the tangent and the offset to the arc [length]
 * @throws `OUTSIDE_ARC` beyond the radius, `OUT_OF_RANGE` for more than 2000 marks, `NOT_POSITIVE` and
 *   the reading codes
 * @source curve-stakeout
 * @example
 * const { rows } = tangentOffsets({ radius: '4.25 m', length: '2 m', spacing: '1 m' });
 * rows.map(({ offset }) => offset.to('mm').toFixed(1)) //=> ['0.0', '119.3', '500.0']
 */
export function tangentOffsets(options: {
  readonly radius: LengthInput;
  readonly length: LengthInput;
  readonly spacing: LengthInput;
}): TangentOffsets {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const radius = reader.quantity('length', fields['radius'], ['radius'], RADIUS);
  const length = reader.quantity('length', fields['length'], ['length'], SITE_LENGTH);
  const spacing = reader.quantity('length', fields['spacing'], ['spacing'], SITE_LENGTH);
  if (!radius.isZero() && length.compare(radius) > 0) {
    const message = 'the arc does not reach further along its tangent than its radius';
    reader.fail('OUTSIDE_ARC', ['length'], message);
  }
  reader.finish();
  const rows = marksAlong(reader, { length, spacing }).map((along) => ({
    along,
    offset: radius.minus(ordinateAt(radius, along)),
  }));
  return withWorking({ rows }, () =>
    rows.map(({ along, offset }) => ({
      title: `Offset at ${along.to('m').toDecimalPlaces(4).toString()} m along the tangent`,
      formula: 't = R - sqrt(R^2 - x^2)',
      given: [given('R', 'radius', radius), given('x', 'along the tangent', along)],
      result: given('t', 'offset', offset),
      source: 'curve-stakeout',
    })),
  );
}
