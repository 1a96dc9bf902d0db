// Sand is ordered by its loose volume and measured by its compacted one; `volumes` defines the states.
import { inState, type StateVolume } from '../volumes/state-volume.js';
import { makeReader, type Reader } from '../input/reader.js';
import type { AreaInput, LengthInput } from '../units/construct.js';
import { exactOf, type Area, type Length, type Mass } from '../units/quantity.js';
import { divideRatios, ratioToDecimal, type Ratio } from '../units/ratio.js';
import { given, withWorking, type Step, type StepInput, type Worked } from '../working.js';
import { onePlus, overRatio, readRatio, timesRatio } from './exact.js';
import { jointShare } from './joint-share.js';
import { AREA, FRACTION, LAYER_OF_SOME, NO_LENGTH, OPEN_JOINT, SHORT } from './limits.js';
import { readUnit, type UnitInput } from './read-unit.js';
import { readDryDensity, type DryDensityInput } from './stone-density.js';

/** Sand that rises from the bed into the joints. */
export interface RisingSandInput {
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  /** How far it rises from below. */
  readonly rise: LengthInput;
}

/** Sand for a bed. */
export interface BeddingSand extends Worked {
  /** In place under the units, what rises into the joints included, without waste. */
  readonly compacted: StateVolume<'compacted'>;
  /** As screeded: thickness and volume before the plate. Null where no settlement is given. */
  readonly screeded: { readonly thickness: Length; readonly volume: StateVolume<'loose'> } | null;
  /** Dry and loose, with waste. */
  readonly dryLoose: StateVolume<'loose'>;
  /** In the truck, damp and bulked, with waste: what to order by volume. */
  readonly delivered: StateVolume<'loose'>;
  /** Dry sand, with waste. */
  readonly dryMass: Mass;
  /** On the weighbridge: dry sand and its water, with waste: what to order by mass. */
  readonly mass: Mass;
}

/**
 * Sand for the bed under the units: `Vc = A t`, `dry = Vc (1 + waste) x dry density in place`,
 * `dry loose = Vc (1 + waste) / (compacted per loose)`, `delivered = dry loose (1 + bulking)`,
 * `mass = dry (1 + moisture)`. Damp sand takes more room than dry, so an order by volume without
 * bulking runs short; an order by mass does not.
 *
 * @param options.area - plan area of the bed [area]
 * @param options.thickness - compacted, under the units [length]
 * @param options.compactedDryDensity - in place, dry [density]; two of this and the next two
 * @param options.looseDryDensity - dry, loose [density]
 * @param options.compactedPerLoose - compacted over dry loose volume, 0.5 to 1; without it, and
 *   without one of the densities, that of the screeded bed: `t / (t + settlement)`
 * @param options.settlement - how far the bed goes down under the plate [length]: measure it on a
 *   trial unit
 * @param options.moisture - water over dry mass, a fraction 0 to 1, default 0
 * @param options.bulking - extra volume of the damp sand over dry loose, a fraction 0 to 1, default 0;
 *   see `sandBulking`
 * @param options.waste - a fraction 0 to 1 on top, default 0
 * @param options.rising - sand that rises into the joints from below: `unit`, `joint`, `rise`
 * @returns compacted volume; screeded thickness and volume; dry loose and delivered volume; dry and
 *   delivered mass
 * @throws `REQUIRED` or `CONFLICTING_FIELDS` unless the densities are known, `RATIO_OUT_OF_RANGE`,
 *   `OUT_OF_RANGE`, `NEGATIVE`, `NOT_POSITIVE` and the reading codes
 * @source derived
 * @source sand-bulking-course
 * @example
 * const sand = beddingSand({
 *   area: '60 m2',
 *   thickness: '25 mm',
 *   compactedDryDensity: '1700 kg/m3',
 *   looseDryDensity: '1500 kg/m3',
 *   moisture: 0.05,
 *   bulking: 0.25,
 *   settlement: '6 mm',
 * });
 * sand.compacted.to('m3').toString() //=> '1.5'
 * sand.screeded?.thickness.to('mm').toString() //=> '31'
 * sand.delivered.to('m3').toString() //=> '2.125'
 * sand.mass.to('t').toString() //=> '2.6775'
 */
