import type { BuildUp } from '../../build-up/build-up.js';
import { lifts } from '../../build-up/lifts.js';
import { NO_LENGTH } from '../../units/zero.js';
import { isStone, type Pavement } from '../schema/layer-kinds.js';
import type { LiftPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import { heightOfFirstString } from './string-height.js';

/** Every lift of stone from the subgrade up, layer by layer. Internal. */
export function planLifts(job: ReadJob, pavement: Pavement, stack: BuildUp): LiftPlan[] {
  const stringHeight = heightOfFirstString(job, pavement);
  const planned: LiftPlan[] = [];
  let below = NO_LENGTH;
  for (const layer of [...pavement.layers].reverse().filter(isStone)) {
    const { compacted, loose, tops } = lifts({
      thickness: layer.thickness,
      maxLift: job.base.maxLift,
      compactedPerLoose: job.base.compactedPerLoose.toString(),
    });
    for (const top of tops) {
      const aboveSubgrade = below.plus(top);
      const belowFinish = stack.total.minus(aboveSubgrade);
      const belowString = stringHeight.plus(belowFinish);
      planned.push({
        lift: planned.length + 1,
        layer: layer.name ?? layer.kind,
        compacted,
        loose,
        aboveSubgrade,
        belowFinish,
        belowString,
        looseBelowString: belowString.minus(loose.minus(compacted)),
      });
    }
    below = below.plus(layer.thickness);
  }
  return planned;
}
