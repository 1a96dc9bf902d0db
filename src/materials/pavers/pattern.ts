import { angle } from '../../units/construct.js';
import { Decimal40 } from '../../units/decimal.js';
import { exactOf, type Angle, type Length } from '../../units/quantity.js';
import {
  addRatios,
  compareRatios,
  decimalRatio,
  divideRatios,
  multiplyRatios,
  ONE_RATIO,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import { squareRoot } from '../../units/root.js';
import type { Module } from './unit.js';
import { meanOverTurn, turnOf } from './turn.js';

/** Laying pattern of the pavers. */
export const LAYING_PATTERNS = Object.freeze([
  'running-bond',
  'stack-bond',
  'basket-weave',
  'herringbone-90',
  'herringbone-45',
] as const);
/** A pattern of {@link LAYING_PATTERNS}. */
export type LayingPattern = (typeof LAYING_PATTERNS)[number];

const TWO = wholeRatio(2);
const EIGHTH = angle(45, 'deg');
const ROOT_HALF = squareRoot({ n: 5, d: 10 });
/** Mean of the cosine over a quarter turn: two over pi, to 40 digits. */
const MEAN_COSINE = decimalRatio(Decimal40.div(2, angle(180, 'deg').si));

/**
 * Pavers that a straight cut of one metre meets on average, by the angle between the cut and the
 * pattern: `|cos a| / l + |sin a| / w` for pavers that all point one way, the mean of a and a + 90
 * degrees if half of them are square to the other half, and of a - 45 and a + 45 degrees for
 * herringbone turned by 45. Internal.
 */
export function metPerMetre(pattern: LayingPattern, module: Module, by: Angle): Ratio {
  const { cos, sin } = turnOf(by);
  if (pattern === 'running-bond' || pattern === 'stack-bond') {
    return addRatios(over(cos, module.length), over(sin, module.width));
  }
  const both = addRatios(over(ONE_RATIO, module.length), over(ONE_RATIO, module.width));
  if (pattern === 'herringbone-45') {
    // |cos(a - 45)| + |cos(a + 45)| = sqrt(2) max(|cos a|, |sin a|), and so for the sines
    const greater = compareRatios(cos, sin) > 0 ? cos : sin;
    return multiplyRatios(multiplyRatios(both, greater), ROOT_HALF);
  }
  return divideRatios(multiplyRatios(both, addRatios(cos, sin)), TWO);
}

/**
 * Pavers that a cut along an arc of one metre meets on average: as for straight cuts, with the means of
 * cosine and sine over the way from its first direction through its turn, which is not zero. Internal.
 */
export function metPerMetreOfArc(
  pattern: LayingPattern,
  module: Module,
  { from, turn }: { readonly from: Angle; readonly turn: Angle },
): Ratio {
  const isTurned = pattern === 'herringbone-45';
  const { cos, sin } = meanOverTurn(isTurned ? from.plus(EIGHTH) : from, turn);
  if (pattern === 'running-bond' || pattern === 'stack-bond') {
    return addRatios(over(cos, module.length), over(sin, module.width));
  }
  const both = addRatios(over(ONE_RATIO, module.length), over(ONE_RATIO, module.width));
  return divideRatios(multiplyRatios(both, addRatios(cos, sin)), TWO);
}

/**
 * Pavers that a curved cut of one metre meets on average over all directions, whatever the pattern:
 * `(2 / pi) (1 / l + 1 / w)`. It holds for arcs that turn by whole quarters. Internal.
 */
export function metPerMetreOfCurve(module: Module): Ratio {
  const both = addRatios(over(ONE_RATIO, module.length), over(ONE_RATIO, module.width));
  return multiplyRatios(both, MEAN_COSINE);
}

const over = (a: Ratio, side: Length): Ratio => divideRatios(a, exactOf(side));
