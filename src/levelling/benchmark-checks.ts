import type { Length } from '../units/quantity.js';
import { NO_LENGTH } from '../units/zero.js';
import type { ReadShot } from './day-shots.js';

/** A check on a known mark. */
export interface BenchmarkCheck {
  /** The mark. */
  readonly point: string;
  /** Computed less known. */
  readonly misclosure: Length;
  /**
   * Change in misclosure since the previous check: positive if the line of sight dropped, negative
   * if it rose.
   */
  readonly change: Length;
  /** True if the misclosure is within the allowable. */
  readonly isAccepted: boolean;
}

/** A shot with its elevation. Internal. */
export interface LevelledShot extends ReadShot {
  readonly elevation: Length;
}

/** Computed less known. Internal. */
export const missAt = (elevation: Length, known: Length): Length => elevation.minus(known);

/** Computed less known; undefined for a shot that is no check. Internal. */
export const missOf = ({ elevation, known }: LevelledShot): Length | undefined =>
  known === undefined ? undefined : missAt(elevation, known);

/** True if a misclosure is within the allowable. Internal. */
export const isWithin = (miss: Length, allowable: Length): boolean =>
  miss.abs().compare(allowable) <= 0;

/** The checks among the shots. Internal. */
export function checksOf(shots: readonly LevelledShot[], allowable: Length): BenchmarkCheck[] {
  let before = NO_LENGTH;
  return shots.flatMap((shot) => {
    const misclosure = missOf(shot);
    if (misclosure === undefined) return [];
    const change = misclosure.minus(before);
    before = misclosure;
    const isAccepted = isWithin(misclosure, allowable);
    return [{ point: shot.point, misclosure, change, isAccepted }];
  });
}
