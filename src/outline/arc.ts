import { Decimal40, type Decimal } from '../units/decimal.js';
import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  negateRatio,
  ratioToDecimal,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  HALF_RATIO,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import { minus, norm, plus, scaled, turnedRight, type Vector } from '../units/vector.js';

/** Properties of an arc from its chord and middle ordinate. Internal. */
export interface Arc {
  readonly chord: Ratio;
  /** Middle ordinate, without its sign. */
  readonly height: Ratio;
  readonly radius: Ratio;
  /** Central angle in radians, to 40 digits. */
  readonly angle: Decimal;
  /** Along the arc. */
  readonly length: Ratio;
  /** Between arc and chord. */
  readonly area: Ratio;
  /** First moment of that area about the chord. */
  readonly moment: Ratio;
}

/**
 * An arc from its chord C and middle ordinate M: `R = C^2 / (8 M) + M / 2`,
 * `angle = 4 atan(2 M / C)`, `length = R angle`, `area = (R^2 angle - C (R - M)) / 2`,
 * `moment = C^3 / 12 - area (R - M)`. M may be more than C / 2, for more than half a circle. The
 * angle is taken to 40 digits. Internal.
 */
export function makeArc(chord: Ratio, bulge: Ratio): Arc {
  const height = signOfRatio(bulge) < 0 ? negateRatio(bulge) : bulge;
  const square = multiplyRatios(chord, chord);
  const radius = addRatios(
    divideRatios(square, multiplyRatios(height, wholeRatio(8))),
    divideRatios(height, wholeRatio(2)),
  );
  const quarter = ratioToDecimal(divideRatios(multiplyRatios(height, wholeRatio(2)), chord));
  const angle = new Decimal40(Decimal40.atan(quarter).times(4));
  const length = multiplyRatios(radius, decimalRatio(angle));
  if (quarter.lt(FLAT))
    return { chord, height, radius, angle, length, ...flatSegment(chord, quarter) };
  const toCentre = subtractRatios(radius, height);
  const area = divideRatios(
    subtractRatios(multiplyRatios(radius, length), multiplyRatios(chord, toCentre)),
    wholeRatio(2),
  );
  const moment = subtractRatios(
    divideRatios(multiplyRatios(square, chord), wholeRatio(12)),
    multiplyRatios(area, toCentre),
  );
  return { chord, height, radius, angle, length, area, moment };
}

/** `2 M / C` below which area and moment by their formulas are small differences of large values. */
const FLAT = 1e-5;

/** More terms than 40 digits of a flat arc need: each is 1e-10 of the one before, or less. */
const TERMS = [0, 1, 2, 3, 4];

/**
 * Area and moment of a flat arc, by their series in `t = 2 M / C`:
 * `area = C^2 t / 3 (1 + t^2 / 5 - t^4 / 35 + ...)`, `moment = C^3 t^2 / 12 (4 / 5 + 8 / 35 t^2 - ...)`.
 */
function flatSegment(chord: Ratio, t: Decimal): Pick<Arc, 'area' | 'moment'> {
  const square = t.times(t);
  const sum = (term: (k: number) => Decimal) =>
    TERMS.reduce((total, k) => total.plus(square.pow(k).times(term(k))), new Decimal40(0));
  const area = decimalRatio(t.dividedBy(3).times(sum(flatTerm)));
  const moment = square.dividedBy(12).times(sum((k) => flatTerm(k).minus(flatTerm(k + 1))));
  const chordSquared = multiplyRatios(chord, chord);
  return {
    area: multiplyRatios(chordSquared, area),
    moment: multiplyRatios(multiplyRatios(chordSquared, chord), decimalRatio(moment)),
  };
}

/** 1, 1/5, -1/35, 1/105, ...: factors of even powers of `2 M / C` in the area of a flat arc. */
const flatTerm = (k: number): Decimal =>
  new Decimal40(k % 2 === 0 ? -3 : 3).dividedBy((2 * k - 1) * (2 * k + 1) * (2 * k + 3));

/** The arc of an edge from a to b. Internal. */
export const arcOf = (a: Vector, b: Vector, bulge: Ratio): Arc => makeArc(norm(minus(b, a)), bulge);

/** The leg of a right triangle from its longest side and the other leg, squared; 0 if there is none. Internal. */
export function otherLeg(longest: Ratio, legSquared: Ratio): Ratio {
  const rest = subtractRatios(multiplyRatios(longest, longest), legSquared);
  return signOfRatio(rest) <= 0 ? ZERO_RATIO : squareRoot(rest);
}

/**
 * Directions of an arc at its two ends, with the length of its chord, for travel from a to b with a
 * positive bulge on the right. With `t = 2 M / C`, the chord is turned by twice the angle whose
 * tangent is t: clockwise at the start, back at the end. Internal.
 */
export function endDirections(a: Vector, b: Vector, bulgeRight: Ratio): readonly [Vector, Vector] {
  const along = minus(b, a);
  const chord = norm(along);
  const t = divideRatios(multiplyRatios(bulgeRight, wholeRatio(2)), chord);
  const square = multiplyRatios(t, t);
  const one = wholeRatio(1);
  const cos = divideRatios(subtractRatios(one, square), addRatios(one, square));
  const sin = divideRatios(multiplyRatios(wholeRatio(2), t), addRatios(one, square));
  const right = turnedRight(along);
  const lengthwise = scaled(along, cos);
  const sidewise = scaled(right, sin);
  return [plus(lengthwise, sidewise), minus(lengthwise, sidewise)];
}

/**
 * The middle ordinate of the arc about a centre from one point to another, less than half a circle.
 */
export function middleOrdinate(centre: Vector, radius: Ratio, a: Vector, b: Vector): Ratio {
  const middle = scaled(plus(a, b), HALF_RATIO);
  const height = subtractRatios(radius, norm(minus(middle, centre)));
  return compareRatios(height, wholeRatio(0)) < 0 ? wholeRatio(0) : height;
}
