import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Length } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { ELEVATION, READING } from './limits.js';

/** The height of a level line of sight. */
export interface InstrumentHeight extends Worked {
  readonly instrumentHeight: Length;
}

/**
 * Height of instrument, the elevation of the line of sight: `HI = benchmark + backsight`.
 *
 * @param options.benchmark - elevation of the mark that the rod stands on [length]
 * @param options.back - reading on it [length, 0 to 20 m]
 * @returns the height of instrument [length]
 * @throws `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source grade-with-a-level
 * @example
 * const setUp = instrumentHeight({ benchmark: '820 ft', back: '8.42 ft' });
 * setUp.instrumentHeight.to('ft').toString() //=> '828.42'
 */
export function instrumentHeight(options: {
  readonly benchmark: LengthInput;
  readonly back: LengthInput;
}): InstrumentHeight {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const benchmark = reader.quantity('length', fields['benchmark'], ['benchmark'], ELEVATION);
  const back = reader.quantity('length', fields['back'], ['back'], READING);
  reader.finish();
  const height = benchmark.plus(back);
  return withWorking({ instrumentHeight: height }, () => [
    {
      title: 'Height of instrument',
      formula: 'HI = BM + BS',
      given: [given('BM', 'benchmark', benchmark), given('BS', 'backsight', back)],
      result: given('HI', 'height of instrument', height),
      source: 'grade-with-a-level',
    },
  ]);
}
