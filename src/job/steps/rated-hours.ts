import { trucksAtWork } from '../../haul/haul-balance.js';
import { machineRates } from '../../haul/machine-time.js';
import { timeOfPass } from '../../haul/plate-time.js';
import type { Area, Time, Volume } from '../../units/quantity.js';
import type { StreamPlan } from '../plan/plan.js';
import type { ReadJob } from '../schema/job-shape.js';
import type { WorkHours, WorkLoads } from './work-step.js';

/** Hours by the rates of a job; null where it gives none. Internal. */

/** No hours of anything. */
export const NO_HOURS: WorkHours = Object.freeze({
  machine: null,
  byHand: null,
  plate: null,
  trucks: null,
  trucksNeeded: null,
});

/** The machine on soil in the bank. */
export function machineHours({ rates, soil }: ReadJob, bank: Volume): Time | null {
  const machine = rates?.machine;
  if (machine === undefined || bank.isZero()) return null;
  const { loosePerBank } = soil;
  return bank.dividedBy(machineRates({ ...machine, loosePerBank }).bankPerHour);
}

/** Soil dug by hand. */
export function handHours({ rates }: ReadJob, bank: Volume): Time | null {
  const rate = rates?.byHand;
  return rate === undefined || bank.isZero() ? null : bank.dividedBy(rate);
}

type Plate = NonNullable<NonNullable<ReadJob['rates']>['plate']>;

/** The passes that a job gives for the plate; undefined where it gives none. */
export const platePasses = (
  { rates }: ReadJob,
  of: 'passes' | 'subgradePasses' | 'paverPasses' | 'jointPasses',
): Plate['passes'] | undefined => rates?.plate?.[of];

/** The plate over an area. */
export function plateHours(
  { rates }: ReadJob,
  area: Area,
  passes: number | undefined,
): Time | null {
  const plate = rates?.plate;
  if (plate === undefined || passes === undefined || area.isZero()) return null;
  return timeOfPass({ ...plate, plateWidth: plate.width, area }).times(passes);
}

/** Trucks that haul away: their hours, and how many keep the loading machine busy. */
export function haulHours(
  { rates }: ReadJob,
  stream: StreamPlan | undefined,
  loads: WorkLoads | null,
): Pick<WorkHours, 'trucks' | 'trucksNeeded'> {
  const times = rates?.haul;
  if (times === undefined || stream === undefined || loads === null) {
    return { trucks: null, trucksNeeded: null };
  }
  const { truckCycle, trucksNeeded } = trucksAtWork(times);
  return { trucks: tripsOf(loads, truckCycle), trucksNeeded };
}

/** Trucks that deliver. */
export function deliveryHours({ rates }: ReadJob, loads: WorkLoads | null): Time | null {
  const trip = rates?.delivery;
  return trip === undefined || loads === null ? null : tripsOf(loads, trip);
}

/** Time of the loads that come for a step; null where none does. */
const tripsOf = ({ count }: WorkLoads, trip: Time): Time | null =>
  count === 0 ? null : trip.times(count);
