import { makeReader, type Reader } from '../input/reader.js';
import { CUT_UNIT_LIMITS } from '../sources/unit-shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { addRatios, multiplyRatios, subtractRatios, wholeRatio } from '../units/ratio.js';
import { readNumber } from '../units/read-number.js';
import { given, withWorking, type Worked } from '../working.js';
import { readRatio } from './exact.js';
import { JOINT, RUN_OF_SOME, SHARE, UNIT_SIDE } from './limits.js';
import { largestPiece, waysToFill, type Row, type RowOption } from './row-options.js';
import { wholeDown } from './whole-number.js';

/** How to fill a row between two fixed edges without slivers. */
export interface RowFit extends RowOption, Worked {
  /** Whole units and their joints that go in, and what is left over. */
  readonly most: number;
  readonly remainder: Length;
  /** Every way, the chosen one first. */
  readonly options: readonly RowOption[];
}

/**
 * Fills a row of a width with units of a size: with `m = size + joint` and the width
 * `W' = W + (1 - end joints) joint`, `n = floor(W' / m)` units go in and `r = W' - n m` is left. Where
 * nothing is left no unit is cut. Else, in this order: joints opened or closed within limits, if limits
 * are given, `j' = (W - N size) / (N - 1 + end joints)`; one cut piece of `r - joint`, if it is large
 * enough; one unit fewer and two equal cut pieces of `(m + r) / 2 - joint`. A wall that is not straight
 * is measured where the row is narrowest.
 *
 * @param options.width - between the fixed edges [length]
 * @param options.size - of a unit along the row, without a joint [length]
 * @param options.joint - [length], less than the size
 * @param options.endJoints - joints between the row and its two edges: 0, 1 (the default: whole
 *   modules) or 2
 * @param options.leastPiece - smallest cut piece as a share of a unit, more than 0 and up to 1; default
 *   a third, published for where vehicles run
 * @param options.jointLimits - `least` and `most` joint [length]; without them joints are not changed
 * @returns the way chosen, and all ways
 * @throws `OUT_OF_RANGE`, `NOT_POSITIVE`, `NEGATIVE` and the reading codes
 * @source derived
 * @source paver-tolerances
 * @example
 * const row = rowFit({ width: '4.73 m', size: '200 mm', joint: '3 mm' });
 * row.kind //=> 'two-cuts'
 * row.whole //=> 22
 * row.piece?.to('mm').toString() //=> '129'
 */
export function rowFit(options: {
  readonly width: LengthInput;
  readonly size: LengthInput;
  readonly joint: LengthInput;
  readonly endJoints?: 0 | 1 | 2;
  readonly leastPiece?: number | string;
  readonly jointLimits?: { readonly least: LengthInput; readonly most: LengthInput };
}): RowFit {
  const row = readRow(options);
  const { width, size, joint, endJoints } = row;
  const module = addRatios(size, joint);
  const room = addRatios(width, multiplyRatios(wholeRatio(1 - endJoints), joint));
  const most = wholeDown(room, module);
  const remainder = subtractRatios(room, multiplyRatios(wholeRatio(most), module));
  const ways = waysToFill(row, most, remainder);
  const chosen = ways.find(({ ok }) => ok) ?? largestPiece(ways);
  const left = fromSI('length', remainder);
  const fit = {
    ...chosen,
    most,
    remainder: left,
    options: [chosen, ...ways.filter((way) => way !== chosen)],
  };
  return withWorking(fit, () => [
    {
      title: 'What is left of the row',
      formula: "r = W' - n m,  W' = W + (1 - e) j",
      given: [
        given('W', 'width', fromSI('length', width)),
        given('m', 'unit and joint', fromSI('length', module)),
        given('j', 'joint', fromSI('length', joint)),
        given('e', 'joints at the ends', endJoints),
        given('n', 'whole units', most),
      ],
      result: given('r', 'left over', left),
      source: 'derived',
    },
    {
      title: `The row as laid: ${chosen.kind}`,
      formula: FORMULAS[chosen.kind],
      given: [given('N', 'whole units', chosen.whole)],
      result:
        chosen.piece === null
          ? given("j'", 'joint', chosen.joint)
          : given('c', 'cut piece', chosen.piece),
      source: 'derived',
    },
  ]);
}

const FORMULAS: Readonly<Record<RowOption['kind'], string>> = {
  whole: "j' = j",
  'spread-joints': "j' = (W - N l) / (N - 1 + e)",
  'one-cut': 'c = r - j',
  'two-cuts': 'c = (m + r) / 2 - j',
};

function readRow(options: unknown): Row {
  const reader = makeReader();
  const fields = reader.object(options, []);
  const width = reader.quantity('length', fields['width'], ['width'], RUN_OF_SOME);
  const size = reader.quantity('length', fields['size'], ['size'], UNIT_SIDE);
  const joint = reader.quantity('length', fields['joint'], ['joint'], JOINT);
  const endJoints = readEndJoints(reader, fields['endJoints']);
  const share =
    fields['leastPiece'] === undefined
      ? readNumber(CUT_UNIT_LIMITS.vehicularShare.value)
      : readRatio(reader, fields['leastPiece'], ['leastPiece'], SHARE);
  const limits = fields['jointLimits'] === undefined ? undefined : readLimits(reader, fields);
  if (joint.compare(size) >= 0) {
    reader.fail('OUT_OF_RANGE', ['joint'], 'the joint is as wide as the unit');
  }
  if (width.compare(joint.times(endJoints)) <= 0) {
    reader.fail('OUT_OF_RANGE', ['width'], 'the width is no more than the joints at its ends');
  }
  reader.finish();
  return {
    width: exactOf(width),
    size: exactOf(size),
    joint: exactOf(joint),
    endJoints,
    least: multiplyRatios(share, exactOf(size)),
    limits,
  };
}

function readEndJoints(reader: Reader, value: unknown): number {
  if (value === undefined) return 1;
  if (value === 0 || value === 1 || value === 2) return value;
  reader.fail('UNKNOWN_CHOICE', ['endJoints'], 'say 0, 1 or 2: joints at the two ends of the row');
  return 1;
}

function readLimits(reader: Reader, fields: Readonly<Record<string, unknown>>) {
  const given = reader.object(fields['jointLimits'], ['jointLimits']);
  const read = (name: 'least' | 'most') =>
    reader.quantity('length', given[name], ['jointLimits', name], JOINT);
  const [least, most] = [read('least'), read('most')];
  if (most.compare(least) < 0) {
    reader.fail(
      'OUT_OF_RANGE',
      ['jointLimits', 'most'],
      'the greatest joint is less than the least',
    );
  }
  return { least: exactOf(least), most: exactOf(most) };
}
