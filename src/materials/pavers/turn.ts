import { angle } from '../../units/construct.js';
import { exactOf, fromSI, type Angle } from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  subtractRatios,
  wholeRatio,
  ZERO_RATIO,
  HALF_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import { readNumber } from '../../units/read-number.js';
import { squareRoot } from '../../units/root.js';
import { roundQuotient } from '../../units/round-ratio.js';

/** Absolute values of cosine and sine. Internal. */
export interface Turn {
  readonly cos: Ratio;
  readonly sin: Ratio;
}

const QUARTER = exactOf(angle(90, 'deg'));
const TWO = wholeRatio(2);
const ROOT_OF_THREE_QUARTERS = squareRoot({ n: 75, d: 100 });

/** Angles at which a cosine or a sine is rational, in quarter turns. */
const RATIONAL: readonly (readonly [quarters: Ratio, turn: Turn])[] = [
  [ZERO_RATIO, { cos: ONE_RATIO, sin: ZERO_RATIO }],
  [divideRatios(ONE_RATIO, wholeRatio(3)), { cos: ROOT_OF_THREE_QUARTERS, sin: HALF_RATIO }],
  [divideRatios(TWO, wholeRatio(3)), { cos: HALF_RATIO, sin: ROOT_OF_THREE_QUARTERS }],
  [ONE_RATIO, { cos: ZERO_RATIO, sin: ONE_RATIO }],
];

/**
 * Absolute values of cosine and sine. Exact if one of them is rational (0, 30, 60 and 90 degrees
 * and their reflections), so edges along the pavers count exactly; else in floats, to two units in
 * the last place. Internal.
 */
export function turnOf(by: Angle): Turn {
  const quarters = foldedQuarters(by);
  const rational = RATIONAL.find(([at]) => compareRatios(at, quarters) === 0);
  if (rational !== undefined) return rational[1];
  const radians = fromSI('angle', multiplyRatios(quarters, QUARTER)).toNumber('rad');
  return { cos: readNumber(Math.cos(radians)), sin: readNumber(Math.sin(radians)) };
}

/**
 * Mean absolute cosine and sine from an angle through a turn that is not zero, from their
 * integrals, in floats: good to a few units in the last place for a turn of a degree or more.
 * Internal.
 */
export function meanOverTurn(by: Angle, turn: Angle): Turn {
  const [start, size] = [by.toNumber('rad'), turn.toNumber('rad')];
  const mean = (integral: (x: number) => number) =>
    readNumber((integral(start + size) - integral(start)) / size);
  return { cos: mean(cosineSize), sin: mean((x) => cosineSize(x - Math.PI / 2)) };
}

/** Integral of the absolute cosine from 0 to x: 2 over each half turn. */
function cosineSize(x: number): number {
  const halves = Math.round(x / Math.PI);
  return 2 * halves + Math.sin(x - halves * Math.PI);
}

/** The angle between two lines, 0 to 90 degrees, exactly: a line has no direction. Internal. */
export const foldedAngle = (between: Angle): Angle =>
  fromSI('angle', multiplyRatios(foldedQuarters(between), QUARTER));

function foldedQuarters(by: Angle): Ratio {
  const quarters = divideRatios(exactOf(by.abs()), QUARTER);
  const turns = roundQuotient(quarters, TWO, 'down');
  const rest = subtractRatios(quarters, multiplyRatios(turns, TWO));
  return compareRatios(rest, ONE_RATIO) > 0 ? subtractRatios(TWO, rest) : rest;
}
