// Sand is ordered loose and measured compacted; `volumes` defines the states and the material for a
// volume in place.
import {
  checkDryDensity,
  DRY_DENSITY,
  dryDensityOf,
  type DryDensityInput,
  type WithDensity,
} from '../../volumes/dry-density.js';
import { inState, type StateVolume } from '../../volumes/state-volume.js';
import { massSteps, workOut } from '../../volumes/stone-taken.js';
import { object, optional, quantity, ratio } from '../../input/field.js';
import { AREA_OR_NONE, FRACTION, OPEN_JOINT, SMALL, THICKNESS } from '../../input/ranges.js';
import { isLeftOut, readOptions, shapeOf, type Check, type Values } from '../../input/shape.js';
import type { AreaInput, LengthInput } from '../../units/construct.js';
import { exactOf, type Area, type Length, type Mass } from '../../units/quantity.js';
import {
  divideRatios,
  ratioToDecimal,
  ratioToNumber,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { onePlus, timesRatio } from '../../units/times-ratio.js';
import { NO_LENGTH } from '../../units/zero.js';
import { derivedStep, formulaStep, given, withWorking, type Worked } from '../../working.js';
import { jointShare } from '../joints/joint-share.js';
import { unit, type UnitInput } from '../pavers/unit.js';
import { bulking, bulkingSteps, NO_BULKING, type JarTestInput } from './bulking.js';
import { checkSettlement } from './settlement.js';

/** Sand that rises from the bed into the joints. */
export interface RisingSandInput {
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Joint width [length], more than 0 and at most 100 mm. */
  readonly joint: LengthInput;
  /** Height that it rises from below [length], 0 to 1 m. */
  readonly rise: LengthInput;
}

/** A bedding layer to order sand for. */
export interface BeddingSandOptions extends DryDensityInput {
  /** Plan area of the bed [area], 0 to 1000 ha. */
  readonly area: AreaInput;
  /** Compacted thickness under the pavers [length], more than 0 and at most 5 m. */
  readonly thickness: LengthInput;
  /**
   * Settlement of the bed under the plate [length], 0 to 1 m and less than the thickness. Measure
   * it on a trial paver. It also gives `compactedPerLoose`, if you leave that out:
   * `t / (t + settlement)`. Default: none.
   */
  readonly settlement?: LengthInput;
  /** Water over dry mass, a fraction 0 to 1. Default: 0. */
  readonly moisture?: number | string;
  /** Volume of damp sand over dry loose sand, less 1: a fraction 0 to 1, or a jar test. Default: 0. */
  readonly bulking?: number | string | JarTestInput;
  /** Waste added to the order, a fraction 0 to 1. Default: 0. */
  readonly waste?: number | string;
  /** Sand that rises into the joints from below. Default: none. */
  readonly rising?: RisingSandInput;
}

const RISING = shapeOf<RisingSandInput>()({
  unit,
  joint: quantity(OPEN_JOINT),
  rise: quantity(SMALL),
});

const OPTIONS = shapeOf<BeddingSandOptions>()({
  area: quantity(AREA_OR_NONE),
  thickness: quantity(THICKNESS),
  ...DRY_DENSITY,
  settlement: optional(quantity(SMALL)),
  moisture: optional(ratio(FRACTION), ZERO_RATIO),
  bulking: optional(bulking, NO_BULKING),
  waste: optional(ratio(FRACTION), ZERO_RATIO),
  rising: optional(object(RISING)),
});

/** A bed as screeded, before the plate. */
export interface ScreededBed {
  /** Thickness to screed: the height of the screed rails on the base. */
  readonly thickness: Length;
  /** Volume of the screeded bed. */
  readonly volume: StateVolume<'loose'>;
}

/** Sand for a bed. `Absent` is null if no density may be given. */
export interface BeddingSand<Absent extends null = never> extends Worked {
  /** Volume in place under the pavers, sand that rises into the joints included, without waste. */
  readonly compacted: StateVolume<'compacted'>;
  /** The bed as screeded; null if no settlement is given. */
  readonly screeded: ScreededBed | null;
  /** Volume dry and loose, with waste. */
  readonly dryLoose: StateVolume<'loose'>;
  /** How much more space the damp sand takes than dry: 0.25 means a quarter more. */
  readonly bulking: number;
  /** Volume in the truck, damp and bulked, with waste: what to order by volume. */
  readonly delivered: StateVolume<'loose'>;
  /** Mass of dry sand, with waste; null if no density is given. */
  readonly dryMass: Mass | Absent;
  /**
   * Mass on the scale, water included, with waste. Order this by mass. Null if no density is given.
   */
  readonly deliveredMass: Mass | Absent;
}

/**
 *
 * Sand for the bed under the pavers: `Vc = A t`, `dry = Vc (1 + waste) x dry density in place`,
 * `dry loose = Vc (1 + waste) / (compacted per loose)`, `delivered = dry loose (1 + bulking)`,
 * `mass = dry (1 + moisture)`. Damp sand takes more space than dry, so an order by volume without
 * bulking runs short; an order by mass does not.
 *
 * @param options - see {@link BeddingSandOptions}
 * @returns compacted volume; screeded thickness and volume; dry loose and delivered volume; dry and
 * delivered mass, if a density is given
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless the ratio, both densities or a settlement are
 *   given, `OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE` and the reading codes
 * @source derived
 * @source sand-bulking-course
 * @example
 * const sand = beddingSand({
 *   area: '60 m2',
 *   thickness: '25 mm',
 *   compactedDryDensity: '1700 kg/m3',
 *   looseDryDensity: '1500 kg/m3',
 *   moisture: 0.05,
 *   bulking: { damp: '10 in', flooded: '8 in' },
 *   settlement: '6 mm',
 * });
 * sand.compacted.to('m3').toString() //=> '1.5'
 * sand.screeded?.thickness.to('mm').toString() //=> '31'
 * sand.bulking //=> 0.25
 * sand.delivered.to('m3').toString() //=> '2.125'
 * sand.deliveredMass.to('t').toString() //=> '2.6775'
 * beddingSand({ area: '60 m2', thickness: '25 mm', settlement: '6 mm' }).deliveredMass //=> null
 */
export function beddingSand(options: BeddingSandOptions & WithDensity): BeddingSand;
export function beddingSand(options: BeddingSandOptions): BeddingSand<null>;
export function beddingSand(options: BeddingSandOptions): BeddingSand<null> {
  const read = readOptions(options, OPTIONS, checkSand);
  const { area, thickness, settlement, bulking: bulked } = read;
  const density = dryDensityOf(read, screededRatio(thickness, settlement));
  const allowances = { ...read, density };
  const rise = read.rising === undefined ? NO_LENGTH : risenThickness(read.rising);
  const taken = workOut(area.times(thickness.plus(rise)), allowances);
  const delivered = timesRatio(taken.loose, onePlus(bulked.ratio));
  const sand = {
    compacted: inState(taken.compacted, 'compacted'),
    screeded: screededBed(area, thickness, settlement),
    dryLoose: inState(taken.loose, 'loose'),
    bulking: ratioToNumber(bulked.ratio),
    delivered: inState(delivered, 'loose'),
    dryMass: taken.dryMass,
    deliveredMass: taken.deliveredMass,
  };
  return withWorking(sand, () => [
    derivedStep({
      title: 'Compacted volume of the bed',
      formula: 'Vc = A * (t + u)',
      given: [
        given('A', 'area', area),
        given('t', 'compacted thickness', thickness),
        given('u', 'what rises into the joints, spread over the area', rise),
      ],
      result: given('Vc', 'compacted volume', taken.compacted),
    }),
    ...bulkingSteps(bulked),
    formulaStep({
      title: 'Delivered volume, damp',
      formula: 'Vd = Vc * (1 + q) * (1 + b) / r',
      given: [
        given('Vc', 'compacted volume', taken.compacted),
        given('q', 'waste', ratioToDecimal(read.waste)),
        given('b', 'bulking', sand.bulking),
        given('r', 'compacted per loose', ratioToDecimal(density.compactedPerLoose)),
      ],
      result: given('Vd', 'delivered', delivered),
      source: sand.bulking === 0 ? 'derived' : 'sand-bulking-course',
    }),
    ...massSteps(taken, allowances),
  ]);
}

/** A settlement gives the ratio, even if it was misspelt or cannot be read. */
const checkSand: Check<typeof OPTIONS> = (reader, values, path, raw) => {
  checkDryDensity(reader, values, raw, { path, isMeasured: !isLeftOut(values, 'settlement') });
  checkSettlement(reader, values.settlement, values.thickness, path);
};

/** Compacted over screeded thickness, if a settlement was measured. */
const screededRatio = (thickness: Length, settlement = NO_LENGTH): Ratio =>
  divideRatios(exactOf(thickness), exactOf(thickness.plus(settlement)));

function screededBed(
  area: Area,
  thickness: Length,
  settlement: Length | undefined,
): ScreededBed | null {
  if (settlement === undefined) return null;
  const loose = thickness.plus(settlement);
  return { thickness: loose, volume: inState(area.times(loose), 'loose') };
}

/** The sand in the joints as a thickness over the whole area. */
const risenThickness = ({ unit: paver, joint, rise }: Values<typeof RISING>): Length =>
  timesRatio(rise, jointShare(paver, joint));
