import { list, object, quantity, text } from '../input/field.js';
import { ELEVATION, STATION } from '../input/ranges.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import type { LengthInput } from '../units/construct.js';
import { exactOf } from '../units/quantity.js';
import type { Vector } from '../units/vector.js';

/** A stake in profile: station and elevation of its mark. */
export interface ProfileStakeInput {
  /** What is written on the stake. Each id once. */
  readonly id: string;
  /** Distance along the string [length], up to 100 km either way. */
  readonly station: LengthInput;
  /** Elevation of the mark, or any height above one level plane [length], up to 10 km either way. */
  readonly elevation: LengthInput;
}

const PROFILE_STAKE = shapeOf<ProfileStakeInput>()({
  id: text(),
  station: quantity(STATION),
  elevation: quantity(ELEVATION),
});

/** A row of stakes in profile. Internal. */
export const profileStakes = (least: number): Field<readonly Values<typeof PROFILE_STAKE>[]> =>
  list(object(PROFILE_STAKE), { of: 'stakes', least, unique: 'id' });

/** A stake in profile: the station in x, the level in y. Internal. */
export interface ProfileStake {
  readonly id: string;
  readonly at: Vector;
}

/** Brings stakes in profile into one form. Internal. */
export const inProfile = (stakes: readonly Values<typeof PROFILE_STAKE>[]): ProfileStake[] =>
  stakes.map(({ id, station, elevation }) => ({
    id,
    at: { x: exactOf(station), y: exactOf(elevation) },
  }));
