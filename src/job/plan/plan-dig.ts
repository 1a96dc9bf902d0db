import type { BuildUp } from '../../build-up/build-up.js';
import { digStep, soilStep, soilUnder } from '../../build-up/excavation-depth.js';
import type { Outline } from '../../outline/ring.js';
import type { Area, Length } from '../../units/quantity.js';
import { meanAlong } from '../../string-line/mean-depth-along.js';
import { NO_LENGTH } from '../../units/zero.js';
import { formulaStep, given, type Step } from '../../working.js';
import type { Ground } from './ground.js';
import type { DigPlan } from './plan.js';
import { meanDig } from './mean-dig.js';
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

/** What the working of a depth of dig is built from. Internal. */
export interface DigBasis {
  readonly dig: DigPlan;
  readonly stack: BuildUp;
  readonly ground: Ground;
  readonly bottom: Outline;
  /** Area of the dig. */
  readonly area: Area;
  readonly measured: readonly (readonly StakeDig[])[];
}

/** The working of the depth of dig. Internal. */
export function digSteps(of: DigBasis): Step[] {
  const { depth, soil } = of.dig;
  return [depthStep(of), soilStep(depth.minus(soil), depth)];
}

function depthStep(of: DigBasis): Step {
  const { depth, basis } = of.dig;
  switch (basis) {
    case 'spot-heights':
      return meanStep('Depth of dig, mean over the spot heights', of);
    case 'stake-levels':
      return meanStep('Depth of dig, mean over the ground at the stakes', of);
    case 'along-strings':
      return alongStep(of);
    case 'uniform':
      // any depth beyond the build-up is above finished grade
      return digStep(of.stack, depth.minus(of.stack.total));
  }
}

function meanStep(title: string, { dig, ground, bottom, area }: DigBasis): Step {
  const { cut, fill } = ground.measure(bottom, NO_LENGTH);
  return formulaStep({
    title,
    formula: 'E = (C - F) / A',
    given: [
      given('C', 'existing ground above the subgrade, old paving included', cut),
      given('F', 'existing ground below the subgrade', fill),
      given('A', 'area of the dig', area),
    ],
    result: given('E', 'depth of dig', dig.depth),
    source: 'derived',
  });
}

function alongStep({ dig, measured }: DigBasis): Step {
  const fields = {
    title: 'Depth of dig, mean along the strings',
    result: given('E', 'depth of dig', dig.depth),
    source: 'derived',
  } as const;
  const [along] = meanDig(measured)?.steps() ?? [];
  if (along?.kind === 'formula') {
    return formulaStep({ ...fields, formula: meanAlong('E'), given: along.given });
  }
  const known = measured.flat().filter(({ dig: found }) => found !== null);
  const names = known.map(({ id }) => id).join(', ');
  return formulaStep({
    ...fields,
    formula: 'E = mean(e)',
    given: [
      given(
        'e',
        `dig at ${names}`,
        known.flatMap(({ dig: found }) => found ?? []),
      ),
    ],
  });
}
