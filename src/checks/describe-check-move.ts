import { fault } from '../errors.js';
import { isPlain } from '../input/plain.js';
import { formatLength, type FormatLengthOptions } from '../units/format-length.js';
import { isLength } from '../units/is-length.js';
import type { Length } from '../units/quantity.js';
import type { CheckAction, CheckMove } from './layer-check.js';

/**
 *
 * The instruction for a reading that is out of tolerance, as text. A length that would round to 0
 * is rounded up to one step.
 *
 * @param move - of a checked reading; null if there is nothing to do
 * @param options - how the length is printed, as for `formatLength`. Default: as it was written
 * @returns for instance `cut 12 mm`, `add 3/8 in`, `move 15 mm left`; `leave` if there is no move
 * @throws `WRONG_TYPE` if the argument is not a move, `INCREMENT_UNSUITABLE`, `UNIT_UNKNOWN` and
 * the other codes   of `formatLength`
 * @example
 * describeCheckMove({ action: 'cut', by: length('12 mm') }) //=> 'cut 12 mm'
 * describeCheckMove({ action: 'add', by: length('3/8 in') }, { as: 'in' }) //=> 'add 3/8 in'
 * describeCheckMove(null, { as: 'mm' }) //=> 'leave'
 */
export function describeCheckMove(
  move: CheckMove | null,
  options: FormatLengthOptions = {},
): string {
  if (move === null) return 'leave';
  if (!isCheckMove(move)) {
    throw fault('WRONG_TYPE', 'pass the move of a checked reading, or null', {}, ['move']);
  }
  const [before, after] = WORDS[move.action];
  if (move.by === null) return `${before}${after}`;
  return `${before} ${moveLength(move.by, options)}${after}`;
}

/** The length of a move as printed: one that would round to 0 is rounded up to one step. Internal. */
export function moveLength(by: Length, options: FormatLengthOptions): string {
  const text = formatLength(by, options);
  const isNothing = text === formatLength(by.minus(by), options);
  return isNothing ? formatLength(by, { ...options, rounding: 'up' }) : text;
}

/** True for a move that a check returned. Internal. */
export function isCheckMove(value: unknown): value is CheckMove {
  if (!isPlain(value)) return false;
  const { action, by } = value;
  return (
    typeof action === 'string' && Object.hasOwn(WORDS, action) && (by === null || isLength(by))
  );
}

/** Words before and after the length. */
const WORDS: Readonly<Record<CheckAction, readonly [string, string]>> = {
  cut: ['cut', ''],
  add: ['add', ''],
  raise: ['raise', ''],
  lower: ['lower', ''],
  close: ['close up', ''],
  open: ['open', ''],
  'move-left': ['move', ' left'],
  'move-right': ['move', ' right'],
  compact: ['compact again', ''],
};
