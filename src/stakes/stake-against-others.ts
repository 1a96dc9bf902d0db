import type { Length } from '../units/quantity.js';
import type { MarkMove, StakeMove } from './stake-move.js';

/** One stake against the line of all the others. */
export interface StakeAgainstOthers {
  /** The stake. */
  readonly id: string;
  /** Offset from the line of the others [length]: + left of travel in plan, + too high in profile. */
  readonly deleted: Length;
  /**
   * The offset over its standard error, from the scatter of the others (externally studentized).
   * Null if the others are exactly in line and have no scatter.
   */
  readonly studentized: number | null;
  /**
   * Influence of the stake on the line: 1 / n for one in the middle, 1 for one that fixes it alone.
   */
  readonly leverage: number;
  /** True if the stake is farther off than the scatter of the others explains. */
  readonly isOutlier: boolean;
  /** The move onto the line of the others: `left` or `right` in plan, `up` or `down` in profile. */
  readonly move: StakeMove | MarkMove;
}

/** A stake before it is judged. Internal. */
export type MeasuredStake = Omit<StakeAgainstOthers, 'isOutlier'>;
