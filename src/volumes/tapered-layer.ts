import { makeReader } from '../input/reader.js';
import type { LengthInput } from '../units/construct.js';
import type { Volume } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { LAYER, SPACING, WIDTH } from './limits.js';
import { inState, type StateVolume } from './state-volume.js';

/** A layer that gets thinner, narrower or both. */
export interface TaperedLayer extends Worked {
  readonly volume: StateVolume<'compacted'>;
  /** `wedge` where the thickness runs out, `pyramid` where thickness and width run out together. */
  readonly shape: 'even' | 'taper' | 'wedge' | 'pyramid';
}

/**
 * Volume of a layer whose thickness and width change evenly along its length:
 * `V = L / 6 (2 w1 t1 + w1 t2 + w2 t1 + 2 w2 t2)`. A taper of one width is `w L (t1 + t2) / 2`, a wedge
 * that runs out to a line `w L t / 2`, a pyramid that runs out to a point `w L t / 3`.
 *
 * @param options.length - along the taper [length]
 * @param options.width - across it at the first end [length]
 * @param options.lastWidth - across it at the last end [length], default the same width
 * @param options.thickness - compacted, at the first end [length]
 * @param options.lastThickness - compacted, at the last end [length]; 0 for a wedge
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
export function taperedLayer(options: {
  readonly length: LengthInput;
  readonly width: LengthInput;
  readonly lastWidth?: LengthInput;
  readonly thickness: LengthInput;
  readonly lastThickness: LengthInput;
}): TaperedLayer {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const along = reader.quantity('length', fields['length'], ['length'], SPACING);
  const w1 = reader.quantity('length', fields['width'], ['width'], WIDTH);
  const w2 =
    fields['lastWidth'] === undefined
      ? w1
      : reader.quantity('length', fields['lastWidth'], ['lastWidth'], WIDTH);
  const t1 = reader.quantity('length', fields['thickness'], ['thickness'], LAYER);
  const t2 = reader.quantity('length', fields['lastThickness'], ['lastThickness'], LAYER);
  reader.finish();

  // the two ends, each against its own width twice and the other's once
  const [byFirst, byLast] = [w1.times(2).plus(w2), w2.times(2).plus(w1)];
  const volume: Volume = byFirst.times(t1).plus(byLast.times(t2)).times(along).dividedBy(6);
  const runsOut = t1.isZero() || t2.isZero();
  const toPoint = (t1.isZero() && w1.isZero()) || (t2.isZero() && w2.isZero());
  const isEven = w1.equals(w2) && t1.equals(t2);
  const shape = isEven ? 'even' : toPoint ? 'pyramid' : runsOut ? 'wedge' : 'taper';
  return withWorking({ volume: inState(volume, 'compacted'), shape } as const, () => [
    {
      title: 'Volume of a tapered layer',
      formula: 'V = L / 6 (2 w1 t1 + w1 t2 + w2 t1 + 2 w2 t2)',
      given: [
        given('L', 'length', along),
        given('w1', 'width at the first end', w1),
        given('w2', 'width at the last end', w2),
        given('t1', 'thickness at the first end', t1),
        given('t2', 'thickness at the last end', t2),
      ],
      result: given('V', 'compacted volume', volume),
      source: 'derived',
    },
  ]);
}
