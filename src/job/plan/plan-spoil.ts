import { toState, type StateVolume } from '../../volumes/state-volume.js';
import { formulaStep, given, type Step } from '../../working.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { PavementPlan, SpoilPlan } from './plan.js';

/** Soil to dig and haul away: the cut after stripping. Internal. */
export function planSpoil(job: ReadJob, bank: StateVolume<'bank'>): SpoilPlan {
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
export const spoilSteps = (job: ReadJob, { spoil }: Pick<PavementPlan, 'spoil'>): Step[] => [
  formulaStep({
    title: 'Soil to haul away, loose',
    formula: 'L = B * s',
    given: [
      given('B', 'bank volume', spoil.bank.volume),
      given('s', 'loose per bank, given', job.soil.loosePerBank),
    ],
    result: given('L', 'loose volume', spoil.loose.volume),
    source: 'derived',
  }),
];
