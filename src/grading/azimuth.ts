import { entry } from '../invariant.js';
import { angle } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSIDecimal, type Angle } from '../units/quantity.js';
import {
  absoluteRatio,
  decimalRatio,
  divideRatios,
  HALF_RATIO,
  negateRatio,
  ONE_RATIO,
  quotientToDecimal,
  ratioToDecimal,
  signOfRatio,
  subtractRatios,
  wholeRatio,
  ZERO_RATIO,
  type Ratio,
} from '../units/ratio.js';
import { squareRoot } from '../units/root.js';
import type { Vector } from '../units/vector.js';

const EIGHTHS = Array.from({ length: 8 }, (_, k) => angle(45 * k, 'deg'));
const FIFTEEN = angle(15, 'deg');
const WHOLE_TURN = angle(360, 'deg').si;

/**
 * Direction of a vector, clockwise from +y, from 0 to below 360 degrees; null for the zero vector.
 * Exact for the eight main directions, else to 40 digits. Internal.
 */
export function azimuthOf({ x, y }: Vector): Angle | null {
  const [sx, sy] = [signOfRatio(x), signOfRatio(y)];
  if (sx === 0 && sy === 0) return null;
  const isDiagonal = signOfRatio(subtractRatios(absoluteRatio(x), absoluteRatio(y))) === 0;
  if (sx === 0 || sy === 0 || isDiagonal) return entry(EIGHTHS, eighthOf(sx, sy));
  const turn = Decimal40.atan2(ratioToDecimal(x), ratioToDecimal(y));
  return fromSIDecimal('angle', turn.isNegative() ? Decimal40.add(turn, WHOLE_TURN) : turn);
}

const ROOT_OF_HALF = /* #__PURE__ */ squareRoot(HALF_RATIO);
const ROOT_OF_THREE_QUARTERS = /* #__PURE__ */ squareRoot(
  /* #__PURE__ */ divideRatios(wholeRatio(3), wholeRatio(4)),
);

/** Sines of 0 to 90 degrees that are exact or the same root, by 15 degrees; null for the others. */
const SINES: readonly (Ratio | null)[] = [
  ZERO_RATIO,
  null,
  HALF_RATIO,
  ROOT_OF_HALF,
  ROOT_OF_THREE_QUARTERS,
  null,
  ONE_RATIO,
];

/**
 * Unit vector of a direction clockwise from +y: `(sin, cos)`. A half is exact where it is one (at 30 and
 * 60 degrees), and both are the same root at 45, so that a slope on its limit stays on it. Internal.
 */
export function directionOf(azimuth: Angle): Vector {
  const parts = quotientToDecimal(exactOf(azimuth), exactOf(FIFTEEN));
  const k = parts.isInteger() ? ((parts.toNumber() % 24) + 24) % 24 : Number.NaN;
  const [x, y] = [sineAt(k), sineAt((k + 6) % 24)];
  return {
    x: x ?? decimalRatio(Decimal40.sin(azimuth.si)),
    y: y ?? decimalRatio(Decimal40.cos(azimuth.si)),
  };
}

/** Sine of so many times 15 degrees, 0 to 23; null where it is none of {@link SINES}. */
function sineAt(k: number): Ratio | null {
  const half = k % 12;
  const sine = SINES[half > 6 ? 12 - half : half] ?? null;
  return sine !== null && k > 12 ? negateRatio(sine) : sine;
}

/** One of the eight main directions from the signs of x and y, clockwise from +y. */
function eighthOf(sx: -1 | 0 | 1, sy: -1 | 0 | 1): number {
  const rows = [
    [5, 6, 7],
    [4, 0, 0],
    [3, 2, 1],
  ];
  return rows[sx + 1]?.[sy + 1] ?? 0;
}
