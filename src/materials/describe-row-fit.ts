import { makeReader } from '../input/reader.js';
import { formatLength } from '../units/format-length.js';
import type { Length } from '../units/quantity.js';
import type { RowOption } from './row-options.js';
import { TAPE_SYSTEMS, tapeText, type TapeSystem } from './tape-text.js';

/**
 * A way to fill a row as an instruction.
 *
 * @param row - from `rowFit`, or one of its `options`
 * @param options.system - `us` (sixteenths of an inch, joints in thirty-seconds) or `metric`
 *   (millimetres, joints in tenths)
 * @throws `UNKNOWN_CHOICE`, `REQUIRED`
 * @example
 * const row = rowFit({ width: '4.73 m', size: '200 mm', joint: '3 mm' });
 * describeRowFit(row, { system: 'metric' }) //=> '22 whole units between two cuts of 129 mm'
 */
export function describeRowFit(row: RowOption, options: { readonly system: TapeSystem }): string {
  const reader = makeReader();
  const system = reader.choice(options.system, ['system'], TAPE_SYSTEMS);
  reader.finish();
  const units = row.whole === 1 ? '1 whole unit' : `${row.whole} whole units`;
  if (row.piece === null) {
    return row.kind === 'whole'
      ? `${units}, no cut`
      : `${units}, no cut, joints of ${jointText(row.joint, system)}`;
  }
  const size = tapeText(row.piece, system);
  const small = row.ok ? '' : '; the cut is too small: change the width, the joint or the unit';
  if (row.whole === 0) {
    return `${row.cuts === 1 ? 'one cut' : 'two cuts'} of ${size}${small}`;
  }
  return row.cuts === 1
    ? `${units} and one cut of ${size}${small}`
    : `${units} between two cuts of ${size}${small}`;
}

const jointText = (joint: Length, system: TapeSystem): string =>
  system === 'us'
    ? formatLength(joint, { as: 'in', nearest: '1/32 in' })
    : formatLength(joint, { as: 'mm', nearest: '0.1 mm' });
