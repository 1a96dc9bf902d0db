import type { Length } from '../units/quantity.js';

/** How to bring a stake into line: square to the line, seen from the first stake to the last. */
export interface StakeMove {
  /** The stake to move. */
  readonly id: string;
  /** How far [length], not negative. */
  readonly distance: Length;
  /** Which way, facing from the first stake to the last. */
  readonly direction: 'left' | 'right';
}

/** How to bring a mark onto the grade. */
export interface MarkMove {
  /** The stake whose mark moves. */
  readonly id: string;
  /** How far [length], not negative. */
  readonly distance: Length;
  /** Which way. */
  readonly direction: 'up' | 'down';
}

/** The move that takes an offset away, + left of the line. Internal. */
export const moveStake = (id: string, offset: Length): StakeMove => ({
  id,
  distance: offset.abs(),
  direction: offset.isNegative() ? 'left' : 'right',
});

/** The move that takes a rise away, + above the grade. Internal. */
export const moveMark = (id: string, rise: Length): MarkMove => ({
  id,
  distance: rise.abs(),
  direction: rise.isNegative() ? 'up' : 'down',
});
