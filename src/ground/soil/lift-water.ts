import { number, optional, quantity } from '../../input/field.js';
import { AREA, DENSITY, FRACTION, THICKNESS } from '../../input/ranges.js';
import { readOptions, shapeOf, type Values } from '../../input/shape.js';
import { COMPACTION_MOISTURE } from '../../sources/compaction-method.js';
import type { AreaInput, DensityInput, LengthInput } from '../../units/construct.js';
import type { Mass, Volume } from '../../units/quantity.js';
import { Decimal40, ONE, ZERO, type Decimal } from '../../units/decimal.js';
import { decimalRatio, exactDecimal, subtractRatios } from '../../units/ratio.js';
import {
  formulaStep,
  given,
  published,
  withWorking,
  type Step,
  type Worked,
} from '../../working.js';
import { WATER } from './water-density.js';

/** A lift, its moisture as delivered, and the moisture at which it compacts best. */
export interface LiftWaterOptions {
  /** Plan area of the lift [area], more than 0 and at most 1000 ha. */
  readonly area: AreaInput;
  /** Compacted thickness of the lift [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /** Dry density once compacted [density], more than 0 and at most 5 t/m3. */
  readonly dryDensity: DensityInput;
  /** Water over dry mass in the lift now, a fraction 0 to 1. */
  readonly moisture: number | string;
  /** Water over dry mass to compact at, a fraction 0 to 1: the optimum of the laboratory test. */
  readonly targetMoisture: number | string;
  /** Share of the water that dries off before compaction, a fraction 0 to 0.9. Default: 0. */
  readonly evaporation?: number | string;
}

const OPTIONS = shapeOf<LiftWaterOptions>()({
  area: quantity(AREA),
  thickness: quantity(THICKNESS),
  dryDensity: quantity(DENSITY),
  moisture: number(FRACTION),
  targetMoisture: number(FRACTION),
  evaporation: optional(number({ ...FRACTION, most: 0.9 }), ZERO),
});

/** What to do about the moisture of a lift. */
export type WaterAction = 'add-water' | 'let-dry' | 'compact-now';

/** Water to bring a lift to its moisture. */
export interface LiftWater extends Worked {
  /** What to do; `compact-now` if it is within the window. */
  readonly action: WaterAction;
  /** Water to add; negative for water that must dry off. */
  readonly water: Volume;
  /** The same per plan area: depth of water, in litres per square metre. */
  readonly litresPerSquareMetre: number;
  /** Mass of the water to add; negative to lose it. */
  readonly waterMass: Mass;
  /** Dry mass of the lift. */
  readonly dryMass: Mass;
  /** Compacted volume of the lift. */
  readonly volume: Volume;
  /** True if the moisture is within 2 percent of the target: it compacts without more water. */
  readonly isWithinWindow: boolean;
  /** What to do, in words. */
  readonly note: string;
}

/**
 * Water to add to a lift, or to let it lose, before it is compacted:
 * `W = A t d (w2 - w1) / (1 - x)`, x being the share that dries off. Moisture is water over **dry**
 * mass. Water is counted at 1 kg to the litre. Within 2 percent of the target a lift compacts as it
 * is. Exact.
 *
 * @param options - see {@link LiftWaterOptions}
 * @returns what to do, water [volume, mass], litres per square metre, dry mass [mass], compacted volume
 * [volume]
 * @throws `REQUIRED`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_TYPE` and the reading codes
 * @source derived
 * @source common-practice
 * @source compaction-moisture
 * @example
 * const lift = liftWater({
 *   area: '60 m2',
 *   thickness: '100 mm',
 *   dryDensity: '2100 kg/m3',
 *   moisture: '0.03',
 *   targetMoisture: '0.06',
 * });
 * lift.action //=> 'add-water'
 * lift.water.to('l').toString() //=> '378'
 * lift.litresPerSquareMetre //=> 6.3
 */
export function liftWater(options: LiftWaterOptions): LiftWater {
  const read = readOptions(options, OPTIONS);
  const { area, thickness, dryDensity, moisture, targetMoisture, evaporation } = read;
  const volume = area.times(thickness);
  const dryMass = volume.times(dryDensity);
  const missing = less(targetMoisture, moisture);
  const isToAdd = missing.gt(0);
  const kept = isToAdd ? less(ONE, evaporation) : ONE;
  const waterMass = dryMass.times(missing).dividedBy(kept);
  const water = waterMass.dividedBy(WATER);
  const isWithinWindow = missing.abs().lte(COMPACTION_MOISTURE.window.value);
  const action: WaterAction = isWithinWindow ? 'compact-now' : isToAdd ? 'add-water' : 'let-dry';
  const found = {
    action,
    water,
    litresPerSquareMetre: water.dividedBy(area).toNumber('mm'),
    waterMass,
    dryMass,
    volume,
    isWithinWindow,
    note: noteOf(action),
  };
  return withWorking(found, () => waterSteps(read, found));
}

const less = (a: Decimal, b: Decimal): Decimal =>
  exactDecimal(subtractRatios(decimalRatio(a), decimalRatio(b)));

function noteOf(action: WaterAction): string {
  switch (action) {
    case 'add-water':
      return 'Sprinkle the water over the loose lift, mix it in and let it soak before you compact. Squeeze a handful: it holds together and wets no finger.';
    case 'let-dry':
      return 'Spread and turn the lift to dry it, or wait. Wet fill moves under the plate instead of compacting.';
    default: {
      const window = new Decimal40(COMPACTION_MOISTURE.window.value).times(100);
      return `The moisture is within ${window.toString()} percent of the target. Compact before it dries.`;
    }
  }
}

function waterSteps(
  { area, thickness, dryDensity, moisture, targetMoisture, evaporation }: Values<typeof OPTIONS>,
  { dryMass, water, waterMass }: Pick<LiftWater, 'dryMass' | 'water' | 'waterMass'>,
): Step[] {
  const isToAdd = targetMoisture.gt(moisture);
  return [
    formulaStep({
      title: 'Dry mass of the lift',
      formula: 'M = A * t * d',
      given: [
        given('A', 'area', area),
        given('t', 'compacted thickness', thickness),
        given('d', 'dry density', dryDensity),
      ],
      result: given('M', 'dry mass', dryMass),
      source: 'derived',
    }),
    formulaStep({
      title: 'Water to add',
      formula: isToAdd ? 'W = M * (w2 - w1) / (1 - x)' : 'W = M * (w2 - w1)',
      given: [
        given('M', 'dry mass', dryMass),
        given('w2', 'moisture to compact at', targetMoisture),
        given('w1', 'moisture now', moisture),
        ...(isToAdd ? [given('x', 'share that dries off', evaporation)] : []),
      ],
      result: given('W', 'mass of water', waterMass),
      source: 'derived',
    }),
    formulaStep({
      title: 'Volume of the water',
      formula: 'V = W / q',
      given: [
        given('W', 'mass of water', waterMass),
        published('q', 'density of water', WATER, 'common-practice'),
      ],
      result: given('V', 'water', water),
      source: 'derived',
    }),
  ];
}
