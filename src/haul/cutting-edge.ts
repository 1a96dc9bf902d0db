import { object, optional, quantity } from '../input/field.js';
import { MACHINE_PART, MACHINE_PART_OR_NONE, SMALL } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { NO_LENGTH } from '../units/zero.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';

/** Loaded radius of each wheel: from the middle of the hub down to the ground. */
export interface LoadedRadii {
  /** Front left [length], more than 0 and at most 50 m. */
  readonly frontLeft: LengthInput;
  /** Front right [length], more than 0 and at most 50 m. */
  readonly frontRight: LengthInput;
  /** Rear left [length], more than 0 and at most 50 m. */
  readonly rearLeft: LengthInput;
  /** Rear right [length], more than 0 and at most 50 m. */
  readonly rearRight: LengthInput;
}

/** Wear at both ends of a cutting edge. */
export interface EdgeWear {
  /** Lost at the left end [length], 0 to 1 m. */
  readonly left: LengthInput;
  /** Lost at the right end [length], 0 to 1 m. */
  readonly right: LengthInput;
}

/** A machine, its tyres and its cutting edge. */
export interface CuttingEdgeOptions {
  /** Loaded radius of each wheel as it is now. */
  readonly loadedRadius: LoadedRadii;
  /** Loaded radius at the right pressure, the same for all wheels [length]. */
  readonly fullRadius: LengthInput;
  /** Front axle to rear axle [length], more than 0 and at most 50 m. */
  readonly wheelbase: LengthInput;
  /** Left wheel to right wheel [length], more than 0 and at most 50 m. */
  readonly track: LengthInput;
  /** Front axle to the edge, ahead of it [length], 0 to 50 m. */
  readonly reach: LengthInput;
  /** Width of the bucket or blade [length], more than 0 and at most 50 m. */
  readonly edgeWidth: LengthInput;
  /** Wear of the edge. Default: none. */
  readonly wear?: EdgeWear;
}

const PART = quantity(MACHINE_PART);

const RADII = shapeOf<LoadedRadii>()({
  frontLeft: PART,
  frontRight: PART,
  rearLeft: PART,
  rearRight: PART,
});

const WEAR = shapeOf<EdgeWear>()({ left: quantity(SMALL), right: quantity(SMALL) });

const OPTIONS = shapeOf<CuttingEdgeOptions>()({
  loadedRadius: object(RADII),
  fullRadius: PART,
  wheelbase: PART,
  track: PART,
  reach: quantity(MACHINE_PART_OR_NONE),
  edgeWidth: PART,
  wear: optional(object(WEAR), { left: NO_LENGTH, right: NO_LENGTH }),
});

/** How tyres and wear move a cutting edge. Up is positive. */
export interface CuttingEdge extends Worked {
  /** Change of height of the middle, compared with good tyres and an unworn edge. */
  readonly middle: Length;
  /** Change of height of the left end. */
  readonly left: Length;
  /** Change of height of the right end. */
  readonly right: Length;
  /** Left end less right end. */
  readonly across: Length;
  /** Tilt of the machine: rise toward the left over run. */
  readonly crossTilt: Slope;
  /** What to measure before you cut. */
  readonly note: string;
}

/**
 * What soft tyres and a worn edge do to the height of a bucket or blade that reaches out ahead of
 * the front axle: `middle = f + (f - r) reach / wheelbase` with f and r the mean change of loaded
 * radius in front and behind, `tilt = (l - g) / track` with l and g that on the left and on the
 * right. A worn edge is higher by its wear.
 *
 * @param options - see {@link CuttingEdgeOptions}
 * @returns change of height of the edge in the middle and at both ends, tilt [up positive]
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
 * @source derived
 * @example
 * const edge = cuttingEdge({
 *   loadedRadius: { frontLeft: '380 mm', frontRight: '380 mm', rearLeft: '400 mm', rearRight: '400 mm' },
 *   fullRadius: '400 mm',
 *   wheelbase: '1 m',
 *   track: '1.2 m',
 *   reach: '0.85 m',
 *   edgeWidth: '1.8 m',
 * });
 * edge.middle.to('mm').toString() //=> '-37'
 */
export function cuttingEdge(options: CuttingEdgeOptions): CuttingEdge {
  const read = readOptions(options, OPTIONS);
  const { loadedRadius: now, fullRadius: full, wheelbase, track, reach, edgeWidth, wear } = read;
  const front = mean(now.frontLeft, now.frontRight).minus(full);
  const rear = mean(now.rearLeft, now.rearRight).minus(full);
  const pitched = front.plus(reach.times(slopeOf(front.minus(rear), wheelbase)));
  const leftWheels = mean(now.frontLeft, now.rearLeft);
  const rightWheels = mean(now.frontRight, now.rearRight);
  const crossTilt = slopeOf(leftWheels.minus(rightWheels), track);
  const half = edgeWidth.dividedBy(2).times(crossTilt);
  const left = pitched.plus(half).plus(wear.left);
  const right = pitched.minus(half).plus(wear.right);
  const found = {
    middle: mean(left, right),
    left,
    right,
    across: left.minus(right),
    crossTilt,
    note: 'Measure both ends of the edge above a level slab before you cut to grade. A loaded bucket and soft ground change it again.',
  };
  return withWorking(found, () => [
    derivedStep({
      title: 'Height of the edge on these tyres, before wear',
      formula: 'm = f + (f - r) * q / b',
      given: [
        given('f', 'front wheels, mean change', front),
        given('r', 'rear wheels, mean change', rear),
        given('q', 'reach ahead of the front axle', reach),
        given('b', 'wheelbase', wheelbase),
      ],
      result: given('m', 'middle of the edge, up positive', pitched),
    }),
    derivedStep({
      title: 'Tilt of the edge',
      formula: 'k = (l - g) / t',
      given: [
        given('l', 'left wheels, mean radius', leftWheels),
        given('g', 'right wheels, mean radius', rightWheels),
        given('t', 'track', track),
      ],
      result: given('k', 'tilt, up to the left', crossTilt),
    }),
  ]);
}

const mean = (a: Length, b: Length): Length => a.plus(b).dividedBy(2);

const slopeOf = (rise: Length, run: Length): Slope =>
  fromSI('slope', divideRatios(exactOf(rise), exactOf(run)));
