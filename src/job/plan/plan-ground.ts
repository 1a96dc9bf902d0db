import type { MinimumBuildUp } from '../../build-up/minimum-build-up.js';
import {
  compactionMethod,
  type CompactionMethod,
} from '../../ground/compaction/compaction-method.js';
import { frostSupport } from '../../ground/frost/frost-support.js';
import { liftWater, type LiftWater } from '../../ground/soil/lift-water.js';
import { peakRunoff } from '../../ground/water/peak-runoff.js';
import { ZERO } from '../../units/decimal.js';
import type { Area } from '../../units/quantity.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { Pavement } from '../schema/layer-kinds.js';
import { methodSteps, runoffSteps, supportSteps, waterSteps } from './working/ground-steps.js';
import { looseOf } from './materials.js';
import type { PlacedStep } from './placed.js';
import { planFrost } from './plan-frost.js';
import { planThicknesses } from './plan-thicknesses.js';
import type { LiftGroundPlan, PavementGroundPlan } from './plan-of-ground.js';
import type { LiftPlan } from './plan.js';

/** What the ground of a pavement is planned from. Internal. */
export interface GroundBasis {
  readonly job: ReadJob;
  readonly pavement: Pavement;
  readonly minimum: MinimumBuildUp;
  readonly lifts: readonly LiftPlan[];
  /** Area of the base that is not counted with another pavement. */
  readonly base: Area;
  /** Area of the paving. */
  readonly paving: Area;
}

/** The plan of the ground with its working. Internal. */
export interface PlannedGround {
  readonly plan: PavementGroundPlan | null;
  readonly steps: () => readonly PlacedStep[];
}

/** What the ground means for a pavement; null if the job says nothing of it. Internal. */
export function planGround(basis: GroundBasis): PlannedGround {
  const { job, lifts } = basis;
  const { ground } = job;
  if (ground === undefined) return { plan: null, steps: () => [] };
  const frost = planFrost(basis);
  const support =
    ground.cbr === undefined
      ? null
      : frostSupport({ cbr: ground.cbr.toString(), group: ground.frostGroup ?? 'NFS' });
  const thicknesses = planThicknesses(basis, { frost: frost?.base ?? null, support });
  const methods = lifts.map((lift) => methodOf(job, lift));
  const waters = lifts.map((lift) => waterOf(basis, lift));
  const runoff = runoffOf(basis);
  const plan: PavementGroundPlan = {
    thicknesses: thicknesses.plan,
    frost: frost?.plan ?? null,
    strength: support?.strength ?? null,
    lifts: lifts.map((lift, index) =>
      liftPlan(lift, methods[index] ?? null, waters[index] ?? null),
    ),
    thickestLift: methods[0]?.thickestLift ?? null,
    runoff: runoff?.flow ?? null,
  };
  const steps = () => [
    ...(frost?.steps() ?? []),
    ...supportSteps(support),
    ...thicknesses.steps(),
    ...methods.flatMap((method) => method?.working ?? []),
    ...methodSteps(ground.plant, methods, { lifts, thickest: plan.thickestLift }),
    ...waterSteps(
      job,
      waters,
      lifts.map((lift) => layerOf(basis.pavement, lift)?.material),
    ),
    ...runoffSteps(runoff, ground),
  ];
  return { plan, steps };
}

const liftPlan = (
  { lift }: LiftPlan,
  method: CompactionMethod | null,
  water: LiftWater | null,
): LiftGroundPlan => ({
  lift,
  water: water?.water ?? null,
  action: water?.action ?? null,
  passes: method?.passes ?? null,
  verdict: method === null ? null : method.passes === null ? 'fail' : 'pass',
});

function methodOf({ ground }: ReadJob, { compacted }: LiftPlan): CompactionMethod | null {
  if (ground?.plant === undefined) return null;
  const { plant, mass, plateArea, drumWidth, fill = 'granular' } = ground.plant;
  return compactionMethod({
    plant,
    mass,
    fill,
    lift: compacted,
    ...(plateArea === undefined ? {} : { plateArea }),
    ...(drumWidth === undefined ? {} : { drumWidth }),
  });
}

/** The layer of the job that a lift is of. */
const layerOf = ({ layers }: Pavement, lift: LiftPlan) =>
  layers.find(({ kind, name = kind }) => name === lift.layer);

function waterOf({ job, pavement, base }: GroundBasis, lift: LiftPlan): LiftWater | null {
  const layer = layerOf(pavement, lift);
  const optimum = job.ground?.optimum?.find(({ stone }) => stone === layer?.material);
  if (optimum === undefined || base.isZero()) return null;
  const stone = looseOf(job.materials.stones, optimum.stone);
  return liftWater({
    area: base,
    thickness: lift.compacted,
    dryDensity: stone.compactedDryDensity,
    moisture: numberText(optimum.moisture ?? stone.moisture ?? ZERO),
    targetMoisture: numberText(optimum.optimumMoisture),
  });
}

function runoffOf({ job, paving }: GroundBasis) {
  const storm = job.ground?.storm;
  if (storm === undefined) return null;
  const share =
    storm.coefficient === undefined
      ? ({ surface: 'brick' } as const)
      : { coefficient: numberText(storm.coefficient) };
  return peakRunoff({
    areas: [{ area: paving, ...share }],
    rain: { depth: storm.depth, time: storm.time },
  });
}
