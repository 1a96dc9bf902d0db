import { makeReader, type Reader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { formatQuantity } from '../units/format-quantity.js';
import { exactOf, fromSI, fromSIDecimal, type Angle, type Length } from '../units/quantity.js';
import { squareRoot } from '../units/root.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { given, withWorking, type Worked } from '../working.js';
import { SITE_LENGTH, UNCERTAINTY } from './limits.js';
import { TOLERANCE } from './read-stakes.js';

/** How to bring the end of a side square to its base. */
export interface CornerMove {
  readonly distance: Length;
  /** Along the base: toward its far end, or away from it. */
  readonly direction: 'toward' | 'away';
}

/** Whether a corner is square. */
export interface CornerCheck extends Worked {
  readonly angle: Angle;
  /** A right angle less the corner: + where the corner is too narrow. */
  readonly angleError: Angle;
  /** What the diagonal would be if the corner were square. */
  readonly trueDiagonal: Length;
  /** How far the end of the side stands off the square, along the base. */
  readonly outOfSquare: Length;
  /** What brings it back; null where nothing is to move. */
  readonly move: CornerMove | null;
  /** Judged where a tolerance is given, else null. */
  readonly verdict: Verdict | null;
}

/**
 * Checks one corner by its two sides and the diagonal between their ends: the end of the side stands
 * off the square by `e = (a^2 + b^2 - c^2) / (2 a)`, toward the far end of the base where e is
 * positive; the corner is `acos((a^2 + b^2 - c^2) / (2 a b))`. All lengths are level ones.
 *
 * @param options.base - the side that stays [length]
 * @param options.side - the side that should be square to it [length]
 * @param options.diagonal - from the far end of the one to the far end of the other [length]
 * @param options.tolerance - for how far out of square [length], if it is to be judged
 * @param options.uncertainty - standard uncertainty of one taped length [length]: what lies within
 *   twice the uncertainty of the result from the tolerance is `unclear`
 * @returns angle, how far out of square [length, not negative], the move, verdict
 * @throws `TRIANGLE_IMPOSSIBLE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source squaring-lines
 * @example
 * const corner = checkCorner({ base: '20 ft', side: '15 ft', diagonal: `24' 11"` });
 * corner.outOfSquare.to('in').toFixed(2) //=> '1.25'
 * corner.move?.direction //=> 'away'
 * corner.angle.to('deg').toFixed(2) //=> '89.60'
 */
export function checkCorner(options: {
  readonly base: LengthInput;
  readonly side: LengthInput;
  readonly diagonal: LengthInput;
  readonly tolerance?: LengthInput;
  readonly uncertainty?: LengthInput;
}): CornerCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const read = (name: string) => reader.quantity('length', fields[name], [name], SITE_LENGTH);
  const [base, side, diagonal] = [read('base'), read('side'), read('diagonal')];
  const optional = (name: string, rule: typeof TOLERANCE) =>
    fields[name] === undefined ? undefined : reader.quantity('length', fields[name], [name], rule);
  const tolerance = optional('tolerance', TOLERANCE);
  const uncertainty = optional('uncertainty', UNCERTAINTY);
  checkTriangle(reader, [base, side, diagonal]);
  reader.finish();
  const squares = base.times(base).plus(side.times(side));
  const excess = squares.minus(diagonal.times(diagonal));
  const lean = excess.dividedBy(base).dividedBy(2);
  const cosine = excess.dividedBy(base.times(side).times(2));
  const distance = lean.abs();
  const angle = fromSIDecimal('angle', Decimal40.acos(cosine));
  return withWorking(
    {
      angle,
      angleError: fromSIDecimal('angle', Decimal40.asin(cosine)),
      trueDiagonal: fromSI('length', squareRoot(exactOf(squares))),
      outOfSquare: distance,
      move: lean.isZero()
        ? null
        : ({ distance, direction: lean.isNegative() ? 'toward' : 'away' } as const),
      verdict:
        tolerance === undefined
          ? null
          : verdictOf(tolerance.minus(distance), doubtOf([base, side, diagonal], uncertainty)),
    },
    () => [
      {
        title: 'End of the side out of square (+ toward the far end of the base)',
        formula: 'e = (a^2 + b^2 - c^2) / (2 a)',
        given: [
          given('a', 'base', base),
          given('b', 'side', side),
          given('c', 'diagonal', diagonal),
        ],
        result: given('e', 'out of square', lean),
        source: 'derived',
      },
    ],
  );
}

function checkTriangle(reader: Reader, [base, side, diagonal]: readonly [Length, Length, Length]) {
  if ([base, side, diagonal].some((one) => one.isZero())) return;
  const isShort = diagonal.compare(base.minus(side).abs()) <= 0;
  if (!isShort && diagonal.compare(base.plus(side)) < 0) return;
  const [a, b, c] = [base, side, diagonal].map((one) =>
    formatQuantity(one, { as: 'm', places: 3 }),
  );
  const message = `sides of ${a} and ${b} have no diagonal of ${c}: measure again`;
  reader.fail('TRIANGLE_IMPOSSIBLE', ['diagonal'], message);
}

/** Twice the standard uncertainty of how far out of square, each length counted. */
function doubtOf(
  [base, side, diagonal]: readonly [Length, Length, Length],
  uncertainty: Length | undefined,
): Length {
  if (uncertainty === undefined) return length(0, 'm');
  const [a, b, c] = [base.toNumber('m'), side.toNumber('m'), diagonal.toNumber('m')];
  const parts = [(a * a - b * b + c * c) / (2 * a * a), b / a, c / a];
  return uncertainty.times(2 * Math.hypot(...parts));
}
