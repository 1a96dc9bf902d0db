import { optional, quantity } from '../input/field.js';
import { SITE_LENGTH, SITE_LENGTH_OR_NONE, TOLERANCE } from '../input/ranges.js';
import { asWritten } from '../input/read-amount.js';
import { readOptions, shapeOf, type Check, type Values } from '../input/shape.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { angle, type LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { fromSIDecimal, type Angle, type Area, type Length } from '../units/quantity.js';
import { NO_AREA } from '../units/zero.js';
import {
  derivedStep,
  formulaStep,
  given,
  type Step,
  withWorking,
  type Worked,
} from '../working.js';

/** An arc, given by its chord and middle ordinate. */
export interface ArcFromChordOptions {
  /** Length of the chord, straight across the arc [length], more than 0 and at most 10 km. */
  readonly chord: LengthInput;
  /**
   * Distance from the middle of the chord square to the arc [length], 0 to 10 km. 0 is a straight
   * edge.
   */
  readonly middleOrdinate: LengthInput;
  /** Standard uncertainty of the middle ordinate [length], 0 to 10 m. Default: none. */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<ArcFromChordOptions>()({
  chord: quantity(SITE_LENGTH),
  middleOrdinate: quantity(SITE_LENGTH_OR_NONE),
  uncertainty: optional(quantity(TOLERANCE)),
});

/** An arc from its chord and middle ordinate. */
export interface ArcFromChord extends Worked {
  /** True if the middle ordinate is 0, so the edge is straight and has no radius. */
  readonly isStraight: boolean;
  /** Radius [length]; null for a straight edge. */
  readonly radius: Length | null;
  /** Angle of the arc at its centre [angle], 0 for a straight edge. */
  readonly centralAngle: Angle;
  /** Length along the arc [length]. */
  readonly arcLength: Length;
  /** Area between the chord and the arc [area]. */
  readonly segmentArea: Area;
  /** Change of the radius per unit of the middle ordinate; null for a straight edge. */
  readonly radiusPerOrdinate: number | null;
  /** Standard uncertainty of the radius [length]; null for a straight edge, or without that of the ordinate. */
  readonly radiusUncertainty: Length | null;
  /** True if the arc turns too little for a reliable radius. */
  readonly isFlat: boolean;
  /** True if the arc is more than half a circle. */
  readonly isMoreThanHalf: boolean;
  /** How to measure or set out this arc. */
  readonly note: string;
}

/**
 *
 * Radius and length of an arc from its chord and middle ordinate: `R = C^2 / (8 M) + M / 2`,
 * central angle `4 atan(2 M / C)`, arc `R` times the angle, area `(R^2 angle - C (R - M)) / 2`. The
 * radius is exact, angle and arc are good to 40 digits. A middle ordinate of 0 is a straight edge,
 * not an infinite radius.
 *
 * The flatter the arc, the less accurate the radius: `dR / dM = 1 / 2 - C^2 / (8 M^2)`.
 *
 * @param options - see {@link ArcFromChordOptions}
 * @returns radius [length, null if straight], central angle, arc length, area of the segment, change of
 *   the radius per unit of ordinate, flags
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source curve-stakeout
 * @example
 * const arc = arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m' });
 * arc.radius?.to('m').toString() //=> '4.25'
 * arc.arcLength.to('m').toFixed(4) //=> '4.1646'
 * arc.radiusPerOrdinate //=> -7.5
 * arcFromChord({ chord: '4 m', middleOrdinate: '0 m' }).radius //=> null
 */
export function arcFromChord(options: ArcFromChordOptions): ArcFromChord {
  const measured = readOptions(options, OPTIONS, checkOrdinate);
  return measured.middleOrdinate.isZero() ? straightEdge(measured) : bentEdge(measured);
}

/** A middle ordinate this many times smaller than its chord is not a measurement. */
const FLATTEST = 1e20;

const checkOrdinate: Check<typeof OPTIONS> = (reader, { chord, middleOrdinate }, path, raw) => {
  if (chord === undefined || middleOrdinate === undefined || middleOrdinate.isZero()) return;
  if (chord.dividedBy(middleOrdinate).lte(FLATTEST)) return;
  const message = `${asWritten(raw['middleOrdinate'], middleOrdinate)} is too small to measure. Write 0 for a straight edge`;
  reader.fail('OUT_OF_RANGE', [...path, 'middleOrdinate'], message);
};

type Measured = Values<typeof OPTIONS>;

function straightEdge({ chord, middleOrdinate }: Measured): ArcFromChord {
  return withWorking(
    {
      isStraight: true,
      radius: null,
      centralAngle: angleOfArc(chord, middleOrdinate),
      arcLength: chord,
      segmentArea: NO_AREA,
      radiusPerOrdinate: null,
      radiusUncertainty: null,
      isFlat: true,
      isMoreThanHalf: false,
      note: NOTES.straight,
    },
    () => [],
  );
}

function bentEdge(measured: Measured): ArcFromChord {
  const { chord, middleOrdinate: ordinate, uncertainty } = measured;
  const radius = radiusOf(chord, ordinate);
  const centralAngle = angleOfArc(chord, ordinate);
  const arcLength = radius.times(centralAngle.si);
  const sector = radius.times(arcLength);
  const segmentArea = sector.minus(chord.times(radius.minus(ordinate))).dividedBy(2);
  const steepness = chord.dividedBy(ordinate).pow(2).div(-8).plus(0.5);
  const isFlat = centralAngle.compare(FLAT_TURN) < 0;
  return withWorking(
    {
      isStraight: false,
      radius,
      centralAngle,
      arcLength,
      segmentArea,
      radiusPerOrdinate: steepness.toNumber(),
      radiusUncertainty: uncertainty?.times(steepness.abs()) ?? null,
      isFlat,
      isMoreThanHalf: ordinate.times(2).compare(chord) > 0,
      note: isFlat ? NOTES.flat : NOTES.bent,
    },
    () => showWorking(measured, { radius, centralAngle, arcLength }),
  );
}

/** An arc with a smaller turn is called flat. Internal. */
export const FLAT_TURN = angle(CURVE_PRACTICE.flatTurn.value, 'deg');

const NOTES = {
  straight: 'The middle ordinate is 0, so the edge is straight and has no radius.',
  flat: 'The arc is flat: a small error in the middle ordinate changes the radius by far more. Set it out by ordinates from the chord, not by its radius.',
  bent: 'Measure the ordinate at the exact middle of the chord, and square to it.',
} as const;

/** `C^2 / (8 M) + M / 2`, exactly. Internal. */
export const radiusOf = (chord: Length, ordinate: Length): Length =>
  chord.times(chord).dividedBy(ordinate).dividedBy(8).plus(ordinate.dividedBy(2));

/** `4 atan(2 M / C)`: right for more than half a circle too. Internal. */
export const angleOfArc = (chord: Length, ordinate: Length): Angle =>
  fromSIDecimal('angle', Decimal40.atan(ordinate.dividedBy(chord).times(2)).times(4));

function showWorking(
  { chord, middleOrdinate }: Measured,
  made: { readonly radius: Length; readonly centralAngle: Angle; readonly arcLength: Length },
): Step[] {
  const measured = [given('C', 'chord', chord), given('M', 'middle ordinate', middleOrdinate)];
  return [
    formulaStep({
      title: 'Radius of the arc',
      formula: 'R = C^2 / (8 * M) + M / 2',
      given: measured,
      result: given('R', 'radius', made.radius),
      source: 'curve-stakeout',
    }),
    derivedStep({
      title: 'Angle of the arc at its centre',
      formula: 'A = 4 * atan(2 * M / C)',
      given: measured,
      result: given('A', 'central angle', made.centralAngle),
    }),
    derivedStep({
      title: 'Length of the arc',
      formula: 'L = R * A',
      given: [given('R', 'radius', made.radius), given('A', 'central angle', made.centralAngle)],
      result: given('L', 'length of the arc', made.arcLength),
    }),
  ];
}
