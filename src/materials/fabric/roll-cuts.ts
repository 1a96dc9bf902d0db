import { sum } from '../../units/aggregate.js';
import { exactOf, type Area, type Length } from '../../units/quantity.js';
import { compareRatios, subtractRatios, type Ratio } from '../../units/ratio.js';
import { stripsAcross } from '../strips.js';
import { countOf } from '../whole-number.js';

/** A roll of fabric and its laps. Internal. */
export interface Roll {
  readonly width: Length;
  readonly overlap: Length;
  /** Null where none is given. */
  readonly length: Length | null;
  readonly endLap: Length;
}

/** What strips take of rolls. Internal. */
export interface RollCuts {
  readonly totalLength: Length;
  readonly fabricArea: Area;
  readonly rolls: number | null;
  readonly surplus: Length | null;
}

/** A strip as it is cut: more than one piece where it is longer than a roll. Internal. */
export function cutStrip(length: Length, roll: Roll): { pieces: number; cutLength: Length } {
  const pieces = roll.length === null ? 1 : stripsAcross(length, roll.length, roll.endLap);
  return { pieces, cutLength: length.plus(roll.endLap.times(pieces - 1)) };
}

/** What is left of a cut strip after its whole rolls. Internal. */
export const lastPiece = (pieces: number, cutLength: Length, rollLength: Length): Length =>
  cutLength.minus(rollLength.times(pieces - 1));

/**
 * The rolls for strips of any length: each takes whole rolls and one last piece; last pieces share
 * rolls, the longest first, each in the first roll that has room, and are never pieced again. Internal.
 */
export function cutsOf(
  strips: readonly { readonly pieces: number; readonly cutLength: Length }[],
  roll: Roll,
): RollCuts {
  const totalLength = sum(strips.map(({ cutLength }) => cutLength));
  const fabricArea = totalLength.times(roll.width);
  const { length } = roll;
  if (length === null) return { totalLength, fabricArea, rolls: null, surplus: null };
  const whole = strips.reduce((count, { pieces }) => count + pieces - 1, 0);
  const lasts = strips.map(({ pieces, cutLength }) => lastPiece(pieces, cutLength, length));
  const rolls = countOf(whole + shared(lasts, length));
  return { totalLength, fabricArea, rolls, surplus: length.times(rolls).minus(totalLength) };
}

/** How many rolls pieces take that share them. */
function shared(pieces: readonly Length[], roll: Length): number {
  const room: Ratio[] = [];
  const sizes = pieces.map(exactOf).sort((a, b) => compareRatios(b, a));
  for (const size of sizes) {
    const found = room.findIndex((left) => compareRatios(left, size) >= 0);
    const left = room[found] ?? exactOf(roll);
    room[found < 0 ? room.length : found] = subtractRatios(left, size);
  }
  return room.length;
}
