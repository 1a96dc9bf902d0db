import { readCompactedPerLoose } from '../input/compaction-ratio.js';
import { makeReader } from '../input/reader.js';
import type { AreaInput, DensityInput, LengthInput } from '../units/construct.js';
import type { Mass } from '../units/quantity.js';
import { given, withWorking, type Worked } from '../working.js';
import { AREA, DENSITY, FRACTION, LAYER } from './limits.js';
import { inState, type StateVolume } from './state-volume.js';

/** What to order for a compacted layer. */
export interface BaseOrder extends Worked {
  /** In place, without waste: what the hole holds. */
  readonly compacted: StateVolume<'compacted'>;
  /** In the truck, with waste. */
  readonly loose: StateVolume<'loose'>;
  /** Dry stone, with waste. */
  readonly dryMass: Mass;
  /** On the weighbridge: dry stone and its water, with waste. */
  readonly deliveredMass: Mass;
}

/**
 * Stone for a compacted layer: `Vc = A t`, `Vl = Vc (1 + waste) / (compacted per loose)`,
 * `dry = Vc (1 + waste) x dry density`, `delivered = dry (1 + moisture)`. A mass is never multiplied
 * by the loose factor.
 *
 * @param options.area - area of the base, its extension included [area]
 * @param options.thickness - compacted [length]
 * @param options.compactedDryDensity - in place, dry [density]
 * @param options.moisture - water over dry mass, a fraction 0 to 1, default 0
 * @param options.compactedPerLoose - compacted over loose volume, 0.5 to 1
 * @param options.waste - a fraction 0 to 1 on top, default 0
 * @returns compacted and loose volume, dry and delivered mass
 * @throws `RATIO_OUT_OF_RANGE`, `OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE` and the reading codes
 * @source derived
 * @example
 * const order = baseOrder({
 *   area: '81 ft2',
 *   thickness: '4 in',
 *   compactedDryDensity: '3700 lb/yd3',
 *   moisture: 0.05,
 *   compactedPerLoose: 0.8,
 * });
 * order.loose.to('yd3').toString() //=> '1.25'
 * order.deliveredMass.to('lb').toString() //=> '3885'
 */
export function baseOrder(options: {
  readonly area: AreaInput;
  readonly thickness: LengthInput;
  readonly compactedDryDensity: DensityInput;
  readonly moisture?: number | string;
  readonly compactedPerLoose: number | string;
  readonly waste?: number | string;
}): BaseOrder {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], LAYER);
  const dry = reader.quantity(
    'density',
    fields['compactedDryDensity'],
    ['compactedDryDensity'],
    DENSITY,
  );
  const moisture = reader.number(
    fields['moisture'] === undefined ? 0 : fields['moisture'],
    ['moisture'],
    FRACTION,
  );
  const ratio = readCompactedPerLoose(reader, fields['compactedPerLoose'], ['compactedPerLoose']);
  const waste = reader.number(
    fields['waste'] === undefined ? 0 : fields['waste'],
    ['waste'],
    FRACTION,
  );
  reader.finish();

  const compacted = area.times(thickness);
  const withWaste = compacted.times(waste.plus(1));
  const loose = withWaste.dividedBy(ratio);
  const dryMass = withWaste.times(dry);
  const deliveredMass = dryMass.times(moisture.plus(1));
  const order = {
    compacted: inState(compacted, 'compacted'),
    loose: inState(loose, 'loose'),
    dryMass,
    deliveredMass,
  };
  return withWorking(order, () => [
    {
      title: 'Compacted volume',
      formula: 'Vc = A x t',
      given: [given('A', 'area', area), given('t', 'thickness', thickness)],
      result: given('Vc', 'compacted volume', compacted),
      source: 'derived',
    },
    {
      title: 'Loose volume',
      formula: 'Vl = Vc (1 + q) / r',
      given: [
        given('Vc', 'compacted volume', compacted),
        given('q', 'waste', waste),
        given('r', 'compacted per loose', ratio),
      ],
      result: given('Vl', 'loose volume', loose),
      source: 'derived',
    },
    {
      title: 'Delivered mass',
      formula: 'M = Vc (1 + q) d (1 + w)',
      given: [
        given('Vc', 'compacted volume', compacted),
        given('q', 'waste', waste),
        given('d', 'dry density in place', dry),
        given('w', 'moisture of dry mass', moisture),
      ],
      result: given('M', 'delivered mass', deliveredMass),
      source: 'derived',
    },
  ]);
}
