import { makeReader } from '../input/reader.js';
import { length, type LengthInput } from '../units/construct.js';
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
import { verdictOf, worstVerdict, type Verdict } from '../verdict.js';
import { given, withWorking, type Step, type Worked } from '../working.js';
import { UNCERTAINTY } from './limits.js';
import { TOLERANCE } from './read-stakes.js';
import { readFourSides, type FourSides, type SideName } from './four-sides.js';

/** How to square four corners up: the near side stays, the far side slides along itself. */
export interface SquareMove {
  readonly side: 'far';
  readonly distance: Length;
  /** Seen from the near side, facing the far one: away from the end of the longer diagonal. */
  readonly direction: 'left' | 'right';
}

/** What keeps four corners from being a rectangle. */
export type SquareFault = 'out-of-square' | 'sides-differ' | 'length-misread';

/** Whether four corners are a rectangle. */
export interface SquareCheck extends Worked {
  /** How far the middle of the far side stands off to one side: nothing for a rectangle. */
  readonly outOfSquare: Length;
  /** What brings it back; null where nothing is to move. */
  readonly move: SquareMove | null;
  /** A right angle less the near left corner: + where the far side leans right. */
  readonly angleError: Angle;
  /** What both diagonals would be if the corners were square. */
  readonly trueDiagonal: Length;
  /** The root of the mean square of the two measured diagonals. */
  readonly meanDiagonal: Length;
  /** That less what the sides call for: more than the tape explains means a length was misread. */
  readonly diagonalMisfit: Length;
  /** Each measured side less what it should be; empty where the sides were not measured. */
  readonly sideErrors: readonly { readonly side: SideName; readonly error: Length }[];
  /** How much opposite sides differ: near from far, left from right; empty likewise. */
  readonly sideDifferences: readonly Length[];
  /** Judged where a tolerance is given, else null. */
  readonly verdict: Verdict | null;
  /** What is certainly beyond the tolerance. */
  readonly faults: readonly SquareFault[];
  readonly note: string;
}

/**
 * Checks four corners by their diagonals. Stand at the near side, facing the far one: the first
 * diagonal runs from the near left corner to the far right one, the second from the near right to the
 * far left. The far side stands off by `e = (d1^2 - d2^2) / (2 (near + far))`, `(d1^2 - d2^2) / (4 L)`
 * where both are L: to the right where e is positive, and it is moved back by as much.
 *
 * Equal diagonals alone are no proof: a trapezium has them too, so opposite sides are compared where
 * they were measured. And the diagonals must fit the sides, `(d1^2 + d2^2) / 2 = near far + left right`
 * (exactly so for a parallelogram and for an even trapezium, and but for the square of a difference of
 * sides else): if they do not, a length was misread. All lengths are level ones; bring taped slopes to plan first.
 *
 * @param options.length - near and far side as they should be [length]
 * @param options.width - left and right side as they should be [length]
 * @param options.diagonals - measured: near left to far right, near right to far left [two lengths]
 * @param options.sides - `near`, `far`, `left`, `right` as measured [length], if they were; else taken as
 *   they should be
 * @param options.tolerance - for how far out of square, for differences of opposite sides and for
 *   diagonals that do not fit [length], if it is to be judged
 * @param options.uncertainty - standard uncertainty of one taped length [length]: what lies within twice
 *   the uncertainty of a result from the tolerance is `unclear`
 * @returns how far out of square [length, not negative], the move, angle error, diagonals, side errors,
 *   verdict
 * @throws `TRIANGLE_IMPOSSIBLE`, `NOT_POSITIVE`, `OUT_OF_RANGE` and the reading codes
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
export function checkSquare(options: {
  readonly length: LengthInput;
  readonly width: LengthInput;
  readonly diagonals: readonly [LengthInput, LengthInput];
  readonly sides?: {
    readonly near: LengthInput;
    readonly far: LengthInput;
    readonly left: LengthInput;
    readonly right: LengthInput;
  };
  readonly tolerance?: LengthInput;
  readonly uncertainty?: LengthInput;
}): SquareCheck {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const measured = readFourSides(reader, fields);
  const optional = (name: string, rule: typeof TOLERANCE) =>
    fields[name] === undefined ? undefined : reader.quantity('length', fields[name], [name], rule);
  const tolerance = optional('tolerance', TOLERANCE);
  const uncertainty = optional('uncertainty', UNCERTAINTY);
  reader.finish();
  const found = measure(measured);
  const judged = judge(measured, found, { tolerance, uncertainty });
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
      ...judged,
    },
    () => showWorking(measured, found),
  );
}

interface Found {
  /** + where the far side stands to the right. */
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

function judge(
  measured: FourSides,
  found: Found,
  given: { readonly tolerance: Length | undefined; readonly uncertainty: Length | undefined },
): Pick<SquareCheck, 'verdict' | 'faults' | 'note'> {
  const { tolerance, uncertainty } = given;
  if (tolerance === undefined) return { verdict: null, faults: [], note: NOTES.none };
  // twice the standard uncertainty is taken as doubt: about 95 % (common practice, no source)
  const doubt = uncertainty?.times(2) ?? length(0, 'm');
  const against = (size: Length, sensitivity: number): Verdict =>
    verdictOf(tolerance.minus(size), doubt.times(sensitivity));
  // how far each result moves for a unit of each taped length, as root of the sum of squares
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
  none: 'Not judged: give a tolerance.',
  pass: 'Square within tolerance.',
  unclear: 'Too close to tell with this tape: measure again, or with a better one.',
  fail: 'Not square.',
  'out-of-square': 'Slide the far side along itself as the move says, and measure again.',
  'sides-differ':
    'Opposite sides differ: no rectangle, even where the diagonals are alike. Bring the sides to length first.',
  'length-misread':
    'The diagonals do not fit the sides: a length was misread, or a side is not as long as it should be. Measure all again before you move anything.',
};

function showWorking({ near, far, left, right, diagonals }: FourSides, found: Found): Step[] {
  const crossed = [
    given('d1', 'first diagonal', diagonals[0]),
    given('d2', 'second', diagonals[1]),
  ];
  return [
    {
      title: 'Far side out of square (+ to the right)',
      formula: 'e = (d1^2 - d2^2) / (2 (n + f))',
      given: [...crossed, given('n', 'near side', near), given('f', 'far side', far)],
      result: given('e', 'out of square', found.lean),
      source: 'derived',
    },
    {
      title: 'Do the diagonals fit the sides?',
      formula: 'm = sqrt((d1^2 + d2^2) / 2) - sqrt(n f + l r)',
      given: [...crossed, given('l', 'left side', left), given('r', 'right side', right)],
      result: given('m', 'misfit', found.misfit),
      source: 'derived',
    },
  ];
}
