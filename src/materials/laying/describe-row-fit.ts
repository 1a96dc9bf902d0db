import { fault } from '../../errors.js';
import { isPlain } from '../../input/plain.js';
import { readOptions } from '../../input/shape.js';
import { formatLength } from '../../units/format-length.js';
import type { Length } from '../../units/quantity.js';
import { isLength } from '../../units/is-length.js';
import { DESCRIBE_OPTIONS, tapeText, type DescribeOptions, type TapeSystem } from '../tape-text.js';
import type { RowOption } from './row-options.js';

/**
 * A way to fill a row as an instruction.
 *
 * @param row - from `rowFit`, or one of its `options`
 * @param options - see {@link DescribeOptions}; joints are written in thirty-seconds of an inch or in
 *   tenths of a millimetre
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`, `WRONG_TYPE`
 * @example
 * const row = rowFit({ width: '4.73 m', size: '200 mm', joint: '3 mm' });
 * describeRowFit(row, { system: 'metric' }) //=> '22 whole pavers between two cuts of 129 mm'
 */
export function describeRowFit(row: RowOption, options: DescribeOptions): string {
  if (!isRowOption(row)) throw fault('WRONG_TYPE', 'pass the result of rowFit()', {}, ['row']);
  const { system } = readOptions(options, DESCRIBE_OPTIONS);
  const units = row.whole === 1 ? '1 whole paver' : `${row.whole} whole pavers`;
  if (row.piece === null) {
    return row.kind === 'whole'
      ? `${units}, no cut`
      : `${units}, no cut, joints of ${jointText(row.joint, system)}`;
  }
  const size = tapeText(row.piece, system);
  const small = row.isLargeEnough
    ? ''
    : '; the cut is too small: change the width, the joint or the paver';
  if (row.whole === 0) {
    return `${row.cuts === 1 ? 'one cut' : 'two cuts'} of ${size}${small}`;
  }
  return row.cuts === 1
    ? `${units} and one cut of ${size}${small}`
    : `${units} between two cuts of ${size}${small}`;
}

const isRowOption = (row: unknown): row is RowOption =>
  isPlain(row) &&
  Number.isSafeInteger(row['whole']) &&
  isLength(row['joint']) &&
  (row['piece'] === null || isLength(row['piece']));

const jointText = (joint: Length, system: TapeSystem): string =>
  system === 'us'
    ? formatLength(joint, { as: 'in', nearest: '1/32 in' })
    : formatLength(joint, { as: 'mm', nearest: '0.1 mm' });
