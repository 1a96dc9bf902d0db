import { entry } from '../invariant.js';
import { angle } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSIDecimal, type Angle } from '../units/quantity.js';
import {
  absoluteRatio,
  decimalRatio,
  quotientToDecimal,
  ratioToDecimal,
  signOfRatio,
  subtractRatios,
  wholeRatio,
} from '../units/ratio.js';
import type { Vector } from '../units/vector.js';

const EIGHTHS = Array.from({ length: 8 }, (_, k) => angle(45 * k, 'deg'));
const QUARTER = angle(90, 'deg');
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

/** Unit vector of a direction clockwise from +y: `(sin, cos)`; exact for quarter turns. Internal. */
export function directionOf(azimuth: Angle): Vector {
  const quarters = quotientToDecimal(exactOf(azimuth), exactOf(QUARTER));
  if (quarters.isInteger()) {
    const k = ((quarters.toNumber() % 4) + 4) % 4;
    return { x: wholeRatio(entry([0, 1, 0, -1], k)), y: wholeRatio(entry([1, 0, -1, 0], k)) };
  }
  return {
    x: decimalRatio(Decimal40.sin(azimuth.si)),
    y: decimalRatio(Decimal40.cos(azimuth.si)),
  };
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
