import type { BuildUp } from '../../build-up/build-up.js';
import { lifts } from '../../build-up/lifts.js';
import { NO_LENGTH } from '../../units/zero.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import { isStone, type Pavement } from '../schema/layer-kinds.js';
import { looseOf } from './materials.js';
import type { LiftPlan } from './plan.js';

/** Every lift of stone from the subgrade up, layer by layer. Internal. */
export function planLifts(job: ReadJob, pavement: Pavement, stack: BuildUp): LiftPlan[] {
  const planned: LiftPlan[] = [];
  let below = NO_LENGTH;
  for (const layer of [...pavement.layers].reverse().filter(isStone)) {
    const { maxLift, compactedPerLoose } = looseOf(job.materials.stones, layer.material);
    const { compacted, loose, tops } = lifts({
      thickness: layer.thickness,
      maxLift,
      compactedPerLoose: numberText(compactedPerLoose),
    });
    for (const top of tops) {
      const aboveSubgrade = below.plus(top);
      planned.push({
        lift: planned.length + 1,
        layer: layer.name ?? layer.kind,
        compacted,
        loose,
        aboveSubgrade,
        belowFinish: stack.total.minus(aboveSubgrade),
      });
    }
    below = below.plus(layer.thickness);
  }
  return planned;
}
