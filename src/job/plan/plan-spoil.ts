import type { Volume } from '../../units/quantity.js';
import { NO_VOLUME } from '../../units/zero.js';
import { inState, toState } from '../../volumes/state-volume.js';
import { given, type Step } from '../../working.js';
import type { OldSurfacePlan, PavementPlan, SpoilPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** Soil to dig and cart away: the whole dig less the old paving in it. Internal. */
export function planSpoil(job: ReadJob, dug: Volume, oldSurface: OldSurfacePlan | null): SpoilPlan {
  const soil = dug.minus(oldSurface?.inPlace ?? NO_VOLUME);
  const bank = inState(soil.isNegative() ? NO_VOLUME : soil, 'bank');
  const factors = {
    loosePerBank: job.soil.loosePerBank.toString(),
    compactedPerBank: job.soil.compactedPerBank.toString(),
  };
  return {
    bank,
    loose: toState(bank, 'loose', factors),
    mass: bank.volume.times(job.soil.bankDensity),
  };
}

/** The working of the spoil. Internal. */
export function spoilSteps(
  job: ReadJob,
  { areas, dig, earthwork, oldSurface, spoil }: PavementPlan,
): Step[] {
  return [
    {
      title: 'Soil to dig, in the bank',
      formula: earthwork === null ? 'B = A E - O' : 'B = C - O',
      given: [
        ...(earthwork === null
          ? [given('A', 'area of the dig', areas.dig), given('E', 'depth of dig', dig.depth)]
          : [given('C', 'cut between the surfaces', earthwork.cut.volume)]),
        given('O', 'old surface in place', oldSurface?.inPlace ?? NO_VOLUME),
      ],
      result: given('B', 'bank volume', spoil.bank.volume),
      source: 'derived',
    },
    {
      title: 'Soil to cart away, loose',
      formula: 'L = B s',
      given: [
        given('B', 'bank volume', spoil.bank.volume),
        given('s', 'loose per bank, given', job.soil.loosePerBank),
      ],
      result: given('L', 'loose volume', spoil.loose.volume),
      source: 'derived',
    },
  ];
}
