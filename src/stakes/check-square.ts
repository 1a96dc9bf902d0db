import { toleranceForUncertainty } from '../input/needed-by.js';
import { optional, quantity } from '../input/field.js';
import { SITE_LENGTH, TOLERANCE } from '../input/ranges.js';
import { readOptions, shapeOf } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { Decimal40 } from '../units/decimal.js';
import {
  exactOf,
  fromSI,
  fromSIDecimal,
  type Angle,
  type Area,
  type Length,
} from '../units/quantity.js';
import { squareRoot } from '../units/root.js';
import { NO_LENGTH } from '../units/zero.js';
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { derivedStep, given, type Step, withWorking, type Worked } from '../working.js';
import {
  fourSides,
  measuredSides,
  requireDiagonals,
  type FourSides,
  type MeasuredSidesInput,
  type SideError,
} from './four-sides.js';
import { pair } from './pair.js';

/** Four corners that should be a rectangle. */
export interface CheckSquareOptions {
  /** Design length of the near and far sides [length], more than 0 and at most 10 km. */
  readonly length: LengthInput;
  /** Design length of the left and right sides [length], more than 0 and at most 10 km. */
  readonly width: LengthInput;
  /**
   * Measured diagonals: near left to far right, then near right to far left [two lengths], each at
   * most 10 km.
   */
  readonly diagonals: readonly [LengthInput, LengthInput];
  /** The sides as measured. Default: their design lengths. */
  readonly sides?: MeasuredSidesInput;
  /**
   * Tolerance for out of square, for differences of opposite sides and for diagonals that do not
   * fit [length], 0 to 10 m. Default: not judged.
   */
  readonly tolerance?: LengthInput;
  /**
   * Standard uncertainty of one taped length [length], 0 to 10 m; with `tolerance`. A result within
   * twice its own uncertainty of the tolerance is `unclear`. Default: 0.
   */
  readonly uncertainty?: LengthInput;
}

const OPTIONS = shapeOf<CheckSquareOptions>()({
  length: quantity(SITE_LENGTH),
  width: quantity(SITE_LENGTH),
  diagonals: pair(quantity(SITE_LENGTH), 'diagonals'),
  sides: optional(measuredSides),
  tolerance: optional(quantity(TOLERANCE)),
  uncertainty: optional(quantity(TOLERANCE), NO_LENGTH),
});

/** The move that squares four corners: the near side stays, the far side slides along itself. */
export interface SquareMove {
  /** The side to slide. */
  readonly side: 'far';
  /** Distance to move [length]. */
  readonly distance: Length;
  /**
   * Direction when you stand at the near side facing the far one: away from the end of the longer
   * diagonal.
   */
  readonly direction: 'left' | 'right';
}

/** Why four corners are not a rectangle. */
export type SquareFault = 'out-of-square' | 'sides-differ' | 'length-misread';

/** Check of four corners against a rectangle. */
export interface SquareCheck extends Worked {
  /** Sideways offset of the middle of the far side [length]. 0 for a rectangle. */
  readonly outOfSquare: Length;
  /** The correction that squares it; null if none is needed. */
  readonly move: SquareMove | null;
  /** A right angle less the near left corner [angle], + if the far side leans right. */
  readonly angleError: Angle;
  /** Both diagonals if the corners were square [length]. */
  readonly trueDiagonal: Length;
  /** Root of the mean square of the two measured diagonals [length]. */
  readonly meanDiagonal: Length;
  /**
   * `meanDiagonal` less the value that fits the sides [length]. If it is more than the tape
   * explains, a length was misread.
   */
  readonly diagonalMisfit: Length;
  /** Each measured side less its design length; empty if the sides were not measured. */
  readonly sideErrors: readonly SideError[];
  /** Difference of near and far, and of left and right [length]; empty if the sides were not measured. */
  readonly sideDifferences: readonly Length[];
  /** Null if no tolerance is given. */
  readonly verdict: Verdict | null;
  /** Faults that are certainly out of tolerance. */
  readonly faults: readonly SquareFault[];
  /** What to do, in words. */
  readonly note: string;
}

/**
 *
 * Checks four corners by their diagonals. Stand at the near side, facing the far one: the first
 * diagonal runs from the near left corner to the far right one, the second from the near right to
 * the far left. The far side is off by `e = (d1^2 - d2^2) / (2 (near + far))`,
 * `(d1^2 - d2^2) / (4 L)` where both are L: to the right if e is positive. Move it back by that
 * distance.
 *
 * Equal diagonals alone prove nothing, because a trapezium has them too. So opposite sides are
 * compared if they were measured, and the diagonals must fit the sides,
 * `(d1^2 + d2^2) / 2 = near far + left right`: exact for a parallelogram and for an even trapezium,
 * else off by the square of a difference of sides. If they do not fit, a length was misread. All
 * lengths are level. Reduce taped slopes with {@link planDistance} first.
 *
 * @param options - see {@link CheckSquareOptions}
 * @returns how far out of square [length, not negative], the move, angle error, diagonals, side errors,
 *   verdict
 * @throws `REQUIRED`, `TRIANGLE_IMPOSSIBLE`, `TOO_FEW`, `TOO_MANY`, `NOT_POSITIVE`, `OUT_OF_RANGE` and
 *   the reading codes
 * @source squaring-lines
 * @example
 * const check = checkSquare({
 *   length: '12 m',
 *   width: '5 m',
 *   diagonals: ['13.02 m', '12.98 m'],
 *   tolerance: '10 mm',
 * });
 * check.outOfSquare.to('mm').toFixed(1) //=> '21.7'
 * check.move?.direction //=> 'left'
 * check.trueDiagonal.to('m').toString() //=> '13'
 * check.verdict //=> 'fail'
 */
