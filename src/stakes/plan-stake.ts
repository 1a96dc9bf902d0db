import { list, object, quantity, text } from '../input/field.js';
import { PLACE } from '../input/ranges.js';
import { shapeOf, type Field, type Values } from '../input/shape.js';
import { entry } from '../invariant.js';
import type { LengthInput } from '../units/construct.js';
import { between, type PlanPoint, type Vector } from '../units/vector.js';
import { NO_LENGTH } from '../units/zero.js';

/** A point in plan, on any grid of the site. */
export interface PlanPlaceInput {
  /** First coordinate, such as the easting [length], up to 100 000 km either way. */
  readonly x: LengthInput;
  /**
   * Second coordinate, such as the northing; its axis points left of the first [length], up to 100
   * 000 km either way.
   */
  readonly y: LengthInput;
}

/** A stake in plan. */
export interface PlanStakeInput extends PlanPlaceInput {
  /** What is written on the stake. Each id once. */
  readonly id: string;
}

/** How a point in plan is read. Internal. */
export const PLAN_PLACE = shapeOf<PlanPlaceInput>()({ x: quantity(PLACE), y: quantity(PLACE) });

const PLAN_STAKE = shapeOf<PlanStakeInput>()({ id: text(), ...PLAN_PLACE });

/** A stake in plan that has been read. Internal. */
export type PlanStake = Values<typeof PLAN_STAKE>;

/** A row of stakes in plan. Internal. */
export const planStakes = (least: number): Field<readonly PlanStake[]> =>
  list(object(PLAN_STAKE), { of: 'stakes', least, unique: 'id' });

/** A stake in plan, relative to the first one. Internal. */
export interface LocalStake {
  readonly id: string;
  readonly at: Vector;
}

/** Zero of the grid. Internal. */
export const GRID_ORIGIN: PlanPoint = Object.freeze({ x: NO_LENGTH, y: NO_LENGTH });

/** Stakes relative to the first one, exactly. Internal. */
export function fromFirstStake(stakes: readonly PlanStake[]): {
  readonly origin: PlanPoint;
  readonly local: readonly LocalStake[];
} {
  const { x, y } = entry(stakes, 0);
  const origin = { x, y };
  return { origin, local: stakes.map((stake) => ({ id: stake.id, at: between(origin, stake) })) };
}
