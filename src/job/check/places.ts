import type { JobPlan, PavementPlan, StakePlan, StringLinePlan } from '../plan/plan.js';
import { surfacesBelow, type PlannedSurface } from '../plan/surfaces.js';

/** A stake of a plan, with one of its strings and the pavement of that string. Internal. */
export interface StakePlace {
  readonly stake: StakePlan;
  readonly line: StringLinePlan;
  readonly pavement: PavementPlan;
}

/** Where a reading was taken. Internal. */
export interface Place extends StakePlace {
  readonly surface: PlannedSurface;
}

/** The stakes of a plan by their ids, each with all its strings. Internal. */
export type Places = ReadonlyMap<string, readonly StakePlace[]>;

/** Finds the stakes of a plan. Internal. */
export function placesOf({ pavements, stringLines }: JobPlan): Places {
  const byId = new Map(pavements.map((pavement) => [pavement.id, pavement]));
  const places = new Map<string, StakePlace[]>();
  for (const line of stringLines) {
    const pavement = byId.get(line.pavement);
    if (pavement === undefined) continue;
    for (const stake of line.stakes) {
      places.set(stake.id, [...(places.get(stake.id) ?? []), { stake, line, pavement }]);
    }
  }
  return places;
}

/** A stake at each of its strings, or at the one that is named. Internal. */
export const stakePlaces = (
  places: Places,
  stake: unknown,
  string: unknown,
): readonly StakePlace[] =>
  (typeof stake === 'string' ? (places.get(stake) ?? []) : []).filter(
    ({ line }) => string === undefined || line.id === string,
  );

/** True where a depth depends on the string: of another height, or of another pavement. Internal. */
export const differByString = ([first, ...others]: readonly StakePlace[]): boolean =>
  first !== undefined &&
  others.some(
    ({ line, pavement }) =>
      pavement !== first.pavement || !line.stringHeight.equals(first.line.stringHeight),
  );

/** The surface at a stake; undefined if the pavement has none of that name. Internal. */
export function surfaceAt(place: StakePlace, surface: unknown): Place | undefined {
  const found = surfacesBelow(place.pavement).find((one) => one.surface === surface);
  return found === undefined ? undefined : { ...place, surface: found };
}

/** What a reading says of its place. Internal. */
export interface GivenPlace {
  readonly stake: string;
  readonly string?: string | undefined;
  readonly surface: string;
}

/** The place of a reading; undefined for what the plan does not have, or leaves open. Internal. */
export function placeAt(places: Places, given: GivenPlace): Place | undefined {
  const own = stakePlaces(places, given.stake, given.string);
  const [first] = own;
  if (first === undefined || differByString(own)) return undefined;
  return surfaceAt(first, given.surface);
}
