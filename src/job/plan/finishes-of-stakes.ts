import { entry } from '../../invariant.js';
import type { Length } from '../../units/quantity.js';
import {
  compareRatios,
  divideRatios,
  ONE_RATIO,
  signOfRatio,
  ZERO_RATIO,
  type Ratio,
} from '../../units/ratio.js';
import {
  between,
  dot,
  minus,
  plus,
  pointFrom,
  scaled,
  squared,
  type PlanPoint,
  type Vector,
} from '../../units/vector.js';
import { chordsOf } from '../../outline/chords.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';
import type { SpotHeight } from '../schema/spot-heights-field.js';
import type { FinishSurface } from './finish-surface.js';
import { stakesOf, type Stake, type StakesById } from './stake-grounds.js';

/** Finished grade from the stakes of a pavement. Internal. */
export interface FinishesOfStakes {
  /** Finished grade at a stake: its own level, or that of the fixed levels; null if neither is known. */
  readonly at: (stake: Stake) => Length | null;
  /** The levels given at stakes, at the points they apply to. */
  readonly levels: readonly SpotHeight[];
}

/** Finds finished grade at the stakes of a pavement. Internal. */
export function finishesOfStakes(
  job: ReadJob,
  { id, outline }: Pavement,
  { stakes, surface }: { readonly stakes: StakesById; readonly surface: FinishSurface | null },
): FinishesOfStakes {
  const own = new Map(
    job.stringLines
      .filter(({ pavement }) => pavement === id)
      .flatMap((line) => stakesOf(line, stakes))
      .map((stake) => [stake.id, stake]),
  );
  const levels = [...own.values()].flatMap((stake): SpotHeight[] => {
    const { finish, finishAt } = stake;
    if (finish === undefined) return [];
    const place = finishAt === 'edge' ? nearestOn(outline, stake) : stake;
    return [{ x: place.x, y: place.y, z: finish }];
  });
  const at = (stake: Stake): Length | null => stake.finish ?? surface?.(stake).elevation ?? null;
  return { at, levels };
}

/** The point on the edge of a paving that is nearest to a point. */
function nearestOn(outline: Pavement['outline'], place: PlanPoint): PlanPoint {
  const to = between(outline.origin, place);
  const { points } = chordsOf(outline, false);
  let [nearest = to] = points;
  let least = squared(minus(to, nearest));
  points.forEach((from, index) => {
    const on = nearestOf(from, entry(points, (index + 1) % points.length), to);
    const away = squared(minus(to, on));
    if (compareRatios(away, least) < 0) {
      nearest = on;
      least = away;
    }
  });
  return pointFrom(outline.origin, nearest);
}

function nearestOf(from: Vector, to: Vector, place: Vector): Vector {
  const ahead = minus(to, from);
  const share = divideRatios(dot(minus(place, from), ahead), squared(ahead));
  return plus(from, scaled(ahead, between01(share)));
}

function between01(share: Ratio): Ratio {
  if (signOfRatio(share) < 0) return ZERO_RATIO;
  return compareRatios(share, ONE_RATIO) > 0 ? ONE_RATIO : share;
}
