import type { FieldPath } from '../errors.js';
import { makeReader, type Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length, type Slope } from '../units/quantity.js';
import { divideRatios } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { DEPTH_OR_NONE, LENGTH, LENGTH_OR_NONE } from '../site/limits.js';

/** Loaded radius of each wheel: from the middle of the hub down to the ground. */
export interface LoadedRadii {
  readonly frontLeft: LengthInput;
  readonly frontRight: LengthInput;
  readonly rearLeft: LengthInput;
  readonly rearRight: LengthInput;
}

/** Where a cutting edge stands because of tyres and wear. Up is positive. */
export interface CuttingEdge extends Worked {
  /** Middle of the edge against where it stands on good tyres and an unworn edge. */
  readonly middle: Length;
  readonly left: Length;
  readonly right: Length;
  /** Left end less right end. */
  readonly across: Length;
  /** Tilt of the machine: rise toward the left over run. */
  readonly crossTilt: Slope;
  readonly note: string;
}

/**
 * What soft tyres and a worn edge do to the height of a bucket or blade that reaches out ahead of the
 * front axle: `middle = f + (f - r) reach / wheelbase` with f and r the mean change of loaded radius
 * in front and behind, `tilt = (l - g) / track` with l and g that on the left and on the right. A
 * worn edge stands higher by what it has lost.
 *
 * @param options.loadedRadius - of each wheel as it stands [length]: hub to ground
 * @param options.fullRadius - the same with the right pressure, on all wheels [length]
 * @param options.wheelbase - front axle to rear axle [length]
 * @param options.track - left wheel to right wheel [length]
 * @param options.reach - front axle to the edge, ahead [length]
 * @param options.edgeWidth - of the bucket or blade [length]
 * @param options.wear - lost from the edge at its `left` and `right` end [length], default none
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
export function cuttingEdge(options: {
  readonly loadedRadius: LoadedRadii;
  readonly fullRadius: LengthInput;
  readonly wheelbase: LengthInput;
  readonly track: LengthInput;
  readonly reach: LengthInput;
  readonly edgeWidth: LengthInput;
  readonly wear?: { readonly left: LengthInput; readonly right: LengthInput };
}): CuttingEdge {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const full = reader.quantity('length', fields['fullRadius'], ['fullRadius'], LENGTH);
  const wheels = readWheels(reader, fields['loadedRadius'], ['loadedRadius'], full);
  const read = (name: 'wheelbase' | 'track' | 'edgeWidth') =>
    reader.quantity('length', fields[name], [name], LENGTH);
  const [wheelbase, track, edgeWidth] = [read('wheelbase'), read('track'), read('edgeWidth')];
  const reach = reader.quantity('length', fields['reach'], ['reach'], LENGTH_OR_NONE);
  const wear = readWear(reader, fields['wear'], ['wear']);
  reader.finish();

  const mean = (a: Length, b: Length) => a.plus(b).dividedBy(2);
  const front = mean(wheels.frontLeft, wheels.frontRight);
  const rear = mean(wheels.rearLeft, wheels.rearRight);
  const leverage = fromSI('slope', divideRatios(exactOf(front.minus(rear)), exactOf(wheelbase)));
  const pitched = front.plus(reach.times(leverage));
  const roll = mean(wheels.frontLeft, wheels.rearLeft).minus(
    mean(wheels.frontRight, wheels.rearRight),
  );
  const crossTilt = fromSI('slope', divideRatios(exactOf(roll), exactOf(track)));
  const half = edgeWidth.dividedBy(2).times(crossTilt);
  const left = pitched.plus(half).plus(wear.left);
  const right = pitched.minus(half).plus(wear.right);
  const found = {
    middle: mean(left, right),
    left,
    right,
    across: left.minus(right),
    crossTilt,
    note: 'Measure both ends of the edge off a level slab before cutting to grade; load in the bucket and soft ground change it again.',
  };
  return withWorking(found, () => [
    {
      title: 'Height of the edge on these tyres',
      formula: 'm = f + (f - r) q / b, before wear',
      given: [
        given('f', 'front wheels, mean change', front),
        given('r', 'rear wheels, mean change', rear),
        given('q', 'reach ahead of the front axle', reach),
        given('b', 'wheelbase', wheelbase),
      ],
      result: given('m', 'middle of the edge, up positive', pitched),
      source: 'derived',
    },
    {
      title: 'Tilt of the edge',
      formula: 'k = (l - g) / t',
      given: [given('l - g', 'left less right', roll), given('t', 'track', track)],
      result: given('k', 'tilt, up to the left', crossTilt),
      source: 'derived',
    },
  ]);
}

const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;

/** Change of each loaded radius against the full one: negative for a soft tyre. */
function readWheels(reader: Reader, value: unknown, path: FieldPath, full: Length) {
  const fields = reader.object(value, path);
  const changes = WHEELS.map((name) =>
    reader.quantity('length', fields[name], [...path, name], LENGTH).minus(full),
  );
  const [frontLeft = NONE, frontRight = NONE, rearLeft = NONE, rearRight = NONE] = changes;
  return { frontLeft, frontRight, rearLeft, rearRight };
}

const NONE = length(0, 'm');

function readWear(reader: Reader, value: unknown, path: FieldPath) {
  if (value === undefined) return { left: NONE, right: NONE };
  const fields = reader.object(value, path);
  return {
    left: reader.quantity('length', fields['left'], [...path, 'left'], DEPTH_OR_NONE),
    right: reader.quantity('length', fields['right'], [...path, 'right'], DEPTH_OR_NONE),
  };
}
