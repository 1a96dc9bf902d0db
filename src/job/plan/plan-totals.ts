import { OLD_PAVING_WEIGHTS, type OldPaving } from '../../sources/material-weights.js';
import { sum } from '../../units/aggregate.js';
import { density } from '../../units/construct.js';
import { loads, type Loads } from '../../volumes/loads.js';
import { inState } from '../../volumes/state-volume.js';
import type { Density, Mass, Volume } from '../../units/quantity.js';
import type { Step } from '../../working.js';
import { inField } from '../read/in-field.js';
import type { JobTotals, PavementPlan, StreamPlan } from './plan.js';
import type { ReadJob } from '../schema/job-shape.js';

/** The totals of a job and the working of their loads. */
export interface PlannedTotals {
  readonly totals: JobTotals;
  readonly steps: () => readonly Step[];
}

/** Adds up what all pavements order and cart away, stream by stream, and counts loads. Internal. */
export function planTotals(job: ReadJob, pavements: readonly PavementPlan[]): PlannedTotals {
  const counted: Loads[] = [];
  const stream = (loose: Volume, mass: Mass, weight: Density): StreamPlan => {
    const trips = inField(
      () => loads({ volume: inState(loose, 'loose'), looseDensity: weight, ...job.truck }),
      (path) => ['truck', ...path],
    );
    counted.push(trips);
    return { loose: inState(loose, 'loose'), mass, loads: trips };
  };
  const stone = (name: 'base' | 'bedding') => {
    const orders = pavements.map((pavement) => pavement[name]);
    const loose = sum(orders.map((order) => order.loose.volume));
    const mass = sum(orders.map((order) => order.deliveredMass));
    const compacted = sum(orders.map((order) => order.compacted.volume));
    return {
      ...stream(loose, mass, mass.dividedBy(loose)),
      compacted: inState(compacted, 'compacted'),
    };
  };
  const totals: JobTotals = {
    base: stone('base'),
    bedding: stone('bedding'),
    spoil: planSpoil(pavements, stream),
    asphalt: planOldPaving(pavements, 'asphalt', stream),
    concrete: planOldPaving(pavements, 'concrete', stream),
    pavers: countPavers(pavements),
  };
  return { totals, steps: () => counted.flatMap(({ working }) => working) };
}

type MakeStream = (loose: Volume, mass: Mass, weight: Density) => StreamPlan;

function planSpoil(pavements: readonly PavementPlan[], stream: MakeStream) {
  const loose = sum(pavements.map(({ spoil }) => spoil.loose.volume));
  if (loose.isZero()) return null;
  const mass = sum(pavements.map(({ spoil }) => spoil.mass));
  const bank = sum(pavements.map(({ spoil }) => spoil.bank.volume));
  return { ...stream(loose, mass, mass.dividedBy(loose)), bank: inState(bank, 'bank') };
}

function planOldPaving(
  pavements: readonly PavementPlan[],
  material: OldPaving,
  stream: MakeStream,
): StreamPlan | null {
  const old = pavements.flatMap(({ oldSurface }) =>
    oldSurface?.material === material ? [oldSurface] : [],
  );
  if (old.length === 0) return null;
  return stream(
    sum(old.map(({ loose }) => loose.volume)),
    sum(old.map(({ mass }) => mass)),
    density(OLD_PAVING_WEIGHTS[material].loose.value, 'lb/yd3'),
  );
}

function countPavers(pavements: readonly PavementPlan[]): number | null {
  const orders = pavements.flatMap(({ pavers }) => (pavers === null ? [] : [pavers.order]));
  return orders.length === 0 ? null : orders.reduce((total, order) => total + order, 0);
}
