import { fault } from '../../errors.js';
import { isPlain } from '../../input/plain.js';
import { shown } from '../../input/shown.js';
import type { StringLinePlan } from '../../job/plan/plan.js';
import { isLength } from '../../job/sheet/is-measure.js';
import { isMove } from '../../job/sheet/is-move.js';
import type { StakeLine, StakeOffset } from '../../stakes/check-stake-line.js';
import type { RowFinding } from '../../stakes/row-finding.js';
import type { StakeMove } from '../../stakes/stake-move.js';
import type { Length } from '../../units/quantity.js';

/** A row of stakes as it is drawn. Internal. */
export interface StakeRow {
  /** Id of its string; null where it is a row by itself. */
  readonly string: string | null;
  readonly stakes: readonly StakeOffset[];
  readonly moves: readonly StakeMove[];
  readonly isAmbiguous: boolean;
  readonly code: RowFinding;
  /** Null where the row does not tell. */
  readonly tolerance: Length | null;
  readonly reference: 'ends' | 'best-fit' | null;
}

/**
 * The row of a line check or of a string of a plan. Internal.
 *
 * @throws `WRONG_TYPE` for anything else
 */
export function rowOf(value: StakeLine | StringLinePlan): StakeRow {
  if (!isRow(value)) {
    const message = `pass the result of checkStakeLine() or a string of a plan, got ${shown(value)}`;
    throw fault('WRONG_TYPE', message, { got: shown(value) });
  }
  const { moves, ambiguous: isAmbiguous, code } = value;
  if ('offsets' in value) {
    const { offsets: stakes } = value;
    const none = { string: null, tolerance: null, reference: null };
    return { ...none, stakes, moves, isAmbiguous, code };
  }
  const { id: string, stakes, tolerance, reference } = value;
  return { string, stakes, moves, isAmbiguous, code, tolerance, reference };
}

function isRow(value: unknown): value is StakeLine | StringLinePlan {
  if (!isPlain(value)) return false;
  const { moves, ambiguous, code, offsets, stakes, id, tolerance, reference } = value;
  if (!Array.isArray(moves) || typeof ambiguous !== 'boolean' || !isFinding(code)) {
    return false;
  }
  if (!moves.every(isMove)) return false;
  if (offsets !== undefined) return isStakes(offsets);
  const isReference = reference === 'ends' || reference === 'best-fit';
  return isStakes(stakes) && typeof id === 'string' && isLength(tolerance) && isReference;
}

const FINDINGS: ReadonlySet<unknown> = new Set<RowFinding>([
  'in-line',
  'out-of-line',
  'ambiguous',
  'always-in-line',
]);

const isFinding = (value: unknown): boolean => FINDINGS.has(value);

const isStakes = (value: unknown): boolean =>
  Array.isArray(value) && value.length >= 2 && value.every(isStake);

function isStake(value: unknown): boolean {
  if (!isPlain(value)) return false;
  const { id, station, offset, inTolerance } = value;
  return (
    typeof id === 'string' &&
    isLength(station) &&
    isLength(offset) &&
    typeof inTolerance === 'boolean'
  );
}
