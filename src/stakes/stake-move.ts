import type { Length } from '../units/quantity.js';

/** The move that brings a stake into line, square to the line. */
export interface StakeMove {
  /** The stake to move. */
  readonly id: string;
  /** Distance to move [length], not negative. */
  readonly distance: Length;
  /** Which way, facing from the first stake to the last. */
  readonly direction: 'left' | 'right';
}

/** The move that brings a mark onto the grade. */
export interface MarkMove {
  /** The stake whose mark moves. */
  readonly id: string;
  /** Distance to move [length], not negative. */
  readonly distance: Length;
  /** Which way. */
  readonly direction: 'up' | 'down';
}

/** The move that removes an offset, + left of the line. Internal. */
export const moveStake = (id: string, offset: Length): StakeMove => ({
  id,
  distance: offset.abs(),
  direction: offset.isNegative() ? 'left' : 'right',
});

/** The move that removes a rise, + above the grade. Internal. */
export const moveMark = (id: string, rise: Length): MarkMove => ({
  id,
  distance: rise.abs(),
  direction: rise.isNegative() ? 'up' : 'down',
});
