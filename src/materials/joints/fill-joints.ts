import { optional, quantity, ratio } from '../../input/field.js';
import { AREA_OR_NONE, BAG, DENSITY, FRACTION, OPEN_JOINT } from '../../input/ranges.js';
import type { Values } from '../../input/shape.js';
import type { AreaInput, DensityInput, LengthInput, MassInput } from '../../units/construct.js';
import { exactOf, type Length, type Mass, type Volume } from '../../units/quantity.js';
import { ratioToDecimal, ratioToNumber, ZERO_RATIO } from '../../units/ratio.js';
import { onePlus, timesRatio } from '../../units/times-ratio.js';
import { derivedStep, given, type Step } from '../../working.js';
import { unit, type UnitInput } from '../pavers/unit.js';
import { wholeUp } from '../whole-number.js';
import { jointShare } from './joint-share.js';

/** The joints of a paving, and the sand for them. */
export interface JointsInput {
  /** Area of the paving [area], 0 to 1000 ha. */
  readonly area: AreaInput;
  /** Size of a paver, without joints. */
  readonly unit: UnitInput;
  /** Joint width [length], more than 0 and at most 100 mm. */
  readonly joint: LengthInput;
  /** Dry density of the sand in the joint [density], more than 0 and at most 5 t/m3. */
  readonly density: DensityInput;
  /** Waste added to the order, a fraction 0 to 1. Default: 0. */
  readonly waste?: number | string;
  /** Mass of one bag [mass], more than 0 and at most 100 t. Default: none; no bags are counted. */
  readonly bag?: MassInput;
}

/** The fields of {@link JointsInput}. Internal. */
export const JOINTS = {
  area: quantity(AREA_OR_NONE),
  unit,
  joint: quantity(OPEN_JOINT),
  density: quantity(DENSITY),
  waste: optional(ratio(FRACTION), ZERO_RATIO),
  bag: optional(quantity(BAG)),
} as const;

type Joints = Values<typeof JOINTS>;

/** Sand that fills joints to a depth. */
export interface FilledJoints {
  /** Share of the area that is joint, 0 to 1. */
  readonly jointShare: number;
  /** Depth of the joint filled from above. */
  readonly filledDepth: Length;
  /** Volume in the joints, without waste. */
  readonly volume: Volume;
  /** Mass of dry sand, with waste. */
  readonly mass: Mass;
  /** Whole bags; null if no bag is given. */
  readonly bags: number | null;
  /** Sand left over in the bags; null if no bag is given. */
  readonly surplus: Mass | null;
}

/** Fills joints to a depth. Internal. */
export function fillJoints(joints: Joints, filledDepth: Length): FilledJoints {
  const { area, joint, density, waste, bag } = joints;
  const share = jointShare(joints.unit, joint);
  const volume = timesRatio(area.times(filledDepth), share);
  const mass = timesRatio(volume.times(density), onePlus(waste));
  const bags = bag === undefined ? null : wholeUp(exactOf(mass), exactOf(bag));
  return {
    jointShare: ratioToNumber(share),
    filledDepth,
    volume,
    mass,
    bags,
    surplus: bag === undefined || bags === null ? null : bag.times(bags).minus(mass),
  };
}

/** The working of a filling. Internal. */
export function jointSteps(joints: Joints, { filledDepth, volume, mass }: FilledJoints): Step[] {
  const share = ratioToDecimal(jointShare(joints.unit, joints.joint));
  return [
    derivedStep({
      title: 'Share of the area that is joint',
      formula: 'k = 1 - l * w / ((l + j) * (w + j))',
      given: [
        given('l', 'length of a paver', joints.unit.length),
        given('w', 'width of a paver', joints.unit.width),
        given('j', 'joint', joints.joint),
      ],
      result: given('k', 'share of joint', share),
    }),
    derivedStep({
      title: 'Sand in the joints',
      formula: 'V = A * k * h',
      given: [
        given('A', 'area', joints.area),
        given('k', 'share of joint', share),
        given('h', 'filled depth', filledDepth),
      ],
      result: given('V', 'volume', volume),
    }),
    derivedStep({
      title: 'Joint sand to order, dry',
      formula: 'M = V * d * (1 + q)',
      given: [
        given('V', 'volume', volume),
        given('d', 'dry density', joints.density),
        given('q', 'waste', ratioToDecimal(joints.waste)),
      ],
      result: given('M', 'mass', mass),
    }),
  ];
}
