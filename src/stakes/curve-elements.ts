import { Decimal40, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Angle, type Area, type Length } from '../units/quantity.js';

/** The elements of a circular curve between two straights. */
export interface CurveElements {
  /** Distance from the corner to each end of the arc [length]. */
  readonly tangent: Length;
  /** Length along the arc [length]. */
  readonly arcLength: Length;
  /** Length of the chord [length]. */
  readonly chord: Length;
  /** Distance from the middle of the chord to the arc [length]. */
  readonly middleOrdinate: Length;
  /** Distance from the corner to the arc [length]. */
  readonly external: Length;
  /** Area between the arc and the corner [area]. */
  readonly cornerArea: Area;
}

/** Sine, cosine and tangent of half an angle, to 40 digits. Internal. */
export function halfTurn(turn: Angle) {
  const half = turn.si.div(2);
  return { sin: Decimal40.sin(half), cos: Decimal40.cos(half), tan: Decimal40.tan(half) };
}

/**
 * Elements of a curve: `T = R tan(D/2)`, `L = R D`, `C = 2 R sin(D/2)`, `M = R (1 - cos(D/2))`,
 * `E = R (1 / cos(D/2) - 1)`, corner `R T - R^2 D / 2`. Internal.
 */
export function curveElements(radius: Length, turn: Angle): CurveElements {
  const { sin, cos, tan } = halfTurn(turn);
  const one = new Decimal40(1);
  const tangent = radius.times(tan);
  const arcLength = radius.times(turn.si);
  return {
    tangent,
    arcLength,
    chord: radius.times(sin).times(2),
    middleOrdinate: radius.times(one.minus(cos)),
    external: radius.times(one.div(cos).minus(1)),
    cornerArea: radius.times(tangent.minus(arcLength.dividedBy(2))),
  };
}

/** Deflection angle of the chord to a length of arc: half the central angle. Internal. */
export const deflectionOf = (arc: Length, radius: Length): Angle =>
  fromSIDecimal('angle', arc.dividedBy(radius).div(2));

/** `2 R sin(deflection)`. Internal. */
export const chordOf = (deflection: Angle, radius: Length): Length =>
  radius.times(sineOf(deflection)).times(2);

const sineOf = (angle: Angle): Decimal => Decimal40.sin(angle.si);
