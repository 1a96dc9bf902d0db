import { makeReader } from '../input/reader.js';
import { length, type LengthInput, type SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { RULER, SLOPE_LIMIT, TOLERANCE } from './limits.js';

/** A block under the low end of a spirit level. */
export interface GaugeBlock extends Worked {
  /** Height of the block with which the bubble stands in the middle. */
  readonly block: Length;
  /** What an error of the block, or of the level over its length, does to the slope. */
  readonly slopeError?: Slope;
}

/**
 * Block under the low end of a spirit level or straightedge for a slope: `b = s L`. A level that is out
 * shows when it is turned end for end: half the difference of the two readings is its error.
 *
 * @param options.slope - slope wanted [slope, more than 0]
 * @param options.length - of the level or straightedge [length]
 * @param options.error - of the block and the level together [length], if its effect is wanted
 * @returns block [length], and the error of the slope `error / L` [slope]
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const block = gaugeBlock({ slope: '2%', length: '1.2 m', error: '1 mm' });
 * block.block.to('mm').toString() //=> '24'
 * block.slopeError?.to('percent').toFixed(3) //=> '0.083'
 */
export function gaugeBlock(options: {
  readonly slope: SlopeInput;
  readonly length: LengthInput;
  readonly error?: LengthInput;
}): GaugeBlock {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const wanted = reader.quantity('slope', fields['slope'], ['slope'], SLOPE_LIMIT);
  const ruler = reader.quantity('length', fields['length'], ['length'], RULER);
  const error = reader.quantity('length', fields['error'] ?? NOTHING, ['error'], TOLERANCE);
  reader.finish();
  const block = ruler.times(wanted);
  const doubt =
    fields['error'] === undefined
      ? {}
      : { slopeError: fromSI('slope', divideRatios(exactOf(error), exactOf(ruler))) };
  return withWorking({ block, ...doubt }, () => [
    {
      title: 'Block under the level',
      formula: 'b = s L',
      given: [given('s', 'slope', wanted), given('L', 'length of the level', ruler)],
      result: given('b', 'block', block),
      source: 'derived',
    },
  ]);
}

const NOTHING = length(0, 'm');
