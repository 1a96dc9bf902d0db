import { optional, quantity } from '../input/field.js';
import { FALL_OF_SOME, SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput, SlopeInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** A slope, and the spirit level that sets it. */
export interface GaugeBlockOptions {
  /** The slope to set [slope], more than 0 and at most 1 (rise over run). */
  readonly slope: SlopeInput;
  /** Length of the level or straightedge [length], more than 0 and at most 10 km. */
  readonly length: LengthInput;
  /** Error of the block and the level together [length], 0 to 10 m. Default: not counted. */
  readonly error?: LengthInput;
}

const OPTIONS = shapeOf<GaugeBlockOptions>()({
  slope: quantity(FALL_OF_SOME),
  length: quantity(SITE_LENGTH),
  error: optional(quantity(TOLERANCE)),
});

/** A block under the low end of a spirit level. */
export interface GaugeBlock extends Worked {
  /** Height of the block that centres the bubble. */
  readonly block: Length;
  /** Effect of the error on the slope; null if no error is given. */
  readonly slopeError: Slope | null;
}

/**
 * Block under the low end of a spirit level or straightedge that sets a slope: `b = s L`. To find
 * the error of a level, turn it end for end. The error is half the difference of the two readings.
 *
 * @param options - see {@link GaugeBlockOptions}
 * @returns block [length], and the error of the slope `error / L` [slope]
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const block = gaugeBlock({ slope: '2%', length: '1.2 m', error: '1 mm' });
 * block.block.to('mm').toString() //=> '24'
 * block.slopeError?.to('percent').toFixed(3) //=> '0.083'
 */
export function gaugeBlock(options: GaugeBlockOptions): GaugeBlock {
  const { slope, length, error } = readOptions(options, OPTIONS);
  const block = length.times(slope);
  const slopeError =
    error === undefined ? null : fromSI('slope', divideRatios(exactOf(error), exactOf(length)));
  return withWorking({ block, slopeError }, () => [
    derivedStep({
      title: 'Block under the level',
      formula: 'b = s * L',
      given: [given('s', 'slope', slope), given('L', 'length of the level', length)],
      result: given('b', 'block', block),
    }),
  ]);
}
