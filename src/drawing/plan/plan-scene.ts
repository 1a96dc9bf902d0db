import { entry, known } from '../../invariant.js';
import type { JobPlan, PavementPlan } from '../../job/plan/plan.js';
import { digOutline } from '../../job/plan/in-dig.js';
import { jobOfPlan } from '../../job/saved/job-of-plan.js';
import type { ReadJob } from '../../job/schema/job-shape.js';
import { cornersOf, edgeNames } from '../../job/sheet/corners.js';
import type { Outline } from '../../outline/ring.js';
import { widen } from '../../outline/widen-outline.js';
import { ringsInMetres, type Place, type RingInMetres } from './rings-in-metres.js';

/** A pavement as it is drawn in plan. Internal. */
export interface ScenePavement {
  readonly plan: PavementPlan;
  readonly paving: readonly RingInMetres[];
  /** Null where it is the bottom of the dig. */
  readonly base: readonly RingInMetres[] | null;
  readonly dig: readonly RingInMetres[];
  /** Null where all sides are upright. */
  readonly top: readonly RingInMetres[] | null;
  /** Letters of the corners, ring after ring. */
  readonly letters: readonly string[];
  /** Names of the edges, ring after ring. */
  readonly edges: readonly string[];
}

/** What a plan draws, in metres. Internal. */
export interface PlanScene {
  readonly plan: JobPlan;
  readonly job: ReadJob;
  readonly pavements: readonly ScenePavement[];
  /** Stakes of the strings by their ids. */
  readonly stakes: ReadonlyMap<string, Place>;
}

/** Gathers what a plan draws. Internal. */
export function planScene(plan: JobPlan): PlanScene {
  const job = jobOfPlan(plan);
  return {
    plan,
    job,
    pavements: plan.pavements.map((one, index) =>
      scenePavement(one, entry(job.pavements, index).outline),
    ),
    stakes: new Map(job.stakes.map(({ id, x, y }) => [id, [x.toNumber('m'), y.toNumber('m')]])),
  };
}

function scenePavement(plan: PavementPlan, outline: Outline): ScenePavement {
  const { digOutline: points, digArcs: arcs, digHoles: holes, top } = plan;
  return {
    plan,
    paving: ringsInMetres(outline),
    base: baseRings(plan, outline),
    dig: ringsInMetres(digOutline({ outer: { points, arcs }, holes })),
    top: top === null ? null : ringsInMetres(digOutline({ outer: top, holes: top.holes })),
    letters: cornersOf(outline).map(({ name }) => name),
    edges: edgeNames(outline),
  };
}

/** The edge of the base, worked out as for its area. */
function baseRings({ edges }: PavementPlan, outline: Outline): RingInMetres[] | null {
  if (edges.every(({ base, dig }) => base.equals(dig))) return null;
  const {
    outline: points,
    arcs,
    holes,
  } = widen(
    outline,
    edges.map(({ base }) => base),
    ['pavement'],
  );
  return ringsInMetres(digOutline({ outer: { points, arcs }, holes }));
}

/** All places that have to be in the picture. Internal. */
export const placesOfScene = ({ pavements, stakes, plan }: PlanScene): Place[] => [
  ...pavements.flatMap(({ paving, base, dig, top }) =>
    [...paving, ...(base ?? []), ...dig, ...(top ?? [])].flatMap(({ points }) => points),
  ),
  ...plan.stringLines.flatMap((line) =>
    line.stakes.map(({ id }) => known(stakes.get(id), 'stake')),
  ),
];
