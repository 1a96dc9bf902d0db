import { present } from '../../invariant.js';
import { max } from '../../units/aggregate.js';
import { length } from '../../units/construct.js';
import type { LaidOut } from '../plan/lay-out.js';
import { PUBLISHED_LEAST_FALL } from '../plan/plan-slopes.js';
import type { PlanWarning } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { lengthFigure, placeFigures, slopeFigure } from './figures.js';
import { knownFinishes, type FinishOnEdge } from './finish-along.js';
import { edgePieces, isBuilt, originOf, type SaidOfEdge } from './paving-edges.js';
import { warning } from './warning.js';

const nameOf = ({ pavement }: LaidOut): string => pavement.name ?? pavement.id;

/** What is found along one edge: the place where it is worst, and by how much. */
interface Worst {
  readonly edge: number;
  readonly said: SaidOfEdge;
  fall: FinishOnEdge | null;
  rounding: number;
  high: FinishOnEdge | null;
}

/** Water at buildings, slabs and floors: over the whole of each edge, by every level there is. Internal. */
export function waterWarnings(job: ReadJob, laid: LaidOut): PlanWarning[] {
  const pieces = edgePieces(laid.pavement, isBuilt);
  if (pieces.length === 0) return [];
  const finishes = knownFinishes(laid);
  const byEdge = new Map<number, Worst>();
  for (const piece of pieces) {
    const { edge, said } = piece;
    const worst = byEdge.get(edge) ?? { edge, said, fall: null, rounding: 0, high: null };
    byEdge.set(edge, worst);
    for (const { along, rounding } of finishes) {
      for (const found of along(piece)) {
        // within the rounding the first place is named
        if (worst.fall === null || found.outward < worst.fall.outward - rounding) {
          worst.fall = found;
          worst.rounding = rounding;
        }
        if (worst.high === null || found.height > worst.high.height) worst.high = found;
      }
    }
  }
  return [...byEdge.values()].flatMap((worst) => [
    ...fallWarnings(job, laid, worst),
    ...floorWarnings(laid, worst),
  ]);
}

/** Water that runs at an edge, or too slowly away from it. */
function fallWarnings(
  job: ReadJob,
  laid: LaidOut,
  { edge, said, fall, rounding }: Worst,
): PlanWarning[] {
  if (fall === null) return [];
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const place = placeFigures(originOf(laid.pavement), fall.place);
  const values = {
    edge,
    along: present(said, 'edge').along,
    fall: slopeFigure(Math.abs(fall.outward)),
  };
  if (fall.outward < -rounding) {
    return [warning('FALLS_TO_BUILDING', nameOf(laid), { ...values, ...place })];
  }
  if (fall.outward >= least.toNumber('ratio') - rounding) return [];
  return [warning('FALL_AWAY_TOO_SMALL', nameOf(laid), { ...values, least, ...place })];
}

/** A floor may lie so much below the paving beside it [metres]: what levels are rounded to. */
const FLUSH = 0.001;

/** Paving above the floor or paving that it meets. */
function floorWarnings(laid: LaidOut, { edge, said, high }: Worst): PlanWarning[] {
  if (high === null || said?.level === undefined) return [];
  const above = high.height - said.level.toNumber('m');
  if (above <= FLUSH + 1e-9) return [];
  const place = placeFigures(originOf(laid.pavement), high.place);
  const values = { edge, along: said.along, above: lengthFigure(above), level: said.level };
  return [warning('PAVING_ABOVE_FLOOR', nameOf(laid), { ...values, ...place })];
}

/**
 * A dig beside a building whose footing is not known is looked into from this depth on: shallow footings
 * start here. Common practice, no source.
 */
const DEEP_BESIDE_BUILDING = /* #__PURE__ */ length(450, 'mm');

/** Digs below a footing, or deep beside a building whose footing is not known. Internal. */
export function footingWarnings(laid: LaidOut): PlanWarning[] {
  const { pavement, stack, dig } = laid;
  return (pavement.edges ?? []).flatMap((said, index) => {
    if (said?.along !== 'building') return [];
    const edge = index + 1;
    const { footing } = said;
    if (footing !== undefined) {
      const below = stack.total.minus(footing);
      if (below.isZero() || below.isNegative()) return [];
      const values = { edge, dig: stack.total, footing, below };
      return [warning('DIG_BELOW_FOOTING', nameOf(laid), values)];
    }
    const deep = max([stack.total, dig.depth]);
    if (deep.compare(DEEP_BESIDE_BUILDING) <= 0) return [];
    const values = { edge, dig: deep, limit: DEEP_BESIDE_BUILDING };
    return [warning('FOOTING_NOT_KNOWN', nameOf(laid), values)];
  });
}
