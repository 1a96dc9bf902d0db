import { makeReader, type Reader } from '../input/reader.js';
import type { AreaInput, DensityInput, LengthInput, MassInput } from '../units/construct.js';
import type { Decimal } from '../units/decimal.js';
import {
  exactOf,
  type Area,
  type Density,
  type Length,
  type Mass,
  type Volume,
} from '../units/quantity.js';
import { ratioToDecimal, type Ratio } from '../units/ratio.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { onePlus, readRatio, timesRatio } from './exact.js';
import { jointShare } from './joint-share.js';
import {
  AREA,
  BAG,
  DENSITY,
  FRACTION,
  LAYER_OF_SOME,
  NO_LENGTH,
  OPEN_JOINT,
  SHORT,
} from './limits.js';
import { readUnit, type Unit, type UnitInput } from './read-unit.js';
import { wholeUp } from './whole-number.js';

/** Sand for the joints. */
export interface JointSand extends Worked {
  /** Share of the area that is joint. */
  readonly jointShare: Decimal;
  /** Depth of joint that is filled from above. */
  readonly filledDepth: Length;
  /** In the joints, without waste. */
  readonly volume: Volume;
  /** Dry sand, with waste. */
  readonly mass: Mass;
  /** Whole bags; null where no bag is given. */
  readonly bags: number | null;
  /** What the bags hold beyond the mass; null where no bag is given. */
  readonly leftOver: Mass | null;
}

/**
 * Sand to fill the joints: the share of joint is `1 - l w / ((l + j) (w + j))`, where the corner that
 * two joints have in common counts once; `V = A x share x (depth - recess - rise)`,
 * `M = V x density x (1 + waste)`. A joint one millimetre wider than three takes a third more.
 * Chamfered and tumbled units take more than these sums say; bound sands have rules of their makers.
 *
 * @param options.area - of the paving [area]
 * @param options.unit - its own size without joints: `length` and `width` [length]
 * @param options.joint - joint width [length], more than 0, up to 100 mm
 * @param options.depth - depth of the joint: thickness of the unit [length]
 * @param options.recess - from the top of the unit down to the fill [length], default 0
 * @param options.riseFromBed - filled from below by the bed [length], default 0; see `beddingSand`
 * @param options.density - of the sand in the joint, dry [density]
 * @param options.waste - a fraction 0 to 1 on top, default 0
 * @param options.bag - what one bag holds [mass], if bags are wanted
 * @returns share of joint, filled depth, volume, mass, whole bags and what is left over
 * @throws `OUT_OF_RANGE` where recess and rise leave nothing to fill, `NOT_POSITIVE`, `NEGATIVE`,
 *   `CAPACITY_EXCEEDED` and the reading codes
 * @source derived
 * @example
 * const sand = jointSand({
 *   area: '60 m2',
 *   unit: { length: '200 mm', width: '100 mm' },
 *   joint: '3 mm',
 *   depth: '60 mm',
 *   recess: '3 mm',
 *   density: '1600 kg/m3',
 *   waste: 0.1,
 *   bag: '22.7 kg',
 * });
 * sand.volume.to('m3').toFixed(4) //=> '0.1487'
 * sand.mass.to('kg').toFixed(1) //=> '261.7'
 * sand.bags //=> 12
 */
export function jointSand(options: {
  readonly area: AreaInput;
  readonly unit: UnitInput;
  readonly joint: LengthInput;
  readonly depth: LengthInput;
  readonly recess?: LengthInput;
  readonly riseFromBed?: LengthInput;
  readonly density: DensityInput;
  readonly waste?: number | string;
  readonly bag?: MassInput;
}): JointSand {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const joints = readJoints(reader, fields);
  const depth = reader.quantity('length', fields['depth'], ['depth'], LAYER_OF_SOME);
  const recess = reader.quantity('length', fields['recess'] ?? NO_LENGTH, ['recess'], SHORT);
  const rise = reader.quantity(
    'length',
    fields['riseFromBed'] ?? NO_LENGTH,
    ['riseFromBed'],
    SHORT,
  );
  const filled = depth.minus(recess).minus(rise);
  if (!depth.isZero() && (filled.isZero() || filled.isNegative())) {
    reader.fail('OUT_OF_RANGE', ['recess'], 'recess and rise leave no joint to fill');
  }
  reader.finish();
  return withWorking(fillJoints(joints, filled), () => jointSteps(joints, filled));
}

/** What joints are filled with, and how much of it there is. Internal. */
export interface Joints {
  readonly area: Area;
  readonly unit: Unit;
  readonly joint: Length;
  readonly density: Density;
  readonly waste: Ratio;
  readonly bag: Mass | null;
}

/** Reads what filling and topping up have in common. Internal. */
export function readJoints(reader: Reader, fields: Readonly<Record<string, unknown>>): Joints {
  return {
    area: reader.quantity('area', fields['area'], ['area'], AREA),
    unit: readUnit(reader, fields['unit']),
    joint: reader.quantity('length', fields['joint'], ['joint'], OPEN_JOINT),
    density: reader.quantity('density', fields['density'], ['density'], DENSITY),
    waste: readRatio(reader, fields['waste'] ?? 0, ['waste'], FRACTION),
    bag: fields['bag'] === undefined ? null : reader.quantity('mass', fields['bag'], ['bag'], BAG),
  };
}

/** Fills joints to a depth. Internal. */
export function fillJoints(joints: Joints, filledDepth: Length) {
  const { area, unit, joint, density, waste, bag } = joints;
  const share = jointShare(unit, joint);
  const volume = timesRatio(area.times(filledDepth), share);
  const mass = timesRatio(volume.times(density), onePlus(waste));
  const bags = bag === null ? null : wholeUp(exactOf(mass), exactOf(bag));
  return {
    jointShare: ratioToDecimal(share),
    filledDepth,
    volume,
    mass,
    bags,
    leftOver: bag === null || bags === null ? null : bag.times(bags).minus(mass),
  };
}

/** The working of a filling. Internal. */
export function jointSteps(joints: Joints, filledDepth: Length): Step[] {
  const { jointShare: share, volume, mass } = fillJoints(joints, filledDepth);
  return [
    {
      title: 'Share of the area that is joint',
      formula: 'k = 1 - l w / ((l + j) (w + j))',
      given: [
        given('l', 'length of a unit', joints.unit.length),
        given('w', 'width of a unit', joints.unit.width),
        given('j', 'joint', joints.joint),
      ],
      result: given('k', 'share of joint', share),
      source: 'derived',
    },
    {
      title: 'Sand in the joints',
      formula: 'V = A k h',
      given: [
        given('A', 'area', joints.area),
        given('k', 'share of joint', share),
        given('h', 'filled depth', filledDepth),
      ],
      result: given('V', 'volume', volume),
      source: 'derived',
    },
    {
      title: 'Joint sand to order, dry',
      formula: 'M = V d (1 + q)',
      given: [
        given('V', 'volume', volume),
        given('d', 'dry density', joints.density),
        given('q', 'waste', ratioToDecimal(joints.waste)),
      ],
      result: given('M', 'mass', mass),
      source: 'derived',
    },
  ];
}
