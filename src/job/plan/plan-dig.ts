import type { BuildUp } from '../../build-up/build-up.js';
import { digStep, soilStep, soilUnder } from '../../build-up/excavation-depth.js';
import type { Outline } from '../../outline/ring.js';
import type { Area, Length } from '../../units/quantity.js';
import { NO_LENGTH } from '../../units/zero.js';
import { formulaStep, given, type Step } from '../../working.js';
import type { Ground } from './ground.js';
import type { DigPlan } from './plan.js';
import type { StakeDig } from './stake-grounds.js';

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

/** The working of the depth of dig. Internal. */
export function digSteps(
  { depth, soil, basis }: DigPlan,
  {
    stack,
    measured,
  }: {
    readonly stack: BuildUp;
    readonly measured: readonly (readonly StakeDig[])[];
  },
): Step[] {
  const result = given('E', 'depth of dig', depth);
  const step: Step = {
    'spot-heights': formulaStep({
      title: 'Depth of dig, mean over the spot heights',
      formula: 'E = (integral of existing surface - subgrade) / A',
      given: [given('D', 'build-up', stack.total)],
      result,
      source: 'derived' as const,
    }),
    'stake-levels': formulaStep({
      title: 'Depth of dig, mean over the ground at the stakes',
      formula: 'E = (integral of existing surface - subgrade) / A',
      given: digsGiven(measured),
      result,
      source: 'derived' as const,
    }),
    'along-strings': formulaStep({
      title: 'Depth of dig, mean along the strings',
      formula: 'E = sum(L (e1 + e2) / 2) / sum(L) from reading to reading',
      given: digsGiven(measured),
      result,
      source: 'derived' as const,
    }),
    // any depth beyond the build-up is above finished grade
    uniform: digStep(stack, depth.minus(stack.total)),
  }[basis];
  return [step, soilStep(depth.minus(soil), depth)];
}

const digsGiven = (measured: readonly (readonly StakeDig[])[]) =>
  measured
    .flat()
    .flatMap(({ id, dig }) => (dig === null ? [] : [given(`e ${id}`, `dig at ${id}`, dig)]));
