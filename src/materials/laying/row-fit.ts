import type { FieldPath } from '../../errors.js';
import { custom, optional, quantity, ratio } from '../../input/field.js';
import { DISTANCE, JOINT, SHARE, UNIT_SIDE } from '../../input/ranges.js';
import type { Reader } from '../../input/reader.js';
import { readOptions, shapeOf, type Check } from '../../input/shape.js';
import { shown } from '../../input/shown.js';
import { CUT_UNIT_LIMITS } from '../../sources/unit-shape.js';
import type { LengthInput } from '../../units/construct.js';
import { exactOf, fromSI, type Length } from '../../units/quantity.js';
import {
  addRatios,
  multiplyRatios,
  subtractRatios,
  wholeRatio,
  type Ratio,
} from '../../units/ratio.js';
import { readNumber } from '../../units/read-number.js';
import {
  derivedStep,
  given,
  type Step,
  type StepInput,
  withWorking,
  type Worked,
} from '../../working.js';
import { lengthLimits, type LengthLimitsInput } from '../length-limits.js';
import { wholeDown } from '../whole-number.js';
import { largestPiece, waysToFill, type Row, type RowOption } from './row-options.js';

/** A row between two fixed edges, and the pavers to fill it with. */
export interface RowFitOptions {
  /** Width between the fixed edges at the narrowest point [length], more than 0, up to 100 km. */
  readonly width: LengthInput;
  /** Size of a paver along the row, without a joint [length], more than 0 and at most 5 m. */
  readonly size: LengthInput;
  /** Joint width [length], 0 to 100 mm and less than the size. */
  readonly joint: LengthInput;
  /** Joints between the row and its two edges. Default: 1, whole modules. */
  readonly endJoints?: 0 | 1 | 2;
  /**
   * Minimum size of a cut piece as a share of a paver, more than 0 and at most 1. Default: a third,
   * published for where vehicles run.
   */
  readonly minimumPiece?: number | string;
  /** Limits of an acceptable joint, each 0 to 100 mm. Default: joints are not changed. */
  readonly jointLimits?: LengthLimitsInput;
}

const OPTIONS = shapeOf<RowFitOptions>()({
  width: quantity(DISTANCE),
  size: quantity(UNIT_SIDE),
  joint: quantity(JOINT),
  endJoints: optional(custom(readEndJoints), 1),
  minimumPiece: optional(ratio(SHARE)),
  jointLimits: optional(lengthLimits(JOINT)),
});

/** Ways to fill a row between two fixed edges without slivers. */
export interface RowFit extends RowOption, Worked {
  /** Whole pavers that go in with their joints, before anything is cut. */
  readonly maximumWhole: number;
  /** What is then left of the width. */
  readonly remainder: Length;
  /** Every way, the chosen one first. */
  readonly options: readonly RowOption[];
}

/**
 * Fills a row of a width with pavers of a size: with `m = size + joint` and the width
 * `W' = W + (1 - end joints) joint`, `n = floor(W' / m)` pavers fit and `r = W' - n m` is left over.
 * If r is 0, nothing is cut. Else, in this order: joints opened or closed within limits, if limits
 * are given, `j' = (W - N size) / (N - 1 + end joints)`; one cut piece of `r - joint`, if it is
 * large enough; one paver fewer and two equal cut pieces of `(m + r) / 2 - joint`.
 *
 * @param options - see {@link RowFitOptions}
 * @returns the way chosen, and all ways
 * @throws `OUT_OF_RANGE`, `LIMITS_CONTRADICT`, `NOT_POSITIVE`, `NEGATIVE`, `UNKNOWN_CHOICE` and the
 *   reading codes
 * @source derived
 * @source paver-tolerances
 * @example
 * const row = rowFit({ width: '4.73 m', size: '200 mm', joint: '3 mm' });
 * row.kind //=> 'two-cuts'
 * row.whole //=> 22
 * row.piece?.to('mm').toString() //=> '129'
 */
