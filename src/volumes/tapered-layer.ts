import { optional, quantity } from '../input/field.js';
import { DISTANCE, SITE_LENGTH_OR_NONE, THICKNESS_OR_NONE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import type { Volume } from '../units/quantity.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { inState, type StateVolume } from './state-volume.js';

/** A layer that gets thinner, narrower or both, given by its two ends. */
export interface TaperedLayerOptions {
  /** Length along the taper [length], more than 0. */
  readonly length: LengthInput;
  /** Width at the first end [length], not negative. */
  readonly width: LengthInput;
  /** Width at the last end [length], not negative. Default: the same width. */
  readonly lastWidth?: LengthInput;
  /** Compacted thickness at the first end [length], 0 to 5 m. */
  readonly thickness: LengthInput;
  /** Compacted thickness at the last end [length], 0 to 5 m; 0 for a wedge. */
  readonly lastThickness: LengthInput;
}

const OPTIONS = shapeOf<TaperedLayerOptions>()({
  length: quantity(DISTANCE),
  width: quantity(SITE_LENGTH_OR_NONE),
  lastWidth: optional(quantity(SITE_LENGTH_OR_NONE)),
  thickness: quantity(THICKNESS_OR_NONE),
  lastThickness: quantity(THICKNESS_OR_NONE),
});

/** Volume and shape of a layer that gets thinner, narrower or both. */
export interface TaperedLayer extends Worked {
  /** Volume in place. */
  readonly volume: StateVolume<'compacted'>;
  /** `wedge` if the thickness runs out, `pyramid` if thickness and width run out together. */
  readonly shape: 'even' | 'taper' | 'wedge' | 'pyramid';
}

/**
 * Volume of a layer whose thickness and width change evenly along its length:
 * `V = L / 6 (2 w1 t1 + w1 t2 + w2 t1 + 2 w2 t2)`. A taper of one width is `w L (t1 + t2) / 2`, a wedge
 * that runs out to a line is `w L t / 2`, and a pyramid that runs out to a point is `w L t / 3`.
 *
 * @param options - see {@link TaperedLayerOptions}
 * @returns compacted volume and the shape
 * @throws `NEGATIVE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source derived
 * @example
 * const wedge = taperedLayer({
 *   length: '2 m',
 *   width: '1.2 m',
 *   thickness: '0.3 m',
 *   lastThickness: '0 m',
 * });
 * wedge.volume.to('m3').toString() //=> '0.36'
 * wedge.shape //=> 'wedge'
 */
export function taperedLayer(options: TaperedLayerOptions): TaperedLayer {
  const {
    length: along,
    width: w1,
    lastWidth: w2 = w1,
    thickness: t1,
    lastThickness: t2,
  } = readOptions(options, OPTIONS);
  // each end counts its own width twice and the other's once
  const [byFirst, byLast] = [w1.times(2).plus(w2), w2.times(2).plus(w1)];
  const volume: Volume = byFirst.times(t1).plus(byLast.times(t2)).times(along).dividedBy(6);
  const runsOut = t1.isZero() || t2.isZero();
  const toPoint = (t1.isZero() && w1.isZero()) || (t2.isZero() && w2.isZero());
  const isEven = w1.equals(w2) && t1.equals(t2);
  const shape = isEven ? 'even' : toPoint ? 'pyramid' : runsOut ? 'wedge' : 'taper';
  return withWorking({ volume: inState(volume, 'compacted'), shape } as const, () => [
    derivedStep({
      title: 'Volume of a tapered layer',
      formula: 'V = L / 6 * (2 * w1 * t1 + w1 * t2 + w2 * t1 + 2 * w2 * t2)',
      given: [
        given('L', 'length', along),
        given('w1', 'width at the first end', w1),
        given('w2', 'width at the last end', w2),
        given('t1', 'thickness at the first end', t1),
        given('t2', 'thickness at the last end', t2),
      ],
      result: given('V', 'compacted volume', volume),
    }),
  ]);
}
