import { entry, known } from '../../invariant.js';
import type { DigRing, JobPlan, PavementPlan, StringLinePlan } from '../../job/plan/plan.js';
import { digOutline } from '../../job/plan/areas/in-dig.js';
import { placesOfPlan, type JobPlaces } from '../../job/saved/places-of-plan.js';
import { edgeNames } from '../../job/sheet/sections/corners.js';
import type { Outline } from '../../outline/ring.js';
import { widen } from '../../outline/widen-outline.js';
import { inMetres, ringsInMetres, type Place, type RingInMetres } from './rings-in-metres.js';

/** A pavement as it is drawn in plan. Internal. */
export interface ScenePavement {
  readonly plan: PavementPlan;
  readonly paving: readonly RingInMetres[];
  /** Null where it is the bottom of the dig. */
  readonly base: readonly RingInMetres[] | null;
  readonly dig: readonly RingInMetres[];
  /** Null where all sides are upright. */
  readonly top: readonly RingInMetres[] | null;
  /** Names of the edges, ring after ring. */
  readonly edges: readonly string[];
}

/** What a plan draws, in metres. Internal. */
export interface PlanScene {
  readonly plan: JobPlan;
  readonly job: JobPlaces;
  /** Strings that it draws. */
  readonly stringLines: readonly StringLinePlan[];
  readonly pavements: readonly ScenePavement[];
  /** Stakes of the strings by their ids. */
  readonly stakes: ReadonlyMap<string, Place>;
}

/** Gathers what a plan draws: all, or one pavement with its strings alone. Internal. */
export function planScene(plan: JobPlan, only?: string): PlanScene {
  const job = placesOfPlan(plan);
  const isShown = (id: string): boolean => only === undefined || id === only;
  return {
    plan,
    job,
    stringLines: plan.stringLines.filter(({ pavement }) => isShown(pavement)),
    pavements: plan.pavements.flatMap((one, index) =>
      isShown(one.id) ? scenePavement(one, entry(job.pavements, index).outline) : [],
    ),
    stakes: new Map(job.stakes.map((stake) => [stake.id, inMetres(stake)])),
  };
}

function scenePavement(plan: PavementPlan, outline: Outline): ScenePavement {
  const { digOutline: points, digArcs: arcs, digHoles: holes, top } = plan;
  return {
    plan,
    paving: ringsInMetres(outline),
    base: baseRings(plan, outline),
    dig: ringsOfDig({ points, arcs, holes }),
    top: top === null ? null : ringsOfDig(top),
    edges: edgeNames(outline),
  };
}

/** The edge of the base, worked out as for its area. */
function baseRings({ edges }: PavementPlan, outline: Outline): RingInMetres[] | null {
  if (edges.every(({ base, dig }) => base.equals(dig))) return null;
  const widened = widen(
    outline,
    edges.map(({ base }) => base),
    ['pavement'],
  );
  return ringsOfDig({ ...widened, points: widened.outline });
}

const ringsOfDig = (outer: DigRing & { readonly holes: readonly DigRing[] }): RingInMetres[] =>
  ringsInMetres(digOutline({ outer, holes: outer.holes }));

/** All places that have to be in the picture. Internal. */
export const placesOfScene = ({ pavements, stakes, stringLines }: PlanScene): Place[] => [
  ...pavements.flatMap(({ paving, base, dig, top }) =>
    [...paving, ...(base ?? []), ...dig, ...(top ?? [])].flatMap(({ points }) => points),
  ),
  ...stringLines.flatMap((line) => line.stakes.map(({ id }) => known(stakes.get(id), 'stake'))),
];