export function checkSquare(options: CheckSquareOptions): SquareCheck {
  const read = readOptions(options, OPTIONS, (reader, values, path, raw) => {
    toleranceForUncertainty(reader, null, path, raw);
    requireDiagonals(reader, values, raw);
  });
  const measured = fourSides(read);
  const found = measure(measured);
  const { lean } = found;
  const distance = lean.abs();
  const direction = lean.isNegative() ? 'right' : 'left';
  return withWorking(
    {
      outOfSquare: distance,
      move: lean.isZero() ? null : ({ side: 'far', distance, direction } as const),
      angleError: found.angleError,
      trueDiagonal: found.trueDiagonal,
      meanDiagonal: found.meanDiagonal,
      diagonalMisfit: found.misfit,
      sideErrors: measured.errors,
      sideDifferences: measured.errors.length === 0 ? [] : differencesOf(measured),
      ...judge(measured, found, read),
    },
    () => showWorking(measured, found),
  );
}

interface Found {
  /** + if the far side is too far to the right. */
  readonly lean: Length;
  readonly angleError: Angle;
  readonly trueDiagonal: Length;
  readonly meanDiagonal: Length;
  readonly misfit: Length;
}

const square = (one: Length): Area => one.times(one);
const rootOf = (area: Area): Length => fromSI('length', squareRoot(exactOf(area)));

function measure(of: FourSides): Found {
  const { near, far, left, right, diagonals } = of;
  const [first, second] = [square(diagonals[0]), square(diagonals[1])];
  const lean = first.minus(second).dividedBy(near.plus(far)).dividedBy(2);
  const meanDiagonal = rootOf(first.plus(second).dividedBy(2));
  const fitting = rootOf(near.times(far).plus(left.times(right)));
  // the near left corner, in the triangle of near side, left side and second diagonal
  const cosine = square(near).plus(square(left)).minus(second).dividedBy(near.times(left).times(2));
  return {
    lean,
    angleError: fromSIDecimal('angle', Decimal40.asin(cosine)),
    trueDiagonal: rootOf(square(of.length).plus(square(of.width))),
    meanDiagonal,
    misfit: meanDiagonal.minus(fitting),
  };
}

const differencesOf = ({ near, far, left, right }: FourSides): readonly Length[] => [
  near.minus(far).abs(),
  left.minus(right).abs(),
];

interface Judging {
  readonly tolerance: Length | undefined;
  readonly uncertainty: Length;
}

function judge(
  measured: FourSides,
  found: Found,
  { tolerance, uncertainty }: Judging,
): Pick<SquareCheck, 'verdict' | 'faults' | 'note'> {
  if (tolerance === undefined) return { verdict: null, faults: [], note: NOTES.none };
  // twice the standard uncertainty is taken as doubt: about 95% (common practice, no source)
  const doubt = uncertainty.times(2);
  const against = (size: Length, sensitivity: number): Verdict =>
    verdictOf(tolerance.minus(size), doubt.times(sensitivity));
  // change of each result per unit of each taped length, as root of the sum of squares
  const spread = found.meanDiagonal.dividedBy(measured.near.plus(measured.far)).toNumber();
  const leaning = against(found.lean.abs(), spread * Math.SQRT2);
  const differing = differencesOf(measured).map((one) => against(one, Math.SQRT2));
  const misfitting = against(found.misfit.abs(), Math.sqrt(1.5));
  const faults: SquareFault[] = [];
  if (leaning === 'fail') faults.push('out-of-square');
  if (differing.includes('fail')) faults.push('sides-differ');
  if (misfitting === 'fail') faults.push('length-misread');
  const verdict = worstVerdict([leaning, ...differing, misfitting]);
  const worst = faults.at(-1);
  return { verdict, faults, note: worst === undefined ? NOTES[verdict] : NOTES[worst] };
}

const NOTES: Readonly<Record<Verdict | SquareFault | 'none', string>> = {
  none: 'Not judged. Give a tolerance.',
  pass: 'Square within tolerance.',
  unclear:
    'Too close to the tolerance to tell with this tape. Measure again, or with a better tape.',
  fail: 'Not square.',
  'out-of-square': 'Slide the far side along itself as the move says, then measure again.',
  'sides-differ':
    'Opposite sides differ, so this is not a rectangle even if the diagonals are equal. Set the sides to length first.',
  'length-misread':
    'The diagonals do not fit the sides: a length was misread, or a side is not as long as it should be. Measure all of them again before you move anything.',
};

function showWorking({ near, far, left, right, diagonals }: FourSides, found: Found): Step[] {
  const crossed = [
    given('d1', 'first diagonal', diagonals[0]),
    given('d2', 'second', diagonals[1]),
  ];
  const ends = [given('n', 'near side', near), given('f', 'far side', far)];
  return [
    derivedStep({
      title: 'Far side out of square (+ to the right)',
      formula: 'e = (d1^2 - d2^2) / (2 * (n + f))',
      given: [...crossed, ...ends],
      result: given('e', 'out of square', found.lean),
    }),
    derivedStep({
      title: 'Do the diagonals fit the sides?',
      formula: 'm = sqrt((d1^2 + d2^2) / 2) - sqrt(n * f + l * r)',
      given: [...crossed, ...ends, given('l', 'left side', left), given('r', 'right side', right)],
      result: given('m', 'misfit', found.misfit),
    }),
  ];
}
