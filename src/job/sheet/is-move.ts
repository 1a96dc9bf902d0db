import { isPlain } from '../../input/plain.js';
import type { StakeMove } from '../../stakes/stake-move.js';
import { isLength } from './is-measure.js';

/** True for the move of a stake: a distance that is not negative, to the left or the right. Internal. */
export function isMove(value: unknown): value is StakeMove {
  if (!isPlain(value)) return false;
  const { id, distance, direction } = value;
  const isSide = direction === 'left' || direction === 'right';
  return typeof id === 'string' && isSide && isLength(distance) && !distance.isNegative();
}
