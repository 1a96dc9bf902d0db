import { optional, quantity } from '../input/field.js';
import { SET_BACK, SITE_LENGTH, STEEPNESS } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import { referenceQuantity } from '../reference-quantity.js';
import { cautionsFor, type Cautioned } from '../sources/cautions.js';
import { EXCAVATION_DISTANCES } from '../sources/excavation-rules.js';
import type { AngleInput, LengthInput } from '../units/construct.js';
import { Decimal40, type Decimal } from '../units/decimal.js';
import { PI } from '../units/pi.js';
import { fromSIDecimal, type Area, type Length, type Volume } from '../units/quantity.js';
import { slopeOfAngle } from '../units/slope-angle.js';
import { NO_LENGTH } from '../units/zero.js';
// spoil in a heap is loose
import { inStateField, type StateVolume } from '../volumes/state-volume.js';
import { formulaStep, given, withWorking, type Worked } from '../working.js';

/** Loose spoil to heap beside a dig. */
export interface SpoilPileOptions {
  /** Loose volume, from `stateVolume(v, 'loose')` or `toState`. */
  readonly volume: StateVolume<'loose'>;
  /** Angle of repose, from level [angle], more than 0 and at most 89 degrees. */
  readonly reposeAngle: AngleInput;
  /** Width of the base of a ridge [length], more than 0 and at most 10 km. Default: a cone. */
  readonly ridgeWidth?: LengthInput;
  /** From the edge of the dig to the foot of the heap [length], 0 to 100 m. No default. */
  readonly setBack: LengthInput;
  /** From the edge of the dig to a fence, root zone or mark [length]. Default: not checked. */
  readonly room?: LengthInput;
}

const OPTIONS = shapeOf<SpoilPileOptions>()({
  volume: inStateField('loose', 'a heap is loose'),
  reposeAngle: quantity(STEEPNESS),
  ridgeWidth: optional(quantity(SITE_LENGTH)),
  setBack: quantity(SET_BACK),
  room: optional(quantity(SITE_LENGTH)),
});

/** The heap. */
export interface SpoilPile extends Cautioned, Worked {
  /** `cone` also for a ridge with too little spoil to fill its two ends. */
  readonly shape: 'cone' | 'ridge';
  /** From the ground to the top. */
  readonly height: Length;
  /** Across the base. */
  readonly width: Length;
  /** Along the base, both ends included. */
  readonly length: Length;
  /** Area that the heap covers. */
  readonly footprint: Area;
  /** From the edge of the dig to the far side of the heap. */
  readonly reach: Length;
  /** True if it stays within `room`; null if no room is given. */
  readonly fits: boolean | null;
  /** True if the set-back is less than the 2 ft of the excavation rules. */
  readonly isInsideSetBack: boolean;
  /** Where not to put it. */
  readonly notes: readonly string[];
}

/**
 * Size of a heap of loose spoil at its angle of repose a. Cone: `r = (3 V / (pi tan a))^(1/3)`,
 * `h = r tan a`. Ridge of base width w with half a cone at each end: `h = w / 2 tan a`,
 * `V = pi h (w / 2)^2 / 3 + w h L / 2`. Angles and roots are taken to 40 digits.
 *
 * @param options - see {@link SpoilPileOptions}
 * @returns shape, height, width, length, footprint, reach from the dig, whether it fits; cautions
 * @throws `WRONG_STATE`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source earthmoving-handbook
 * @source excavation-rules
 * @example
 * const heap = spoilPile({
 *   volume: stateVolume('8 m3', 'loose'),
 *   reposeAngle: '35 deg',
 *   setBack: '2 ft',
 * });
 * heap.height.to('m').toFixed(3) //=> '1.553'
 * heap.width.to('m').toFixed(3) //=> '4.436'
 */
export function spoilPile(options: SpoilPileOptions): SpoilPile {
  const read = readOptions(options, OPTIONS);
  const { reposeAngle: repose, ridgeWidth, setBack, room } = read;
  const { volume } = read.volume;
  const steepness = slopeOfAngle(repose).si;
  const heap =
    (ridgeWidth === undefined ? undefined : ridgeOf(volume, steepness, ridgeWidth)) ??
    coneOf(volume, steepness);
  const reach = setBack.plus(heap.width);
  const leastSetBack = referenceQuantity('length', EXCAVATION_DISTANCES.spoilSetBack);
  const found = {
    ...heap,
    reach,
    fits: room === undefined ? null : reach.compare(room) <= 0,
    isInsideSetBack: setBack.compare(leastSetBack) < 0,
    notes: NOTES,
    cautions: cautionsFor('excavation', 'trees', 'utilities'),
  };
  return withWorking(found, () => [
    formulaStep({
      title: heap.shape === 'cone' ? 'Height of the cone' : 'Height of the ridge',
      formula: heap.shape === 'cone' ? 'h = (3 * V * tan(a)^2 / pi)^(1 / 3)' : 'h = w / 2 * tan(a)',
      given: [
        heap.shape === 'cone'
          ? given('V', 'loose volume', volume)
          : given('w', 'width of the base', heap.width),
        given('a', 'angle of repose', repose),
      ],
      result: given('h', 'height', heap.height),
      source: 'earthmoving-handbook',
    }),
  ]);
}

const NOTES: readonly string[] = Object.freeze([
  'Keep spoil off root zones and locate marks, and away from fences and walls.',
  'Wet spoil slumps: its sides are flatter and it reaches farther.',
]);

interface Heap {
  readonly shape: 'cone' | 'ridge';
  readonly height: Length;
  readonly width: Length;
  readonly length: Length;
  readonly footprint: Area;
}

function coneOf(volume: Volume, steepness: Decimal): Heap {
  const cubed = new Decimal40(volume.si).times(3).div(PI.times(steepness));
  const radius = fromSIDecimal('length', Decimal40.cbrt(cubed));
  const width = radius.times(2);
  return {
    shape: 'cone',
    height: radius.times(steepness),
    width,
    length: width,
    footprint: radius.times(radius).times(PI),
  };
}

/** A ridge of a base width; undefined if there is too little spoil for its two ends. */
function ridgeOf(volume: Volume, steepness: Decimal, width: Length): Heap | undefined {
  const radius = width.dividedBy(2);
  const height = radius.times(steepness);
  const circle = radius.times(radius).times(PI);
  const rest = volume.minus(circle.times(height).dividedBy(3));
  if (rest.isNegative()) return undefined;
  const straight = rest.isZero() ? NO_LENGTH : rest.dividedBy(width.times(height).dividedBy(2));
  return {
    shape: 'ridge',
    height,
    width,
    length: straight.plus(width),
    footprint: circle.plus(straight.times(width)),
  };
}
