import { known } from '../invariant.js';
import type { Length, Slope } from '../units/quantity.js';
import { verdictOf, type Verdict } from '../verdict.js';
import { derivedStep, given, type Step } from '../working.js';

/** Clearance of a part of a vehicle over a break. */
export interface BreakClearance {
  /** `underside` at a crest, `overhang` in a sag. */
  readonly part: 'underside' | 'overhang';
  /** Height that the ground reaches up toward that part. */
  readonly reach: Length;
  /** Height of the part less the reach; negative if the part strikes the ground. */
  readonly clearance: Length;
  /** Verdict on that part. */
  readonly verdict: Verdict;
}

interface Vehicle {
  readonly wheelbase: Length;
  readonly underside: Length;
  readonly overhang: Length | undefined;
  readonly overhangHeight: Length | undefined;
}

/** Clearance of a vehicle over a change of grade; null in a sag without an overhang. Internal. */
export function clearanceOver(
  change: Slope,
  { wheelbase, underside, overhang, overhangHeight }: Vehicle,
  uncertainty: Length,
): BreakClearance | null {
  const judged = (part: BreakClearance['part'], reach: Length, height: Length) => {
    const clearance = height.minus(reach);
    return { part, reach, clearance, verdict: verdictOf(clearance, uncertainty) };
  };
  if (change.isNegative()) {
    return judged('underside', wheelbase.times(change.abs()).dividedBy(4), underside);
  }
  if (overhang === undefined || overhangHeight === undefined) return null;
  return judged('overhang', overhang.times(change), overhangHeight);
}

/** The working of a clearance. Internal. */
export function clearanceStep(
  { wheelbase, overhang }: Vehicle,
  change: Slope,
  { part, reach }: BreakClearance,
): Step {
  const isCrest = part === 'underside';
  return derivedStep({
    title: isCrest ? 'Ground between the axles' : 'Ground under the overhang',
    formula: isCrest ? 'h = W * abs(A) / 4' : 'h = O * abs(A)',
    given: [
      isCrest
        ? given('W', 'wheelbase', wheelbase)
        : given('O', 'overhang', known(overhang, 'overhang')),
      given('A', 'change of grade', change),
    ],
    result: given('h', 'reach of the ground', reach),
  });
}
