import { makeReader } from '../input/reader.js';
import { CURVE_PRACTICE } from '../sources/curve-stakes.js';
import { angle, area, type LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { fromSIDecimal, type Angle, type Area, type Length } from '../units/quantity.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { SITE_LENGTH, SITE_LENGTH_OR_NONE, UNCERTAINTY } from './limits.js';

/** An arc from its chord and middle ordinate. */
export interface ArcFromChord extends Worked {
  /** True where the middle ordinate is nothing: the edge is straight and has no radius. */
  readonly straight: boolean;
  /** Null for a straight edge. */
  readonly radius: Length | null;
  /** The angle of the arc at its centre, 0 for a straight edge. */
  readonly centralAngle: Angle;
  readonly arcLength: Length;
  /** Between the chord and the arc. */
  readonly segmentArea: Area;
  /** How far the radius moves for a unit of the middle ordinate; null for a straight edge. */
  readonly radiusPerOrdinate: number | null;
  /** Standard uncertainty of the radius, where that of the ordinate is given. */
  readonly radiusUncertainty?: Length;
  /** True for an arc that turns so little that its radius is not to be trusted. */
  readonly flat: boolean;
  /** True where the arc is more than half a circle. */
  readonly moreThanHalf: boolean;
  readonly note: string;
}

/**
 * Radius and length of an arc from its chord and middle ordinate: `R = C^2 / (8 M) + M / 2`, central
 * angle `4 atan(2 M / C)`, arc `R` times the angle, area `(R^2 angle - C (R - M)) / 2`. The radius is
 * exact, angle and arc hold to 40 digits. A middle ordinate of 0 is a straight edge, not an infinite
 * radius.
 *
 * The flatter the arc, the worse the ordinate tells the radius: `dR / dM = 1 / 2 - C^2 / (8 M^2)`.
 *
 * @param options.chord - straight across the arc [length], up to 10 km
 * @param options.middleOrdinate - from the middle of the chord square to the arc [length], not negative
 * @param options.uncertainty - standard uncertainty of the middle ordinate [length], if known
 * @returns radius [length, null if straight], central angle, arc length, area of the segment, change of
 *   the radius for a unit of ordinate, flags
 * @throws `NOT_POSITIVE`, `NEGATIVE`, `OUT_OF_RANGE` and the reading codes
 * @source curve-stakeout
 * @example
 * const arc = arcFromChord({ chord: '4 m', middleOrdinate: '0.5 m' });
 * arc.radius?.to('m').toString() //=> '4.25'
 * arc.arcLength.to('m').toFixed(4) //=> '4.1646'
 * arc.radiusPerOrdinate //=> -7.5
 * arcFromChord({ chord: '4 m', middleOrdinate: '0 m' }).radius //=> null
 */
export function arcFromChord(options: {
  readonly chord: LengthInput;
  readonly middleOrdinate: LengthInput;
  readonly uncertainty?: LengthInput;
}): ArcFromChord {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const chord = reader.quantity('length', fields['chord'], ['chord'], SITE_LENGTH);
  const ordinate = reader.quantity(
    'length',
    fields['middleOrdinate'],
    ['middleOrdinate'],
    SITE_LENGTH_OR_NONE,
  );
  const uncertainty =
    fields['uncertainty'] === undefined
      ? undefined
      : reader.quantity('length', fields['uncertainty'], ['uncertainty'], UNCERTAINTY);
  reader.finish();
  return ordinate.isZero() ? straightEdge(chord) : bentEdge({ chord, ordinate, uncertainty });
}

function straightEdge(chord: Length): ArcFromChord {
  return withWorking(
    {
      straight: true,
      radius: null,
      centralAngle: angle(0, 'rad'),
      arcLength: chord,
      segmentArea: area(0, 'm2'),
      radiusPerOrdinate: null,
      flat: true,
      moreThanHalf: false,
      note: 'No middle ordinate: the edge is straight and has no radius.',
    },
    () => [],
  );
}

interface Bent {
  readonly chord: Length;
  readonly ordinate: Length;
  readonly uncertainty: Length | undefined;
}

function bentEdge({ chord, ordinate, uncertainty }: Bent): ArcFromChord {
  const radius = radiusOf(chord, ordinate);
  const centralAngle = angleOfArc(chord, ordinate);
  const arcLength = radius.times(centralAngle.si);
  const sector = radius.times(arcLength);
  const segmentArea = sector.minus(chord.times(radius.minus(ordinate))).dividedBy(2);
  const steepness = chord.dividedBy(ordinate).pow(2).div(-8).plus(0.5);
  const flat = centralAngle.compare(FLAT_TURN) < 0;
  const spread = uncertainty?.times(steepness.abs());
  return withWorking(
    {
      straight: false,
      radius,
      centralAngle,
      arcLength,
      segmentArea,
      radiusPerOrdinate: steepness.toNumber(),
      ...(spread === undefined ? {} : { radiusUncertainty: spread }),
      flat,
      moreThanHalf: ordinate.times(2).compare(chord) > 0,
      note: flat ? NOTES.flat : NOTES.bent,
    },
    () => showWorking({ chord, ordinate, uncertainty }, { radius, centralAngle, arcLength }),
  );
}

/** An arc that turns less than this is called flat. Internal. */
export const FLAT_TURN = angle(CURVE_PRACTICE.flatTurn.value, 'deg');

const NOTES = {
  flat: 'A flat arc: a slip in the middle ordinate moves the radius by far more. Set it out by ordinates from the chord, not by its radius.',
  bent: 'Measure the ordinate in the very middle of the chord and square to it.',
} as const;

/** `C^2 / (8 M) + M / 2`, exactly. Internal. */
export const radiusOf = (chord: Length, ordinate: Length): Length =>
  chord.times(chord).dividedBy(ordinate).dividedBy(8).plus(ordinate.dividedBy(2));

/** `4 atan(2 M / C)`: right for more than half a circle too. Internal. */
export const angleOfArc = (chord: Length, ordinate: Length): Angle =>
  fromSIDecimal('angle', Decimal40.atan(ordinate.dividedBy(chord).times(2)).times(4));

function showWorking(
  { chord, ordinate }: Bent,
  made: { readonly radius: Length; readonly centralAngle: Angle; readonly arcLength: Length },
): Step[] {
  const measured = [given('C', 'chord', chord), given('M', 'middle ordinate', ordinate)];
  return [
    {
      title: 'Radius of the arc',
      formula: 'R = C^2 / (8 M) + M / 2',
      given: measured,
      result: given('R', 'radius', made.radius),
      source: 'curve-stakeout',
    },
    {
      title: 'Angle of the arc at its centre',
      formula: 'A = 4 atan(2 M / C)',
      given: measured,
      result: given('A', 'central angle', made.centralAngle),
      source: 'derived',
    },
    {
      title: 'Length of the arc',
      formula: 'L = R A',
      given: [given('R', 'radius', made.radius), given('A', 'central angle', made.centralAngle)],
      result: given('L', 'length of the arc', made.arcLength),
      source: 'derived',
    },
  ];
}
