import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { readAccuracy, type AccuracyInput } from './accuracy.js';
import { ALLOWED, DISTANCE } from './limits.js';

/** What a beam that is not quite level does to heights. */
export interface BeamError extends Worked {
  /** How far off the beam can be at the distance. */
  readonly error: Length;
  /** How far off two points can be against each other, as far away on opposite sides. */
  readonly between: Length;
  /** The distance at which the error reaches `limit`, where that was given. */
  readonly longestDistance?: Length;
}

/**
 * Error of a laser beam or of a line of sight with distance: `e = D a`, a being the accuracy as an error
 * over a distance or as the tangent of an angle. On opposite sides of the instrument errors add, at equal
 * distances on one side they fall out. What is promised is promised for each axis.
 *
 * @param options.distance - from the instrument [length]
 * @param options.accuracy - `error` [length] `over` a distance [length], or the `angle` to the level
 *   [angle, up to 1 degree]
 * @param options.limit - an error [length], if the distance that leads to it is wanted
 * @returns error, and between two points on opposite sides [length, not negative]; longest distance
 *   [length]
 * @throws `NOT_POSITIVE`, `ONE_OF`, `REQUIRED`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const beam = beamError({ distance: '30 m', accuracy: { angle: '10 arcsec' }, limit: '3 mm' });
 * beam.error.to('mm').toFixed(3) //=> '1.454'
 * beam.between.to('mm').toFixed(2) //=> '2.91'
 * beam.longestDistance?.to('m').toFixed(1) //=> '61.9'
 */
export function beamError(options: {
  readonly distance: LengthInput;
  readonly accuracy: AccuracyInput;
  readonly limit?: LengthInput;
}): BeamError {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const distance = reader.quantity('length', fields['distance'], ['distance'], DISTANCE);
  const accuracy = readAccuracy(reader, fields['accuracy']);
  const limit =
    fields['limit'] === undefined
      ? undefined
      : reader.quantity('length', fields['limit'], ['limit'], ALLOWED);
  if (limit !== undefined && accuracy.isZero()) {
    reader.fail('NOT_POSITIVE', ['accuracy'], 'a beam without error reaches no limit');
  }
  reader.finish();
  const error = distance.times(accuracy);
  const longest = limit === undefined ? {} : { longestDistance: limit.dividedBy(accuracy) };
  return withWorking({ error, between: error.times(2), ...longest }, () => [
    {
      title: 'Error of the beam',
      formula: 'e = D a',
      given: [given('D', 'distance', distance), given('a', 'error over distance', accuracy)],
      result: given('e', 'error', error),
      source: 'derived',
    },
  ]);
}