export function beddingSand(
  options: DryDensityInput & {
    readonly area: AreaInput;
    readonly thickness: LengthInput;
    readonly settlement?: LengthInput;
    readonly moisture?: number | string;
    readonly bulking?: number | string;
    readonly waste?: number | string;
    readonly rising?: RisingSandInput;
  },
): BeddingSand {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const area = reader.quantity('area', fields['area'], ['area'], AREA);
  const thickness = reader.quantity('length', fields['thickness'], ['thickness'], LAYER_OF_SOME);
  const settlement =
    fields['settlement'] === undefined
      ? undefined
      : reader.quantity('length', fields['settlement'], ['settlement'], SHORT);
  const density = readDryDensity(reader, fields, screededRatio(thickness, settlement));
  const moisture = readRatio(reader, fields['moisture'] ?? 0, ['moisture'], FRACTION);
  const bulking = readRatio(reader, fields['bulking'] ?? 0, ['bulking'], FRACTION);
  const waste = readRatio(reader, fields['waste'] ?? 0, ['waste'], FRACTION);
  const rising = fields['rising'] === undefined ? null : readRising(reader, fields['rising']);
  reader.finish();

  const rise = rising === null ? NO_LENGTH : risenThickness(rising);
  const compacted = area.times(thickness.plus(rise));
  const withWaste = timesRatio(compacted, onePlus(waste));
  const dryLoose = overRatio(withWaste, density.compactedPerLoose);
  const delivered = timesRatio(dryLoose, onePlus(bulking));
  const dryMass = withWaste.times(density.compacted);
  const mass = timesRatio(dryMass, onePlus(moisture));
  const sand = {
    compacted: inState(compacted, 'compacted'),
    screeded: screededBed(area, thickness, settlement),
    dryLoose: inState(dryLoose, 'loose'),
    delivered: inState(delivered, 'loose'),
    dryMass,
    mass,
  };
  const inPlace = given('Vc', 'compacted volume', compacted);
  const allowance = given('q', 'waste', ratioToDecimal(waste));
  return withWorking(sand, () => [
    step('Compacted volume of the bed', 'Vc = A (t + u)', inPlace, [
      given('A', 'area', area),
      given('t', 'compacted thickness', thickness),
      given('u', 'what rises into the joints, spread over the area', rise),
    ]),
    step(
      'Delivered volume, damp',
      'Vd = Vc (1 + q) (1 + b) / r',
      given('Vd', 'delivered', delivered),
      [
        inPlace,
        allowance,
        given('b', 'bulking', ratioToDecimal(bulking)),
        given('r', 'compacted per loose', ratioToDecimal(density.compactedPerLoose)),
      ],
      'sand-bulking-course',
    ),
    step('Delivered mass', 'M = Vc (1 + q) d (1 + w)', given('M', 'delivered mass', mass), [
      inPlace,
      allowance,
      given('d', 'dry density in place', density.compacted),
      given('w', 'moisture of dry mass', ratioToDecimal(moisture)),
    ]),
  ]);
}

function step(
  title: string,
  formula: string,
  result: StepInput,
  inputs: readonly StepInput[],
  source: Step['source'] = 'derived',
): Step {
  return { title, formula, given: inputs, result, source };
}

/** Compacted over screeded thickness, where a settlement was measured. */
function screededRatio(thickness: Length, settlement: Length | undefined): Ratio | undefined {
  if (settlement === undefined || settlement.isNegative()) return undefined;
  if (thickness.isZero() || thickness.isNegative()) return undefined;
  return divideRatios(exactOf(thickness), exactOf(thickness.plus(settlement)));
}

function screededBed(area: Area, thickness: Length, settlement: Length | undefined) {
  if (settlement === undefined) return null;
  const loose = thickness.plus(settlement);
  return { thickness: loose, volume: inState(area.times(loose), 'loose') };
}

function readRising(reader: Reader, value: unknown) {
  const fields = reader.object(value, ['rising']);
  return {
    unit: readUnit(reader, fields['unit'], ['rising', 'unit']),
    joint: reader.quantity('length', fields['joint'], ['rising', 'joint'], OPEN_JOINT),
    rise: reader.quantity('length', fields['rise'], ['rising', 'rise'], SHORT),
  };
}

/** The sand in the joints as a thickness over the whole area. */
function risenThickness({ unit, joint, rise }: ReturnType<typeof readRising>): Length {
  return timesRatio(rise, jointShare(unit, joint));
}
