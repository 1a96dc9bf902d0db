import { baseExtension } from '../../build-up/base-extension.js';
import { buildUp, type BuildUp } from '../../build-up/build-up.js';
import { minimumBuildUp } from '../../build-up/minimum-build-up.js';
import type { FieldPath } from '../../errors.js';
import { measureOutline } from '../../outline/outline-area.js';
import { widen } from '../../outline/widen-outline.js';
import { baseOrder } from '../../volumes/base-order.js';
import type { Area, Length } from '../../units/quantity.js';
import type { Step } from '../../working.js';
import type { FinishSurface } from './finish-surface.js';
import { NO_LENGTH } from '../../units/zero.js';
import { isStone, thicknessOf, type Pavement } from '../schema/layer-kinds.js';
import { digSteps, measuredDigs, planDig } from './plan-dig.js';
import { digBySurface, earthworkSteps, planEarthwork } from './plan-earthwork.js';
import { areaSteps, planEdges } from './plan-edges.js';
import { planGrade } from './plan-grade.js';
import type { LevelOf } from './plan-levels.js';
import { planLifts } from './plan-lifts.js';
import { oldSurfaceSteps, planOldSurface } from './plan-old-surface.js';
import { planNearby } from './plan-nearby.js';
import { planPavers } from './plan-pavers.js';
import { planSupplies } from './plan-supplies.js';
import { PUBLISHED_LEAST_FALL } from './plan-slopes.js';
import { planSpoil, spoilSteps } from './plan-spoil.js';
import type { PavementPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOfFirstString } from './string-height.js';

/** A pavement's plan and the working behind it. Internal. */
export interface PlannedPavement {
  readonly plan: PavementPlan;
  /** Finished grade by fixed levels; null where the stakes tell. */
  readonly surface: FinishSurface | null;
  readonly steps: () => readonly Step[];
}

/** Plans one pavement: build-up, dig, widened areas, lifts, orders and spoil. Internal. */
export function planPavement(
  job: ReadJob,
  pavement: Pavement,
  { path, levelOf }: { readonly path: FieldPath; readonly levelOf: LevelOf },
): PlannedPavement {
  const stack = stackLayers(pavement);
  const stone = thicknessOf(pavement, isStone);
  const extension = baseExtension({ baseThickness: stone });
  const { edges, widened, dug } = planOutlines(job, pavement, {
    extension: extension.extension,
    path,
  });
  const paving = measureOutline(pavement.outline).area;
  const measured = measuredDigs(job, pavement);
  const uniform = planDig(job, pavement, stack, measured);
  const least = job.minimumFall ?? PUBLISHED_LEAST_FALL;
  const grade = planGrade(pavement, { levelOf, least, path });
  const rings = { outer: { points: dug.outline, arcs: dug.arcs }, holes: dug.holes };
  const earthwork = planEarthwork(
    job,
    { pavement, grade, total: stack.total, dig: uniform, digArea: dug.area, rings },
    path,
  );
  const removed = pavement.oldSurface?.thickness ?? NO_LENGTH;
  const dig = digBySurface(uniform, earthwork, { digArea: dug.area, removed });
  const oldSurface = planOldSurface(pavement, paving);
  const frost = pavement.frost ?? false;
  const minimum = minimumBuildUp({ use: pavement.use, subgrade: pavement.subgrade, frost });
  const { base, bedding } = stoneOrders(job, pavement, { stone, baseArea: widened.area, paving });
  const pavers = planPavers(job, pavement, { paving, path });
  const supplies = planSupplies(job, pavement, { paving, edges, digOutline: dug.outline });
  const nearby = planNearby(job, { rings, dig, measured, earthwork });
  const plan: PavementPlan = {
    id: pavement.id,
    name: pavement.name ?? pavement.id,
    use: pavement.use,
    subgrade: pavement.subgrade,
    frost,
    buildUp: stack,
    layerKinds: pavement.layers.map(({ kind }) => kind),
    stringHeight: heightOfFirstString(job, pavement),
    minimum,
    dig,
    earthwork,
    extension: extension.extension,
    edges,
    areas: { paving, base: widened.area, dig: dug.area },
    digOutline: dug.outline,
    digArcs: dug.arcs,
    digHoles: dug.holes,
    digClosesUp: dug.closesUp,
    digLongMitres: dug.longMitres,
    grade: grade?.plan ?? null,
    lifts: planLifts(job, pavement, stack),
    base,
    bedding,
    pavers: pavers.plan,
    supplies: supplies.plan,
    nearby: nearby.plan,
    oldSurface,
    spoil: planSpoil(job, earthwork?.cut.volume ?? dug.area.times(dig.depth), oldSurface),
  };
  const steps = () => [
    ...stack.working,
    ...minimum.working,
    ...(grade?.steps() ?? []),
    ...extension.working,
    ...digSteps(plan, measured),
    ...earthworkSteps(earthwork, dug.area),
    ...areaSteps(plan),
    ...base.working,
    ...bedding.working,
    ...pavers.steps(),
    ...supplies.steps(),
    ...nearby.steps(),
    ...oldSurfaceSteps(oldSurface),
    ...spoilSteps(job, plan),
  ];
  return { plan, surface: grade?.surface ?? null, steps };
}

/** The outlines of base and dig: the edges of the paving moved out. */
function planOutlines(
  job: ReadJob,
  pavement: Pavement,
  { extension, path }: { readonly extension: Length; readonly path: FieldPath },
) {
  const edges = planEdges(job, pavement, extension);
  const outward = (name: 'base' | 'dig') =>
    widen(
      pavement.outline,
      edges.map((edge) => edge[name]),
      [...path, 'outline'],
    );
  const widened = outward('base');
  const isSame = edges.every((edge) => edge.base.equals(edge.dig));
  return { edges, widened, dug: isSame ? widened : outward('dig') };
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

/** Base over the widened area, bedding under the paving. */
function stoneOrders(
  job: ReadJob,
  pavement: Pavement,
  areas: { readonly stone: Length; readonly baseArea: Area; readonly paving: Area },
) {
  return {
    base: baseOrder({
      area: areas.baseArea,
      thickness: areas.stone,
      ...orderOptions(job.base),
    }),
    bedding: baseOrder({
      area: areas.paving,
      thickness: thicknessOf(pavement, ({ kind }) => kind === 'bedding'),
      ...orderOptions(job.bedding),
    }),
  };
}

function orderOptions(stone: ReadJob['bedding']) {
  return {
    compactedDryDensity: stone.compactedDryDensity,
    compactedPerLoose: stone.compactedPerLoose.toString(),
    moisture: stone.moisture?.toString() ?? 0,
    waste: stone.waste?.toString() ?? 0,
  };
}
