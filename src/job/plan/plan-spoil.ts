import { toState, type StateVolume } from '../../volumes/state-volume.js';
import { given } from '../../working.js';
import { take, worked, type PlacedStep } from './placed.js';
import { numberText } from '../read/normal-job.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { PavementPlan, SpoilPlan } from './plan.js';

/** Soil to dig and haul away: the cut after stripping. Internal. */
export function planSpoil(job: ReadJob, bank: StateVolume<'bank'>): SpoilPlan {
  const factors = {
    loosePerBank: numberText(job.soil.loosePerBank),
    compactedPerBank: numberText(job.soil.compactedPerBank),
  };
  return {
    bank,
    loose: toState(bank, 'loose', factors),
    mass: bank.volume.times(job.soil.bankDensity),
  };
}

/** The working of the spoil. Internal. */
export function spoilSteps(job: ReadJob, { spoil }: Pick<PavementPlan, 'spoil'>): PlacedStep[] {
  const bank = take('B', 'bank volume', spoil.bank.volume, ['earth', 'cut', 'volume']);
  const { loosePerBank, bankDensity } = job.soil;
  return [
    worked({
      title: 'Soil to haul away, loose',
      formula: 'L = B * s',
      takes: [
        bank,
        take('s', 'loose per bank, given', loosePerBank, ['job', 'soil', 'loosePerBank']),
      ],
      result: given('L', 'loose volume', spoil.loose.volume),
      gives: [['spoil', 'loose', 'volume']],
    }),
    worked({
      title: 'Mass of the soil to haul away',
      formula: 'M = B * d',
      takes: [bank, take('d', 'bank density, given', bankDensity, ['job', 'soil', 'bankDensity'])],
      result: given('M', 'mass of the soil', spoil.mass),
      gives: [['spoil', 'mass']],
    }),
  ];
}
