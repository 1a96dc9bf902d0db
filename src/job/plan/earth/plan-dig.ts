import { soilUnder } from '../../../build-up/excavation-depth.js';
import type { Outline } from '../../../outline/ring.js';
import type { Area, Length } from '../../../units/quantity.js';
import { NO_LENGTH } from '../../../units/zero.js';
import type { Ground } from './ground.js';
import type { DigPlan } from '../plan.js';
import type { StakeDig } from '../stake-grounds.js';

/** Depth of a dig below the existing surface, and soil to dig after stripping. Internal. */
export function planDig(
  ground: Ground,
  {
    dig,
    area,
    stripped,
    measured,
  }: {
    readonly dig: Outline;
    readonly area: Area;
    /** Mean thickness stripped. */
    readonly stripped: Length | null;
    readonly measured: readonly (readonly StakeDig[])[];
  },
): DigPlan {
  const depth = ground.depth ?? meanDepth(ground, dig, area);
  const stakes = measured.flat();
  const idsOf = (isMeasured: boolean) => [
    ...new Set(stakes.filter((stake) => (stake.dig !== null) === isMeasured).map(({ id }) => id)),
  ];
  const known = idsOf(true);
  return {
    depth,
    soil: soilUnder(stripped ?? NO_LENGTH, depth),
    basis: ground.basis,
    measured: known,
    unmeasured: idsOf(false).filter((id) => !known.includes(id)),
  };
}

function meanDepth(ground: Ground, dig: Outline, area: Area): Length {
  const { cut, fill } = ground.measure(dig, NO_LENGTH);
  return cut.minus(fill).dividedBy(area);
}
