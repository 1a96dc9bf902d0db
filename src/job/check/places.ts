import type { JobPlan, PavementPlan, StakePlan, StringLinePlan } from '../plan/plan.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';

/** A stake of a plan, with its string and pavement. Internal. */
export interface StakePlace {
  readonly stake: StakePlan;
  readonly line: StringLinePlan;
  readonly pavement: PavementPlan;
}

/** Where a reading was taken. Internal. */
export interface Place extends StakePlace {
  readonly surface: PlannedSurface;
}

/** The stakes of a plan by their ids. Internal. */
export type Places = ReadonlyMap<string, StakePlace>;

/** Finds the stakes of a plan. Internal. */
export function placesOf({ pavements, stringLines }: JobPlan): Places {
  const byId = new Map(pavements.map((pavement) => [pavement.id, pavement]));
  return new Map(
    stringLines.flatMap((line) => {
      const pavement = byId.get(line.pavement);
      if (pavement === undefined) return [];
      return line.stakes.map((stake) => [stake.id, { stake, line, pavement }] as const);
    }),
  );
}

/** The place of a reading; undefined for a stake or surface that the plan does not have. Internal. */
export function placeAt(places: Places, stake: unknown, surface: unknown): Place | undefined {
  const place = typeof stake === 'string' ? places.get(stake) : undefined;
  if (place === undefined) return undefined;
  const found = surfacesBelow(place.pavement).find((one) => one.surface === surface);
  return found === undefined ? undefined : { ...place, surface: found };
}
