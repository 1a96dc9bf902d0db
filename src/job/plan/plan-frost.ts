import { entry } from '../../invariant.js';
import { berggrenDepth, type BerggrenDepth } from '../../ground/frost/berggren-depth.js';
import { frostBase, type FrostBase } from '../../ground/frost/frost-base.js';
import type { FrostLayerInput } from '../../ground/frost/frost-layers.js';
import { inField } from '../read/in-field.js';
import { sum } from '../../units/aggregate.js';
import { NO_LENGTH } from '../../units/zero.js';
import type { ReadJob } from '../schema/job-shape.js';
import { isStone } from '../schema/layer-kinds.js';
import { looseOf } from './materials.js';
import { frostSteps, WINTER } from './working/frost-steps.js';
import { placeBy, type PlacedStep } from './placed.js';
import type { GroundBasis } from './plan-ground.js';
import type { FrostPlan } from './plan-of-ground.js';

/** Frost under a pavement, with the base that keeps it out. Internal. */
export interface PlannedFrost {
  readonly plan: FrostPlan;
  readonly base: FrostBase;
  readonly steps: () => readonly PlacedStep[];
}

type Frost = NonNullable<NonNullable<ReadJob['ground']>['frost']>;

/** Frost under a pavement; null if the job gives no winter. Internal. */
export function planFrost({ job, pavement }: GroundBasis): PlannedFrost | null {
  const frost = job.ground?.frost;
  if (frost === undefined) return null;
  // faults of the equations are those of the winter and its soil
  return inField(
    () => frostOf({ job, pavement }, frost),
    () => ['ground', 'frost'],
  );
}

function frostOf(
  { job, pavement }: Pick<GroundBasis, 'job' | 'pavement'>,
  frost: Frost,
): PlannedFrost {
  const stones = pavement.layers.filter(isStone);
  const [stone] = stones;
  const { compactedDryDensity } = looseOf(job.materials.stones, stone?.material);
  const total = sum(pavement.layers.map(({ thickness }) => thickness));
  const above = sum([
    NO_LENGTH,
    ...pavement.layers.filter((one) => !isStone(one)).map(({ thickness }) => thickness),
  ]);
  const base = {
    name: 'base',
    soil: 'sandy',
    dryDensity: compactedDryDensity,
    moisture: frost.baseMoisture.toString(),
  } as const;
  const subgrade = {
    name: 'subgrade',
    soil: frost.soil,
    dryDensity: frost.dryDensity,
    moisture: frost.moisture.toString(),
  };
  const built = depthOf(frost, [{ ...base, thickness: total }, subgrade]);
  const endless = depthOf(frost, [base]);
  const against = frostBase({
    frostDepth: endless.depth,
    pavement: above,
    subgradeMoisture: frost.moisture.toString(),
    baseMoisture: frost.baseMoisture.toString(),
  });
  const into = entry(built.layers, 1).frozen;
  return {
    plan: {
      depth: built.depth,
      twoZoneDepth: built.twoZoneDepth,
      intoSubgrade: into,
      group: job.ground?.frostGroup ?? null,
      extrapolated: built.extrapolated || endless.extrapolated,
    },
    base: against,
    steps: () => [
      ...built.working,
      ...endless.working,
      ...frostSteps({ job, pavement }, frost, { built, endless, total, above, into }),
      ...placeBy(
        against.working,
        {},
        { ws: [[...WINTER, 'moisture']], wb: [[...WINTER, 'baseMoisture']] },
      ),
    ],
  };
}

const depthOf = (frost: Frost, layers: readonly FrostLayerInput[]): BerggrenDepth => {
  const { airIndex, meanAnnual, seasonDays, surface = 'concrete' } = frost;
  return berggrenDepth({
    airIndex: { ...airIndex, value: airIndex.value.toString() },
    meanAnnual: { ...meanAnnual, value: meanAnnual.value.toString() },
    seasonDays: seasonDays.toString(),
    surface,
    layers,
  });
};
