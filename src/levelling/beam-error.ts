import { optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE_OF_SOME } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { accuracy, beamSlope, type AccuracyInput } from './accuracy.js';

/** A distance from an instrument, and its accuracy. */
export interface BeamErrorOptions {
  /** Distance from the instrument [length], more than 0 and at most 10 km. */
  readonly distance: LengthInput;
  /** Accuracy of each axis, as the maker states it. */
  readonly accuracy: AccuracyInput;
  /**
   * An error, to find the distance at which it is reached [length], more than 0 and at most 10 m.
   * Default: none.
   */
  readonly limit?: LengthInput;
}

const OPTIONS = shapeOf<BeamErrorOptions>()({
  distance: quantity(SITE_LENGTH),
  accuracy,
  limit: optional(quantity(TOLERANCE_OF_SOME)),
});

/** Effect on elevations of a beam that is not quite level. */
export interface BeamError extends Worked {
  /** Maximum error of the beam at the distance. */
  readonly error: Length;
  /**
   * Maximum error in the height difference of two points at the distance, on opposite sides of the
   * instrument.
   */
  readonly between: Length;
  /** Distance at which the error reaches `limit`; null if none is given. */
  readonly maximumDistance: Length | null;
}

/**
 * Error of a laser beam or a line of sight with distance: `e = D a`, where a is the accuracy as an error
 * over a distance, or as the tangent of an angle. On opposite sides of the instrument errors add; at
 * equal distances on one side they cancel.
 *
 * @param options - see {@link BeamErrorOptions}
 * @returns error, and between two points on opposite sides [length, not negative]; maximum distance
 *   [length]
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `CONFLICTING_FIELDS`, `REQUIRED`, `OUT_OF_RANGE` and the reading
 *   codes
 * @source derived
 * @example
 * const beam = beamError({ distance: '30 m', accuracy: { angle: '10 arcsec' }, limit: '3 mm' });
 * beam.error.to('mm').toFixed(3) //=> '1.454'
 * beam.between.to('mm').toFixed(2) //=> '2.91'
 * beam.maximumDistance?.to('m').toFixed(1) //=> '61.9'
 */
export function beamError(options: BeamErrorOptions): BeamError {
  const read = readOptions(options, OPTIONS, (reader, values, path) => {
    const { accuracy: stated, limit } = values;
    if (stated === undefined || limit === undefined || !beamSlope(stated).isZero()) return;
    const why = 'a beam without error never reaches a limit. Give an error, or leave out limit';
    reader.fail('NOT_POSITIVE', [...path, 'accuracy'], why);
  });
  const { distance, limit } = read;
  const slope = beamSlope(read.accuracy);
  const error = distance.times(slope);
  const maximumDistance = limit?.dividedBy(slope) ?? null;
  return withWorking({ error, between: error.times(2), maximumDistance }, () => [
    derivedStep({
      title: 'Error of the beam',
      formula: 'e = D * a',
      given: [given('D', 'distance', distance), given('a', 'error over distance', slope)],
      result: given('e', 'error', error),
    }),
  ]);
}
