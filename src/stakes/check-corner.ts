import { toleranceForUncertainty } from '../input/needed-by.js';
import { optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf, type Check } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import { exactOf, fromSI, fromSIDecimal, type Angle, type Length } from '../units/quantity.js';
import { squareRoot } from '../units/root.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { derivedStep, given, withWorking, type Worked } from '../working.js';
import { requireTriangles } from './triangle.js';

/** A corner, by its two sides and the diagonal between their ends. */
export interface CheckCornerOptions {
  /** Length of the side that stays [length], more than 0 and at most 10 km. */
  readonly base: LengthInput;
  /** Length of the side that should be square to it [length], more than 0 and at most 10 km. */
  readonly side: LengthInput;
  /** Diagonal between the far ends of the two sides [length], more than 0 and at most 10 km. */
  readonly diagonal: LengthInput;
  /** Tolerance for out of square [length], 0 to 10 m. Default: not judged. */
  readonly tolerance?: LengthInput;
  /**
   * Standard uncertainty of one taped length [length], 0 to 10 m; with `tolerance`. A result within
   * twice its own uncertainty of the tolerance is `unclear`. Default: 0.
   */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<CheckCornerOptions>()({
  base: quantity(SITE_LENGTH),
  side: quantity(SITE_LENGTH),
  diagonal: quantity(SITE_LENGTH),
  tolerance: optional(quantity(TOLERANCE)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** The move that squares the end of a side to its base. */
export interface CornerMove {
  /** Distance to move [length]. */
  readonly distance: Length;
  /** Along the base: toward its far end, or away from it. */
  readonly direction: 'toward' | 'away';
}

/** Check of a corner against a right angle. */
export interface CornerCheck extends Worked {
  /** The corner as it is [angle]. */
  readonly angle: Angle;
  /** A right angle less the corner [angle], + if the corner is too narrow. */
  readonly angleError: Angle;
  /** The diagonal if the corner were square [length]. */
  readonly trueDiagonal: Length;
  /** Distance of the end of the side from square, along the base [length]. */
  readonly outOfSquare: Length;
  /** The correction that squares it; null if none is needed. */
  readonly move: CornerMove | null;
  /** Null if no tolerance is given. */
  readonly verdict: Verdict | null;
}

/**
 * Checks one corner by its two sides and the diagonal between their ends. The end of the side is
 * out of square by `e = (a^2 + b^2 - c^2) / (2 a)`, toward the far end of the base if e is
 * positive. The corner is `acos((a^2 + b^2 - c^2) / (2 a b))`. All lengths are level.
 *
 * @param options - see {@link CheckCornerOptions}
 * @returns angle, how far out of square [length, not negative], the move, verdict
 * @throws `REQUIRED`, `TRIANGLE_IMPOSSIBLE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
 * @source squaring-lines
 * @example
 * const corner = checkCorner({ base: '20 ft', side: '15 ft', diagonal: `24' 11"` });
 * corner.outOfSquare.to('in').toFixed(2) //=> '1.25'
 * corner.move?.direction //=> 'away'
 * corner.angle.to('deg').toFixed(2) //=> '89.60'
 */
export function checkCorner(options: CheckCornerOptions): CornerCheck {
  const read = readOptions(options, OPTIONS, checkTriangle);
  const { base, side, diagonal } = read;
  const squares = base.times(base).plus(side.times(side));
  const excess = squares.minus(diagonal.times(diagonal));
  const lean = excess.dividedBy(base).dividedBy(2);
  const cosine = excess.dividedBy(base.times(side).times(2));
  const distance = lean.abs();
  const direction = lean.isNegative() ? 'toward' : 'away';
  return withWorking(
    {
      angle: fromSIDecimal('angle', Decimal40.acos(cosine)),
      angleError: fromSIDecimal('angle', Decimal40.asin(cosine)),
      trueDiagonal: fromSI('length', squareRoot(exactOf(squares))),
      outOfSquare: distance,
      move: lean.isZero() ? null : ({ distance, direction } as const),
      verdict:
        read.tolerance === undefined
          ? null
          : verdictOf(read.tolerance.minus(distance), doubtOf(read)),
    },
    () => [
      derivedStep({
        title: 'End of the side out of square (+ toward the far end of the base)',
        formula: 'e = (a^2 + b^2 - c^2) / (2 * a)',
        given: [
          given('a', 'base', base),
          given('b', 'side', side),
          given('c', 'diagonal', diagonal),
        ],
        result: given('e', 'out of square', lean),
      }),
    ],
  );
}

const checkTriangle: Check<typeof OPTIONS> = (reader, { base, side, diagonal }, path, raw) => {
  toleranceForUncertainty(reader, null, path, raw);
  if (base === undefined || side === undefined || diagonal === undefined) return;
  const triangle = [
    { read: base, raw: raw['base'] },
    { read: side, raw: raw['side'] },
    { read: diagonal, raw: raw['diagonal'] },
  ] as const;
  requireTriangles(reader, [triangle], [...path, 'diagonal']);
};

/** Twice the standard uncertainty of the out-of-square distance, from all three lengths. */
function doubtOf(of: {
  readonly base: Length;
  readonly side: Length;
  readonly diagonal: Length;
  readonly uncertainty: Length;
}): Length {
  const [a, b, c] = [of.base.toNumber('m'), of.side.toNumber('m'), of.diagonal.toNumber('m')];
  const parts = [(a * a - b * b + c * c) / (2 * a * a), b / a, c / a];
  return of.uncertainty.times(2 * Math.hypot(...parts));
}
