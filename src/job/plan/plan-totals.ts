import { referenceQuantity } from '../../reference-quantity.js';
import { sum } from '../../units/aggregate.js';
import type { Area, Density, Mass, Volume } from '../../units/quantity.js';
import { OLD_PAVING_WEIGHTS } from '../../sources/material-weights.js';
import { NO_AREA, NO_VOLUME } from '../../units/zero.js';
import { loads } from '../../volumes/loads.js';
import { inState } from '../../volumes/state-volume.js';
import { inField } from '../read/in-field.js';
import type { ReadJob } from '../schema/job-shape.js';
import type {
  JobTotals,
  LooseOrderPlan,
  LooseTotalPlan,
  OldPavingTotalPlan,
  PavementPlan,
  PaverTotalPlan,
  StreamPlan,
} from './plan.js';

type MakeStream = (loose: Volume, mass: Mass, weight: Density) => StreamPlan;

/** Adds up the orders and spoil of all pavements, material by material, and counts loads. Internal. */
export function planTotals(job: ReadJob, pavements: readonly PavementPlan[]): JobTotals {
  const stream: MakeStream = (loose, mass, weight) => {
    const trips = inField(
      () => loads({ volume: inState(loose, 'loose'), looseDensity: weight, ...job.truck }),
      (path) => ['truck', ...path],
    );
    return { loose: inState(loose, 'loose'), mass, loads: trips };
  };
  const { stones, sands } = job.materials;
  return {
    digArea: total(pavements.map(({ areas }) => areas.ownDig)),
    baseArea: total(pavements.map(({ areas }) => areas.ownBase)),
    stones: looseTotals(
      stones,
      pavements.flatMap((pavement) => pavement.stones),
      stream,
    ),
    sands: looseTotals(
      sands,
      pavements.map(({ bedding }) => bedding),
      stream,
    ),
    spoil: totalSpoil(pavements, stream),
    oldPaving: totalOldPaving(pavements, stream),
    pavers: totalPavers(job, pavements),
  };
}

const total = (areas: readonly Area[]): Area => areas.reduce((all, one) => all.plus(one), NO_AREA);

/** The orders of each stone or sand. */
function looseTotals(
  group: readonly { readonly id: string; readonly name: string | undefined }[],
  orders: readonly LooseOrderPlan[],
  stream: MakeStream,
): LooseTotalPlan[] {
  return group.flatMap(({ id, name }) => {
    const own = orders.filter(({ material }) => material === id);
    // what is placed with another pavement alone is not ordered
    if (own.every(({ order }) => order.loose.volume.isZero())) return [];
    const loose = sum(own.map(({ order }) => order.loose.volume));
    const mass = sum(own.map(({ order }) => order.deliveredMass));
    const fill = own.filter(({ layer }) => layer === 'fill');
    const compacted = (some: readonly LooseOrderPlan[]) =>
      inState(sum([NO_VOLUME, ...some.map(({ order }) => order.compacted.volume)]), 'compacted');
    return [
      {
        material: id,
        name: name ?? id,
        ...stream(loose, mass, mass.dividedBy(loose)),
        compacted: compacted(own),
        fill: fill.length === 0 ? null : compacted(fill),
      },
    ];
  });
}

function totalSpoil(pavements: readonly PavementPlan[], stream: MakeStream) {
  const loose = sum(pavements.map(({ spoil }) => spoil.loose.volume));
  if (loose.isZero()) return null;
  const mass = sum(pavements.map(({ spoil }) => spoil.mass));
  const bank = sum(pavements.map(({ spoil }) => spoil.bank.volume));
  const hauled = stream(loose, mass, mass.dividedBy(loose));
  return Object.assign(hauled, { bank: inState(bank, 'bank') });
}

/** Totals of old paving; pieces of one material and density are hauled together. */
function totalOldPaving(pavements: readonly PavementPlan[], stream: MakeStream) {
  const all = pavements.flatMap(({ oldPaving }) => oldPaving);
  const kinds = all.filter((one, index) => all.findIndex((other) => isAlike(one, other)) === index);
  return kinds.map(({ material, density: inPlace }): OldPavingTotalPlan => {
    const own = all.filter((one) => isAlike(one, { material, density: inPlace }));
    const weight = OLD_PAVING_WEIGHTS[material].loose;
    return {
      material,
      density: inPlace,
      ...stream(
        sum(own.map(({ loose }) => loose.volume)),
        sum(own.map(({ mass }) => mass)),
        referenceQuantity('density', weight),
      ),
    };
  });
}

type Kind = Pick<OldPavingTotalPlan, 'material' | 'density'>;

const isAlike = (a: Kind, b: Kind): boolean =>
  a.material === b.material && a.density.equals(b.density);

function totalPavers(job: ReadJob, pavements: readonly PavementPlan[]): PaverTotalPlan[] {
  const orders = pavements.flatMap(({ pavers }) => pavers?.orders ?? []);
  return (job.materials.pavers ?? []).flatMap(({ id, name }) => {
    const own = orders.filter(({ paver }) => paver === id);
    if (own.length === 0) return [];
    const order = own.reduce((count, one) => count + one.order, 0);
    return [{ paver: id, name: name ?? id, order }];
  });
}