export function rowFit(options: RowFitOptions): RowFit {
  const row = readRow(options);
  const { width, size, joint, endJoints } = row;
  const module = addRatios(size, joint);
  const room = addRatios(width, multiplyRatios(wholeRatio(1 - endJoints), joint));
  const maximumWhole = wholeDown(room, module);
  const remainder = subtractRatios(room, multiplyRatios(wholeRatio(maximumWhole), module));
  const ways = waysToFill(row, maximumWhole, remainder);
  const chosen = ways.find(({ isLargeEnough }) => isLargeEnough) ?? largestPiece(ways);
  const left = fromSI('length', remainder);
  const fit = {
    ...chosen,
    maximumWhole,
    remainder: left,
    options: [chosen, ...ways.filter((way) => way !== chosen)],
  };
  return withWorking(fit, () => [
    derivedStep({
      title: 'Width left over in the row',
      formula: 'r = W + (1 - e) * j - n * m',
      given: [
        given('W', 'width', fromSI('length', width)),
        given('m', 'paver and joint', fromSI('length', module)),
        given('j', 'joint', fromSI('length', joint)),
        given('e', 'joints at the ends', endJoints),
        given('n', 'whole pavers', maximumWhole),
      ],
      result: given('r', 'left over', left),
    }),
    laidStep(row, chosen, { module, left }),
  ]);
}

const FORMULAS: Readonly<Record<RowOption['kind'], string>> = {
  whole: 'jr = j',
  'spread-joints': 'jr = (W - N * l) / (N - 1 + e)',
  'one-cut': 'c = r - j',
  'two-cuts': 'c = (m + r) / 2 - j',
};

function laidStep(
  { width, size, joint, endJoints }: Row,
  { kind, whole, piece, joint: laid }: RowOption,
  { module, left }: { readonly module: Ratio; readonly left: Length },
): Step {
  const j = given('j', 'joint', fromSI('length', joint));
  const inputs: Readonly<Record<RowOption['kind'], readonly StepInput[]>> = {
    whole: [j],
    'spread-joints': [
      given('W', 'width', fromSI('length', width)),
      given('N', 'whole pavers', whole),
      given('l', 'size of a paver', fromSI('length', size)),
      given('e', 'joints at the ends', endJoints),
    ],
    'one-cut': [given('r', 'left over', left), j],
    'two-cuts': [
      given('m', 'paver and joint', fromSI('length', module)),
      given('r', 'left over', left),
      j,
    ],
  };
  return derivedStep({
    title: `The row as laid: ${kind}`,
    formula: FORMULAS[kind],
    given: inputs[kind],
    result: piece === null ? given('jr', 'joint', laid) : given('c', 'cut piece', piece),
  });
}

function readRow(options: unknown): Row {
  const { width, size, joint, endJoints, minimumPiece, jointLimits } = readOptions(
    options,
    OPTIONS,
    checkRow,
  );
  const share = minimumPiece ?? readNumber(CUT_UNIT_LIMITS.vehicularShare.value);
  return {
    width: exactOf(width),
    size: exactOf(size),
    joint: exactOf(joint),
    endJoints,
    minimum: multiplyRatios(share, exactOf(size)),
    limits: jointLimits && {
      minimum: exactOf(jointLimits.minimum),
      maximum: exactOf(jointLimits.maximum),
    },
  };
}

const checkRow: Check<typeof OPTIONS> = (reader, { width, size, joint, endJoints }, path) => {
  if (joint === undefined) return;
  if (size !== undefined && joint.compare(size) >= 0) {
    reader.fail(
      'OUT_OF_RANGE',
      [...path, 'joint'],
      'the joint is as wide as the paver. Check the digits and the unit',
    );
  }
  if (width === undefined || endJoints === undefined) return;
  if (width.compare(joint.times(endJoints)) > 0) return;
  reader.fail(
    'OUT_OF_RANGE',
    [...path, 'width'],
    'is no wider than the joints at its ends. Check the digits and the unit',
  );
};

function readEndJoints(reader: Reader, value: unknown, path: FieldPath): 0 | 1 | 2 {
  if (value === 0 || value === 1 || value === 2) return value;
  const message = `${shown(value)} is not one of 0, 1, 2. Write how many joints the two ends of the row have in all`;
  reader.fail('UNKNOWN_CHOICE', path, message, { choices: '0, 1, 2' });
  return 1;
}
