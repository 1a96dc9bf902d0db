import { Decimal40, type Decimal } from '../units/decimal.js';
import { fromSIDecimal, type Angle, type Area, type Length } from '../units/quantity.js';

/** The measures of a circular curve between two straights. */
export interface CurveElements {
  /** From the corner back to where the arc begins, and on to where it ends [length]. */
  readonly tangent: Length;
  /** Along the arc [length]. */
  readonly arcLength: Length;
  /** Straight across the arc [length]. */
  readonly chord: Length;
  /** From the middle of the chord to the arc [length]. */
  readonly middleOrdinate: Length;
  /** From the corner to the arc [length]. */
  readonly external: Length;
  /** Between the arc and the corner [area]. */
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

/** The angle at which a chord leaves the tangent for an arc of a length: half its central angle. Internal. */
export const deflectionOf = (arc: Length, radius: Length): Angle =>
  fromSIDecimal('angle', arc.dividedBy(radius).div(2));

/** `2 R sin(deflection)`. Internal. */
export const chordOf = (deflection: Angle, radius: Length): Length =>
  radius.times(sineOf(deflection)).times(2);

const sineOf = (angle: Angle): Decimal => Decimal40.sin(angle.si);
