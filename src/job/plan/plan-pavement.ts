import type { LevelBook } from '../../levelling/reduce-levels.js';
import { minimumBuildUp } from '../../build-up/minimum-build-up.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { FinishSurface } from './finish-surface.js';
import type { LaidOut } from './lay-out.js';
import { paverOf, sandOf } from './materials.js';
import { planBetween } from './plan-between.js';
import type { TaperedBase } from './areas/tapered-base.js';
import { isStone, thicknessOf } from '../schema/layer-kinds.js';
import { NO_LENGTH } from '../../units/zero.js';
import { betweenSteps } from './working/between-steps.js';
import { buildUpSteps, minimumSteps } from './working/build-up-steps.js';
import { digSteps } from './working/dig-steps.js';
import { earthSteps } from './working/earth-steps.js';
import { areaSteps } from './working/area-steps.js';
import { edgeSteps } from './working/edge-steps.js';
import { gradeSteps } from './working/grade-steps.js';
import { liftSteps } from './working/lift-steps.js';
import { nearbySteps } from './working/nearby-steps.js';
import { oldPavingSteps } from './working/old-paving-steps.js';
import { orderSteps } from './working/order-steps.js';
import { paverSteps } from './working/paver-steps.js';
import { placeBy, type PlacedStep } from './placed.js';
import { supplySteps } from './working/supply-steps.js';
import { planGround } from './plan-ground.js';
import { planEarth } from './earth/plan-earth.js';
import { withTops } from './plan-edges.js';
import { planLifts } from './plan-lifts.js';
import { planNearby } from './plan-nearby.js';
import { planOldPaving, type OldPavingOfJob } from './plan-old-paving.js';
import { planOrders } from './plan-orders.js';
import { planPavers } from './plan-pavers.js';
import { type PlannedSides } from './earth/plan-sides.js';
import { planSpoil, spoilSteps } from './plan-spoil.js';
import { planSupplies } from './plan-supplies.js';
import type { PavementPlan } from './plan.js';
import { areaOfRegions } from './areas/regions.js';
import type { OwnParts } from './areas/share-out.js';
import type { StakesById } from './stake-grounds.js';

/** A pavement's plan with its working. Internal. */
export interface PlannedPavement {
  readonly plan: PavementPlan;
  /** Finished grade through fixed levels; null if the stakes give it. */
  readonly surface: FinishSurface | null;
  /** The old paving of the job that lies in its dig. */
  readonly stripped: readonly OldPavingOfJob[];
  readonly steps: () => readonly PlacedStep[];
}

/** A pavement that has been laid out, its share of areas, and the job. */
interface Basis {
  readonly job: ReadJob;
  readonly laid: LaidOut;
  readonly own: OwnParts;
  readonly sides: PlannedSides;
  readonly stakes: StakesById;
}

/** Plans one pavement that has been laid out: earth, lifts, orders and spoil. Internal. */
export function planPavement(
  job: ReadJob,
  laid: LaidOut,
  {
    own,
    sides,
    stakes,
    book,
  }: Pick<Basis, 'own' | 'sides' | 'stakes'> & { readonly book: LevelBook | null },
): PlannedPavement {
  const { pavement, stack, extension, paving, grade, dig } = laid;
  const basis = { job, laid, own, sides, stakes };
  const dug = planEarthOf(basis);
  const placed = planPlaced(basis, dug.plan);
  const near = planNearby(job, {
    rings: ringsOf(laid),
    dig,
    measured: laid.measured.flatMap((line) => line.flatMap((one) => one.dig ?? [])),
    deepest: dug.plan.earth.deepestCut?.depth ?? null,
    depthAt: laid.ground.depthAt,
  });
  const { use, subgrade, frost = false } = pavement;
  const minimum = minimumBuildUp({ use, subgrade, frost });
  const ground = planGround({
    job,
    pavement,
    minimum,
    lifts: placed.plan.lifts,
    base: areaOfRegions(own.base),
    paving,
  });
  const plan: PavementPlan = {
    id: pavement.id,
    name: pavement.name ?? pavement.id,
    use,
    subgrade,
    frost,
    buildUp: stack,
    layerKinds: pavement.layers.map(({ kind }) => kind),
    settlement: sandOf(job.materials, pavement).settlement ?? null,
    minimum,
    ...dug.plan,
    ...placed.plan,
    extension: extension.extension,
    areas: areasOf(laid, own),
    grade: grade?.plan ?? null,
    betweenStrings: planBetween(job, pavement, { stakes, total: stack.total, path: laid.path }),
    nearby: near.plan,
    ground: ground.plan,
  };
  const ownDig = plan.areas.ownDig;
  const steps = () => [
    ...buildUpSteps(stack, pavement),
    ...minimumSteps(plan.minimum),
    ...gradeSteps(pavement, grade, book),
    ...placeBy(extension.working, { x: [['extension']] }),
    ...edgeSteps(job, laid, plan),
    ...areaSteps(laid, plan),
    ...digSteps({ job, laid }),
    ...dug.old.flatMap((one, index) => oldPavingSteps({ ...one, index, dig: ownDig })),
    ...earthSteps(job, laid, plan),
    ...liftSteps(job, pavement, plan),
    ...orderSteps(job, pavement, plan),
    ...paverSteps(job, plan, {
      paver: placed.paver,
      edging: pavement.border?.paver,
      steps: placed.pavers.steps(),
    }),
    ...supplySteps({ job, pavement, plan, paver: placed.paver, made: placed.supplies }),
    ...nearbySteps(job, laid, { plan, made: near.made }),
    ...ground.steps(),
    ...spoilSteps(job, plan),
    ...betweenSteps(job, pavement, plan),
  ];
  const stripped = dug.old.map(({ one }) => one.old);
  return { plan, surface: grade?.surface ?? null, stripped, steps };
}

