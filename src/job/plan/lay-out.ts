import { baseExtension, type BaseExtension } from '../../build-up/base-extension.js';
import { buildUp, type BuildUp } from '../../build-up/build-up.js';
import { fault, type FieldPath } from '../../errors.js';
import type { Outline } from '../../outline/ring.js';
import { areaOf, withArea } from '../../outline/outline-area.js';
import { widen, type WidenedOutline } from '../../outline/widen-outline.js';
import type { Area } from '../../units/quantity.js';
import type { ReadJob } from '../schema/job-shape.js';
import { isStone, thicknessOf, type Pavement } from '../schema/layer-kinds.js';
import { finishesOfStakes, type FinishesOfStakes } from './finishes-of-stakes.js';
import { findGround } from './earth/find-ground.js';
import type { Ground } from './earth/ground.js';
import { digOutline } from './areas/in-dig.js';
import { planDig } from './earth/plan-dig.js';
import { planEdges, type PlannedEdge } from './plan-edges.js';
import { planGrade, type PlannedGrade } from './plan-grade.js';
import type { LevelOf } from './plan-levels.js';
import { meanStripped, oldPavingOf, type LaidOldPaving } from './plan-old-paving.js';
import { PUBLISHED_LEAST_FALL } from './plan-slopes.js';
import type { DigPlan } from './plan.js';
import { digsAlongStrings, type StakeDig, type StakesById } from './stake-grounds.js';

/** A pavement laid out on its own, before areas shared with others are known. Internal. */
export interface LaidOut {
  readonly pavement: Pavement;
  readonly path: FieldPath;
  readonly stack: BuildUp;
  readonly extension: BaseExtension;
  readonly edges: readonly PlannedEdge[];
  readonly paving: Area;
  /** The base as a widened outline, and as an outline. */
  readonly widened: WidenedOutline;
  readonly base: Outline;
  /** The bottom of the dig as a widened outline, and as an outline. */
  readonly dug: WidenedOutline;
  readonly bottom: Outline;
  readonly grade: PlannedGrade | null;
  readonly finishes: FinishesOfStakes;
  readonly measured: readonly (readonly StakeDig[])[];
  readonly ground: Ground;
  readonly oldPaving: readonly LaidOldPaving[];
  readonly dig: DigPlan;
}

/** Lays out one pavement: build-up, edges, outlines of base and dig, grade and depth of dig. Internal. */
export function layOut(
  job: ReadJob,
  pavement: Pavement,
  {
    path,
    levelOf,
    stakes,
  }: { readonly path: FieldPath; readonly levelOf: LevelOf; readonly stakes: StakesById },
): LaidOut {
  const stack = stackLayers(pavement);
  const extension = baseExtension({ baseThickness: thicknessOf(pavement, isStone) });
  const edges = planEdges(job, pavement, extension.extension);
  const paving = pavedArea(pavement, [...path, 'outline']);
  const { widened, dug } = widenTwice(pavement, edges, [...path, 'outline']);
  const bottom = outlineOf(dug);
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const grade = planGrade(pavement, { levelOf, least, path });
  const finishes = finishesOfStakes(job, pavement, { stakes, surface: grade?.surface ?? null });
  const { total } = stack;
  const measured = digsAlongStrings(job, stakes, { id: pavement.id, total, finishAt: finishes.at });
  const ground = findGround(job, {
    pavement,
    grade,
    stack,
    dig: bottom,
    measured,
    finishes: finishes.levels,
    path,
  });
  const oldPaving = oldPavingOf(job, pavement.id);
  const stripped = meanStripped(bottom, oldPaving);
  const dig = planDig(ground, { dig: bottom, area: dug.area, stripped, measured });
  return {
    pavement,
    path,
    stack,
    extension,
    edges,
    paving,
    widened,
    base: dug === widened ? bottom : outlineOf(widened),
    dug,
    bottom,
    grade,
    finishes,
    measured,
    ground,
    oldPaving,
    dig,
  };
}

function stackLayers({ layers }: Pavement): BuildUp {
  return buildUp({
    layers: layers.map(({ name, kind, thickness, material }) => ({
      name: name ?? kind,
      thickness,
      ...(material === undefined ? {} : { material }),
    })),
  });
}

/** Less paving than this has the unit of its outline wrong [m2]. Common practice, no source. */
const LEAST_PAVING = 0.05;

/** The area of the paving, refused where nobody could walk on it. */
function pavedArea({ outline }: Pavement, path: FieldPath): Area {
  const paving = areaOf(outline);
  if (paving.toNumber('m2') >= LEAST_PAVING) return paving;
  const message = `the paving is smaller than ${LEAST_PAVING} m2 (0.5 sq ft). Check the digits and the unit of its outline`;
  throw fault('OUT_OF_RANGE', message, { got: paving.toString(), least: LEAST_PAVING }, path);
}

/** The outlines of base and dig, from the edges of the paving moved out. */
function widenTwice({ outline }: Pavement, edges: readonly PlannedEdge[], path: FieldPath) {
  const outward = (name: 'base' | 'dig') =>
    widen(
      outline,
      edges.map((edge) => edge[name]),
      path,
    );
  const widened = outward('base');
  const isSame = edges.every((edge) => edge.base.equals(edge.dig));
  return { widened, dug: isSame ? widened : outward('dig') };
}

/** A widened outline as an outline. Internal. */
export const outlineOf = ({ outline: points, arcs, holes, area }: WidenedOutline): Outline =>
  withArea(digOutline({ outer: { points, arcs }, holes }), area);
