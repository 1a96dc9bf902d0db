import { makeReader, type Reader } from '../input/reader.js';
import { referenceQuantity } from '../reference-quantity.js';
import { cautionsFor, type Caution } from '../sources/cautions.js';
import { EXCAVATION_DISTANCES } from '../sources/excavation-rules.js';
import { length, type AngleInput, type LengthInput } from '../units/construct.js';
import { Decimal40, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Area, type Length, type Volume } from '../units/quantity.js';
import { slopeOfAngle } from '../units/slope-angle.js';
// spoil on a heap is loose
import { requireState, type StateVolume } from '../volumes/state-volume.js';
import { given, withWorking, type Worked } from '../working.js';
import { PI } from '../units/pi.js';
import { LENGTH, LENGTH_OR_NONE, STEEPNESS } from '../site/limits.js';

/** The heap that spoil makes. */
export interface SpoilPile extends Worked {
  /** `cone` also where a ridge was asked for and the spoil makes no more than its two ends. */
  readonly shape: 'cone' | 'ridge';
  readonly height: Length;
  /** Across the base. */
  readonly width: Length;
  /** Along the base, both ends included. */
  readonly length: Length;
  readonly footprint: Area;
  /** From the edge of the dig to the far side of the heap. */
  readonly reach: Length;
  /** Whether it keeps within `room`; null where no room was given. */
  readonly fits: boolean | null;
  /** True where the set-back is less than the 2 ft of the excavation rules. */
  readonly tooNear: boolean;
  readonly notes: readonly string[];
  readonly cautions: readonly Caution[];
}

/**
 * Size of a heap of loose spoil at its angle of repose a. Cone: `r = (3 V / (pi tan a))^(1/3)`,
 * `h = r tan a`. Ridge of base width w with half a cone at each end: `h = w / 2 tan a`,
 * `V = pi h (w / 2)^2 / 3 + w h L / 2`. Angles and roots are taken to 40 digits.
 *
 * @param options.volume - loose volume, `stateVolume(v, 'loose')`
 * @param options.reposeAngle - angle of the side to the level, up to 89 degrees [angle]
 * @param options.ridgeWidth - width of the base of a ridge [length]; without it the heap is a cone
 * @param options.setBack - from the edge of the dig to the foot of the heap [length]; no default
 * @param options.room - what there is from the edge of the dig to a fence, root zone or mark [length]
 * @returns shape, height, width, length, footprint, reach from the dig, whether it fits; cautions
 * @throws `STATE_MISSING`, `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE`, `REQUIRED` and the reading codes
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
export function spoilPile(options: {
  readonly volume: StateVolume<'loose'>;
  readonly reposeAngle: AngleInput;
  readonly ridgeWidth?: LengthInput;
  readonly setBack: LengthInput;
  readonly room?: LengthInput;
}): SpoilPile {
  const reader = makeReader();
  const fields = reader.object(options, []);
  requireState(reader, fields['volume'], {
    state: 'loose',
    path: ['volume'],
    words: "a heap is loose: give stateVolume(v, 'loose')",
  });
  const repose = reader.quantity('angle', fields['reposeAngle'], ['reposeAngle'], STEEPNESS);
  const setBack = reader.quantity('length', fields['setBack'], ['setBack'], LENGTH_OR_NONE);
  const ridgeWidth = readOptional(reader, fields, 'ridgeWidth');
  const room = readOptional(reader, fields, 'room');
  reader.finish();

  const volume = options.volume.volume;
  const steepness = slopeOfAngle(repose).si;
  const heap =
    (ridgeWidth === undefined ? undefined : ridgeOf(volume, steepness, ridgeWidth)) ??
    coneOf(volume, steepness);
  const reach = setBack.plus(heap.width);
  const found = {
    ...heap,
    reach,
    fits: room === undefined ? null : reach.compare(room) <= 0,
    tooNear: setBack.compare(referenceQuantity('length', EXCAVATION_DISTANCES.spoilSetBack)) < 0,
    notes: NOTES,
    cautions: cautionsFor('excavation', 'trees', 'utilities'),
  };
  return withWorking(found, () => [
    {
      title: heap.shape === 'cone' ? 'Height of the cone' : 'Height of the ridge',
      formula: heap.shape === 'cone' ? 'h = (3 V tan(a)^2 / pi)^(1/3)' : 'h = w / 2 tan(a)',
      given: [
        given('V', 'loose volume', volume),
        given('a', 'angle of repose', repose),
        given('w', 'width of the base', heap.width),
      ],
      result: given('h', 'height', heap.height),
      source: 'earthmoving-handbook',
    },
  ]);
}

const NOTES: readonly string[] = Object.freeze([
  'Not on root zones, not on locate marks, not against a fence or wall.',
  'Wet spoil slumps: it stands flatter and reaches further.',
]);

function readOptional(
  reader: Reader,
  fields: Readonly<Record<string, unknown>>,
  name: 'ridgeWidth' | 'room',
): Length | undefined {
  if (fields[name] === undefined) return undefined;
  return reader.quantity('length', fields[name], [name], LENGTH);
}

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

/** A ridge of a base width; undefined where the spoil does not fill the cone of its ends. */
function ridgeOf(volume: Volume, steepness: Decimal, width: Length): Heap | undefined {
  const radius = width.dividedBy(2);
  const height = radius.times(steepness);
  const circle = radius.times(radius).times(PI);
  const rest = volume.minus(circle.times(height).dividedBy(3));
  if (rest.isNegative()) return undefined;
  const straight = rest.isZero()
    ? length(0, 'm')
    : rest.dividedBy(width.times(height).dividedBy(2));
  return {
    shape: 'ridge',
    height,
    width,
    length: straight.plus(width),
    footprint: circle.plus(straight.times(width)),
  };
}