const areasOf = ({ paving, widened, dug }: LaidOut, own: OwnParts) => ({
  paving,
  base: widened.area,
  dig: dug.area,
  ownBase: areaOfRegions(own.base),
  ownDig: areaOfRegions(own.dig),
});

const ringsOf = ({ dug }: LaidOut) => ({
  outer: { points: dug.outline, arcs: dug.arcs },
  holes: dug.holes,
});

/** Plans the dig: old paving, soil, sloped sides. */
function planEarthOf({ job, laid, own, sides }: Basis) {
  const { dug, ground, dig } = laid;
  const old = planOldPaving(own.dig, laid.oldPaving);
  const earth = planEarth({
    ground,
    dig: laid.bottom,
    regions: own.dig,
    oldPaving: laid.oldPaving,
    stripped: old.inPlace,
    sides: sides.extra,
  });
  const plan = {
    dig,
    earth: earth.plan,
    edges: withTops(laid.edges, dig.depth),
    digOutline: dug.outline,
    digArcs: dug.arcs,
    digHoles: dug.holes,
    digClosesUp: dug.closesUp,
    digLongMitres: dug.longMitres.map((corner) => corner + 1),
    top: sides.top,
    oldPaving: old.plans,
    spoil: planSpoil(job, earth.plan.cut),
  };
  return { plan, old: old.found };
}

/** The tapered base of a pavement; null for full thickness. */
const taperOf = (
  job: ReadJob,
  { pavement, edges, path }: LaidOut,
  regions: OwnParts['base'],
): TaperedBase | null =>
  pavement.taperedBase === true
    ? {
        paving: pavement.outline,
        edges,
        regions,
        restraint: job.edgeRestraintWidth ?? NO_LENGTH,
        thickness: thicknessOf(pavement, isStone),
        path: [...path, 'outline'],
      }
    : null;

/** Plans the materials placed: lifts, stone, sand, pavers and supplies. */
function planPlaced(
  { job, laid, own }: Basis,
  { earth, edges }: Pick<PavementPlan, 'earth' | 'edges'>,
) {
  const { pavement, path, paving, stack } = laid;
  const amounts = {
    base: areaOfRegions(own.base),
    paving,
    fill: earth.fill.volume,
    taper: taperOf(job, laid, own.base),
  };
  const paver = paverOf(job.materials, pavement);
  const orders = planOrders(job, pavement, amounts);
  const pavers = planPavers(job, pavement, { paving, path });
  const supplies = planSupplies(job, pavement, {
    paving,
    edges,
    dig: ringsOf(laid),
    paver,
  });
  const plan = {
    lifts: planLifts(job, pavement, stack),
    stones: orders.stones,
    bedding: orders.bedding,
    pavers: pavers.plan,
    supplies: supplies.plan,
  };
  return { plan, paver, pavers, supplies };
}
